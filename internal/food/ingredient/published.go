package ingredient

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
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
func CompareWorkedMixes(lib *Library, table io.Reader) ([]Compared, error) {
	per100 := map[string]Tally{}
	for name, r := range workedRecipe {
		t, err := weigh(lib, r.lines)
		if err != nil {
			return nil, err
		}
		per100[name] = t.Less(r.waterOff).Per100()
	}
	per100["rippled"] = Tally{}.Plus(per100["custard_phase"], 0.65).Plus(per100["foam_phase"], 0.35)
	return compareRows(table, func(row map[string]string) (Compared, error) {
		c, ok := ColumnNamed(row["nutrient"])
		if !ok {
			return Compared{}, fmt.Errorf("no figure is named %q", row["nutrient"])
		}
		want, err := strconv.ParseFloat(row["per_100_g"], 64)
		got := per100[row["mix"]].Columns[c]
		return Compared{
			What: row["mix"] + " " + row["nutrient"], Published: want, Ours: got.Known,
			Agrees: math.Abs(got.Known-want) <= 0.5e-6+1e-9 && (row["unknown_from"] == "") == got.Complete(),
			Reason: row["unknown_from"],
		}, err
	})
}

// CompareRecipes rebuilds published prepared foods from the library and sets
// them beside their records (testdata/tables/recipe_reconstructions.csv). They
// agree within the percentage that the row states, and by nothing else.
func CompareRecipes(lib *Library, table io.Reader) ([]Compared, error) {
	return compareRows(table, func(row map[string]string) (Compared, error) {
		t, err := weigh(lib, row["ingredients"])
		if err != nil {
			return Compared{}, err
		}
		c, ok := ColumnNamed(row["nutrient"])
		if !ok {
			return Compared{}, fmt.Errorf("no figure is named %q", row["nutrient"])
		}
		var v [3]float64
		for i, name := range [...]string{"final_mass_g", "published", "tolerance_percent"} {
			if v[i], err = strconv.ParseFloat(row[name], 64); err != nil {
				return Compared{}, err
			}
		}
		got := t.Less(t.Mass - v[0]).Per100().Columns[c].Known
		return Compared{What: row["case"] + " " + row["nutrient"], Column: c, Published: v[1], Ours: got,
			Agrees: math.Abs(got-v[1]) <= v[2]/100*v[1], Reason: row["record"]}, nil
	})
}

// CompareTables sets rows of the library beside an independent table
// (testdata/tables/crosscheck_ifct2017.csv), with the tolerances stated there.
func CompareTables(lib *Library, table io.Reader) ([]Compared, error) {
	return compareRows(table, func(row map[string]string) (Compared, error) {
		in, ok := lib.Find(row["ingredient"])
		if !ok {
			return Compared{}, lib.Unknown(row["ingredient"])
		}
		name := strings.TrimPrefix(row["nutrient"], "total_")
		if row["nutrient"] == "total_sugars" {
			name = row["nutrient"]
		}
		c, ok := ColumnNamed(name)
		if !ok {
			return Compared{}, fmt.Errorf("no figure is named %q", row["nutrient"])
		}
		want, err := strconv.ParseFloat(row["ifct"], 64)
		if err != nil {
			return Compared{}, err
		}
		got := in.Cells[c].Or(math.NaN())
		tol := crossTolerance[c]
		off := math.Abs(got - want)
		return Compared{What: row["ingredient"] + " " + row["nutrient"], Published: want, Ours: got,
			Agrees: off <= tol.absolute || off <= tol.relative*got, Reason: row["reason"]}, nil
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
			return t, fmt.Errorf("line %q: %w", part, err)
		}
		in, ok := lib.Find(id)
		if !ok {
			return t, lib.Unknown(id)
		}
		t = t.Add(in, g)
	}
	return t, nil
}

// compareRows calls f for each row of a table with a header.
func compareRows(table io.Reader, f func(map[string]string) (Compared, error)) ([]Compared, error) {
	r := csv.NewReader(table)
	r.Comment = '#'
	header, err := r.Read()
	if err != nil {
		return nil, err
	}
	var out []Compared
	for {
		cells, err := r.Read()
		if err == io.EOF {
			return out, nil
		}
		if err != nil {
			return nil, err
		}
		row := make(map[string]string, len(header))
		for i, name := range header {
			row[name] = cells[i]
		}
		c, err := f(row)
		if err != nil {
			line, _ := r.FieldPos(0)
			return nil, fmt.Errorf("line %d: %w", line, err)
		}
		out = append(out, c)
	}
}
