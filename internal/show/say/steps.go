package say

import (
	"slices"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/work/design"
)

// Titled is a step, a caution or a check: a few words and what they stand for.
type Titled struct{ Title, Text string }

// Making is what the words of the steps need.
type Making struct {
	Design  design.Design
	Result  *model.Result
	Process *process.Process
	Cold    *cold.Answer // nil: no times in the freezer
	Ice     *icy.Answer  // nil: nothing of its crystals
	Brief   bool         // for paper: without what only informs, and with measures and notes elsewhere
	Cups    bool         // with measures of the household beside each weight
}

// Steps says how the design is made, in order, each step of the process by its
// own words.
func Steps(s Style, m Making) []Titled {
	out := make([]Titled, len(m.Process.Steps))
	for i := range m.Process.Steps {
		out[i] = Step(s, m, &m.Process.Steps[i])
	}
	return out
}

// Step says one step.
func Step(s Style, m Making, step *process.Step) Titled {
	w := &stepWords{s, m, step}
	for _, x := range stepWording {
		if x.code == step.Code {
			return Titled{x.title.String(), strings.TrimSpace(x.text(w))}
		}
	}
	return Titled{string(step.Code), ""}
}

// stepWording has one entry for each code of a step.
var stepWording = []struct {
	code  process.StepCode
	title Message
	text  func(*stepWords) string
}{
	{process.Crack, "Crack the eggs", (*stepWords).crack},
	{process.Bloom, "Gelatine", (*stepWords).bloom},
	{process.YolkSugar, "Egg and sugar", (*stepWords).yolks},
	{process.HeatMilk, "Heat", (*stepWords).heat},
	{process.Cook, "Cook", (*stepWords).cook},
	{process.OffHeat, "Off the heat", (*stepWords).offHeat},
	{process.CoolDown, "Chill", (*stepWords).cool},
	{process.Rest, "Rest", func(w *stepWords) string {
		return T("Cover and rest in the refrigerator: 4 hours at least, best overnight, one day at most.")
	}},
	{process.ColdIn, "Stir in cold", (*stepWords).coldIn},
	{process.FreezeBowl, "Freeze the churn's bowl", (*stepWords).freezeBowl},
	{process.FreezeSoft, "Freeze soft", (*stepWords).freezeSoft},
	{process.BowlWhites, "In the mixing bowl", (*stepWords).whites},
	{process.HoldWhites, "Heat the whites", (*stepWords).hold},
	{process.BoilSyrup, "Boil the syrup", (*stepWords).boil},
	{process.PourIn, "Pour and whip", (*stepWords).pour},
	{process.WhipCold, "Whip", (*stepWords).whip},
	{process.FoldIn, "Fold in", (*stepWords).foldIn},
	{process.ChillFoam, "Chill the foam", (*stepWords).chillFoam},
	{process.ChillTubs, "Chill the tubs", (*stepWords).chillTubs},
	{process.Swirl, "Fill and swirl", (*stepWords).swirl},
	{process.Hardening, "Harden", func(w *stepWords) string { return hardenStep(w.s, w.m.Cold) + iceStep(w.s, w.m.Ice) }},
	{process.Serve, "Serve", func(w *stepWords) string { return serveStep(w.s, w.m.Design, w.m.Cold) }},
}

// stepWords is one step being worded.
type stepWords struct {
	s    Style
	m    Making
	step *process.Step
}

func (w *stepWords) line(u process.Used) *model.BatchLine { return &w.m.Result.Lines[u.Line] }

// things lists what goes in at the step, of the kinds that such tells, a thing
// once: "85 g egg yolks (5) and 47 g sugar".
func (w *stepWords) things(such func(kind.Kind) bool) string {
	return w.listed(func(in *ingredient.Ingredient) bool { return such(kind.Of(in)) })
}

// listed is things of the ingredients that such tells.
func (w *stepWords) listed(such func(*ingredient.Ingredient) bool) string {
	var items []string
	said := map[string]bool{}
	for _, u := range w.step.Lines {
		in := w.line(u).Ingredient
		if said[in.ID] || !such(in) {
			continue
		}
		said[in.ID] = true
		g, notes := w.together(in)
		items = append(items, w.s.Mass(g)+" "+w.named(in, g, notes))
	}
	return List(items)
}

// together is the grams of an ingredient at the step and the maker's notes of
// its lines.
func (w *stepWords) together(in *ingredient.Ingredient) (g float64, notes []string) {
	for _, u := range w.step.Lines {
		l := w.line(u)
		if l.Ingredient.ID != in.ID {
			continue
		}
		g += u.Grams
		if note := w.m.Design.Lines(l.Part)[l.Index].Note; note != "" && !slices.Contains(notes, note) {
			notes = append(notes, note)
		}
	}
	return g, notes
}

// named is the name with, in brackets, pieces or a measure of the household and
// the maker's note.
func (w *stepWords) named(in *ingredient.Ingredient, g float64, notes []string) string {
	name := Kitchen(in)
	if w.m.Brief {
		notes = nil
	}
	many := w.pieces(in, g)
	if many == "" && w.m.Cups {
		many = w.measure(in, g)
	}
	if many != "" {
		notes = append([]string{many}, notes...)
	}
	switch more := strings.Join(notes, "; "); {
	case more == "":
		return name
	case strings.HasSuffix(name, ")"):
		return strings.TrimSuffix(name, ")") + "; " + more + ")"
	default:
		return name + " (" + more + ")"
	}
}

func anything(kind.Kind) bool { return true }

func only(kinds ...kind.Kind) func(kind.Kind) bool {
	return func(k kind.Kind) bool {
		for _, x := range kinds {
			if x == k {
				return true
			}
		}
		return false
	}
}

func except(kinds ...kind.Kind) func(kind.Kind) bool {
	is := only(kinds...)
	return func(k kind.Kind) bool { return !is(k) }
}

// pieces counts fresh eggs, yolks and whites beside their weight.
func (w *stepWords) pieces(in *ingredient.Ingredient, g float64) string {
	size, err := egg.Find(w.m.Design.Eggs.System, w.m.Design.Eggs.Size)
	one := map[string]float64{"egg_yolk": size.YolkG, "egg_white": size.WhiteG, "egg_whole": size.EdibleG}[in.ID]
	if err != nil || one == 0 {
		return ""
	}
	return w.s.eggs(g / one)
}

// has reports whether a kind goes in at the step.
func (w *stepWords) has(k ...kind.Kind) bool { return w.things(only(k...)) != "" }
