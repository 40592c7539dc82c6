package say

import (
	"math"
	"strings"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// The words around remedies in the window.
const (
	Mend          = "Mend…"
	MendHint      = "What would make this tub good: up to three remedies, each already computed."
	RemediesTitle = "What would mend it"
	Apply         = "Apply"
	RemedyStep    = "remedy"
	KeepLine      = "Keep this amount"
	FreeLine      = "Let remedies change it"
)

// Advice is what to do about a tub that is not good, "" of one that is or of
// which nothing is known yet: the first remedy, or what stays out of reach. With
// the cold of the same design, nil where that is not known, it says how long a
// tub that is to be served warmer stays out.
func Advice(s Style, v model.Verdict, found *balance.Remedies, c *cold.Answer) string {
	switch {
	case v.Empty:
		return "Add ingredients to the empty phase."
	case v.Good || found == nil:
		return ""
	case len(found.List) > 0:
		return Remedy(s, &found.List[0], c)
	}
	return unmet(s, v, found)
}

// Remedy says in a sentence what to change and what that gives.
func Remedy(s Style, p *balance.Proposal, c *cold.Answer) string {
	return Doing(s, p, c) + ". " + Capital(Gives(s, p)) + "."
}

// Cause says what stands against a good verdict, without what to do about it: the
// first sentence of its warning.
func Cause(s Style, w model.Warning) string {
	first, _, _ := strings.Cut(Warning(s, w), ". ")
	return strings.TrimSuffix(first, ".") + "."
}

// unmet says what no change here reaches.
func unmet(s Style, v model.Verdict, found *balance.Remedies) string {
	var cannot []string
	for _, u := range found.Unmet {
		if u.Phase == nil {
			cannot = append(cannot, CautionName(u.Code))
		} else {
			cannot = append(cannot, "the "+u.Role.String()+" "+Feel(u.Role, *u.Phase))
		}
	}
	if len(cannot) == 0 {
		return ""
	}
	text := "No change within reach mends this at " + s.Temperature(v.AtC) + ": " + strings.Join(cannot, "; ") + "."
	if found.Nearest != nil {
		text += " Nearest: " + lowerFirst(Changes(s, found.Nearest)) + "."
	}
	return text
}

// CautionName names a caution in a few words.
func CautionName(code string) string {
	if name, ok := cautionNames[code]; ok {
		return name
	}
	return strings.ReplaceAll(code, "_", " ")
}

var cautionNames = map[string]string{
	"air_beyond_process":       "more air than can be whipped in",
	"yolk_heavy":               "a taste of egg",
	"too_sweet":                "too much sweetness",
	"not_sweet_enough":         "too little sweetness",
	"too_salty":                "too much salt",
	"freezer_overloaded":       "more than the freezer takes",
	"syrup_too_little":         "too little syrup for a thermometer",
	"yolk_in_whites":           "yolk in the whites",
	"alcohol_boils_off":        "alcohol that boils off",
	"acid_with_milk":           "acid that curdles the milk",
	"carbohydrate_unnamed":     "carbohydrate that the pack does not name",
	"sugar_crystallises":       "sugar that crystallises",
	"outside_hardness_law":     "a hardness that nobody knows",
	"salt_rule_unsettled":      "so much salt that published rules differ",
	"tub_overfull":             "a tub that overflows as it freezes",
	"foam_draws_water":         "a foam without ice in the freezer",
	"altitude_syrup":           "a syrup that the altitude makes too thick",
	"outside_model_range":      "figures beyond their tables",
	"syrup_no_boil_off":        "a syrup that is too thick from the start",
	"syrup_weighed_too_light":  "a pan that weighs too little",
	"stove_loss_exceeds_water": "more boiled off than there is water",
	"weighed_too_heavy":        "a pan that weighs too much",
}

// Doing says what to do, joined to one clause.
func Doing(s Style, p *balance.Proposal, c *cold.Answer) string {
	if len(p.Changes) == 1 && p.Changes[0].Path == "serving.temperature_c" {
		out := p.Out
		if c != nil {
			out = &c.Counter
		}
		return serveAt(s, p.Changes[0].Before, p.Changes[0].After, out)
	}
	return Changes(s, p)
}

// Changes says what to change: "Weigh 57 g sugar for the custard, not 31 g, and
// whip 20 % air into it, not 40 %."
func Changes(s Style, p *balance.Proposal) string {
	list := p.Changes
	var parts []string
	done := make([]bool, len(list))
	for i := range list {
		if done[i] {
			continue
		}
		if k, g := swapped(list, i, done); k >= 0 {
			done[k] = true
			parts = append(parts, "swap "+s.Mass(g)+" "+Kitchen(list[i].Ingredient)+" in the "+Part(list[i].Part)+" for "+Kitchen(list[k].Ingredient))
			continue
		}
		if !readsAlike(s, &list[i]) {
			parts = append(parts, change(s, &list[i], p.Out))
		}
	}
	if text := strings.Join(parts, "; "); strings.Contains(text, ",") {
		return Capital(text)
	}
	return Capital(List(parts))
}

// readsAlike reports whether a scale does not tell a weight from what it was.
func readsAlike(s Style, c *balance.Change) bool {
	return c.Ingredient != nil && !c.Pieces && c.Before > 0 && s.Mass(c.Before) == s.Mass(c.After)
}

// swapped returns the place of the change that takes in what i gives up in the
// same part, gram for gram, −1 without one.
func swapped(list []balance.Change, i int, done []bool) (int, float64) {
	a := &list[i]
	if a.Ingredient == nil || a.Pieces || a.After >= a.Before {
		return -1, 0
	}
	g := a.Before - a.After
	for k := range list {
		b := &list[k]
		if k != i && !done[k] && b.Ingredient != nil && !b.Pieces && b.Part == a.Part && math.Abs(b.After-b.Before-g) < 0.6 {
			return k, g
		}
	}
	return -1, 0
}

// change says one change, without a capital; out is how long the tub stays out, nil
// where that is not known.
func change(s Style, c *balance.Change, out *cold.Softening) string {
	if c.Ingredient == nil {
		return settingChange(s, c, out)
	}
	name, in := Kitchen(c.Ingredient), "for the "+Part(c.Part)
	switch {
	case c.Pieces:
		what := map[design.EggPart]string{design.WholeEggs: "whole eggs", design.Yolks: "yolks", design.Whites: "whites"}[c.CountOf]
		if c.After == 0 {
			return "leave the " + what + " out of the " + Part(c.Part)
		}
		return "use " + s.Short(c.After, 1) + " " + what + " " + in + ", not " + s.Short(c.Before, 1)
	case c.After == 0:
		return "leave the " + name + " out of the " + Part(c.Part)
	case c.Before == 0:
		return "add " + s.Mass(c.After) + " " + name + " to the " + Part(c.Part)
	}
	return "weigh " + s.Mass(c.After) + " " + name + " " + in + ", not " + s.Mass(c.Before)
}

// settingChange says a change of a setting. Each setting that a search moves has
// its words here.
func settingChange(s Style, c *balance.Change, out *cold.Softening) string {
	percent := func(v float64) string { return s.Percent(v, 0) }
	switch c.Path {
	case "serving.temperature_c":
		if c.After > c.Before && c.After > model.HomeFreezerC { // which no freezer is set to
			return letWarm(s, c.After, out)
		}
		return "serve it at " + s.Temperature(c.After)
	case "dense.overrun_percent":
		return "whip " + percent(c.After) + " air into the custard, not " + percent(c.Before)
	case "foam.overrun_percent":
		return "whip the foam to " + percent(c.After) + " air, not " + percent(c.Before)
	case "foam.syrup.cook_temperature_c":
		return "cook the syrup to " + s.Temperature(c.After) + ", not " + s.Temperature(c.Before)
	case "foam.syrup.weighed_g":
		return "leave the weight of the pan out, so that the thermometer decides"
	case "blend.foam_volume_percent":
		return "fill " + percent(c.After) + " of the tub with foam, not " + percent(c.Before)
	case "tubs.fill_percent":
		return "fill the tubs to " + percent(c.After) + ", not " + percent(c.Before)
	case "tubs.count":
		return "make " + s.Count(int(c.After), "tub", "") + " at a time, not " + s.Number(c.Before, 0)
	case "dense.stove_loss_percent":
		return "cook " + percent(c.After) + " of the custard off as water, not " + percent(c.Before)
	}
	return c.Path + " " + s.Short(c.After, 2)
}

// Gives says how the proposal eats, and how sweet the tub is: "the custard then
// scoops easily and the foam spoons well".
func Gives(s Style, p *balance.Proposal) string {
	v := &p.Result.Verdict
	switch {
	case v.Empty:
		return "a phase is then empty"
	case v.Foam.How == model.NotThere:
		return "the custard then " + Feel(phase.Dense, v.Dense)
	case v.Dense.How == model.NotThere:
		return "the foam then " + Feel(phase.Foam, v.Foam)
	}
	return "the custard then " + Feel(phase.Dense, v.Dense) + " and the foam " + Feel(phase.Foam, v.Foam)
}

// serveAt says at what temperature to serve, and how a tub gets there that is
// kept colder.
func serveAt(s Style, now, to float64, out *cold.Softening) string {
	at := s.Temperature(to)
	switch {
	case to < now:
		return "Serve it colder, at " + at
	case to <= model.HomeFreezerC:
		return "Serve it warmer, at " + at
	case out == nil || math.IsNaN(Out(out)):
		return "Serve it warmer: leave the tub out until it is at " + at
	case Out(out) == 0:
		return "Serve it warmer, at " + at + ", straight from a freezer at " + s.Temperature(out.StartC)
	}
	return "Serve it warmer, at " + at + ": leave the tub out " + OutFor(s, out)
}

// letWarm says in a clause how a tub gets to a temperature that no freezer is set
// to.
func letWarm(s Style, to float64, out *cold.Softening) string {
	switch {
	case out == nil || math.IsNaN(Out(out)):
		return "let the tub warm to " + s.Temperature(to)
	case Out(out) == 0:
		return "serve it at " + s.Temperature(to) + ", straight from the freezer"
	}
	return "leave the tub out " + OutFor(s, out) + ", to serve it at " + s.Temperature(to)
}

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}
