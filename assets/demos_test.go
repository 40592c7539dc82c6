package assets_test

import (
	"path"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

// demo is one demo, opened and evaluated.
type demo struct {
	file   *designfile.File
	text   []byte
	result model.Result
}

func demos(t *testing.T) map[string]demo {
	t.Helper()
	lib := market.Library(t)
	m := model.New(lib)
	all := map[string]demo{}
	for name := range market.Demos(t) {
		text, err := assets.Demos.ReadFile("demos/" + name)
		require.NoError(t, err)
		f, err := designfile.Decode(name, text)
		require.NoError(t, err)
		require.NoError(t, designfile.Check(f, lib))
		r, err := m.Evaluate(f.Design)
		require.NoError(t, err, name)
		all[name] = demo{f, text, r}
	}
	return all
}

func codes(r model.Result, from model.Severity) []string {
	var all []string
	for _, w := range r.Warnings {
		if w.Severity >= from && !w.Handled {
			all = append(all, w.Code)
		}
	}
	return all
}

// report shows what a demo comes to; it is read when a demo is balanced.
func report(t *testing.T, r model.Result) {
	t.Logf("%s | %s", say.Verdict(say.Usual, r.Verdict), say.Advice(say.Usual, r.Verdict, nil, nil))
	t.Logf("dense %.2f kPa (%s), freezes at %.1f °C, scoops %+v; foam %.2f kPa (%s), freezes at %.1f °C, yields %+v; both %+v; sweetness %.1f %%; tubs %.2f",
		r.Dense.State.YieldKPa, r.Dense.Word.Name, r.Dense.FreezingPointC.Value, r.Dense.Scoop,
		r.Foam.State.YieldKPa, r.Foam.Word.Name, r.Foam.FreezingPointC.Value, r.Foam.Scoop, r.Blend.Both, r.Blend.SweetnessPercent, r.Blend.TubsFilled)
	for _, w := range r.Warnings {
		t.Log(w.Severity, w.Code, w.Where, w.Facts)
	}
}

func TestEveryDemoButTheBadOneEatsWell(t *testing.T) {
	for name, d := range demos(t) {
		if name == "out-of-balance.yaml" {
			continue
		}
		t.Run(name, func(t *testing.T) {
			report(t, d.result)
			assert.True(t, d.result.Verdict.Good)
			assert.Empty(t, codes(d.result, model.Caution))
		})
	}
}

func TestTheBadDemoShowsItsWarnings(t *testing.T) {
	r := demos(t)["out-of-balance.yaml"].result
	report(t, r)
	assert.False(t, r.Verdict.Good)
	for _, want := range []string{"foam_draws_water", "sugar_crystallises", "tub_overfull"} {
		assert.Contains(t, codes(r, model.Caution), want)
	}
	assert.Greater(t, r.Dense.State.YieldKPa, 6.0, "the custard is too hard")
}

func TestTheOatDemoHoldsNoMilk(t *testing.T) {
	r := demos(t)["oat-orchard.yaml"].result
	report(t, r)
	for _, a := range slices.Concat(r.Allergens.EU, r.Allergens.US) {
		assert.NotContains(t, a, "milk")
	}
}

func TestTheCountingDemoCountsEggsAndKeepsItsGrams(t *testing.T) {
	d := demos(t)["buckthorn.yaml"]
	report(t, d.result)
	assert.Equal(t, design.BasisAsWritten, d.file.Design.Batch.Basis)
	assert.True(t, d.result.Eggs.Known)
	assert.InDelta(t, 5, d.result.Eggs.Yolks, 1e-9)
	assert.InDelta(t, 5, d.result.Eggs.Whites, 1e-9)
}

func TestDemosSurviveASaveByteForByteAndAnEditInValue(t *testing.T) {
	all := demos(t)
	require.GreaterOrEqual(t, len(all), 4)
	require.Contains(t, all, path.Base(assets.FirstDemo))
	for name, d := range all {
		text, err := d.file.Encode(d.file.Design)
		require.NoError(t, err)
		assert.Equal(t, string(d.text), string(text), name)

		next := d.file.Design.WithLineAdded(design.DensePart, design.Line{Ingredient: "sugar", Grams: 7.5})
		text, err = d.file.Encode(next)
		require.NoError(t, err)
		again, err := designfile.Decode(name, text)
		require.NoError(t, err)
		assert.True(t, next.Equal(again.Design), name)
		assert.Contains(t, d.file.Design.Notes, "we made up", "%s says that it is invented", name)
	}
}

// What characterises the tub stands in its name: the maker's own purée, 15 % of
// it, not the 2 % of lemon juice.
func TestTheNameTellsOfWhatCharacterises(t *testing.T) {
	d := demos(t)["buckthorn.yaml"]
	l, err := label.For(d.result.Food(d.file.Design), label.US, label.Options{})
	require.NoError(t, err)
	assert.Contains(t, l.ProposedName, "buckthorn")
	assert.NotContains(t, l.ProposedName, "lemon")
}
