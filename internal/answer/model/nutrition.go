package model

import (
	"slices"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/work/design"
)

// Food returns what a label needs to know of the batch as made.
func (r *Result) Food(d design.Design) label.Food {
	f := r.food(d, func(design.Part) bool { return true })
	dense := r.food(d, func(p design.Part) bool { return p == design.DensePart })
	dense.WaterOffG = r.Dense.WaterOff * r.Dense.Portion.Factor
	dense.DensityGPerML = r.Dense.Body.Density()
	f.Dense = &dense
	return f
}

func (r *Result) food(d design.Design, takes func(design.Part) bool) label.Food {
	f := label.Food{
		Name:          d.Name,
		WaterOffG:     r.Dense.WaterOff*r.Dense.Portion.Factor + r.Foam.WaterOff*r.Foam.Portion.Factor,
		DensityGPerML: r.Blend.DensityGPerML,
		TubML:         d.Tubs.VolumeML * d.Tubs.FillPercent / 100,
		EnergyMethod:  d.Label.EnergyMethod,
		Portion:       d.Label.Portion,
	}
	for _, l := range r.Lines {
		if takes(l.Part) {
			name := "foam"
			if l.Part == design.DensePart {
				name = label.DensePhase
			}
			f.Lines = append(f.Lines, label.Used{Ingredient: l.Ingredient, Grams: l.Grams, Phase: name})
		}
	}
	return f
}

// nutrition sums the finished tub. Only water leaves while cooking.
func nutrition(d design.Design, r *Result) Nutrition {
	f := r.food(d, func(design.Part) bool { return true })
	total := ingredient.Tally{}.Plus(r.Dense.Tally, r.Dense.Portion.Factor).Plus(r.Foam.Tally, r.Foam.Portion.Factor)
	n := Nutrition{ServingML: label.ReferenceML, ServingG: label.ReferenceML * r.Blend.DensityGPerML, TotalMassG: r.Blend.MassG}
	if n.TotalMassG <= 0 {
		return n
	}
	n.ServingsTotal = n.TotalMassG / n.ServingG
	var energy ingredient.Amount
	energy, n.EnergyMethod = f.Energy()
	for c := ingredient.Column(0); c < ingredient.NumColumns; c++ {
		a := total.Columns[c]
		switch c {
		case ingredient.Water:
			a = ingredient.Amount{Known: a.Known - f.WaterOffG, Most: a.Most - f.WaterOffG}
		case ingredient.Energy:
			a = energy
		}
		n.Per100G[c] = scaled(a, 100/n.TotalMassG)
		n.PerServing[c] = scaled(a, n.ServingG/n.TotalMassG)
	}
	n.Incomplete = gaps(r.Lines)
	return n
}

// panelColumns are the columns whose gaps a label shows.
var panelColumns = [...]ingredient.Column{
	ingredient.Protein, ingredient.Fat, ingredient.SaturatedFat, ingredient.TransFat, ingredient.CholesterolMG,
	ingredient.SodiumMG, ingredient.Carbohydrate, ingredient.Fibre, ingredient.TotalSugars, ingredient.AddedSugars,
	ingredient.VitaminDUG, ingredient.CalciumMG, ingredient.IronMG, ingredient.PotassiumMG,
}

func gaps(lines []Line) []Gap {
	var out []Gap
	for _, c := range panelColumns {
		var who []string
		for _, l := range lines {
			in := l.Ingredient
			if l.Grams > 0 && !in.Cell(c).Known && in.Most(c) > 0 && !slices.Contains(who, in.ID) {
				who = append(who, in.ID)
			}
		}
		if len(who) > 0 {
			out = append(out, Gap{c, who})
		}
	}
	return out
}

// allergens lists those of every line that weighs something.
func allergens(lines []Line) Allergens {
	var a Allergens
	for _, l := range lines {
		if l.Written > 0 {
			a.US = append(a.US, label.Allergens(l.Ingredient, label.US)...)
			a.EU = append(a.EU, label.Allergens(l.Ingredient, label.EU)...)
			if label.UnstatedAllergens(l.Ingredient) {
				a.Unstated = append(a.Unstated, l.Ingredient.ID)
			}
		}
	}
	return Allergens{once(a.US), once(a.EU), once(a.Unstated)}
}

func once(s []string) []string {
	slices.Sort(s)
	return slices.Compact(s)
}

// countEggs counts the eggs that the lines use up, by mass, in eggs of the
// design's size.
func countEggs(d design.Design, lines []Line) Eggs {
	size, err := egg.Find(d.Eggs.System, d.Eggs.Size)
	if err != nil {
		return Eggs{}
	}
	e := Eggs{Known: true}
	for _, l := range lines {
		switch l.Ingredient.ID {
		case "egg_yolk":
			e.Yolks += l.Grams / size.Yolk
		case "egg_white":
			e.Whites += l.Grams / size.White
		case "egg_whole":
			e.Yolks += l.Grams / size.Edible
			e.Whites += l.Grams / size.Edible
		}
	}
	return e
}
