package card

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// plotUnit is the mm to a unit of the charts.
const plotUnit = 0.3

// curves are how the custard and the foam are drawn, told apart without colour.
var curves = [...]struct {
	line   draw.Stroke
	marker draw.Marker
}{
	{draw.Stroke{Width: 2.2, Colour: ink}, draw.NoMarker},
	{draw.Stroke{Width: 2.2, Colour: coral, Dash: draw.Dashed}, draw.Disc},
}

// eats is the ground of the temperatures at which both phases eat well.
var eats = draw.Fade(glass, 0.14)

// besideTitle is the width from which the plots' key stands beside their title,
// mm.
const besideTitle = 140

// plots sets hardness and ice over the temperature side by side under one
// heading with their key, high mm high; nil where there is no phase.
func plots(reads say.Style, d design.Design, r *model.Result, w, high float64) *draw.List {
	phases := phasesOf(r)
	if len(phases) == 0 {
		return nil
	}
	one := (w - gutter) / 2
	both := &draw.List{W: w, H: high}
	both.Place(hardnessPlot(reads, d, r, one, high), 0, 0, 1)
	both.Place(icePlot(reads, d, r, one, high), one+gutter, 0, 1)
	title := say.T("From the freezer to the spoon")
	all, base := headed(title, w, both), 3.5
	if w < besideTitle { // the key has a line of its own
		key := &draw.List{W: w, H: 3}
		all, base = headed(title, w, key, both), 9.4
	}
	const sample = 7.5
	st := typeset.Type(draw.Sans, 8, ink)
	x := w
	name := func(s string) {
		x -= st.Width(s)
		typeset.Write(all, x, base, st, s)
		x -= sample + 1.6
	}
	if b := r.Blend.Both; b.OK {
		if len(phases) == 1 {
			name(say.T("eats well"))
		} else {
			name(say.T("both eat well"))
		}
		typeset.Fill(all, x, base-2.4, sample, 3, eats)
		x -= 5
	}
	for i := len(phases) - 1; i >= 0; i-- {
		role := phases[i].Body.Role
		name(say.Of(role.String()))
		c := curves[role]
		line := c.line
		line.Width *= plotUnit
		all.Segment(line, x, base-0.9, x+sample, base-0.9)
		all.Marker(c.marker, x+sample/2, base-0.9, 1.35, line)
		x -= 5
	}
	return all
}

// phasesOf returns the phases that the tub holds.
func phasesOf(r *model.Result) []*model.Phase {
	var out []*model.Phase
	for _, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		if p.Portion.MassG > 0 {
			out = append(out, p)
		}
	}
	return out
}

// railPlot draws a figure of the phases over the temperature where it is known, with the serving
// temperature and the band where both eat well.
func railPlot(reads say.Style, d design.Design, r *model.Result, w, h float64, p chart.Plot, of func(*phase.Body, *phase.State) float64) *draw.List {
	p.X = chart.Axis{Title: say.T("%s in the tub", reads.Degree()), Min: reads.Degrees(model.RailLow), Max: reads.Degrees(model.RailHigh)}
	p.NoLegend = true
	p.Style = chart.Look{Ink: ink, Muted: muted, Grid: draw.Fade(dune, 0.6), Text: 9.4, Reads: reads,
		Measure: func(s string, size float64) float64 {
			return typeset.Type(draw.Sans, size*plotUnit/typeset.Point, ink).Width(s) / plotUnit
		}}
	if b := r.Blend.Both; b.OK {
		band := chart.Upright(reads.Degrees(b.FromC), reads.Degrees(b.ToC))
		band.Fill = eats
		p.Bands = append(p.Bands, band)
	}
	ts := model.RailC(121)
	x := make([]float64, len(ts)) // as they are read
	for i, t := range ts {
		x[i] = reads.Degrees(t)
	}
	serve := reads.Degrees(d.Serving.TemperatureC)
	for _, ph := range phasesOf(r) {
		y := make([]float64, len(ts))
		for j, st := range model.Curve(&ph.Body, ts, nil) {
			y[j] = of(&ph.Body, &st)
			if p.Y.Log && y[j] > 0 { // the shares end at 100 %
				p.Y.Max = max(p.Y.Max, 1.2*y[j])
			}
		}
		c := curves[ph.Body.Role]
		p.Series = append(p.Series, chart.Series{X: x, Y: y, Line: c.line, Marker: c.marker})
	}
	p.Rules = append(p.Rules, chart.Rule{At: serve, Line: draw.Stroke{Width: 1.4, Colour: glass}})
	var drawing draw.List
	frame := p.Draw(&drawing, w/plotUnit, h/plotUnit)
	s := &draw.List{W: w, H: h}
	s.Place(&drawing, 0, 0, plotUnit)
	// The serving temperature stands over the plot, clear of the axis title.
	st := typeset.Type(draw.SansBold, 8, glass)
	label := say.T("serve at %s", reads.Temperature(d.Serving.TemperatureC))
	title := typeset.Type(draw.Sans, p.Style.Text*plotUnit/typeset.Point, ink).Width(p.Y.Title) + 4
	if title+st.Width(label) > w {
		label = reads.Temperature(d.Serving.TemperatureC)
	}
	half := st.Width(label) / 2
	at := min(max(plotUnit*frame.X.Pos(serve), title+half), w-half)
	typeset.WriteCentre(s, at, plotUnit*frame.Box.Y0-1.3, st, label)
	return s
}

// hardnessPlot draws the hardness of both phases over the temperature.
func hardnessPlot(reads say.Style, d design.Design, r *model.Result, w, h float64) *draw.List {
	return railPlot(reads, d, r, w, h, chart.Plot{
		Y: chart.Axis{Title: figure.Phases.Row("hardness").Axis(reads), Log: true, Min: 0.05, Max: 60},
		Rules: []chart.Rule{{At: phase.Dense.Band().FirmKPa, Level: true, Label: say.T("firm above"),
			Line: draw.Stroke{Width: 0.8, Dash: draw.Dotted, Colour: muted}}},
	}, (*phase.Body).HardnessKPa)
}

// icePlot draws how much of each phase's water is ice over the temperature.
func icePlot(reads say.Style, d design.Design, r *model.Result, w, h float64) *draw.List {
	return railPlot(reads, d, r, w, h, chart.Plot{Y: chart.Axis{Title: figure.Phases.Row("water_frozen_percent").Axis(reads), Min: 0, Max: 100}},
		func(_ *phase.Body, s *phase.State) float64 { return 100 * s.FrozenFraction })
}
