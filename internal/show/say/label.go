package say

import (
	"math"
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/form/flaw"
)

// PanelTitle is what the rules call a panel.
func PanelTitle(region label.Region) string {
	if region == label.EU {
		return T("Nutrition declaration")
	}
	return T("Nutrition Facts")
}

// RegionName names whose rules a label follows.
func RegionName(region label.Region) string {
	switch region {
	case label.US:
		return T("United States")
	case label.EU:
		return T("EU and United Kingdom")
	}
	return string(region)
}

// What stands on the page of the label.
const (
	Rules       Message = "Rules"
	PanelForm   Message = "Form"
	ExportLabel Message = "Export PDF, PNG, SVG or text…"
	Ingredients Message = "Ingredients"
	MayBeCalled Message = "What it may be called"
	Claims      Message = "Claims"
	OurReading  Message = "This is our reading of the sections named. Local code and licensed practice decide."

	// TabularRule says when a panel may be tabular, which is not seen from a label.
	TabularRule Message = "This form is for a package less than about three inches high (21 CFR 101.9(d)(11)(iii))."
)

// EnergyBy says how the energy is counted.
func EnergyBy(method *flaw.Remark) string { return T("Energy: %s.", Said(method)) }

// TruthfulName proposes a name.
func TruthfulName(name string) string { return T("A truthful name: %s", name) }

// NamesUnder heads the names that the food, or its custard, may bear by the rules of a
// region.
func NamesUnder(n label.Name) string {
	return T("Of the %s, %s:", LabelledFood(n.Of), RegionName(n.Region))
}

// Met says whether a condition is met.
func Met(met bool) string {
	if met {
		return T("met")
	}
	return T("not met")
}

// MetMark is Met with a sign before it, and open where an unknown figure decides.
func MetMark(met, open bool) string {
	switch {
	case met:
		return T("✓ met")
	case open:
		return T("? depends on an unknown figure")
	}
	return T("✗ not met")
}

// LimitLine is a condition, what the food has, and whether that meets it.
func LimitLine(s Style, l label.Limit) string {
	section := Section(l.Section)
	if l.Judge {
		return T("%s: for you to judge (%s)", Said(l.What), section)
	}
	text := Said(l.What) + ": " + Said(l.Bound)
	if l.Own != nil {
		own := s.compared(*l.Own, &l)
		if l.Incomplete {
			text = T("%s; here at least %s", text, own)
		} else {
			text = T("%s; here %s", text, own)
		}
	}
	verdict := Met(l.Met)
	switch {
	case l.Incomplete:
		verdict = T("depends on an unknown figure")
	case !l.Met && math.Abs(l.Miss) > 0:
		verdict = T("missed by %s", s.compared(l.Miss, &l))
	}
	if strings.Contains(section, " (") {
		return text + ": " + verdict + ", " + section
	}
	return text + ": " + verdict + " (" + section + ")"
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
	return T("%s, label %s.pdf", title, strings.ToUpper(string(region)))
}
