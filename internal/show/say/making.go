package say

import (
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/limits"
)

// makingCautions has one entry for each caution of the process.
var makingCautions = map[process.CautionCode]struct {
	title Message
	text  func(Style, Making, process.Caution) string
}{
	process.WhitesStayCool: {"Eggs in the foam", func(s Style, m Making, c process.Caution) string {
		f := &m.Process.Foam
		what := beaten(m)
		warm, fold, egg := s.TemperatureBand(f.PeakLowC, f.PeakHighC, 0), tenfold(s, f.LogLow, f.LogHigh), s.Temperature(c.Limit)
		text := T("Know before you start: the syrup warms the %s only to about %s. By published data for solutions as sugary as these (Mattick et al. 2001) that is %s of Salmonella; the published figure for egg dishes is %s.", what, warm, fold, egg)
		if m.Brief {
			text = T("Know before you start: the syrup warms the %s only to about %s, %s of Salmonella (Mattick et al. 2001); the figure for egg dishes is %s.", what, warm, fold, egg)
		}
		if f.Whites == process.FreshWhite {
			return text + " " + T("Take pasteurised %s, or first hold whites and a third of the sugar over hot water at %s for 2 minutes, stirring.", what, s.Temperature(process.HoldFirstC))
		}
		return text + " " + T("Take pasteurised %s.", what)
	}},
	process.WhitesStayRaw: {"Eggs in the foam", func(s Style, m Making, c process.Caution) string {
		return T("Without a hot syrup the %s stay raw unless you hold them hot; the published figure for egg dishes is %s. Or take pasteurised %s.", beaten(m), s.Temperature(c.Limit), beaten(m))
	}},
	process.FoamAirBeyond: {"Air in the foam", func(s Style, m Making, c process.Caution) string {
		wants, reaches := s.Percent(c.Has, 0), s.span(s.Number(c.Low, 0), s.Number(c.Limit, 0), "%")
		if why := airCauses(m); why != "" {
			return T("The design wants %s air in the foam; one like this reaches %s (from memory, no measurement found), because %s. Weigh a cup of yours, and set what it says.", wants, reaches, why)
		}
		return T("The design wants %s air in the foam; one like this reaches %s (from memory, no measurement found). Weigh a cup of yours, and set what it says.", wants, reaches)
	}},
	process.CustardAirPast: {"Air in the custard", func(s Style, m Making, c process.Caution) string {
		how := T("a tray beaten by hand")
		switch m.Process.Kitchen.CustardAir() {
		case &limits.FrozenBowlAir:
			how = T("a churn with a frozen bowl")
		case &limits.BatchFreezerAir:
			how = T("a batch freezer")
		}
		return T("%s air in the custard is more than %s gives: %s at most (%s).", s.Percent(c.Has, 0), how, s.Percent(c.Limit, 0), c.Step.Source)
	}},
	process.ManyWhites: {"Many whites", func(s Style, m Making, c process.Caution) string {
		if m.Process.Foam.Hot {
			return T("Without a stand mixer one bowl takes about %s of white (common practice): beat these in %s, each with its share of the syrup.", s.Mass(c.Limit), s.Count(m.Process.Foam.Bowls, "bowl", "bowls"))
		}
		return T("Without a stand mixer one bowl takes about %s of white (common practice): beat these in %s.", s.Mass(c.Limit), s.Count(m.Process.Foam.Bowls, "bowl", "bowls"))
	}},
	process.FewWhites: {"Few whites", func(s Style, m Making, c process.Caution) string {
		return T("Under about %s of white a whisk hardly catches (common practice): use a narrow bowl, or make more.", s.Mass(c.Limit))
	}},
	process.DriedDry: {"Dried white", func(s Style, m Making, c process.Caution) string {
		return T("The design gives it only %s g of water to a gram, where %s g make it up (from memory): write the water into the foam's bowl, or it does not stand.", s.Short(c.Has, 1), s.Short(c.Limit, 0))
	}},
	process.EnzymeLives: {"Starch with yolk", func(s Style, m Making, c process.Caution) string {
		return T("Up here the custard boils at %s, and the yolk's enzyme lives up to %s: it thins the starch. Leave one of them out.", s.Temperature(c.Has), s.Temperature(c.Limit))
	}},
	process.BathTooSlow: {"Cooling", func(s Style, m Making, c process.Caution) string {
		return T("One bowl of so much does not cool in time: share it among several, each in its own ice water.")
	}},
	process.FridgeWarm: {"Refrigerator", func(s Style, m Making, c process.Caution) string {
		return T("This kitchen's refrigerator is at %s; the FDA Food Code keeps such food at %s or below (3-501.16).", s.Temperature(c.Has), s.Temperature(c.Limit))
	}},
	process.FreezerFull: {"Freezer", func(s Style, m Making, c process.Caution) string {
		return T("The batch is %s times what this freezer is rated to freeze in a day: freeze it in parts.", s.Number(c.Has, 1))
	}},
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
			out = append(out, Titled{makingCautions[c.Code].title.String(), Caution(s, m, c)})
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
		process.BySugar: T("it holds over twice as much sugar as white"), process.ByFat: T("there is fat in the bowl"), process.ByFolding: T("fat or cocoa is folded in"),
		process.ByWhites: T("dried and carton whites rise less"), process.ByNoAcid: T("carton whites want acid"),
	}
	var list []string
	for _, c := range m.Process.Foam.Air.Why {
		w := words[c]
		if c == process.ByTool {
			w = T("it is beaten by hand")
			if m.Process.Kitchen.Tool == process.InChurn {
				w = T("a churn beats little air in")
			}
		}
		if w != "" {
			list = append(list, w)
		}
	}
	return List(list)
}
