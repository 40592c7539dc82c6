package balance

import (
	"context"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/design"
)

func TestADesignsOwnFiguresAreFoundAgain(t *testing.T) {
	n := 150
	if testing.Short() {
		n = 30
	}
	trips, err := RoundTrips(background, models(t), n, 5)
	require.NoError(t, err)
	for _, miss := range trips.Missed {
		for _, o := range miss.Outcomes {
			t.Logf("%d: %s of %.5g has %.5g, %v %v", miss.Case, o.Wish.Of.Key, o.Wish.Low, o.Value, o.Met, miss.Cautions)
		}
	}
	assert.GreaterOrEqual(t, float64(trips.Met), 0.99*float64(n))
}

func TestTheFirstRemedyMendsInOneStep(t *testing.T) {
	bad, err := MendBad(background, models(t), 200, 20)
	require.NoError(t, err)
	t.Logf("%d of %d mended in one step, %d named: %+v", bad.Met, bad.Cases, bad.Named, bad.Missed)
	assert.GreaterOrEqual(t, float64(bad.Met), 0.95*float64(bad.Cases))
	assert.Equal(t, bad.Cases, bad.Met+bad.Named, "one is neither mended nor said to be past mending")
}

func TestATrialIsTheSameOfTheSameSeedAndSpoilsGoodDesigns(t *testing.T) {
	m := models(t)
	is := func(seed int64) (names []string, bad int, all []design.Design) {
		r := rand.New(rand.NewSource(seed))
		for i := range faults {
			d, after := good(m, r)
			require.True(t, mends(m, d))
			require.Less(t, after, 50)
			d = faults[i].spoil(d, r)
			if !mends(m, d) {
				bad++
			}
			names, all = append(names, faults[i].name), append(all, d)
		}
		return names, bad, all
	}
	names, bad, one := is(3)
	_, _, two := is(3)
	for i := range one {
		assert.True(t, one[i].Equal(two[i]), names[i])
	}
	assert.GreaterOrEqual(t, bad, len(faults)-2, "faults do no harm")
	ctx, cancel := context.WithCancel(background)
	cancel()
	_, err := RoundTrips(ctx, m, 500, 1)
	assert.ErrorIs(t, err, context.Canceled)
	_, err = MendBad(ctx, m, 500, 1)
	assert.ErrorIs(t, err, context.Canceled)
}
