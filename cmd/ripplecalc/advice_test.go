package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	checks "ripplewright/internal/check"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/benchview"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

// What is to be done is the same sentence on the bench, on the card and on the command
// line, of many bad designs.
func TestBenchCardAndCommandLineGiveTheSameAdvice(t *testing.T) {
	checks.Long(t)
	k, m, told := newKitchen(t), model.New(market.Library(t)), 0
	for name, demo := range market.Demos(t) {
		for i, spoil := range []func(d *design.Design){
			func(d *design.Design) { d.Serving.TemperatureC = -21 },
			func(d *design.Design) { *d = d.WithLineAdded(design.DensePart, market.Line("salt", 20)) },
			func(d *design.Design) { d.Dense.OverrunPercent = 90; d.Tubs.FillPercent = 100 },
			func(d *design.Design) { *d = d.WithLineAdded(design.SyrupPart, market.Line("sugar", 300)) },
		} {
			d := demo
			spoil(&d)
			file := fmt.Sprintf("%d-%s", i, name)
			_, err := designfile.Save(k.path(file), nil, d, designfile.SaveOptions{})
			require.NoError(t, err)
			f, err := designfile.Load(k.path(file))
			require.NoError(t, err)
			d = f.Design
			r, err := m.Evaluate(d)
			require.NoError(t, err)
			if r.Verdict.Good {
				continue
			}
			found := balance.Mend(context.Background(), m, d, &r, balance.Locks{})
			plan, err := cold.Plan(context.Background(), d, &r, cold.Default(), cold.Options{NoPictures: true})
			require.NoError(t, err)
			require.NoError(t, found.TimeOut(context.Background(), cold.Default()))
			bench := benchview.Judged(say.Usual, &r, &found, &plan, nil).Suggestion
			require.NotEmpty(t, bench, "%s %d", name, i)
			code, page, stderr := k.run("", "evaluate", file)
			require.Equal(t, exitFine, code, stderr)
			assert.Contains(t, level(page), level(bench), "%s %d, the command line", name, i)
			code, page, stderr = k.run("", "evaluate", file, "--json")
			require.Equal(t, exitFine, code, stderr)
			var object struct{ Verdict struct{ Advice string } }
			require.NoError(t, json.Unmarshal([]byte(page), &object))
			assert.Equal(t, level(bench), level(object.Verdict.Advice), "%s %d, the JSON", name, i)
			code, _, stderr = k.run("", "card", file, "-o", k.path(file+".md"))
			require.Equal(t, exitFine, code, stderr)
			card, err := os.ReadFile(k.path(file + ".md"))
			require.NoError(t, err)
			assert.Contains(t, level(string(card)), level(bench), "%s %d, the card", name, i)
			code, page, stderr = k.run("", "balance", file)
			require.Equal(t, exitFine, code, stderr)
			if len(found.List) > 0 {
				assert.Contains(t, level(page), level(say.Doing(say.Usual, &found.List[0], &plan)), "%s %d, the remedies", name, i)
			}
			told++
		}
	}
	assert.Greater(t, told, 5)
}

// level is a text as far as words go: without the marks and breaks of a form.
func level(s string) string {
	s = strings.NewReplacer("\\", "", "\u00a0", " ", "\u202f", " ", "*", "").Replace(s)
	return strings.Join(strings.Fields(s), " ")
}
