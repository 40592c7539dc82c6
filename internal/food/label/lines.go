package label

import (
	"math"

	"github.com/shopspring/decimal"
)

// usLine is a line of the US panel, in the order of 21 CFR 101.9(c) and (d).
type usLine struct {
	key, name, unit string
	figure          figure
	round           rounding
	dv              decimal.Decimal // Daily Value for adults and children from 4 years, 0: none
	indent          int
	bold, vitamin   bool
}

// usLines: order 21 CFR 101.9(c) and (d)(7)–(8); Daily Values (c)(8)(iv) for
// vitamins and minerals, (c)(9) for the rest, of the text of 27 August 2026.
var usLines = []usLine{
	{key: "calories", name: "Calories", figure: energyUS, round: calories, bold: true},
	{key: "total_fat", name: "Total Fat", unit: "g", figure: fat, round: fats, dv: d("78"), bold: true},
	{key: "saturated_fat", name: "Saturated Fat", unit: "g", figure: saturated, round: fats, dv: d("20"), indent: 1},
	{key: "trans_fat", name: "Trans Fat", unit: "g", figure: trans, round: fats, indent: 1},
	{key: "cholesterol", name: "Cholesterol", unit: "mg", figure: cholesterolMG, round: cholesterol, dv: d("300"), bold: true},
	{key: "sodium", name: "Sodium", unit: "mg", figure: sodiumMG, round: sodium, dv: d("2300"), bold: true},
	{key: "total_carbohydrate", name: "Total Carbohydrate", unit: "g", figure: carbohydrate, round: grams, dv: d("275"), bold: true},
	{key: "dietary_fiber", name: "Dietary Fiber", unit: "g", figure: fibreUS, round: grams, dv: d("28"), indent: 1},
	{key: "total_sugars", name: "Total Sugars", unit: "g", figure: sugars, round: grams, indent: 1},
	{key: "added_sugars", name: "Added Sugars", unit: "g", figure: addedSugars, round: grams, dv: d("50"), indent: 2},
	{key: "sugar_alcohol", name: "Sugar Alcohol", unit: "g", figure: polyols, round: grams, indent: 1},
	{key: "protein", name: "Protein", unit: "g", figure: protein, round: grams, dv: d("50"), bold: true},
	{key: "vitamin_d", name: "Vitamin D", unit: "mcg", figure: vitaminD, round: tenths("20"), dv: d("20"), vitamin: true},
	{key: "calcium", name: "Calcium", unit: "mg", figure: calcium, round: whole, dv: d("1300"), vitamin: true},
	{key: "iron", name: "Iron", unit: "mg", figure: iron, round: tenths("18"), dv: d("18"), vitamin: true},
	{key: "potassium", name: "Potassium", unit: "mg", figure: potassium, round: whole, dv: d("4700"), vitamin: true},
}

// unprinted are lines that the rules know and our panel leaves out.
var unprinted = []usLine{
	{key: "polyunsaturated_fat", name: "Polyunsaturated Fat", unit: "g", round: fats, indent: 1},
	{key: "monounsaturated_fat", name: "Monounsaturated Fat", unit: "g", round: fats, indent: 1},
}

func usLineFor(key string) *usLine {
	for _, list := range [...][]usLine{usLines, unprinted} {
		for i := range list {
			if list[i].key == key {
				return &list[i]
			}
		}
	}
	return nil
}

// text returns the declared amount.
func (l *usLine) text(v decimal.Decimal) string {
	s := l.round(v).text(l.unit)
	if l.key == "added_sugars" { // 21 CFR 101.9(c)(6)(iii)
		return "Includes " + s + " Added Sugars"
	}
	return s
}

// percentOf returns the percent Daily Value of the unrounded amount; of an
// amount declared as zero it is that of the declared one, which 21 CFR
// 101.9(d)(7)(ii) allows too, so that no panel reads "0g, 1%".
func (l *usLine) percentOf(v decimal.Decimal) rounded {
	p := v.Mul(decimal.NewFromInt(100)).Div(l.dv)
	switch {
	case l.round(v).value.IsZero():
		return plainly(d0)
	case l.vitamin:
		return vitaminPercent(p)
	}
	return percent(p)
}

// Trace reports whether a US label would declare an amount of a line as zero,
// and what the amount is in percent of the line's Daily Value (NaN where it has
// none). Key names the line; an unknown one is no trace.
func Trace(key string, amount float64) (trace bool, percentDV float64) {
	l := usLineFor(key)
	if l == nil {
		return false, math.NaN()
	}
	percentDV = math.NaN()
	if !l.dv.IsZero() {
		percentDV = 100 * amount / l.dv.InexactFloat64()
	}
	if l.vitamin { // 21 CFR 101.9(c)(8)(iii): under 2 % of the Daily Value may be zero
		return percentDV < 2, percentDV
	}
	return l.round(dec(amount)).value.IsZero(), percentDV
}

// showsPercent reports whether the panel gives the line's percentage: that of
// protein only with a protein claim, 21 CFR 101.9(c)(7)(i).
func (l *usLine) showsPercent() bool { return !l.dv.IsZero() && l.key != "protein" }

// euLine is a line of the EU declaration, Regulation (EU) No 1169/2011,
// Annex XV. Reference intakes: Annex XIII, Part B (from memory).
type euLine struct {
	key, name, unit string
	figure          figure
	round           rounding
	intake          float64
	indent          int
}

var euLines = []euLine{
	{"energy_kj", "Energy", " kJ", energyKJ, whole, 8400, 0},
	{"energy_kcal", "Energy", " kcal", energyEU, whole, 2000, 0},
	{"fat", "Fat", " g", fat, euGrams.round, 70, 0},
	{"saturates", "of which saturates", " g", saturated, euSaturates.round, 20, 1},
	{"carbohydrate", "Carbohydrate", " g", available, euGrams.round, 260, 0},
	{"sugars", "of which sugars", " g", sugars, euGrams.round, 90, 1},
	{"polyols", "of which polyols", " g", polyols, euGrams.round, 0, 1},
	{"fibre", "Fibre", " g", fibre, euGrams.round, 0, 0},
	{"protein", "Protein", " g", protein625, euGrams.round, 50, 0},
	{"salt", "Salt", " g", salt, euSalt.round, 6, 0},
}

// shortNames are the abbreviations of 21 CFR 101.9(j)(13)(ii)(B) by key.
var shortNames = map[string]string{"saturated_fat": "Sat. Fat", "cholesterol": "Cholest.", "total_carbohydrate": "Total Carb.",
	"dietary_fiber": "Fiber", "added_sugars": "Incl.", "vitamin_d": "Vit. D", "potassium": "Potas."}

// ShortName is the line's name as a small package may have it.
func (l PanelLine) ShortName() string {
	if s, ok := shortNames[l.Key]; ok {
		return s
	}
	return l.Name
}
