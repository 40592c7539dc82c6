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
func Layouts() []Choice {
	return []Choice{{"dollops", T("dollops")}, {"layers", T("layers")}, {"halves", T("two halves")}, {"spiral", T("piped spiral")}}
}

// Motions are the ways to stir a tub.
func Motions() []Choice {
	return []Choice{{"plunge", T("plunging")}, {"fold", T("folding")}, {"eight", T("figure eights")}, {"drag", T("dragging")}, {"mixed", T("a mixture")}}
}

// CutTitle names a cut and its size: "Side cut, 80 × 90 mm".
func CutTitle(s Style, view ripple.View, widthMM, heightMM float64) string {
	return [...]string{ripple.Side: T("Side cut"), ripple.Top: T("Cut seen from above")}[view] + ", " + s.Size(widthMM, heightMM)
}

// RibbonsTitle says of which cut the ribbons are.
func RibbonsTitle(view ripple.View) string {
	return T("Ribbons, in the %s", [...]string{ripple.Side: T("side cut"), ripple.Top: T("cut seen from above")}[view])
}

// What stands on the page of the stirred tub.
const (
	SideCut   Message = "Side cut"
	FromAbove Message = "From above"
	BothCuts  Message = "Both"

	FilledAs      Message = "Filled as"
	StirredBy     Message = "Stirred by"
	AnotherTub    Message = "Another tub"
	ExportPicture Message = "Export picture…"
	Stop          Message = "Stop"
	StoppedCoarse Message = "Stopped: the picture is coarse."
	Colours       Message = "Colours"
	OwnColour     Message = "your own"
	Measuring     Message = "Ribbons: measuring…"

	EatsAs         Message = "eats as"
	ShareInChords  Message = "% of the phase in them"
	FoamInSpoon    Message = "foam in a spoonful, % of volume"
	SpoonSweetness Message = "sweetness of a spoonful, % sucrose"
	ShareOfSpoons  Message = "% of spoonfuls"

	EmptyTub      Message = "the tub is empty; add ingredients to the custard or the foam on the bench"
	AboutSpoonful Message = "A spoonful is taken as a cube with the same pattern all the way through: ribbons bend, so real spoonfuls differ less. Their mean is the tub's. Sweetness is that of so much sugar in water."
)

// ChordLength is the axis of the lengths of chords.
func ChordLength(s Style) string { return WithUnit(T("length of chords"), s.Gauge("mm").Unit) }

// ColourOf heads the question for the colour of a phase.
func ColourOf(phase string) string { return T("Colour of the %s", phase) }

// ColourStep is the step of another colour of a phase.
func ColourStep(phase string) string { return T("%s colour", phase) }

// NoPicture says why there is none.
func NoPicture(why string) string { return T("No picture: %s.", why) }

// StrokeLimit says what the pictures leave out.
func StrokeLimit(s Style) string {
	return T("At most %s. Air lost by mixing too long is not computed.", s.Count(ripple.MaxStrokes, "stroke", "strokes"))
}

// ASpoonful heads what is said of spoonfuls.
func ASpoonful(s Style) string { return T("A spoonful of %s", s.Volume(ripple.SpoonML)) }

// ServedAt leads to what is said of the serving temperature, °C.
func ServedAt(s Style, c float64) string { return T("Served at %s:", s.Temperature(c)) }

// TooAlike says that two colours differ in lightness, L*, by less than enough.
func TooAlike(s Style, apart, enough float64) string {
	return T("The two are almost equally light (L* %s apart; from %s on they can be told apart at arm's length). Only the foam's bubbles tell them apart.", s.Number(apart, 0), s.Number(enough, 0))
}
