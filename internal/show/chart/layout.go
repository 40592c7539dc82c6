package chart

import (
	"math"

	"ripplewright/internal/show/draw"
)

func (p *Plot) axisX(d *draw.List, f Frame, ticks []Tick) {
	s, b := p.Style, f.Box
	edge := draw.Stroke{Width: 1, Colour: s.Muted}
	for _, t := range ticks {
		x := f.X.Pos(t.Value)
		if !(x >= b.X0-.5 && x <= b.X1+.5) {
			continue
		}
		long := 4.0
		if t.Minor {
			long = 2.5
		} else if !p.X.NoGrid {
			d.Segment(draw.Stroke{Width: 1, Colour: s.Grid}, x, b.Y0, x, b.Y1)
		}
		d.Segment(edge, x, b.Y1, x, b.Y1+long)
		d.Write(draw.Text{At: draw.Point{X: x, Y: b.Y1 + 5}, S: t.Label, Size: s.size(), Align: draw.Centre, Rise: draw.Below, Colour: s.Ink})
	}
	d.Segment(edge, b.X0, b.Y1, b.X1, b.Y1)
	d.Write(draw.Text{At: draw.Point{X: (b.X0 + b.X1) / 2, Y: b.Y1 + 5 + 1.3*s.size()}, S: p.X.Title, Size: s.size(), Align: draw.Centre, Rise: draw.Below, Colour: s.Muted})
}

func (p *Plot) axisY(d *draw.List, f Frame, a Axis, scale Scale, ticks []Tick, right bool) {
	s, b := p.Style, f.Box
	x, out, align := b.X0, -1.0, draw.Right
	if right {
		x, out, align = b.X1, 1, draw.Left
	}
	edge := draw.Stroke{Width: 1, Colour: s.Muted}
	for _, t := range ticks {
		y := scale.Pos(t.Value)
		if !(y >= b.Y0-.5 && y <= b.Y1+.5) {
			continue
		}
		long := 4.0
		if t.Minor {
			long = 2.5
		} else if !a.NoGrid && !right {
			d.Segment(draw.Stroke{Width: 1, Colour: s.Grid}, b.X0, y, b.X1, y)
		}
		d.Segment(edge, x, y, x+out*long, y)
		d.Write(draw.Text{At: draw.Point{X: x + out*7, Y: y}, S: t.Label, Size: s.size(), Align: align, Colour: s.Ink})
	}
	d.Segment(edge, x, b.Y0, x, b.Y1)
	title := draw.Text{At: draw.Point{X: s.size() * .4, Y: b.Y0 - .5*s.size()}, S: a.Title, Size: s.size(), Rise: draw.Above, Colour: s.Muted}
	if right {
		title.At.X, title.Align = d.W-s.size()*.4, draw.Right
	}
	d.Write(title)
}

func (p *Plot) curve(d *draw.List, f Frame, s *Series) {
	scale := f.Y
	if s.Right {
		scale = f.Right
	}
	n := min(len(s.X), len(s.Y))
	pen := clipper{List: d, box: f.Box}
	down := false
	for i := 0; i < n; i++ {
		x, y := f.X.Pos(s.X[i]), scale.Pos(s.Y[i])
		if math.IsNaN(x) || math.IsNaN(y) || math.IsInf(x, 0) || math.IsInf(y, 0) {
			if down {
				d.Lift()
			}
			down = false
			continue
		}
		if down {
			pen.to(x, y)
		} else {
			pen.start(x, y)
		}
		down = true
	}
	d.EndStroke(s.Line)
	if s.Marker == draw.NoMarker {
		return
	}
	every := s.Every
	if every <= 0 {
		every = max(1, n/8)
	}
	for i := every / 2; i < n; i += every {
		x, y := f.X.Pos(s.X[i]), scale.Pos(s.Y[i])
		if x >= f.Box.X0 && x <= f.Box.X1 && y >= f.Box.Y0 && y <= f.Box.Y1 {
			d.Marker(s.Marker, x, y, 1.5+1.5*math.Max(1, s.Line.Width), s.Line)
		}
	}
}

