package balancepage

import (
	"math"

	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/sure"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// bars draws where 8 in 10 kitchens lie in a figure: all together on top, then with
// each cause alone, the one that moves it most first. ok is false of a figure that
// nobody knows.
func bars(a *sure.Answer, f sure.Outcome) (v chart.Plot, ok bool) {
	all := a.Spread[f]
	if math.IsNaN(all.Middle) {
		return v, false
	}
	v.X = chart.Axis{Title: say.SureAxis(f), Log: f == sure.CustardKPa || f == sure.FoamKPa}
	causes := a.Foremost(f)
	rows := len(causes) + 1
	v.Y = chart.Axis{Min: 0, Max: float64(rows), NoGrid: true, Ticks: []chart.Tick{}}
	low, high := all.Low, all.High
	bar := func(row int, name string, s sure.Spread, ink draw.Colour, hatch draw.Hatch) {
		y := float64(rows-row) - 0.5
		v.Bands = append(v.Bands, chart.Patch{X0: s.Low, X1: s.High, Y0: y - 0.36, Y1: y + 0.36, Fill: draw.Fade(ink, 0.4), Hatch: hatch, Line: draw.Stroke{Width: 1.2, Colour: ink}})
		v.Y.Ticks = append(v.Y.Ticks, chart.Tick{Value: y, Label: name})
		low, high = math.Min(low, s.Low), math.Max(high, s.High)
	}
	bar(0, say.SureAll.String(), all, page.Ink(theme.ColorNamePrimary), draw.Rising)
	for i, c := range causes {
		bar(i+1, say.SureBar(c), a.ByCause[c][f], page.Ink(kit.ColorNameBoth), draw.Plain)
	}
	if v.X.Log {
		v.X.Min, v.X.Max = low/1.15, high*1.15
	} else {
		air := 0.05 * math.Max(high-low, 0.1)
		v.X.Min, v.X.Max = low-air, high+air
	}
	v.Rules = []chart.Rule{{At: all.Middle, Line: draw.Stroke{Width: 1, Dash: draw.Dashed}}}
	v.NoLegend = true
	v.Style.Reads = page.Reads
	return v, true
}

// drawBars shows the bars of the figure that is chosen.
func (p *Page) drawBars() {
	if p.likelies == nil {
		return
	}
	v, ok := bars(p.likelies, sure.Outcome(max(0, p.figure.SelectedIndex())))
	p.bars.Hidden, p.barless.Hidden = !ok, ok
	if ok {
		p.bars.ShowPlot(v)
	}
	p.left.Content.Refresh()
}
