package stove_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/making"
	"ripplewright/internal/desk/stove"
	"ripplewright/internal/show/say"
)

func cooked(t *testing.T, m *model.Model, k cold.Profile) (making.Job, say.Making) {
	d := market.Plain()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	job := making.Job{Design: d, Result: &r, Kitchen: k}
	now, untimed := making.Of(context.Background(), job)
	require.NoError(t, untimed)
	return job, now
}

// only is one reading.
func only(of process.Reading, v float64) stove.Readings { return stove.Readings{of: v} }

// stays holds a trial to what was weighed out.
func stays(t *testing.T, now say.Making, got stove.Trial) {
	t.Helper()
	require.Equal(t, len(now.Result.Lines), len(got.Result.Lines))
	for i, l := range now.Result.Lines {
		assert.InDelta(t, l.Grams, got.Result.Lines[i].Grams, 1e-9, l.Ingredient.ID)
	}
}

func TestAHotterSyrupLeavesLessWaterAndASofterFoam(t *testing.T) {
	m := model.New(market.Library(t))
	job, now := cooked(t, m, cold.Default())
	before := now.Design
	reads := stove.ReadingOf(now, process.SyrupC)
	assert.True(t, math.IsNaN(stove.ReadingOf(now, process.SyrupG)), "nothing was weighed")
	got, err := stove.Try(m, say.Style{}, job, now, only(process.SyrupC, reads+6))
	require.NoError(t, err)
	assert.True(t, now.Design.Equal(before), "the design is only tried")
	assert.Equal(t, before.Foam.Syrup.CookTemperatureC+6, got.Design.Foam.Syrup.CookTemperatureC)
	assert.Greater(t, got.Result.Syrup.SolidsPercent, now.Result.Syrup.SolidsPercent)
	assert.Less(t, got.Result.Foam.FreezingPointC.Value, now.Result.Foam.FreezingPointC.Value)
	assert.Contains(t, got.Steps, process.BoilSyrup)
	assert.Contains(t, got.Steps, process.PourIn, "the whites get hotter")
	assert.NotContains(t, got.Steps, process.Cook, "the custard knows no syrup")
	assert.NotContains(t, got.Steps, process.FreezeSoft, "nor how much of it there is")
	stays(t, now, got)
	assert.Less(t, got.Result.Blend.TubsFilled, now.Result.Blend.TubsFilled, "less water, less foam")
	assert.True(t, got.Fixed)
	names := map[string]bool{}
	for _, f := range got.Figures {
		names[f.Name] = true
		assert.NotEqual(t, f.Before, f.After)
	}
	assert.True(t, names["Syrup solids"], "%v", got.Figures)
	assert.True(t, names["Foam: Initial freezing point"], "%v", got.Figures)
}

func TestTheSameReadingChangesNothing(t *testing.T) {
	m := model.New(market.Library(t))
	job, now := cooked(t, m, cold.Default())
	read := stove.Readings{}
	for _, step := range now.Process.Steps {
		for _, of := range now.Process.Readings(step.Code) {
			read[of] = stove.ReadingOf(now, of)
		}
	}
	assert.Len(t, read, 7)
	got, err := stove.Try(m, say.Style{}, job, now, read)
	require.NoError(t, err)
	assert.True(t, got.Nothing)
	assert.True(t, got.Design.Equal(now.Design))
	assert.Empty(t, got.Figures)
	assert.Empty(t, got.Steps)
}

// What is weighed just as expected moves no figure.
func TestAWeighedPanIsThatOfTheBatch(t *testing.T) {
	m := model.New(market.Library(t))
	job, now := cooked(t, m, cold.Default())
	require.NotEqual(t, 1.0, now.Result.Foam.Portion.Factor)
	for of, g := range (stove.Readings{
		process.SyrupG:      now.Process.Syrup.MassG,
		process.CustardG:    now.Process.Custard.WeighedG,
		process.FoamCupG:    process.CupML * now.Result.Foam.Body.GPerML(),
		process.CustardCupG: process.CupML * now.Result.Dense.Body.GPerML(),
	}) {
		got, err := stove.Try(m, say.Style{}, job, now, only(of, g))
		require.NoError(t, err)
		assert.Empty(t, got.Caution, of)
		assert.False(t, got.Nothing)
		assert.Empty(t, got.Figures, of)
		stays(t, now, got)
		assert.InDelta(t, now.Result.Blend.TubsFilled, got.Result.Blend.TubsFilled, 1e-9, of)

		got, err = stove.Try(m, say.Style{}, job, now, only(of, 20*g)) // with the pan
		require.NoError(t, err)
		assert.NotEmpty(t, got.Caution, of)
	}
	got, err := stove.Try(m, say.Style{}, job, now, only(process.SyrupG, now.Process.Syrup.MassG))
	require.NoError(t, err)
	assert.True(t, got.Result.Syrup.Weighed)
	assert.InDelta(t, now.Result.Syrup.SolidsPercent, got.Result.Syrup.SolidsPercent, 1e-6)
	assert.InDelta(t, now.Process.Syrup.MassG, stove.ReadingOf(got.Making, process.SyrupG), 1e-6)
}

