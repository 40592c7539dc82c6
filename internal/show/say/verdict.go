package say

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
)

// Verdict says how the two phases eat: "At −14 °C the custard scoops and the
// foam spoons very easily."
func Verdict(s Style, v model.Verdict) string {
	if v.Empty {
		return "Give both phases their ingredients to see how they eat together."
	}
	switch at := "At " + s.Temperature(v.AtC); {
	case v.Foam.How == model.NotThere:
		return at + " the custard " + Feel(phase.Dense, v.Dense) + ". The tub holds no foam."
	case v.Dense.How == model.NotThere:
		return at + " the foam " + Feel(phase.Foam, v.Foam) + ". The tub holds no custard."
	}
	return "At " + s.Temperature(v.AtC) + " the custard " + Feel(phase.Dense, v.Dense) + " and the foam " + Feel(phase.Foam, v.Foam) + "."
}

// Feel says what a spoon meets in a phase, after its name: "scoops easily".
func Feel(role phase.Role, e model.Eating) string {
	switch e.How {
	case model.TooSoft:
		if role == phase.Foam {
			return "slumps"
		}
		return "is too soft to scoop"
	case model.NotThere:
		return "is not in the tub"
	case model.NotKnown:
		return "is beyond what the hardness model knows"
	case model.NeedsForce:
		return "needs force"
	case model.TooHard:
		return "is too hard"
	}
	verb := "scoops"
	if role == phase.Foam {
		verb = "spoons"
	}
	switch phase.WordFor(e.KPa) {
	case phase.Words[0], phase.Words[1]:
		return verb + " very easily"
	case phase.Words[2]:
		return verb + " easily"
	}
	return verb + " well"
}
