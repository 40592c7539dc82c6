package rippleview

import (
	"math"
	"slices"

	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// longest is where the plot ends: Counts hold all longer chords in their last bin.
const longest = ripple.ChordBins - 1

// Thickness shows how much of each phase lies in chords of each length.
func (f *Findings) Thickness(s say.Style) chart.Plot {
	m := &f.measure
	last := 12
	for i := range m.Foam.Counts[:longest] {
		if m.Foam.Counts[i]+m.Dense.Counts[i] > 0.002 {
			last = max(last, i+1)
		}
	}
	g := s.Gauge("mm")
	bin, end := g.Shown(ripple.ChordBinMM), g.Shown(float64(last)*ripple.ChordBinMM)
	p := chart.Plot{
		Style: chart.Look{Reads: s},
		X:     chart.Axis{Title: say.ChordLength(s), Min: 0, Max: end, NoGrid: true},
		Y:     chart.Axis{Title: say.ShareInChords.String()},
	}
	for _, x := range []struct {
		name    string
		ribbons *ripple.Ribbons
		line    draw.Stroke
	}{
		{say.T("custard"), &m.Dense, draw.Stroke{Width: 2}},
		{say.T("foam"), &m.Foam, draw.Stroke{Width: 2, Dash: draw.Dashed}},
	} {
		if math.IsNaN(x.ribbons.P50MM) {
			x.name = "" // no such phase: none in the legend
		}
		p.Series = append(p.Series, stairs(x.name, x.ribbons.Counts[:last], 0, bin, x.line))
	}
	top := 1.0
	for i := range p.Series {
		top = max(top, slices.Max(p.Series[i].Y))
	}
	p.Y.Max = 1.25 * top // the words stand over the curves
	for _, w := range ripple.Words()[1:] {
		band := chart.Upright(g.Shown(w.FromMM), min(g.Shown(w.ToMM), end))
		band.Label = say.Of(w.Word.String())
		p.Bands = append(p.Bands, band)
		p.Rules = append(p.Rules, chart.Rule{At: g.Shown(w.FromMM), Line: draw.Stroke{Width: 1, Dash: draw.Dotted}})
	}
	return p
}

// stairs draws shares, as percent, over bins of one width.
func stairs(name string, shares []float64, from, width float64, line draw.Stroke) chart.Series {
	s := chart.Series{Name: name, Line: line}
	for i, v := range shares {
		x := from + float64(i)*width
		s.X, s.Y = append(s.X, x, x+width), append(s.Y, 100*v, 100*v)
	}
	return s
}

// FoamOfSpoons and SweetnessOfSpoons show how spoonfuls differ; ok is false where
// they do not.
func (f *Findings) FoamOfSpoons(s say.Style) (p chart.Plot, ok bool) {
	return spoons(s, &f.foam, 100, say.FoamInSpoon.String())
}

// SweetnessOfSpoons is FoamOfSpoons of the sweetness.
func (f *Findings) SweetnessOfSpoons(s say.Style) (p chart.Plot, ok bool) {
	return spoons(s, &f.sweet, 1, say.SpoonSweetness.String())
}

func spoons(s say.Style, of *ripple.Spoonful, unit float64, name string) (chart.Plot, bool) {
	share := say.ShareOfSpoons.String()
	width := unit * (of.Highest - of.Lowest) / ripple.SpoonBins
	return chart.Plot{
		Style: chart.Look{Reads: s},
		X:     chart.Axis{Title: name, Min: unit * of.Lowest, Max: unit * of.Highest}, Y: chart.Axis{Title: share}, NoLegend: true,
		Series: []chart.Series{stairs(share, of.Counts[:], unit*of.Lowest, width, draw.Stroke{Width: 2})},
	}, of.Samples > 0 && of.Highest > of.Lowest
}
