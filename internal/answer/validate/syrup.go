package validate

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

const starzakPeacock = "Starzak & Peacock 1997, Zuckerindustrie 122:380, with IAPWS-IF97 saturation"

func syrupChecks() []check { return []check{boiling, syrupSolids, altitude, meeting} }

func boiling(t *tables) ([]Row, error) {
	const name = "syrup_boiling"
	ours := Row{Table: name, Source: starzakPeacock, Unit: "K", Bar: 0.01, Kind: Twice, XLabel: "sucrose, mass %", YLabel: "boiling point, °C"}
	browne := Row{Table: name + " (Browne 1912)", Source: "Browne 1912, A Handbook of Sugar Analysis, boiling-point elevation (as reprinted)", Unit: "K", Bar: 5.5, Kind: Independent,
		XLabel: "sucrose, mass %", YLabel: "boiling point, °C",
		Note: flaw.Say("A wide bar, openly: the old table and modern vapour pressures part by up to 5.4 K at 90 %. That is what a cooking thermometer cannot tell; weighing the pan can.")}
	for _, l := range t.read(name) {
		p := l.num("sucrose_pct")
		got := solution.BoilingC(solution.SucroseFraction(p), water.StandardPressure)
		ours.add(p, got, l.num("starzak_peacock_C"))
		browne.add(p, got, l.num("browne1912_C"))
	}
	return []Row{ours, browne}, nil
}

func syrupSolids(t *tables) ([]Row, error) {
	const name = "syrup_solids_at_temperature"
	ours := Row{Table: name, Source: starzakPeacock, Unit: "% sucrose", Bar: 0.01, Kind: Twice, XLabel: "thermometer, °C", YLabel: "sucrose, mass %",
		Note: flaw.Say("At sea level, 1000 m and 2000 m.")}
	browne := Row{Table: name + " (Browne 1912)", Source: "Browne 1912, A Handbook of Sugar Analysis (as reprinted)", Unit: "% sucrose", Bar: 5, Kind: Independent,
		XLabel: "thermometer, °C", YLabel: "sucrose, mass %",
		Note: flaw.Say("Counted from 104 °C. Thin syrups part most: there a degree is several points of solids.")}
	stated := Row{Table: name + " (Browne 1912, the stated band)", Source: browne.Source, Unit: "% sucrose", Bar: model.BoilingBand, Kind: Independent,
		XLabel: browne.XLabel, YLabel: browne.YLabel, Note: flaw.Say("From 114 °C on, where meringues are cooked, the old table lies within the band that the program states of every boil.")}
	heights := [...]struct {
		column string
		z      float64
	}{{"sp_sea_pct", 0}, {"sp_1000m_pct", 1000}, {"sp_2000m_pct", 2000}}
	for _, l := range t.read(name) {
		at := l.num("T_C")
		for _, h := range heights {
			x := solution.BoilingFraction(at, water.AirPa(h.z))
			ours.add(at, solution.SucrosePercent(x), l.num(h.column)).Label = h.column
		}
		if want := l.num("browne_sea_pct"); !math.IsNaN(want) {
			why := ""
			if at < 104 {
				why = "a thin syrup, whose boiling says little of its solids"
			}
			inBand := ""
			if at < 114 {
				inBand = "under 114 °C, where the program's band is too narrow"
			}
			stated.add(at, solution.SucrosePercent(solution.BoilingFraction(at, water.StandardPressure)), want).named("", inBand)
			browne.add(at, solution.SucrosePercent(solution.BoilingFraction(at, water.StandardPressure)), want).named("", why)
		}
	}
	return []Row{ours, browne, stated}, nil
}

func altitude(t *tables) ([]Row, error) {
	const name = "altitude"
	pressure := Row{Table: name + " (pressure)", Source: "US Standard Atmosphere 1976 (ICAO Doc 7488)", Unit: "kPa", Bar: 0.001, Kind: Twice, XLabel: "m", YLabel: "kPa"}
	boils := Row{Table: name + " (water)", Source: "IAPWS-IF97 (R7-97)", Unit: "K", Bar: 0.001, Kind: Twice, XLabel: "m", YLabel: "boiling point of water, °C"}
	same := Row{Table: name, Source: starzakPeacock, Unit: "K", Bar: 0.002, Kind: Twice, XLabel: "m", YLabel: "reading for the syrup of 118 °C at sea level, °C"}
	thumb := Row{Table: name + " (rule of thumb)", Source: "McGee 2004, On Food and Cooking: 1 °C less per 305 m", Unit: "K", Bar: 1.3, Kind: Independent, XLabel: "m", YLabel: "reading, °C",
		Note: flaw.Say("The rule of the kitchen, beside the computed reading.")}
	x := solution.BoilingFraction(118, water.StandardPressure)
	for _, l := range t.read(name) {
		z := l.num("z_m")
		p := water.AirPa(z)
		pressure.add(z, p/1000, l.num("p_kPa"))
		boils.add(z, solution.BoilingC(0, p), l.num("T_boil_water_C"))
		got := solution.BoilingC(x, p)
		same.add(z, got, l.num("T_same_syrup_as_118C"))
		thumb.add(z, got, l.num("thumb_rule_C"))
	}
	return []Row{pressure, boils, same, thumb}, nil
}

// meeting sets the cold and the hot activity model side by side where they
// meet: a syrup is cooked by one and frozen by the other.
func meeting(*tables) ([]Row, error) {
	r := Row{Table: "cold and hot models at 0–25 °C", Source: "the hydration model against Starzak & Peacock 1997, sucrose to 67 %",
		Unit: "water activity", Bar: 0.013, Kind: Independent, XLabel: "sucrose, mass %", YLabel: "water activity",
		Note: flaw.Say("A syrup is cooked by the hot model and frozen by the cold one, so they must agree where they meet. Measured water activities at 25 °C (sucrose_osmotic_25C) side with the hot one, to 0.001, and find the cold one 0.010 too low at 67 %: its hydration is that of freezing solutions. They part by less the nearer to 0 °C, and never by more than those errors together. The bar is a tenth of what such a syrup lowers the activity by.")}
	for p := 5.0; p <= 67; p += 2 {
		cold, err := solution.Activity(binary(mix.Sucrose, p), solution.Bound{}, 20)
		if err != nil {
			return nil, err
		}
		for _, at := range [...]float64{0, 12.5, 25} {
			hot := solution.SyrupActivity(solution.SucroseFraction(p), at)
			r.add(p, cold, hot)
		}
	}
	return []Row{r}, nil
}
