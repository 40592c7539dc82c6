package say

import (
	"strings"

	"ripplewright/internal/answer/model"
)

// Taught says what batches have shown of r, a sentence each: the custard's hardness, and
// where the recipe comes to something else than is written.
func Taught(s Style, r *model.Result) []string {
	var out []string
	if text := hardnessLearnt(s, r.Taught); text != "" {
		out = append(out, text)
	}
	if text := recipeLearnt(s, r); text != "" {
		out = append(out, text)
	}
	return out
}

// hardnessLearnt says what batches have moved the custard's hardness by, "" where they
// have not.
func hardnessLearnt(s Style, t model.Taught) string {
	if !t.Known() {
		return ""
	}
	return T("Your batches have shown this custard to be %s times as hard as the law says (%s). That is in its figures, its word and the verdict; a batch may still be harder or softer by a factor of %s.", s.Number(t.HarderFactor, 2), s.Count(t.Readings, "reading", "readings"), s.Number(t.ScatterFactor, 1))
}

// recipeLearnt says what batches came to that the recipe assumes otherwise, "" for nothing.
func recipeLearnt(s Style, r *model.Result) string {
	items := cameTo(s, r, [model.NumMakings]Message{
		model.Boiled:     "%s of solids in the syrup, where the recipe has %s",
		model.Reduced:    "a stove loss %s from the recipe's",
		model.CustardAir: "%s of air in the custard, where the recipe has %s",
		model.FoamAir:    "%s of air in the foam, where the recipe has %s",
	})
	if len(items) == 0 {
		return ""
	}
	return T("Your batches came to %s. Weights and label stay those of the recipe as it is written; the bands of its figures and times hold both.", List(items))
}

// TaughtShort says in a short sentence what batches came to beside the law of hardness and
// the recipe, "" where they tell nothing.
func TaughtShort(s Style, r *model.Result) string {
	if r.Taught == (model.Taught{}) {
		return ""
	}
	var items []string
	if t := r.Taught; t.Known() {
		items = append(items, T("custard %s times as hard as the law says", s.Number(t.HarderFactor, 2)))
	}
	items = append(items, cameTo(s, r, [model.NumMakings]Message{
		model.Boiled:     "syrup of %s solids (recipe %s)",
		model.Reduced:    "stove loss %s from the recipe's",
		model.CustardAir: "%s air in the custard (recipe %s)",
		model.FoamAir:    "%s air in the foam (recipe %s)",
	})...)
	if len(items) == 0 {
		return T("Your batches came out as the recipe says, and narrow its bands.")
	}
	return T("Your batches: %s.", strings.Join(items, ", "))
}

// cameTo words the things that batches came to and the recipe assumes otherwise.
func cameTo(s Style, r *model.Result, words [model.NumMakings]Message) []string {
	made := r.Made()
	if made == nil {
		return nil
	}
	var items []string
	of := func(m model.Making, p *model.Phase, values ...any) {
		if r.Taught.Recipe[m].Away() && p.InTub() {
			items = append(items, T(words[m], values...))
		}
	}
	of(model.Boiled, &r.Foam, s.Percent(made.Syrup.SolidsPercent, 1), s.Percent(r.Syrup.SolidsPercent, 1))
	of(model.Reduced, &r.Dense, s.Points(r.Taught.Recipe[model.Reduced].Mean, 1))
	of(model.CustardAir, &r.Dense, s.Percent(made.Dense.OverrunPercent, 0), s.Percent(r.Dense.OverrunPercent, 0))
	of(model.FoamAir, &r.Foam, s.Percent(made.Foam.OverrunPercent, 0), s.Percent(r.Foam.OverrunPercent, 0))
	return items
}
