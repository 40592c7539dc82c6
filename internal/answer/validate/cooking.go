package validate

import (
	"math"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

func cookingChecks() []check {
	return []check{publishedSyrup, hotMix, lethality, eggMasses, italianSyrup}
}

// publishedSyrup sets the boiling model beside single figures of other works.
func publishedSyrup(t *tables) ([]Row, error) {
	const name = "syrup_published"
	mcgee := Row{Table: name + " (McGee)", Source: "McGee 2004, On Food and Cooking", Unit: "% sucrose", Bar: 3.3, Kind: Independent, XLabel: "thermometer, °C", YLabel: "sugar, mass %",
		Note: flaw.Say("The book gives 90 % at 125 °C and at 132 °C: its own figures part by more than the program states.")}
	japan := Row{Table: name + " (small pans)", Source: "J. Cookery Sci. Japan 43(3), Italian meringue", Unit: "% sucrose", Bar: 3, Kind: Independent, XLabel: "thermometer, °C", YLabel: "sugar, mass %",
		Note: flaw.Say("Thin syrups in small pans were found far drier than any table has them: they boil on while they are weighed. Counted from 120 °C.")}
	for _, l := range t.read(name) {
		at := l.num("T_C")
		got := solution.SucrosePercent(solution.BoilingFraction(at, water.StandardPressure))
		if want := l.num("mcgee_pct"); !math.IsNaN(want) {
			mcgee.add(at, got, want)
		}
		if want := l.num("japan_pct"); !math.IsNaN(want) {
			why := ""
			if at < 120 {
				why = "a small pan boils on by its own heat"
			}
			japan.add(at, got, want).named("", why)
		}
	}
	return []Row{mcgee, japan}, nil
}

// hotMix is syrup into 100 g of white at 20 °C, bare and in a bowl of 600 g
// steel of which 60 % is in contact.
func hotMix(t *tables) ([]Row, error) {
	const name = "meringue_mixing"
	const source = "heat balance worked apart; specific heat of syrup by Bubnik et al. 1995, Sugar Technologists Manual, from memory"
	bare := Row{Table: name + " (alone)", Source: source, Unit: "K", Bar: 0.1, Kind: Twice, XLabel: "g syrup to 100 g white", YLabel: "mixed, °C"}
	bowl := Row{Table: name + " (in a bowl)", Source: source, Unit: "K", Bar: 0.1, Kind: Twice, XLabel: bare.XLabel, YLabel: bare.YLabel,
		Note: flaw.Say("Air and evaporation take 5 to 8 K more while it is whisked, by the estimate that the program follows from minute to minute.")}
	for _, l := range t.read(name) {
		h := process.Hot{SyrupG: l.num("syrup_g_per_100g_white"), SyrupC: l.num("T_syrup_C"), SolidsPercent: 100 * l.num("w"), WhitesG: 100, WhitesC: 20, WhitesJPerGK: 3.90}
		bare.add(h.SyrupG, h.MixedC(), l.num("T_adiabatic_C"))
		h.BowlJPerK, h.BowlC = 0.6*600*0.50, 22
		bowl.add(h.SyrupG, h.MixedC(), l.num("T_with_bowl_C"))
	}
	return []Row{bare, bowl}, nil
}

// lethality follows the tabled history: from 20 °C to its peak in 90 s, then
// down towards 22 °C, 900 s by 1 s. Both sides are rounded to the table's
// digits.
func lethality(t *tables) ([]Row, error) {
	const name = "lethality"
	row := func(set, source string) Row {
		return Row{Table: name + " (" + set + ")", Source: source, Unit: "%", Bar: 0.01, Kind: Twice, XLabel: "hottest, °C", YLabel: "tenfold reductions"}
	}
	sets := []struct {
		column string
		data   process.Killing
		row    Row
	}{
		{"logred_A", process.AlbumenPlain, row("egg white", "Garibaldi, Straka & Ijichi 1969, Appl. Microbiol. 17:491, egg white, summed apart")},
		{"logred_B", process.AlbumenSugar10, row("egg white with sugar", "Garibaldi, Straka & Ijichi 1969, 10 % sucrose, summed apart")},
		{"logred_C", process.Sugared87, row("thick sugar", "Mattick et al. 2001, Appl. Environ. Microbiol. 67:4128, table 7, water activity 0.87, summed apart")},
	}
	sets[0].row.Note = flaw.Say("Never used of a meringue: by these figures one that peaks at 65 °C would have hundreds of tenfold reductions, by those of sugar less than one.")
	for _, l := range t.read(name) {
		peak := l.num("T_peak_C")
		c := process.Course{StepMinutes: 1.0 / 60}
		for s := 0; s <= 900; s++ {
			v := 20 + (peak-20)*float64(s)/90
			if s > 90 {
				v = 22 + (peak-22)*math.Exp(-float64(s-90)/1100)
			}
			c.C = append(c.C, v)
		}
		for i := range sets {
			x := &sets[i]
			digit := l.lastDigit(x.column)
			x.row.addRelative(peak, digit*math.Round(x.data.LogReduction(c)/digit), l.num(x.column))
		}
	}
	return []Row{sets[0].row, sets[1].row, sets[2].row}, nil
}

// eggMasses are those that count eggs into grams.
func eggMasses(t *tables) ([]Row, error) {
	const name = "egg_masses"
	parts := Row{Table: name + " (contents)", Source: "USDA SR28 NDB 01123, 01124 and 01125", Unit: "g", Bar: 0.05, Kind: Regression, XLabel: "contents, g", YLabel: "g"}
	class := Row{Table: name + " (class)", Source: "AMS 56; Commission Regulation (EC) No 589/2008, Article 4", Unit: "g outside the class", Bar: 0.05, Kind: Identity, XLabel: "in shell, g", YLabel: "g"}
	whole := Row{Table: name + " (sum)", Source: "yolk and white make up the contents, contents and shell the egg: shell 12 % by the refuse of USDA SR28 NDB 01123", Unit: "g", Bar: 0.2, Kind: Identity, XLabel: "in shell, g", YLabel: "contents, g"}
	trade := Row{Table: name + " (trade)", Source: "American trade tables (secondary pages)", Unit: "g", Bar: 3, Kind: Remembered, XLabel: "g", YLabel: "g",
		Note: flaw.Say("A large egg as the trade counts it: 30 g white, 18 to 20 g yolk, 7 g shell. The same egg, parted with more white on the yolk.")}
	for _, l := range t.read(name) {
		s, err := egg.Find(l.text("system"), l.text("size"))
		if err != nil {
			return nil, err
		}
		label := s.System + " " + s.Name
		add := func(r *Row, got, want float64) {
			if !math.IsNaN(want) {
				r.add(got, got, want).Label = label
			}
		}
		add(&parts, s.EdibleG, l.num("edible"))
		add(&parts, s.YolkG, l.num("yolk"))
		add(&parts, s.WhiteG, l.num("white"))
		add(&trade, s.YolkG, l.num("trade_yolk"))
		add(&trade, s.WhiteG, l.num("trade_white"))
		inside := s.InShellG
		if least := l.num("in_shell_least"); inside < least {
			inside = least
		}
		if most := l.num("in_shell_most"); inside > most {
			inside = most
		}
		class.add(s.InShellG, s.InShellG, inside).Label = label
		whole.add(s.InShellG, s.YolkG+s.WhiteG, s.EdibleG).Label = label
	}
	large, err := egg.Find("US", "large")
	if err != nil {
		return nil, err
	}
	trade.add(large.InShellG-large.EdibleG, large.InShellG-large.EdibleG, 7).Label = "US large, shell"
	return []Row{parts, class, whole, trade}, nil
}

// boiledDown is what 180 g of sugar and so much water come to at 118 °C, g.
func boiledDown(waterG float64) float64 {
	var m mix.Mix
	m.Grams[mix.Sucrose], m.Grams[mix.Water] = 180, waterG
	return 180 + solution.WaterAtBoilG(m, 118, water.StandardPressure)
}

// italianSyrup is what the trade knows of a syrup without having measured it.
func italianSyrup(*tables) ([]Row, error) {
	little := Row{Table: "a syrup of 115 °C keeps little water", Source: "common practice, no source: a seventh of it or less", Unit: "% of the syrup", Bar: 15, Kind: Remembered, XLabel: "thermometer, °C", YLabel: "water, %"}
	start := Row{Table: "starting water does not matter", Source: "common practice, no source: any water that dissolves the sugar boils down to the same syrup", Unit: "g", Bar: 1e-9, Kind: Remembered, XLabel: "g water to 180 g sugar", YLabel: "g syrup at 118 °C"}
	little.add(115, 100-solution.SucrosePercent(solution.BoilingFraction(115, water.StandardPressure)), 0)
	for _, g := range [...]float64{60, 100, 180} {
		start.add(g, boiledDown(g), boiledDown(60))
	}
	return []Row{little, start}, nil
}
