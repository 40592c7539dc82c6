package cold

import (
	"math"

	"ripplewright/internal/answer/tub"
	"ripplewright/internal/matter/heat"
	"ripplewright/internal/work/design"
)

// Vessel is the upright cylinder that stands for what the food is in.
type Vessel struct {
	RadiusMM float64
	HeightMM float64 // of the filling
	Box      bool    // it stands for a box of its volume and depth
}

// tubVessel returns the cylinder of one tub's filling.
func tubVessel(t design.Tubs) Vessel {
	d := tub.Size(t)
	v := Vessel{RadiusMM: d.LengthMM / 2, HeightMM: d.FillMM}
	if !d.Round {
		v.RadiusMM = math.Sqrt(d.BaseMM2() / math.Pi)
		v.Box = true
	}
	return v
}

// bowlDepth is the depth of a mixing bowl's filling over its width, and
// boxDepth that of a lidded box, mm. Common practice, no source.
const (
	bowlDepth = 0.31
	boxDepth  = 40
	dishDepth = 25
)

// layerVessel returns the cylinder of ml of a phase as it freezes in l.
func layerVessel(l Layer, ml float64) Vessel {
	mm3 := ml * 1000
	depth := l.DepthMM
	switch {
	case depth > 0:
	case l.Form == FormBowl:
		// depth = bowlDepth·2R and V = πR²·depth.
		depth = 2 * bowlDepth * math.Cbrt(mm3/(2*math.Pi*bowlDepth))
	case l.Form == FormBox:
		depth = boxDepth
	default:
		depth = dishDepth
	}
	return Vessel{RadiusMM: math.Sqrt(mm3 / (math.Pi * depth)), HeightMM: depth, Box: l.Form == FormBox}
}

// mesh divides the vessel into about the given number of even cells, as nearly
// square as 10 to 30 cells a side allow; for 0, as a tub.
func (v Vessel) mesh(cells float64) (heat.Mesh, error) {
	if cells == 0 {
		return heat.Tub(v.RadiusMM/1000, v.HeightMM/1000)
	}
	side := func(x float64) int { return int(math.Round(math.Min(math.Max(x, 10), 30))) }
	nr := side(math.Sqrt(cells * v.RadiusMM / v.HeightMM))
	nz := side(cells / float64(nr))
	return heat.Cylinder(v.RadiusMM/1000, v.HeightMM/1000, nr, nz)
}
