package coldview

import (
	"fmt"
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// Inks are the colours of the plots, and how numbers are told in them.
type Inks struct {
	Reads                         say.Style
	Core, Ring, Dense, Foam, Both draw.Colour
}

// A Scene is what is shown in time: a run in pictures and curves, or curves only.
type Scene struct {
	Run   *cold.Run // nil: curves only
	Stirs []cold.Stir
	Start float64 // the minute shown first, NaN if not known
	// Warmest ends the colours, °C; what is warmer has the last one.
	Warmest float64
	Plot    func(Inks) chart.Plot // nil: nothing to show
}

// warmestShown ends the colours of a tub that softens, °C: what is warmer runs.
const warmestShown = 0

// Scene returns what of a the question is shown by; r is the result that a is of.
func (q Question) Scene(a *cold.Answer, r *model.Result) Scene {
	all := math.Inf(1)
	switch q {
	case Custard, Foam:
		c := q.Freezes(a)
		if !c.Present {
			return Scene{}
		}
		return Scene{&c.Run, c.Stirs, c.ReadyMinutes.Value, all, func(i Inks) chart.Plot { return i.freezing(c) }}
	case Harden:
		h := &a.Harden
		return Scene{&h.Run, nil, 60 * h.Hours.Value, all, func(i Inks) chart.Plot { return i.hardening(h) }}
	case Ice:
		return Scene{} // see IceScene
	case Storage:
		return Scene{Plot: func(i Inks) chart.Plot { return i.stored(&a.Storage, r) }}
	}
	v := q.Softens(a)
	return Scene{&v.Run, nil, v.FromMinutes.Value, warmestShown, func(i Inks) chart.Plot { return i.softening(v) }}
}

// TimeAxis returns the minutes in one unit of a run's time axis, and its title.
func TimeAxis(r *cold.Run) (minutes float64, title string) {
	if n := len(r.Track); n > 0 && r.Track[n-1].AtMinutes > 180 {
		return 60, say.T("hours")
	}
	return 1, say.T("minutes")
}

// At returns the plot with a line at that minute.
func (v Scene) At(plot chart.Plot, minute float64) chart.Plot {
	unit, _ := TimeAxis(v.Run)
	plot.Rules = append(plot.Rules[:len(plot.Rules):len(plot.Rules)], chart.Rule{At: minute / unit, Line: draw.Stroke{Width: 2}})
	return plot
}

// curves plots a run's core, mean and outer ring over its time.
func (i Inks) curves(r *cold.Run) chart.Plot {
	unit, title := TimeAxis(r)
	n := len(r.Track)
	x := make([]float64, n)
	var y [3][]float64
	for k := range y {
		y[k] = make([]float64, n)
	}
	for k, m := range r.Track {
		x[k] = m.AtMinutes / unit
		y[0][k], y[1][k], y[2][k] = i.Reads.Degrees(m.CoreC), i.Reads.Degrees(m.MeanC), i.Reads.Degrees(m.RingC)
	}
	return chart.Plot{Style: chart.Look{Reads: i.Reads}, X: chart.Axis{Title: title}, Y: chart.Axis{Title: i.Reads.Degree()}, Series: []chart.Series{
		{Name: say.T("core"), X: x, Y: y[0], Line: draw.Stroke{Width: 2.4, Colour: i.Core}, Marker: draw.Disc},
		{Name: say.T("mean"), X: x, Y: y[1], Line: draw.Stroke{Width: 2, Dash: draw.Dashed}},
		{Name: say.T("outer ring"), X: x, Y: y[2], Line: draw.Stroke{Width: 2.2, Colour: i.Ring}, Marker: draw.Triangle},
	}}
}

// right is the band of temperatures, °C, in which something is right, over all of
// the time.
func (i Inks) right(label string, from, to float64, c draw.Colour, hatch draw.Hatch) chart.Patch {
	return chart.Patch{Label: label, X0: math.Inf(-1), X1: math.Inf(1), Y0: i.Reads.Degrees(from), Y1: i.Reads.Degrees(to),
		Fill: draw.Fade(c, .1), Hatch: hatch, Line: draw.Stroke{Width: 1, Colour: draw.Fade(c, .4)}}
}

func (i Inks) freezing(c *cold.Cooling) chart.Plot {
	plot := i.curves(&c.Run)
	plot.Rules = stirRules(c)
	if math.IsNaN(c.ReadyC) {
		return plot
	}
	if c.Stirred {
		plot.Bands = append(plot.Bands, i.right(say.T("whip air in"), c.ReadyC, c.WhipC, i.Dense, draw.Rising))
	}
	plot.Bands = append(plot.Bands, i.right(say.T("swirl"), math.Inf(-1), c.ReadyC, i.Both, draw.Falling))
	return plot
}

// nameRoom is the room for the name of a stir, as a share of the time axis.
const nameRoom = 0.05

// stirRules are lines at the stirs, with their number where it has room.
func stirRules(c *cold.Cooling) []chart.Rule {
	unit, _ := TimeAxis(&c.Run)
	var rules []chart.Rule
	named := math.Inf(-1) // the minute of the last stir with a name
	for k, s := range FirstStirs(c) {
		label := fmt.Sprint(k + 1)
		if k == 0 {
			label = say.T("stir")
		}
		if s.AtMinutes-named < nameRoom*c.Run.Track[len(c.Run.Track)-1].AtMinutes {
			label = ""
		} else {
			named = s.AtMinutes
		}
		rules = append(rules, chart.Rule{At: s.AtMinutes / unit, Label: label, Line: draw.Stroke{Width: 1.4, Dash: draw.Dotted}})
	}
	return rules
}

func (i Inks) hardening(h *cold.Harden) chart.Plot {
	plot := i.curves(&h.Run)
	plot.Bands = []chart.Patch{i.right(say.T("core hard enough to store"), math.Inf(-1), h.CoreToC, i.Both, draw.Falling)}
	if h.MoveC > h.CoreToC {
		plot.Bands = append(plot.Bands, i.right(say.T("to move"), h.CoreToC, h.MoveC, i.Dense, draw.Rising))
	}
	return plot
}

// softening has a band for each phase, no further than its hardness is known.
func (i Inks) softening(v *cold.Softening) chart.Plot {
	plot := i.curves(&v.Run)
	if b := &v.Dense; b.OK {
		plot.Bands = append(plot.Bands, i.right(say.T("custard scoops"), math.Max(b.FromC, b.LawFromC), b.ToC, i.Dense, draw.Rising))
	}
	if b := &v.Foam; b.OK {
		plot.Bands = append(plot.Bands, i.right(say.T("ribbon scoops"), math.Max(b.FromC, b.LawFromC), b.ToC, i.Foam, draw.Falling))
	}
	if v.MeltsAtWallMinutes.Known() && v.Why != cold.NobodyKnows {
		plot.Rules = append(plot.Rules, chart.Rule{At: i.Reads.Degrees(v.MeltC), Level: true, Label: say.T("melts"), Line: draw.Stroke{Width: 1.4, Dash: draw.Dotted}})
	}
	return plot
}

// Between these the plot of the freezer goes, °C, in such steps.
const coldestPlotted, warmestPlotted, stepPlotted = -40.0, 0.0, 0.25

// stored plots what of each phase's water is ice, about the freezer's temperature.
func (i Inks) stored(st *cold.Storage, r *model.Result) chart.Plot {
	plot := chart.Plot{Style: chart.Look{Reads: i.Reads},
		X: chart.Axis{Title: say.FreezerAxis(i.Reads), Min: i.Reads.Degrees(coldestPlotted), Max: i.Reads.Degrees(warmestPlotted)},
		Y: chart.Axis{Title: say.FrozenAxis.String(), Max: 100}}
	if st.SwingK > 0 {
		swing := chart.Upright(i.Reads.Degrees(st.AtC-st.SwingK), i.Reads.Degrees(st.AtC+st.SwingK))
		swing.Label, swing.Fill, swing.Hatch = say.FreezerSwing(i.Reads, st.SwingK), draw.Fade(i.Both, .12), draw.Level
		swing.Line = draw.Stroke{Width: 1, Colour: draw.Fade(i.Both, .4)}
		plot.Bands = []chart.Patch{swing}
	} else {
		plot.Rules = []chart.Rule{{At: i.Reads.Degrees(st.AtC), Label: say.T("freezer"), Line: draw.Stroke{Width: 2}}}
	}
	var ts, x []float64
	for t := coldestPlotted; t <= warmestPlotted; t += stepPlotted {
		ts, x = append(ts, t), append(x, i.Reads.Degrees(t))
	}
	add := func(name string, p *model.Phase, line draw.Stroke, m draw.Marker) {
		y := make([]float64, len(ts))
		for k, s := range model.Curve(&p.Body, ts, nil) {
			y[k] = 100 * s.FrozenFraction
		}
		plot.Series = append(plot.Series, chart.Series{Name: name, X: x, Y: y, Line: line, Marker: m})
	}
	if st.Dense.Present {
		add(say.T("custard"), &r.Dense, draw.Stroke{Width: 2.4, Colour: i.Dense}, draw.Disc)
	}
	if st.Foam.Present {
		add(say.T("foam"), &r.Foam, draw.Stroke{Width: 2.4, Dash: draw.Dashed, Colour: i.Foam}, draw.Square)
	}
	return plot
}
