package say

import (
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/limits"
)

// makingCautions has one entry for each caution of the process.
var makingCautions = map[process.CautionCode]struct {
	title string
	text  func(Style, Making, process.Caution) string
}{
	process.WhitesStayCool: {"Eggs in the foam", func(s Style, m Making, c process.Caution) string {
		f := &m.Process.Foam
		what := beaten(m)
		text := "Know before you start: the syrup warms the " + what + " only to about " + s.TemperatureBand(f.PeakLowC, f.PeakHighC, 0)
		if m.Brief {
			text += ", " + tenfold(s, f.LogLow, f.LogHigh) + " of Salmonella (Mattick et al. 2001); the figure for egg dishes is "
		} else {
			text += ". By published data for solutions as sugary as these (Mattick et al. 2001) that is " +
				tenfold(s, f.LogLow, f.LogHigh) + " of Salmonella; the published figure for egg dishes is "
		}
		text += s.Temperature(c.Limit) + ". Take pasteurised " + what
		if f.Whites == process.FreshWhite {
			text += ", or first hold whites and a third of the sugar over hot water at " + s.Temperature(process.HoldFirstC) + " for 2 minutes, stirring"
		}
		return text + "."
	}},
	process.WhitesStayRaw: {"Eggs in the foam", func(s Style, m Making, c process.Caution) string {
		return "Without a hot syrup the " + beaten(m) + " stay raw unless you hold them hot; the published figure for egg dishes is " + s.Temperature(c.Limit) + ". Or take pasteurised " + beaten(m) + "."
	}},
	process.FoamAirBeyond: {"Air in the foam", func(s Style, m Making, c process.Caution) string {
		text := "The design wants " + s.Percent(c.Has, 0) + " air in the foam; one like this reaches " + s.span(s.Number(c.Low, 0), s.Number(c.Limit, 0), "%") + " (from memory, no measurement found)"
		if why := airCauses(m); why != "" {
			text += ", because " + why
		}
		return text + ". Weigh a cup of yours, and set what it says."
	}},
	process.CustardAirPast: {"Air in the custard", func(s Style, m Making, c process.Caution) string {
		how := "a tray beaten by hand"
		switch m.Process.Kitchen.CustardAir() {
		case &limits.FrozenBowlAir:
			how = "a churn with a frozen bowl"
		case &limits.BatchFreezerAir:
			how = "a batch freezer"
		}
		return s.Percent(c.Has, 0) + " air in the custard is more than " + how + " gives: " + s.Percent(c.Limit, 0) + " at most (" + c.Step.Source + ")."
	}},
	process.ManyWhites: {"Many whites", func(s Style, m Making, c process.Caution) string {
		return "Without a stand mixer one bowl takes about " + s.Mass(c.Limit) + " of white (common practice): beat these in " + s.Count(m.Process.Foam.Bowls, "bowl", "") + each(m) + "."
	}},
	process.FewWhites: {"Few whites", func(s Style, m Making, c process.Caution) string {
		return "Under about " + s.Mass(c.Limit) + " of white a whisk hardly catches (common practice): use a narrow bowl, or make more."
	}},
	process.DriedDry: {"Dried white", func(s Style, m Making, c process.Caution) string {
		return "The design gives it only " + s.Short(c.Has, 1) + " g of water to a gram, where " + s.Short(c.Limit, 0) + " g make it up (from memory): write the water into the foam's bowl, or it does not stand."
	}},
	process.EnzymeLives: {"Starch with yolk", func(s Style, m Making, c process.Caution) string {
		return "Up here the custard boils at " + s.Temperature(c.Has) + ", and the yolk's enzyme lives up to " + s.Temperature(c.Limit) + ": it thins the starch. Leave one of them out."
	}},
	process.BathTooSlow: {"Cooling", func(s Style, m Making, c process.Caution) string {
		return "One bowl of so much does not cool in time: share it among several, each in its own ice water."
	}},
	process.FridgeWarm: {"Refrigerator", func(s Style, m Making, c process.Caution) string {
		return "This kitchen's refrigerator is at " + s.Temperature(c.Has) + "; the FDA Food Code keeps such food at " + s.Temperature(c.Limit) + " or below (3-501.16)."
	}},
	process.FreezerFull: {"Freezer", func(s Style, m Making, c process.Caution) string {
		return "The batch is " + s.Number(c.Has, 1) + " times what this freezer is rated to freeze in a day: freeze it in parts."
	}},
}

// each says what every bowl of a foam gets.
func each(m Making) string {
	if m.Process.Foam.Hot {
		return ", each with its share of the syrup"
	}
	return ""
}

// Caution says one caution of the process.
func Caution(s Style, m Making, c process.Caution) string {
	return makingCautions[c.Code].text(s, m, c)
}

// MakingCautions says what the process has to say before the work begins, those
// that stand in a step apart.
func MakingCautions(s Style, m Making, all bool) []Titled {
	var out []Titled
	for _, c := range m.Process.Cautions {
		if all || !InStep(c.Code) {
			out = append(out, Titled{makingCautions[c.Code].title, Caution(s, m, c)})
		}
	}
	return out
}

// InStep reports whether a step says the caution.
func InStep(c process.CautionCode) bool {
	switch c {
	case process.FoamAirBeyond, process.CustardAirPast, process.FridgeWarm, process.FreezerFull:
		return false
	}
	return true
}

// airCauses names what takes air from the foam.
func airCauses(m Making) string {
	words := map[process.AirCause]string{
		process.BySugar: "it holds over twice as much sugar as white", process.ByFat: "there is fat in the bowl", process.ByFolding: "fat or cocoa is folded in",
		process.ByWhites: "dried and carton whites rise less", process.ByNoAcid: "carton whites want acid",
	}
	var list []string
	for _, c := range m.Process.Foam.Air.Why {
		w := words[c]
		if c == process.ByTool {
			w = "it is beaten by hand"
			if m.Process.Kitchen.Tool == process.InChurn {
				w = "a churn beats little air in"
			}
		}
		if w != "" {
			list = append(list, w)
		}
	}
	return List(list)
}
