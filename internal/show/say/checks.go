package say

import (
	"ripplewright/internal/answer/model"
)

// Checks lists what the scale shows on the way: the pan after cooking, a cup of
// each phase with its air, and what goes into a tub.
func Checks(s Style, m Making) []Titled {
	d, r := m.Design, m.Result
	var c []Titled
	add := func(what, figure string) { c = append(c, Titled{what, figure}) }
	cup := func(p *model.Phase) {
		if p.Body.OverrunFraction > 0 {
			name, ml := s.levelCup()
			add(T("A level %s of %s, %s overrun", name, Of(p.Body.Role.String()), s.Percent(100*p.Body.OverrunFraction, 0)), s.Mass(ml*p.Body.GPerML()))
		}
	}
	if r.Dense.InTub() {
		if c := &m.Process.Custard; c.WaterOffG > 0 && m.Process.WeighAt() != "" {
			add(T("%s in the pan, cooked", Capital((&stepWords{s, m, nil}).denseName())), s.Mass(c.WeighedG))
		}
		cup(&r.Dense)
	}
	if r.Foam.InTub() {
		if r.Syrup.Present && r.Syrup.WaterOffG > 0 {
			add(T("Syrup in the pan at %s", s.Temperature(d.Foam.Syrup.CookTemperatureC)), s.Mass(r.Syrup.MassG))
		}
		cup(&r.Foam)
	}
	for _, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		if n := r.Blend.TubsFilled; p.InTub() && n > 0 {
			add(T("Into each tub: %s, %s", Of(p.Body.Role.String()), s.Volume(p.Portion.VolumeML/n)), s.Mass(p.Portion.MassG/n))
		}
	}
	return c
}
