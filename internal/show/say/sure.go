package say

import (
	"math"
	"strings"
)

// What stands on the page of checks.
const (
	HowSure        Message = "How sure are we?"
	HowSureBriefly Message = "How sure?"
	RunningOver    Message = "Running the models against the tables…"
	AboutChecks    Message = "When you open this page, the code that computes your design runs against published tables. The list shows what each table proves; choose one to see the model beside the measurement."
	RestOn         Message = "What these figures rest on"
	RestUnder      Message = "measured, computed, a convenience, not settled"
	NoPoints       Message = "This check counts figures; it has no points to draw."
	NotCounted     Message = "not counted"
	Show           Message = "Show"

	ModelAndMeasurement Message = "Model and measurement"
	Errors              Message = "Errors"
	Numbers             Message = "Numbers"
)

// What a kind of check proves.
const (
	ProvesIndependent Message = "nothing was fitted to them: the strongest proof"
	ProvesElsewhere   Message = "nothing was fitted, but their mix was not read: they test level and order"
	ProvesRegression  Message = "the model was fitted to them: they show the fit, not a prediction"
	ProvesRemembered  Message = "published figures that we did not look up again: no proof"
	ProvesTwice       Message = "by a second program of ours: checks the arithmetic only"
	ProvesIdentity    Message = "the same equations computed separately: checks the program only"
)

// The axes of a check.
const (
	PublishedAxis Message = "published: %s"
	ModelAxis     Message = "model: %s"
	ErrorAxis     Message = "error, %s"
	TableOrder    Message = "point, in the order of the table"
)

// CheckHeads head the summary of checks, CheckPairs the figures of one.
func CheckHeads() []string { return []string{T("checks"), T("within their limit"), T("points")} }

// CheckPairs head the figures of one check.
func CheckPairs() []string { return []string{T("published"), T("model"), T("error")} }

// TablesUnread says that the tables could not be read.
func TablesUnread(why error) string { return T("The tables could not be read: %s", Flaw(why)) }

// ChecksKept says how many of all checks with a limit keep within it, and how many
// have none.
func ChecksKept(s Style, kept, all, open int) string {
	text := T("%d of %d checks keep within their limits.", kept, all)
	if kept < all {
		text = T("%d of %d checks are NOT within their limits.", all-kept, all)
	}
	switch {
	case open == 1:
		text += " " + T("One more has no limit: it only compares.")
	case open > 1:
		text += " " + T("%s no limit: they only compare.", s.Count(open, "more has", "more have"))
	}
	return text
}

// OfLimit is the largest error of a check, of its limit, which is +Inf where there
// is none.
func OfLimit(s Style, largest, limit float64, unit string) string {
	if math.IsInf(limit, 1) {
		return T("%s %s, no limit", s.Sized(largest), unit)
	}
	return T("%s of %s %s", s.Sized(largest), s.Sized(limit), unit)
}

// CheckLine is a check in a line: its points and its largest error.
func CheckLine(s Style, met bool, points int, largest string) string {
	text := T("%s, largest error %s", s.Count(points, "point", "points"), largest)
	if !met {
		text = T("NOT MET: %s", text)
	}
	return text
}

// CheckVerdict says in full how well a check holds. Of its points, apart are shown
// but not counted.
func CheckVerdict(s Style, met, limited bool, largest string, rms float64, points, apart int) string {
	counted := s.Count(points, "point", "points")
	if apart > 0 && points > 0 {
		counted = T("%s counted, %d more shown", counted, apart)
	}
	figures := T("largest error %s, root mean square %s, %s.", largest, s.Sized(rms), counted)
	switch {
	case !limited:
		return T("Shown for comparison: %s", figures)
	case met:
		return T("✓ Within its limit: %s", figures)
	}
	return T("✗ NOT MET: %s", figures)
}

// SourceLine names where a table comes from.
func SourceLine(source string) string { return T("Source: %s.", source) }

// Sized writes v to three digits that matter, without noughts at its end.
func (s Style) Sized(v float64) string {
	a := math.Abs(v)
	switch {
	case !known(v):
		return Unknown
	case a == 0:
		return "0"
	case a < 1e-4:
		exp := math.Floor(math.Log10(a))
		return s.Short(v/math.Pow(10, exp), 2) + " × 10" + raised.Replace(T("%.0f", exp))
	}
	return s.Short(v, max(0, 2-int(math.Floor(math.Log10(a)))))
}

// FiveDigits writes v to five digits, as tables print them.
func (s Style) FiveDigits(v float64) string {
	a := math.Abs(v)
	if a != 0 && a < 1e-3 || math.IsNaN(v) {
		return s.Sized(v)
	}
	places := 4
	if a >= 1 {
		places = max(0, 4-int(math.Floor(math.Log10(a))))
	}
	return s.Short(v, places)
}

var raised = strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")
