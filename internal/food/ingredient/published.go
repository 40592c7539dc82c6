package ingredient

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/published"
)

// Compared is one figure beside that of a published table.
type Compared struct {
	What      string  // the food and the figure
	Column    Column  // of a rebuilt recipe, the figure
	Published float64 // in the figure's unit
	Ours      float64
	Agrees    bool   // within the tolerance that the table states
	Reason    string // what lies behind a difference, where the table says
}

// workedRecipe is the recipe behind the table of worked mixes: invented, for
// the market stall Saltmarsh Quay.
var workedRecipe = map[string]struct {
	lines    string
	waterOff float64
}{
	"custard_phase": {"milk_whole 380 g; cream_heavy 140 g; egg_yolk 85 g; sugar 70 g; hazelnut_roasted 55 g; nfdm_regular 18 g; tapioca_starch 4 g; salt 1.2 g", 33.2},
	"foam_phase":    {"egg_white 140 g; sugar 150 g; honey 70 g; water 45 g; lemon_juice 6 g; egg_white_dried_powder 4 g", 41},
}

// CompareWorkedMixes mixes the worked recipe and sets each figure per 100 g
// beside the table's (testdata/tables/worked_mix_nutrition.csv). They agree
// to half a unit of the sixth decimal, and where they leave the same
// ingredients out as unknown.
func CompareWorkedMixes(lib *Library, table []published.Row) ([]Compared, error) {
	per100 := map[string]Tally{}
	for name, r := range workedRecipe {
		t, err := weigh(lib, r.lines)
		if err != nil {
			return nil, err
		}
		per100[name] = t.Less(r.waterOff).Per100()
	}
	per100["rippled"] = Tally{}.Plus(per100["custard_phase"], 0.65).Plus(per100["foam_phase"], 0.35)
	return compareRows(table, func(row *tableRow) Compared {
		want, unknown := row.num("per_100_g"), row.text("unknown_from")
		got := per100[row.text("mix")].Columns[row.column(row.text("nutrient"))]
		return Compared{
			What: row.text("mix") + " " + row.text("nutrient"), Published: want, Ours: got.Known,
			Agrees: math.Abs(got.Known-want) <= 0.5e-6+1e-9 && (unknown == "") == got.Complete(),
			Reason: unknown,
		}
	})
}

// CompareRecipes rebuilds published prepared foods from the library and sets
// them beside their records (testdata/tables/recipe_reconstructions.csv). They
// agree within the percentage that the row states, and by nothing else.
func CompareRecipes(lib *Library, table []published.Row) ([]Compared, error) {
	return compareRows(table, func(row *tableRow) Compared {
		t, err := weigh(lib, row.text("ingredients"))
		row.err = errors.Join(row.err, err)
		c, want := row.column(row.text("nutrient")), row.num("published")
		got := t.Less(t.MassG - row.num("final_mass_g")).Per100().Columns[c].Known
		return Compared{What: row.text("case") + " " + row.text("nutrient"), Column: c, Published: want, Ours: got,
			Agrees: math.Abs(got-want) <= row.num("tolerance_percent")/100*want, Reason: row.text("record")}
	})
}

// CompareTables sets rows of the library beside an independent table
// (testdata/tables/crosscheck_ifct2017.csv), with the tolerances stated there.
func CompareTables(lib *Library, table []published.Row) ([]Compared, error) {
	return compareRows(table, func(row *tableRow) Compared {
		nutrient, want := row.text("nutrient"), row.num("ifct")
		in, ok := lib.Find(row.text("ingredient"))
		if !ok {
			row.err = errors.Join(row.err, lib.Unknown(row.text("ingredient")))
			return Compared{}
		}
		name := strings.TrimPrefix(nutrient, "total_")
		if nutrient == "total_sugars" {
			name = nutrient
		}
		c := row.column(name)
		got := in.Cells[c].Or(math.NaN())
		tol := crossTolerance[c]
		off := math.Abs(got - want)
		return Compared{What: in.ID + " " + nutrient, Published: want, Ours: got,
			Agrees: off <= tol.absolute || off <= tol.relative*got, Reason: row.text("reason")}
	})
}

// crossTolerance is what foods of different origin differ by (common
// practice, no source): absolute in the figure's unit, or relative.
var crossTolerance = map[Column]struct{ absolute, relative float64 }{
	Water: {2, 0.05}, Protein: {1, 0.15}, Fat: {1, 0.15}, Ash: {0.4, 0.25}, Carbohydrate: {2, 0.20},
	Fibre: {1.5, 0.30}, Energy: {12, 0.12}, SaturatedFat: {0.6, 0.25}, CholesterolMG: {5, 0.10},
	TotalSugars: {1.5, 0.30}, SodiumMG: {15, 0.40}, PotassiumMG: {25, 0.25}, CalciumMG: {12, 0.25},
	IronMG: {0.5, 0.60}, MagnesiumMG: {6, 0.30}, PhosphorusMG: {25, 0.30},
}

// weigh adds up "id grams g; …".
func weigh(lib *Library, lines string) (Tally, error) {
	var t Tally
	for _, part := range strings.Split(lines, ";") {
		var id string
		var g float64
		if _, err := fmt.Sscanf(strings.TrimSpace(part), "%s %g g", &id, &g); err != nil {
			return t, flaw.New("line %q: %v", part, err)
		}
		in, ok := lib.Find(id)
		if !ok {
			return t, lib.Unknown(id)
		}
		t = t.Add(in, g)
	}
	return t, nil
}

// tableRow is a row that keeps the first of what could not be read of it.
type tableRow struct {
	published.Row
	err error
}

func (c *tableRow) text(column string) string {
	s, err := c.Text(column)
	c.err = errors.Join(c.err, err)
	return s
}

func (c *tableRow) num(column string) float64 {
	v, err := c.Number(column)
	c.err = errors.Join(c.err, err)
	return v
}

// column returns the column that a cell names.
func (c *tableRow) column(name string) Column {
	found, ok := ColumnNamed(name)
	if !ok {
		c.err = errors.Join(c.err, flaw.New("%s: no figure is named %q", c, name))
	}
	return found
}

// compareRows calls f for each row of a table.
func compareRows(table []published.Row, f func(*tableRow) Compared) ([]Compared, error) {
	var out []Compared
	for _, r := range table {
		row := &tableRow{Row: r}
		c := f(row)
		if row.err != nil {
			return nil, row.err
		}
		out = append(out, c)
	}
	return out, nil
}
