package ripple

import "math"

// Seen is a cut that was looked at, not computed: a photograph's. It is measured along
// the same lines as a Cut.
type Seen struct {
	Tub          Tub
	View         View
	FoamFraction float64 // of the cut, 0 to 1
	StepMM       float64 // how far apart along a line it is looked at; mm
	LeastMM      float64 // ribbons thinner than this are passed over, as by Raster.MeasureOver
	// Foam sets how much foam there is about points, in mm, 0 to 1. It is called from
	// several goroutines.
	Foam func(xs, ys, foam []float64)
}

// Measure returns the figures of the cut with the interface where Foam is levelFraction, as
// those of Raster. Ribbons that Foam does not show are missed.
func (s *Seen) Measure(levelFraction float64) Measure {
	o := s.Tub.outline(s.View)
	return o.measure(s.FoamFraction, o.trace(func(l line) (bool, []float64) { return s.cross(l, levelFraction) }))
}

// cross does for a line what Cut.cross does.
func (s *Seen) cross(l line, level float64) (foam bool, crossings []float64) {
	n := int(math.Ceil(l.length/s.StepMM)) + 1
	step := l.length / float64(n)
	xs, ys, f := make([]float64, n+1), make([]float64, n+1), make([]float64, n+1)
	for i := range xs {
		xs[i], ys[i] = l.x+float64(i)*step*l.dx, l.y+float64(i)*step*l.dy
	}
	s.Foam(xs, ys, f)
	for i := 1; i < len(f); i++ {
		if a, b := f[i-1]-level, f[i]-level; (a > 0) != (b > 0) {
			crossings = append(crossings, (float64(i-1)+a/(a-b))*step)
		}
	}
	return thicker(f[0] > level, crossings, l.length, s.LeastMM)
}

// DepthMM returns how far a point of the cut's box lies from the nearest wall, mm, negative
// outside.
func (t Tub) DepthMM(v View, x, y float64) float64 { return t.outline(v).depth(x, y) }

// BoxMM returns the size of the box around a cut.
func (t Tub) BoxMM(v View) (width, height float64) {
	o := t.outline(v)
	return o.w, o.h
}
