package say

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// Where lines are typed and recipes pasted.
const (
	EntryHint        Message = "Type a line as you write it, Return adds it. Return on an empty one goes on to the next list. Paste a whole recipe here."
	RecipeItem       Message = "Paste a recipe…"
	RecipeTitle      Message = "Lines of a recipe"
	RecipeText       Message = "As written"
	RecipeUnderstood Message = "As understood"
	RecipeInto       Message = "They go into the"
	RecipeAdd        Message = "Add them"
	RecipeLeftOut    Message = "left out"
	RecipeStep       Message = "pasted recipe"
)

// EntryExample is a line as it may be typed into a list.
func EntryExample(part design.Part) string {
	switch part {
	case design.FoamPart:
		return T("4 egg whites")
	case design.SyrupPart:
		return T("200 g sugar")
	}
	return T("250 g whole milk")
}

// Duplicate makes a line two.
const Duplicate Message = "Duplicate"

// MoveTo offers to carry a line to another list.
func MoveTo(part design.Part) string { return T("Move to the %s", Part(part)) }

// Carries says where a line that is dragged would go: before another line, or to the
// end of a list.
func Carries(name string, part design.Part, before string) string {
	if before == "" {
		return T("%s goes to the end of the %s", Capital(name), Part(part))
	}
	return T("%s goes to the %s, before %s", Capital(name), Part(part), before)
}

// EntryChoice is a line that a text may mean: "250 g whole milk", "2 yolks".
func EntryChoice(s Style, l design.Line, of *ingredient.Ingredient) string {
	switch {
	case l.Count > 0:
		return T("%s %s, counted", s.Short(l.Count, 2), Of(string(l.CountOf)))
	case l.Grams > 0:
		return s.MassAsWritten(l.Grams) + " " + Kitchen(of)
	}
	return Kitchen(of)
}

// EntryAdded says what was added.
func EntryAdded(s Style, l design.Line, of *ingredient.Ingredient) string {
	return T("Added: %s", EntryChoice(s, l, of))
}

// RecipeCount says how many of a text's lines are added.
func RecipeCount(s Style, taken, all int) string {
	return T("%s of %s will be added", s.Count(taken, "line", "lines"), s.Number(float64(all), 0))
}
