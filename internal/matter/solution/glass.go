package solution

import (
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/water"
)

// Gordon–Taylor: T_g = (w T_gs + k (1−w) T_gw)/(w + k (1−w)), kelvin, with
// k = 0.0293 T_gs(°C) + 3.61. Dry T_g and k after Roos 1993, Carbohydr. Res.
// 238:39; polyols after Roos 1995, Phase Transitions in Foods; the higher
// saccharides lie between maltotriose and maltohexaose, 134 and 175 °C (Orford
// et al. 1989, Int. J. Biol. Macromol. 11:91): all from memory.
var (
	glassWater = 138.0 // K
	glassK     = [2]float64{0.0293, 3.61}
	glassDry   = [...]struct {
		species mix.Species
		tg      float64 // °C, dry
	}{
		{mix.Sucrose, 62}, {mix.Glucose, 31}, {mix.Fructose, 5}, {mix.Lactose, 101},
		{mix.Maltose, 87}, {mix.Galactose, 30}, {mix.Trehalose, 107}, {mix.Allulose, 5}, // allulose as fructose
		{mix.HigherSaccharides, 140}, {mix.Sorbitol, -9}, {mix.Xylitol, -29}, {mix.Mannitol, 13},
		{mix.Erythritol, -45}, {mix.Maltitol, 39}, {mix.Isomalt, 60}, {mix.Lactitol, 50}, {mix.Glycerol, -93},
	}
)

// GlassC returns the glass transition of a liquid whose solids are
// the sugars, polyols and higher saccharides of m and whose water is w g, °C.
// The dry value is their mean by mass; ok is false where m has none of them.
//
// It is good to about 3 K for the maximally freeze-concentrated liquid, and
// reads too cold for disaccharides. Check: 80 % sucrose, −51.4 °C.
func GlassC(m mix.Mix, waterG float64) (t float64, ok bool) {
	var g, tg float64
	for _, d := range glassDry {
		g += m.Grams[d.species]
		tg += m.Grams[d.species] * d.tg
	}
	if g == 0 {
		return 0, false
	}
	tg /= g
	k := glassK[0]*tg + glassK[1]
	x := g / (g + waterG)
	return (x*(tg+water.ZeroC)+k*(1-x)*glassWater)/(x+k*(1-x)) - water.ZeroC, true
}
