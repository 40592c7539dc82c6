package say

import "ripplewright/internal/form/customary"

// A PackMeasure is what a pack's content is counted in; one of Grams and ML is 0.
type PackMeasure struct {
	Name      string
	Grams, ML float64 // of one
}

// What every pack may be counted in.
const (
	Gram       = "g"
	Millilitre = "mL"
)

// PackMeasures are those that a maker has, what packs everywhere say first.
func PackMeasures(s Style) []PackMeasure {
	all := []PackMeasure{{Gram, 1, 0}, {Millilitre, 0, 1}}
	if s.inches() {
		all = append(all, PackMeasure{"oz", customary.OunceG, 0}, PackMeasure{"lb", customary.PoundG, 0},
			PackMeasure{"fl oz", 0, customary.FluidOunceML}, PackMeasure{T("pints"), 0, customary.PintML}, PackMeasure{"gal", 0, customary.GallonML})
	}
	return all
}

// PackMeasureOf is the measure of a name; neither of grams nor of mL where it is none.
func PackMeasureOf(s Style, name string) PackMeasure {
	for _, m := range PackMeasures(s) {
		if m.Name == name {
			return m
		}
	}
	return PackMeasure{Name: name}
}
