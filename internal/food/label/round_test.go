package label

import (
	"math"
	"math/rand"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
)

func TestEveryPublishedRoundingIsExact(t *testing.T) {
	right, total, wrong, err := CheckRounding(check.Published(t, "label_rounding"))
	require.NoError(t, err)
	assert.Empty(t, wrong)
	assert.Equal(t, 230, total)
	assert.Equal(t, total, right)
}

// rules are all roundings by name.
func rules() map[string]rounding {
	all := map[string]rounding{
		"servings": servings, "metric quantity": metricQuantity, "vitamin percent": vitaminPercent, "percent": percent,
	}
	for _, l := range usLines {
		all["us "+l.key] = l.round
	}
	for _, l := range euLines {
		all["eu "+l.key] = l.round
	}
	return all
}

// grid goes through every boundary of the rules.
var grid = func() (g []float64) {
	for i := 0; i < 1200; i++ {
		g = append(g, float64(i)/100)
	}
	for i := 48; i < 2400; i++ {
		g = append(g, float64(i)/4)
	}
	return g
}()

func TestRoundingIsMonotone(t *testing.T) {
	for name, round := range rules() {
		t.Run(name, func(t *testing.T) {
			last := decimal.NewFromInt(-1)
			for _, v := range grid {
				got := round(dec(v)).value
				require.False(t, got.LessThan(last), "at %v", v)
				last = got
			}
		})
	}
}

func TestRoundingTwiceIsRoundingOnce(t *testing.T) {
	for name, round := range rules() {
		t.Run(name, func(t *testing.T) {
			for _, v := range grid {
				once := round(dec(v)).value
				require.True(t, round(once).value.Equal(once), "at %v: %s, then %s", v, once, round(once).value)
			}
		})
	}
}

func TestRoundingMovesByHalfAStepAtMost(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for i := 0; i < 20_000; i++ {
		v := dec(r.Float64() * 50)
		for _, step := range []decimal.Decimal{d001, d01, d05, d1, d5, d10} {
			off := nearest(v, step).Sub(v)
			require.False(t, off.GreaterThan(step.Div(d2)) || off.LessThanOrEqual(step.Div(d2).Neg()), "%s by %s", v, step)
		}
	}
}

func TestBinarySumsMeetTheirBoundary(t *testing.T) {
	sum := 0.0
	for i := 0; i < 25; i++ {
		sum += 0.1 // 2.5000000000000004 or so
	}
	require.NotEqual(t, 2.5, sum)
	for _, v := range []float64{sum, math.Nextafter(2.5, 0), 2.5} {
		got, err := Declare("protein", v)
		require.NoError(t, err)
		assert.Equal(t, "3g", got)
	}
}

func TestCupsAreInQuartersAndThirds(t *testing.T) {
	for ml, want := range map[float64]string{ // 21 CFR 101.9(b)(5)(i), (ix), by hand with a cup of 240 mL
		160: "2/3 cup", 120: "1/2 cup", 60: "1/4 cup", 80: "1/3 cup", 180: "3/4 cup", 240: "1 cup",
		70: "1/3 cup", 170: "3/4 cup", 140: "2/3 cup", 300: "1 1/4 cups", 480: "2 cups", 473: "2 cups", 10: "1/4 cup",
	} {
		assert.Equal(t, want, Cups(ml), "%v mL", ml)
	}
}

func TestDeclareRefusesWhatHasNoRule(t *testing.T) {
	_, err := Declare("vitamin_z", 1)
	require.EqualError(t, err, `label: no rounding rule is known for "vitamin_z"`)
	_, err = Declare("protein", -1)
	require.Error(t, err)
	_, err = Declare("percent_dv_trans_fat", 1) // there is no Daily Value
	require.Error(t, err)
}
