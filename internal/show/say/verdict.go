package say

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
)

// Verdict says how the two phases eat: "At −14 °C the custard scoops and the
// foam spoons very easily."
func Verdict(s Style, v model.Verdict) string {
	if v.Empty {
		return "Give both phases their lines to see how they eat together."
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

// Advice is the one change most worth making, "" of a tub that needs none. With
// the cold of the same design, nil where that is not known, it says how long a
// tub that is to be served warmer stays out.
func Advice(s Style, v model.Verdict, c *cold.Answer) string {
	switch {
	case v.Empty:
		return "Add ingredients to the empty phase."
	case v.Because != nil:
		return Warning(s, *v.Because)
	}
	return remedy(s, v.Remedy, c)
}

func remedy(s Style, r model.Remedy, c *cold.Answer) string {
	the := "The " + r.Role.String()
	switch r.Kind {
	case model.ServeAt:
		return serveAt(s, r, c) + ". It eats well " + between(s, r.Both) + "."
	case model.ChangeGrams:
		verb := "Add "
		if r.Grams < 0 {
			verb = "Take out "
		}
		return verb + s.Mass(math.Abs(r.Grams)) + " " + Kitchen(r.Ingredient) + " (of the recipe as written): the " + r.Role.String() +
			" then comes to " + s.Hardness(r.ThenKPa) + ", " + phase.WordFor(r.ThenKPa).Name + "."
	case model.Soften:
		return the + " is too hard at " + s.Temperature(r.NowC) + ": replace part of its sugar with dextrose, or whip in more air."
	case model.Stiffen:
		return the + " is too soft at " + s.Temperature(r.NowC) + ": take out sugar or alcohol, or serve it colder."
	case model.WhipFoam:
		return the + " slumps: whip it longer, or use more egg white."
	}
	return ""
}

// serveAt says at what temperature to serve, and how a tub gets there that is
// kept colder.
func serveAt(s Style, r model.Remedy, c *cold.Answer) string {
	at := s.Temperature(r.AtC)
	switch {
	case r.AtC < r.NowC:
		return "Serve it colder, at " + at
	case r.AtC <= model.HomeFreezerC:
		return "Serve it warmer, at " + at
	case c == nil || math.IsNaN(Out(&c.Counter)):
		return "Serve it warmer: leave the tub out until it is at " + at
	case Out(&c.Counter) == 0:
		return "Serve it warmer, at " + at + ": it scoops straight from a freezer at " + s.Temperature(c.Counter.StartC)
	}
	return "Serve it warmer, at " + at + ": leave the tub out " + OutFor(s, &c.Counter)
}

// between is a range of temperatures in a sentence: "from −14 to −9.5 °C".
func between(s Style, r model.ScoopRange) string {
	return "from " + s.TemperatureSpan(r.From, r.To)
}
