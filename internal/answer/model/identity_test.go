package model_test

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
	"ripplewright/internal/work/design"
)

// bodies calls f for each phase of every design carried and of 300 random ones.
func bodies(t *testing.T, f func(name string, b *phase.Body, bound solution.Bound)) {
	t.Helper()
	m := model.New(market.Library(t))
	each(t, m, func(name string, d design.Design, r *model.Result) {
		bound := solution.Bound{ProteinGPerG: d.Model.ProteinGPerG, FibreGPerG: d.Model.FibreGPerG}
		for _, p := range []*model.Phase{&r.Dense, &r.Foam} {
			if p.WrittenG > 0 {
				f(name+", "+p.Body.Role.String(), &p.Body, bound)
			}
		}
	})
}

func TestWaterHasOneChemicalPotentialInIceAndSyrup(t *testing.T) {
	n := 0
	bodies(t, func(name string, b *phase.Body, bound solution.Bound) {
		for c := b.EndOfFreezingC + 0.5; c < -1; c += 3.3 {
			s := b.At(c)
			if s.IceG == 0 {
				continue
			}
			a, err := solution.Activity(b.Mix.WithWater(s.LiquidG), bound, c)
			require.NoError(t, err)
			require.InDelta(t, math.Exp(water.LnIceActivity(c)), a, 1e-9, "%s at %g °C", name, c)
			n++
		}
	})
	require.Greater(t, n, 2000)
}

func TestIceCurveAndItsInverseAgree(t *testing.T) {
	bodies(t, func(name string, b *phase.Body, _ solution.Bound) {
		for c := b.EndOfFreezingC + 0.1; c < b.FreezingPointC; c += 2.3 {
			require.InDelta(t, c, b.FrozenAtC(b.At(c).FrozenFraction), 1e-9, name)
		}
	})
}

func TestMoreSugarNeverRaisesTheFreezingPointAndNothingChangesNothing(t *testing.T) {
	source := rand.New(rand.NewSource(31))
	bodies(t, func(name string, b *phase.Body, bound solution.Bound) {
		freezes := func(m mix.Mix) float64 { return phase.Prepare(m, b.OverrunFraction, b.Role, bound).FreezingPointC }
		same := freezes(b.Mix.PlusScaled(b.Mix, 0))
		require.True(t, same == b.FreezingPointC || math.IsNaN(same) && math.IsNaN(b.FreezingPointC), name)
		if !(b.FreezingPointC > -46) {
			return // beyond every sugar's range
		}
		for _, s := range append(append([]mix.Species{}, mix.Sugars[:]...), mix.Polyols[:]...) {
			more := b.Mix
			more.Grams[s] += 0.01 + 5*source.Float64()
			if f := freezes(more); !math.IsNaN(f) {
				require.LessOrEqual(t, f, b.FreezingPointC+1e-12, "%s with more %s", name, s)
			}
		}
	})
}

func TestEnthalpyIsContinuousAndItsSlopeIsTheHeatCapacity(t *testing.T) {
	const h = 1e-5
	bodies(t, func(name string, b *phase.Body, _ solution.Bound) {
		for c := -39.7; c < 20; c += 4.1 {
			if math.Abs(c) < 2*h || math.Abs(c-b.FreezingPointC) < 2*h || math.Abs(c-b.EndOfFreezingC) < 2*h {
				continue
			}
			require.InEpsilon(t, (b.JPerG(c+h)-b.JPerG(c-h))/(2*h), b.JPerGK(c), 2e-5, "%s at %g °C", name, c)
		}
		for _, c := range []float64{0, b.FreezingPointC, b.EndOfFreezingC} {
			if !math.IsNaN(c) {
				require.InDelta(t, b.JPerG(c-1e-9), b.JPerG(c+1e-9), 1e-4, name)
			}
		}
	})
}

func TestALitreWeighsLessByExactlyItsOverrun(t *testing.T) {
	bodies(t, func(name string, b *phase.Body, _ solution.Bound) {
		require.InEpsilon(t, 1+b.OverrunFraction, b.MixGPerML/b.GPerML(), 1e-14, name)
		require.InDelta(t, b.OverrunFraction, phase.OverrunFraction(1000*b.MixGPerML, 1000*b.GPerML()), 1e-12*(1+b.OverrunFraction), name)
	})
}

// Whatever brings a solute beyond its table, the result says so.
func TestTheResultSaysWhenItExtrapolates(t *testing.T) {
	m := model.New(market.Library(t))
	said := func(id string, grams, c float64) bool {
		d := market.Honey().WithLineAdded(design.DensePart, design.Line{Ingredient: id, Grams: grams})
		r, err := m.EvaluateAt(d, c)
		require.NoError(t, err)
		for _, w := range r.Warnings {
			if w.Code == "outside_model_range" && w.Where == "dense" {
				return true
			}
		}
		return false
	}
	require.False(t, said("water", 150, -35))
	require.False(t, said("rum_40", 150, -24))
	require.True(t, said("rum_40", 150, -35), "ethanol, from -27")
	require.False(t, said("salt", 60, -18))
	require.True(t, said("salt", 60, -22), "sodium chloride, from -21")
	require.True(t, said("salt", 250, -10), "the freezing point itself lies beyond")
}

// The formula ends at 75 % sugar and −25 °C; a 2 : 1 foam is past it in a hardening room.
func TestAFilmBeyondTheFormulaIsSaid(t *testing.T) {
	m := model.New(market.Library(t))
	for c, want := range map[float64]bool{-13: false, -30: true} {
		r, err := m.EvaluateAt(market.Honey(), c)
		require.NoError(t, err)
		said := false
		for _, w := range r.Warnings {
			said = said || w.Code == "outside_hardness_law" && w.Where == "foam"
		}
		require.Equal(t, want, said, "%g °C", c)
	}
}

// A composition that nobody measured is a band, not a guess.
func TestUnknownSugarsGiveABand(t *testing.T) {
	m := model.New(market.Library(t))
	open := 0
	for _, in := range m.Library().All() {
		if in.Resolve().Exact() {
			continue
		}
		open++
		d := market.Honey().WithLineAdded(design.DensePart, design.Line{Ingredient: in.ID, Grams: 200})
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		require.NotEqual(t, r.Dense.Soft.Mix, r.Dense.Firm.Mix, in.ID)
	}
	require.Greater(t, open, 10)
}

// A spoon of lemon juice or a handful of raisins lies beyond the acids' table in
// the cold: worth a note; as much salt or rum, where the curve rests on it, spoils
// the verdict.
func TestAFewAcidsBeyondTheirTableSpoilNoVerdict(t *testing.T) {
	m := model.New(market.Library(t))
	for _, c := range []struct {
		id    string
		grams float64
		at    float64
		want  model.Severity
	}{
		{"lemon_juice", 90, -14, model.Note},
		{"raisins", 60, -16, model.Note},
		{"citric_acid", 60, -14, model.Caution},
		{"salt", 60, -22, model.Caution},
		{"rum_40", 150, -28, model.Caution},
	} {
		r, err := m.EvaluateAt(market.Honey().WithLineAdded(design.DensePart, design.Line{Ingredient: c.id, Grams: c.grams}), c.at)
		require.NoError(t, err)
		i := slices.IndexFunc(r.Warnings, func(w model.Warning) bool { return w.Code == "outside_model_range" && w.Where == "dense" })
		require.GreaterOrEqual(t, i, 0, c.id)
		assert.Equal(t, c.want, r.Warnings[i].Severity, c.id)
	}
}
