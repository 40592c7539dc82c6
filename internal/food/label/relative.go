package label

import (
	"math"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
)

// noReference is the condition of a comparison that nothing is given for.
func noReference(section string) Limit {
	return judged("a reference food to compare with, which was not given", section)
}

// less returns by how many percent own is below reference: Known is the least
// that the unknown parts allow, Most the most.
func less(own, reference ingredient.Amount) ingredient.Amount {
	cut := func(own, reference float64) float64 {
		if !(reference > 0) || math.IsInf(own, 1) {
			return 0
		}
		return 100 * (1 - own/reference)
	}
	return ingredient.Amount{Known: cut(own.Most, reference.Known), Most: cut(own.Known, reference.Most)}
}

// usRelative tests "reduced" and "light" against the reference food, per
// reference amount.
func usRelative(u *usFood, reference *Food) []Claim {
	if reference == nil {
		return []Claim{claimOf("reduced …", US, nil, noReference("21 CFR 101.60–62")), claimOf("light", US, nil, noReference("21 CFR 101.56"))}
	}
	r := totals(reference).per(ReferenceML*reference.DensityGPerML, reference.MassG())
	beside := joinSentences(flaw.Say("Name %s, the percentage and both amounts beside it (21 CFR 101.13(j), from memory).", nameOf(reference)), u.beside)
	var claims []Claim
	for _, n := range [...]struct {
		name    string
		what    flaw.Word
		section string
		f       figure
		low     float64
		unit    string
	}{
		{"reduced calories", "calories", "21 CFR 101.60(b)", energyUS, 40, "kcal"}, {"reduced sugar", "total sugars", "21 CFR 101.60(c)", sugars, 0, "g"},
		{"reduced sodium", "sodium", "21 CFR 101.61(b)", sodiumMG, 140, "mg"}, {"reduced fat", "fat", "21 CFR 101.62(b)", fat, 3, "g"},
		{"reduced saturated fat", "saturated fat", "21 CFR 101.62(c)", saturated, 1, "g"}, {"reduced cholesterol", "cholesterol", "21 CFR 101.62(d)", cholesterolMG, 20, "mg"},
	} {
		conditions := []Limit{
			atLeastOf(flaw.Say("%s less than the reference food's", n.what), n.section, less(u.of(n.f), r.of[n.f]), 25, "%"),
			{What: flaw.Say("the reference food's own %s", n.what), Section: n.section, Met: dec(r.of[n.f].Known).GreaterThan(dec(n.low)),
				Bound: flaw.Say("over %.4g %s, so that it is not low itself", n.low, n.unit)},
		}
		if n.f == cholesterolMG {
			conditions = append(conditions, atMost("saturated fat", n.section+", from memory", u.of(saturated), 2, "g"))
		}
		claims = append(claims, claimOf(n.name, US, beside, conditions...))
	}
	const section = "21 CFR 101.56(b)"
	lessFat := atLeastOf(flaw.Say("%s less than the reference food's", flaw.Word("fat")), section, less(u.of(fat), r.of[fat]), 50, "%")
	lessEnergy := atLeastOf(flaw.Say("%s less than the reference food's", flaw.Word("calories")), section, less(u.of(energyUS), r.of[energyUS]), 100.0/3, "%")
	condition := lessEnergy // or half the fat, unless half the calories are fat
	if share(times(u.of(fat), usFat), u.of(energyUS)).Most >= 50 || lessFat.Met {
		condition = lessFat
	}
	return append(claims, claimOf("light", US, beside, condition))
}

// nameOf is the name of a reference food, or that it is one.
func nameOf(f *Food) any {
	if f.Name == "" {
		return flaw.Word("the reference food")
	}
	return "“" + f.Name + "”"
}

// euRelative tests "reduced" and "light" against the reference food, per
// 100 g.
func euRelative(a *amounts, reference *Food) []Claim {
	if reference == nil {
		return []Claim{claimOf("energy-reduced, reduced …, light", EU, nil, noReference(euAnnex))}
	}
	r := totals(reference).per(100, reference.MassG())
	beside := flaw.Say("Name %s and the difference beside it; “light” or “lite” may stand for it, with what makes it so (Annex, Article 9, from memory).", nameOf(reference))
	cutOf := func(what flaw.Word, own, of ingredient.Amount, bound float64) Limit {
		return atLeastOf(flaw.Say("%s less than the reference food's", what), euAnnexUnread, less(own, of), bound, "%")
	}
	cut := func(what flaw.Word, i figure, bound float64) Limit { return cutOf(what, a.of[i], r.of[i], bound) }
	noMore := func(what flaw.Word, i figure, unit string) Limit {
		return upper(flaw.Say("%s, no more than the reference food's", what), euAnnexUnread, a.of[i], r.of[i].Known, unit, "at most %.4g", false)
	}
	energy := cut("energy", energyEU, 30)
	energy.Section = euAnnex
	return []Claim{
		claimOf("energy-reduced", EU, beside, energy),
		claimOf("reduced fat", EU, beside, cut("fat", fat, 30)),
		claimOf("reduced saturated fat", EU, beside, cutOf("saturated and trans fat", a.of[saturated].Plus(a.of[trans], 1), r.of[saturated].Plus(r.of[trans], 1), 30), noMore("trans fat", trans, "g")),
		claimOf("reduced sugars", EU, beside, cut("sugars", sugars, 30), noMore("energy", energyEU, "kcal")),
		claimOf("reduced sodium or salt", EU, beside, cut("sodium", sodiumMG, 25)),
	}
}

// share returns 100·part/whole, in %: the least over the most and the most
// over the least.
func share(part, whole ingredient.Amount) ingredient.Amount {
	out := ingredient.Amount{Most: math.Inf(1)}
	if whole.Most > 0 {
		out.Known = 100 * part.Known / whole.Most
	}
	if whole.Known > 0 {
		out.Most = 100 * part.Most / whole.Known
	}
	return out
}
