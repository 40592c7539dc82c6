package say

import (
	"slices"

	"ripplewright/internal/form/flaw"
)

// A UnitChoice is one of the choices of a Style, in words that preferences keep.
type UnitChoice struct {
	Key, Name string
	Choices   []Choice
	get       func(s *Style) int
	set       func(s *Style, i int)
}

// UnitChoices are all that a maker chooses of how quantities read, but for the
// currency, which is that of the maker's prices.
func UnitChoices() []UnitChoice {
	return []UnitChoice{
		{"temperature", T("Temperatures"), []Choice{{"c", "°C"}, {"f", "°F"}},
			func(s *Style) int { return int(s.Scale) }, func(s *Style, i int) { s.Scale = Scale(i) }},
		{"weight", T("Weights"), []Choice{{"g", T("grams")}, {"g_oz", T("grams with ounces")}},
			func(s *Style) int { return int(s.Weights) }, func(s *Style, i int) { s.Weights = Weights(i) }},
		{"volume", T("Volumes and lengths"), []Choice{{"ml", T("millilitres and millimetres")}, {"fl_oz", T("US fluid ounces and inches")},
			{"cups", T("US cups and inches")}, {"pints", T("US pints and inches")}},
			func(s *Style) int { return int(s.Volumes) }, func(s *Style, i int) { s.Volumes = Volumes(i) }},
		{"decimals", T("Decimals"), []Choice{{"point", "2.5"}, {"comma", "2,5"}},
			func(s *Style) int {
				if s.Comma {
					return 1
				}
				return 0
			}, func(s *Style, i int) { s.Comma = i == 1 }},
	}
}

// Of is the value of the choice that s has.
func (c UnitChoice) Of(s Style) string { return c.Choices[c.get(&s)].Value }

// In is s with a value of the choice, and as it was for a value that is none.
func (c UnitChoice) In(s Style, value string) Style {
	if i := slices.IndexFunc(c.Choices, func(x Choice) bool { return x.Value == value }); i >= 0 {
		c.set(&s, i)
	}
	return s
}

// Systems are the names of whole Styles on a command line.
var Systems = []string{"metric", "us"}

// SystemOf is the Style that a name stands for.
func SystemOf(name string) (Style, error) {
	switch name {
	case "metric":
		return Usual, nil
	case "us":
		return Customary, nil
	}
	return Style{}, flaw.New("units are metric or us")
}

// DecimalSigns are the names of the decimal signs on a command line.
var DecimalSigns = []string{"point", "comma"}

// NotDecimals says that a name is none of DecimalSigns.
func NotDecimals(name string) error {
	if slices.Contains(DecimalSigns, name) {
		return nil
	}
	return flaw.New("decimals are point or comma")
}

// The window's question for units.
const (
	UnitsItem     Message = "Units and signs…"
	UnitsTitle    Message = "Units and signs"
	UnitsAbout    Message = "How quantities are shown and typed, here and on the card. The file of a design stays metric, and labels keep the units of their rules."
	AllMetric     Message = "All metric"
	AllUS         Message = "All US"
	LanguageAbout Message = "The German is ours, not a translator's. Files, their keys and what a program reads stay English."
	UnitsKept     Message = "Units changed"
)
