package heat

import (
	"fmt"
	"math"

	"ripplewright/internal/matter/num"
)

// Neumann is the exact freezing of a half-space x ≥ 0 that is liquid at Start
// until, at t = 0, its face is taken to Face, below the freezing temperature
// Melting. Densities are equal, so nothing moves. Solid and liquid have constant
// properties; temperatures in °C.
type Neumann struct {
	SolidWPerMK, LiquidWPerMK   float64 // conductivity, W/(m K)
	SolidJPerM3K, LiquidJPerM3K float64 // volumetric heat capacity, J/(m³ K)
	LatentJPerM3                float64 // volumetric latent heat, J/m³
	MeltingC, StartC, FaceC     float64 // °C; Face < Melting ≤ Start
}

// Solve finds the constant λ of the front s = 2 λ √(αs t) from
//
//	e^(−λ²)/erf λ − (kl/ks) √(αs/αl) (T0−Tf)/(Tf−Ts) e^(−λ² αs/αl)/erfc(λ √(αs/αl)) = λ L √π/(cs (Tf−Ts))
//
// Source: Carslaw H.S., Jaeger J.C. 1959, Conduction of Heat in Solids, 2nd
// ed., ch. XI (section 11.2; section from memory).
func (n Neumann) Solve() (NeumannFront, error) {
	below := n.MeltingC - n.FaceC
	if !(below > 0) || !(n.StartC >= n.MeltingC) || !(n.SolidWPerMK > 0 && n.LiquidWPerMK > 0 && n.SolidJPerM3K > 0 && n.LiquidJPerM3K > 0 && n.LatentJPerM3 > 0) {
		return NeumannFront{}, fmt.Errorf("freezing half-space: needs positive properties and face < melting ≤ start, not %+v", n)
	}
	alphaS, alphaL := n.SolidWPerMK/n.SolidJPerM3K, n.LiquidWPerMK/n.LiquidJPerM3K
	r := math.Sqrt(alphaS / alphaL)
	lambda, err := num.Root(func(l float64) float64 {
		return math.Exp(-l*l)/math.Erf(l) -
			n.LiquidWPerMK/n.SolidWPerMK*r*(n.StartC-n.MeltingC)/below*math.Exp(-l*l*r*r)/math.Erfc(l*r) -
			l*n.LatentJPerM3*math.Sqrt(math.Pi)/(n.SolidJPerM3K*below)
	}, 1e-6, min(5, 20/r), 0)
	if err != nil {
		return NeumannFront{}, fmt.Errorf("freezing half-space: %w", err)
	}
	return NeumannFront{n, lambda, alphaS, alphaL}, nil
}

// NeumannFront is a solved Neumann problem.
type NeumannFront struct {
	of             Neumann
	Lambda         float64
	alphaS, alphaL float64
}

// PositionM returns the depth of the freezing front at t seconds, in m.
func (f NeumannFront) PositionM(s float64) float64 { return 2 * f.Lambda * math.Sqrt(f.alphaS*s) }

// TemperatureC returns the temperature at depth x m and time t > 0 s, in °C.
func (f NeumannFront) TemperatureC(xM, s float64) float64 {
	n := f.of
	if xM < f.PositionM(s) {
		return n.FaceC + (n.MeltingC-n.FaceC)*math.Erf(xM/(2*math.Sqrt(f.alphaS*s)))/math.Erf(f.Lambda)
	}
	return n.StartC - (n.StartC-n.MeltingC)*math.Erfc(xM/(2*math.Sqrt(f.alphaL*s)))/math.Erfc(f.Lambda*math.Sqrt(f.alphaS/f.alphaL))
}

// Material returns the material of the problem with its freezing spread over
// width K about Melting, from lowest to highest °C.
func (n Neumann) Material(widthK, lowestC, highestC float64) (*Material, error) {
	return NewMaterial(
		[]float64{lowestC, n.MeltingC - widthK/2, n.MeltingC + widthK/2, highestC},
		[]float64{-n.LatentJPerM3 - n.SolidJPerM3K*(n.MeltingC-widthK/2-lowestC), -n.LatentJPerM3, 0, n.LiquidJPerM3K * (highestC - n.MeltingC - widthK/2)},
		[]float64{n.SolidWPerMK, n.SolidWPerMK, n.LiquidWPerMK, n.LiquidWPerMK},
	)
}

// PlankS returns the time in s to freeze a body through, all sensible heat
// left out:
//
//	t = ρL/(Tf − Ta) (P a/h + R a²/k)
//
// latent is ρL in J/m³, below is Tf − Ta in K, size a in m is the thickness of
// a slab or the diameter of a cylinder or sphere, h in W/(m² K) includes any
// packaging, k in W/(m K) is the frozen body's. All must be positive; otherwise
// it returns NaN. It is short of the truth by the sensible heat, often a third.
//
// Source: Plank R. 1941, as given by Singh R.P., Heldman D.R., Introduction to
// Food Engineering, ch. 7. Check there: a sphere of 7 cm in 0.72 h.
func PlankS(s Shape, latentJPerM3, belowK, sizeM, h, k float64) float64 {
	c, ok := plank[s]
	if !ok || !(latentJPerM3 > 0 && belowK > 0 && sizeM > 0 && h > 0 && k > 0) {
		return math.NaN()
	}
	return latentJPerM3 / belowK * (c.p*sizeM/h + c.r*sizeM*sizeM/k)
}

// Shape is a body whose temperature has one coordinate.
type Shape int

// The shapes.
const (
	PlaneWall Shape = iota
	LongCylinder
	Ball
)

// plank holds P and R of Plank's formula, from the source named at PlankS.
var plank = map[Shape]struct{ p, r float64 }{
	PlaneWall:    {1. / 2, 1. / 8},
	LongCylinder: {1. / 4, 1. / 16},
	Ball:         {1. / 6, 1. / 24},
}
