package stove_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/desk/making"
	"ripplewright/internal/desk/stove"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

func theModel(t *testing.T) *model.Model {
	f, err := assets.Library.Open("library/ingredients.jsonl")
	require.NoError(t, err)
	defer f.Close()
	lib, err := ingredient.Read(f)
	require.NoError(t, err)
	return model.New(lib)
}

// stall is an invented design of the Saltmarsh Quay stall, scaled to its tubs.
func stall() design.Design {
	d := design.New()
	d.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: 420}, {Ingredient: "cream_heavy", Grams: 180},
		{Ingredient: "egg_yolk", Grams: 90}, {Ingredient: "sugar", Grams: 95},
	}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 165}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 180}, {Ingredient: "water", Grams: 60}}
	return d
}

func cooked(t *testing.T, m *model.Model, k cold.Profile) (making.Job, say.Making) {
	d := stall()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	job := making.Job{Design: d, Result: &r, Kitchen: k}
	now, untimed := making.Of(context.Background(), job)
	require.NoError(t, untimed)
	return job, now
}

func TestAHotterSyrupLeavesLessWaterAndASofterFoam(t *testing.T) {
	m := theModel(t)
	job, now := cooked(t, m, cold.Default())
	before := now.Design
	r := stove.ReadingOf(now)
	assert.True(t, math.IsNaN(r.WeighedG), "nothing was weighed")
	r.ProbeC += 6
	got, err := stove.Try(m, say.Style{}, job, now, r)
	require.NoError(t, err)
	assert.True(t, now.Design.Equal(before), "the design is only tried")
	assert.Equal(t, before.Foam.Syrup.CookTemperatureC+6, got.Design.Foam.Syrup.CookTemperatureC)
	assert.Greater(t, got.Result.Syrup.SolidsPercent, now.Result.Syrup.SolidsPercent)
	assert.Less(t, got.Result.Foam.FreezingPoint.Value, now.Result.Foam.FreezingPoint.Value)
	assert.Contains(t, got.Steps, process.BoilSyrup)
	assert.Contains(t, got.Steps, process.PourIn, "the whites get hotter")
	assert.NotContains(t, got.Steps, process.Cook, "the custard knows no syrup")
	names := map[string]bool{}
	for _, f := range got.Figures {
		names[f.Name] = true
		assert.NotEqual(t, f.Before, f.After)
	}
	assert.True(t, names["Syrup solids"], "%v", got.Figures)
	assert.True(t, names["Foam: Initial freezing point"], "%v", got.Figures)
}

func TestTheSameReadingChangesNothing(t *testing.T) {
	m := theModel(t)
	job, now := cooked(t, m, cold.Default())
	got, err := stove.Try(m, say.Style{}, job, now, stove.ReadingOf(now))
	require.NoError(t, err)
	assert.Empty(t, got.Figures)
	assert.Empty(t, got.Steps)
}

// The pan holds the batch as made; the design, whose phases are scaled to the
// tubs, keeps what belongs to the lines as written.
func TestAWeighedPanIsThatOfTheBatch(t *testing.T) {
	m := theModel(t)
	job, now := cooked(t, m, cold.Default())
	require.NotEqual(t, 1.0, now.Result.Foam.Portion.Factor)
	r := stove.ReadingOf(now)
	r.WeighedG = now.Process.Syrup.MassG // just what was expected
	got, err := stove.Try(m, say.Style{}, job, now, r)
	require.NoError(t, err)
	assert.Empty(t, got.Caution)
	assert.True(t, got.Result.Syrup.Weighed)
	assert.InDelta(t, now.Result.Syrup.SolidsPercent, got.Result.Syrup.SolidsPercent, 1e-6)
	assert.InDelta(t, r.WeighedG, stove.ReadingOf(got.Making).WeighedG, 1e-6)

	r.WeighedG = 1.5 * (now.Process.Syrup.MassG + now.Process.Syrup.WaterOffG) // with the pan
	got, err = stove.Try(m, say.Style{}, job, now, r)
	require.NoError(t, err)
	assert.NotEmpty(t, got.Caution)
}

// A probe that shows 2 K too much in boiling water shows 2 K too much here.
func TestTheProbesOwnErrorIsTakenOff(t *testing.T) {
	m := theModel(t)
	k := cold.Default()
	job, right := cooked(t, m, k)
	now := right
	p := *right.Process
	p.Syrup.ProbeOffset = 2
	p.Syrup.ReadingC = p.Syrup.TrueC + 2
	now.Process = &p
	got, err := stove.Try(m, say.Style{}, job, now, stove.ReadingOf(now))
	require.NoError(t, err)
	assert.InDelta(t, right.Design.Foam.Syrup.CookTemperatureC, got.Design.Foam.Syrup.CookTemperatureC, 1e-9)
}

func TestAReadingThatNoDesignHoldsIsRefused(t *testing.T) {
	m := theModel(t)
	job, now := cooked(t, m, cold.Default())
	_, err := stove.Try(m, say.Style{}, job, now, stove.Reading{ProbeC: 400, WeighedG: math.NaN()})
	assert.Error(t, err)
}
