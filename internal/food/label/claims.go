package label

import (
	"math"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
)

// Claim is one claim with its published conditions.
type Claim struct {
	Claim      string  `json:"claim"`
	Region     Region  `json:"region"`
	Met        bool    `json:"met"`        // every condition that can be computed is met
	Incomplete bool    `json:"incomplete"` // not met, but an unknown figure decides
	Conditions []Limit `json:"conditions"`
	// Disclosure is what must stand beside the claim, "" if nothing.
	Disclosure *flaw.Remark `json:"disclosure,omitempty"`
}

// claimOf settles a claim from its conditions. One that has only conditions
// for the maker to judge is not met.
func claimOf(name string, region Region, disclosure *flaw.Remark, conditions ...Limit) Claim {
	c := Claim{Claim: name, Region: region, Conditions: conditions}
	computed, missed, open := 0, 0, 0
	for _, l := range conditions {
		switch {
		case l.Judge:
			continue
		case l.Incomplete:
			open++
		case !l.Met:
			missed++
		}
		computed++
	}
	c.Met = computed > 0 && missed == 0 && open == 0
	c.Incomplete = missed == 0 && open > 0
	if c.Met {
		c.Disclosure = disclosure
	}
	return c
}

// usFood is what US claims are tested on.
type usFood struct {
	racc    *amounts     // per reference amount
	serving *amounts     // per labelled serving
	same    bool         // they are one amount
	beside  *flaw.Remark // what stands beside every claim
}

func (u *usFood) of(i figure) ingredient.Amount { return u.racc.of[i] }

// free is below on the reference amount and on the labelled serving, as the
// "free" claims ask.
func (u *usFood) free(what flaw.Message, section string, i figure, bound float64, unit string) []Limit {
	limits := []Limit{below(flaw.Say(what), section, u.of(i), bound, unit)}
	if !u.same {
		limits = append(limits, below(flaw.Say("%s of the labelled serving", flaw.Word(what)), section, u.serving.of[i], bound, unit))
	}
	return limits
}

// over reports whether a figure may exceed bound in either amount.
func (u *usFood) over(i figure, bound float64) bool {
	for _, a := range [...]*amounts{u.racc, u.serving} {
		if m := a.of[i].Most; math.IsInf(m, 1) || dec(m).GreaterThan(dec(bound)) {
			return true
		}
	}
	return false
}

// usClaims tests the claims of 21 CFR 101.54, 101.56, 101.60–62 and 101.65 on
// the reference amount. Sections without a note were read in secondary pages.
func usClaims(f *Food, all *amounts, options Options) []Claim {
	mass := f.MassG()
	s := divide(f)
	u := &usFood{racc: all.per(ReferenceML*f.DensityGPerML, mass), serving: all.per(s.grams, mass)}
	u.same = dec(s.grams).Equal(dec(ReferenceML * f.DensityGPerML))
	u.beside = u.disclosure()
	if s.dual {
		u.beside = joinSentences(flaw.Say(`Say "per serving" with the claim (21 CFR 101.9(b)(12)(ii)).`), u.beside)
	}
	claims := append(u.sugarAndEnergyClaims(), u.fatClaims()...)
	claims = append(claims, u.nutrientClaims()...)
	claims = append(claims, claimOf("healthy", US, nil, judged("the food-group equivalents and limits of this section, which are not computed", "21 CFR 101.65(d)")))
	return append(claims, usRelative(u, options.Reference)...)
}

func (u *usFood) sugarAndEnergyClaims() []Claim {
	const energy, sodium, sugar = "21 CFR 101.60(b)", "21 CFR 101.61(b)", "21 CFR 101.60(c), from memory"
	statement := joinSentences(flaw.Say("Say beside it that the food is not low or reduced in calories, unless it is."), u.beside)
	return []Claim{
		claimOf("calorie free", US, u.beside, u.free("calories", energy+", from memory", energyUS, 5, "kcal")...),
		claimOf("low calorie", US, u.beside, atMost("calories", energy, u.of(energyUS), 40, "kcal")),
		claimOf("sugar free", US, statement, append(u.free("total sugars", sugar, sugars, 0.5, "g"),
			atMost("sugar added as an ingredient", sugar, u.of(addedSugars), 0, "g"))...),
		claimOf("no added sugar", US, statement, atMost("added sugars", sugar, u.of(addedSugars), 0, "g"),
			judged("no jam, jelly or concentrated juice in sugar's place; a food like it has added sugar", sugar)),
		claimOf("sodium free", US, u.beside, u.free("sodium", sodium+", from memory", sodiumMG, 5, "mg")...),
		claimOf("very low sodium", US, u.beside, atMost("sodium", sodium, u.of(sodiumMG), 35, "mg")),
		claimOf("low sodium", US, u.beside, atMost("sodium", sodium, u.of(sodiumMG), 140, "mg")),
	}
}

