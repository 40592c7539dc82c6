package learn_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/batch"
)

func TestAskingNamesWhatNarrowsMost(t *testing.T) {
	s := simulated(t)
	p := learn.Prior()
	list := p.Ask(&s.expected)
	require.NotEmpty(t, list)
	paths := []string{}
	for i, q := range list {
		paths = append(paths, q.Path)
		assert.LessOrEqual(t, q.MinutesLeftFraction, 1+1e-9, q.Path)
		assert.LessOrEqual(t, q.HardnessLeftFraction, 1+1e-9, q.Path)
		if i > 0 {
			before := list[i-1]
			assert.LessOrEqual(t, before.MinutesLeftFraction*before.HardnessLeftFraction, q.MinutesLeftFraction*q.HardnessLeftFraction)
		}
	}
	assert.Contains(t, []string{"scooped.ring_c", "scooped.after_min", "ate.hardness"}, paths[0], "nothing is known worse than the hardness")
	assert.NotContains(t, paths, "foam.cup_g", "the foam's air moves neither")

	// What has been measured often enough is asked for no more.
	n := batch.Notebook{}
	for range 40 {
		b := batch.Batch{ID: "b", Ate: batch.Ate{Hardness: "hard"}, Forecast: s.expected}
		n.Batches = append(n.Batches, b)
	}
	p = learn.From(&n)
	assert.NotEqual(t, "ate.hardness", p.Ask(&s.expected)[0].Path)
}

func TestTheForecastNarrowsAndFollows(t *testing.T) {
	s := simulated(t)
	n := batch.Notebook{}
	for range 5 {
		n.Batches = append(n.Batches, batch.Batch{ID: "b", Ate: batch.Ate{Hardness: "hard"}, Forecast: s.expected})
	}
	before, after := learn.Prior(), learn.From(&n)
	low, value, high := before.HardnessKPa(&s.expected)
	newLow, newValue, newHigh := after.HardnessKPa(&s.expected)
	assert.InDelta(t, s.expected.HardnessKPa.Value, value, 1e-9)
	assert.Less(t, math.Log(newHigh/newLow), math.Log(high/low)/2)
	assert.Greater(t, newValue, 0.9*math.Sqrt(12*25)-2)
	_, minutes, _ := before.Minutes(&s.expected)
	_, newMinutes, _ := after.Minutes(&s.expected)
	assert.InDelta(t, s.expected.ScoopedMinutes.Value, minutes, 1e-9)
	assert.Equal(t, newValue > value, newMinutes > minutes, "what is harder is out longer")
	none := batch.Forecast{}
	_, v, _ := after.Minutes(&none)
	assert.True(t, math.IsNaN(v))
}

// What is learnt reaches the kitchens that are sampled, the kitchen and the recipe.
func TestWhatIsLearntEntersTheForecasts(t *testing.T) {
	s := simulated(t)
	n := batch.Notebook{}
	for range 5 {
		b := batch.Batch{ID: "b", FreezerC: batch.Of(-15), Forecast: s.expected}
		b.Scooped.AfterMinutes = batch.Of(s.expected.ScoopedMinutes.Value)
		b.Ate.Hardness = "firm"
		b.Custard.WeighedG = batch.Of(s.expected.CustardG.Value - 30)
		b.Syrup.WaterBoilsC = batch.Of(s.expected.WaterBoilsC.Value + 1)
		n.Batches = append(n.Batches, b)
	}
	p := learn.From(&n)
	k := p.Kitchen(&s.d, s.k)
	require.NoError(t, k.Validate())
	assert.InDelta(t, -15, k.Freezer.AirC, 1)
	assert.InDelta(t, 101, k.Stove.ProbeBoilsC, 0.2)
	assert.Less(t, k.Counter.SpreadFraction(), s.k.Counter.SpreadFraction())
	taught := p.Model(s.m)
	out := func(m *model.Model) float64 {
		r, err := m.Evaluate(s.d)
		require.NoError(t, err)
		a, err := cold.Plan(context.Background(), s.d, &r, k, cold.Options{NoPictures: true})
		require.NoError(t, err)
		return a.Counter.FromMinutes.Value
	}
	require.Less(t, taught.Lessons().HarderFactor, 0.9)
	assert.Less(t, out(taught), out(s.m), "a custard that ate softer than the law waits less")
	again, err := learn.Expect(context.Background(), taught, s.d, s.k, &batch.Batch{})
	require.NoError(t, err)
	assert.Equal(t, s.expected, again, "batches are compared with what is published")
	d := p.Design(s.d, s.expected.SyrupSolidsPerK.Value)
	assert.Greater(t, d.Dense.StoveLossPercent, s.d.Dense.StoveLossPercent+1.5)
	_, err = s.m.Evaluate(d)
	require.NoError(t, err)

	sample := func(l *sure.Learnt) sure.Answer {
		a, err := sure.Sample(context.Background(), s.m, s.d, sure.Options{Kitchens: 300, Cold: &s.counter, Learnt: l})
		require.NoError(t, err)
		return a
	}
	before, after := sample(nil), sample(p.Kitchens())
	ratio := func(x sure.Spread) float64 { return x.High / x.Low }
	assert.Less(t, ratio(after.Spread[sure.CustardKPa]), 0.75*ratio(before.Spread[sure.CustardKPa]))
	none := learn.Prior()
	assert.Equal(t, before.Spread[sure.CustardKPa], sample(none.Kitchens()).Spread[sure.CustardKPa], "nothing learnt changes nothing")
}

