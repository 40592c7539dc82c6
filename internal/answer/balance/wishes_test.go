package balance

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/check"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// The minutes that an answer tells are those that the cold of its own design gives.
func TestMinutesAreThoseOfTheTubThatIsFound(t *testing.T) {
	m := models(t)
	d := market.Honey()
	kitchen := cold.Default()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	now, err := cold.Plan(background, d, &r, kitchen, cold.Options{NoPictures: true})
	require.NoError(t, err)
	was := now.Counter.FromMinutes.Value
	require.Greater(t, was, 0.0)
	for _, to := range [...]float64{was + 4, 0.6 * was} {
		w := Wish{Of: TubMinutes, Low: to, High: to, Weight: 1, AtC: math.NaN()}
		a, err := Balance(background, m, d, Ask{Wishes: []Wish{w}, Kitchen: &kitchen})
		require.NoError(t, err)
		require.True(t, a.Met, "%g min: %+v", to, a.Outcomes)
		then, err := cold.Plan(background, a.Nearest.Design, &a.Nearest.Result, kitchen, cold.Options{NoPictures: true})
		require.NoError(t, err)
		assert.InDelta(t, then.Counter.FromMinutes.Value, a.Outcomes[0].Value, 0.1, "of the cold's own answer")
		assert.InDelta(t, to, a.Outcomes[0].Value, 0.55)
	}
}

// 21 CFR 135.110(a)(2): a frozen custard has 1.4 % egg yolk solids and 10 % milkfat.
func TestANameOfFoodIsKeptAsTheLabelReadsIt(t *testing.T) {
	check.Long(t)
	m, r := models(t), rand.New(rand.NewSource(8))
	custard, ok := label.StandardOf("frozen_custard")
	require.True(t, ok)
	dense := phase.Dense
	reached := 0
	for range 6 {
		d, _ := good(m, r)
		d.Dense.Lines = d.Dense.Lines[:4]
		d = d.WithGrams(design.DensePart, 1, 60)
		x, err := m.Evaluate(d)
		require.NoError(t, err)
		f := x.Food(d)
		if custard.Of(f.Dense).Met {
			continue
		}
		a, err := Balance(background, m, d, Ask{Wishes: []Wish{Named(custard, &dense)}})
		require.NoError(t, err)
		f = a.Nearest.Result.Food(a.Nearest.Design)
		assert.Equal(t, a.Outcomes[0].Met, custard.Of(f.Dense).Met)
		if a.Met {
			reached++
			assert.Empty(t, a.Outcomes[0].Lacks)
		} else {
			assert.NotEmpty(t, a.Outcomes[0].Lacks)
		}
	}
	assert.Positive(t, reached)

	ice, _ := label.StandardOf("ice_cream")
	d, _ := good(m, r)
	a, err := Balance(background, m, d, Ask{Wishes: []Wish{Named(ice, nil)}})
	require.NoError(t, err)
	assert.False(t, a.Met, "a tub with a folded foam is never frozen while stirring")
	require.Len(t, a.Conflicts, 1)
	assert.True(t, a.Conflicts[0].Alone || len(a.Conflicts[0].Cautions) > 0)
}

func TestWhatMayComeInComesInWhereItHelps(t *testing.T) {
	m := models(t)
	d := market.Honey()
	s, err := m.Sketch(d)
	require.NoError(t, err)
	w := Wish{Of: CustardFat, Low: s.Phase(phase.Dense).Percent(0) + 100, High: math.Inf(1), Weight: 1, AtC: math.NaN()}
	w.Low = CustardFat.of(&s, &w) + 6
	held := Locks{Lines: map[LineAt]bool{}}
	for i := range d.Dense.Lines {
		held.Lines[LineAt{design.DensePart, i}] = true
	}
	a, err := Balance(background, m, d, Ask{Wishes: []Wish{w}, Locks: held, Adds: []string{"butter_unsalted"}, Cautions: []string{}})
	require.NoError(t, err)
	require.True(t, a.Met)
	assert.Positive(t, a.Nearest.Design.Dense.Lines[lineOf(a.Nearest.Design.Dense.Lines, "butter_unsalted")].Grams)
}

// A batch as written fills so many tubs where all of it grows alike.
func TestTubsAreFilledByMakingMore(t *testing.T) {
	m := models(t)
	d := market.Honey()
	for _, basis := range [...]string{string(design.BasisTubs), string(design.BasisAsWritten)} {
		d.Batch.Basis = design.Basis(basis)
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		to := math.Ceil(2 * r.Blend.TubsFilled)
		a, err := Balance(background, m, d, Ask{Wishes: []Wish{{Of: TubsFilled, Low: to - 0.2, High: to + 0.2, Weight: 1, AtC: math.NaN()}}, Cautions: []string{}})
		require.NoError(t, err)
		assert.True(t, a.Met, "%s: %v", basis, a.Outcomes)
		assert.InDelta(t, r.Dense.State.YieldKPa, a.Nearest.Result.Dense.State.YieldKPa, 0.1*r.Dense.State.YieldKPa, "more of the same")
	}
}
