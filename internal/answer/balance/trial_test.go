package balance

import (
	"context"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

func TestADesignsOwnFiguresAreFoundAgain(t *testing.T) {
	n := 150
	if testing.Short() {
		n = 8
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
	n := 200
	if testing.Short() {
		n = 30
	}
	bad, err := MendBad(background, models(t), n, 20)
	require.NoError(t, err)
	t.Logf("%d of %d mended in one step, %d named: %+v", bad.Met, bad.Cases, bad.Named, bad.Missed)
	assert.GreaterOrEqual(t, float64(bad.Met), 0.95*float64(bad.Cases))
	assert.Equal(t, bad.Cases, bad.Met+bad.Named, "one is neither mended nor said to be past mending")
}

// Demos are designs that trials do not draw: each with every fault, the first remedy
// mends, the one that is wrong from the start with one more among them.
func TestADemoSpoiltInAnyWayIsMendedInOneStep(t *testing.T) {
	check.Long(t)
	m, demos := models(t), market.Demos(t)
	var names []string
	for name := range demos {
		names = append(names, name)
	}
	slices.Sort(names)
	s := &spoiler{rand.New(rand.NewSource(3)), m.Library()}
	bad := Trial{}
	for range 3 {
		for _, name := range names {
			for i := range faults {
				d := faults[i].spoil(s, demos[name])
				require.NoError(t, bad.mend(background, m, d, Miss{Family: name, Fault: faults[i].name}))
			}
		}
		if testing.Short() {
			break
		}
	}
	t.Logf("%d of %d mended in one step: %+v", bad.Met, len(bad.Took), bad.Missed)
	assert.Greater(t, len(bad.Took), len(faults)*len(names)*4/5, "faults do no harm")
	assert.GreaterOrEqual(t, float64(bad.Met), 0.98*float64(len(bad.Took)))
	assert.Equal(t, len(bad.Took), bad.Met+bad.Named)
}

// Four faults at once are mended where they can be, or what cannot be met is named; so
// are those of a design whose lines are all locked.
func TestManyFaultsAtOnceAreMendedOrNamed(t *testing.T) {
	check.Long(t)
	m := models(t)
	s := &spoiler{rand.New(rand.NewSource(4)), m.Library()}
	bad := Trial{}
	for i := range 60 {
		d, _ := families[i%len(families)].good(m, s.Rand)
		for range 4 {
			d = faults[s.Intn(len(faults))].spoil(s, d)
		}
		require.NoError(t, bad.mend(background, m, d, Miss{Case: i, Family: families[i%len(families)].name}))
		x, err := m.Evaluate(d)
		require.NoError(t, err)
		all := Locks{Lines: map[LineAt]bool{}}
		for _, p := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
			for k := range d.Lines(p) {
				all.Lines[LineAt{p, k}] = true
			}
		}
		found := Mend(background, m, d, &x, all)
		assert.True(t, x.Verdict.Good || len(found.List) > 0 || len(found.Unmet) > 0, "%d", i)
		for _, q := range found.All() {
			for _, c := range q.Changes {
				assert.True(t, c.Ingredient == nil || c.Line < 0, "%d moves a locked line", i)
			}
		}
	}
	assert.GreaterOrEqual(t, float64(bad.Met), 0.95*float64(len(bad.Took)))
	assert.Equal(t, len(bad.Took), bad.Met+bad.Named)
}

func TestATrialIsTheSameOfTheSameSeedAndSpoilsGoodDesigns(t *testing.T) {
	m := models(t)
	is := func(seed int64) (names []string, bad int, all []design.Design) {
		s := &spoiler{rand.New(rand.NewSource(seed)), m.Library()}
		for k := range families {
			for i := range faults {
				d, after := families[k].good(m, s.Rand)
				require.True(t, mends(m, d))
				require.Less(t, after, mostDrawn, families[k].name)
				d = faults[i].spoil(s, d)
				if !mends(m, d) {
					bad++
				}
				names, all = append(names, families[k].name+", "+faults[i].name), append(all, d)
			}
		}
		return names, bad, all
	}
	names, bad, one := is(3)
	_, _, two := is(3)
	for i := range one {
		assert.True(t, one[i].Equal(two[i]), names[i])
	}
	assert.GreaterOrEqual(t, bad, len(one)*9/10, "faults do no harm")
	ctx, cancel := context.WithCancel(background)
	cancel()
	_, err := RoundTrips(ctx, m, 500, 1)
	assert.ErrorIs(t, err, context.Canceled)
	_, err = MendBad(ctx, m, 500, 1)
	assert.ErrorIs(t, err, context.Canceled)
}