// A band as it stands in a frame: its box on the paper, empty if it is off it, and its name.
type laidBand struct {
	*Patch
	box  draw.Rect
	name draw.Text
}

// bands draws the bands, and then their names, whose rooms all hatches leave free.
func (p *Plot) bands(d *draw.List, f Frame) {
	var laid []laidBand
	var names []draw.Rect
	for i := range p.Bands {
		if b, ok := p.lay(f, &p.Bands[i]); ok {
			laid = append(laid, b)
			names = append(names, p.extent(&b.name))
		}
	}
	for _, b := range laid {
		d.Box(b.box, b.Fill)
		if b.Hatch == draw.Plain {
			continue
		}
		parts := []draw.Rect{b.box}
		for _, name := range names {
			var rest []draw.Rect
			for _, part := range parts {
				rest = append(rest, around(part, name)...)
			}
			parts = rest
		}
		for _, r := range parts {
			o := [...]draw.Point{{X: r.X0, Y: r.Y0}, {X: r.X1, Y: r.Y0}, {X: r.X1, Y: r.Y1}, {X: r.X0, Y: r.Y1}}
			d.Texture(o[:], b.Hatch, 7, b.Line)
		}
	}
	for _, b := range laid {
		d.Write(b.name)
	}
}

// lay finds where a band and its name stand, and whether any of it is in the frame.
func (p *Plot) lay(f Frame, b *Patch) (laidBand, bool) {
	x0, x1 := clamp(f.X.Pos(b.X0), f.Box.X0, f.Box.X1), clamp(f.X.Pos(b.X1), f.Box.X0, f.Box.X1)
	y0, y1 := f.Box.Y1, f.Box.Y0
	if !math.IsInf(b.Y0, 0) {
		y0 = clamp(f.Y.Pos(b.Y0), f.Box.Y0, f.Box.Y1)
	}
	if !math.IsInf(b.Y1, 0) {
		y1 = clamp(f.Y.Pos(b.Y1), f.Box.Y0, f.Box.Y1)
	}
	if !(x1 > x0 && y0 > y1) {
		return laidBand{}, false
	}
	t := draw.Text{At: draw.Point{X: (x0 + x1) / 2, Y: y1 + 2}, S: b.Label, Size: p.Style.size(), Align: draw.Centre, Rise: draw.Below, Colour: p.Style.Muted}
	if math.IsInf(b.X0, -1) && math.IsInf(b.X1, 1) {
		// A band across the plot is named where its curves seldom are.
		t.At.X, t.Align = x0+p.Style.size()*.6, draw.Left
	}
	if y0-y1 < 1.8*t.Size { // as low as its label, or lower
		t.At.Y, t.Rise = (y0+y1)/2, draw.Middle
	}
	return laidBand{Patch: b, box: draw.Rect{X0: x0, Y0: y1, X1: x1, Y1: y0}, name: t}, true
}

// extent is the room of a label, and a little more, which a hatch leaves free.
func (p *Plot) extent(t *draw.Text) draw.Rect {
	if t.S == "" {
		return draw.Rect{}
	}
	w, x, y := p.Style.width(t.S), t.At.X, t.At.Y+.65*t.Size
	if t.Align == draw.Centre {
		x -= w / 2
	}
	if t.Rise == draw.Middle {
		y = t.At.Y
	}
	return draw.Rect{X0: x - 3, Y0: y - .65*t.Size, X1: x + w + 3, Y1: y + .65*t.Size}
}

