package process

import (
	"math"

	"ripplewright/internal/matter/heat"
	"ripplewright/internal/matter/num"
)

// Cooling limits of the US Food Code 2022, 3-501.14(A), °C and minutes (read in
// food-handler manuals): 135 °F to 70 °F within 2 h, to 41 °F within 6 h in all.
const (
	CoolFromC, CoolByC, ColdC = 57, 21, 5
	CoolByMin, ColdByMin      = 120, 360
)

// An ice bath, stirred, in a steel bowl: 250 W/(m² K) over 0.06 m² (estimates,
// no source) for 1.2 kg, which cools in 12 to 15 min; a bowl's wetted surface
// grows with the mass to the power 2/3.
const (
	bathWPerM2K  = 250.0
	bathM2       = 0.06
	bathGrams    = 1200.0
	iceKGPerKG   = 0.8 // ice for each kg of custard from 82 to 5 °C, of the same table
	bathIsCooler = 1   // K that the bath must be below what is wanted
)

// A refrigerator: still air and radiation, W/(m² K), and a custard that is not
// stirred (both from memory; surfaces in a refrigerator measure 5 to 10).
const (
	fridgeWPerM2K = 7.0
	custardWPerMK = 0.45
	custardGPerML = 1.08
)

// Cool is how the cooked custard gets cold.
type Cool struct {
	FromC, ToC  float64
	BathMinutes float64 // stirred in an ice bath; NaN if it does not get there
	IceKG       float64 // that the bath takes
	FridgeHours float64 // instead, unstirred in one covered pot; NaN if not within two days
	FridgeMeets bool    // the refrigerator alone keeps the Food Code's times
	BathMeets   bool
}

// cool follows grams of custard of specific heat c, J/(g K), from from °C. A stirred
// pot has one temperature, by Newton's law of cooling:
//
//	t = m c/(h A) ln((T₀ − T_bath)/(T − T_bath)),  A ∝ m^⅔
func cool(grams, c, from float64, k Kitchen) Cool {
	o := Cool{FromC: from, ToC: ColdC, IceKG: iceKGPerKG * grams / 1000}
	area := bathM2 * math.Pow(grams/bathGrams, 2.0/3)
	tau := grams * c / (bathWPerM2K * area) / 60
	bath := func(a, b float64) float64 {
		if b-k.IceBathC < bathIsCooler {
			return math.NaN()
		}
		return tau * math.Log((a-k.IceBathC)/(b-k.IceBathC))
	}
	o.BathMinutes = bath(from, ColdC)
	o.BathMeets = bath(math.Min(from, CoolFromC), CoolByC) <= CoolByMin && bath(math.Min(from, CoolFromC), ColdC) <= ColdByMin
	start := fridge(grams, c, from, math.Min(from, CoolFromC), k)
	warm := fridge(grams, c, from, CoolByC, k) - start
	cold := fridge(grams, c, from, ColdC, k)
	o.FridgeHours = cold / 60
	o.FridgeMeets = warm <= CoolByMin && cold-start <= ColdByMin
	return o
}

// fridge returns the minutes until the core of one pot, twice as wide as deep,
// has come from from to to °C: the product of the exact series of cylinder and
// slab (Carslaw & Jaeger 1959, Conduction of Heat in Solids, sections 1.15, 3.11
// and 7.7), at the middle of both. NaN beyond two days.
//
//	(T − T_air)/(T₀ − T_air) = X(αt/R²) Y(αt/(R/2)²),  depth = R, V = π R³
func fridge(grams, c, from, to float64, k Kitchen) float64 {
	if to >= from {
		return 0
	}
	y := (to - k.FridgeC) / (from - k.FridgeC)
	if !(y > 0) {
		return math.NaN()
	}
	radius := math.Cbrt(grams / custardGPerML * 1e-6 / math.Pi) // m; depth = radius
	wide, errWide := heat.NewSeries(heat.LongCylinder, fridgeWPerM2K*radius/custardWPerMK)
	deep, errDeep := heat.NewSeries(heat.PlaneWall, fridgeWPerM2K*radius/2/custardWPerMK)
	if errWide != nil || errDeep != nil {
		return math.NaN()
	}
	alpha := custardWPerMK / (custardGPerML * 1e6 * c) // m²/s
	at := func(minutes float64) float64 {
		s := minutes * 60 * alpha
		return wide.At(0, s/(radius*radius)) * deep.At(0, s/(radius*radius/4))
	}
	const twoDays = 2880.0
	if at(twoDays) > y {
		return math.NaN()
	}
	return num.RootOrEnd(func(minutes float64) float64 { return at(minutes) - y }, 0, twoDays, 1e-6)
}
