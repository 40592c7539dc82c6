package card

import (
	"context"
	"image"
	"math"

	"golang.org/x/image/draw"

	"ripplewright/internal/chart"
	"ripplewright/internal/design"
	"ripplewright/internal/model"
	"ripplewright/internal/phase"
	"ripplewright/internal/ripple"
	"ripplewright/internal/tub"
)

// tubPicture draws the tub cut open, within w by h mm, for a page of dpi dots
// per inch. A cancelled context leaves the cut out.
func tubPicture(ctx context.Context, d design.Design, r *model.Result, w, h, dpi float64) *sheet {
	const wall = 1.3
	size := tub.Size(d.Tubs)
	k := math.Min((w-2*wall)/size.LengthMM, (h-wall)/size.HeightMM)
	long, brim, fill := k*size.LengthMM, k*size.HeightMM, k*size.FillMM
	s := &sheet{w: long + 2*wall, h: brim + wall}
	top := brim - fill
	settings := tub.Ripple(d)
	settings.FoamShare = r.Blend.FoamVolume
	style := tub.Style(d)
	if img := cutOf(ctx, settings, style, int(math.Ceil(max(long, fill)/25.4*dpi))); img != nil {
		s.show(img, wall, top, long, fill)
	} else { // too small or too flat for a picture: the shares alone
		foam := fill * r.Blend.FoamVolume
		s.box(wall, top, long, foam, style.Foam)
		s.box(wall, top+foam, long, fill-foam, style.Dense)
	}
	in, out := 0.9, 1.6
	for _, ring := range [][]at{{
		{0, 0}, {wall, 0}, {wall, brim}, {wall + long, brim}, {wall + long, 0}, {2*wall + long, 0},
		{2*wall + long, brim + wall - out}, {2*wall + long - in, brim + wall}, {in, brim + wall}, {0, brim + wall - out},
	}} {
		s.fill(ink, ring)
	}
	return s
}

// cutOf returns the picture of a cut on white, px pixels along its longer side,
// nil where there is none.
func cutOf(ctx context.Context, settings ripple.Settings, style ripple.Style, px int) image.Image {
	cut, err := ripple.Stir(settings)
	if err != nil {
		return nil
	}
	img, err := cut.Render(ctx, max(px, ripple.MinPixels), style, nil)
	if err != nil {
		return nil
	}
	flat := image.NewRGBA(img.Bounds())
	draw.Draw(flat, flat.Bounds(), image.White, image.Point{}, draw.Src)
	draw.Draw(flat, flat.Bounds(), img, img.Bounds().Min, draw.Over)
	return flat
}

