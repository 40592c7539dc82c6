package say

import (
	"strconv"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/work/design"
)

// What stands in the window's frame and in its dialogs.
const (
	NotSaved       Message = "%s • not saved"
	OfRipplewright Message = "%s — Ripplewright"
	BeforeYouBegin Message = "Before you begin"
	DidNotWork     Message = "This did not work"
	FileChanged    Message = "The file has changed"
	ReplaceFile    Message = "Replace the file?"
	SaveChanges    Message = "Save the changes?"
	Discard        Message = "Discard"
	Save           Message = "Save"
	NothingToMake  Message = "There is nothing to make: put something into the custard or the foam, on the bench."
	NothingHere    Message = "There is nothing to make"
	PutSomethingIn Message = "Put something into the custard or the foam, on the bench."
	PointAtTime    Message = "Point at a time, or press Tab and the arrow keys, to read who has what."
	ChangedByTrial Message = "%s · changed by the reading"
	NoWarnings     Message = "No warnings."
	LettersGoOn    Message = "There are more."
	Unsettled      Message = "Something went wrong"
	Later          Message = "Later"
	DeleteIt       Message = "Delete it"
	OpenIt         Message = "Open it"
	OwnFoodsOut    Message = "your own ingredients are left out: %v\nThe file stays as it is: mend what is wrong, then press Read it again on the Library page"
	OwnPricesOut   Message = "your own prices are left out: %v\nThe file stays as it is, and no price is kept until it can be read"
	OwnKitchensOut Message = "your own kitchens are left out: %v\nThe file stays as it is, and no kitchen is saved until it can be read"
)

// Exists says that a file is there already.
func Exists(name string) string { return T("%s already exists.", name) }

// Writing, Wrote, NotWritten, Opened and Saved tell what becomes of a file.
func Writing(path string) string { return T("Writing %s …", path) }

// Wrote tells that a file is written.
func Wrote(path string) string { return T("Wrote %s", path) }

// NotWritten tells that a file is not.
func NotWritten(path string) string { return T("Not written: %s", path) }

// Opened tells that a design is open.
func Opened(path string) string { return T("Opened %s", path) }

// Saved tells that a design is saved.
func Saved(path string) string { return T("Saved %s", path) }

// CarriesOn says what a mistake of the program comes to; kept says where the work is.
func CarriesOn(kept string) string {
	return T("Ripplewright made a mistake and carries on. %s Save the design and start the program again.", kept)
}

// KeptIn says where the design is kept, KeptNot why it is not.
func KeptIn(path string) string {
	return T("The design as it is now is kept in %s until you save it.", path)
}

// KeptNot says why the design could not be kept.
func KeptNot(why error) string { return T("The design could not be kept: %s.", Flaw(why)) }

// NothingUnsaved says that there was nothing to keep.
const NothingUnsaved Message = "Nothing was unsaved."

// ReportIn says where a report of a mistake is.
func ReportIn(path string) string {
	return T("A report for those who fix the program is in %s; it holds no recipe.", path)
}

// AllOf names the whole of a plan.
func AllOf(span string) string { return T("All: %s", span) }

// IceSentence leads to what is said of the ice.
func IceSentence(line string) string { return T("Ice: %s.", line) }

// FullTo says how far a tub is filled, a fraction.
func FullTo(s Style, fill float64) string { return T("%s full", s.Percent(100*fill, 0)) }