func (u *usFood) fatClaims() []Claim {
	const total, acids, chol = "21 CFR 101.62(b)", "21 CFR 101.62(c)", "21 CFR 101.62(d)"
	noFat := judged("no ingredient that is a fat, unless the list of ingredients explains it", total+", from memory")
	besideAcids := u.beside
	if u.over(cholesterolMG, 1.999999999) {
		besideAcids = joinSentences(flaw.Say("Declare the cholesterol beside it."), besideAcids)
	}
	if u.over(fat, 3) {
		besideAcids = joinSentences(flaw.Say("Declare the total fat beside it."), besideAcids)
	}
	besideChol := u.beside
	if u.over(fat, 13) {
		besideChol = joinSentences(flaw.Say("Declare the total fat beside it."), besideChol)
	}
	return []Claim{
		claimOf("fat free", US, u.beside, append(u.free("fat", total, fat, 0.5, "g"), noFat)...),
		claimOf("low fat", US, u.beside, atMost("fat", total, u.of(fat), 3, "g")),
		claimOf("saturated fat free", US, besideAcids, append(u.free("saturated fat", acids+", from memory", saturated, 0.5, "g"),
			u.free("trans fat", acids+", from memory", trans, 0.5, "g")...)...),
		claimOf("low saturated fat", US, besideAcids,
			atMost("saturated fat", acids, u.of(saturated), 1, "g"),
			atMost("energy from saturated fat", acids, share(times(u.of(saturated), usFat), u.of(energyUS)), 15, "%")),
		claimOf("cholesterol free", US, besideChol, append(u.free("cholesterol", chol+", from memory", cholesterolMG, 2, "mg"),
			atMost("saturated fat", chol+", from memory", u.of(saturated), 2, "g"))...),
		claimOf("low cholesterol", US, besideChol,
			atMost("cholesterol", chol, u.of(cholesterolMG), 20, "mg"),
			atMost("saturated fat", chol, u.of(saturated), 2, "g")),
	}
}

// nutrientClaims are "good source" and "high" by 21 CFR 101.54. Of protein the
// section counts the amount corrected for its quality (PDCAAS, at most 1.00),
// which no record here gives: less protein than the claim asks for misses it,
// enough leaves it open.
func (u *usFood) nutrientClaims() []Claim {
	var claims []Claim
	for _, n := range [...]struct {
		key  string
		name flaw.Word
	}{
		{"dietary_fiber", "fiber"}, {"vitamin_d", "vitamin D"}, {"calcium", "calcium"}, {"iron", "iron"}, {"potassium", "potassium"},
	} {
		l := usLineFor(n.key)
		dv := times(u.of(l.figure), 100/l.dv.InexactFloat64())
		daily, beside := flaw.Say("%s, %% Daily Value", n.name), u.beside
		if n.key == "dietary_fiber" && u.over(fat, 3) { // 101.54(d), from memory
			beside = joinSentences(flaw.Say("Declare the total fat per serving beside it."), beside)
		}
		claims = append(claims,
			claimOf("good source of "+string(n.name), US, beside,
				atLeastOf(daily, "21 CFR 101.54(c)", dv, 10, "%"),
				below(daily, "21 CFR 101.54(c)", exactly(dv.Known), 20, "%")),
			claimOf("high in "+string(n.name), US, beside, atLeastOf(daily, "21 CFR 101.54(b)", dv, 20, "%")))
	}
	const section = "21 CFR 101.54, 101.9(c)(7)(i)"
	for _, n := range [...]struct {
		name string
		g    float64
	}{{"good source of protein", 5}, {"high protein", 10}} {
		most := u.of(protein).Most
		quality := atLeast("protein corrected by PDCAAS, which no record gives; uncorrected", section, ingredient.Amount{Known: u.of(protein).Known, Most: most}, n.g, "g")
		quality.Incomplete, quality.Met = quality.Met || quality.Incomplete, false
		claims = append(claims, claimOf(n.name, US, nil, quality))
	}
	return claims
}

