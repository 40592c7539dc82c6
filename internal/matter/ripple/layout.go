package ripple

import (
	"fmt"
	"math"
	"slices"
)

// Layout is how the phases are filled in before the first stroke.
type Layout uint8

// The layouts.
const (
	Dollops Layout = iota // spoonfuls of foam set into the custard
	Layers                // by turns, each dented by the spoon that set the next; from above a slanting cut through them
	Halves                // one beside the other
	Spiral                // foam piped as a coil
)

var layoutNames = [...]string{"dollops", "layers", "halves", "spiral"}

// String returns the layout's name in a design file.
func (l Layout) String() string {
	if int(l) < len(layoutNames) {
		return layoutNames[l]
	}
	return fmt.Sprintf("Layout(%d)", uint8(l))
}

// ParseLayout returns the layout that String names.
func ParseLayout(name string) (Layout, error) {
	if i := slices.Index(layoutNames[:], name); i >= 0 {
		return Layout(i), nil
	}
	return 0, fmt.Errorf("ripple: no layout is called %q", name)
}

// Sizes of the layouts, for a tub of a pint: our own choices.
const (
	dollopAreaMM2 = 85 * 83 / 9.0 // of cut for each dollop: nine in the thickness table's cut
	layerPitchMM  = 28.0
	coilPitchMM   = 24.0
)

// field returns the layout as a smooth height over the cut, in about mm: foam is
// where the height is above a level, and the level sets the share.
func (l Layout) field(o outline, v View, seed uint64) func(x, y float64) float64 {
	r := stream(seed, 0)
	switch l {
	case Layers:
		return layers(o, v, r)
	case Halves:
		return halves(o, r)
	case Spiral:
		return spiral(o, v, r)
	default:
		return dollops(o, r)
	}
}

// blob is an oval: 1/(quadratic form + core) is its height.
type blob struct{ x, y, xx, xy, yy float64 }

// dollops is a field of ovals on a shaken grid whose heights add up, so that they
// run together as they grow.
func dollops(o outline, r *rng) func(x, y float64) float64 {
	n := math.Max(3, math.Round(o.area()/dollopAreaMM2))
	rows := math.Max(1, math.Round(math.Sqrt(n*o.h/o.w)))
	cols := math.Max(1, math.Round(n/rows))
	pitchX, pitchY := o.w/cols, o.h/rows
	size := math.Min(pitchX, pitchY) / 2
	var blobs []blob
	for j := 0.0; j < rows; j++ {
		lean := r.between(-0.2, 0.2)
		for i := 0.0; i < cols; i++ {
			x := pitchX * (i + 0.5 + lean + r.between(-0.17, 0.17))
			y := pitchY * (j + 0.5 + r.between(-0.2, 0.2))
			long, short := size*r.between(0.95, 1.25), size*r.between(0.72, 0.95)
			sin, cos := math.Sincos(r.between(-0.6, 0.6))
			a, b := 1/(long*long), 1/(short*short)
			if d := o.depth(x, y); d < 0.45*size {
				if d < -0.2*size {
					continue // a corner that the tub does not have
				}
				// Draw it in from the wall.
				x, y = x+0.25*(o.w/2-x), y+0.25*(o.h/2-y)
			}
			blobs = append(blobs, blob{x, y, a*cos*cos + b*sin*sin, 2 * (a - b) * sin * cos, a*sin*sin + b*cos*cos})
		}
	}
	const core = 0.02
	return func(x, y float64) float64 {
		sum := 0.0
		for i := range blobs {
			b := &blobs[i]
			dx, dy := x-b.x, y-b.y
			q := b.xx*dx*dx + b.xy*dx*dy + b.yy*dy*dy + core
			sum += 1 / (q * q)
		}
		return -size / math.Sqrt(math.Sqrt(sum))
	}
}

func layers(o outline, v View, r *rng) func(x, y float64) float64 {
	pitch := math.Max(layerPitchMM, o.h/5)
	if v == Top {
		// The cut meets the layers at a slant that changes across the tub.
		lean, phase := r.between(0, math.Pi), r.between(0, 2*math.Pi)
		sin, cos := math.Sincos(lean)
		k := 2 * math.Pi / (1.25 * pitch)
		p1, p2 := r.between(0, 6), r.between(0, 6)
		return func(x, y float64) float64 {
			along, across := cos*x+sin*y, -sin*x+cos*y
			return math.Sin(k*along+phase+0.9*math.Sin(0.07*across+p1)+0.4*math.Sin(0.19*across+p2)) / k
		}
	}
	pitch = o.h / math.Max(1, math.Round(o.h/pitch))
	k := 2 * math.Pi / pitch
	var dents []dent
	for i := 0; i < 5; i++ {
		d := dent{x: o.w * (float64(i) + r.between(0.1, 0.9)) / 5, up: pitch * r.between(0.06, 0.16), reach: pitch * r.between(0.18, 0.3)}
		if i%2 == 1 {
			d.up = -d.up
		}
		dents = append(dents, d)
	}
	tilt := r.between(-1, 1) * math.Min(0.06, pitch/o.w/2)
	return func(x, y float64) float64 {
		for _, d := range dents {
			y -= d.at(x)
		}
		return -math.Cos(k*(y+tilt*(x-o.w/2))) / k
	}
}

// dent is what a spoon leaves in a layer: a Tine without its crease.
type dent struct{ x, up, reach float64 }

// at returns how far the layer is lifted at x, in mm.
func (d dent) at(x float64) float64 {
	round := d.reach / 3
	return d.up * math.Exp2((round-math.Hypot(x-d.x, round))/d.reach)
}

func halves(o outline, r *rng) func(x, y float64) float64 {
	p1, p2 := r.between(0, 6), r.between(0, 6)
	k := 2 * math.Pi / o.h
	lean, wave := r.between(-0.12, 0.12), math.Min(o.w, o.h)
	return func(x, y float64) float64 {
		return x + lean*y + wave*(0.03*math.Sin(k*y+p1)+0.012*math.Sin(2.6*k*y+p2))
	}
}

func spiral(o outline, v View, r *rng) func(x, y float64) float64 {
	pitch := math.Max(coilPitchMM, math.Min(o.w, o.h)/5)
	k := 2 * math.Pi / pitch
	phase := r.between(0, 2*math.Pi)
	if v == Top {
		wob := r.between(0, 6)
		return func(x, y float64) float64 {
			dx, dy := x-o.w/2, y-o.h/2
			d := math.Hypot(dx, dy)
			turn := math.Atan2(dy, dx)
			calm := d * d / (d*d + pitch*pitch/16) // the angle means nothing in the middle
			return calm*math.Cos(k*d-turn-phase+0.12*math.Sin(3*turn+wob))/k + 0.1*pitch*(1-calm)
		}
	}
	rows := math.Max(1, math.Round(o.h/pitch))
	ky := 2 * math.Pi * rows / o.h
	wob := r.between(0, 6)
	return func(x, y float64) float64 {
		// A coil shows half a pitch apart on the two sides of its axis.
		d := x - o.w/2
		calm := d / math.Sqrt(d*d+pitch*pitch/16)
		across := calm * math.Cos(k*math.Abs(d)-0.4*math.Cos(phase)+0.15*math.Sin(0.11*y+wob))
		return (across - 0.85*math.Cos(ky*y)) / k
	}
}
