package label

import (
	"math"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
)

// usFootnote: 21 CFR 101.9(d)(9).
const usFootnote = "*The % Daily Value tells you how much a nutrient in a serving of food contributes to a daily diet. " +
	"2,000 calories a day is used for general nutrition advice."

// forUS builds the Nutrition Facts.
func forUS(f *Food, options Options) (*Label, error) {
	all := totals(f)
	mass := f.MassG()
	s := divide(f)
	text, count := s.text()
	l := &Label{
		Region: US, ServingG: s.grams, ServingMeasure: s.measure,
		ServingsPerContainer: count.InexactFloat64(), ServingsText: text,
		Columns: "single", ColumnsWhy: s.reason,
		Footnote: usFootnote, EnergyMethod: usEnergyMethod(f),
	}
	secondG := 0.0
	switch l.SecondAllowed = s.dual || s.mayDual; {
	case s.dual:
		secondG, l.SecondColumn = s.containerG, PerContainer
	case options.SecondColumn && !s.mayDual:
		return nil, flaw.New("label: no second column: %s", s.reason)
	case options.SecondColumn:
		secondG, l.SecondColumn = ReferenceML*f.DensityGPerML, Cups(ReferenceML)
	}
	// What may go must be insignificant in both columns, so in the larger.
	l.Lines, l.NotSignificant = usPanel(all.per(max(s.grams, secondG), mass), options)
	if secondG > 0 {
		l.Columns = "dual"
		first, _ := usPanel(all.per(s.grams, mass), Options{})
		second, _ := usPanel(all.per(secondG, mass), Options{})
		l.Lines, l.Second = matching(first, l.Lines), matching(second, l.Lines)
	}
	if !options.OmitInsignificant {
		l.simple = simplified(l.Lines, l.Second)
	}
	l.addStatement(f)
	l.ProposedName, l.Names = names(f, US)
	l.Claims = usClaims(f, all, options)
	l.addWarnings(f)
	l.addNotes(f, all)
	return l, nil
}

// usEnergyMethod names the one method of the product.
func usEnergyMethod(f *Food) *flaw.Remark {
	polyols := f.hasNamedPolyols()
	method := flaw.Say("4, 4 and 9 kcal/g for protein, total carbohydrate and fat, 21 CFR 101.9(c)(1)(i)(B)")
	switch {
	case f.EnergyMethod == Specific:
		method = flaw.Say("specific Atwater factors of each ingredient's record (USDA Handbook 74), 21 CFR 101.9(c)(1)(i)(A)")
	case polyols:
		method = flaw.Say("4, 4 and 9 kcal/g for protein, carbohydrate less fibre and sugar alcohols, and fat, fibre 2, 21 CFR 101.9(c)(1)(i)(C)")
	}
	if polyols {
		method = flaw.Say("%s, sugar alcohols by (F)", method)
	}
	switch {
	case f.EnergyMethod == Specific && f.alcoholG() > 0:
		method = flaw.Say("%s; alcohol 6.93 kcal/g (USDA SR28 documentation)", method)
	case f.alcoholG() > 0:
		method = flaw.Say("%s; alcohol 7 kcal/g, on which the section is silent (from memory)", method)
	}
	return method
}

// usPanel returns the lines for an amount of food, and what the lines left out
// are no significant source of.
func usPanel(a *amounts, options Options) (lines []PanelLine, notSignificant string) {
	var out []string
	noFat := dec(a.of[fat].Known).LessThan(d05) && !(a.of[fat].Most > a.of[fat].Known)
	for i := range usLines {
		u := &usLines[i]
		if u.key == "sugar_alcohol" && a.of[polyols].Known == 0 {
			continue // voluntary, 21 CFR 101.9(c)(6)(iv)
		}
		if options.OmitInsignificant && u.mayGo(a.of[u.figure], noFat) {
			out = append(out, u.insignificant())
			continue
		}
		lines = append(lines, u.line(a))
	}
	if len(out) > 0 {
		notSignificant = "Not a significant source of " + wordList(out, "or") + "."
	}
	return lines, notSignificant
}

// mayGo reports whether the line may be left out with a "not a significant
// source" statement: 21 CFR 101.9(c)(2)(i)–(ii), (c)(3), (c)(6)(i)–(iii),
// (c)(8)(iii). An incomplete figure may not.
func (u *usLine) mayGo(a ingredient.Amount, noFat bool) bool {
	if math.IsInf(a.Most, 1) {
		return false
	}
	most := dec(a.Most)
	switch u.key {
	case "saturated_fat", "trans_fat":
		return noFat
	case "cholesterol":
		return most.LessThan(d2)
	case "dietary_fiber", "total_sugars", "added_sugars":
		return most.LessThan(d1)
	case "vitamin_d", "calcium", "iron", "potassium":
		return most.Mul(d50).LessThan(u.dv)
	}
	return false
}