// temperaturePlot draws the hardness of both phases over the temperature, nil
// where there is neither.
func temperaturePlot(d design.Design, r *model.Result, w, h float64) *sheet {
	const unit = 0.3 // mm
	p := chart.Plot{
		X: chart.Axis{Title: "°C in the tub", Min: model.RailLow, Max: model.RailHigh},
		Y: chart.Axis{Title: "hardness, kPa", Log: true, Min: 0.05, Max: 60},
		Style: chart.Style{Ink: ink, Muted: muted, Grid: chart.Fade(dune, 0.6), Text: 9.4,
			Measure: func(s string, size float64) float64 { return style{sans, size * unit / point, ink}.width(s) / unit }},
	}
	if b := r.Blend.Both; b.OK {
		band := chart.Upright(b.From, b.To)
		band.Fill = chart.Fade(glass, 0.14)
		p.Bands = append(p.Bands, band)
	}
	ts := model.Rail(121)
	for i, ph := range [...]*model.Phase{&r.Dense, &r.Foam} {
		if ph.Portion.MassG == 0 {
			continue
		}
		y := make([]float64, len(ts))
		for j, st := range model.Curve(&ph.Body, ts, nil) {
			y[j] = st.YieldKPa
			p.Y.Max = max(p.Y.Max, 1.2*st.YieldKPa)
		}
		line := chart.Line{Width: 2.2, Colour: ink}
		marker := chart.NoMarker
		if i == 1 {
			line, marker = chart.Line{Width: 2.2, Colour: coral, Dash: chart.Dashed}, chart.Disc
		}
		p.Series = append(p.Series, chart.Series{Name: ph.Body.Role.String(), X: ts, Y: y, Line: line, Marker: marker})
	}
	if len(p.Series) == 0 {
		return nil
	}
	band := phase.Dense.Band()
	faint := chart.Line{Width: 0.8, Dash: chart.Dotted, Colour: muted}
	p.Rules = []chart.Rule{
		{At: d.Serving.TemperatureC, Line: chart.Line{Width: 1.4, Colour: glass}},
		{At: band.Firm, Level: true, Label: "firm above", Line: faint},
	}
	var drawing chart.Drawing
	frame := p.Draw(&drawing, w/unit, h/unit)
	s := sheetOf(&drawing, unit)
	// The serving temperature stands over the plot, clear of the axis title.
	st := style{sansBold, 8, glass}
	label := "serve at " + celsius(d.Serving.TemperatureC)
	half := st.width(label) / 2
	title := style{sans, p.Style.Text * unit / point, ink}.width(p.Y.Title) + 4
	x := min(max(unit*frame.X.Pos(d.Serving.TemperatureC), title+half), w-half)
	s.writeCentre(x, unit*frame.Box.Y0-1.3, st, label)
	if b := r.Blend.Both; b.OK { // named on the roomier side of the serving temperature
		x0, x1 := unit*frame.X.Pos(b.From), unit*frame.X.Pos(b.To)
		if x := unit * frame.X.Pos(d.Serving.TemperatureC); x > x0 && x < x1 {
			if x-x0 > x1-x {
				x1 = x
			} else {
				x0 = x
			}
		}
		name := style{sans, 7.5, glass}
		if words := "both eat well"; x1-x0 > name.width(words)+2 {
			s.writeCentre((x0+x1)/2, unit*frame.Box.Y0+3.2, name, words)
		}
	}
	return s
}

// sheetOf puts a chart on a sheet, unit mm to the drawing unit.
func sheetOf(d *chart.Drawing, unit float64) *sheet {
	s := &sheet{w: d.W * unit, h: d.H * unit}
	for _, m := range d.Marks {
		if m.Picture != nil {
			f := m.Frame
			s.show(m.Picture, f.X0*unit, f.Y0*unit, f.Dx()*unit, f.Dy()*unit)
			continue
		}
		for _, line := range pieces(m.Points, unit) {
			if m.Line.Width <= 0 {
				s.fill(m.Fill, line)
				continue
			}
			k := stroke{line: line, width: m.Line.Width * unit, colour: m.Line.Colour}
			for _, l := range m.Line.Dash.Pattern() {
				k.dash = append(k.dash, l*k.width)
			}
			s.marks = append(s.marks, k)
		}
	}
	for _, t := range d.Texts {
		st := style{sans, t.Size * unit / point, t.Colour}
		if t.Bold {
			st.face = sansBold
		}
		em := t.Size * unit
		x, y := t.At.X*unit, t.At.Y*unit+map[chart.Rise]float64{chart.Middle: 0.36, chart.Above: -0.22, chart.Below: 0.86}[t.Rise]*em
		switch t.Align {
		case chart.Left:
			s.write(x, y, st, t.S)
		case chart.Centre:
			s.writeCentre(x, y, st, t.S)
		case chart.Right:
			s.writeRight(x, y, st, t.S)
		}
	}
	return s
}

// pieces splits points where the pen lifts.
func pieces(points []chart.Point, unit float64) [][]at {
	var out [][]at
	var line []at
	for _, p := range points {
		if p.Lifts() {
			if len(line) > 0 {
				out = append(out, line)
			}
			line = nil
			continue
		}
		line = append(line, at{p.X * unit, p.Y * unit})
	}
	if len(line) > 0 {
		out = append(out, line)
	}
	return out
}
