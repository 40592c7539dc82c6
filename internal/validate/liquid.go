package validate

import (
	"math"

	"ripplewright/internal/mix"
	"ripplewright/internal/solution"
)

func liquidChecks() []check {
	var list []check
	for _, s := range [...]mix.Species{mix.Sucrose, mix.Glucose, mix.Fructose} {
		list = append(list, func(t *tables) ([]Row, error) { return densityAndViscosity(t, s), nil })
	}
	return list
}

func densityAndViscosity(t *tables, s mix.Species) []Row {
	name := s.String() + "_density_20C"
	density := Row{Table: name, Source: handbook, Unit: "%", Bar: 0.3, Kind: Regression,
		XLabel: s.String() + ", mass %", YLabel: "density at 20 °C, g/mL"}
	viscosity := Row{Table: name + " (viscosity)", Source: handbook, Unit: "%", Bar: 5, Kind: Independent,
		XLabel: s.String() + ", mass %", YLabel: "viscosity at 20 °C, mPa s",
		Note: "Genotelle's formula (from memory)."}
	if s != mix.Sucrose {
		viscosity.Bar = 50
		viscosity.Note = "A wide bar, openly: the hardness law takes every syrup as sucrose at the same solids, and a syrup of single sugars is thinner. The syrup makes under 1 % of a custard's hardness and a sixth of a foam's, inside the factor 2 that is stated."
	}
	for _, l := range t.read(name) {
		p := l.num("mass_pct")
		why := ""
		if p > 60 {
			why = "beyond the 60 % of the bar"
		}
		density.addRelative(p, solution.Density(binary(s, p), 20), l.num("density_g_ml")).named("", why)
		if v := l.num("viscosity_mPa_s"); !math.IsNaN(v) {
			viscosity.addRelative(p, 1000*solution.Viscosity(p, 20), v)
		}
	}
	return []Row{density, viscosity}
}
