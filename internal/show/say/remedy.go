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
	Mend          Message = "Mend…"
	MendHint      Message = "What would make this tub good: up to three remedies, each already computed."
	RemediesTitle Message = "What would mend it"
	Apply         Message = "Apply"
	RemedyStep    Message = "remedy"
	KeepLine      Message = "Keep this amount"
	FreeLine      Message = "Let remedies change it"
)

// Advice is what to do about a tub that is not good, "" of one that is or of
// which nothing is known yet: the first remedy, or what stays out of reach. With
// the cold of the same design, nil where that is not known, it says how long a
// tub that is to be served warmer stays out.
func Advice(s Style, v model.Verdict, found *balance.Remedies, c *cold.Answer) string {
	switch {
	case v.Empty:
		return T("Add ingredients to the empty phase.")
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
			cannot = append(cannot, T("the %s %s", Of(u.Role.String()), Feel(u.Role, *u.Phase)))
		}
	}
	if len(cannot) == 0 {
		return ""
	}
	text := T("No change within reach mends this at %s: %s.", s.Temperature(v.AtC), strings.Join(cannot, "; "))
	if found.Nearest != nil {
		text += " " + T("Nearest: %s.", lowerFirst(Changes(s, found.Nearest)))
	}
	return text
}

// CautionName names a caution in a few words.
func CautionName(code string) string {
	if name, ok := cautionNames[code]; ok {
		return name.String()
	}
	return strings.ReplaceAll(code, "_", " ")
}

var cautionNames = map[string]Message{
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
			parts = append(parts, T("swap %s %s in the %s for %s", s.Mass(g), Kitchen(list[i].Ingredient), Part(list[i].Part), Kitchen(list[k].Ingredient)))
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
	name, in := Kitchen(c.Ingredient), T("for the %s", Part(c.Part))
	switch {
	case c.Pieces:
		what := map[design.EggPart]string{design.WholeEggs: T("whole eggs"), design.Yolks: T("yolks"), design.Whites: T("whites")}[c.CountOf]
		if c.After == 0 {
			return T("leave the %s out of the %s", what, Part(c.Part))
		}
		return T("use %s %s %s, not %s", s.Short(c.After, 1), what, in, s.Short(c.Before, 1))
	case c.After == 0:
		return T("leave the %s out of the %s", name, Part(c.Part))
	case c.Before == 0:
		return T("add %s %s to the %s", s.Mass(c.After), name, Part(c.Part))
	}
	return T("weigh %s %s %s, not %s", s.Mass(c.After), name, in, s.Mass(c.Before))
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
		return T("serve it at %s", s.Temperature(c.After))
	case "dense.overrun_percent":
		return T("whip %s air into the custard, not %s", percent(c.After), percent(c.Before))
	case "foam.overrun_percent":
		return T("whip the foam to %s air, not %s", percent(c.After), percent(c.Before))
	case "foam.syrup.cook_temperature_c":
		return T("cook the syrup to %s, not %s", s.Temperature(c.After), s.Temperature(c.Before))
	case "foam.syrup.weighed_g":
		return T("leave the weight of the pan out, so that the thermometer decides")
	case "blend.foam_volume_percent":
		return T("fill %s of the tub with foam, not %s", percent(c.After), percent(c.Before))
	case "tubs.fill_percent":
		return T("fill the tubs to %s, not %s", percent(c.After), percent(c.Before))
	case "tubs.count":
		return T("make %s at a time, not %s", s.Count(int(c.After), "tub", "tubs"), s.Number(c.Before, 0))
	case "dense.stove_loss_percent":
		return T("cook %s of the custard off as water, not %s", percent(c.After), percent(c.Before))
	}
	return c.Path + " " + s.Short(c.After, 2)
}

// Gives says how the proposal eats, and how sweet the tub is: "the custard then
// scoops easily and the foam spoons well".
func Gives(s Style, p *balance.Proposal) string {
	v := &p.Result.Verdict
	switch {
	case v.Empty:
		return T("a phase is then empty")
	case v.Foam.How == model.NotThere:
		return T("the custard then %s", Feel(phase.Dense, v.Dense))
	case v.Dense.How == model.NotThere:
		return T("the foam then %s", Feel(phase.Foam, v.Foam))
	}
	return T("the custard then %s and the foam %s", Feel(phase.Dense, v.Dense), Feel(phase.Foam, v.Foam))
}

// serveAt says at what temperature to serve, and how a tub gets there that is
// kept colder.
func serveAt(s Style, now, to float64, out *cold.Softening) string {
	at := s.Temperature(to)
	switch {
	case to < now:
		return T("Serve it colder, at %s", at)
	case to <= model.HomeFreezerC:
		return T("Serve it warmer, at %s", at)
	case out == nil || math.IsNaN(Out(out)):
		return T("Serve it warmer: leave the tub out until it is at %s", at)
	case Out(out) == 0:
		return T("Serve it warmer, at %s, straight from a freezer at %s", at, s.Temperature(out.StartC))
	}
	return T("Serve it warmer, at %s: leave the tub out %s", at, OutFor(s, out))
}

// letWarm says in a clause how a tub gets to a temperature that no freezer is set
// to.
func letWarm(s Style, to float64, out *cold.Softening) string {
	switch {
	case out == nil || math.IsNaN(Out(out)):
		return T("let the tub warm to %s", s.Temperature(to))
	case Out(out) == 0:
		return T("serve it at %s, straight from the freezer", s.Temperature(to))
	}
	return T("leave the tub out %s, to serve it at %s", OutFor(s, out), s.Temperature(to))
}

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}
