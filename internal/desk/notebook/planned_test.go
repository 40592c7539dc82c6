package notebook

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/batch"
)

// A batch as planned agrees with its forecast: it moves no factor, and its words are those
// of the step that the forecast lies in.
func TestABatchAsPlannedAgreesWithItsForecast(t *testing.T) {
	d, k := market.Honey(), cold.Default()
	f, err := learn.Expect(context.Background(), model.New(market.Library(t)), d, k, &batch.Batch{})
	require.NoError(t, err)
	pan := batch.Batch{Syrup: batch.Syrup{PanG: batch.Of(500)}}
	b := Planned(&f, &d, k, &pan)
	assert.Equal(t, 500+f.SyrupG.Value, b.Syrup.WeighedG.Value, "with the pan")
	b.Syrup.PanG, b.Forecast = pan.Syrup.PanG, f
	seen := 0
	for _, o := range learn.Observe(0, &b) {
		if o.Path == "ate.hardness" || o.Path == "ate.icy" {
			assert.Less(t, o.Says*o.Says, 3*o.ErrorSD*o.ErrorSD, o.Path)
			continue
		}
		seen++
		assert.InDelta(t, 0, o.Says, 1e-9, o.Path)
	}
	assert.GreaterOrEqual(t, seen, 6)

	bare := Planned(&f, &d, k, &batch.Batch{})
	assert.False(t, bare.Syrup.WeighedG.Known, "nobody knows the pan")
	assert.Equal(t, batch.Batch{}, Planned(&batch.Forecast{}, &d, k, &pan), "nothing is known yet")
}
