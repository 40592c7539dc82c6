package say

import (
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
)

// crystals says of each solute over its rule how much of it there is, how much
// dissolves, and what to swap it for.
func crystals(s Style, f model.Crystallises) string {
	all := make([]string, len(f.Solutes))
	for i, x := range f.Solutes {
		all[i] = crystal(s, f.Phase, x)
	}
	return strings.Join(all, " ")
}

// unchecked says that nobody looks whether some solutes crystallise.
func unchecked(f model.CrystalsUnchecked) string {
	var names []string
	for _, x := range f.Solutes {
		names = append(names, Of(x.String()))
	}
	return T("Whether the %s's %s may crystallise in the freezer is not checked: no published figure for the cold was found. Keep a small tub for some weeks and look.", Of(f.Phase.String()), List(names))
}

func crystal(s Style, in phase.Role, x phase.Dissolved) string {
	places := 0
	if x.GPer100G-x.MostGPer100G < 1 || x.Water == phase.Trade { // else both would read alike
		places = 1
	}
	has, of, whose := s.Number(x.GPer100G, places), Of(x.Solute.String()), Of(in.String())
	most := s.Number(x.MostGPer100G, places)
	switch x.Water {
	case phase.Trade:
		if !x.Surely() {
			return T("There are %s g %s to 100 g of the %s's water: above %s g it may turn sandy in storage (a rule of the trade, which usual mixes break).", has, of, whose, most)
		}
		return T("There are %s g %s to 100 g of the %s's water, where usual mixes end at %s g: it is likely to turn sandy. Use less milk powder or milk.", has, of, whose, s.Number(x.UsualGPer100G, places))
	case phase.Syrup:
		swap := T("sugar")
		if x.Solute == mix.Sucrose {
			swap = T("glucose syrup or honey")
		}
		return T("There are %s g %s to 100 g of the %s's water, where %s g dissolve at %s: it may turn grainy. Replace part of it with %s.", has, of, whose, most, s.Temperature(x.AtC), swap)
	}
	return T("At %s there are %s g %s to 100 g of the %s's unfrozen water, where at most %s g dissolve: it may crystallise, hard and sandy. Replace part of it with sugar or glucose syrup.", s.Temperature(x.AtC), has, of, whose, most)
}
