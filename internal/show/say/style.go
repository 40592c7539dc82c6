package say

// Units is a system of weights and measures.
type Units uint8

// The systems.
const (
	Metric Units = iota // g, mL, mm
	US                  // ounces, fluid ounces, inches
)

// Scale is a scale of temperature.
type Scale uint8

// The scales.
const (
	Celsius Scale = iota
	Fahrenheit
)

// Style is how a maker reads quantities. The zero Style is metric, in degrees
// Celsius, with a decimal point and money without a sign.
type Style struct {
	Units    Units
	Scale    Scale
	Comma    bool   // a decimal comma, as in "2,5"
	Currency string // before an amount of money, as in "€"; none if empty
}

// Usual is the Style of who has chosen none. Whatever shows words to a person
// begins with it and hands it down: page.Reads in the window, Options.Style of a
// card, the shell of the command line.
var Usual = Style{}

// Unknown stands where a figure is not known.
const Unknown = "–"

// AtLeast marks a quantity that is a lower bound: "≥ 17.1 %". Nothing is at
// least unknown.
func AtLeast(quantity string) string {
	if quantity == Unknown {
		return Unknown
	}
	return "≥ " + quantity
}
