package figure

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/say"
)

// A Change is a figure of one design beside that of another made from it.
type Change struct {
	Key           string // in JSON, a promise
	Name          string
	Before, After Value
	Row           *Row
}

// Text returns both as text.
func (c *Change) Text(s say.Style) (before, after string) {
	return c.Row.Text(s, c.Before), c.Row.Text(s, c.After)
}

// Bands returns the bands of both as text, "" for one without.
func (c *Change) Bands(s say.Style) (before, after string) {
	return c.Row.band(s, c.Before), c.Row.band(s, c.After)
}

// changing are the figures by which a changed design is judged.
var changing = []struct {
	key    string
	name   say.Message
	table  *Table
	row    string
	column int
}{
	{"tubs_filled", "Tubs filled", &Phases, "tubs_filled", Tub},
	{"foam_volume_percent", "Foam by volume", &Phases, "foam_volume_percent", Tub},
	{"dense_made_g", "Custard made", &Batch, "made_g", Custard},
	{"foam_made_g", "Foam made", &Batch, "made_g", Foam},
	{"dense_hardness", "Hardness of the custard", &Phases, "hardness", Custard},
	{"dense_texture", "The custard on the spoon", &Phases, "texture", Custard},
	{"foam_hardness", "Hardness of the foam", &Phases, "hardness", Foam},
	{"foam_texture", "The foam on the spoon", &Phases, "texture", Foam},
	{"dense_sweetness", "Sweetness of the custard", &Phases, "sweetness_sucrose_percent", Custard},
	{"foam_sweetness", "Sweetness of the foam", &Phases, "sweetness_sucrose_percent", Foam},
	{"tub_sweetness", "Sweetness of the tub", &Phases, "sweetness_sucrose_percent", Tub},
	{"crack", "Eggs to crack", &Eggs, "crack", 0},
	{"yolks_left", "Yolks over", &Eggs, "yolks_left", 0},
	{"whites_left", "Whites over", &Eggs, "whites_left", 0},
	{"cost", "Cost of the batch", &Cost, "batch", 0},
	{"cost_per_tub", "Cost of a tub", &Cost, "per_tub", 0},
}

// Changes lays two results side by side: tubs, ratio, grams, hardness, sweetness,
// eggs and cost; those that neither has are left out.
func Changes(before, after *model.Result) []Change {
	var out []Change
	for _, c := range changing {
		f := c.table.Row(c.row)
		x := Change{c.key, c.name.String(), f.Of(before, c.column), f.Of(after, c.column), f}
		if x.Before.Known() || x.After.Known() || x.Before.Word != "" || x.After.Word != "" {
			out = append(out, x)
		}
	}
	return out
}

// Compared lays out Changes and the grams of each line, before beside after. Both
// results are of designs with the same lines.
func Compared(s say.Style, before, after *model.Result) []say.TableRow {
	var out []say.TableRow
	for _, c := range Changes(before, after) {
		was, is := c.Text(s)
		out = append(out, say.TableRow{Name: c.Name, Cells: []string{was, is}})
	}
	grams := Lines.Row("grams")
	for i := range after.Lines {
		l := &after.Lines[i]
		out = append(out, say.TableRow{Name: say.Capital(say.Part(l.Part)) + ": " + say.Kitchen(l.Ingredient),
			Cells: []string{grams.Text(s, grams.Of(before, i)), grams.Text(s, grams.Of(after, i))}})
	}
	return out
}

// ComparedHeads are the heads of its cells.
func ComparedHeads() []string { return []string{say.T("now"), say.T("then")} }
