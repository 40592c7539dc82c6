package page

import (
	"strings"

	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// Regions are the choices of whose rules a panel follows.
var Regions = [...]label.Region{label.US, label.EU}

// RegionNames are the names of Regions.
func RegionNames() []string {
	var names []string
	for _, r := range Regions {
		names = append(names, say.RegionName(r))
	}
	return names
}

// RegionOf returns the region that a group chooses.
func RegionOf(g *widget.RadioGroup) label.Region {
	for _, r := range Regions {
		if say.RegionName(r) == g.Selected {
			return r
		}
	}
	return label.US
}

// Dots per inch of the first, coarse picture, and of the finest.
const (
	CoarseDPI = 50
	FinestDPI = 220
)

// FileTitle is the design's name as files of it begin.
func FileTitle(d design.Design) string {
	return say.Harmless(d.Name, say.FileName)
}

// Lacking names the texts of a design with letters that a drawing lacks, "" where
// there are none.
func Lacking(lacks []card.Lack) string {
	var all []string
	for i, l := range lacks {
		if i == mostLacking {
			all = append(all, say.LettersGoOn.String())
			break
		}
		all = append(all, say.Sentence(say.Place(l.Path)+": "+l.String()))
	}
	return strings.Join(all, " ")
}

// mostLacking is how many such texts are named.
const mostLacking = 4

// PlainError is the text of an error without the package it comes from.
func PlainError(err error) string {
	s := say.Flaw(err)
	for _, of := range [...]string{"card", "label"} {
		s = strings.TrimPrefix(s, of+": ")
	}
	return s
}
