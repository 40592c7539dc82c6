package coldview

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// The ways to freeze the custard, of two settings of a kitchen.
const (
	InTray  = "tray"
	Alone   = "alone"
	InBowl  = "frozen_bowl"
	Machine = "batch_freezer"
)

// Beatings are what beats the custard while it freezes.
func Beatings() []Option {
	return []Option{
		{say.T("Custard beaten in a tray"), InTray},
		{say.T("Custard left alone in a tray"), Alone},
		{say.T("Custard in a frozen-bowl churn"), InBowl},
		{say.T("Custard in a churn that cools"), Machine},
	}
}

// UseBeating freezes the custard in another way.
func UseBeating(k *cold.Profile, how string) {
	k.Layer.Beating = cold.ByHand
	switch how {
	case Alone:
		k.Layer.Beating, k.Churn.Kind = cold.Never, InTray
	default:
		k.Churn.Kind = how
	}
}

// BeatingOf returns how k freezes the custard.
func BeatingOf(k *cold.Profile) string {
	switch {
	case k.Churn.Turns() && k.Churn.Kind == Machine:
		return Machine
	case k.Churn.Turns():
		return InBowl
	case k.Layer.Beating == cold.Never:
		return Alone
	}
	return InTray
}

// IceScene is the custard's crystals over the weeks, wall and core, with the band
// of the coarser and the words of the scale.
func IceScene(a *icy.Answer) Scene {
	c := &a.Custard
	if !c.Frozen {
		return Scene{}
	}
	return Scene{Plot: func(i Inks) chart.Plot { return i.growing(c) }}
}

func (i Inks) growing(c *icy.Phase) chart.Plot {
	n := len(c.Weeks)
	x, wall, core, low, high := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	most := 0.0
	for k, w := range c.Weeks {
		band := w.Coarser()
		x[k], wall[k], core[k], low[k], high[k] = w.Week, w.Wall.ValueUM, w.Core.ValueUM, band.LowUM, band.HighUM
		most = math.Max(most, band.HighUM)
	}
	plot := chart.Plot{Style: chart.Look{Reads: i.Reads}, X: chart.Axis{Title: say.WeeksAxis.String(), Min: 0, Max: x[n-1]}, Y: chart.Axis{Title: say.CrystalAxis, Min: 0, Max: most},
		Areas: []chart.Area{{X: x, Lo: low, Hi: high, Fill: draw.Fade(i.Dense, .12), Hatch: draw.Rising, Line: draw.Stroke{Width: 1, Colour: draw.Fade(i.Dense, .4)}}},
		Series: []chart.Series{
			{Name: say.AtCore.String(), X: x, Y: core, Line: draw.Stroke{Width: 2.4, Colour: i.Core}, Marker: draw.Disc},
			{Name: say.AtWall.String(), X: x, Y: wall, Line: draw.Stroke{Width: 2.2, Dash: draw.Dashed, Colour: i.Ring}, Marker: draw.Triangle},
		}}
	for k, w := range ice.Words[:len(ice.Words)-1] {
		if w.BelowUM < most {
			plot.Rules = append(plot.Rules, chart.Rule{At: w.BelowUM, Level: true, Label: say.Of(ice.Words[k+1].Name), Line: draw.Stroke{Width: 1.2, Dash: draw.Dotted}})
		}
	}
	return plot
}

// IceShares is the small picture of which step made the crystals: a bar for each
// that brought one part in a hundred or more.
func IceShares(a *icy.Answer, i Inks) chart.Plot {
	const thick, least = 0.35, 0.01
	plot := chart.Plot{Style: chart.Look{Reads: i.Reads}, NoLegend: true, X: chart.Axis{Title: say.ShareAxis.String(), Min: 0}, Y: chart.Axis{NoGrid: true}}
	var shown []icy.Share
	for _, s := range a.Steps {
		if s.Fraction >= least {
			shown = append(shown, s)
		}
	}
	for k, s := range shown {
		at := float64(len(shown) - k) // the first step on top
		plot.Y.Ticks = append(plot.Y.Ticks, chart.Tick{Value: at, Label: say.IceStepShort(s.Step)})
		plot.Bands = append(plot.Bands, chart.Patch{X0: 0, X1: 100 * s.Fraction, Y0: at - thick, Y1: at + thick,
			Fill: draw.Fade(i.Dense, .3), Hatch: draw.Rising, Line: draw.Stroke{Width: 1, Colour: draw.Fade(i.Dense, .6)}})
		plot.X.Max = math.Max(plot.X.Max, 100*s.Fraction)
	}
	plot.Y.Min, plot.Y.Max = 0.5, float64(len(shown))+0.5
	return plot
}
