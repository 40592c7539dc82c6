package say

// Scale is a scale of temperature.
type Scale uint8

// The scales.
const (
	Celsius Scale = iota
	Fahrenheit
)

// Weights is what stands for a weight.
type Weights uint8

// The weights. Grams stand in any case: they are what the scale shows.
const (
	GramsAlone Weights = iota
	WithOunces         // "750 g (26.5 oz)"
)

// Volumes is what a volume is told in. Who chooses anything but millilitres
// measures lengths in inches and heights in feet.
type Volumes uint8

// The volumes; fluid ounces, cups and pints are those of the US.
const (
	Millilitres Volumes = iota
	FluidOunces
	Cups
	Pints
)

// Style is how a maker reads quantities. The zero Style is metric, in degrees
// Celsius, with a decimal point and money without a sign.
type Style struct {
	Scale    Scale
	Weights  Weights
	Volumes  Volumes
	Comma    bool   // a decimal comma, as in "2,5"
	Currency string // before an amount of money, as in "€"; none if empty
}

// Customary is the Style of US kitchens: °F, ounces beside grams, fluid ounces,
// inches.
var Customary = Style{Scale: Fahrenheit, Weights: WithOunces, Volumes: FluidOunces}

// Usual is the Style of who has chosen none. Whatever shows words to a person
// begins with it and hands it down: page.Reads in the window, Options.Style of a
// card, the shell of the command line.
var Usual = Style{}

// inches reports whether lengths are told in inches, and heights in feet.
func (s Style) inches() bool { return s.Volumes != Millilitres }

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
