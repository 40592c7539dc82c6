package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
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

var spaces = regexp.MustCompile(` {2,}`)

// The card, the page of all figures, the text and the JSON say the same of a
// design, digit by digit.
func TestEveryViewHasTheSameFigures(t *testing.T) {
	path := filepath.Join(t.TempDir(), "card.md")
	shared := 0
	everyView(t, func(name string, d design.Design, r *model.Result) {
		e := report.Evaluate(name, d, r)
		var text, object bytes.Buffer
		require.NoError(t, e.WriteText(&text))
		require.NoError(t, report.WriteJSON(&object, e, false))
		var o map[string]map[string]any
		var whole map[string]json.RawMessage
		require.NoError(t, json.Unmarshal(object.Bytes(), &whole))
		o = map[string]map[string]any{}
		for _, key := range []string{"dense", "foam", "blend"} {
			var inner map[string]any
			require.NoError(t, json.Unmarshal(whole[key], &inner))
			o[key] = inner
		}

		// The page's model, as lines of the text.
		printed := map[string][]string{}
		for _, l := range strings.Split(text.String(), "\n") {
			cells := spaces.Split(strings.TrimSpace(l), -1)
			if _, twice := printed[cells[0]]; !twice {
				printed[cells[0]] = cells[1:]
			}
		}
		page := figure.All(say.Style{}, r)
		byName := map[string]figure.Line{}
		for _, l := range page {
			label := l.Name
			if l.Unit != "" {
				label += ", " + l.Unit
			}
			if _, twice := byName[l.Name]; twice || strings.HasPrefix(l.Name, figure.Indent) {
				continue // bands and kinds
			}
			byName[l.Name] = l
			require.Equal(t, l.Cells, printed[label], "%s: %s", name, label)
		}

		// The JSON's own numbers and bounds, printed as the row prints.
		for i := range figure.Phases.Rows {
			f := &figure.Phases.Rows[i]
			for column, key := range []string{"dense", "foam", "blend"} {
				value, in := o[key][f.Key]
				require.Equal(t, f.In(column), in, "%s: %s.%s", name, key, f.Key)
				if !in {
					continue
				}
				v := f.Of(r, column)
				if number, ok := value.(float64); ok {
					require.Equal(t, v.Value, number, "%s: %s.%s", name, key, f.Key)
				} else if word, ok := value.(string); ok {
					require.Equal(t, v.Word, word, "%s: %s.%s", name, key, f.Key)
				} else {
					require.Equal(t, figure.Unknown, v.Bound, "%s: %s.%s", name, key, f.Key)
				}
				_, bounded := o[key]["bounds"].(map[string]any)[f.Key]
				marked := strings.ContainsAny(f.Text(say.Style{}, v), "≥≤")
				require.True(t, bounded || !marked, "%s: %s.%s is a bound, and JSON does not say so", name, key, f.Key)
			}
		}

		// The card leaves out a phase that is in no tub.
		if !strings.HasPrefix(name, "random") || r.Dense.InTub() && r.Foam.InTub() {
			require.NoError(t, card.Write(path, d, r, card.Options{}))
			data, err := os.ReadFile(path)
			require.NoError(t, err)
			_, table, _ := strings.Cut(string(data), "## The figures")
			table, _, _ = strings.Cut(table, "## What the verdict")
			for _, row := range strings.Split(table, "\n") {
				cells := strings.Split(strings.Trim(row, "| "), "|")
				l, ok := byName[strings.TrimSpace(cells[0])]
				if !ok {
					continue
				}
				for i, want := range l.Cells {
					if l.Unit != "" && strings.ContainsAny(want, "0123456789") {
						want += " " + l.Unit
					}
					got := ""
					if i+1 < len(cells) {
						got = strings.TrimSpace(cells[i+1])
					}
					if got == "" {
						got = say.Unknown
					}
					require.Equal(t, want, got, "%s: %s on the card", name, l.Name)
					shared++
				}
			}
		}
	})
	assert.Greater(t, shared, 5000)
}
