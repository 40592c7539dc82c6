package daypage

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/desk/dayplan"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// look is how the bars of a row are filled: a kind of thing has its colour and
// its own hatch.
type look struct {
	colour fyne.ThemeColorName
	hatch  chart.Hatch
}

var looks = map[process.Resource]look{
	process.Hands: {theme.ColorNamePrimary, chart.Plain}, process.Mixer: {theme.ColorNamePrimary, chart.Rising},
	process.Pan: {kit.ColorNameDense, chart.Falling}, process.SyrupPan: {kit.ColorNameDense, chart.Crossed},
	process.EggBowl: {kit.ColorNameBoth, chart.Dots}, process.MixBowl: {kit.ColorNameBoth, chart.Rising},
	process.Dish: {kit.ColorNameBoth, chart.Level}, process.WaterBath: {kit.ColorNameFoam, chart.Dots},
	process.Freezer: {kit.ColorNameFoam, chart.Crossed}, process.Fridge: {kit.ColorNameFoam, chart.Falling},
}

// stretch is the part of the plan that is looked at.
func (p *Page) stretch() plan.Span {
	all := dayplan.Stretches(&p.answer.Plan)
	return all[min(max(0, p.part.SelectedIndex()), len(all)-1)]
}

// marksWanted is how many times of day stand under the chart.
const marksWanted = 7

// draw draws what is taken over the stretch chosen.
func (p *Page) draw() {
	p.plot.ShowPlot(p.picture())
	p.tell()
}

func (p *Page) picture() chart.Plot {
	if p.answer == nil || len(p.rows) == 0 {
		return chart.Plot{NoLegend: true, X: chart.Axis{Ticks: []chart.Tick{}}, Y: chart.Axis{Ticks: []chart.Tick{}}}
	}
	s := p.stretch()
	edge := 0.02 * (s.To - s.From)
	n := float64(len(p.rows))
	v := chart.Plot{NoLegend: true,
		X: chart.Axis{Min: s.From - edge, Max: s.To + edge},
		Y: chart.Axis{Min: 0, Max: n, NoGrid: true}}
	day := -1
	for _, at := range dayplan.Marks(s, marksWanted) {
		t := p.answer.Clock(at)
		label := say.TimeOfDay(t)
		if t.YearDay() != day {
			day, label = t.YearDay(), say.Clock(t)
		}
		v.X.Ticks = append(v.X.Ticks, chart.Tick{Value: at, Label: label})
	}
	for i, r := range p.rows {
		top := n - float64(i)
		v.Y.Ticks = append(v.Y.Ticks, chart.Tick{Value: top - 0.5, Label: say.Resource(r.What)})
		l := looks[r.What]
		ink := page.Ink(l.colour)
		lane := 0.8 / float64(r.Lanes)
		for _, b := range r.Bars {
			y1 := top - 0.1 - float64(b.Lane)*lane
			bar := chart.Band{X0: b.From, X1: b.To, Y0: y1 - 0.92*lane, Y1: y1, Fill: chart.Fade(ink, .45), Hatch: l.hatch, Line: chart.Line{Width: 1.2, Colour: ink}}
			if l.hatch == chart.Plain {
				bar.Fill = ink
			}
			v.Bands = append(v.Bands, bar)
		}
		if i > 0 {
			v.Rules = append(v.Rules, chart.Rule{At: top, Level: true, Line: chart.Line{Width: 1, Colour: page.Ink(kit.ColorNameGrid)}})
		}
	}
	return v
}

// words says who has what at a minute.
func (p *Page) words(minute float64) string {
	if p.answer == nil {
		return ""
	}
	parts := []string{say.Clock(p.answer.Clock(minute))}
	for _, t := range dayplan.At(p.rows, minute) {
		parts = append(parts, say.Taking(t.What, t.Step))
	}
	return strings.Join(parts, " · ")
}

// tell says what is at the reading line, or how to move it.
func (p *Page) tell() {
	text := p.plot.Reading()
	if text == "" && p.answer != nil {
		text = "Point at a time, or press Tab and the arrow keys, to read who has what."
	}
	p.read.ShowText(text)
}
