package cold

import (
	"math"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/heat"
)

// Place is where a tub stands: the air and how well it carries heat.
type Place struct {
	AirC               float64 // °C
	HumidityPercent    float64 // of the air; frost and dew bring heat with them
	CoefficientWPerM2K float64 // outside, W/(m² K), radiation included; 0: still air, computed
	ShelfWPerM2K       float64 // below, W/(m² K); 0: as all round
	Factor             float64 // on the coefficients, from a measured time; 1: none
	Measured           string  // what the factor rests on; "": nothing

	// LearntSpreadFraction is how far the coefficient may still be off once a notebook
	// of batches has taught the factor; 0: nothing was learnt. No file keeps it.
	LearntSpreadFraction float64
}

// The bands of a coefficient. Measured coefficients of food scatter by 30 %:
// ASHRAE research project 1123-RP (from its statement of scope). What is left
// after one measured time is an estimate: another tub, another day.
const (
	spread                 = 0.30
	SpreadMeasuredFraction = 0.10
	emissivity             = 0.9 // paper, plastic, frost: from memory
)

// SpreadFraction returns how far the coefficient may be off, as a share of it.
func (p Place) SpreadFraction() float64 {
	if p.LearntSpreadFraction > 0 {
		return min(p.LearntSpreadFraction, spread)
	}
	if p.Measured != "" {
		return SpreadMeasuredFraction
	}
	return spread
}

// stillWall bounds the height of the wall whose coefficient still air gets, mm:
// below, a dish's wide faces decide; above, the wall formula ends.
var stillWall = [2]float64{80, 300}

// around returns what a vessel of the given height meets here, its coefficient
// times scale. surfaceC decides the still air's.
func (p Place) around(heightMM, surfaceC, scale float64, pack Package, lid float64) (heat.Surroundings, error) {
	h := p.CoefficientWPerM2K
	if h == 0 {
		c, err := heat.StillAir(heat.UprightWall{
			HeightM: math.Min(math.Max(heightMM, stillWall[0]), stillWall[1]) / 1000, Emissivity: emissivity, HumidityFraction: p.HumidityPercent / 100,
		}, surfaceC, p.AirC)
		if err != nil {
			return heat.Surroundings{}, flaw.New("air at %.0f °C: %v", p.AirC, err)
		}
		h = c.TotalWPerM2K()
	}
	below := p.ShelfWPerM2K
	if below == 0 {
		below = h
	}
	scale *= p.Factor
	face := func(h, resistance float64) heat.Face {
		return heat.Face{AmbientC: p.AirC, WPerM2K: h * scale, M2KPerW: resistance}
	}
	return heat.Surroundings{
		Side:   face(h, pack.WallM2KPerW),
		Top:    face(h, lid),
		Bottom: face(below, pack.WallM2KPerW),
	}, nil
}
