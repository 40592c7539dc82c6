package say

import (
	"errors"
	"strings"

	"ripplewright/internal/answer/icy"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/form/echo"
)

var places = map[onpack.Place]Message{onpack.US: "the United States", onpack.EU: "the European Union", onpack.DE: "Germany", onpack.IE: "Ireland",
	onpack.IT: "Italy", onpack.UK: "the United Kingdom"}

var inPlaces = map[onpack.Place]Message{onpack.US: "in the United States", onpack.EU: "in the European Union", onpack.DE: "in Germany", onpack.IE: "in Ireland",
	onpack.IT: "in Italy", onpack.UK: "in the United Kingdom"}

// classes are how a rule or a word was read.
var classes = map[onpack.SourceClass]Message{onpack.LawRead: "law read", onpack.Authority: "authority", onpack.Secondary: "secondary",
	onpack.FromMemory: "from memory", onpack.Decided: "decided here"}

// faces are the faces of a tub.
var faces = map[string]Message{"front": "front", "information": "information", "nutrition": "nutrition", "lid": "lid"}

var sales = map[onpack.Sale]Message{onpack.Shop: "sold by a shop", onpack.Stall: "packed before the order and sold by you", onpack.Scooped: "scooped to order"}

var elements = map[onpack.Key]Message{onpack.Name: "Name of the food", onpack.Quantity: "Net quantity", onpack.Ingredients: "Ingredients",
	onpack.Allergens: "Allergens", onpack.Nutrition: "Nutrition", onpack.Maker: "Maker", onpack.Date: "Date", onpack.Storage: "Storage",
	onpack.Lot: "Lot", onpack.Origin: "Origin", onpack.Warnings: "Statements"}

// ElementName is what an element of a label is called.
func ElementName(k onpack.Key) string { return elements[k].String() }

// PlaceName is a place in words.
func PlaceName(p onpack.Place) string { return places[p].String() }

// SaleName is a way of sale in words.
func SaleName(s onpack.Sale) string { return sales[s].String() }

// The choice of the batch whose day, lot and durability a label takes where nothing is
// typed.
const (
	LabelBatch   Message = "The batch"
	LabelNoBatch Message = "None: what is typed below"
)

// TubLabelHead begins the list of what must stand on a tub.
func TubLabelHead(p onpack.Place, s onpack.Sale) string {
	return T("On a tub %s %s, by our reading:", sales[s].String(), inPlaces[p].String())
}

// LabelElement is one element with its state and rule.
func LabelElement(e onpack.Element) string {
	name, text, rule := elements[e.Key].String(), elementText(e), Section(e.Section)+"; "+classes[e.Class].String()
	switch e.State {
	case onpack.Add:
		return T("%s: you must add %s [%s]", name, text, rule)
	case onpack.NotNeeded:
		return T("%s: not needed: %s [%s]", name, text, rule)
	}
	if e.WordsClass != "" {
		rule = T("%s; its words: %s", rule, classes[e.WordsClass].String())
	}
	if !strings.HasPrefix(text, name+": ") {
		text = name + ": " + text
	}
	return text + " [" + rule + "]"
}

// elementText is what stands on the label, what to add, or why it is not needed.
func elementText(e onpack.Element) string {
	if e.Told != nil {
		return Said(e.Told)
	}
	return e.Text
}

// LabelDue is an element that is due and not there: what to add to it, in so many
// letters at most, and which rule asks for it.
func LabelDue(e onpack.Element, most int) string {
	return T("%s: add %s (%s)", elements[e.Key].String(), echo.Line(elementText(e), most), Section(e.Section))
}

// Section is what a rule is cited as: a law keeps its name, and words of ours around it
// are told.
func Section(cited string) string {
	if of, ok := strings.CutSuffix(cited, ", from memory"); ok {
		return T("%s, from memory", Of(of))
	}
	if of, ok := strings.CutSuffix(cited, " (from memory)"); ok {
		return T("%s (from memory)", Of(of))
	}
	return Of(cited)
}

// LabelFace is a face of a tub with its size, the least height of its letters and
// why the label does not fit, "" where it does.
func LabelFace(s Style, name string, w, h, least float64, why string) string {
	if known, ok := faces[name]; ok {
		name = known.String()
	}
	text := T("%s, %s, letters of %s or more", name, s.Size(w, h), s.Gauge("mm").Text(least, 1))
	if why != "" {
		return T("%s: it does not fit: %s", text, why)
	}
	return T("%s: it fits", text)
}

