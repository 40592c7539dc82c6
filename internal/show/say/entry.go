package say

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// Where lines are typed and recipes pasted.
const (
	EntryExample     = "250 g whole milk"
	EntryHint        = "Type a line as you write it, Return adds it. Return on an empty one goes on to the next list. Paste a whole recipe here."
	RecipeItem       = "Paste a recipe…"
	RecipeTitle      = "Lines of a recipe"
	RecipeText       = "As written"
	RecipeUnderstood = "As understood"
	RecipeInto       = "They go into the"
	RecipeAdd        = "Add them"
	RecipeLeftOut    = "left out"
	RecipeStep       = "pasted recipe"
)

// Duplicate makes a line two.
const Duplicate = "Duplicate"

// MoveTo offers to carry a line to another list.
func MoveTo(part design.Part) string { return "Move to the " + Part(part) }

// Carries says where a line that is dragged would go: before another line, or to the
// end of a list.
func Carries(name string, part design.Part, before string) string {
	if before == "" {
		return Capital(name) + " goes to the end of the " + Part(part)
	}
	return Capital(name) + " goes to the " + Part(part) + ", before " + before
}

// EntryChoice is a line that a text may mean: "250 g whole milk", "2 yolks".
func EntryChoice(s Style, l design.Line, of *ingredient.Ingredient) string {
	switch {
	case l.Count > 0:
		return s.Short(l.Count, 2) + " " + string(l.CountOf) + ", counted"
	case l.Grams > 0:
		return s.MassAsWritten(l.Grams) + " " + Kitchen(of)
	}
	return Kitchen(of)
}

// EntryAdded says what was added.
func EntryAdded(s Style, l design.Line, of *ingredient.Ingredient) string {
	return "Added: " + EntryChoice(s, l, of)
}

// RecipeCount says how many of a text's lines are added.
func RecipeCount(s Style, taken, all int) string {
	return s.Count(taken, "line", "") + " of " + s.Number(float64(all), 0) + " will be added"
}
