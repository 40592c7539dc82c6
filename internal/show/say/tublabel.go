package say

import (
	"errors"
	"strings"

	"ripplewright/internal/answer/icy"
	"ripplewright/internal/food/onpack"
)

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

// The choice of the batch whose day, lot and durability a label takes where nothing is
// typed.
const (
	LabelBatch   = "The batch"
	LabelNoBatch = "None: what is typed below"
)

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
	if e.WordsClass != "" {
		rule = rule[:len(rule)-1] + "; its words: " + string(e.WordsClass) + "]"
	}
	if strings.HasPrefix(e.Text, elements[e.Key]+": ") {
		return e.Text + rule
	}
	return elements[e.Key] + ": " + e.Text + rule
}

// LabelFace is a face of a tub with its size, the least height of its letters and
// why the label does not fit, "" where it does.
func LabelFace(s Style, name string, w, h, least float64, why string) string {
	text := name + ", " + s.Size(w, h) + ", letters of " + s.Gauge("mm").Text(least, 1) + " or more"
	if why != "" {
		return text + ": it does not fit: " + why
	}
	return text + ": it fits"
}

// LabelState says how far a label is: what must be added, or that it can be
// printed.
func LabelState(all []onpack.Element, pages int) string {
	var add []string
	for _, e := range onpack.Missing(all) {
		add = append(add, strings.ToLower(elements[e.Key]))
	}
	if len(add) > 0 {
		return "Not ready to print. Add: " + List(add) + "."
	}
	if pages > 1 {
		return "Ready to print at 100 %: check the bar of 50 mm on each page. Label the dry tub before it is filled."
	}
	return "Ready to print at 100 %: check the bar of 50 mm. Label the dry tub before it is filled."
}

// LabelAdvice is what a maker must know before selling.
func LabelAdvice(langs []string) string {
	s := "This is our reading of the rules; local code and licensed practice decide. Nothing is invented: the packs in your hand decide what the ingredients are."
	for _, lang := range langs {
		if lang != "en" {
			return "Have a speaker of each language read the label before you sell. " + s
		}
	}
	return s
}

// choices are what a maker chooses of a label, by the field of a ChoiceError.
var choices = map[string]string{"place": "The place", "sale": "The way of sale", "lang": "The languages", "made": "The day it was made",
	"keeps": "For how long it keeps", "date": "The form of the date", "net": "The quantity", "tub": "The tub", "tub-mm": "The tub's sizes",
	"sheet": "The sheet", "margin": "The margin", "gap": "The gap", "first": "The first free place", "copies": "The copies", "article": "The article number"}

// LabelWordField names the field of a label's word in a language.
func LabelWordField(lang, what string) string {
	if what == "name" {
		return "Name of the food in " + onpack.LanguageName(lang)
	}
	return "Ingredients in " + onpack.LanguageName(lang) + ", in the order of the English list"
}

// LabelWordStep names the change of such a word, for undo.
func LabelWordStep(lang, what string) string {
	if what == "name" {
		return "name on the label in " + onpack.LanguageName(lang)
	}
	return "ingredients on the label in " + onpack.LanguageName(lang)
}

// LabelLacks names the words that a language has none of here, "" for none.
func LabelLacks(lang string, terms []string) string {
	if len(terms) == 0 {
		return ""
	}
	return onpack.LanguageName(lang) + " has no words here for " + List(terms) + ": English stands there, and −18 °C for the cold."
}

// LabelChoice says why no label can be made of what is chosen.
func LabelChoice(err error) string {
	var bad *onpack.ChoiceError
	if errors.As(err, &bad) {
		return choices[bad.Field] + ": " + bad.Err.Error() + "."
	}
	return strings.ToUpper(err.Error()[:1]) + err.Error()[1:] + "."
}

// KeepsExample shows how the time is typed for which a tub keeps.
const KeepsExample = "90d or 6m, as you have found out"

// TubLabelFile names the file of a tub's label.
func TubLabelFile(title string) string { return title + " label.pdf" }

// LabelFill holds what a tub declares against what it holds. Outside the US the
// packer's tolerable errors count too.
func LabelFill(s Style, place onpack.Place, f onpack.Fill) string {
	text := "Frozen, a tub holds " + s.VolumeTo(f.HoldsML, 1) + " by the model, and " + s.VolumeTo(f.DeclaredML, 0) + " is declared. "
	if f.SpareFraction < 0 {
		text += "That is more than the tubs hold."
	} else {
		text += "It may shrink by " + s.Percent(100*f.SpareFraction, 1) + " in store before the average falls short."
	}
	if f.HoldsML > f.TubML {
		text += " The tub chosen for the label has " + s.with(s.Number(f.TubML, 0), "mL") + " by its outside: it cannot hold that."
	}
	if place != onpack.US {
		text += " A few tubs may be " + s.VolumeTo(f.TolerableML, 1) + " short, none more than " + s.VolumeTo(f.NeverML, 1) + "."
	}
	return text
}

// BesideDate is what the model of ice says of the time in store, to stand beside a
// date as no more than it is.
func BesideDate(s Style, a *icy.Answer) string {
	const head = "Beside the date, of its ice alone, kept at "
	const caveat = " How long it keeps is for you to find out."
	at := s.Temperature(a.AtC) + ": "
	switch keeps := IceKeeps(s, a); {
	case keeps != "":
		return head + at + keeps
	case IceLine(s, a) != "":
		return head + at + IceLine(s, a) + "." + caveat
	}
	return ""
}
