package coldview_test

import (
	"context"
	"errors"
	"math"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/desk/kitchens"
)

func TestALeverHasTheRangeOfItsSetting(t *testing.T) {
	l := coldview.LeverOf("layer.depth_mm", 1)
	assert.Equal(t, 5., l.From, "0 stands for the vessel's own")
	assert.Equal(t, 200., l.Max)
	assert.Equal(t, 0, l.Decimals)
	k := cold.Default()
	*l.Value(&k) = 42
	assert.Equal(t, 42., k.Layer.DepthMM)
	assert.Equal(t, 1, coldview.LeverOf("freezer.air_c", 0.5).Decimals)
	assert.Panics(t, func() { coldview.LeverOf("freezer.air", 1) })
}

func TestAnotherVesselForgetsTheDepthAndTheSameKeepsIt(t *testing.T) {
	k := cold.Default()
	k.Layer.DepthMM = 42
	coldview.UseVessel(&k, string(k.Layer.Form))
	assert.Equal(t, 42., k.Layer.DepthMM)
	coldview.UseVessel(&k, string(cold.FormBowl))
	assert.Equal(t, cold.FormBowl, k.Layer.Form)
	assert.Zero(t, k.Layer.DepthMM)
	for _, o := range coldview.Vessels() {
		coldview.UseVessel(&k, o.Value)
		assert.NoError(t, k.Validate(), o.Name)
	}
	for _, o := range coldview.StirRules() {
		coldview.UseStirRule(&k, o.Value)
		assert.Equal(t, o.Value, coldview.StirRule(&k))
	}
}

func TestACalibrationIsTakenBackOnce(t *testing.T) {
	k := cold.Default()
	k.Counter.Factor, k.Counter.Measured = 1.3, "scooped well after 12 min"
	r := coldview.Replaced{}
	r.Remember(k, cold.ScoopedWell)
	k.Counter.Factor = 2
	assert.True(t, r.Has(k.Name, cold.ScoopedWell))
	assert.False(t, r.Has(k.Name, cold.CoreAt))
	was, ok := r.Take(k.Name, cold.ScoopedWell)
	assert.True(t, ok)
	assert.Equal(t, 1.3, was.Factor)
	_, ok = r.Take(k.Name, cold.ScoopedWell)
	assert.False(t, ok)
}

func TestAMeasurementIsCheckedBeforeItIsComputed(t *testing.T) {
	k := cold.Default()
	m := cold.Measurement{Kind: cold.CoreAt, Minutes: 120, StartC: -6, CoreC: -12}
	assert.Empty(t, coldview.Measurable(metric, m, &k))
	for _, core := range []float64{-6, -4, k.Freezer.AirC, k.Freezer.AirC - 1} {
		m.CoreC = core
		assert.Contains(t, coldview.Measurable(metric, m, &k), "The core must be colder", core)
	}
	for _, minutes := range []float64{math.NaN(), 0, 6001} {
		assert.Contains(t, coldview.Measurable(metric, cold.Measurement{Kind: cold.ScoopedWell, Minutes: minutes, StartC: math.NaN()}, &k), "Fill in", minutes)
	}
	assert.Empty(t, coldview.Measurable(metric, cold.Measurement{Kind: cold.ScoopedWell, Minutes: 12, StartC: math.NaN()}, &k), "what is not asked for need not be there")
}

// A tub that scooped well later than computed tells of slower air: with the
// kitchen found, the plan has the time that was measured.
func TestACalibrationMakesThePlanAgree(t *testing.T) {
	d := market.Honey()
	a, r := planned(t, d, cold.Default())
	minutes := math.Round((a.Counter.FromMinutes.Value + a.Counter.ToMinutes.Value) / 2 * 1.5)
	q := coldview.Calibration{Design: d, Result: r, Kitchen: cold.Default(), Measurement: cold.Measurement{Kind: cold.ScoopedWell, Minutes: minutes}}
	f, err := q.Find(context.Background())
	require.NoError(t, err)
	assert.Less(t, f.Kitchen.Counter.Factor, 1.)
	assert.Equal(t, a.Counter.FromMinutes, f.Before.Counter.FromMinutes)
	s := &f.After.Counter
	assert.True(t, s.FromMinutes.Value < minutes && minutes < s.ToMinutes.Value)

	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = q.Find(ctx)
	assert.Error(t, err)
}

func TestEverySettingOfAKitchenStandsUnderOneHeading(t *testing.T) {
	var paths []string
	names := map[string]bool{}
	for i, g := range coldview.KitchenGroups() {
		assert.Equal(t, i == 0, g.Name == "", "the kitchen's own come first; all others have a heading: %v", g.Fields[0].Path)
		assert.False(t, names[g.Name], "%q comes twice", g.Name)
		names[g.Name] = true
		for _, f := range g.Fields {
			paths = append(paths, f.Path)
			assert.Contains(t, []int{1, 3}, coldview.TypedDecimals(f))
		}
	}
	want := make([]string, 0, len(paths))
	for _, f := range cold.Fields() {
		want = append(want, f.Path)
	}
	assert.ElementsMatch(t, want, paths)
}

func TestAKitchenIsKeptUnlessItsNameIsTakenOrAFigureIsOff(t *testing.T) {
	book := kitchens.Open(filepath.Join(t.TempDir(), "profiles.yaml"))
	f := coldview.KitchenForm{Kitchen: cold.Default()}
	f.Kitchen.Name = "home FREEZER"
	assert.ErrorContains(t, f.Keep(book), "already a kitchen of that name")
	f.Kitchen.Name = coldview.FreeName(book, "Home freezer")
	assert.Equal(t, "Home freezer 2", f.Kitchen.Name)
	require.NoError(t, f.Keep(book))
	assert.Equal(t, "Home freezer 3", coldview.FreeName(book, "Home freezer"))

	f.Was = f.Kitchen.Name
	f.Kitchen.Name = "Quay"
	air := coldview.LeverOf("counter.air_c", 1).Field
	require.NoError(t, f.SetNumber(air, 60, nil))
	assert.ErrorContains(t, f.Keep(book), "counter.air_c")
	require.NoError(t, f.SetNumber(air, 26, nil))
	require.NoError(t, f.Keep(book))
	assert.True(t, book.Own("quay"))
	assert.False(t, book.Own("Home freezer 2"), "it is renamed")
	assert.ErrorContains(t, f.SetNumber(air, math.NaN(), errors.New("is no number")), "air: is no number")
	f.Kitchen.Name = " "
	assert.Error(t, f.Keep(book))
}
