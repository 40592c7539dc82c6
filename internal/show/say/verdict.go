package say

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
)

// Verdict says how the two phases eat: "At −14 °C the custard scoops and the
// foam spoons very easily."
func Verdict(s Style, v model.Verdict) string {
	if v.Empty {
		return T("Give both phases their ingredients to see how they eat together.")
	}
	switch at := T("At %s", s.Temperature(v.AtC)); {
	case v.Foam.How == model.NotThere:
		return T("%s the custard %s. The tub holds no foam.", at, Feel(phase.Dense, v.Dense))
	case v.Dense.How == model.NotThere:
		return T("%s the foam %s. The tub holds no custard.", at, Feel(phase.Foam, v.Foam))
	}
	return T("At %s the custard %s and the foam %s.", s.Temperature(v.AtC), Feel(phase.Dense, v.Dense), Feel(phase.Foam, v.Foam))
}

// Feel says what a spoon meets in a phase, after its name: "scoops easily".
func Feel(role phase.Role, e model.Eating) string {
	switch e.How {
	case model.TooSoft:
		if role == phase.Foam {
			return T("slumps")
		}
		return T("is too soft to scoop")
	case model.NotThere:
		return T("is not in the tub")
	case model.NotKnown:
		return T("is beyond what the hardness model knows")
	case model.NeedsForce:
		return T("needs force")
	case model.TooHard:
		return T("is too hard")
	}
	verb := T("scoops")
	if role == phase.Foam {
		verb = T("spoons")
	}
	switch phase.WordFor(e.KPa) {
	case phase.Words[0], phase.Words[1]:
		return T("%s very easily", verb)
	case phase.Words[2]:
		return T("%s easily", verb)
	}
	return T("%s well", verb)
}
