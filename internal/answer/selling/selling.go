// Package selling brings a design, its figures and its panel together into what
// must stand on its tub.
package selling

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/work/design"
)

// PanelOptions are those of the panel on a tub.
var PanelOptions = label.Options{}

// Pack returns what a design says of its tub, to be sold at a place in some way:
// the rest is the maker's to add.
func Pack(d design.Design, place onpack.Place, sale onpack.Sale) onpack.Pack {
	p := onpack.Pack{Place: place, Sale: sale, Tub: Outside(d.Tubs), Storage: d.Label.Storage}
	p.Names, p.Lists = d.Label.Translated()
	if keeps, err := onpack.ParseDurability(d.Label.Durability); err == nil {
		p.Durability = keeps
	}
	return p
}

// Outside returns the outside of a design's tubs, whose walls are thin.
func Outside(t design.Tubs) onpack.Tub {
	size := tub.Size(t)
	if size.Round {
		return onpack.Tub{TopMM: size.LengthMM, BottomMM: size.LengthMM, HeightMM: size.HeightMM}
	}
	return onpack.Tub{LengthMM: size.LengthMM, BreadthMM: size.BreadthMM, HeightMM: size.HeightMM}
}

// Food returns what the label of a tub needs of the food in it; l is its panel
// under the rules of the place.
func Food(d design.Design, r *model.Result, l *label.Label, place onpack.Place) onpack.Food {
	f := onpack.Food{
		Name: l.ProposedName, IngredientsText: l.IngredientsText, Contains: l.Contains, Unstated: r.Allergens.Unstated,
		Allergens: r.Allergens.EU, Statements: l.Statements,
		HoldsML: FrozenML(d, r), HoldsG: r.Food(d).DensityGPerML * d.Tubs.VolumeML * d.Tubs.FillPercent / 100,
	}
	if place == onpack.US {
		f.Allergens = r.Allergens.US
	}
	for _, run := range l.Ingredients {
		f.Ingredients = append(f.Ingredients, onpack.Run{Text: run.Text, Strong: run.Emphasis})
	}
	return f
}

// FrozenML is the volume of the food in one tub once it is frozen, mL: what was
// filled in, by how much each phase swells or shrinks. A net quantity is measured
// frozen.
func FrozenML(d design.Design, r *model.Result) float64 {
	filled := d.Tubs.VolumeML * d.Tubs.FillPercent / 100
	foam := r.Blend.FoamVolumeFraction
	swells := 1.0
	if r.Dense.InTub() {
		swells += (1 - foam) * (r.Dense.SwellingRatio - 1)
	}
	if r.Foam.InTub() {
		swells += foam * (r.Foam.SwellingRatio - 1)
	}
	return filled * swells
}
