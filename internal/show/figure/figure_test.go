package figure_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

func evaluated(t *testing.T, dense ...design.Line) *model.Result {
	t.Helper()
	d := design.New()
	d.Dense.Lines = dense
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 165}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 180}, {Ingredient: "water", Grams: 60}}
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return &r
}

func TestEveryRowSaysWhatItIsAndWhereItComesFrom(t *testing.T) {
	for _, table := range figure.Tables {
		require.NotEmpty(t, table.Rows, table.Key)
		seen := map[string]bool{}
		for _, f := range table.Rows {
			assert.False(t, seen[f.Key], "%s twice in %s", f.Key, table.Key)
			seen[f.Key] = true
			for what, text := range map[string]string{"key": f.Key, "name": f.Name, "short name": f.Short, "inputs": f.Inputs,
				"equation": f.Equation, "source": f.Source, "band": f.Origin.Band} {
				assert.NotEmpty(t, text, "%s: %s has no %s", table.Key, f.Key, what)
			}
			assert.Same(t, table.Row(f.Key), table.Row(f.Key))
		}
	}
	assert.Panics(t, func() { figure.Phases.Row("price_of_fish") })
}

func TestDigitsFollowTheBand(t *testing.T) {
	f := figure.Phases.Row("initial_freezing_point_c")
	for _, c := range []struct {
		v, low, high float64
		want, band   string
	}{
		{-2.456, -2.5, -2.4, "−2.5 °C", "−2.5 to −2.4 °C"},
		{-18.44, -24, -13, "−18 °C", "−24 to −13 °C"},
		{-2.456, -2.456, -2.456, "−2.5 °C", "−2.5 °C"},
	} {
		v := figure.Value{Value: c.v, Low: c.low, High: c.high, Bound: figure.Exact}
		assert.Equal(t, c.want, f.Text(say.Style{}, v))
		assert.Equal(t, c.band, f.BandText(say.Style{}, v))
	}
	h := figure.Phases.Row("hardness")
	v := figure.Value{Value: 5.57, Low: 2.3, High: 15.46, Bound: figure.Exact}
	assert.Equal(t, "5.6 kPa", h.Text(say.Style{}, v))
	assert.Equal(t, "2.3 to 15 kPa", h.BandText(say.Style{}, v))
}

func TestWhatIsOnlyALowerBoundSaysSo(t *testing.T) {
	f, tried := figure.Phases.Row("sugars_percent"), 0
	for _, in := range market.Library(t).All() {
		if in.Cell(ingredient.TotalSugars).Known || !(in.Most(ingredient.TotalSugars) > 1) {
			continue
		}
		tried++
		r := evaluated(t, design.Line{Ingredient: in.ID, Grams: 100}, design.Line{Ingredient: "sugar", Grams: 90})
		for _, v := range f.Values(r, figure.Custard, figure.Tub) {
			assert.Equal(t, figure.AtLeast, v.Bound, in.ID)
			assert.Contains(t, f.Text(say.Style{}, v), "≥ ", in.ID)
			assert.Greater(t, v.High, v.Value, in.ID)
		}
		assert.Equal(t, f.Of(r, figure.Tub), figure.Nutrition.Row("sugars_g").Of(r, figure.Per100G), "one figure under two keys")
	}
	assert.Positive(t, tried)
}

func TestAPhaseThatNeverFreezesIsSaidTo(t *testing.T) {
	r := evaluated(t, design.Line{Ingredient: "sugar", Grams: 90})
	f := figure.Phases.Row("initial_freezing_point_c")
	v := f.Of(r, figure.Custard)
	assert.True(t, math.IsNaN(v.Value))
	assert.Equal(t, "not at all", f.Text(say.Style{}, v))
	assert.Equal(t, say.Unknown, f.Text(say.Style{}, figure.Phases.Row("initial_freezing_point_c").Of(r, figure.Tub)))
}

func TestUnitsOfARowStandOnceWhereTheyAgree(t *testing.T) {
	f := figure.Phases.Row("mass_g")
	one := func(v float64) figure.Value {
		return figure.Value{Value: v, Low: math.NaN(), High: math.NaN(), Bound: figure.Exact}
	}
	l := f.Line(say.Style{}, one(850), one(200))
	assert.Equal(t, say.TableRow{Name: f.Name, Unit: "g", Cells: []string{"850", "200"}}, l)
	l = f.Line(say.Style{}, one(12350), one(200))
	assert.Equal(t, say.TableRow{Name: f.Name, Cells: []string{"12.35 kg", "200 g"}}, l)
}

// What a maker reads of how a figure is computed has no column without a value and no
// word of JSON.
func TestHowAFigureIsComputedIsForPeople(t *testing.T) {
	r, err := model.New(market.Library(t)).Evaluate(market.Honey())
	require.NoError(t, err)
	listed := figure.List(say.Usual, &r)
	for _, l := range listed {
		for _, x := range l.Of.Computed(say.Usual, listed, figure.Phases.Columns) {
			assert.NotContains(t, x.Text, "null", l.Of.Key)
			assert.NotRegexp(t, "(custard|foam|tub) –", x.Text, l.Of.Key)
		}
	}
}

// How a figure comes about is told in the maker's degrees.
func TestHowAFigureIsComputedIsReadInTheMakersUnits(t *testing.T) {
	for i := range figure.Phases.Rows {
		f := &figure.Phases.Rows[i]
		for _, s := range []say.Style{say.Usual, say.Customary} {
			for _, x := range f.Computed(s, nil, nil) {
				assert.NotContains(t, x.Text, "{", f.Key)
				if s == say.Customary {
					assert.NotContains(t, x.Text, "°C", f.Key)
				}
			}
		}
	}
}
