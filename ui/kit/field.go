package kit

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// A HeatMap is a temperature field over the half section of a round tub.
type HeatMap struct {
	// Values are °C in rows from the top of the tub down, each from the axis
	// outwards, at least 2 by 2; NaN where unknown.
	Values [][]float64
	// RadiusMM and HeightMM are the size of the section, for its shape on screen.
	RadiusMM, HeightMM float64
	// Min and Max are the ends of the colour scale, so that it stands still while
	// time passes. Both 0 takes them from the values.
	Min, Max float64
	// Levels are the isotherms to draw; nil draws round ones.
	Levels []float64
	// Reads is how temperatures are told.
	Reads say.Style
}

// A HeatMapView is a temperature field as a picture, mirrored about the axis of
// the tub, with labelled isotherms and a colour scale whose lightness only rises.
type HeatMapView struct {
	widget.BaseWidget
	field  HeatMap
	mirror [][]float64
	heat   *image.RGBA
}

// NewHeatMapView returns an empty view.
func NewHeatMapView() *HeatMapView {
	f := &HeatMapView{}
	f.ExtendBaseWidget(f)
	return f
}

// ShowField puts v on screen. The view keeps the values until the next call.
func (f *HeatMapView) ShowField(v HeatMap) {
	f.field = v
	f.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (f *HeatMapView) CreateRenderer() fyne.WidgetRenderer {
	f.ExtendBaseWidget(f)
	return newSketch(func() fyne.Size {
		t := theme.TextSize()
		return fyne.NewSize(16*t, 14*t)
	}, f.layOut)
}

// reflect builds the whole section out of the half. Both sides share the axis.
func (f *HeatMapView) reflect() {
	rows, half := len(f.field.Values), len(f.field.Values[0])
	if len(f.mirror) != rows || len(f.mirror[0]) != 2*half-1 {
		f.mirror = make([][]float64, rows)
		for j := range f.mirror {
			f.mirror[j] = make([]float64, 2*half-1)
		}
	}
	for j, row := range f.field.Values {
		for i := 0; i < half; i++ {
			v := math.NaN()
			if i < len(row) {
				v = row[i]
			}
			f.mirror[j][half-1+i], f.mirror[j][half-1-i] = v, v
		}
	}
}

func (f *HeatMapView) layOut(d *draw.List, w, h float64) {
	s := plotStyle()
	if len(f.field.Values) < 2 || len(f.field.Values[0]) < 2 {
		d.Write(draw.Text{At: draw.Point{X: w / 2, Y: h / 2}, S: "–", Size: s.Text, Align: draw.Centre, Colour: s.Muted})
		return
	}
	f.reflect()
	lo, hi := f.limits()

	// The colour scale stands at the right; the section takes the rest.
	ticks := chart.DegreeTicks(f.field.Reads, lo, hi, int(math.Max(2, math.Min(8, h/(3*s.Text)))))
	scaleWidth := 14.0
	label := 0.0
	for _, t := range ticks {
		label = math.Max(label, s.Measure(f.field.temperature(t), s.Text))
	}
	room := draw.Rect{X0: 4, Y0: 4, X1: w - scaleWidth - label - 26, Y1: h - 6}
	wide, tall := 2*f.field.RadiusMM, f.field.HeightMM
	if !(wide > 0 && tall > 0) {
		wide, tall = 1, 1
	}
	k := math.Min(room.Dx()/wide, room.Dy()/tall)
	if k <= 0 {
		return
	}
	cx, cy := (room.X0+room.X1)/2, (room.Y0+room.Y1)/2
	box := draw.Rect{X0: cx - wide*k/2, Y0: cy - tall*k/2, X1: cx + wide*k/2, Y1: cy + tall*k/2}

	f.paint(lo, hi)
	d.To(box.X0, box.Y0)
	d.To(box.X1, box.Y0)
	d.To(box.X1, box.Y1)
	d.To(box.X0, box.Y1)
	d.EndPicture(f.heat, box)
	f.isotherms(d, s, box, lo, hi)
	d.Segment(draw.Stroke{Width: 1, Dash: draw.DashDot, Colour: draw.Fade(s.Ink, .6)}, cx, box.Y0, cx, box.Y1)
	d.Outline(box, draw.Stroke{Width: 1.5, Colour: s.Ink})
	// A flat section is lower than its scale needs.
	half := math.Max(box.Dy(), math.Min(room.Dy()-s.Text, 2*s.Text*float64(len(ticks)))) / 2
	f.legend(d, s, draw.Rect{X0: w - label - scaleWidth - 14, Y0: cy - half, X1: w - label - 14, Y1: cy + half}, ticks, lo, hi)
}

func (f *HeatMapView) limits() (lo, hi float64) {
	lo, hi = f.field.Min, f.field.Max
	if lo == 0 && hi == 0 {
		lo, hi = math.Inf(1), math.Inf(-1)
		for _, row := range f.mirror {
			for _, v := range row {
				if !math.IsNaN(v) {
					lo, hi = math.Min(lo, v), math.Max(hi, v)
				}
			}
		}
	}
	if !(hi-lo > 1e-9) || math.IsInf(lo, 0) {
		if math.IsInf(lo, 0) {
			lo, hi = 0, 0
		}
		lo, hi = lo-1, hi+1
	}
	return lo, hi
}

// paint fills the picture: values are interpolated, not colours, so that the
// scale is met exactly everywhere. What is unknown stays clear.
func (f *HeatMapView) paint(lo, hi float64) {
	const side = 192
	if f.heat == nil {
		f.heat = image.NewRGBA(image.Rect(0, 0, side, side))
	}
	var ramp [256]draw.Colour
	for i := range ramp {
		ramp[i] = chart.Cold.At(float64(i) / 255)
	}
	rows, cols := len(f.mirror), len(f.mirror[0])
	for y := 0; y < side; y++ {
		v := (float64(y) + .5) / side * float64(rows-1)
		j := min(int(v), rows-2)
		dv := v - float64(j)
		top, foot := f.mirror[j], f.mirror[j+1]
		for x := 0; x < side; x++ {
			u := (float64(x) + .5) / side * float64(cols-1)
			i := min(int(u), cols-2)
			du := u - float64(i)
			t := (top[i]*(1-du)+top[i+1]*du)*(1-dv) + (foot[i]*(1-du)+foot[i+1]*du)*dv
			at := f.heat.Pix[4*(y*side+x):]
			if math.IsNaN(t) {
				at[0], at[1], at[2], at[3] = 0, 0, 0, 0
				continue
			}
			c := ramp[int(math.Max(0, math.Min(1, (t-lo)/(hi-lo)))*255+.5)]
			at[0], at[1], at[2], at[3] = c.R, c.G, c.B, 255
		}
	}
}

func (f *HeatMapView) isotherms(d *draw.List, s chart.Look, box draw.Rect, lo, hi float64) {
	levels := f.field.Levels
	if levels == nil {
		for _, t := range chart.DegreeTicks(f.field.Reads, lo, hi, 8) {
			levels = append(levels, t.Value)
		}
	}
	var taken []draw.Point
	for _, level := range levels {
		// Black or white, whichever the ground at this level is not.
		c := readable(chart.Cold.At((level - lo) / (hi - lo)))
		before := len(d.Marks)
		chart.Contour(d, f.mirror, level, box)
		d.EndStroke(draw.Stroke{Width: 1.2, Colour: draw.Fade(c, .85)})
		if len(d.Marks) == before {
			continue // nowhere so warm or cold
		}
		line := d.Marks[before]
		// The first of these corners and sides where the label has room.
		for _, near := range [...][2]float64{{.5, .95}, {.5, .05}, {.95, .5}, {.05, .5}, {.8, .8}, {.2, .8}, {.8, .2}, {.2, .2}} {
			at := nearest(line.Points, draw.Point{X: box.X0 + near[0]*box.Dx(), Y: box.Y0 + near[1]*box.Dy()})
			if at.X < box.X0+1.5*s.Text || at.X > box.X1-1.5*s.Text || at.Y < box.Y0+1.5*s.Text || at.Y > box.Y1-.2*s.Text || crowded(taken, at, 1.5*s.Text) {
				continue
			}
			taken = append(taken, at)
			d.Write(draw.Text{At: draw.Point{X: at.X, Y: at.Y - 1}, S: f.field.Reads.Short(f.field.Reads.Degrees(level), 1), Size: s.Text, Align: draw.Centre, Rise: draw.Above, Colour: c})
			break
		}
	}
}

// nearest is the one of points that is nearest to p.
func nearest(points []draw.Point, p draw.Point) draw.Point {
	best, at := math.Inf(1), draw.Point{}
	for _, q := range points {
		if e := math.Hypot(q.X-p.X, q.Y-p.Y); e < best {
			best, at = e, q
		}
	}
	return at
}

// temperature is a tick as the scale of colours tells it.
func (f *HeatMap) temperature(t chart.Tick) string { return t.Label + " " + f.Reads.Degree() }

// crowded reports whether p is so near one already taken that texts would overlap.
func crowded(taken []draw.Point, p draw.Point, room float64) bool {
	for _, q := range taken {
		if math.Abs(p.Y-q.Y) < room && math.Abs(p.X-q.X) < 2*room {
			return true
		}
	}
	return false
}

func (f *HeatMapView) legend(d *draw.List, s chart.Look, b draw.Rect, ticks []chart.Tick, lo, hi float64) {
	const steps = 64
	for i := 0; i < steps; i++ {
		y := b.Y1 - b.Dy()*float64(i+1)/steps
		d.Box(draw.Rect{X0: b.X0, Y0: y, X1: b.X1, Y1: y + b.Dy()/steps + .5}, chart.Cold.At((float64(i)+.5)/steps))
	}
	d.Outline(b, draw.Stroke{Width: 1, Colour: s.Ink})
	scale := chart.Scale{Min: lo, Max: hi, Lo: b.Y1, Hi: b.Y0}
	for _, t := range ticks {
		y := scale.Pos(t.Value)
		d.Segment(draw.Stroke{Width: 1, Colour: s.Ink}, b.X1, y, b.X1+4, y)
		d.Write(draw.Text{At: draw.Point{X: b.X1 + 7, Y: y}, S: f.field.temperature(t), Size: s.Text, Colour: s.Ink})
	}
}
