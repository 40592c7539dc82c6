package process

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/num"
)

// A freezer's promise: at least 4.5 kg per 100 L in 24 h, never under 2 kg, from
// room temperature to −18 °C, of a four-star compartment (EU definition,
// Regulation 643/2009 or 1060/2010; read in its German and Dutch text). A kg of
// the test's load is 345 kJ (from memory).
const (
	starKGPer100L = 4.5
	starLeastKG   = 2
	testKJPerKG   = 345
)

// Freezing is what the freezer is asked for.
type Freezing struct {
	Dishes       int     // of the custard, DishMM deep
	Fits         bool    // on the shelf, side by side
	LoadKJ       float64 // of both phases, from the refrigerator to hard
	CanKJ        float64 // that the freezer takes in a day, as rated
	Loaded       float64 // LoadKJ / CanKJ
	ChurnRuns    int     // of the custard; 0 without a churn
	ChillTheC    float64 // the foam may be no warmer than this when it goes into the custard
	IceLostG     float64 // of the custard's ice in one tub, were the foam stirred in at room temperature
	IceInTubG    float64 // of the custard in one tub, at swirling
	SwirlAtC     float64 // the custard's temperature then
	MeltFraction float64 // share of that ice which a foam at ChillTheC melts
}

// At swirling about half of the custard's water is ice (see cold.readyAt), and
// the foam may melt this share of it: an estimate, no source.
const (
	halfFrozen = 0.5
	mayMelt    = 0.05
)

// freeze weighs the batch against the freezer and finds how cold the foam must
// be before it is stirred in.
func freeze(r *model.Result, tubs float64, toC float64, k Kitchen) Freezing {
	f := Freezing{ChillTheC: math.NaN(), SwirlAtC: math.NaN(), Fits: true}
	dense, foam := &r.Dense, &r.Foam
	if ml := dense.Portion.MadeML / (1 + dense.Body.OverrunFraction); ml > 0 {
		f.Dishes = int(math.Ceil(ml/(k.DishCM2*k.DishMM/10) - 1e-9))
		f.Fits = float64(f.Dishes)*k.DishCM2 <= k.ShelfCM2
		if k.ChurnBowlML > 0 && k.Churns() {
			f.ChurnRuns = int(math.Ceil(ml/k.ChurnBowlML - 1e-9))
		}
	}
	for _, p := range [...]*model.Phase{dense, foam} {
		if p.Portion.MadeG > 0 {
			f.LoadKJ += p.Portion.MadeG * (p.Body.JPerG(k.FridgeC) - p.Body.JPerG(toC)) / 1000
		}
	}
	kg := k.FreezesKG
	if kg <= 0 {
		kg = math.Max(starLeastKG, starKGPer100L*k.FreezerL/100)
	}
	f.CanKJ = kg * testKJPerKG
	f.Loaded = f.LoadKJ / f.CanKJ
	if dense.InTub() && foam.InTub() && tubs > 0 {
		f.chill(dense, foam, tubs, k)
	}
	return f
}

// chill closes the heat balance of one tub: half-frozen custard and foam come
// to one temperature, and what ice the custard loses is what the foam melted.
//
//	m_d h_d(T_swirl) + m_f h_f(T_foam) = m_d h_d(T) + m_f h_f(T),  h in J/g
func (f *Freezing) chill(dense, foam *model.Phase, tubs float64, k Kitchen) {
	at := dense.Body.FrozenAtC(halfFrozen)
	if math.IsNaN(at) {
		return
	}
	f.SwirlAtC = at
	d, w := dense.Portion.MassG/tubs, foam.Portion.MassG/tubs
	f.IceInTubG = d * dense.Body.At(at).IceMassFraction
	ice := func(foamC float64) float64 { // lost
		sum := d*dense.Body.JPerG(at) + w*foam.Body.JPerG(foamC)
		t := even(func(t float64) float64 { return d*dense.Body.JPerG(t) + w*foam.Body.JPerG(t) }, sum, -40, 60)
		return f.IceInTubG - d*dense.Body.At(t).IceMassFraction
	}
	f.IceLostG = ice(k.RoomC)
	if ice(at) > mayMelt*f.IceInTubG {
		f.ChillTheC = at
		return
	}
	f.ChillTheC = even(ice, mayMelt*f.IceInTubG, at, 60)
	f.MeltFraction = ice(f.ChillTheC) / f.IceInTubG
}

// even returns where the rising f comes to want, between lo and hi.
func even(f func(float64) float64, want, lo, hi float64) float64 {
	return num.RootOrEnd(func(x float64) float64 { return f(x) - want }, lo, hi, 1e-9)
}
