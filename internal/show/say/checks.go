package say

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/work/design"
)

// Checks lists what the scale shows on the way: the pan after cooking, a cup of
// each phase with its air, and what goes into a tub.
func Checks(s Style, d design.Design, r *model.Result) []Titled {
	var c []Titled
	add := func(what, figure string) { c = append(c, Titled{what, figure}) }
	cup := func(p *model.Phase) {
		if p.Body.Overrun > 0 {
			add("A level "+s.Volume(process.CupML)+" cup of "+p.Body.Role.String()+", "+s.Percent(100*p.Body.Overrun, 0)+" overrun", s.Mass(process.CupML*p.Body.Density()))
		}
	}
	if r.Dense.InTub() {
		if r.Dense.WaterOff > 0 {
			add("Custard in the pan, cooked", s.Mass(r.Dense.Portion.MadeG))
		}
		cup(&r.Dense)
	}
	if r.Foam.InTub() {
		if r.Syrup.Present && r.Syrup.WaterOffG > 0 {
			add("Syrup in the pan at "+s.Temperature(d.Foam.Syrup.CookTemperatureC), s.Mass(r.Syrup.MassG))
		}
		cup(&r.Foam)
	}
	for _, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		if n := r.Blend.TubsFilled; p.InTub() && n > 0 {
			add("Into each tub: "+p.Body.Role.String()+", "+s.Volume(p.Portion.VolumeML/n), s.Mass(p.Portion.MassG/n))
		}
	}
	return c
}
