package model_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// market is an invented design of the Saltmarsh Quay stall.
func market() design.Design {
	d := design.New()
	d.Name = "Hazelnut and burnt honey"
	d.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: 420}, {Ingredient: "cream_heavy", Grams: 180},
		{Ingredient: "egg_yolk", Grams: 90}, {Ingredient: "sugar", Grams: 95}, {Ingredient: "honey", Grams: 40},
	}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 165}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 180}, {Ingredient: "water", Grams: 60}}
	return d
}

func library(t testing.TB) *ingredient.Library {
	f, err := assets.Library.Open("library/ingredients.jsonl")
	require.NoError(t, err)
	defer f.Close()
	lib, err := ingredient.Read(f)
	require.NoError(t, err)
	return lib
}

func TestTubsAreFullAtTheChosenRatio(t *testing.T) {
	d := market()
	r, err := model.New(library(t)).Evaluate(d)
	require.NoError(t, err)
	require.InEpsilon(t, 4, r.Blend.TubsFilled, 1e-12)
	require.InEpsilon(t, 0.4, r.Blend.FoamVolume, 1e-12)
	t.Logf("dense %+v %v frozen %v yield %v scoop %v", r.Dense.FreezingPoint, r.Dense.Word.Name, r.Dense.WaterFrozen, r.Dense.Yield, r.Dense.Scoop)
	t.Logf("foam %+v %v frozen %v yield %v scoop %v", r.Foam.FreezingPoint, r.Foam.Word.Name, r.Foam.WaterFrozen, r.Foam.Yield, r.Foam.Scoop)
	t.Logf("syrup %+v", r.Syrup)
	t.Logf("blend %+v", r.Blend)
	t.Logf("kcal %+v eggs %+v allergens %v", r.Nutrition.Per100G[ingredient.Energy], r.Eggs, r.Allergens)
	for _, w := range r.Warnings {
		t.Log(w.Severity, w.Code, w.Where, w.Facts)
	}
	t.Logf("%+v", r.Verdict)
}

func BenchmarkEvaluate(b *testing.B) {
	m, d := model.New(library(b)), market()
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := m.Evaluate(d); err != nil {
			b.Fatal(err)
		}
	}
}
