package label

import (
	"fmt"
	"math"

	"ripplewright/internal/ingredient"
)

// Claim is one claim with its published conditions.
type Claim struct {
	Claim      string  `json:"claim"`
	Region     Region  `json:"region"`
	Met        bool    `json:"met"`
	Incomplete bool    `json:"incomplete"` // an unknown figure decides
	Conditions []Limit `json:"conditions"`
	// Disclosure is what must stand beside the claim, "" if nothing.
	Disclosure string `json:"disclosure,omitempty"`
}

// claimOf settles a claim from its conditions.
func claimOf(name string, region Region, disclosure string, conditions ...Limit) Claim {
	c := Claim{Claim: name, Region: region, Met: true, Conditions: conditions}
	for _, l := range conditions {
		if !l.Met {
			c.Met = false
			c.Incomplete = c.Incomplete || l.Miss == 0 && l.Own != nil
		}
	}
	if c.Met {
		c.Disclosure = disclosure
	}
	return c
}

// usClaims tests the claims of 21 CFR 101.13, 101.54 and 101.60–62 on the
// reference amount.
func usClaims(f *Food, all *amounts) []Claim {
	mass := f.MassG()
	a := all.per(ReferenceML*f.DensityGPerML, mass)
	s := divide(f)
	beside := disclosure(a, all.per(s.grams, mass))
	if s.dual {
		beside = joinSentences(`Say "per serving" with the claim (21 CFR 101.9(b)(12)(ii)).`, beside)
	}
	of := func(i figure) ingredient.Amount { return a.of[i] }
	claims := []Claim{
		claimOf("fat free", US, beside, below("fat", "21 CFR 101.62(b)", of(fat), 0.5, "g")),
		claimOf("low fat", US, beside, atMost("fat", "21 CFR 101.62(b)", of(fat), 3, "g")),
		claimOf("low saturated fat", US, joinSentences("Declare cholesterol from 2 mg and fat over 3 g beside it.", beside),
			atMost("saturated fat", "21 CFR 101.62(c)", of(saturated), 1, "g"),
			atMost("energy from saturated fat", "21 CFR 101.62(c)", share(times(of(saturated), usFat), of(energyUS)), 15, "%")),
		claimOf("low cholesterol", US, joinSentences("Declare fat over 13 g beside it.", beside),
			atMost("cholesterol", "21 CFR 101.62(d)", of(cholesterolMG), 20, "mg"),
			atMost("saturated fat", "21 CFR 101.62(d)", of(saturated), 2, "g")),
		claimOf("very low sodium", US, beside, atMost("sodium", "21 CFR 101.61(b)", of(sodiumMG), 35, "mg")),
		claimOf("low sodium", US, beside, atMost("sodium", "21 CFR 101.61(b)", of(sodiumMG), 140, "mg")),
		claimOf("low calorie", US, beside, atMost("calories", "21 CFR 101.60(b)", of(energyUS), 40, "kcal")),
		claimOf("sugar free", US, joinSentences("A calorie statement must stand beside it.", beside),
			below("total sugars", "21 CFR 101.60(c), from memory", of(sugars), 0.5, "g")),
		claimOf("no added sugar", US, joinSentences("A calorie statement must stand beside it.", beside),
			atMost("added sugars", "21 CFR 101.60(c), from memory", of(addedSugars), 0, "g")),
	}
	for _, n := range [...]struct{ key, name string }{
		{"dietary_fiber", "fiber"}, {"vitamin_d", "vitamin D"}, {"calcium", "calcium"}, {"iron", "iron"}, {"potassium", "potassium"},
	} {
		l := usLineFor(n.key)
		dv := times(a.of[l.figure], 100/l.dv.InexactFloat64())
		claims = append(claims,
			claimOf("good source of "+n.name, US, beside,
				atLeast(n.name+", % Daily Value", "21 CFR 101.54(c)", dv, 10, "%"),
				below(n.name+", % Daily Value", "21 CFR 101.54(c)", ingredient.Amount{Known: dv.Known, Most: dv.Known}, 20, "%")),
			claimOf("high in "+n.name, US, beside, atLeast(n.name+", % Daily Value", "21 CFR 101.54(b)", dv, 20, "%")))
	}
	highProtein := judged("10 g protein corrected for its quality (PDCAAS), which no record here gives", "21 CFR 101.54(b), 101.9(c)(7)")
	reduced := judged("a reference food, named, that this program does not know", "21 CFR 101.56, 101.60–62")
	return append(claims,
		Claim{Claim: "high protein", Region: US, Conditions: []Limit{highProtein}},
		Claim{Claim: "reduced …, light", Region: US, Conditions: []Limit{reduced}})
}

// disclosure returns "See nutrition information for … content." where a
// claim needs it: over 13 g fat, 4 g saturated fat, 60 mg cholesterol or
// 480 mg sodium per reference amount or serving, 21 CFR 101.13(h) (read in
// secondary pages). An unknown figure counts at its most.
func disclosure(amounts ...*amounts) string {
	var of []string
	for _, t := range [...]struct {
		f     figure
		bound float64
		word  string
	}{{fat, 13, "fat"}, {saturated, 4, "saturated fat"}, {cholesterolMG, 60, "cholesterol"}, {sodiumMG, 480, "sodium"}} {
		for _, a := range amounts {
			if a.of[t.f].Most > t.bound {
				of = appendOnce(of, t.word)
			}
		}
	}
	if len(of) == 0 {
		return ""
	}
	return fmt.Sprintf("“See nutrition information for %s content.”", wordList(of, "and"))
}

// euClaims tests the claims of Regulation (EC) No 1924/2006, Annex, on 100 g.
func euClaims(a *amounts) []Claim {
	const section = "Regulation (EC) No 1924/2006, Annex"
	const unread = section + " (from memory)"
	of := func(i figure) ingredient.Amount { return a.of[i] }
	satTrans := of(saturated).Plus(of(trans), 1)
	proteinShare := share(times(of(protein625), euKcal.protein), of(energyEU))
	return []Claim{
		claimOf("low energy", EU, "", atMost("energy", section, of(energyEU), 40, "kcal")),
		claimOf("fat-free", EU, "", atMost("fat", section, of(fat), 0.5, "g")),
		claimOf("low fat", EU, "", atMost("fat", section, of(fat), 3, "g")),
		claimOf("low saturated fat", EU, "",
			atMost("saturated and trans fat", section, satTrans, 1.5, "g"),
			atMost("energy from saturated and trans fat", section, share(times(satTrans, euKcal.fat), of(energyEU)), 10, "%")),
		claimOf("sugars-free", EU, "", atMost("sugars", unread, of(sugars), 0.5, "g")),
		claimOf("low sugars", EU, "", atMost("sugars", section, of(sugars), 5, "g")),
		claimOf("source of fibre", EU, "", atLeast("fibre", unread, of(fibre), 3, "g")),
		claimOf("high fibre", EU, "", atLeast("fibre", unread, of(fibre), 6, "g")),
		claimOf("source of protein", EU, "", atLeast("energy from protein", unread, proteinShare, 12, "%")),
		claimOf("high protein", EU, "", atLeast("energy from protein", unread, proteinShare, 20, "%")),
		{Claim: "reduced …, energy-reduced, light", Region: EU, Conditions: []Limit{
			judged("a comparison with named foods that this program does not know", section)}},
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

func joinSentences(a, b string) string {
	if b == "" {
		return a
	}
	return a + " " + b
}
