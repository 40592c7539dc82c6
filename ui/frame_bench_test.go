package ui

import (
	"testing"

	"ripplewright/internal/work/design"
)

// What a frame of a drag costs the window's thread before it is painted: the
// design evaluated, and everything on the bench brought up to date.
func benchmarkUpdate(b *testing.B, change func(d *design.Design, i int)) {
	w := newBed(b)
	b.ReportAllocs()
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		d := w.Design()
		change(&d, i)
		w.Preview(d)
		w.tick()
	}
}

func BenchmarkUpdateRatio(b *testing.B) {
	benchmarkUpdate(b, func(d *design.Design, i int) { d.Blend.FoamVolumePercent = float64(20 + i%60) })
}

func BenchmarkUpdateServing(b *testing.B) {
	benchmarkUpdate(b, func(d *design.Design, i int) { d.Serving.TemperatureC = -24 + float64(i%40)/2 })
}

func BenchmarkUpdateGrams(b *testing.B) {
	benchmarkUpdate(b, func(d *design.Design, i int) { *d = d.WithGrams(design.DensePart, 0, float64(400+i%200)) })
}
