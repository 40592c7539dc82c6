package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// everyView calls f for each demo and for 200 random designs.
func everyView(t *testing.T, f func(name string, d design.Design, r *model.Result)) {
	t.Helper()
	b, err := openBench()
	require.NoError(t, err)
	demos, err := filepath.Glob("../../assets/demos/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, demos)
	for _, name := range demos {
		file, err := b.load(&shell{}, name)
		require.NoError(t, err)
		r, err := b.evaluateAt(file, file.Design.Serving.TemperatureC)
		require.NoError(t, err)
		f(filepath.Base(name), file.Design, &r)
	}
	file, err := b.load(&shell{}, demos[0])
	require.NoError(t, err)
	m := b.Model
	all := b.Library().All()
	source := rand.New(rand.NewSource(10))
	for i := range 200 {
		d := file.Design
		d.Own = nil
		lines := func(n int) []design.Line {
			out := make([]design.Line, n)
			for k := range out {
				out[k] = design.Line{Ingredient: all[source.Intn(len(all))].ID, Grams: 1 + 300*source.Float64()}
			}
			return out
		}
		d.Dense.Lines, d.Foam.Lines, d.Foam.Syrup.Lines = lines(source.Intn(6)), lines(source.Intn(3)), lines(source.Intn(3))
		d.Foam.Syrup.WeighedG = 0
		d.Dense.OverrunPercent, d.Foam.OverrunPercent = 60*source.Float64(), 500*source.Float64()
		d.Serving.TemperatureC = -22 + 16*source.Float64()
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		f(fmt.Sprintf("random design %d", i), d, &r)
	}
}

// views is one design as everybody reads it.
type views struct {
	name   string
	r      *model.Result
	text   [][]string // the lines of the command line's page, in cells
	object map[string]any
	card   string // as Markdown; "" where it leaves out a phase that is in no tub
	panel  *label.Label
}

var spaces = regexp.MustCompile(` {2,}`)

func viewsOf(t *testing.T, name, path string, d design.Design, r *model.Result) views {
	t.Helper()
	v := views{name: name, r: r}
	e := report.Evaluate(name, d, r, nil)
	var text, object bytes.Buffer
	require.NoError(t, e.WriteText(&text))
	require.NoError(t, report.WriteJSON(&object, e, false))
	require.NoError(t, json.Unmarshal(object.Bytes(), &v.object))
	for _, l := range strings.Split(text.String(), "\n") {
		v.text = append(v.text, spaces.Split(strings.TrimSpace(l), -1))
	}
	if !strings.HasPrefix(name, "random") || r.Dense.InTub() && r.Foam.InTub() {
		require.NoError(t, card.Write(path, d, r, card.Options{}))
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		v.card = string(data)
		v.panel, err = label.For(r.Food(d), label.US, label.Options{})
		require.NoError(t, err)
	}
	return v
}

// at is an object within the JSON.
func (v *views) at(t *testing.T, keys ...string) map[string]any {
	t.Helper()
	o := v.object
	for _, key := range keys {
		inner, ok := o[key].(map[string]any)
		require.True(t, ok, "%s: no object %s", v.name, key)
		o = inner
	}
	return o
}

// after returns the n lines of the text that follow a line of these cells.
func (v *views) after(t *testing.T, n int, cells ...string) [][]string {
	t.Helper()
	for i, l := range v.text {
		if strings.Join(l, "|") == strings.Join(cells, "|") {
			return v.text[i+1 : i+1+n]
		}
	}
	require.Fail(t, "no such line", "%s: %q", v.name, cells)
	return nil
}

// section is what stands on the card under a heading.
func (v *views) section(heading string) string {
	_, s, _ := strings.Cut(v.card, "\n## "+heading+"\n")
	s, _, _ = strings.Cut(s, "\n## ")
	return s
}

// The card, the page of all figures, the text and the JSON say the same of a
// design, digit by digit: every figure with its band, the nutrition and the lines.
func TestEveryViewHasTheSameFigures(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	path := filepath.Join(t.TempDir(), "card.md")
	shared := map[string]int{}
	everyView(t, func(name string, d design.Design, r *model.Result) {
		v := viewsOf(t, name, path, d, r)
		shared["page"] += v.samePage(t)
		shared["bands"] += v.sameObject(t)
		shared["nutrition"] += v.sameNutrition(t)
		shared["lines"] += v.sameLines(t)
		if v.card != "" {
			shared["card"] += v.sameCard(t)
			shared["card's bands"] += v.sameCardBands(t)
			shared["card's lines"] += v.sameCardLines(t)
			shared["panel"] += v.samePanel(t, d)
		}
	})
	for what, least := range map[string]int{"page": 15000, "bands": 3000, "nutrition": 5000, "lines": 2000,
		"card": 5000, "card's bands": 300, "card's lines": 800, "panel": 3000} {
		assert.Greater(t, shared[what], least, what)
	}
}

// samePage compares the page's rows, bands and kinds of sugar among them, with
// the text's.
func (v *views) samePage(t *testing.T) (cells int) {
	page := figure.All(say.Style{}, v.r)
	return v.sameRows(t, page, v.after(t, len(page), figure.Phases.Columns...))
}

func (v *views) sameRows(t *testing.T, page []say.TableRow, printed [][]string) (cells int) {
	t.Helper()
	for i, l := range page {
		name := strings.TrimSpace(l.Name)
		if l.Unit != "" {
			name += ", " + l.Unit
		}
		require.Equal(t, append([]string{name}, l.Cells...), printed[i], v.name)
		cells += len(l.Cells)
	}
	return cells
}

// sameObject compares the JSON's own numbers, bands and bounds with the rows'.
func (v *views) sameObject(t *testing.T) (bands int) {
	for i := range figure.Phases.Rows {
		f := &figure.Phases.Rows[i]
		for column, key := range []string{"dense", "foam", "blend"} {
			o := v.at(t, key)
			value, in := o[f.Key]
			where := fmt.Sprintf("%s: %s.%s", v.name, key, f.Key)
			require.Equal(t, f.In(column), in, where)
			if !in {
				continue
			}
			x := f.Of(v.r, column)
			if word, ok := value.(string); ok {
				require.Equal(t, x.Word, word, where)
			} else {
				require.Equal(t, numberOrNil(x.Value), value, where)
			}
			_, bounded := v.at(t, key, "bounds")[f.Key]
			marked := strings.ContainsAny(f.Text(say.Style{}, x), "≥≤")
			require.True(t, bounded || !marked, "%s is a bound, and JSON does not say so", where)
			if f.WithBand {
				band := v.at(t, key, "bands", f.Key)
				require.Equal(t, []any{numberOrNil(x.Low), numberOrNil(x.High)}, []any{band["low"], band["high"]}, where)
				bands++
			}
		}
	}
	return bands
}

// numberOrNil is v as JSON reads it back.
func numberOrNil(v float64) any {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return v
}

// sameNutrition compares the page's nutrition with the text's and the JSON's.
func (v *views) sameNutrition(t *testing.T) (cells int) {
	heads, page := figure.Food(say.Style{}, v.r)
	cells = v.sameRows(t, page, v.after(t, len(page), heads...))
	for i := range figure.Nutrition.Rows {
		f := &figure.Nutrition.Rows[i]
		for column, key := range []string{"per_100_g", "per_serving"} {
			require.Equal(t, numberOrNil(f.Of(v.r, column).Value), v.at(t, "nutrition", key)[f.Key], "%s: %s.%s", v.name, key, f.Key)
		}
	}
	return cells
}

// sameLines compares what the page and the text say of each line with the JSON.
func (v *views) sameLines(t *testing.T) (cells int) {
	heads, rows := figure.GramMore(say.Style{}, v.r)
	printed := v.after(t, len(rows), append([]string{"A gram more changes"}, heads...)...)
	lines := v.object["lines"].([]any)
	require.Len(t, lines, len(rows))
	for i, row := range rows {
		l := &v.r.Lines[i]
		require.Equal(t, append([]string{say.Part(l.Part) + ": " + say.Kitchen(l.Ingredient)}, row...), printed[i], v.name)
		o := lines[i].(map[string]any)
		for _, of := range []struct {
			table *figure.Table
			in    map[string]any
		}{{&figure.Lines, o}, {&figure.PerGram, o["per_gram"].(map[string]any)}} {
			for k := range of.table.Rows {
				f := &of.table.Rows[k]
				require.Equal(t, numberOrNil(f.Of(v.r, i).Value), of.in[f.Key], "%s: lines[%d].%s", v.name, i, f.Key)
			}
		}
		cells += len(row)
	}
	return cells
}

// sameCard compares the card's table with the page's rows.
func (v *views) sameCard(t *testing.T) (cells int) {
	page := map[string]say.TableRow{}
	for _, l := range figure.All(say.Style{}, v.r) {
		if _, twice := page[l.Name]; !twice {
			page[l.Name] = l
		}
	}
	for _, row := range strings.Split(v.section("The figures"), "\n") {
		got := strings.Split(strings.Trim(row, "|"), "|")
		l, ok := page[strings.TrimSpace(got[0])]
		if !ok || len(got) != 1+len(l.Cells) {
			continue
		}
		for i, want := range l.Cells {
			if l.Unit != "" && strings.ContainsAny(want, "0123456789") {
				want += " " + l.Unit
			}
			cell := strings.TrimSpace(got[i+1])
			if cell == "" {
				cell = say.Unknown
			}
			require.Equal(t, want, cell, "%s: %s on the card", v.name, l.Name)
			cells++
		}
	}
	return cells
}

// sameCardBands looks for the bands that the verdict rests on, as the page has them.
func (v *views) sameCardBands(t *testing.T) (bands int) {
	rests := v.section("What the verdict rests on")
	for column, p := range []*model.Phase{&v.r.Dense, &v.r.Foam} {
		for key, says := range map[string]bool{"hardness": p.Felt(), "initial_freezing_point_c": true} {
			f := figure.Phases.Row(key)
			x := f.Of(v.r, column)
			if !says || !x.Known() {
				continue
			}
			require.Contains(t, rests, f.Text(say.Style{}, x)+" ("+f.BandText(say.Style{}, x)+")", "%s: %s on the card", v.name, key)
			bands++
		}
	}
	return bands
}

// sameCardLines compares the weights on the card with those of the page.
func (v *views) sameCardLines(t *testing.T) (lines int) {
	recipe, _, _ := strings.Cut(v.card, "\n## How it is made")
	var weights []string
	for _, row := range strings.Split(recipe, "\n") {
		if cells := strings.Split(row, "|"); len(cells) == 6 && strings.ContainsAny(cells[1], "0123456789") {
			weights = append(weights, strings.TrimSpace(cells[1])+" "+strings.TrimSpace(cells[2]))
		}
	}
	f := figure.Lines.Row("grams")
	for i := range v.r.Lines {
		if l := &v.r.Lines[i]; l.Grams > 0 {
			require.Contains(t, weights, f.Text(say.Style{}, f.Of(v.r, i))+" "+say.Harmless(say.Kitchen(l.Ingredient), say.Markdown), "%s: line %d on the card", v.name, i)
			lines++
		}
	}
	require.Len(t, weights, lines, v.name)
	return lines
}

// samePanel compares the card's panel with that of the command "label", and what
// both are rounded from with the nutrition.
func (v *views) samePanel(t *testing.T, d design.Design) (cells int) {
	var text bytes.Buffer
	require.NoError(t, report.Label{Label: v.panel}.WriteText(&text))
	printed := squeezed(text.String())
	onCard := squeezed(v.section("Label"))
	european, err := label.For(v.r.Food(d), label.EU, label.Options{})
	require.NoError(t, err)
	for i, x := range v.panel.Lines {
		drawn, written := x.Name, x.Name
		for _, c := range v.panel.PanelColumns() {
			l := c.Lines[i]
			drawn += " " + l.Marked(l.AmountText()) + " " + c.ShareText(i)
			written += " " + l.Marked(l.Text) + " " + c.ShareText(i) // "Includes 12g Added Sugars"
			cells++
		}
		require.Contains(t, onCard, squeezed(drawn), "%s: the card's panel", v.name)
		require.Contains(t, printed, squeezed(written), "%s: the text's panel", v.name)
	}
	for us, eu := range map[string]string{"total_fat": "fat", "saturated_fat": "saturates", "total_sugars": "sugars"} {
		f := map[string]string{"total_fat": "fat_g", "saturated_fat": "saturated_fat_g", "total_sugars": "sugars_g"}[us]
		per100G := known(figure.Nutrition.Row(f).Of(v.r, figure.Per100G))
		require.InDelta(t, per100G, amountOf(v.panel.Lines, us)*100/v.panel.ServingG, 1e-9, "%s: %s", v.name, us)
		require.InDelta(t, per100G, amountOf(european.Lines, eu), 1e-9, "%s: %s", v.name, eu)
	}
	return cells
}

func squeezed(s string) string { return strings.Join(strings.Fields(s), " ") }

func amountOf(lines []label.PanelLine, key string) float64 {
	for _, l := range lines {
		if l.Key == key {
			return l.Amount
		}
	}
	return math.NaN()
}

// known is the known part of a figure, which a panel declares.
func known(v figure.Value) float64 {
	if v.Known() {
		return v.Value
	}
	return 0
}
