package model_test

import (
	"testing"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/phase"
)

// What a view pays that asks for a band of what kitchens make of a recipe.
func BenchmarkEvaluateWithABand(b *testing.B) {
	m, d := model.New(market.Library(b)), market.Honey()
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		r, err := m.Evaluate(d)
		if err != nil {
			b.Fatal(err)
		}
		r.Freezing(phase.Dense)
	}
}
