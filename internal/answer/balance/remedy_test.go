package balance

import (
	"math/rand"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

// Check: the syrup of 118 °C at sea level boils at 107.12 °C at 3000 m
// (testdata/tables/altitude.csv).
func TestASyrupUphillIsCookedToWhatSeaLevelMeans(t *testing.T) {
	m, r := models(t), rand.New(rand.NewSource(4))
	d, _ := good(m, r)
	d.Foam.Syrup.WeighedG, d.Foam.Syrup.CookTemperatureC, d.Kitchen.AltitudeM = 0, 118, 3000
	x, err := m.Evaluate(d)
	require.NoError(t, err)
	found := Mend(background, m, d, &x, Locks{})
	require.NotEmpty(t, found.List)
	for _, c := range found.List[0].Changes {
		if c.Path == "foam.syrup.cook_temperature_c" {
			assert.InDelta(t, 107, c.After, 1)
			return
		}
	}
	t.Fatalf("the first remedy leaves the syrup at 118 °C: %v", found.List[0].Changes)
}

// BenchmarkRemedies reports the processor time that remedies take, over bad designs of
// every kind.
func BenchmarkRemedies(b *testing.B) {
	m := models(b)
	s := &spoiler{rand.New(rand.NewSource(20)), m.Library()}
	var all []design.Design
	for i := 0; len(all) < 100; i++ {
		d, _ := families[i%len(families)].good(m, s.Rand)
		d = faults[(i+i/len(families))%len(faults)].spoil(s, d)
		if x, err := m.Evaluate(d); err == nil && !x.Verdict.Good {
			all = append(all, d)
		}
	}
	b.ResetTimer()
	for range b.N {
		var took []time.Duration
		for _, d := range all {
			x, err := m.Evaluate(d)
			require.NoError(b, err)
			began := used(b)
			Mend(background, m, d, &x, Locks{})
			took = append(took, used(b)-began)
		}
		slices.Sort(took)
		for name, at := range map[string]int{"p50-ms": len(took) / 2, "p95-ms": len(took) * 95 / 100, "max-ms": len(took) - 1} {
			b.ReportMetric(1e3*took[at].Seconds(), name)
		}
	}
}

// A design of hundreds of lines is searched like any other, by its heaviest ones.
func TestALongRecipeMovesItsHeaviestLines(t *testing.T) {
	m := models(t)
	d := market.Honey()
	for range 300 {
		d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "sugar", Grams: 0.5})
	}
	d.Serving.TemperatureC = -24
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	require.False(t, r.Verdict.Good)
	for _, p := range Mend(background, m, d, &r, Locks{}).List {
		for _, c := range p.Changes {
			require.True(t, c.Ingredient == nil || c.Line < 20, "%s %d", c.Part, c.Line)
		}
	}
}
