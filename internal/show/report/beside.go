package report

import (
	"ripplewright/internal/answer/balance"
	"ripplewright/internal/food/label"
)

// besideObject is what a proposal brings beside what it is for.
func besideObject(b *balance.Beside) object {
	var o object
	o.put("cautions_gained", list(b.CautionsGained))
	o.put("cautions_lost", list(b.CautionsLost))
	o.put("contrast", pairObject(b.Contrast))
	o.put("cost_per_tub", pairObject(b.CostPerTub))
	o.put("minutes", pairObject(b.Minutes))
	o.put("label", object{
		{"names_gained", nameObjects(b.NamesGained)}, {"names_lost", nameObjects(b.NamesLost)},
		{"allergens_gained", list(b.AllergensGained)}, {"allergens_lost", list(b.AllergensLost)},
		{"declared_per_serving", declaredObject(b.Declared)}, {"declared_per_100_g", declaredObject(b.DeclaredEU)},
	})
	return o
}

func declaredObject(lines []balance.Declared) object {
	o := object{}
	for _, d := range lines {
		o.put(d.Key, object{{"before", d.Before.AmountText()}, {"after", d.After.AmountText()}})
	}
	return o
}

func pairObject(p balance.Pair) object {
	return object{{"before", Number(p.Before)}, {"after", Number(p.After)}}
}

func nameObjects(of []label.Name) []object {
	out := []object{}
	for _, n := range of {
		out = append(out, object{{"name", n.Name}, {"region", string(n.Region)}, {"of", n.Of}})
	}
	return out
}
