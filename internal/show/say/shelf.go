package say

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// The words about the ingredients that a maker keeps.

// ChooseIngredient stands where nothing is chosen.
const ChooseIngredient Message = "Choose an ingredient at the left."

// IngredientCount says how many ingredients there are, and how many are one's own.
func IngredientCount(s Style, all, own int) string {
	yours := T("none")
	if own > 0 {
		yours = s.Grouped(float64(own))
	}
	return T("%s, %s of them your own", s.Count(all, "ingredient", "ingredients"), yours)
}

// AddAmount begins a row of buttons that add so many grams to a phase.
func AddAmount(s Style, g float64) string { return T("Add %s to", s.MassTo(g, 0)) }

// AddedTo says what was added to a phase.
func AddedTo(s Style, in *ingredient.Ingredient, g float64, to design.Part) string {
	return T("Added %s %s to the %s.", s.MassTo(g, 0), Kitchen(in), Part(to))
}

// AdditionOf, NewFiguresOf and CarriedCopyOf name steps that can be undone.
func AdditionOf(in *ingredient.Ingredient) string    { return T("addition of %s", Kitchen(in)) }
func NewFiguresOf(in *ingredient.Ingredient) string  { return T("new figures of %s", in.Name) }
func CarriedCopyOf(in *ingredient.Ingredient) string { return T("copy of %s", Kitchen(in)) }

// EditTitle and CopyTitle head the form of an ingredient.
func EditTitle(in *ingredient.Ingredient) string { return T("Edit %s", in.Name) }
func CopyTitle(in *ingredient.Ingredient) string { return T("A copy of %s", in.Name) }

// CopyAlone says that only the design has an ingredient.
const CopyAlone Message = "It came with this design and is not among your own ingredients."

// CopyDiffers says that a design and the maker's file do not agree.
const CopyDiffers Message = "This design has other figures for it than you have saved. The design's are shown and used."

// IngredientSaved says where an ingredient was kept.
func IngredientSaved(in *ingredient.Ingredient, path string) string {
	return T("Saved %s in %s", in.Name, path)
}

// IngredientDeleted says that one is gone.
func IngredientDeleted(in *ingredient.Ingredient) string { return T("Deleted %s", in.Name) }

// DeleteIngredient asks whether to delete one.
func DeleteIngredient(in *ingredient.Ingredient) (title, question string) {
	return T("Delete %s?", in.Name), T("It is removed from your own ingredients. A design that uses it keeps its copy.")
}

// ShelfUnread says why the maker's own ingredients are left out.
func ShelfUnread(why error) string {
	return T("Your own ingredients could not be read and are left out; the file stays as it is. %s Correct the file by hand, then read it again.", TrueMinus(Sentence(Flaw(why))))
}

// What the form of an ingredient says beside its fields.
const (
	LeaveEmptyOnPack Message = "Leave empty what it does not say: unknown is not 0."
	LeaveEmpty       Message = "Leave empty what is not known: unknown is not 0."
	TickAllergens    Message = "Tick what the pack names. Add its “may contain” to your label yourself."
	ShownWithout     Message = "Shown without the figure that cannot be read."
	MoreOnPack       Message = "Kinds of sugar, minerals and more, if the pack says"
	MoreFigures      Message = "More figures per 100 g, if you know them"
)

// FieldFault says what is wrong with what was typed into the field of that name.
func FieldFault(name string, wrong error) string {
	return Sentence(name + ": " + TrueMinus(Flaw(wrong)))
}
