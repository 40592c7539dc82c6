package model_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
)

func TestTubsAreFullAtTheChosenRatio(t *testing.T) {
	d := market.Honey()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	require.InEpsilon(t, 4, r.Blend.TubsFilled, 1e-12)
	require.InEpsilon(t, 0.4, r.Blend.FoamVolumeFraction, 1e-12)
	t.Logf("dense %+v %v frozen %v yield %v scoop %v", r.Dense.FreezingPointC, r.Dense.Word.Name, r.Dense.FrozenFraction, r.Dense.YieldKPa, r.Dense.Scoop)
	t.Logf("foam %+v %v frozen %v yield %v scoop %v", r.Foam.FreezingPointC, r.Foam.Word.Name, r.Foam.FrozenFraction, r.Foam.YieldKPa, r.Foam.Scoop)
	t.Logf("syrup %+v", r.Syrup)
	t.Logf("blend %+v", r.Blend)
	t.Logf("kcal %+v eggs %+v allergens %v", r.Nutrition.Per100G[ingredient.Energy], r.Eggs, r.Allergens)
	for _, w := range r.Warnings {
		t.Log(w.Severity, w.Code, w.Where, w.Facts)
	}
	t.Logf("%+v", r.Verdict)
}

func BenchmarkEvaluate(b *testing.B) {
	m, d := model.New(market.Library(b)), market.Honey()
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := m.Evaluate(d); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSketch(b *testing.B) {
	m, d := model.New(market.Library(b)), market.Honey()
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := m.Sketch(d); err != nil {
			b.Fatal(err)
		}
	}
}
