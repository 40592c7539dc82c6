package ice

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tub is an invented history of a hardening core.
var tub = []Moment{{0, -5.3}, {120, -8}, {252, -10}, {450, -15}, {630, -17}, {960, -17.9}}

func at(path []Moment, minute float64) float64 {
	for i := 1; i < len(path); i++ {
		if a, b := path[i-1], path[i]; minute <= b.AtMinutes {
			return a.C + (minute-a.AtMinutes)/(b.AtMinutes-a.AtMinutes)*(b.C-a.C)
		}
	}
	return path[len(path)-1].C
}

func halves(path []Moment, minute float64) (a, b []Moment) {
	here := Moment{minute, at(path, minute)}
	for _, m := range path {
		if m.AtMinutes < minute {
			a = append(a, m)
		} else if m.AtMinutes > minute {
			b = append(b, m)
		}
	}
	return append(a, here), append([]Moment{here}, b...)
}

func TestAPathInTwoHalvesIsThePathInOne(t *testing.T) {
	l := Of(custard(), 1)
	const y = 30 * 30 * 30
	for minute := 10.0; minute < 950; minute += 37 {
		a, b := halves(tub, minute)
		assert.InEpsilon(t, l.StillUM3(y, tub), l.StillUM3(l.StillUM3(y, a), b), 2e-3, "%g min", minute)
		assert.InEpsilon(t, l.BeatenUM3(y, 1, tub), l.BeatenUM3(l.BeatenUM3(y, 1, a), 1, b), 2e-3, "%g min", minute)
	}
	for _, m := range tub[1 : len(tub)-1] { // at a point of its own, to rounding
		a, b := halves(tub, m.AtMinutes)
		assert.InEpsilon(t, l.StillUM3(y, tub), l.StillUM3(l.StillUM3(y, a), b), 1e-12)
	}
}

// The obvious slow way: dy/dt = (y/x) dx/dt + rate in 200 000 explicit steps.
func TestHardeningIsItsEquation(t *testing.T) {
	l := Of(custard(), 1)
	const n = 200_000
	y := 20.0 * 20 * 20
	end := tub[len(tub)-1].AtMinutes
	was := l.State(tub[0].C)
	for i := 1; i <= n; i++ {
		now := l.State(at(tub, end*float64(i)/n))
		y += y/was.IceFraction*(now.IceFraction-was.IceFraction) + (was.UM3PerDay+now.UM3PerDay)/2*end/n/1440
		was = now
	}
	assert.InEpsilon(t, y, l.StillUM3(20*20*20, tub), 2e-3)
}

func TestNothingEverShrinks(t *testing.T) {
	for i, b := range recipes(30) {
		l := Of(b, 1)
		y := 15.0 * 15 * 15
		for _, path := range [][]Moment{tub, {{0, -18}, {60, -6}, {400, -18}}, {{0, -18}, {30, 2}, {90, -18}}, {{0, -20}, {0, -10}, {10, -20}}} {
			last := y
			for k := 1; k < len(path); k++ {
				now := l.StillUM3(last, path[k-1:k+1])
				assert.GreaterOrEqual(t, now, last-1e-9, "recipe %d", i)
				assert.GreaterOrEqual(t, l.BeatenUM3(last, 1, path[k-1:k+1]), last)
				last = now
			}
		}
	}
}

func TestAnEarlierLastBeatNeverMakesItFiner(t *testing.T) {
	for i, b := range append(recipes(30), custard()) {
		l := Of(b, 1)
		c, ok := l.Cool(200, -30)
		if !ok {
			continue
		}
		last := 0.0
		for k := len(c.Path) - 1; k >= 1; k -= 7 {
			y := l.StillUM3(l.BeatenUM3(3375, 1, c.Path[:k+1]), c.Path[k:])
			assert.GreaterOrEqual(t, y, last*(1-1e-6), "recipe %d", i)
			last = y
		}
	}
}

func TestALongerMushNeverMakesItFiner(t *testing.T) {
	l := Of(custard(), 1)
	last := 0.0
	for minutes := 10.0; minutes < 600; minutes *= 1.3 {
		c, ok := l.Cool(minutes, -18)
		require.True(t, ok)
		assert.Less(t, c.MushMinutes, minutes)
		y := l.BeatenUM3(3375, 1, c.Path)
		assert.Greater(t, y, last)
		last = y
	}
	_, ok := l.Cool(100, -5)
	assert.False(t, ok, "half of its water never freezes there")
}

func TestALargerSwingNeverMakesItFiner(t *testing.T) {
	for i, b := range append(recipes(40), custard()) {
		l := Of(b, 1)
		for _, stored := range []float64{-30, -24, -18, -14, -12} {
			if stored+6 > l.FreezingPointC()-0.5 {
				continue // it melts: another thing
			}
			last := l.UM3PerDay(stored) * (1 - 1e-3)
			for a := 0.0; a <= 6; a += 0.25 {
				rate := l.StoredUM3PerDay(stored, a)
				assert.GreaterOrEqual(t, rate, last*(1-1e-6), "recipe %d at %g ± %g", i, stored, a)
				last = rate
			}
		}
	}
}

// The mean over a sine, point by point.
func TestASwingIsTheMeanOverASine(t *testing.T) {
	l := Of(custard(), 1)
	for _, a := range []float64{1, 3, 5} {
		sum := 0.0
		const n = 4000
		for i := range n {
			sum += l.UM3PerDay(-18 + a*math.Sin(2*math.Pi*float64(i)/n))
		}
		want := sum / n * math.Min(1.3, 1+0.012*a*a)
		assert.InEpsilon(t, want, l.StoredUM3PerDay(-18, a), 2e-3)
	}
}

// Half an hour at −12 °C adds 290 µm³ to a place stored at −18 °C: a quarter of a
// day (worked by hand from the two rates).
func TestASpellInTheWarm(t *testing.T) {
	l := Of(custard(), 1)
	got := l.ExtraUM3(-18, []Moment{{0, -12}, {30, -12}})
	assert.InEpsilon(t, (l.UM3PerDay(-12)-l.UM3PerDay(-18))*30/1440, got, 1e-3)
	assert.InDelta(t, 290, got, 3)
	assert.Zero(t, l.ExtraUM3(-18, []Moment{{0, -18}, {30, -18}}))
}

func TestAThawWithinATenthOfTheIceCostsNothing(t *testing.T) {
	l := Of(custard(), 1)
	middle, least, most, ok := l.ThawedFactor(-18, -12.5)
	assert.True(t, ok && middle == 1 && least == 1 && most == 1)
	last := 1.0
	for at := -12.0; at < -2.7; at += 0.25 {
		middle, least, most, ok = l.ThawedFactor(-18, at)
		assert.True(t, ok)
		assert.GreaterOrEqual(t, middle, last)
		assert.True(t, least <= middle && middle <= most)
		last = middle
	}
	_, _, _, ok = l.ThawedFactor(-18, -1)
	assert.False(t, ok, "all of it melts")
}

func BenchmarkStill(b *testing.B) {
	l := Of(custard(), 1)
	for i := 0; i < b.N; i++ {
		l.StillUM3(8000, tub)
	}
}

func BenchmarkStored(b *testing.B) {
	l := Of(custard(), 1)
	for i := 0; i < b.N; i++ {
		l.StoredUM3PerDay(-18, 3)
	}
}
