package ripple

import "math"

// View says which cut is drawn.
type View uint8

// The views.
const (
	Side View = iota // an upright cut through the middle
	Top              // a level cut, seen from above
)

// String returns "side" or "top".
func (v View) String() string {
	if v == Top {
		return "top"
	}
	return "side"
}

// ParseView returns the view of that name; false, and Side, of another word.
func ParseView(name string) (View, bool) {
	for _, v := range [...]View{Side, Top} {
		if v.String() == name {
			return v, true
		}
	}
	return Side, false
}

// Tub is the space the dessert fills, in mm. Build it with RoundTub or BoxTub.
type Tub struct {
	LengthMM  float64 // across the side cut; the diameter of a round tub
	BreadthMM float64 // away from the eye in the side cut
	CornerMM  float64 // radius of the upright corners; half the diameter of a round tub
	HeightMM  float64 // of the fill, not of the wall
}

// RoundTub returns an upright cylinder.
func RoundTub(diameterMM, fillMM float64) Tub {
	return Tub{LengthMM: diameterMM, BreadthMM: diameterMM, CornerMM: diameterMM / 2, HeightMM: fillMM}
}

// BoxTub returns a box with upright walls whose corners are rounded.
func BoxTub(lengthMM, breadthMM, cornerMM, fillMM float64) Tub {
	return Tub{LengthMM: lengthMM, BreadthMM: breadthMM, CornerMM: cornerMM, HeightMM: fillMM}
}

// Sized returns a tub whose cut is width by height mm large, 0 for as it is. A round tub
// stays round.
func (t Tub) Sized(v View, widthMM, heightMM float64) Tub {
	round := t.CornerMM == t.LengthMM/2 && t.LengthMM == t.BreadthMM
	if widthMM > 0 {
		t.LengthMM = widthMM
	}
	switch {
	case v == Side && heightMM > 0:
		t.HeightMM = heightMM
	case v == Top && heightMM > 0:
		t.BreadthMM = heightMM
	}
	if round {
		t.BreadthMM, t.CornerMM = t.LengthMM, t.LengthMM/2
	}
	t.CornerMM = math.Min(t.CornerMM, math.Min(t.LengthMM, t.BreadthMM)/2)
	return t
}

// outline is the edge of a cut: a box of w by h mm whose corners are rounded.
type outline struct{ w, h, corner float64 }

func (t Tub) outline(v View) outline {
	if v == Top {
		return outline{t.LengthMM, t.BreadthMM, t.CornerMM}
	}
	return outline{t.LengthMM, t.HeightMM, 0}
}

// depth returns the distance from the point to the nearest wall, in mm,
// negative outside.
func (o outline) depth(x, y float64) float64 {
	qx := math.Abs(x-o.w/2) - (o.w/2 - o.corner)
	qy := math.Abs(y-o.h/2) - (o.h/2 - o.corner)
	if qx > 0 && qy > 0 {
		return o.corner - math.Sqrt(qx*qx+qy*qy)
	}
	return o.corner - math.Max(qx, qy)
}

// area returns mm².
func (o outline) area() float64 { return o.w*o.h - (4-math.Pi)*o.corner*o.corner }

// span returns where the level line at height y lies inside, lo ≥ hi if nowhere.
func (o outline) span(y float64) (lo, hi float64) {
	q := math.Abs(y-o.h/2) - (o.h/2 - o.corner)
	if q > o.corner {
		return 0, 0
	}
	cut := 0.0
	if q > 0 {
		cut = o.corner - math.Sqrt(o.corner*o.corner-q*q)
	}
	return cut, o.w - cut
}