// LabelState says how far a label is: what must be added, or that it can be
// printed.
func LabelState(all []onpack.Element, pages int) string {
	var add []string
	for _, e := range onpack.Missing(all) {
		add = append(add, Lower(elements[e.Key].String()))
	}
	if len(add) > 0 {
		return T("Not ready to print. Add: %s.", List(add))
	}
	if pages > 1 {
		return T("Ready to print at 100 %: check the bar of 50 mm on each page. Label the dry tub before it is filled.")
	}
	return T("Ready to print at 100 %: check the bar of 50 mm. Label the dry tub before it is filled.")
}

// LabelAdvice is what a maker must know before selling.
func LabelAdvice(langs []string) string {
	s := T("This is our reading of the rules; local code and licensed practice decide. Nothing is invented: the packs in your hand decide what the ingredients are.")
	for _, lang := range langs {
		if lang != "en" {
			return T("Have a speaker of each language read the label before you sell. %s", s)
		}
	}
	return s
}

// choices are what a maker chooses of a label, by the field of a ChoiceError.
var choices = map[string]Message{"place": "The place", "sale": "The way of sale", "lang": "The languages", "made": "The day it was made",
	"keeps": "For how long it keeps", "date": "The form of the date", "net": "The quantity", "tub": "The tub", "tub-mm": "The tub's sizes",
	"sheet": "The sheet", "margin": "The margin", "gap": "The gap", "first": "The first free place", "copies": "The copies", "article": "The article number"}

// LabelWordField names the field of a label's word in a language.
func LabelWordField(lang, what string) string {
	if what == "name" {
		return T("Name of the food in %s", Of(onpack.LanguageName(lang)))
	}
	return T("Ingredients in %s, in the order of the English list", Of(onpack.LanguageName(lang)))
}

// LabelWordStep names the change of such a word, for undo.
func LabelWordStep(lang, what string) string {
	if what == "name" {
		return T("name on the label in %s", Of(onpack.LanguageName(lang)))
	}
	return T("ingredients on the label in %s", Of(onpack.LanguageName(lang)))
}

// LabelLacks names the words that a language has none of here, "" for none.
func LabelLacks(lang string, terms []string) string {
	if len(terms) == 0 {
		return ""
	}
	return T("%s has no words here for %s: English stands there, and −18 °C for the cold.", Of(onpack.LanguageName(lang)), List(terms))
}

// LabelChoice says why no label can be made of what is chosen.
func LabelChoice(err error) string {
	var bad *onpack.ChoiceError
	if errors.As(err, &bad) {
		return choices[bad.Field].String() + ": " + Flaw(bad.Err) + "."
	}
	return Capital(Flaw(err)) + "."
}

// KeepsExample shows how the time is typed for which a tub keeps.
const KeepsExample Message = "90d or 6m, as you have found out"

// TubLabelFile names the file of a tub's label.
func TubLabelFile(title string) string { return T("%s label.pdf", title) }

// LabelFill holds what a tub declares against what it holds. Outside the US the
// packer's tolerable errors count too.
func LabelFill(s Style, place onpack.Place, f onpack.Fill) string {
	text := T("Frozen, a tub holds %s by the model, and %s is declared.", s.VolumeTo(f.HoldsML, 1), s.VolumeTo(f.DeclaredML, 0)) + " "
	if f.SpareFraction < 0 {
		text += T("That is more than the tubs hold.")
	} else {
		text += T("It may shrink by %s in store before the average falls short.", s.Percent(100*f.SpareFraction, 1))
	}
	if f.HoldsML > f.TubML {
		text += " " + T("The tub chosen for the label has %s by its outside: it cannot hold that.", s.with(s.Number(f.TubML, 0), "mL"))
	}
	if place != onpack.US {
		text += " " + T("A few tubs may be %s short, none more than %s.", s.VolumeTo(f.TolerableML, 1), s.VolumeTo(f.NeverML, 1))
	}
	return text
}

// BesideDate is what the model of ice says of the time in store, to stand beside a
// date as no more than it is.
func BesideDate(s Style, a *icy.Answer) string {
	head := T("Beside the date, of its ice alone, kept at %s:", s.Temperature(a.AtC)) + " "
	switch keeps := IceKeeps(s, a); {
	case keeps != "":
		return head + keeps
	case IceLine(s, a) != "":
		return head + IceLine(s, a) + ". " + T("How long it keeps is for you to find out.")
	}
	return ""
}