func TestExpectTakesTheBatchAsItWas(t *testing.T) {
	m, d, k := model.New(market.Library(t)), market.Plain(), cold.Default()
	ask := func(b batch.Batch) batch.Forecast {
		f, err := learn.Expect(context.Background(), m, d, k, &b)
		require.NoError(t, err)
		return f
	}
	plain := ask(batch.Batch{ID: "b"})
	hotter := ask(batch.Batch{ID: "b", Syrup: batch.Syrup{ReadingC: batch.Of(d.Foam.Syrup.CookTemperatureC + 2)}})
	assert.Greater(t, hotter.SyrupSolidsPercent.Value, plain.SyrupSolidsPercent.Value)
	assert.Less(t, hotter.SyrupG.Value, plain.SyrupG.Value)
	warm := ask(batch.Batch{ID: "b", FreezerC: batch.Of(-16), RoomC: batch.Of(30)})
	assert.Equal(t, k.Freezer.AirC, warm.FreezerC.Value, "the reading is compared with the kitchen's")
	assert.Less(t, warm.ScoopedMinutes.Value, plain.ScoopedMinutes.Value)
	colder := ask(batch.Batch{ID: "b", Ate: batch.Ate{AtC: batch.Of(-16)}})
	assert.Greater(t, colder.HardnessKPa.Value, plain.HardnessKPa.Value)
	old := ask(batch.Batch{ID: "b", Ate: batch.Ate{AfterDays: batch.Of(60)}})
	assert.Greater(t, old.IceUM.Value, plain.IceUM.Value)

	var unknown *learn.UnknownLineError
	_, err := learn.Expect(context.Background(), m, d, k, &batch.Batch{ID: "b", Weighed: []string{"dense saffron 3 g"}})
	require.ErrorAs(t, err, &unknown)
	assert.Equal(t, "weighed: the design has no saffron in dense", err.Error())
}

// What a custard ate like moves its hardness wherever a result of the design is made, and
// narrows its band; the foam, the weights and the label stay.
func TestWhatIsLearntEntersTheResult(t *testing.T) {
	s := simulated(t)
	n := batch.Notebook{}
	for range 5 {
		b := batch.Batch{ID: "b", Forecast: s.expected}
		b.Ate.Hardness = "hard"
		n.Batches = append(n.Batches, b)
	}
	p := learn.From(&n)
	m := p.Model(s.m)
	before, err := s.m.Evaluate(s.d)
	require.NoError(t, err)
	after, err := m.Evaluate(s.d)
	require.NoError(t, err)
	by := m.Lessons().HarderFactor
	assert.InEpsilon(t, by, after.Dense.YieldKPa.Value/before.Dense.YieldKPa.Value, 1e-9)
	band := func(r *model.Result) float64 { return math.Log(r.Dense.YieldKPa.High / r.Dense.YieldKPa.Low) }
	assert.Less(t, band(&after), 0.8*band(&before))
	assert.Greater(t, after.Dense.Scoop.FromC, before.Dense.Scoop.FromC, "it has to be warmer to scoop: the rail")
	assert.Equal(t, before.Foam.YieldKPa, after.Foam.YieldKPa)
	assert.Equal(t, before.Dense.Portion, after.Dense.Portion)
	sketch, err := m.Sketch(s.d)
	require.NoError(t, err)
	assert.InEpsilon(t, after.Dense.YieldKPa.Value, sketch.Phase(phase.Dense).State.YieldKPa, 1e-9, "searches work with it")
	assert.Equal(t, after.Verdict, sketch.Verdict())
	assert.Equal(t, before.Dense.YieldKPa, must(m.Published().Evaluate(s.d)).Dense.YieldKPa)

	n.Off = []string{"hardness"}
	off := learn.From(&n)
	assert.Equal(t, s.m.Lessons(), off.Model(s.m).Lessons())
}

func must(r model.Result, err error) model.Result {
	if err != nil {
		panic(err)
	}
	return r
}

// How hard the custard eats says nothing of the foam.
func TestWhatACustardTeachesLeavesTheFoam(t *testing.T) {
	s := simulated(t)
	sample := func(l *sure.Learnt) sure.Answer {
		a, err := sure.Sample(context.Background(), s.m, s.d, sure.Options{Kitchens: 200, Learnt: l})
		require.NoError(t, err)
		return a
	}
	n := batch.Notebook{}
	for range 5 {
		n.Batches = append(n.Batches, batch.Batch{ID: "b", Ate: batch.Ate{Hardness: "firm"}, Forecast: s.expected})
	}
	p := learn.From(&n)
	before, after := sample(nil), sample(p.Kitchens())
	assert.Equal(t, before.Spread[sure.FoamKPa], after.Spread[sure.FoamKPa])
	assert.Equal(t, before.FoamFraction, after.FoamFraction)
	assert.Less(t, after.Spread[sure.CustardKPa].Middle, 0.8*before.Spread[sure.CustardKPa].Middle)
}
