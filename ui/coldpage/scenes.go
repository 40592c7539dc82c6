package coldpage

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// curvesOf plots a run's core, mean and outer ring over its time.
func curvesOf(r *cold.Run) chart.Plot {
	scale, title := axisOf(r)
	n := len(r.Track)
	x := make([]float64, n)
	var y [3][]float64
	for i := range y {
		y[i] = make([]float64, n)
	}
	for i, m := range r.Track {
		x[i] = m.Minute / scale
		y[0][i], y[1][i], y[2][i] = page.Reads.Degrees(m.CoreC), page.Reads.Degrees(m.MeanC), page.Reads.Degrees(m.RingC)
	}
	return chart.Plot{Style: chart.Style{Reads: page.Reads}, X: chart.Axis{Title: title}, Y: chart.Axis{Title: page.Reads.Degree()}, Series: []chart.Series{
		{Name: "core", X: x, Y: y[0], Line: draw.Line{Width: 2.4, Colour: page.Ink(theme.ColorNamePrimary)}, Marker: draw.Disc},
		{Name: "mean", X: x, Y: y[1], Line: draw.Line{Width: 2, Dash: draw.Dashed}},
		{Name: "outer ring", X: x, Y: y[2], Line: draw.Line{Width: 2.2, Colour: page.Ink(theme.ColorNameWarning)}, Marker: draw.Triangle},
	}}
}

// right is the band of temperatures in which something is right, over all of
// the time.
func right(label string, from, to float64, colour fyne.ThemeColorName, hatch draw.Hatch) chart.Band {
	c := page.Ink(colour)
	return chart.Band{Label: label, X0: math.Inf(-1), X1: math.Inf(1), Y0: page.Reads.Degrees(from), Y1: page.Reads.Degrees(to),
		Fill: draw.Fade(c, .1), Hatch: hatch, Line: draw.Line{Width: 1, Colour: draw.Fade(c, .4)}}
}

// level is a temperature to be reached.
func level(label string, c float64) chart.Rule {
	return chart.Rule{At: page.Reads.Degrees(c), Level: true, Label: label, Line: draw.Line{Width: 1.4, Dash: draw.Dotted}}
}

// nameRoom is the room for the name of a stir, as a share of the time axis.
const nameRoom = 0.05

// firstStirs are as many as are worth listing: a custard that never gets stiff
// is stirred for days.
func firstStirs(c *cold.Cooling) []cold.Stir { return c.Stirs[:min(len(c.Stirs), 12)] }

func freezingScene(name string, c *cold.Cooling) scene {
	if !c.Present {
		return scene{}
	}
	return scene{name: name, run: &c.Run, stirs: c.Stirs, start: c.Ready.Value, warmest: math.Inf(1), plot: func() chart.Plot {
		plot := curvesOf(&c.Run)
		scale, _ := axisOf(&c.Run)
		named := math.Inf(-1) // the minute of the last stir with a name
		for i, s := range firstStirs(c) {
			label := fmt.Sprint(i + 1)
			if i == 0 {
				label = "stir"
			}
			if s.Minute-named < nameRoom*c.Run.Track[len(c.Run.Track)-1].Minute {
				label = ""
			} else {
				named = s.Minute
			}
			plot.Rules = append(plot.Rules, chart.Rule{At: s.Minute / scale, Label: label, Line: draw.Line{Width: 1.4, Dash: draw.Dotted}})
		}
		switch {
		case math.IsNaN(c.ReadyC):
		case c.Stirred:
			plot.Bands = append(plot.Bands,
				right("whip air in", c.ReadyC, c.WhipC, kit.ColorNameDense, draw.Rising),
				right("swirl", math.Inf(-1), c.ReadyC, kit.ColorNameBoth, draw.Falling))
		default:
			plot.Bands = append(plot.Bands, right("swirl", math.Inf(-1), c.ReadyC, kit.ColorNameBoth, draw.Falling))
		}
		return plot
	}}
}

func hardenScene(name string, h *cold.Harden) scene {
	return scene{name: name, run: &h.Run, start: 60 * h.Hours.Value, warmest: math.Inf(1), plot: func() chart.Plot {
		plot := curvesOf(&h.Run)
		plot.Bands = []chart.Band{right("core hard enough to store", math.Inf(-1), h.CoreToC, kit.ColorNameBoth, draw.Falling)}
		if h.MoveC > h.CoreToC {
			plot.Bands = append(plot.Bands, right("to move", h.CoreToC, h.MoveC, kit.ColorNameDense, draw.Rising))
		}
		return plot
	}}
}

// warmestShown ends the colours of a tub that softens, °C: what is warmer runs.
const warmestShown = 0

func servingScene(name string, s *cold.Serving) scene {
	return scene{name: name, run: &s.Run, start: s.From.Value, warmest: warmestShown, plot: func() chart.Plot {
		plot := curvesOf(&s.Run)
		if s.Dense.OK {
			plot.Bands = append(plot.Bands, right("custard scoops", s.Dense.FromC, s.Dense.ToC, kit.ColorNameDense, draw.Rising))
		}
		if s.Foam.OK {
			plot.Bands = append(plot.Bands, right("ribbon scoops", s.Foam.FromC, s.Foam.ToC, kit.ColorNameFoam, draw.Falling))
		}
		if s.MeltsAtWall.Known() {
			plot.Rules = append(plot.Rules, level("melts", s.MeltC))
		}
		return plot
	}}
}

// storageScene plots what of each phase's water is ice, about the freezer's
// temperature.
func storageScene(name string, s *cold.Storage, r *model.Result) scene {
	const warmest, coldest, step = 0.0, -40.0, 0.25
	return scene{name: name, plot: func() chart.Plot {
		var ts []float64
		for t := coldest; t <= warmest; t += step {
			ts = append(ts, t)
		}
		plot := chart.Plot{Style: chart.Style{Reads: page.Reads},
			X: chart.Axis{Title: page.Reads.Degree() + " in the freezer", Min: page.Reads.Degrees(coldest), Max: page.Reads.Degrees(warmest)}, Y: chart.Axis{Title: "% of the water frozen", Max: 100}}
		plot.Rules = []chart.Rule{{At: s.AtC, Label: "freezer", Line: draw.Line{Width: 2}}}
		if s.SwingK > 0 {
			plot.Rules = nil
			swing := chart.Upright(s.AtC-s.SwingK, s.AtC+s.SwingK)
			c := page.Ink(kit.ColorNameBoth)
			swing.Label, swing.Fill, swing.Hatch, swing.Line = "freezer ± "+page.Reads.TemperatureStep(s.SwingK), draw.Fade(c, .12), draw.Level, draw.Line{Width: 1, Colour: draw.Fade(c, .4)}
			plot.Bands = []chart.Band{swing}
		}
		add := func(name string, p *model.Phase, present bool, line draw.Line, m draw.Marker) {
			if !present {
				return
			}
			y := make([]float64, len(ts))
			for i, st := range model.Curve(&p.Body, ts, nil) {
				y[i] = 100 * st.WaterFrozen
			}
			plot.Series = append(plot.Series, chart.Series{Name: name, X: ts, Y: y, Line: line, Marker: m})
		}
		add("custard", &r.Dense, s.Dense.Present, draw.Line{Width: 2.4, Colour: page.Ink(kit.ColorNameDense)}, draw.Disc)
		add("foam", &r.Foam, s.Foam.Present, draw.Line{Width: 2.4, Dash: draw.Dashed, Colour: page.Ink(kit.ColorNameFoam)}, draw.Square)
		return plot
	}}
}
