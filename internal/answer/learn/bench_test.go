package learn_test

import (
	"fmt"
	"testing"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/learn"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/batch"
)

// BenchmarkFor is what a notebook of thirty well measured batches costs whoever asks
// what it teaches.
func BenchmarkFor(b *testing.B) {
	d := market.Plain()
	var n batch.Notebook
	for i := range 30 {
		was := batch.Batch{ID: fmt.Sprint(i), FreezerC: batch.Of(-17 - 0.1*float64(i%7))}
		was.Syrup.WaterBoilsC = batch.Of(99 + 0.1*float64(i%5))
		was.Foam.CupG, was.Custard.WeighedG = batch.Of(70+float64(i%9)), batch.Of(800+float64(i%11))
		was.Ate.Hardness, was.Ate.Icy = "scoopable", "smooth"
		was.Forecast = batch.Forecast{FreezerC: batch.Of(-18), WaterBoilsC: batch.Of(99.5), FoamCupG: batch.Of(75), FoamOverrun: batch.Of(d.Foam.OverrunPercent),
			CustardG: batch.Of(805), CustardInG: batch.Of(900), StoveLossPercent: batch.Of(d.Dense.StoveLossPercent), HardnessKPa: batch.Of(6), IceUM: batch.Of(34)}
		n.Batches = append(n.Batches, was)
	}
	b.ReportAllocs()
	for range b.N {
		learn.For(&n, &d, cold.Default())
	}
}
