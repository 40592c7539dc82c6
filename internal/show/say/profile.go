package say

import (
	"strings"

	"ripplewright/internal/form/echo"
)

// The words about the kitchens that a maker keeps.

// KitchenAway says that a design names a kitchen that is not kept, and which one
// stands in.
func KitchenAway(name, instead string) string {
	return "The design names the kitchen “" + echo.Plain(name) + "”, which is not kept here. Computed as " + instead + "."
}

// KitchensLeftOut says why a maker's own kitchens are not offered.
func KitchensLeftOut(why error) string {
	return "Your own kitchens are left out: " + strings.TrimSuffix(why.Error(), ".") + "."
}

// KitchenSaved says what of a kitchen was saved.
func KitchenSaved(name, what string) string {
	return "Saved in the kitchen “" + name + "”: " + what
}

// DeleteKitchen asks whether to delete a kitchen; designs that name it use instead.
func DeleteKitchen(name, instead string) (title, question string) {
	return "Delete the kitchen?", "“" + name + "” and its calibration are deleted.\nDesigns that name it use " + instead + " instead."
}

// ResetKitchen asks whether to make a built-in kitchen as it was.
func ResetKitchen(name string) (title, question string) {
	return "Reset the kitchen?", "“" + name + "” gets back its first settings;\nyour changes and calibrations are lost."
}

// KitchenChoice words a choice of a kitchen's setting.
func KitchenChoice(code string) string {
	if words, ok := kitchenChoices[code]; ok {
		return words
	}
	return strings.ReplaceAll(code, "_", " ")
}

var kitchenChoices = map[string]string{
	"dish": "a shallow dish", "bowl": "a mixing bowl", "box": "a lidded box",
	"stream": "in a thin stream", "at_once": "all at once",
}
