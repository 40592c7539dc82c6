package kit

import (
	"math"
	"slices"

	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// Shapes and dashes by which the two phases differ wherever they are drawn.
const (
	denseDash, foamDash     = draw.Solid, draw.DashDot
	denseMarker, foamMarker = draw.Disc, draw.Diamond
	denseHatch, foamHatch   = draw.Rising, draw.Dots
)

// A railFrame is where things are on one drawing of the rail.
type railFrame struct {
	d     *draw.List
	s     chart.Look
	x     chart.Scale
	box   draw.Rect    // of the curves
	lanes [2]draw.Rect // of the ribbons
	words []HardnessWord
	reads say.Style
}

func (r *Rail) layOut(d *draw.List, w, h float64) {
	s := plotStyle()
	v, size := &r.view, s.Text
	f := railFrame{d: d, s: s, words: v.Words, reads: v.Reads}

	left := math.Max(s.Measure(v.Reads.Percent(100, 0), size), math.Max(s.Measure(v.Dense.Name, size), s.Measure(v.Foam.Name, size))) + 14
	right := 16.0
	for _, word := range v.Words {
		right = math.Max(right, s.Measure(word.Name, size)+18)
	}
	lane := size * 1.35
	axis := h - 1.75*size
	f.box = draw.Rect{X0: left, Y0: 1.7 * size, X1: math.Max(left+1, w-right), Y1: axis - 2*lane - 8}
	for i := range f.lanes {
		y := f.box.Y1 + 4 + float64(i)*(lane+2)
		f.lanes[i] = draw.Rect{X0: f.box.X0, Y0: y, X1: f.box.X1, Y1: y + lane}
	}
	f.x = chart.Scale{Min: RailMin, Max: RailMax, Lo: f.box.X0, Hi: f.box.X1}
	r.left, r.right = f.box.X0, f.box.X1

	dense, foam := colour(ColorNameDense), colour(ColorNameFoam)
	f.both(v.Both, axis)
	f.scales(axis)
	f.ribbon(0, &v.Dense, dense, denseHatch)
	f.ribbon(1, &v.Foam, foam, foamHatch)
	thin, thick := 1.1, 2.4
	f.curve(v.Temperatures, v.Dense.Ice, draw.Stroke{Width: thin, Dash: draw.Dashed, Colour: dense}, f.icePos)
	f.curve(v.Temperatures, v.Foam.Ice, draw.Stroke{Width: thin, Dash: draw.Dotted, Colour: foam}, f.icePos)
	f.curve(v.Temperatures, v.Dense.Hardness, draw.Stroke{Width: thick, Dash: denseDash, Colour: dense}, f.wordPos)
	f.curve(v.Temperatures, v.Foam.Hardness, draw.Stroke{Width: thick, Dash: foamDash, Colour: foam}, f.wordPos)
	f.end(v.Temperatures, v.Dense.Hardness, dense)
	f.end(v.Temperatures, v.Foam.Hardness, foam)
	f.legend(v, dense, foam)
	f.handle(r, axis, dense, foam)
}

// wordPos is the height of a hardness: each word has an equal share of the box,
// logarithmic within; the open ends are cut off at a fifth and at three times
// their limit.
func (f *railFrame) wordPos(kPa float64) float64 {
	if math.IsNaN(kPa) || len(f.words) == 0 {
		return math.NaN()
	}
	n := len(f.words)
	i := 0
	for i+1 < n && kPa >= f.words[i+1].Above {
		i++
	}
	lo := f.words[i].Above
	hi := 3 * lo
	if i+1 < n {
		hi = f.words[i+1].Above
	}
	if lo <= 0 {
		lo = hi / 5
	}
	share := 1.0
	if hi > lo && lo > 0 {
		share = math.Max(0, math.Min(1, math.Log(kPa/lo)/math.Log(hi/lo)))
	}
	return f.box.Y1 - f.box.Dy()*(float64(i)+share)/float64(n)
}

func (f *railFrame) icePos(share float64) float64 { return f.box.Y1 - f.box.Dy()*share }

func (f *railFrame) both(s Reach, axis float64) {
	if s.Empty() {
		return
	}
	c := colour(ColorNameBoth)
	x0, x1 := f.clampX(s.From), f.clampX(s.To)
	if x1 <= x0 {
		return
	}
	f.d.Box(draw.Rect{X0: x0, Y0: f.box.Y0, X1: x1, Y1: axis}, draw.Fade(c, .16))
	edge := draw.Stroke{Width: 1.2, Colour: c}
	f.d.Segment(edge, x0, f.box.Y0, x0, axis)
	f.d.Segment(edge, x1, f.box.Y0, x1, axis)
}

func (f *railFrame) clampX(celsius float64) float64 {
	return math.Max(f.box.X0, math.Min(f.box.X1, f.x.Pos(celsius)))
}

func (f *railFrame) scales(axis float64) {
	d, s, b := f.d, f.s, f.box
	grid := draw.Stroke{Width: 1, Colour: s.Grid}
	n := float64(len(f.words))
	for i, word := range f.words {
		y := b.Y1 - b.Dy()*float64(i)/n
		d.Segment(grid, b.X0, y, b.X1+6, y)
		d.Write(draw.Text{At: draw.Point{X: b.X1 + 8, Y: y - b.Dy()/n/2}, S: word.Name, Size: math.Min(s.Text, b.Dy()/n), Colour: s.Ink})
	}
	d.Segment(grid, b.X0, b.Y0, b.X1+6, b.Y0)
	for _, share := range []float64{0, .5, 1} {
		rise := draw.Middle
		d.Write(draw.Text{At: draw.Point{X: b.X0 - 6, Y: f.icePos(share)}, S: f.reads.Percent(100*share, 0), Size: s.Text, Align: draw.Right, Rise: rise, Colour: s.Muted})
	}
	for _, m := range railMarks(f.reads) {
		x := f.x.Pos(m.c)
		if m.named {
			d.Segment(grid, x, b.Y0, x, axis)
			d.Segment(draw.Stroke{Width: 1, Colour: s.Muted}, x, axis, x, axis+4)
		} else {
			d.Segment(draw.Stroke{Width: 1, Colour: s.Muted}, x, axis, x, axis+2.5)
		}
	}
	d.Segment(draw.Stroke{Width: 1.4, Colour: s.Muted}, b.X0, axis, b.X1, axis)
}

func (f *railFrame) ribbon(i int, p *RailPhase, c draw.Colour, hatch draw.Hatch) {
	d, s, lane := f.d, f.s, f.lanes[i]
	mid := (lane.Y0 + lane.Y1) / 2
	d.Write(draw.Text{At: draw.Point{X: lane.X0 - 6, Y: mid}, S: p.Name, Size: s.Text, Align: draw.Right, Colour: c})
	d.Box(lane, draw.Fade(s.Grid, .35))
	if p.Scoop.Empty() {
		d.Write(draw.Text{At: draw.Point{X: lane.X0 + 6, Y: mid}, S: p.Note, Size: s.Text, Colour: s.Ink})
		return
	}
	b := draw.Rect{X0: f.clampX(p.Scoop.From), Y0: lane.Y0, X1: f.clampX(p.Scoop.To), Y1: lane.Y1}
	if b.Dx() <= 0 {
		return
	}
	label := say.Scooped.String()
	width := s.Measure(label, s.Text) + 12
	d.Box(b, draw.Fade(c, .22))
	// The hatch leaves the label free.
	outline := func(x0, x1 float64) []draw.Point {
		return []draw.Point{{X: x0, Y: b.Y0}, {X: x1, Y: b.Y0}, {X: x1, Y: b.Y1}, {X: x0, Y: b.Y1}}
	}
	line := draw.Stroke{Width: 1.1, Colour: draw.Fade(c, .75)}
	if width < b.Dx() {
		mid := (b.X0 + b.X1) / 2
		d.Texture(outline(b.X0, mid-width/2), hatch, 6, line)
		d.Texture(outline(mid+width/2, b.X1), hatch, 6, line)
		d.Write(draw.Text{At: draw.Point{X: mid, Y: (b.Y0 + b.Y1) / 2}, S: label, Size: s.Text, Align: draw.Centre, Colour: s.Ink})
	} else {
		d.Texture(outline(b.X0, b.X1), hatch, 6, line)
	}
	d.Outline(b, draw.Stroke{Width: 1.3, Colour: c})
}

func (f *railFrame) curve(t, y []float64, l draw.Stroke, pos func(float64) float64) {
	down := false
	for i := 0; i < min(len(t), len(y)); i++ {
		px, py := f.x.Pos(t[i]), pos(y[i])
		// Also a point half a kelvin off the rail is drawn, to its edge at most.
		if math.IsNaN(py) || px < f.box.X0-.5 || px > f.box.X1+.5 {
			if down {
				f.d.Lift()
			}
			down = false
			continue
		}
		f.d.To(px, py)
		down = true
	}
	f.d.EndStroke(l)
}

// end says at the cold end of a curve of hardness that nobody knows how it goes on.
func (f *railFrame) end(t, y []float64, c draw.Colour) {
	n := min(len(t), len(y))
	for i := 1; i < n; i++ {
		if math.IsNaN(y[i]) || !math.IsNaN(y[i-1]) {
			continue
		}
		text := draw.Text{At: draw.Point{X: f.x.Pos(t[i]) - 6, Y: f.wordPos(y[i])}, S: say.NotKnown.String(), Size: f.s.Text, Align: draw.Right, Colour: c}
		if text.At.X-f.s.Measure(text.S, text.Size) < f.box.X0 { // no room before it: over the curve
			text.At.X, text.Align = f.x.Pos(t[i])+6, draw.Left
			text.At.Y -= f.s.Text
		}
		f.d.Write(text)
		return
	}
}

// known reports whether there is a hardness at any temperature.
func (p *RailPhase) known() bool {
	return slices.ContainsFunc(p.Hardness, func(kPa float64) bool { return !math.IsNaN(kPa) })
}

func (f *railFrame) legend(v *RailView, dense, foam draw.Colour) {
	x, y := f.box.X0, f.s.Text*.85
	for _, e := range []struct {
		name string
		line draw.Stroke
	}{
		{say.RailHardness(v.Dense.Name), draw.Stroke{Width: 2.4, Dash: denseDash, Colour: dense}},
		{say.RailHardness(v.Foam.Name), draw.Stroke{Width: 2.4, Dash: foamDash, Colour: foam}},
		{say.RailIce(v.Dense.Name), draw.Stroke{Width: 1.1, Dash: draw.Dashed, Colour: dense}},
		{say.RailIce(v.Foam.Name), draw.Stroke{Width: 1.1, Dash: draw.Dotted, Colour: foam}},
	} {
		need := 34 + f.s.Measure(e.name, f.s.Text)
		if x+need > f.d.W {
			return
		}
		f.d.Segment(e.line, x, y, x+28, y)
		f.d.Write(draw.Text{At: draw.Point{X: x + 34, Y: y}, S: e.name, Size: f.s.Text, Colour: f.s.Muted})
		x += need + 1.6*f.s.Text
	}
	name := say.BothScoop.String()
	if v.Both.Empty() {
		if !v.Dense.known() || !v.Foam.known() {
			return // a phase without lines scoops nowhere yet, which says nothing
		}
		name = say.NowhereBoth.String()
	}
	if x+34+f.s.Measure(name, f.s.Text) > f.d.W {
		return
	}
	c := colour(ColorNameBoth)
	b := draw.Rect{X0: x, Y0: y - .45*f.s.Text, X1: x + 28, Y1: y + .45*f.s.Text}
	f.d.Box(b, draw.Fade(c, .16))
	for _, x := range []float64{b.X0, b.X1} {
		f.d.Segment(draw.Stroke{Width: 1.2, Colour: c}, x, b.Y0, x, b.Y1)
	}
	f.d.Write(draw.Text{At: draw.Point{X: x + 34, Y: y}, S: name, Size: f.s.Text, Colour: c})
}

// handle draws the serving temperature and, beside it, the numbers of the axis
// that it does not cover.
func (f *railFrame) handle(r *Rail, axis float64, dense, foam draw.Colour) {
	d, s, v := f.d, f.s, &r.view
	accent := colour(theme.ColorNamePrimary)
	label := v.Reads.TemperatureTo(v.Serving, 1)
	known := !math.IsNaN(v.Serving)
	x := f.clampX(v.Serving)
	half := s.Measure(label, s.Text*1.1)/2 + 9
	pill := math.Max(0, math.Min(x, d.W-half))
	marks := railMarks(v.Reads)
	for i, m := range marks {
		if !m.named {
			continue
		}
		t := v.Reads.Number(v.Reads.Degrees(m.c), 0)
		if !slices.ContainsFunc(marks[i+1:], func(m railMark) bool { return m.named }) {
			t = v.Reads.TemperatureTo(m.c, 0)
		}
		tx := f.x.Pos(m.c)
		if known && math.Abs(tx-pill) < half+s.Measure(t, s.Text)/2+3 {
			continue
		}
		d.Write(draw.Text{At: draw.Point{X: tx, Y: axis + 4}, S: t, Size: s.Text, Align: draw.Centre, Rise: draw.Below, Colour: s.Ink})
	}
	if !known {
		return
	}
	width := 2.0
	if r.hovered {
		width = 3
	}
	d.Segment(draw.Stroke{Width: width, Colour: accent}, x, f.box.Y0, x, axis)
	at := func(p *RailPhase, m draw.Marker, c draw.Colour) {
		y := f.wordPos(interpolate(v.Temperatures, p.Hardness, v.Serving))
		if !math.IsNaN(y) {
			d.Marker(m, x, y, 6.5, draw.Stroke{Colour: colour(theme.ColorNameBackground)})
			d.Marker(m, x, y, 4.8, draw.Stroke{Colour: c})
		}
	}
	at(&v.Dense, denseMarker, dense)
	at(&v.Foam, foamMarker, foam)

	b := draw.Rect{X0: pill - half, Y0: axis - 2, X1: pill + half, Y1: d.H - 1}
	if r.focused {
		d.RoundBox(draw.Rect{X0: b.X0 - 3, Y0: b.Y0 - 3, X1: b.X1 + 3, Y1: b.Y1 + 3}, b.Dy())
		d.EndFill(s.Ink)
		d.RoundBox(draw.Rect{X0: b.X0 - 1.4, Y0: b.Y0 - 1.4, X1: b.X1 + 1.4, Y1: b.Y1 + 1.4}, b.Dy())
		d.EndFill(colour(theme.ColorNameBackground))
	}
	d.RoundBox(b, b.Dy())
	d.EndFill(accent)
	d.Write(draw.Text{At: draw.Point{X: pill, Y: (b.Y0 + b.Y1) / 2}, S: label, Size: s.Text * 1.1, Align: draw.Centre, Face: draw.SansBold, Colour: colour(theme.ColorNameForegroundOnPrimary)})
}

// interpolate returns y at x on straight lines between the points, NaN outside
// them or beside an unknown one. xs rises.
func interpolate(xs, ys []float64, x float64) float64 {
	n := min(len(xs), len(ys))
	for i := 0; i+1 < n; i++ {
		if x >= xs[i] && x <= xs[i+1] {
			if xs[i+1] == xs[i] {
				return ys[i]
			}
			return ys[i] + (ys[i+1]-ys[i])*(x-xs[i])/(xs[i+1]-xs[i])
		}
	}
	return math.NaN()
}

// A railMark is a line of the rail's axis, at c °C; some have their number.
type railMark struct {
	c     float64
	named bool
}

// railMarks are round numbers of the scale that is read: every degree, with each
// second one's number in °C and each fifth one's in °F.
func railMarks(reads say.Style) []railMark {
	g, every := reads.Gauge("°C"), 2
	if reads.Scale == say.Fahrenheit {
		every = 5
	}
	var out []railMark
	for t := int(math.Ceil(g.Shown(RailMin) - 1e-9)); float64(t) <= g.Shown(RailMax)+1e-9; t++ {
		out = append(out, railMark{g.Kept(float64(t)), t%every == 0})
	}
	return out
}
