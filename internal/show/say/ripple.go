package say

import "ripplewright/internal/matter/ripple"

// A Choice is a word of a file and how a person reads it.
type Choice struct{ Value, Name string }

// NameOf is how a value of choices reads; one that is none of them reads as it stands.
func NameOf(choices []Choice, value string) string {
	for _, c := range choices {
		if c.Value == value {
			return c.Name
		}
	}
	return value
}

// ValueOf is the value behind a name, "" where no choice has it.
func ValueOf(choices []Choice, name string) string {
	for _, c := range choices {
		if c.Name == name {
			return c.Value
		}
	}
	return ""
}

// NamesOf are the names of choices.
func NamesOf(choices []Choice) []string {
	names := make([]string, len(choices))
	for i, c := range choices {
		names[i] = c.Name
	}
	return names
}

// Layouts and Motions are the ways to fill a tub and to stir it.
var (
	Layouts = []Choice{{"dollops", "dollops"}, {"layers", "layers"}, {"halves", "two halves"}, {"spiral", "piped spiral"}}
	Motions = []Choice{{"plunge", "plunging"}, {"fold", "folding"}, {"eight", "figure eights"}, {"drag", "dragging"}, {"mixed", "a mixture"}}
)

// CutTitle names a cut and its size: "Side cut, 80 × 90 mm".
func CutTitle(s Style, view ripple.View, widthMM, heightMM float64) string {
	return [...]string{ripple.Side: "Side cut", ripple.Top: "Cut seen from above"}[view] + ", " + s.Size(widthMM, heightMM)
}

// RibbonsTitle says of which cut the ribbons are.
func RibbonsTitle(view ripple.View) string {
	return "Ribbons, in the " + [...]string{ripple.Side: "side cut", ripple.Top: "cut seen from above"}[view]
}

// What stands on the page of the stirred tub.
const (
	SideCut   = "Side cut"
	FromAbove = "From above"
	BothCuts  = "Both"

	FilledAs      = "Filled as"
	StirredBy     = "Stirred by"
	AnotherTub    = "Another tub"
	ExportPicture = "Export picture…"
	Stop          = "Stop"
	StoppedCoarse = "Stopped: the picture is coarse."
	Colours       = "Colours"
	OwnColour     = "your own"
	Measuring     = "Ribbons: measuring…"

	EatsAs         = "    eats as"
	ShareInChords  = "% of the phase in them"
	FoamInSpoon    = "foam in a spoonful, % of volume"
	SpoonSweetness = "sweetness of a spoonful, % sucrose"
	ShareOfSpoons  = "% of spoonfuls"

	EmptyTub      = "the tub is empty; add ingredients to the custard or the foam on the bench"
	AboutSpoonful = "A spoonful is taken as a cube with the same pattern all the way through: ribbons bend, so real spoonfuls differ less. Their mean is the tub's. Sweetness is that of so much sugar in water."
)

// ChordLength is the axis of the lengths of chords.
func ChordLength(s Style) string { return WithUnit("length of chords", s.Gauge("mm").Unit) }

// ColourOf heads the question for the colour of a phase.
func ColourOf(phase string) string { return "Colour of the " + phase }

// ColourStep is the step of another colour of a phase.
func ColourStep(phase string) string { return phase + " colour" }

// NoPicture says why there is none.
func NoPicture(why string) string { return "No picture: " + why + "." }

// StrokeLimit says what the pictures leave out.
func StrokeLimit(s Style) string {
	return "At most " + s.Count(ripple.MaxStrokes, "stroke", "") + ". Air lost by mixing too long is not computed."
}

// ASpoonful heads what is said of spoonfuls.
func ASpoonful(s Style) string { return "A spoonful of " + s.Volume(ripple.SpoonML) }

// ServedAt leads to what is said of the serving temperature, °C.
func ServedAt(s Style, c float64) string { return "Served at " + s.Temperature(c) + ":" }

// TooAlike says that two colours differ in lightness, L*, by less than enough.
func TooAlike(s Style, apart, enough float64) string {
	return "The two are almost equally light (L* " + s.Number(apart, 0) + " apart; from " + s.Number(enough, 0) +
		" on they can be told apart at arm's length). Only the foam's bubbles tell them apart."
}
