package model_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// carried returns the demos and the hard designs.
func carried(t testing.TB) map[string]design.Design {
	all := market.Hard(t)
	for name, d := range market.Demos(t) {
		all["demo "+name] = d
	}
	return all
}

// random returns a design out of any ingredients, sensible or not.
func random(r *rand.Rand, lib *ingredient.Library) design.Design {
	d := design.New()
	d.Name = "random"
	list := lib.All()
	line := func(id string, most float64) design.Line {
		if id == "" {
			id = list[r.Intn(len(list))].ID
		}
		return design.Line{Ingredient: id, Grams: 1 + most*r.Float64()}
	}
	d.Dense.Lines = []design.Line{line("milk_whole", 500), line("egg_yolk", 100), line("sugar", 150)}
	for range r.Intn(4) {
		d.Dense.Lines = append(d.Dense.Lines, line("", 80))
	}
	d.Foam.Lines = []design.Line{line("egg_white", 200)}
	d.Foam.Syrup.Lines = []design.Line{line("sugar", 250), line("water", 100), line("honey", 40)}
	d.Foam.Syrup.CookTemperatureC = 105 + 25*r.Float64()
	d.Foam.Syrup.InvertedPercent = 20 * r.Float64()
	d.Dense.StoveLossPercent = 12 * r.Float64()
	d.Dense.OverrunPercent, d.Foam.OverrunPercent = 60*r.Float64(), 500*r.Float64()
	d.Blend.FoamVolumePercent = 100 * r.Float64()
	d.Serving.TemperatureC = model.RailLow + (model.RailHigh-model.RailLow)*r.Float64()
	d.Kitchen.AltitudeM = 3000 * r.Float64()
	if r.Intn(3) == 0 {
		d.Batch.Basis = design.BasisAsWritten
	}
	return d
}

// each calls f for every design carried and for 300 random ones.
func each(t *testing.T, m *model.Model, f func(name string, d design.Design, r *model.Result)) {
	t.Helper()
	all := carried(t)
	require.GreaterOrEqual(t, len(all), 6)
	for name, d := range all {
		if r, err := m.Evaluate(d); err == nil {
			f(name, d, &r)
		}
	}
	source := rand.New(rand.NewSource(20))
	for range 300 {
		d := random(source, m.Library())
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		f("random", d, &r)
	}
}

func TestPhasesHardenAsTheyCool(t *testing.T) {
	m := model.New(market.Library(t))
	each(t, m, func(name string, _ design.Design, r *model.Result) {
		for _, p := range []*model.Phase{&r.Dense, &r.Foam} {
			last := phase.State{YieldKPa: math.Inf(1), FrozenFraction: 1}
			for _, s := range model.Curve(&p.Body, model.RailC(41), nil) {
				require.LessOrEqual(t, s.YieldKPa, last.YieldKPa*(1+1e-12), name)
				require.LessOrEqual(t, s.FrozenFraction, last.FrozenFraction+1e-12, name)
				last = s
			}
		}
	})
}

// The whole evaluation again with each line a little heavier and lighter.
func TestSlopesOfEveryLineAreThoseOfTheWholeEvaluation(t *testing.T) {
	m := model.New(market.Library(t))
	compared := 0
	check := func(name string, d design.Design) {
		r, err := m.Evaluate(d)
		if err != nil {
			return
		}
		for _, l := range r.Lines {
			h := 1e-4 * (1 + l.WrittenG)
			at := func(g float64) *model.Phase {
				x, err := m.Evaluate(d.WithGrams(l.Part, l.Index, g))
				require.NoError(t, err)
				if l.Part == design.DensePart {
					return &x.Dense
				}
				return &x.Foam
			}
			if l.WrittenG < h {
				continue
			}
			up, down := at(l.WrittenG+h), at(l.WrittenG-h)
			if (up.State.IceG == 0) != (down.State.IceG == 0) {
				continue // the first crystal: a kink
			}
			near := func(a, b, got float64, what string) {
				want := (a - b) / (2 * h)
				require.InDelta(t, want, got, 2e-5*math.Abs(want)+1e-8, "%s, %s[%d] %s: %s", name, l.Part, l.Index, l.Ingredient.ID, what)
				compared++
			}
			near(up.FreezingPointC.Value, down.FreezingPointC.Value, l.Slopes.FreezingPointC, "freezing point")
			near(up.State.FrozenFraction, down.State.FrozenFraction, l.Slopes.FrozenFraction, "water frozen")
			near(math.Log(up.State.YieldKPa), math.Log(down.State.YieldKPa), l.Slopes.LnYield, "ln yield")
			near(up.SweetnessPercent, down.SweetnessPercent, l.Slopes.SweetnessPercent, "sweetness")
			near(up.Body.GPerML(), down.Body.GPerML(), l.Slopes.GPerML, "density")
		}
	}
	for name, d := range carried(t) {
		check(name, d)
	}
	source := rand.New(rand.NewSource(21))
	for range 40 {
		check("random", random(source, m.Library()))
	}
	assert.Greater(t, compared, 1000)
}

func TestALineOfNothingChangesNothing(t *testing.T) {
	m := model.New(market.Library(t))
	d := market.Honey()
	before, err := m.Evaluate(d)
	require.NoError(t, err)
	after, err := m.Evaluate(d.WithLineAdded(design.DensePart, design.Line{Ingredient: "salt", Grams: 0}))
	require.NoError(t, err)
	assert.Equal(t, before.Dense.State, after.Dense.State)
	assert.Equal(t, before.Blend, after.Blend)
}

func TestExtrapolationIsSaidInTheResult(t *testing.T) {
	d := market.Honey().WithLineAdded(design.DensePart, design.Line{Ingredient: "salt", Grams: 60})
	d.Serving.TemperatureC = -23
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	var codes []string
	for _, w := range r.Warnings {
		codes = append(codes, w.Code)
	}
	assert.Contains(t, codes, "outside_model_range")
	assert.Contains(t, codes, "salt_rule_unsettled")
}

func BenchmarkCurveOf200PointsOfBothPhases(b *testing.B) {
	r, err := model.New(market.Library(b)).Evaluate(market.Honey())
	require.NoError(b, err)
	ts := model.RailC(200)
	dst := make([]phase.State, 0, len(ts))
	b.ReportAllocs()
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		dst = model.Curve(&r.Dense.Body, ts, dst)
		dst = model.Curve(&r.Foam.Body, ts, dst)
	}
}