// around are the parts of r that lie beside hole: left and right of it, above and below.
func around(r, hole draw.Rect) (parts []draw.Rect) {
	x0, x1 := clamp(hole.X0, r.X0, r.X1), clamp(hole.X1, r.X0, r.X1)
	y0, y1 := clamp(hole.Y0, r.Y0, r.Y1), clamp(hole.Y1, r.Y0, r.Y1)
	if x0 >= x1 || y0 >= y1 {
		return []draw.Rect{r}
	}
	for _, part := range []draw.Rect{{X0: r.X0, Y0: r.Y0, X1: x0, Y1: r.Y1}, {X0: x1, Y0: r.Y0, X1: r.X1, Y1: r.Y1},
		{X0: x0, Y0: r.Y0, X1: x1, Y1: y0}, {X0: x0, Y0: y1, X1: x1, Y1: r.Y1}} {
		if part.Dx() > 0 && part.Dy() > 0 {
			parts = append(parts, part)
		}
	}
	return parts
}

func (p *Plot) area(d *draw.List, f Frame, a Area) {
	n := min(len(a.X), len(a.Lo), len(a.Hi))
	for i := 0; i < 2*n; i++ {
		k, v := i, a.Hi
		if i >= n {
			k, v = 2*n-1-i, a.Lo
		}
		x, y := f.X.Pos(a.X[k]), f.Y.Pos(v[k])
		if math.IsNaN(x) || math.IsNaN(y) || math.IsNaN(a.Lo[k]) || math.IsNaN(a.Hi[k]) {
			continue
		}
		d.To(clamp(x, f.Box.X0, f.Box.X1), clamp(y, f.Box.Y0, f.Box.Y1))
	}
	before := len(d.Marks)
	d.EndFill(a.Fill)
	if a.Hatch != draw.Plain && len(d.Marks) > before {
		d.Texture(d.Marks[before].Points, a.Hatch, 7, a.Line)
	}
}

func (p *Plot) rule(d *draw.List, f Frame, r Rule) {
	b := f.Box
	at := f.X.Pos(r.At)
	label := draw.Text{S: r.Label, Size: p.Style.size(), Colour: p.Style.Ink}
	if r.Level {
		at = f.Y.Pos(r.At)
		if !(at >= b.Y0 && at <= b.Y1) {
			return
		}
		d.Segment(r.Line, b.X0, at, b.X1, at)
		label.At, label.Align, label.Rise = draw.Point{X: b.X1 - 4, Y: at - 2}, draw.Right, draw.Above
	} else {
		if !(at >= b.X0 && at <= b.X1) {
			return
		}
		d.Segment(r.Line, at, b.Y0, at, b.Y1)
		label.At, label.Rise = draw.Point{X: at + 4, Y: b.Y0 + 2}, draw.Below
		if at > b.X1-p.Style.width(r.Label)-8 {
			label.At.X, label.Align = at-4, draw.Right
		}
	}
	d.Write(label)
}

// legend writes samples and names in rows across the top, if d is not nil, and
// returns how many rows there are.
func (p *Plot) legend(d *draw.List, w float64) int {
	s := p.Style
	const sample, gap = 26, 6
	x, row := s.size()*.8, 0
	any := false
	for i := range p.Series {
		c := &p.Series[i]
		if c.Name == "" {
			continue
		}
		need := sample + gap + s.width(c.Name) + 1.4*s.size()
		if any && x+need > w {
			x, row = s.size()*.8, row+1
		}
		any = true
		if d != nil {
			y := s.size()*.9 + float64(row)*s.size()*1.45
			d.Segment(c.Line, x+2, y, x+sample-2, y)
			if c.Marker != draw.NoMarker {
				d.Marker(c.Marker, x+sample/2, y, 1.5+1.5*math.Max(1, c.Line.Width), c.Line)
			}
			d.Write(draw.Text{At: draw.Point{X: x + sample + gap, Y: y}, S: c.Name, Size: s.size(), Colour: s.Ink})
		}
		x += need
	}
	if !any {
		return 0
	}
	return row + 1
}

func clamp(v, lo, hi float64) float64 { return math.Max(lo, math.Min(v, hi)) }
