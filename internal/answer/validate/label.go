package validate

import (
	"fmt"
	"math"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/published"
)

func labelChecks() []check { return []check{rounding, fromIngredients} }

// rounding counts the label's rounding vectors: each must be right to the
// letter.
func rounding(t *tables) ([]Row, error) {
	const name = "label_rounding"
	right, total, _, err := label.CheckRounding(t.rows(name))
	if err != nil {
		return nil, err
	}
	return []Row{{Table: name, Source: "21 CFR 101.9 (electronic CFR of 27 August 2026); European Commission guidance of December 2012 on tolerances",
		Points: total, Unit: "vectors wrong", MaxAbsError: float64(total - right), RMSError: math.Sqrt(float64(total-right) / float64(total)),
		Bar: 0, Pass: right == total, Kind: Independent, closed: true}}, nil
}

// fromIngredients compares sums over the library with worked mixes, published
// recipes and an independent table, each within the tolerance it states.
func fromIngredients(t *tables) ([]Row, error) {
	var rows []Row
	for _, x := range [...]struct {
		table, source string
		note          *flaw.Remark
		kind          Kind
		compare       func(*ingredient.Library, []published.Row) ([]ingredient.Compared, error)
		bar           float64
	}{
		{"worked_mix_nutrition", "arithmetic on the library's own records, an invented recipe", nil, Twice, ingredient.CompareWorkedMixes, 0},
		{recipeTable, "USDA SR28 and McCance and Widdowson CoFID 2021, records of cooked dishes, rebuilt from their recipes; tolerances in the table",
			flaw.Say("Counts what a label would declare of 100 g, within the percentage that the table states. Figures too small to be declared are in the next row."),
			Independent, ingredient.CompareRecipes, 0},
		{"crosscheck_ifct2017", "Indian Food Composition Tables 2017, National Institute of Nutrition; differences listed, no bar", nil, Independent, ingredient.CompareTables, math.Inf(1)},
	} {
		all, err := x.compare(t.library, t.rows(x.table))
		if err != nil {
			return nil, err
		}
		var small Row
		if x.table == recipeTable {
			all, small = traces(all)
		}
		r := Row{Table: x.table, Source: x.source, Points: len(all), Unit: "figures outside tolerance", Bar: x.bar, Kind: x.kind, Note: x.note,
			XLabel: "figure", YLabel: "published and ours", closed: true}
		for i, c := range all {
			r.Pairs = append(r.Pairs, Pair{X: float64(i + 1), Model: c.Ours, Measured: c.Published, Counted: true, Label: c.What, Why: c.Reason})
			if !c.Agrees {
				r.MaxAbsError++
			}
		}
		r.RMSError = math.Sqrt(r.MaxAbsError / float64(len(all)))
		r.Pass = r.MaxAbsError <= r.Bar
		rows = append(rows, r)
		if len(small.Pairs) > 0 {
			small.Source = x.source
			rows = append(rows, small)
		}
	}
	return rows, nil
}

const recipeTable = "recipe_reconstructions"

// labelLine is the US line that declares a column.
var labelLine = map[ingredient.Column]string{
	ingredient.Fat: "total_fat", ingredient.SaturatedFat: "saturated_fat", ingredient.CholesterolMG: "cholesterol", ingredient.SodiumMG: "sodium",
	ingredient.CalciumMG: "calcium", ingredient.IronMG: "iron", ingredient.PotassiumMG: "potassium",
}

// traces takes out of all the figures that a label would declare as zero in
// 100 g, as published, for a row of their own in the label's measure: percent
// of the Daily Value, of which the least step is 2 %. A percentage of next to
// nothing says little, and of nothing nothing.
func traces(all []ingredient.Compared) (rest []ingredient.Compared, row Row) {
	row = Row{Table: recipeTable + " (too small to declare)", Unit: "% of the Daily Value", Bar: 1, Kind: Independent, XLabel: "figure", YLabel: "% of the Daily Value"}
	outside := []string{}
	for _, c := range all {
		trace, published := label.Trace(labelLine[c.Column], c.Published)
		if !trace {
			rest = append(rest, c)
			continue
		}
		_, ours := label.Trace(labelLine[c.Column], c.Ours)
		row.add(float64(len(row.Pairs)+1), ours, published).Label = c.What
		if !c.Agrees {
			outside = append(outside, fmt.Sprintf("%s %.2g, published %.2g", c.What, c.Ours, c.Published))
		}
	}
	row.Note = flaw.Say("The bar is ours: half of the least step in which a label tells minerals. By the table's own percentages %d of them are outside: %s. "+
		"The record has more calcium and iron than whites and sugar hold.", len(outside), strings.Join(outside, "; "))
	return rest, row
}
