package say

import (
	"math"
	"strings"

	"ripplewright/internal/food/label"
)

// PanelTitle is what the rules call a panel.
func PanelTitle(region label.Region) string {
	if region == label.EU {
		return "Nutrition declaration"
	}
	return "Nutrition Facts"
}

// RegionName names whose rules a label follows.
func RegionName(region label.Region) string {
	switch region {
	case label.US:
		return "United States"
	case label.EU:
		return "EU and United Kingdom"
	}
	return string(region)
}

// What stands on the page of the label.
const (
	LabelPage   = "Nutrition and label"
	Rules       = "Rules"
	PanelForm   = "Form"
	ExportLabel = "Export PDF, PNG, SVG or text…"
	Ingredients = "Ingredients"
	MayBeCalled = "What it may be called"
	Claims      = "Claims"
	OurReading  = "This is our reading of the sections named. Local code and licensed practice decide."

	// TabularRule says when a panel may be tabular, which is not seen from a label.
	TabularRule = "This form is for a package less than about three inches high (21 CFR 101.9(d)(11)(iii))."
)

// ServingSize is the line of a US panel.
func ServingSize(measure string) string { return "Serving size " + measure }

// EnergyBy says how the energy is counted.
func EnergyBy(method string) string { return "Energy: " + method + "." }

// TruthfulName proposes a name.
func TruthfulName(name string) string { return "A truthful name: " + name }

// NamesUnder heads the names that the food, or its custard, may bear by the rules of a
// region.
func NamesUnder(n label.Name) string {
	return "Of the " + LabelledFood(n.Of) + ", " + RegionName(n.Region) + ":"
}

// Met says whether a condition is met.
func Met(met bool) string {
	if met {
		return "met"
	}
	return "not met"
}

// MetMark is Met with a sign before it, and open where an unknown figure decides.
func MetMark(met, open bool) string {
	switch {
	case met:
		return "✓ met"
	case open:
		return "? depends on an unknown figure"
	}
	return "✗ not met"
}

// LimitLine is a condition, what the food has, and whether that meets it.
func LimitLine(s Style, l label.Limit) string {
	if l.Judge {
		return l.What + ": for you to judge (" + l.Section + ")"
	}
	text := l.What + ": " + l.Bound
	if l.Own != nil {
		here := "; here "
		if l.Incomplete {
			here = "; here at least "
		}
		text += here + s.compared(*l.Own, &l)
	}
	verdict := Met(l.Met)
	switch {
	case l.Incomplete:
		verdict = "depends on an unknown figure"
	case !l.Met && math.Abs(l.Miss) > 0:
		verdict = "missed by " + s.compared(l.Miss, &l)
	}
	if strings.Contains(l.Section, " (") {
		return text + ": " + verdict + ", " + l.Section
	}
	return text + ": " + verdict + " (" + l.Section + ")"
}

// compared is a figure of a limit in three digits, or in four where three would put
// it on the limit that it misses.
func (s Style) compared(v float64, l *label.Limit) string {
	if l.Own != nil && !l.Met && math.Abs(l.Miss) < 0.005*math.Abs(*l.Own) {
		return s.Measure(v, l.Unit)
	}
	return s.with(s.Sized(v), l.Unit)
}

// LabelFile names the file of a label.
func LabelFile(title string, region label.Region) string {
	return title + ", label " + strings.ToUpper(string(region)) + ".pdf"
}
