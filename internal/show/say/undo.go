package say

import (
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/compare"
)

// UndoItem and RedoItem name what the menu takes back and brings back: "Undo: overrun
// 300 → 280 %".
func UndoItem(step string) string { return verbed(T("Undo"), step) }

// RedoItem is that of Redo.
func RedoItem(step string) string { return verbed(T("Redo"), step) }

func verbed(verb, step string) string {
	if step == "" {
		return verb
	}
	return verb + ": " + oneLine(step, mostOfStep)
}

// mostOfStep is how many letters of a step a menu shows.
const mostOfStep = 70

// StepText is a step's name, with what was and what is where it moved one thing alone.
func StepText(s Style, name string, d compare.Differences) string {
	others := len(d.Own) + len(d.Reordered)
	switch {
	case len(d.Settings) == 1 && len(d.Lines) == 0 && others == 0:
		return name + " " + SettingChange(s, d.Settings[0])
	case len(d.Lines) == 1 && len(d.Settings) == 0 && others == 0:
		if l := d.Lines[0]; l.Before != nil && l.After != nil {
			return name + " " + lineChange(s, *l.Before, *l.After)
		}
	}
	return name
}

// KitchenStep names a change of a maker's kitchen; nil where there was or is none.
func KitchenStep(s Style, before, after *cold.Profile) string {
	switch {
	case before == nil && after == nil:
		return T("kitchen")
	case before == nil:
		return T("kitchen “%s”", KitchenName(after.Name))
	case after == nil:
		return T("removal of the kitchen “%s”", KitchenName(before.Name))
	}
	var changes []string
	for _, f := range cold.Fields() {
		if was, is := f.Text(before), f.Text(after); was != is {
			changes = append(changes, SettingName(f.Path)+" "+strings.TrimSpace(FromTo(was, is)+" "+f.Unit))
		}
	}
	if len(changes) == 1 {
		return T("kitchen “%s”, %s", KitchenName(after.Name), changes[0])
	}
	return T("kitchen “%s”", KitchenName(after.Name))
}

// FoodStep names a change of an ingredient of a maker's own; nil where there was or is
// none.
func FoodStep(before, after *ingredient.Ingredient) string {
	switch {
	case after != nil && before == nil:
		return T("own ingredient %s", Kitchen(after))
	case after != nil:
		return T("figures of %s", Kitchen(after))
	case before != nil:
		return T("removal of the own ingredient %s", Kitchen(before))
	}
	return T("own ingredient")
}
