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
				n := s.Nutrition()
				for c := range r.Nutrition.Per100G {
					assert.InDelta(t, r.Nutrition.Per100G[c].Known, n.Per100G[c].Known, 1e-9, name)
					assert.InDelta(t, r.Nutrition.PerServing[c].Known, n.PerServing[c].Known, 1e-9, name)
				}
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
		s, err := m.Sketcher().SketchSyrup(d, points)
		require.NoError(t, err)
		return s.Syrup().SolidsPercent
	}
	d := stall()
	assert.InDelta(t, solids(d, 0)+2, solids(d, 2), 1e-6)
	d.Foam.Syrup.WeighedG = 205
	assert.Equal(t, solids(d, 0), solids(d, 2))
}

// A strain is past its step where the warning of its name is a caution, and
// none tells of what a step of the card deals with.
func TestAStrainIsPastWhereItIsACaution(t *testing.T) {
	m := model.New(market.Library(t))
	strained := map[string]bool{}
	for name, d := range traps(t) {
		s, err := m.Sketch(d)
		require.NoError(t, err)
		warned, handled := map[string]bool{}, map[string]bool{}
		for _, w := range s.Warnings() {
			warned[w.Code] = warned[w.Code] || w.Severity > model.Note
			handled[w.Code] = handled[w.Code] || w.Handled
		}
		past, strain := map[string]bool{}, map[string]bool{}
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
			strain[x.Code], strained[x.Code] = true, true
		}
		for what, is := range past {
			if is {
				assert.True(t, warned[what], "%s: %s", name, what)
			}
		}
		for what, is := range warned {
			if is && strain[what] {
				assert.True(t, past[what] || handled[what], "%s: %s is told, and no strain is past", name, what)
			}
		}
		assert.False(t, strain["starch_with_yolk"], "%s: the card has a step for that", name)
	}
	for _, what := range []string{"air_beyond_process", "yolk_heavy", "too_sweet", "too_salty", "syrup_too_little", "freezer_overloaded",
		"tub_overfull", "foam_draws_water", "carbohydrate_unnamed", "sugar_crystallises", "outside_hardness_law",
		"acid_with_milk", "salt_rule_unsettled"} {
		assert.True(t, strained[what], "a search is not told how far it is to %s", what)
	}
	assert.InDelta(t, 1e9, model.Strain{Value: 1}.Past(), 1, "past a step of nought by a share that is finite")
}

// The freezer's load is counted of a batch of half a gram as of a kilo: as much
// heat for each gram.
func TestALittleLoadsTheFreezerByAsMuchAsItIs(t *testing.T) {
	m := model.New(market.Library(t))
	perG := func(k float64) float64 {
		d := times(stall(), k)
		d.Batch.Basis = design.BasisAsWritten
		s, err := m.Sketch(d)
		require.NoError(t, err)
		for _, x := range s.Strains() {
			if x.Code == "freezer_overloaded" {
				return x.Value / (s.Phase(phase.Dense).Portion.MadeG + s.Phase(phase.Foam).Portion.MadeG)
			}
		}
		t.Fatal("no strain")
		return 0
	}
	assert.InEpsilon(t, perG(1), perG(5e-4), 1e-9)
}

// A search that holds a design's own ingredients knows them, be it one alone.
func TestAModelThatHoldsAnIngredientHasIt(t *testing.T) {
	m := model.New(market.Library(t))
	assert.Same(t, m, m.Holding(nil))
	own := unnamed(t, "meal")
	_, ok := m.Library().Find(own.ID)
	require.False(t, ok)
	in, ok := m.Holding([]*ingredient.Ingredient{own}).Library().Find(own.ID)
	assert.True(t, ok)
	assert.Same(t, own, in)
}
