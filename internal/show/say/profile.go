package say

import (
	"strings"

	"ripplewright/internal/form/echo"
)

// The words about the kitchens that a maker keeps.

// KitchenAway says that a design names a kitchen that is not kept, and which one
// stands in.
func KitchenAway(name, instead string) string {
	return T("The design names the kitchen “%s”, which is not kept here. Computed as %s.", echo.Plain(name), KitchenName(instead))
}

// KitchensLeftOut says why a maker's own kitchens are not offered.
func KitchensLeftOut(why error) string {
	return T("Your own kitchens are left out: %s.", strings.TrimSuffix(Flaw(why), "."))
}

// KitchenSaved says what of a kitchen was saved.
func KitchenSaved(name, what string) string {
	return T("Saved in the kitchen “%s”: %s", KitchenName(name), what)
}

// DeleteKitchen asks whether to delete a kitchen; designs that name it use instead.
func DeleteKitchen(name, instead string) (title, question string) {
	return T("Delete the kitchen?"), T("“%s” and its calibration are deleted.\nDesigns that name it use %s instead.", KitchenName(name), KitchenName(instead))
}

// ResetKitchen asks whether to make a built-in kitchen as it was.
func ResetKitchen(name string) (title, question string) {
	return T("Reset the kitchen?"), T("“%s” gets back its first settings;\nyour changes and calibrations are lost.", KitchenName(name))
}

// KitchenChoice words a choice of a kitchen's setting.
func KitchenChoice(code string) string {
	if words, ok := kitchenChoices[code]; ok {
		return words.String()
	}
	return Of(strings.ReplaceAll(code, "_", " "))
}

var kitchenChoices = map[string]Message{
	"dish": "a shallow dish", "bowl": "a mixing bowl", "box": "a lidded box",
	"stream": "in a thin stream", "at_once": "all at once",
}

// KitchenName is what a kitchen is called: those that come with the program have their
// names in the maker's language, which files keep in English.
func KitchenName(name string) string { return oneLine(Of(name), kitchenRunes) }

// kitchenRunes is how much of a kitchen's name is shown.
const kitchenRunes = 120
