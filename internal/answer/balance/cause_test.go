package balance

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// A foam without ice in the freezer is no better for being served warmer: no remedy of
// that fault alone says so.
func TestNoWarmerServingForAFoamWithoutIce(t *testing.T) {
	m := models(t)
	s := &spoiler{rand.New(rand.NewSource(9)), m.Library()}
	tried := 0
	for i := range 10 * len(families) {
		d, _ := families[i%len(families)].good(m, s.Rand)
		for _, f := range faults {
			if f.name == "foam without ice" {
				d = f.spoil(s, d)
			}
		}
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		codes := cautionCodes(&r)
		if r.Verdict.Dense.How != model.EatsWell || len(codes) != 1 || codes[0] != "foam_draws_water" {
			continue
		}
		tried++
		found := Mend(background, m, d, &r, Locks{})
		require.NotEmpty(t, found.List, "%d", i)
		for _, p := range found.List {
			for _, c := range p.Changes {
				assert.False(t, c.Path == "serving.temperature_c" && c.After > c.Before, "%d: %v", i, p.Changes)
			}
		}
	}
	assert.Greater(t, tried, 8)
}

// A tub of one phase alone has remedies too, and they leave the ratio and the phase that
// is not there alone.
func TestATubOfOnePhaseHasRemedies(t *testing.T) {
	m := models(t)
	s := &spoiler{rand.New(rand.NewSource(10)), m.Library()}
	for _, percent := range [...]float64{0, 100} {
		bad, mended := 0, 0
		for i := range 3 * len(faults) {
			d, _ := families[i%len(families)].good(m, s.Rand)
			d.Blend.FoamVolumePercent = percent
			d = faults[i%len(faults)].spoil(s, d)
			r, err := m.Evaluate(d)
			require.NoError(t, err)
			if r.Verdict.Good || r.Verdict.Empty {
				continue
			}
			bad++
			found := Mend(background, m, d, &r, Locks{})
			assert.True(t, len(found.List) > 0 || len(found.Unmet) > 0, "%d", i)
			if len(found.List) > 0 {
				mended++
				p := &found.List[0]
				assert.True(t, mends(m, p.Design))
				assert.Equal(t, percent, p.Design.Blend.FoamVolumePercent)
				for _, c := range p.Changes {
					there := c.Part == design.DensePart && percent == 0 || c.Part != design.DensePart && percent == 100
					assert.True(t, c.Ingredient == nil || there, "%g %%, %s: %v", percent, faults[i%len(faults)].name, c)
				}
			}
		}
		t.Logf("%g %%: %d of %d", percent, mended, bad)
		assert.Greater(t, bad, 4)
		assert.GreaterOrEqual(t, float64(mended), 0.95*float64(bad))
	}
}