// What the bench says of what can be done.
const (
	RailHint    Message = "Drag the handle, or press the arrow keys, to choose the serving temperature. Thick lines: hardness; thin lines: ice by volume."
	BeginHere   Message = "Add what you cook to the custard and what you beat or boil to the foam, or open a demo from the File menu."
	HowHard     Message = "its hardness is not known"
	NowhereHere Message = "at no temperature here"
	NoLines     Message = "no lines yet"
	InNoTub     Message = "not in the tub"
	InNoTubWhy  Message = "The share of foam leaves\nno room for it. Its recipe\nstays in the file."
	AddToSee    Message = "Add ingredients to see\nhow this phase freezes,\nsweetens and eats."

	CupHint      Message = "Find the overrun by weighing the same cup before and after."
	LossHint     Message = "Water driven off while cooking, of the custard's mass."
	PanHint      Message = "Find the loss by weighing the pan before and after."
	AirOfMix     Message = "Air beaten in: volume gained, of the mix's volume."
	AirOfFoam    Message = "Air beaten in: volume gained, of the unbeaten volume."
	SyrupHint    Message = "What the thermometer shows when the syrup comes off the heat."
	SyrupByScale Message = "Weigh the syrup instead: exact where a thermometer is not."
	FoamHint     Message = "The foam's share of the tub by volume."
	TubsHint     Message = "How many tubs to fill."
	EachHint     Message = "What one tub holds to the brim."
	DesignHint   Message = "Name, notes, how full a tub is, what is scaled, eggs and altitude."

	NoLineYet   Message = "Nothing here yet."
	NoteExample Message = "for example: half of it burnt"
)

// AndMore says that so many errors follow.
func AndMore(n int) string { return T("and %s more", strconv.Itoa(n)) }

// WordAndHardness is a word of the scale with its hardness, kPa, and its band; briefly with
// its band alone.
func WordAndHardness(s Style, word string, kPa model.Span) (whole, brief string) {
	band := s.HardnessSpan(kPa.Low, kPa.High)
	return T("%s, %s (%s)", word, s.Hardness(kPa.Value), band), T("%s, %s", word, band)
}

// AddHint, LineHint and MoreHint say what a line's buttons do.
func AddHint(list string) string { return T("%s: add an ingredient.", list) }

// LineHint is that of a line's name, with its note if it has one.
func LineHint(name, note string) string {
	if note != "" {
		return T("%s, %s: press for another ingredient.", name, note)
	}
	return T("%s: press for another ingredient. Alt with an arrow or dragging moves the line, Ctrl+Shift+D doubles it, Delete removes it.", name)
}

// MoreHint is that of a line's menu.
func MoreHint(name string) string { return T("%s: move, remove, note, count, keep.", name) }

// CountAs offers to count a line.
func CountAs(part design.EggPart) string { return T("Count as %s", Of(string(part))) }

// NoteOn heads the question for a line's note.
func NoteOn(name string) string { return T("Note on %s", name) }

// OneEgg is what a counted egg, or its part, weighs, g, in a size of egg.
func OneEgg(s Style, grams float64, size design.EggSize) string {
	return T("%s each, size %s %s", s.Mass(grams), size.System, Of(size.Size))
}

// EggOfSize describes a size of egg.
func EggOfSize(s Style, e egg.Size) string {
	return T("%s %s: %s, yolk %s, white %s", e.System, Of(e.Name), s.Mass(e.EdibleG), s.Mass(e.YolkG), s.Mass(e.WhiteG))
}

// What a change of a line is called in the menu, with its name: "move of sugar".
const (
	MoveOf     Message = "move of %s"
	SecondOf   Message = "second %s"
	RemovalOf  Message = "removal of %s"
	AmountOf   Message = "amount of %s"
	WeighingOf Message = "weighing of %s"
	CountingOf Message = "counting of %s"
	OnNote     Message = "note on %s"
	ChangeTo   Message = "change to %s"
	Addition   Message = "addition of %s"
)

// Bases and Shapes are how a batch is scaled and what a tub is like.
func Bases() []Choice {
	return []Choice{
		{string(design.BasisTubs), T("Scale both phases to fill the tubs")},
		{string(design.BasisAsWritten), T("Keep the grams as written")},
	}
}

// Shapes are what a tub is like.
func Shapes() []Choice {
	return []Choice{
		{string(design.ShapeRound), T("Round, as high as wide")},
		{string(design.ShapeShallow), T("Round and shallow")},
		{string(design.ShapeRectangle), T("Box")},
	}
}
