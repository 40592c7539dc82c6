package label

import (
	"slices"

	"ripplewright/internal/food/ingredient"
)

// makeup is a food as the standards of identity see it. Percentages are of
// the finished food, which weighs mass g.
type makeup struct {
	mass   float64
	fat    ingredient.Amount // %
	solids float64           // %, everything but water and alcohol

	milkFat, msnf ingredient.Amount // %, of the standards' dairy list
	whey          float64           // % of msnf that is whey
	anyMilkFat    ingredient.Amount // %, cultured products too
	milkProtein   ingredient.Amount // %
	otherFat      float64           // %, neither milk nor egg
	fatSources    float64           // %, of addedFat what comes from ingredients whose solids are half fat or more
	addedFat      float64           // %, otherFat but for that of flavours such as nuts and cocoa
	protein       ingredient.Amount // %
	yolk          ingredient.Amount // % egg yolk solids
	bulky         ingredient.Amount // % bulky flavours at their counted weight
	density       float64           // g/mL
	hasDairy      bool
	hasYolk       bool // any egg but its white
	hasDense      bool
	hasFoam       bool
	hasGoat       bool
	hasCow        bool
}

// Bulky flavours count at these multiples of their weight, 21 CFR
// 135.110(a)(2) (read in state copies). Dried fruit counts at its fresh
// weight: that at which it has 20 % solids (common practice, no source).
const (
	bulkyCocoa  = 2.5
	bulkyFruit  = 1.4
	freshSolids = 20 // %
)

// composition sums what the standards ask for.
func composition(f *Food) makeup {
	m := makeup{mass: f.MassG(), density: f.DensityGPerML}
	water := -f.WaterOffG
	var alcohol, whey float64
	for _, u := range f.Lines {
		in, k := u.Ingredient, u.Grams/m.mass // g per 100 g of the food, for a per-100 g figure
		if u.Grams == 0 {
			continue
		}
		foam := u.Phase != "" && u.Phase != DensePhase
		m.hasFoam, m.hasDense = m.hasFoam || foam, m.hasDense || !foam
		water += u.Grams * wettest(in) / 100
		alcohol += k * in.Cell(ingredient.Alcohol).Least()
		m.fat = m.fat.Plus(column(in, ingredient.Fat), k)
		m.protein = m.protein.Plus(column(in, ingredient.Protein), k)
		m.yolk = m.yolk.Plus(part(in, ingredient.EggYolkSolids), k)
		whey += m.addDairy(in, k)
		m.addFlavour(in, k)
		m.addOtherFat(in, k)
	}
	if m.msnf.Known > 0 {
		m.whey = 100 * whey / m.msnf.Known
	}
	m.solids = 100 - 100*water/m.mass - alcohol
	return m
}

// addDairy adds what is milk's of k g of an ingredient per 100 g, and returns how
// much of its solids is whey's.
func (m *makeup) addDairy(in *ingredient.Ingredient, k float64) (whey float64) {
	for _, a := range allergensOf(in, US) {
		if a.class == "milk" {
			m.hasDairy = true
			m.hasGoat = m.hasGoat || a.kind == "goat"
			m.hasCow = m.hasCow || a.kind == ""
		}
	}
	if in.Standing != ingredient.Dairy && in.Standing != ingredient.Cultured {
		return 0
	}
	m.anyMilkFat = m.anyMilkFat.Plus(column(in, ingredient.MilkFat), k)
	m.milkProtein = m.milkProtein.Plus(column(in, ingredient.Protein), k)
	if in.Standing == ingredient.Cultured {
		return 0
	}
	m.milkFat = m.milkFat.Plus(column(in, ingredient.MilkFat), k)
	m.msnf = m.msnf.Plus(column(in, ingredient.MSNF), k)
	if namesAny(in.Name+"; "+in.CommonName, []string{"whey"}) {
		return k * in.Cell(ingredient.MSNF).Least()
	}
	return 0
}

// addFlavour adds bulky flavours at their counted weight.
func (m *makeup) addFlavour(in *ingredient.Ingredient, k float64) {
	switch in.Standing {
	case ingredient.Cocoa:
		m.bulky = m.bulky.Plus(column(in, ingredient.CocoaSolidsFatFree), bulkyCocoa*k)
		m.bulky = m.bulky.Plus(column(in, ingredient.CocoaButter), bulkyCocoa*k)
	case ingredient.Fruit, ingredient.Nut:
		m.bulky = m.bulky.Plus(ingredient.Amount{Known: 100, Most: 100}, bulkyFruit*k)
	case ingredient.DriedFruit:
		fresh := (100 - in.Cell(ingredient.Water).Least()) * 100 / freshSolids
		m.bulky = m.bulky.Plus(ingredient.Amount{Known: fresh, Most: fresh}, bulkyFruit*k)
	}
}

// addOtherFat adds the fat of what is neither milk nor egg.
func (m *makeup) addOtherFat(in *ingredient.Ingredient, k float64) {
	yolk := part(in, ingredient.EggYolkSolids).Most > 0
	m.hasYolk = m.hasYolk || yolk
	if in.Standing == ingredient.Dairy || in.Standing == ingredient.Cultured || yolk || in.Group == "egg" {
		return
	}
	fat := in.Cell(ingredient.Fat).Least()
	m.otherFat += k * fat
	switch in.Standing {
	case ingredient.Cocoa, ingredient.Nut, ingredient.Fruit, ingredient.DriedFruit:
		return
	}
	m.addedFat += k * fat
	if 2*fat >= 100-in.Cell(ingredient.Water).Least() {
		m.fatSources += k * fat
	}
}

func column(in *ingredient.Ingredient, c ingredient.Column) ingredient.Amount {
	return ingredient.Amount{Known: in.Cell(c).Least(), Most: in.Most(c)}
}

// wettest returns the most water that 100 g of an ingredient can hold, so that
// a lower limit on solids is not met by ignorance.
func wettest(in *ingredient.Ingredient) float64 {
	rest := 100 - in.Cell(ingredient.Protein).Least() - in.Cell(ingredient.Fat).Least() - in.Cell(ingredient.Carbohydrate).Least()
	return in.Cell(ingredient.Water).Or(max(0, rest))
}

// part is column for a share that only ingredients with a known one have:
// where it is unknown it can be all solids.
func part(in *ingredient.Ingredient, c ingredient.Column) ingredient.Amount {
	a := ingredient.Amount{Known: in.Cell(c).Least(), Most: in.Cell(c).Least()}
	if !in.Cell(c).Known && carries(in, "egg") {
		a.Most = 100 - in.Cell(ingredient.Water).Least()
	}
	return a
}

// carries reports whether an ingredient holds an allergen of that class.
func carries(in *ingredient.Ingredient, class string) bool {
	return slices.ContainsFunc(allergensOf(in, US), func(a allergen) bool { return a.class == class })
}