func (u *usLine) insignificant() string {
	if u.vitamin {
		return lowerFirstUnless(u.name, "Vitamin D")
	}
	return strings.ToLower(u.name)
}

func lowerFirstUnless(s, except string) string {
	if s == except {
		return "vitamin D"
	}
	return strings.ToLower(s)
}

// line declares one figure by section 1's rule for unknown cells: where the
// least and the most it can be read the same, that is the figure; where they
// differ, the least is declared and marked incomplete.
func (u *usLine) line(a *amounts) PanelLine {
	v := a.of[u.figure]
	l := PanelLine{Key: u.key, Name: u.name, Amount: v.Known, Unit: u.unit, Indent: u.indent, Bold: u.bold, Vitamin: u.vitamin}
	if u.unit == "" {
		l.Unit = "kcal"
	}
	known := dec(v.Known)
	l.Text = u.text(known)
	if u.showsPercent() {
		p := u.percentOf(known)
		value := p.value.InexactFloat64()
		l.DVPercent, l.DVText = &value, p.text("%")
	}
	most, mostDV := "unknown", ""
	if !math.IsInf(v.Most, 1) {
		most = u.text(dec(v.Most))
		if u.showsPercent() {
			mostDV = u.percentOf(dec(v.Most)).text("%")
		}
	}
	if most != l.Text || mostDV != l.DVText && u.showsPercent() {
		l.Incomplete, l.Missing, l.MostText = true, a.missing[u.figure], most
	}
	return l
}

// matching returns of lines those with the keys of like, in like's order.
func matching(lines, like []PanelLine) []PanelLine {
	out := make([]PanelLine, 0, len(like))
	for _, want := range like {
		for _, l := range lines {
			if l.Key == want.Key {
				out = append(out, l)
			}
		}
	}
	return out
}

// addWarnings names what is incomplete, lines with one reason together.
func (l *Label) addWarnings(f *Food) {
	l.Warnings = flaw.Remarks{}
	name := map[string]string{}
	for _, u := range f.Lines {
		name[u.Ingredient.ID] = u.Ingredient.Kitchen()
	}
	var reasons flaw.Remarks
	lines := map[string][]string{} // by reason
	warned := map[string]bool{}
	for _, line := range append(append([]PanelLine(nil), l.Lines...), l.Second...) {
		if !line.Incomplete || warned[line.Key] {
			continue
		}
		warned[line.Key] = true
		var of []string
		for _, id := range line.Missing {
			of = append(of, name[id])
		}
		why := flaw.Say("no figure for %s; declared without it, %s.", flaw.Words(of), mostOf(line))
		reasons = reasons.With(why)
		lines[why.String()] = appendOnce(lines[why.String()], sentenceName(line.Name)) // energy has two lines
	}
	for _, why := range reasons {
		var m flaw.Message = "%s is incomplete: %s"
		of := lines[why.String()]
		if len(of) > 1 {
			m = "%s are incomplete: %s"
		}
		l.Warnings = append(l.Warnings, flaw.Say(m, asPrinted(of), why))
	}
	l.Gaps = len(l.Warnings)
	l.addAllergenWarnings(f)
	for _, u := range f.Lines {
		if u.Grams > 0 && u.Ingredient.Compound && u.Ingredient.Parts == "" {
			l.Warnings = l.Warnings.With(flaw.Say("%s is made of several ingredients, with allergens of their own: copy both from its pack.", flaw.Opening(u.Ingredient.Kitchen())))
		}
	}
}

// mostOf says how much an incomplete line may be at most.
func mostOf(line PanelLine) *flaw.Remark {
	switch line.MostText {
	case "unknown":
		return flaw.Say("no limit is known")
	case line.Text:
		return flaw.Say("the percentage may be higher")
	}
	return flaw.Say("at most %s", withoutWords(line.MostText))
}

// asPrinted lists the law's own words.
func asPrinted(words []string) flaw.And {
	out := make(flaw.And, len(words))
	for i, w := range words {
		out[i] = w
	}
	return out
}

// withoutWords is an amount without what the line of added sugars says about it.
func withoutWords(amount string) string { return PanelLine{Text: amount}.AmountText() }

// sentenceName is a line's name at the head of a sentence.
func sentenceName(s string) string {
	return flaw.Capital(strings.TrimPrefix(s, "of which "))
}

// wordList joins words as a sentence does.
func wordList(words []string, last string) string { return flaw.Series(words, last) }
