package label

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
)

// forEU builds the declaration of Regulation (EU) No 1169/2011, per 100 g and
// per portion.
func forEU(f *Food, options Options) (*Label, error) {
	all := totals(f)
	mass := f.MassG()
	portion, measure := f.portion()
	n := servings(dec(f.tubG() / portion))
	per := " portions per pack"
	if n.value.Equal(d1) {
		per = " portion per pack"
	}
	l := &Label{
		Region: EU, ServingG: portion, ServingMeasure: measure,
		ServingsPerContainer: n.value.InexactFloat64(), ServingsText: n.text(per),
		Columns: "dual", ColumnsWhy: flaw.Say("per 100 g is required, per portion allowed, by our reading of Articles 32 and 33"),
		SecondColumn: "portion",
		Footnote:     "Reference intake of an average adult (8 400 kJ/2 000 kcal)",
		EnergyMethod: flaw.Say("kJ and kcal each from grams by Regulation (EU) No 1169/2011, Annex XIV; protein is nitrogen × 6.25, carbohydrate is without fibre"),
	}
	l.Lines = euPanel(all.per(100, mass), all.of[polyols].Known > 0)
	l.Second = euPanel(all.per(portion, mass), all.of[polyols].Known > 0)
	l.addStatement(f)
	l.ProposedName, l.Names = names(f, EU)
	l.Claims = euClaims(all.per(100, mass), options)
	l.addWarnings(f)
	l.addNotes(f, all)
	return l, nil
}

// leastPortionG is the least that is taken for a portion, g: less is a slip. Common
// practice, no source.
const leastPortionG = 1

// portionSaid returns the g of the portion that the maker wrote, if its words tell what
// a tub can hold.
func (f *Food) portionSaid() (g float64, ok bool) {
	m := gramsInWords.FindStringSubmatch(f.Portion)
	if m == nil {
		return 0, false
	}
	g, err := strconv.ParseFloat(strings.ReplaceAll(m[1], ",", "."), 64)
	return g, err == nil && g >= leastPortionG && g <= f.tubG()
}

// portion returns the g of a portion and its words: what the maker wrote, if
// that tells the grams; else what a US label would have for a serving.
func (f *Food) portion() (float64, string) {
	if g, ok := f.portionSaid(); ok {
		return g, strings.TrimSpace(f.Portion)
	}
	g := divide(f).grams
	return g, "portion of " + metricQuantity(dec(g)).text(" g")
}

// gramsInWords finds "80 g" and, as most of the EU writes it, "82,5 g".
var gramsInWords = regexp.MustCompile(`(\d+(?:[.,]\d+)?)\s*g\b`)

func euPanel(a *amounts, withPolyols bool) []PanelLine {
	var lines []PanelLine
	for i := range euLines {
		if e := &euLines[i]; e.key != "polyols" || withPolyols {
			lines = append(lines, e.line(a))
		}
	}
	return lines
}

// line declares one figure; unknown parts as in the US panel.
func (e *euLine) line(a *amounts) PanelLine {
	v := a.of[e.figure]
	l := PanelLine{Key: e.key, Name: e.name, Amount: v.Known, Unit: e.unit[1:], Indent: e.indent}
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
// Article 22 and Annex VIII: its weight as used over that of the finished food,
// since water was driven off, or in words where that is over 100 % (item 4,
// from memory). It is "" where no word in named mentions it. Whole percents,
// tenths below 5 % (common practice, no source).
func quid(named string, f *Food, in *ingredient.Ingredient, grams float64) string {
	if !mentions(named, in) {
		return ""
	}
	p := dec(100 * grams / f.MassG())
	step := d1
	if p.LessThan(d5) {
		step = d01
	}
	n := nearest(p, step)
	if p.GreaterThan(decimal.NewFromInt(100)) {
		return fmt.Sprintf(" (%s g per 100 g of the finished food)", n)
	}
	return fmt.Sprintf(" (%s %%)", n)
}
