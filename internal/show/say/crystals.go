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
		names = append(names, x.String())
	}
	return "Whether the " + f.Phase.String() + "'s " + List(names) + " may crystallise in the freezer is not checked: no published figure for the cold was found. Keep a small tub for some weeks and look."
}

func crystal(s Style, in phase.Role, x phase.Dissolved) string {
	places := 0
	if x.GPer100G-x.MostGPer100G < 1 || x.Water == phase.Trade { // else both would read alike
		places = 1
	}
	there := s.Number(x.GPer100G, places) + " g " + x.Solute.String() + " to 100 g of the " + in.String() + "'s "
	most := s.Number(x.MostGPer100G, places)
	switch x.Water {
	case phase.Trade:
		if !x.Surely() {
			return "There are " + there + "water: above " + most + " g it may turn sandy in storage (a rule of the trade, which usual mixes break)."
		}
		return "There are " + there + "water, where usual mixes end at " + s.Number(x.UsualGPer100G, places) + " g: it is likely to turn sandy. Use less milk powder or milk."
	case phase.Syrup:
		swap := "sugar"
		if x.Solute == mix.Sucrose {
			swap = "glucose syrup or honey"
		}
		return "There are " + there + "water, where " + most + " g dissolve at " + s.Temperature(x.AtC) + ": it may turn grainy. Replace part of it with " + swap + "."
	}
	return "At " + s.Temperature(x.AtC) + " there are " + there + "unfrozen water, where at most " + most + " g dissolve: it may crystallise, hard and sandy. Replace part of it with sugar or glucose syrup."
}
