package kit

import (
	"math"

	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// tilt is how round the rim looks from a little above: the height of its
// ellipse over its width.
const tilt = .17

// A tubFrame is the shape of one tub on screen: all half-widths about x, all y down.
type tubFrame struct {
	x, top, foot   float64
	rTop, rBase    float64 // inside half-widths, at the rim and at the floor
	wall           float64
	surface, rSurf float64 // the food's level, and half-width there
	card, shade    draw.Colour
	inside         draw.Colour // of the far wall
}

// half is the inside half-width at height y.
func (f *tubFrame) half(y float64) float64 {
	return f.rTop + (f.rBase-f.rTop)*(y-f.top)/(f.foot-f.top)
}

// level is the height y below which the round tub holds a share of its food, 0 to
// 1: a frustum's volume goes as the difference of its radii's cubes.
func (f *tubFrame) level(share float64) float64 {
	share = math.Max(0, math.Min(1, share))
	a, b := f.rBase*f.rBase*f.rBase, f.rSurf*f.rSurf*f.rSurf
	if math.Abs(f.rSurf-f.rBase) < 1e-6*f.rBase {
		return f.foot - share*(f.foot-f.surface)
	}
	r := math.Cbrt(a + share*(b-a))
	return f.foot - (r-f.rBase)/(f.rSurf-f.rBase)*(f.foot-f.surface)
}

func (t *TubView) frame(w, h, text float64) tubFrame {
	v := t.tub
	if v.TopMM <= 0 || v.BaseMM <= 0 || v.HeightMM <= 0 {
		v.TopMM, v.BaseMM, v.HeightMM = 92, 80, 90
	}
	wide := math.Max(v.TopMM, v.BaseMM)
	// Names stand below; the rim's ellipse above; walls and lip outside.
	room := h - 1.9*text
	scale := math.Min((w-8)/(wide*1.14), (room-6)/(v.HeightMM*1.06+v.TopMM*tilt/2+2))
	f := tubFrame{
		x: w / 2, rTop: v.TopMM * scale / 2, rBase: v.BaseMM * scale / 2, wall: math.Max(3, wide*.028*scale),
		card: colour(ColorNameCardboard),
	}
	tall := v.HeightMM * scale
	f.top = (room-tall-f.wall+f.rTop*tilt)/2 + 2
	f.foot = f.top + tall
	fill := math.Max(0, math.Min(1, v.Fill))
	f.surface = f.foot - fill*tall
	f.rSurf = f.half(f.surface)
	f.inside = draw.Blend(f.card, draw.RGB(0x2A1C0C), .18)
	f.shade = draw.Blend(f.card, draw.RGB(0x1B1208), .35)
	return f
}

func (t *TubView) layOut(d *draw.List, w, h float64) {
	s := plotStyle()
	f := t.frame(w, h, s.Text)
	if f.rTop < 10 {
		return
	}
	v := &t.tub
	dense, foam := v.DenseColour, v.FoamColour
	if dense.A == 0 {
		dense = colour(ColorNameCustard)
	}
	if foam.A == 0 {
		foam = colour(ColorNameMeringue)
	}

	f.back(d)
	if v.Fill > 0 {
		f.contents(d, t, dense, foam)
	}
	f.walls(d)
	f.labels(d, s, v, dense, foam)
}

// back is what stands behind the cut: the far half of the wall and of the rim.
func (f *tubFrame) back(d *draw.List) {
	lip := f.wall * .9
	d.Arc(f.x, f.top, f.rTop+f.wall+lip, (f.rTop+f.wall+lip)*tilt, math.Pi, 2*math.Pi)
	d.EndFill(draw.Blend(f.card, draw.RGB(0xFFFFFF), .35))
	// Inside of the far wall, from the rim to the food; darker lower down.
	d.Arc(f.x, f.top, f.rTop, f.rTop*tilt, math.Pi, 2*math.Pi)
	d.To(f.x+f.rBase, f.foot)
	d.To(f.x-f.rBase, f.foot)
	d.EndFill(f.inside)
	f.roundness(d)
	d.Arc(f.x, f.top, f.rTop, f.rTop*tilt, math.Pi, 2*math.Pi)
	d.EndStroke(draw.Stroke{Width: 1, Colour: f.shade})
	// A seam and two soft folds, so that the wall reads as round.
	for i, a := range []float64{.62, .8, .38} {
		x := math.Cos(math.Pi * a)
		y := f.top - math.Sin(math.Pi*a)*f.rTop*tilt
		c := draw.Fade(f.shade, []float64{.35, .15, .15}[i])
		d.Segment(draw.Stroke{Width: 1.5, Colour: c}, f.x+x*f.rTop, y+2, f.x+x*f.rBase, f.foot)
	}
}

// roundness darkens the far wall towards its sides, in a few thin films.
func (f *tubFrame) roundness(d *draw.List) {
	film := draw.Fade(f.shade, .09)
	for k := 1; k <= 6; k++ {
		a := math.Pi * .045 * float64(k)
		for _, side := range []float64{-1, 1} {
			for i := 0; i <= 8; i++ {
				s, c := math.Sincos(a * float64(i) / 8)
				d.To(f.x+side*c*f.rTop, f.top-s*f.rTop*tilt)
			}
			d.To(f.x+side*math.Cos(a)*f.rBase, f.foot)
			d.To(f.x+side*f.rBase, f.foot)
			d.EndFill(film)
		}
	}
}

// readable is near-black or near-white, whichever stands out more on c.
func readable(c draw.Colour) draw.Colour {
	if .3*float64(c.R)+.59*float64(c.G)+.11*float64(c.B) > 118 {
		return draw.RGB(0x1B1208)
	}
	return draw.RGB(0xFFF8EA)
}

// contents is the food: its surface behind the cut, and the cut face.
func (f *tubFrame) contents(d *draw.List, t *TubView, dense, foam draw.Colour) {
	v := &t.tub
	surface := draw.Blend(dense, foam, .5)
	if v.Cut == nil && v.Foam > 0 {
		surface = foam
	}
	d.Arc(f.x, f.surface, f.rSurf, f.rSurf*tilt, math.Pi, 2*math.Pi)
	d.EndFill(draw.Blend(surface, draw.RGB(0xFFFFFF), .25))
	d.Arc(f.x, f.surface, f.rSurf, f.rSurf*tilt, math.Pi, 2*math.Pi)
	d.EndStroke(draw.Stroke{Width: 1, Colour: draw.Fade(f.shade, .7)})

	face := draw.Rect{X0: f.x - math.Max(f.rSurf, f.rBase), Y0: f.surface, X1: f.x + math.Max(f.rSurf, f.rBase), Y1: f.foot}
	outline := func() {
		d.To(f.x-f.rSurf, f.surface)
		d.To(f.x+f.rSurf, f.surface)
		d.To(f.x+f.rBase, f.foot)
		d.To(f.x-f.rBase, f.foot)
	}
	outline()
	switch {
	case v.Cut != nil:
		d.EndPicture(v.Cut, face)
	case math.IsNaN(v.Foam):
		d.EndFill(dense)
	default:
		d.EndFill(dense)
		y := f.level(1 - v.Foam)
		d.To(f.x-f.rSurf, f.surface)
		d.To(f.x+f.rSurf, f.surface)
		d.To(f.x+f.half(y), y)
		d.To(f.x-f.half(y), y)
		d.EndFill(foam)
	}
	outline()
	d.To(f.x-f.rSurf, f.surface)
	d.EndStroke(draw.Stroke{Width: 1.2, Colour: f.shade})
}

// walls is the cut through the tub itself: two walls, the floor and the lip.
func (f *tubFrame) walls(d *draw.List) {
	top, foot, w := f.top, f.foot, f.wall
	d.To(f.x-f.rTop-w, top)
	d.To(f.x-f.rTop, top)
	d.To(f.x-f.rBase, foot)
	d.To(f.x+f.rBase, foot)
	d.To(f.x+f.rTop, top)
	d.To(f.x+f.rTop+w, top)
	d.To(f.x+f.rBase+w, foot+w)
	d.To(f.x-f.rBase-w, foot+w)
	d.EndFill(f.card)
	d.To(f.x-f.rTop-w, top)
	d.To(f.x-f.rBase-w, foot+w)
	d.To(f.x+f.rBase+w, foot+w)
	d.To(f.x+f.rTop+w, top)
	d.EndStroke(draw.Stroke{Width: 1.2, Colour: f.shade})
	for _, side := range []float64{-1, 1} {
		x := f.x + side*(f.rTop+w)
		d.RoundBox(draw.Rect{X0: x - w*1.1, Y0: top - w*.8, X1: x + w*1.1, Y1: top + w*.8}, w)
		d.EndFill(draw.Blend(f.card, draw.RGB(0xFFFFFF), .35))
		d.RoundBox(draw.Rect{X0: x - w*1.1, Y0: top - w*.8, X1: x + w*1.1, Y1: top + w*.8}, w)
		d.EndStroke(draw.Stroke{Width: 1, Colour: f.shade})
	}
}

// labels name the phases under the tub, each beside a sample of its texture, and
// the level of the food.
func (f *tubFrame) labels(d *draw.List, s chart.Look, v *Tub, dense, foam draw.Colour) {
	share := func(x float64) string {
		if math.IsNaN(v.Foam) {
			return ""
		}
		return " " + v.Reads.Percent(100*x, 0)
	}
	left, right := v.DenseName+share(1-v.Foam), v.FoamName+share(v.Foam)
	const sample = 15.0
	wl, wr := s.Measure(left, s.Text), s.Measure(right, s.Text)
	total := wl + wr + 2*(sample+5) + 1.6*s.Text
	x, y := f.x-total/2, d.H-.85*s.Text
	swatch := func(c draw.Colour, bubbles bool) {
		drawSwatch(d, draw.Rect{X0: x, Y0: y - .5*s.Text, X1: x + sample, Y1: y + .5*s.Text}, c, bubbles, f.shade)
		x += sample + 5
	}
	if v.DenseName != "" {
		swatch(dense, false)
		d.Write(draw.Text{At: draw.Point{X: x, Y: y}, S: left, Size: s.Text, Colour: s.Ink})
		x += wl + 1.6*s.Text
	}
	if v.FoamName != "" {
		swatch(foam, true)
		d.Write(draw.Text{At: draw.Point{X: x, Y: y}, S: right, Size: s.Text, Colour: s.Ink})
	}
	// The level stands on the far wall where there is room above the food.
	if gap := f.surface - f.rSurf*tilt - (f.top - f.rTop*tilt); v.Fill > 0 && gap > 1.6*s.Text {
		d.Write(draw.Text{At: draw.Point{X: f.x, Y: f.surface - f.rSurf*tilt - 2}, S: say.FullTo(v.Reads, v.Fill), Size: s.Text, Align: draw.Centre, Rise: draw.Above, Colour: readable(f.inside)})
	}
}
