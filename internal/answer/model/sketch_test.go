package model_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// A sketch is the evaluation's nominal reading, figure by figure, of batches of
// a kilo and of a gram.
func TestASketchIsTheEvaluation(t *testing.T) {
	m := model.New(market.Library(t))
	for name, whole := range traps(t) {
		for _, basis := range []design.Basis{design.BasisTubs, design.BasisAsWritten} {
			for _, k := range []float64{1, 1e-4} {
				d := times(whole, k)
				d.Foam.Syrup.WeighedG *= k
				d.Batch.Basis = basis
				r := evaluated(t, m, d)
				s, err := m.Sketch(d)
				require.NoError(t, err)
				for role, p := range map[phase.Role]*model.Phase{phase.Dense: &r.Dense, phase.Foam: &r.Foam} {
					q := s.Phase(role)
					assert.InDelta(t, p.State.YieldKPa, q.State.YieldKPa, 1e-9, name)
					assert.InDelta(t, p.FreezingPointC.Value, q.FreezingPointC.Value, 1e-9, name)
					assert.InDelta(t, p.SweetnessPercent, q.SweetnessPercent, 1e-9, name)
					assert.InDelta(t, p.Portion.MassG, q.Portion.MassG, 1e-9, name)
					assert.InDelta(t, p.SwellingRatio, q.SwellingRatio, 1e-12, name)
					assert.Equal(t, p.Word, q.Word, name)
					c := d.Serving.TemperatureC
					assert.InDelta(t, p.State.YieldKPa, s.HardnessAtKPa(role, c), 1e-9, name)
					st := p.Body.At(c + 3)
					assert.InDelta(t, st.YieldKPa, s.HardnessAtKPa(role, c+3), 1e-9, name)
				}
				assert.InDelta(t, r.Blend.DensityGPerML, s.Tub().DensityGPerML, 1e-9, name)
				assert.InDelta(t, r.Blend.SweetnessPercent, s.Tub().SweetnessPercent, 1e-9, name)
				assert.InDelta(t, r.Blend.TubsFilled, s.Tub().TubsFilled, 1e-12, name)
				assert.Equal(t, r.Eggs, *s.Eggs(), name)
				assert.InDelta(t, r.Syrup.SolidsPercent, s.Syrup().SolidsPercent, 1e-9, name)
				assert.Equal(t, r.Verdict.Good, s.Verdict().Good, name)
				assert.InDelta(t, r.Nutrition.Per100G[ingredient.Protein].Known, s.Nutrition().Per100G[ingredient.Protein].Known, 1e-9, name)
				for i, l := range s.Lines() {
					assert.InDelta(t, r.Lines[i].InTubsG, l.InTubsG, 1e-9, name)
				}
			}
		}
	}
}

// A thicker syrup keeps so many points more solids, unless the scale decides.
func TestASketchedSyrupIsSoManyPointsThicker(t *testing.T) {
	m := model.New(market.Library(t))
	solids := func(d design.Design, points float64) float64 {
		s, err := m.SketchSyrup(d, points)
		require.NoError(t, err)
		return s.Syrup().SolidsPercent
	}
	d := stall()
	assert.InDelta(t, solids(d, 0)+2, solids(d, 2), 1e-6)
	d.Foam.Syrup.WeighedG = 205
	assert.Equal(t, solids(d, 0), solids(d, 2))
}

// A strain is past its step where the warning of its name is a caution.
func TestAStrainIsPastWhereItIsACaution(t *testing.T) {
	m := model.New(market.Library(t))
	for name, d := range traps(t) {
		s, err := m.Sketch(d)
		require.NoError(t, err)
		warned := map[string]bool{}
		for _, w := range s.Warnings() {
			if w.Severity > model.Note {
				warned[w.Code] = true
			}
		}
		past := map[string]bool{}
		for _, x := range s.Strains() {
			by := x.Value - x.At
			if x.Below {
				by = -by
			}
			assert.Equal(t, by > 0, x.Past() > 0, "%s: %+v", name, x)
			if x.At != 0 {
				assert.InDelta(t, by, x.Past()*max(x.At, -x.At), 1e-9, "%s: %+v", name, x)
			}
			past[x.Code] = past[x.Code] || x.Past() > 0
		}
		for what, is := range past {
			if is {
				assert.True(t, warned[what], "%s: %s", name, what)
			}
		}
	}
}
