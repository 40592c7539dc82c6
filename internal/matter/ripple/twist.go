package ripple

import "math"

// Twist is the compact twist: a disc of the cut turns by an angle that falls
// smoothly from Angle at the middle to nothing at Radius, where it meets fluid at
// rest.
//
//	turn(r) = Angle (1 − (r/Radius)²)²  for r < Radius
//
// Every circle keeps its radius, so the determinant of the map is 1 exactly and
// the twist by −Angle undoes it. A disc that touches no wall leaves walls alone.
type Twist struct {
	XMM, YMM float64 // middle, mm
	RadiusMM float64 // mm
	AngleRad float64 // rad, anticlockwise
}

// At returns where the twist carries a point, in mm.
func (t Twist) At(x, y float64) (float64, float64) {
	dx, dy := x-t.XMM, y-t.YMM
	s := 1 - (dx*dx+dy*dy)/(t.RadiusMM*t.RadiusMM)
	if s <= 0 {
		return x, y
	}
	sin, cos := math.Sincos(t.AngleRad * s * s)
	return t.XMM + cos*dx - sin*dy, t.YMM + sin*dx + cos*dy
}

// Inverse returns the twist that undoes t.
func (t Twist) Inverse() Twist {
	t.AngleRad = -t.AngleRad
	return t
}

// Jacobian returns the derivatives of At: ∂x′/∂x, ∂x′/∂y, ∂y′/∂x, ∂y′/∂y.
func (t Twist) Jacobian(x, y float64) [4]float64 {
	dx, dy := x-t.XMM, y-t.YMM
	r2 := t.RadiusMM * t.RadiusMM
	s := 1 - (dx*dx+dy*dy)/r2
	if s <= 0 {
		return [4]float64{1, 0, 0, 1}
	}
	sin, cos := math.Sincos(t.AngleRad * s * s)
	turnX, turnY := -4*t.AngleRad*s*dx/r2, -4*t.AngleRad*s*dy/r2
	ax, ay := -sin*dx-cos*dy, cos*dx-sin*dy // ∂(x′, y′)/∂turn
	return [4]float64{cos + ax*turnX, -sin + ax*turnY, sin + ay*turnX, cos + ay*turnY}
}

// pull replaces each point by the one that the twist carries there.
func (t Twist) pull(xs, ys []float64) {
	perR2 := 1 / (t.RadiusMM * t.RadiusMM)
	for i, x := range xs {
		dx, dy := x-t.XMM, ys[i]-t.YMM
		s := 1 - (dx*dx+dy*dy)*perR2
		if s <= 0 {
			continue
		}
		sin, cos := math.Sincos(-t.AngleRad * s * s)
		xs[i], ys[i] = t.XMM+cos*dx-sin*dy, t.YMM+sin*dx+cos*dy
	}
}

// Tine is the tine line of marbling: an upright line drags the fluid by Shift,
// and fluid at distance d from it by Shift · ½^(d/Reach). It keeps area (a shear)
// but not a level wall, so no Stroke uses it, and layers are dented by a smooth
// kin of it.
//
// Source: Lu, Jaffer, Jin, Zhao and Mao 2012; A. Jaffer, The Mathematics of
// Marbling.
type Tine struct {
	XMM     float64 // of the line, mm
	ShiftMM float64 // mm, upwards
	ReachMM float64 // distance over which the drag halves, mm
}

// At returns where the tine carries a point, in mm.
func (t Tine) At(x, y float64) (float64, float64) {
	return x, y + t.ShiftMM*math.Exp2(-math.Abs(x-t.XMM)/t.ReachMM)
}
