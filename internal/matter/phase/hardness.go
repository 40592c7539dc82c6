package phase

import (
	"math"

	"ripplewright/internal/matter/mix"
)

// Densities for the ice volume of the hardness model, g/mL. They are part of
// its calibration, not best values; see package solution for those.
const (
	iceDensity     = 0.917
	waterDensity   = 1.00
	sugarDensity   = 1.60
	ethanolDensity = 0.79
	fatDensity     = 0.93
	proteinDensity = 1.33
	ashDensity     = 2.42
)

// hardnessVolume returns the mL of everything in m but its water.
func hardnessVolume(m mix.Mix) float64 {
	carb := m.SaccharidesG() + m.Grams[mix.Starch] + m.Grams[mix.Fibre] + m.Grams[mix.OtherSolids] + m.FruitAcidG()
	return carb/sugarDensity + m.Grams[mix.Ethanol]/ethanolDensity + m.Grams[mix.Fat]/fatDensity +
		m.Grams[mix.Protein]/proteinDensity +
		(m.Grams[mix.Ash]+m.Grams[mix.SodiumChloride]+m.Grams[mix.PotassiumChloride])/ashDensity
}

// law holds the constants of the yield stress.
//
// The exponential in ice volume follows Wilbey, Cooke & Dimos 1998 (from
// memory); its two constants are ours, anchored on Briggs, Steffe & Ustunol
// 1996, J. Dairy Sci. 79:527 (vane yield stress of commercial ice cream at −16
// to −14 °C, 2.5–8.0 kPa). The exponent of the air is the plastic-collapse law
// of Gibson & Ashby 1997, Cellular Solids, without its factor 0.3, so that the
// body without air is recovered. shear is a spoon's rate, film the stiff-peak
// floor of a whipped egg white: both estimates.
var law = struct{ base, ice, shear, air, film float64 }{
	base: 0.0105, ice: 13.4, shear: 10, air: 1.5, film: 0.15,
}

// yield returns the yield stress in kPa: a scale of convenience in the unit of
// what it was anchored on.
//
//	τ = (base·exp(ice·φ) + shear·η/1000)(1 − φ_air)^air + film
//
// η is the viscosity of sucrose syrup of the same solids, whatever the sugars:
// testdata/tables/texture_model_reference.csv is computed so. A syrup of
// glucose or fructose alone is thinner, by a third at 58 and a quarter at 46 %;
// YieldThinKPa says what that does. The syrup makes under 1 % of a custard's
// hardness.
//
// It rises with the ice's share of the air-free volume and with the syrup's
// viscosity, so it falls as the phase warms; air softens it. Where there is no
// ice the syrup film and, in the foam, the egg-white film are what is left.
//
// Measured fact: the direction of every factor (Muse & Hartel 2004, J. Dairy
// Sci. 87:1; Sofjan & Hartel 2004, Int. Dairy J. 14:255) and the anchors.
// Convenience: that one number describes a spoon. One formula over 23 process
// conditions scattered by a factor 1.6 (geometric standard deviation), so take
// it as a word with a band of a factor 2 either way, and compare recipes of
// one process with it. Crystal size is not in it: coarse, still-frozen ice is
// harder.
func yield(iceVolume, viscosity, overrun float64, role Role) float64 {
	body := law.base*math.Exp(law.ice*iceVolume) + law.shear*viscosity/1000
	return body*math.Pow(1+overrun, -law.air) + film(role, overrun)
}

func film(role Role, overrun float64) float64 {
	if role == Foam && overrun > 0 {
		return law.film
	}
	return 0
}

// Scatter is the factor by which a batch may be harder or softer than the
// number: 2 covers about 85 % of the 23 conditions of
// testdata/tables/hardness_process_scatter.csv.
const Scatter = 2

// ScatterHolds is how many standard deviations of a normal spread hold those 85 %.
const ScatterHolds = 1.44

// Word is a step of the word scale for the spoon.
type Word struct {
	BelowKPa float64 // kPa; the step reaches from the one before to here
	Name     string
	Like     string // what it is like, and the published state it is anchored on
}

// Words is the word scale. The anchors: drawing from the freezer −5 to −6 °C
// with about half of the water frozen (McGee 2004, On Food and Cooking);
// dipping −12 to −16 °C (Briggs et al. 1996); storage −18 °C.
var Words = [...]Word{
	{0.1, "pourable", "slumps, a melted edge"},
	{0.6, "very soft", "holds a swirl, as drawn from a freezer at −5 to −6 °C"},
	{2.5, "soft", "spoons easily, −8 to −10 °C for an ordinary mix"},
	{6, "scoopable", "the dipping cabinet, −12 to −16 °C for an ordinary mix"},
	{12, "firm", "needs force, an ordinary mix straight from −18 °C"},
	{25, "hard", "temper it first, a dense custard without air at −18 °C"},
	{math.Inf(1), "very hard", "the hardening room"},
}

// WordFor returns the step of the word scale for a yield stress in kPa.
func WordFor(kPa float64) Word {
	for _, w := range Words {
		if kPa < w.BelowKPa {
			return w
		}
	}
	return Words[len(Words)-1]
}

// Band is the range of yield stress, kPa, in which a phase eats as it should.
type Band struct{ SoftKPa, FirmKPa float64 }

// Bands by role. The custard scoops from soft to scoopable; the ribbon yields
// as long as it neither slumps nor resists.
var bands = [...]Band{Dense: {0.6, 6}, Foam: {0.1, 6}}

// Band returns the range in which a phase of this role eats as it should.
func (r Role) Band() Band { return bands[r] }

// Holds reports whether kPa lies in the band.
func (b Band) Holds(kPa float64) bool { return kPa >= b.SoftKPa && kPa <= b.FirmKPa }

// ScoopRangeC returns the temperatures between lo and hi at which the phase is
// in its band: it starts to scoop at from, coming out of the cold, and is too
// soft above to. ok is false where no temperature is, or where the hardness law
// ends even at the warm end, so that nobody knows.
func (b *Body) ScoopRangeC(lowC, highC float64) (from, to float64, ok bool) {
	band := b.Role.Band()
	from, _ = b.YieldAtC(band.FirmKPa, lowC, highC)
	to, ok = b.YieldAtC(band.SoftKPa, lowC, highC)
	s := b.At(to)
	return from, to, ok && from < to && !b.LawRange(&s).Ends()
}
