package solution

import (
	"ripplewright/internal/mix"
	"ripplewright/internal/water"
)

// Gordon–Taylor: T_g = (w T_gs + k (1−w) T_gw)/(w + k (1−w)), kelvin, with
// k = 0.0293 T_gs(°C) + 3.61. Dry T_g and k after Roos 1993 (from memory).
var (
	glassWater = 138.0 // K
	glassK     = [2]float64{0.0293, 3.61}
	glassDry   = [...]struct {
		species mix.Species
		tg      float64 // °C, dry
	}{
		{mix.Sucrose, 62}, {mix.Glucose, 31}, {mix.Fructose, 5}, {mix.Lactose, 101},
		{mix.Maltose, 87}, {mix.Galactose, 30},
	}
)

// GlassTemperature returns the glass transition of a liquid whose solids are
// the sugars of m and whose water is w g, °C. The dry value is the sugars'
// mean by mass; ok is false where m has no sugar in the table.
//
// It is good to about 3 K for the maximally freeze-concentrated liquid, and
// reads too cold for disaccharides. Check: 80 % sucrose, −51.4 °C.
func GlassTemperature(m mix.Mix, w float64) (t float64, ok bool) {
	var g, tg float64
	for _, d := range glassDry {
		g += m.Mass[d.species]
		tg += m.Mass[d.species] * d.tg
	}
	if g == 0 {
		return 0, false
	}
	tg /= g
	k := glassK[0]*tg + glassK[1]
	x := g / (g + w)
	return (x*(tg+water.ZeroC)+k*(1-x)*glassWater)/(x+k*(1-x)) - water.ZeroC, true
}
