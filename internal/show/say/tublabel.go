package say

import "ripplewright/internal/food/onpack"

var places = map[onpack.Place]string{onpack.US: "the United States", onpack.EU: "the European Union", onpack.DE: "Germany", onpack.IE: "Ireland",
	onpack.IT: "Italy", onpack.UK: "the United Kingdom"}

var sales = map[onpack.Sale]string{onpack.Shop: "sold by a shop", onpack.Stall: "packed before the order and sold by you", onpack.Scooped: "scooped to order"}

var elements = map[onpack.Key]string{onpack.Name: "Name of the food", onpack.Quantity: "Net quantity", onpack.Ingredients: "Ingredients",
	onpack.Allergens: "Allergens", onpack.Nutrition: "Nutrition", onpack.Maker: "Maker", onpack.Date: "Date", onpack.Storage: "Storage",
	onpack.Lot: "Lot", onpack.Origin: "Origin", onpack.Warnings: "Statements"}

// ElementName is what an element of a label is called.
func ElementName(k onpack.Key) string { return elements[k] }

// PlaceName is a place in words.
func PlaceName(p onpack.Place) string { return places[p] }

// SaleName is a way of sale in words.
func SaleName(s onpack.Sale) string { return sales[s] }

// TubLabelHead begins the list of what must stand on a tub.
func TubLabelHead(p onpack.Place, s onpack.Sale) string {
	return "On a tub " + sales[s] + " in " + places[p] + ", by our reading:"
}

// LabelElement is one element with its state and rule.
func LabelElement(e onpack.Element) string {
	rule := " [" + e.Section + "; " + string(e.Class) + "]"
	switch e.State {
	case onpack.Add:
		return elements[e.Key] + ": you must add " + e.Text + rule
	case onpack.NotNeeded:
		return elements[e.Key] + ": not needed: " + e.Text + rule
	}
	return elements[e.Key] + ": " + e.Text + rule
}

// LabelFace is a face of a tub with its size, the least height of its letters and
// why the label does not fit, "" where it does.
func LabelFace(s Style, name string, w, h, least float64, why string) string {
	text := name + ", " + s.Size(w, h) + ", letters of " + s.Number(least, 1) + " mm or more"
	if why != "" {
		return text + ": it does not fit: " + why
	}
	return text + ": it fits"
}
