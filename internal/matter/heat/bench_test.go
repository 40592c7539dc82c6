package heat

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func benchmark(b *testing.B, name string, nr, nz int, hours, t0, ta float64, around Surroundings) {
	benchmarkOn(b, pint(b, nr, nz), name, hours, t0, ta, around)
}

func benchmarkOn(b *testing.B, mesh Mesh, name string, hours, t0, ta float64, around Surroundings) {
	p := Problem{Material: phase(b, name), Mesh: mesh, StartC: t0,
		Segments: []Segment{{hours * 3600, around}}, Levels: []Level{{Hottest, -15}, {Mean, -12}}}
	b.ReportAllocs()
	b.ResetTimer()
	steps := 0
	for i := 0; i < b.N; i++ {
		out, err := Solve(context.Background(), p, Options{})
		require.NoError(b, err)
		steps = out.Steps + out.Rejected
	}
	b.ReportMetric(float64(steps), "steps")
}

var (
	freezer = standing(-18, 6.76, 3.58, 6.76)
	counter = standing(22, 9.52, 4, 9.52)
)

// Sixteen hours in a still freezer. Bars: 2.5 ms on 10×20, 6 ms on 15×30.
func BenchmarkHardening16h(b *testing.B) {
	for _, cells := range [][2]int{{10, 20}, {15, 30}, {20, 40}, {30, 60}, {40, 80}} {
		b.Run(fmt.Sprintf("custard/%dx%d", cells[0], cells[1]), func(b *testing.B) {
			benchmark(b, "custard", cells[0], cells[1], 16, -5, -18, freezer)
		})
	}
	for _, name := range []string{"foam 2:1", "ripple70"} {
		b.Run(name+"/15x30", func(b *testing.B) { benchmark(b, name, 15, 30, 16, -5, -18, freezer) })
	}
	b.Run("custard from 4 C/15x30", func(b *testing.B) { benchmark(b, "custard", 15, 30, 16, 4, -18, freezer) })
}

// One hour on the counter. Bar: 2 ms on 15×30.
func BenchmarkTempering1h(b *testing.B) {
	for _, name := range []string{"custard", "ripple70", "foam 2:1"} {
		b.Run(name+"/15x30", func(b *testing.B) { benchmark(b, name, 15, 30, 1, -18, 22, counter) })
	}
}

// As a tub is really asked, on its own mesh. Bar: 2 ms.
func BenchmarkTempering1hTub(b *testing.B) {
	mesh, err := Tub(0.0425, 0.0834)
	require.NoError(b, err)
	for _, name := range []string{"custard", "ripple70", "foam 2:1"} {
		b.Run(name, func(b *testing.B) { benchmarkOn(b, mesh, name, 1, -18, 22, counter) })
	}
}

// The cost of hours falls as the tub settles.
func BenchmarkGrowthWithHours(b *testing.B) {
	for _, hours := range []float64{1, 2, 4, 8, 16, 32, 64} {
		b.Run(fmt.Sprintf("%gh", hours), func(b *testing.B) { benchmark(b, "custard", 15, 30, hours, -5, -18, freezer) })
	}
}

func BenchmarkStep(b *testing.B) {
	for _, cells := range [][2]int{{10, 20}, {15, 30}, {40, 80}} {
		b.Run(fmt.Sprintf("%dx%d", cells[0], cells[1]), func(b *testing.B) {
			s := newStepper(phase(b, "custard"), pint(b, cells[0], cells[1]))
			s.surround(freezer, -18, -5)
			fill(s.u, s.mat.JPerM3(-5))
			s.refresh()
			b.ReportAllocs()
			b.ResetTimer()
			for i := 0; i < b.N; i++ {
				s.try(60)
				s.accept()
			}
		})
	}
}

func TestAStepAllocatesNothing(t *testing.T) {
	p := Problem{Material: phase(t, "custard"), Mesh: pint(t, 10, 20), StartC: -5, Segments: []Segment{{16 * 3600, freezer}}}
	r := newRun(p, Options{Tolerance: 1e-4, MaxSteps: 1e6}, -18, -5)
	r.surround(freezer, -18, -5)
	r.restart()
	r.sampleStart()
	ctx := context.Background()
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		_, err := r.advance(ctx, r.end)
		require.NoError(t, err)
	}))
}
