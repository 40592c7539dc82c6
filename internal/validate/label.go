package validate

import (
	"io"
	"math"
	"path"

	"ripplewright/internal/ingredient"
	"ripplewright/internal/label"
)

func labelChecks() []check { return []check{rounding, fromIngredients} }

// rounding counts the label's rounding vectors: each must be right to the
// letter.
func rounding(t *tables) ([]Row, error) {
	const name = "label_rounding"
	f, err := t.files.Open(path.Join("tables", name+".csv"))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	right, total, _, err := label.CheckRounding(f)
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
		kind          Kind
		compare       func(*ingredient.Library, io.Reader) ([]ingredient.Compared, error)
		bar           float64
	}{
		{"worked_mix_nutrition", "arithmetic on the library's own records, an invented recipe", Identity, ingredient.CompareWorkedMixes, 0},
		{"recipe_reconstructions", "USDA SR28 records of cooked dishes, rebuilt from their recipes; tolerances in the table", Independent, ingredient.CompareRecipes, 0},
		{"crosscheck_ifct2017", "Indian Food Composition Tables 2017, National Institute of Nutrition; differences listed, no bar", Independent, ingredient.CompareTables, math.Inf(1)},
	} {
		f, err := t.files.Open(path.Join("tables", x.table+".csv"))
		if err != nil {
			return nil, err
		}
		all, err := x.compare(t.library, f)
		f.Close()
		if err != nil {
			return nil, err
		}
		r := Row{Table: x.table, Source: x.source, Points: len(all), Unit: "figures outside tolerance", Bar: x.bar, Kind: x.kind, XLabel: "figure", YLabel: "published and ours", closed: true}
		for i, c := range all {
			r.Pairs = append(r.Pairs, Pair{X: float64(i + 1), Model: c.Ours, Measured: c.Published, Counted: true, Label: c.What, Why: c.Reason})
			if !c.Agrees {
				r.MaxAbsError++
			}
		}
		r.RMSError = math.Sqrt(r.MaxAbsError / float64(len(all)))
		r.Pass = r.MaxAbsError <= r.Bar
		rows = append(rows, r)
	}
	return rows, nil
}
