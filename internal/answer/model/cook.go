package model

import (
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/work/design"
)

// cooked is the two phases finished, as written, with what the sensitivities
// need to know of the cooking.
type cooked struct {
	dense custard
	foam  readings
	syrup syrup
	bound solution.Bound
	perG  []mix.Mix // by line, see weighed
}

// custard is the custard off the stove, as written.
type custard struct {
	mix   readings
	off   float64 // g water
	short bool    // the stove loss asks for more water than there is
}

// cook drives the water off both phases and beats the syrup into the whites, whose
// readings have so many points of solids more than the thermometer says.
func cook(d design.Design, w *weighed, points [3]float64) cooked {
	c := cooked{
		dense: stove(w.mixes[design.DensePart], d.Dense.StoveLossPercent),
		foam:  w.mixes[design.FoamPart],
		bound: solution.Bound{ProteinGPerG: d.Model.ProteinGPerG, FibreGPerG: d.Model.FibreGPerG},
		perG:  w.perG,
	}
	syrups := boil(w.mixes[design.SyrupPart], d, points)
	for i := range c.foam {
		c.foam[i] = c.foam[i].Plus(syrups[i].mix)
	}
	c.syrup = syrups[0]
	c.syrup.alcoholOff = w.alcoholOff
	return c
}

// stove drives off percent of the custard's mass as water: off = min(p/100 Σg, water).
func stove(m readings, percent float64) custard {
	c := custard{mix: m}
	for i := range c.mix {
		off := percent / 100 * c.mix[i].TotalG()
		have := c.mix[i].Grams[mix.Water]
		if off > have {
			off, c.short = have, true
		}
		c.mix[i].Grams[mix.Water] = have - off
	}
	c.off = min(percent/100*m[0].TotalG(), m[0].Grams[mix.Water])
	return c
}
