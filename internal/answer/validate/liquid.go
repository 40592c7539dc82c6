package validate

import (
	"math"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

func liquidChecks() []check {
	var list []check
	for _, s := range [...]mix.Species{mix.Sucrose, mix.Glucose, mix.Fructose} {
		list = append(list, func(t *tables) ([]Row, error) { return densityAndViscosity(t, s), nil })
	}
	return append(list, dissolvedDensity, components)
}

func densityAndViscosity(t *tables, s mix.Species) []Row {
	name := s.String() + "_density_20C"
	density := Row{Table: name, Source: handbook, Unit: "%", Bar: 0.3, Kind: Regression,
		XLabel: "solute, mass %", YLabel: "density at 20 °C, g/mL"}
	viscosity := Row{Table: name + " (viscosity)", Source: handbook, Unit: "%", Bar: 5, Kind: Independent,
		XLabel: "solute, mass %", YLabel: "viscosity at 20 °C, mPa s",
		Note: flaw.Say("Genotelle's formula (from memory), to which this table gave nothing.")}
	if s != mix.Sucrose {
		viscosity.Kind = Regression
		viscosity.Note = flaw.Say("Genotelle's formula for sucrose with one constant fitted to this table: how much sucrose thickens as much as a gram of this sugar. The hardness law does not use it: its film is that of sucrose at the same solids, up to half as thick again as a syrup of this sugar alone, and the band of the hardness reaches down to the thinner film.")
	}
	for _, l := range t.read(name) {
		p := l.num("mass_pct")
		why := ""
		if p > 60 {
			why = "beyond the 60 % of the bar"
		}
		m := binary(s, p)
		density.addRelative(p, solution.GPerML(m, 20), l.num("density_g_ml")).named("", why)
		if v := l.num("viscosity_mPa_s"); !math.IsNaN(v) {
			viscosity.addRelative(p, 1000*solution.ViscosityPaS(solution.SucroseAsThickPercent(m), 20), v)
		}
	}
	return []Row{density, viscosity}
}

func dissolvedDensity(t *tables) ([]Row, error) {
	r := Row{Table: "dissolved_density_20C", Source: "OIML R 22 (1975) for ethanol; Bosart & Snoddy 1928, Ind. Eng. Chem. 20:1377 for glycerol; International Critical Tables for the salts (every figure from memory)",
		Unit: "%", Bar: 0.3, Kind: Remembered, XLabel: "g/mL", YLabel: "density at 20 °C, g/mL",
		Note: flaw.Say("The constants for these substances came from this table.")}
	species := map[string]mix.Species{"ethanol": mix.Ethanol, "glycerol": mix.Glycerol, "sodium chloride": mix.SodiumChloride, "potassium chloride": mix.PotassiumChloride}
	for _, l := range t.read(r.Table) {
		p, want := l.num("mass_pct"), l.num("density_g_ml")
		r.addRelative(want, solution.GPerML(binary(species[l.text("solute")], p), 20), want).Label = l.text("solute") + " " + l.text("mass_pct") + " %"
	}
	return []Row{r}, nil
}

func components(t *tables) ([]Row, error) {
	r := Row{Table: "choi_okos_components", Source: "Choi & Okos 1986, in Food Engineering and Process Applications vol. 1, pp. 93–101; ASHRAE Refrigeration Handbook 2006, ch. 9, tables 1 and 2",
		Unit: "%", Bar: 0.01, Kind: Twice, XLabel: "°C", YLabel: "conductivity, density or heat capacity",
		Note: flaw.Say("The polynomials evaluated apart, to the printed digit. Liquid water has its density from Kell 1975 instead.")}
	solids := map[string]solution.Component{"protein": solution.Components.Protein, "fat": solution.Components.Fat, "carbohydrate": solution.Components.Carbohydrate,
		"fibre": solution.Components.Fibre, "ash": solution.Components.Ash}
	for _, l := range t.read(r.Table) {
		name, property := l.text("component"), l.text("property")
		of := map[string]func(float64) float64{
			"water k": water.WPerMK, "ice k": water.IceWPerMK, "ice rho": water.IceKGPerM3,
			"water_above_0 cp": water.JPerGK, "water_below_0 cp": water.JPerGK, "ice cp": water.IceJPerGK,
		}[name+" "+property]
		if c, ok := solids[name]; ok {
			k := map[string][3]float64{"k": c.WPerMK, "rho": c.KGPerM3, "cp": c.JPerGK}[property]
			of = func(at float64) float64 { return solution.At(k, at) }
		}
		if of == nil {
			continue // the density of water
		}
		for _, at := range [...]struct {
			column string
			c      float64
		}{{"at_-18", -18}, {"at_0", 0}, {"at_20", 20}, {"at_60", 60}} {
			if want := l.num(at.column); !math.IsNaN(want) {
				r.addRelative(at.c, of(at.c), want).Label = property + " of " + name + " at " + l.text(at.column)
			}
		}
	}
	return []Row{r}, nil
}