// A custard 40 g lighter than asked for has lost 40 g more of its water.
func TestALighterCustardHasLostThatMuchWater(t *testing.T) {
	m := model.New(market.Library(t))
	job, now := cooked(t, m, cold.Default())
	got, err := stove.Try(m, say.Style{}, job, now, only(process.CustardG, now.Process.Custard.WeighedG-40))
	require.NoError(t, err)
	stays(t, now, got)
	assert.InDelta(t, now.Result.Dense.Portion.MadeG-40, got.Result.Dense.Portion.MadeG, 1e-6)
	assert.InDelta(t, now.Process.Custard.WaterOffG+40, got.Making.Process.Custard.WaterOffG, 1e-6)
	assert.Contains(t, got.Steps, process.CoolDown)
	got, err = stove.Try(m, say.Style{}, job, now, only(process.CustardG, 30))
	require.NoError(t, err)
	assert.Contains(t, got.Caution, "without any water")
}

// A cup of foam that weighs half again as much holds less air, fills less, and
// tells that by its overrun: 250 mL of the mix over the weight.
func TestAWeighedCupTellsTheAir(t *testing.T) {
	m := model.New(market.Library(t))
	job, now := cooked(t, m, cold.Default())
	got, err := stove.Try(m, say.Style{}, job, now, only(process.FoamCupG, 120))
	require.NoError(t, err)
	stays(t, now, got)
	assert.InDelta(t, 100*(250*now.Result.Foam.Body.MixGPerML/120-1), got.Design.Foam.OverrunPercent, 1e-9)
	assert.InDelta(t, 120, 250*got.Result.Foam.Body.GPerML(), 1e-9)
	assert.Less(t, got.Result.Blend.TubsFilled, now.Result.Blend.TubsFilled)
}

// The whites read 66 °C: hotter than computed, and what data say follows.
func TestTheFoamsTemperatureIsTakenAsRead(t *testing.T) {
	m := model.New(market.Library(t))
	job, now := cooked(t, m, cold.Default())
	got, err := stove.Try(m, say.Style{}, job, now, only(process.FoamC, 66))
	require.NoError(t, err)
	assert.True(t, got.Design.Equal(now.Design))
	f := got.Making.Process.Foam
	assert.True(t, f.Read)
	assert.Equal(t, 66.0, f.PeakC)
	assert.Equal(t, 66.0, stove.ReadingOf(got.Making, process.FoamC))
	assert.Greater(t, f.LogLow, now.Process.Foam.LogLow)
	assert.Greater(t, f.StopMinutes, 0.0)
	assert.Contains(t, got.Steps, process.PourIn)
	got, err = stove.Try(m, say.Style{}, job, now, only(process.FoamC, 130))
	require.NoError(t, err)
	assert.Contains(t, got.Caution, "hotter than the syrup")
}

// A boil that took twice as long as computed had half the flame.
func TestATimedBoilMeasuresTheFlame(t *testing.T) {
	m := model.New(market.Library(t))
	job, now := cooked(t, m, cold.Default())
	minutes := now.Process.Syrup.Minutes.Value
	got, err := stove.Try(m, say.Style{}, job, now, only(process.SyrupMin, 2*minutes))
	require.NoError(t, err)
	assert.True(t, got.Design.Equal(now.Design), "no design knows the flame")
	assert.InEpsilon(t, job.Kitchen.Stove.FlameW/2, got.Kitchen.Stove.FlameW, 1e-9)
	assert.NotEmpty(t, got.Kitchen.Stove.FlameMeasured)
	assert.InEpsilon(t, 2*minutes, got.Making.Process.Syrup.Minutes.Value, 1e-9)
	assert.Less(t, got.Making.Process.Syrup.Minutes.High/got.Making.Process.Syrup.Minutes.Low, now.Process.Syrup.Minutes.High/now.Process.Syrup.Minutes.Low, "it is surer")
	got, err = stove.Try(m, say.Style{}, job, now, only(process.SyrupMin, 0.01))
	require.NoError(t, err)
	assert.NotEmpty(t, got.Caution)
}

// A probe that shows 2 K too much in boiling water shows 2 K too much here.
func TestTheProbesOwnErrorIsTakenOff(t *testing.T) {
	m := model.New(market.Library(t))
	k := cold.Default()
	job, right := cooked(t, m, k)
	now := right
	p := *right.Process
	p.Syrup.ProbeOffsetK = 2
	p.Syrup.ReadingC = p.Syrup.TrueC + 2
	now.Process = &p
	got, err := stove.Try(m, say.Style{}, job, now, only(process.SyrupC, stove.ReadingOf(now, process.SyrupC)+3))
	require.NoError(t, err)
	assert.InDelta(t, right.Design.Foam.Syrup.CookTemperatureC+3, got.Design.Foam.Syrup.CookTemperatureC, 1e-9)
}

func TestAReadingThatNoDesignHoldsIsRefused(t *testing.T) {
	m := model.New(market.Library(t))
	job, now := cooked(t, m, cold.Default())
	_, err := stove.Try(m, say.Style{}, job, now, only(process.SyrupC, 400))
	assert.Error(t, err)
}
