package card

import (
	"strings"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/say"
)

// Sections are parts of a card, of which a maker may choose some.
type Sections uint16

// The sections. No section chosen means all of them.
const (
	Weights Sections = 1 << iota
	Steps
	Notes
	Day
	Figures // with what the verdict rests on
	Plots
	Panel
	Cautions
	Cost

	allSections = Cost<<1 - 1
)

// sections are all of them, in the order in which they stand.
var sections = [...]struct {
	one  Sections
	name string // as it is typed
}{{Weights, "weights"}, {Steps, "steps"}, {Notes, "notes"}, {Day, "day"}, {Figures, "figures"}, {Plots, "plots"}, {Panel, "panel"}, {Cautions, "cautions"}, {Cost, "cost"}}

// SectionNames are the names that ParseSections reads, in their order.
func SectionNames() []string {
	out := make([]string, len(sections))
	for i, s := range sections {
		out[i] = s.name
	}
	return out
}

// ParseSections reads names parted by commas. The error names those there are.
func ParseSections(s string) (Sections, error) {
	var out Sections
	for _, name := range strings.Split(s, ",") {
		name = strings.ToLower(strings.TrimSpace(name))
		known := false
		for _, x := range sections {
			if x.name == name {
				out, known = out|x.one, true
			}
		}
		if !known {
			return 0, flaw.New("it is not some of %s", strings.Join(SectionNames(), ", "))
		}
	}
	return out, nil
}

// has reports whether a section is chosen.
func (s Sections) has(one Sections) bool { return s&one != 0 }

// names are those of the sections in s.
func (s Sections) names() []string {
	var out []string
	for _, x := range sections {
		if s.has(x.one) {
			out = append(out, x.name)
		}
	}
	return out
}

// spare are the sections that give way, the first first, where a card may have only
// so many pages. The weights and the steps never do.
var spare = [...]Sections{Plots, Day, Cost, Figures, Notes, Panel, Cautions}

// ErrPages says that what cannot be left out takes more pages than a card may have.
var ErrPages = flaw.New("the weights and the steps take more pages than asked for")

// present returns those of the sections chosen that a content has words for.
func (c content) present(s Sections) Sections {
	for _, x := range []struct {
		one   Sections
		empty bool
	}{{Notes, len(c.notes) == 0}, {Day, len(c.day) == 0}, {Cost, c.cost == ""}, {Cautions, len(c.cautions) == 0}} {
		if x.empty {
			s &^= x.one
		}
	}
	return s
}

// only returns what of a content is in the sections chosen.
func (c content) only(s Sections) content {
	if !s.has(Weights) {
		c.parts, c.checks = nil, nil
	}
	if !s.has(Steps) {
		c.steps, c.blanks = nil, nil
	}
	if !s.has(Notes) {
		c.notes = nil
	}
	if !s.has(Day) {
		c.day = nil
	}
	if !s.has(Figures) {
		c.figures, c.rests, c.warnings = nil, nil, nil
	}
	if !s.has(Panel) {
		c.label, c.labelNote = nil, ""
	}
	if !s.has(Cautions) {
		c.cautions = nil
	}
	if !s.has(Cost) {
		c.cost = ""
	}
	return c
}

// leftOut words what a card had no room for, "" for nothing.
func leftOut(s Sections) string {
	if s == 0 {
		return ""
	}
	return say.NotOnCard(s.names())
}
