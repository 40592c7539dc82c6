package label

import (
	"fmt"
	"math"

	"github.com/shopspring/decimal"

	"ripplewright/internal/ingredient"
)

// forEU builds the declaration of Regulation (EU) No 1169/2011, per 100 g and
// per portion.
func forEU(f *Food) (*Label, error) {
	all := totals(f)
	mass := f.MassG()
	portion := f.PortionG
	if !(portion > 0) {
		portion = divide(f).grams
	}
	n := servings(dec(f.tubG() / portion))
	l := &Label{
		Region: EU, ServingG: portion, ServingMeasure: "portion of " + metricQuantity(dec(portion)).text(" g"),
		ServingsPerContainer: n.value.InexactFloat64(), ServingsText: n.text(" portions per pack"),
		Columns: "dual", ColumnsWhy: "per 100 g is required, per portion allowed, by our reading of Articles 32 and 33",
		SecondColumn: "portion",
		Footnote:     "Reference intake of an average adult (8 400 kJ/2 000 kcal)",
		EnergyMethod: "kJ and kcal each from grams by Regulation (EU) No 1169/2011, Annex XIV; protein is nitrogen × 6.25, carbohydrate is without fibre",
	}
	l.Lines = euPanel(all.per(100, mass), all.of[polyols].Known > 0)
	l.Second = euPanel(all.per(portion, mass), all.of[polyols].Known > 0)
	l.addStatement(f)
	l.ProposedName, l.Names = names(f)
	l.Claims = euClaims(all.per(100, mass))
	l.addWarnings(f)
	return l, nil
}

func euPanel(a *amounts, withPolyols bool) []Line {
	var lines []Line
	for i := range euLines {
		if e := &euLines[i]; e.key != "polyols" || withPolyols {
			lines = append(lines, e.line(a))
		}
	}
	return lines
}

// line declares one figure; unknown parts as in the US panel.
func (e *euLine) line(a *amounts) Line {
	v := a.of[e.figure]
	l := Line{Key: e.key, Name: e.name, Amount: v.Known, Unit: e.unit[1:], Indent: e.indent}
	known := dec(v.Known)
	l.Text = e.round(known).text(e.unit)
	if e.intake > 0 {
		p := percent(dec(v.Known).Mul(decimal.NewFromInt(100)).Div(decimal.NewFromFloat(e.intake)))
		value := p.value.InexactFloat64()
		l.DVPercent, l.DVText = &value, p.text(" %")
	}
	most := "unknown"
	if !math.IsInf(v.Most, 1) {
		most = e.round(dec(v.Most)).text(e.unit)
	}
	if most != l.Text {
		l.Incomplete, l.Missing, l.MostText = true, a.missing[e.figure], most
	}
	return l
}

// quid returns the percentage of an ingredient that the food's name mentions,
// Article 22 and Annex VIII: its weight as used over that of the finished
// food, since water was driven off (from memory), or "" where the name does
// not mention it. Whole percents, tenths below 1 % (common practice, no
// source).
func quid(f *Food, in *ingredient.Ingredient, grams float64) string {
	if !mentions(f.Name, in) {
		return ""
	}
	p := dec(100 * grams / f.MassG())
	if p.LessThan(d1) {
		return fmt.Sprintf(" (%s %%)", nearest(p, d01))
	}
	return fmt.Sprintf(" (%s %%)", nearest(p, d1))
}
