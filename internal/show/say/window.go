package say

import (
	"strconv"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/work/design"
)

// What stands in the window's frame and in its dialogs.
const (
	NotSaved       = " • not saved"
	OfRipplewright = " — Ripplewright"
	BeforeYouBegin = "Before you begin"
	DidNotWork     = "This did not work"
	FileChanged    = "The file has changed"
	ReplaceFile    = "Replace the file?"
	SaveChanges    = "Save the changes?"
	Discard        = "Discard"
	Save           = "Save"
	NothingToMake  = "There is nothing to make: put something into the custard or the foam, on the bench."
	NothingHere    = "There is nothing to make"
	PutSomethingIn = "Put something into the custard or the foam, on the bench."
	PointAtTime    = "Point at a time, or press Tab and the arrow keys, to read who has what."
	ChangedByTrial = " · changed by the reading"
	NoWarnings     = "No warnings."
	LettersGoOn    = "There are more."
	Unsettled      = "Something went wrong"
	Later          = "Later"
	DeleteIt       = "Delete it"
	OpenIt         = "Open it"
	OwnFoodsOut    = "your own ingredients are left out: %w\nThe file stays as it is: mend what is wrong, then press Read it again on the Library page"
	OwnPricesOut   = "your own prices are left out: %w\nThe file stays as it is, and no price is kept until it can be read"
	OwnKitchensOut = "your own kitchens are left out: %w\nThe file stays as it is, and no kitchen is saved until it can be read"
)

// Exists says that a file is there already.
func Exists(name string) string { return name + " already exists." }

// Writing, Wrote, NotWritten, Opened and Saved tell what becomes of a file.
func Writing(path string) string { return "Writing " + path + " …" }

// Wrote tells that a file is written.
func Wrote(path string) string { return "Wrote " + path }

// NotWritten tells that a file is not.
func NotWritten(path string) string { return "Not written: " + path }

// Opened tells that a design is open.
func Opened(path string) string { return "Opened " + path }

// Saved tells that a design is saved.
func Saved(path string) string { return "Saved " + path }

// CarriesOn says what a mistake of the program comes to; kept says where the work is.
func CarriesOn(kept string) string {
	return "Ripplewright made a mistake and carries on. " + kept + " Save the design and start the program again."
}

// KeptIn says where the design is kept, KeptNot why it is not.
func KeptIn(path string) string {
	return "The design as it is now is kept in " + path + " until you save it."
}

// KeptNot says why the design could not be kept.
func KeptNot(why error) string { return "The design could not be kept: " + why.Error() + "." }

// NothingUnsaved says that there was nothing to keep.
const NothingUnsaved = "Nothing was unsaved."

// ReportIn says where a report of a mistake is.
func ReportIn(path string) string {
	return "A report for those who fix the program is in " + path + "; it holds no recipe."
}

// AllOf names the whole of a plan.
func AllOf(span string) string { return "All: " + span }

// IceSentence leads to what is said of the ice.
func IceSentence(line string) string { return "Ice: " + line + "." }

// FullTo says how far a tub is filled, a fraction.
func FullTo(s Style, fill float64) string { return s.Percent(100*fill, 0) + " full" }

// What the bench says of what can be done.
const (
	RailHint    = "Drag the handle, or press the arrow keys, to choose the serving temperature. Thick lines: hardness; thin lines: ice by volume."
	BeginHere   = "Add what you cook to the custard and what you beat or boil to the foam, or open a demo from the File menu."
	HowHard     = "its hardness is not known"
	NowhereHere = "at no temperature here"
	NoLines     = "no lines yet"
	InNoTub     = "not in the tub"
	InNoTubWhy  = "The share of foam leaves\nno room for it. Its recipe\nstays in the file."
	AddToSee    = "Add ingredients to see\nhow this phase freezes,\nsweetens and eats."

	CupHint      = "Find the overrun by weighing the same cup before and after."
	LossHint     = "Water driven off while cooking, of the custard's mass."
	PanHint      = "Find the loss by weighing the pan before and after."
	AirOfMix     = "Air beaten in: volume gained, of the mix's volume."
	AirOfFoam    = "Air beaten in: volume gained, of the unbeaten volume."
	SyrupHint    = "What the thermometer shows when the syrup comes off the heat."
	SyrupByScale = "Weigh the syrup instead: exact where a thermometer is not."
	FoamHint     = "The foam's share of the tub by volume."
	TubsHint     = "How many tubs to fill."
	EachHint     = "What one tub holds to the brim."
	DesignHint   = "Name, notes, how full a tub is, what is scaled, eggs and altitude."

	NoLineYet   = "Nothing here yet."
	NoteExample = "for example: half of it burnt"
)

// AndMore says that so many errors follow.
func AndMore(n int) string { return "and " + strconv.Itoa(n) + " more" }

// WordAndHardness is a word of the scale with its hardness, kPa.
func WordAndHardness(s Style, word string, kPa float64) string {
	return word + ", about " + s.Hardness(kPa)
}

// AddHint, LineHint and MoreHint say what a line's buttons do.
func AddHint(list string) string { return list + ": add an ingredient." }

// LineHint is that of a line's name, with its note if it has one.
func LineHint(name, note string) string {
	if note != "" {
		return name + ", " + note + ": press for another ingredient."
	}
	return name + ": press for another ingredient. Alt with an arrow or dragging moves the line, Ctrl+Shift+D doubles it, Delete removes it."
}

// MoreHint is that of a line's menu.
func MoreHint(name string) string { return name + ": move, remove, note, count, keep." }

// CountAs offers to count a line.
func CountAs(part design.EggPart) string { return "Count as " + string(part) }

// NoteOn heads the question for a line's note.
func NoteOn(name string) string { return "Note on " + name }

// OneEgg is what a counted egg, or its part, weighs, g, in a size of egg.
func OneEgg(s Style, grams float64, size design.EggSize) string {
	return s.Mass(grams) + " each, size " + size.System + " " + size.Size
}

// EggOfSize describes a size of egg.
func EggOfSize(s Style, e egg.Size) string {
	return e.System + " " + e.Name + ": " + s.Mass(e.EdibleG) + ", yolk " + s.Mass(e.YolkG) + ", white " + s.Mass(e.WhiteG)
}

// An Undoable is what a change of a line is called in the menu: "move of sugar".
type Undoable string

// The steps.
const (
	MoveOf     Undoable = "move of "
	SecondOf   Undoable = "second "
	RemovalOf  Undoable = "removal of "
	AmountOf   Undoable = "amount of "
	WeighingOf Undoable = "weighing of "
	CountingOf Undoable = "counting of "
	OnNote     Undoable = "note on "
	ChangeTo   Undoable = "change to "
	Addition   Undoable = "addition of "
)

// Of is the step for what is named.
func (s Undoable) Of(name string) string { return string(s) + name }

// Bases and Shapes are how a batch is scaled and what a tub is like.
var (
	Bases = []Choice{
		{string(design.BasisTubs), "Scale both phases to fill the tubs"},
		{string(design.BasisAsWritten), "Keep the grams as written"},
	}
	Shapes = []Choice{
		{string(design.ShapeRound), "Round, as high as wide"},
		{string(design.ShapeShallow), "Round and shallow"},
		{string(design.ShapeRectangle), "Box"},
	}
)
