package model

import (
	"slices"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/work/design"
)

// waterOffInTubs returns the g of water driven off what goes into the tubs.
func (p *Phase) waterOffInTubs() float64 {
	return p.WaterOffG * p.Portion.Factor * p.Portion.UsedFraction
}

// Food returns what a label needs to know of what goes into the tubs.
func (r *Result) Food(d design.Design) label.Food {
	f := r.food(d, func(design.Part) bool { return true })
	dense := r.food(d, func(p design.Part) bool { return p == design.DensePart })
	dense.WaterOffG = r.Dense.waterOffInTubs()
	dense.DensityGPerML = r.Dense.Body.GPerML()
	f.Dense = &dense
	return f
}

func (r *Result) food(d design.Design, takes func(design.Part) bool) label.Food {
	f := label.Food{
		Name:          d.Name,
		WaterOffG:     r.Dense.waterOffInTubs() + r.Foam.waterOffInTubs(),
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
			f.Lines = append(f.Lines, label.Used{Ingredient: l.Finished, Grams: l.InTubsG * l.KeepsFraction, Phase: name})
		}
	}
	return f
}

// nutrition sums the finished tub. Water leaves while cooking, and the syrup's
// alcohol, of which the lines as finished know nothing any more.
func nutrition(d design.Design, r *Result) Nutrition {
	f := r.food(d, func(design.Part) bool { return true })
	total := ingredient.Tally{}
	for _, p := range [...]*Phase{&r.Dense, &r.Foam} {
		total = total.Plus(p.Tally, p.Portion.Factor*p.Portion.UsedFraction)
	}
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
	n.Incomplete = r.gaps()
	return n
}

// gaps names what a panel cannot tell. The energy is counted from the others.
func (r *Result) gaps() []Gap {
	var out []Gap
	for _, n := range label.Nutrients {
		c := n.Column
		if c == ingredient.Energy {
			continue
		}
		var who []string
		for _, l := range r.Lines {
			in := l.Ingredient
			if r.Counts(&l) && !in.Cell(c).Known && in.Most(c) > 0 && !slices.Contains(who, in.ID) {
				who = append(who, in.ID)
			}
		}
		if len(who) > 0 {
			out = append(out, Gap{c, who})
		}
	}
	return out
}

// allergens lists those of every line that weighs something and whose phase goes
// into the tubs; a tub that nothing fills yet has those of all.
func (r *Result) allergens() Allergens {
	var a Allergens
	for _, l := range r.Lines {
		if l.WrittenG > 0 && !r.Absent(r.phaseOf(l.Part)) {
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