// disclosure returns "See nutrition information for … content." where a
// claim needs it: over 13 g fat, 4 g saturated fat, 60 mg cholesterol or
// 480 mg sodium per reference amount or serving, 21 CFR 101.13(h) (read in
// secondary pages). An unknown figure counts at its most.
func (u *usFood) disclosure() *flaw.Remark {
	var of []string
	for _, t := range [...]struct {
		f     figure
		bound float64
		word  string
	}{{fat, 13, "fat"}, {saturated, 4, "saturated fat"}, {cholesterolMG, 60, "cholesterol"}, {sodiumMG, 480, "sodium"}} {
		if u.over(t.f, t.bound) {
			of = append(of, t.word)
		}
	}
	if len(of) == 0 {
		return nil
	}
	return flaw.Say("%s", "“See nutrition information for "+wordList(of, "and")+" content.”")
}

// Sources of the EU conditions.
const (
	euAnnex       = string(flaw.Word("Regulation (EC) No 1924/2006, Annex"))
	euAnnexUnread = euAnnex + " (from memory)"
)

// euClaims tests the claims of Regulation (EC) No 1924/2006, Annex, on 100 g.
func euClaims(a *amounts, options Options) []Claim {
	of := func(i figure) ingredient.Amount { return a.of[i] }
	satTrans := of(saturated).Plus(of(trans), 1)
	proteinShare := share(times(of(protein625), euKcal.protein), of(energyEU))
	var natural *flaw.Remark
	if of(sugars).Most > 0 {
		natural = flaw.Say("Say beside it: “contains naturally occurring sugars” (Annex, from memory).")
	}
	claims := []Claim{
		claimOf("low energy", EU, nil, atMost("energy", euAnnex, of(energyEU), 40, "kcal")),
		claimOf("fat-free", EU, nil, atMost("fat", euAnnex, of(fat), 0.5, "g")),
		claimOf("low fat", EU, nil, atMost("fat", euAnnex, of(fat), 3, "g")),
		claimOf("saturated fat-free", EU, nil, atMost("saturated and trans fat", euAnnexUnread, satTrans, 0.1, "g")),
		claimOf("low saturated fat", EU, nil,
			atMost("saturated and trans fat", euAnnex, satTrans, 1.5, "g"),
			atMost("energy from saturated and trans fat", euAnnex, share(times(satTrans, euKcal.fat), of(energyEU)), 10, "%")),
		claimOf("sugars-free", EU, nil, atMost("sugars", euAnnexUnread, of(sugars), 0.5, "g")),
		claimOf("low sugars", EU, nil, atMost("sugars", euAnnex, of(sugars), 5, "g")),
		claimOf("with no added sugars", EU, natural, atMost("added sugars", euAnnexUnread, of(addedSugars), 0, "g"),
			judged("no other food used for its sweetening", euAnnexUnread)),
		claimOf("sodium-free or salt-free", EU, nil, atMost("sodium", euAnnexUnread, of(sodiumMG), 5, "mg")),
		claimOf("very low sodium or salt", EU, nil, atMost("sodium", euAnnexUnread, of(sodiumMG), 40, "mg")),
		claimOf("low sodium or salt", EU, nil, atMost("sodium", euAnnexUnread, of(sodiumMG), 120, "mg")),
		claimOf("source of fibre", EU, nil, atLeast("fibre", euAnnexUnread, of(fibre), 3, "g")),
		claimOf("high fibre", EU, nil, atLeast("fibre", euAnnexUnread, of(fibre), 6, "g")),
		claimOf("source of protein", EU, nil, atLeast("energy from protein", euAnnexUnread, proteinShare, 12, "%")),
		claimOf("high protein", EU, nil, atLeast("energy from protein", euAnnexUnread, proteinShare, 20, "%")),
	}
	// Nutrient reference values: Regulation (EU) No 1169/2011, Annex XIII, Part
	// A; a significant amount is 15 % of one in 100 g (both from memory).
	for _, n := range [...]struct {
		name flaw.Message
		unit string
		f    figure
		nrv  float64
	}{{"vitamin D", "µg", vitaminD, 5}, {"calcium", "mg", calcium, 800}, {"iron", "mg", iron, 14}, {"potassium", "mg", potassium, 2000}} {
		claims = append(claims,
			claimOf("source of "+string(n.name), EU, nil, atLeast(n.name, euAnnexUnread, of(n.f), 0.15*n.nrv, n.unit)),
			claimOf("high "+string(n.name), EU, nil, atLeast(n.name, euAnnexUnread, of(n.f), 0.30*n.nrv, n.unit)))
	}
	return append(claims, euRelative(a, options.Reference)...)
}

// joinSentences is a, and b behind it if there is one.
func joinSentences(a, b *flaw.Remark) *flaw.Remark {
	if b == nil {
		return a
	}
	return flaw.Say("%s %s", a, b)
}
