package balance

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// exactly wishes for the figure that s has.
func exactly(q *Quantity, s *model.Sketch) Wish {
	w := Wish{Of: q, Weight: 1, AtC: math.NaN()}
	w.Low = w.Value(s)
	w.High = w.Low
	return w
}

// keepOnly locks all of d but two or three things, so that what is left can be
// enumerated.
func keepOnly(p *problem, r *rand.Rand, n int) {
	var levers []Lever
	var at []float64
	for _, i := range r.Perm(len(p.levers))[:n] {
		levers, at = append(levers, p.levers[i]), append(at, p.at[i])
	}
	p.levers, p.at = levers, at
}

// enumerate returns the least objective on a grid of so many values a lever,
// whole ones where the lever is whole.
func enumerate(p *problem, steps int, all []int) float64 {
	x := append([]float64(nil), p.at...)
	best := math.Inf(1)
	var walk func(i int)
	walk = func(i int) {
		if i == len(x) {
			best = math.Min(best, p.objective(x, all))
			return
		}
		l := &p.levers[i]
		if l.Whole > 0 {
			for v := l.Whole * math.Ceil(l.Low/l.Whole); v <= l.High; v += l.Whole {
				x[i] = v
				walk(i + 1)
			}
			return
		}
		for k := range steps {
			x[i] = l.Low + (l.High-l.Low)*float64(k)/float64(steps-1)
			walk(i + 1)
		}
	}
	walk(0)
	return best
}

func TestNoGridIsBetter(t *testing.T) {
	m, r := models(t), rand.New(rand.NewSource(11))
	wishes := []*Quantity{CustardHardness, CustardSweetness, FoamFreezes, TubSweetness, CustardFat}
	worst, whole := 0.0, 0
	for n := range 30 {
		d, _ := good(m, r)
		d = d.WithLine(design.DensePart, 2, design.Line{Ingredient: "egg_yolk", Count: float64(4 + r.Intn(3)), CountOf: design.Yolks})
		s, err := m.Sketch(d)
		require.NoError(t, err)
		ask := Ask{}
		for _, k := range r.Perm(len(wishes))[:2] {
			w := exactly(wishes[k], &s)
			by := 0.85 + 0.3*r.Float64()
			w.Low, w.High = w.Low*by, w.High*by
			ask.Wishes = append(ask.Wishes, w)
		}
		p, err := problemOf(m, d, &ask, false)
		require.NoError(t, err)
		levers, steps := 2, 41
		if n%5 == 0 {
			levers, steps = 3, 13
		}
		keepOnly(p, r, levers)
		all := make([]int, len(p.levers))
		for i := range all {
			all[i] = i
			if p.levers[i].Whole > 0 {
				whole++
			}
		}
		b := balancer{problem: p, before: d, had: map[string]bool{}}
		x, _ := b.search(background, nil, scattered)
		found, grid := p.objective(x, all), enumerate(p, steps, all)
		worst = math.Max(worst, found/grid)
		assert.LessOrEqual(t, found, 1.01*grid+1e-9, "%d: levers %+v", n, p.levers)
	}
	assert.Positive(t, whole, "no whole lever was tried")
	t.Logf("at worst %.4f of the grid's best", worst)
}

// eightLevers is a problem of eight levers, whole eggs among them, and five
// wishes.
func eightLevers(t testing.TB) (design.Design, Ask) {
	d := design.New()
	d.Serving.TemperatureC = -14
	d.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: 420}, {Ingredient: "cream_heavy", Grams: 180}, {Ingredient: "egg_yolk", Grams: 90}, {Ingredient: "sugar", Grams: 95},
	}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 165}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 180}, {Ingredient: "water", Grams: 60}}
	nan := math.NaN()
	return d, Ask{
		WholeEggs: true, NoSwaps: true,
		Locks: Locks{Settings: map[string]bool{"foam.syrup.cook_temperature_c": true, "foam.overrun_percent": true}},
		Wishes: []Wish{
			{Of: CustardHardness, Low: 2, High: 4, Weight: 1, AtC: -14}, {Of: CustardSweetness, Low: 15, High: 16, Weight: 1, AtC: nan},
			{Of: CustardFat, Low: 12, High: 13, Weight: 1, AtC: nan}, {Of: EggsCracked, Low: 6, High: 6, Weight: 1, AtC: nan}, KeepsIce(model.HomeFreezerC),
		},
	}
}

func TestEggsAreWholeInWhatIsMade(t *testing.T) {
	m := models(t)
	d, ask := eightLevers(t)
	a, err := Balance(background, m, d, ask)
	require.NoError(t, err)
	r := a.Nearest.Result
	assert.InDelta(t, math.Round(r.Eggs.Yolks), r.Eggs.Yolks, 0.03)
	assert.InDelta(t, math.Round(r.Eggs.Whites), r.Eggs.Whites, 0.03)
	for _, o := range a.Outcomes {
		t.Log(o.Wish.Of.Key, o.Wish.Low, o.Wish.High, o.Value, o.Met)
	}
	t.Log(r.Eggs, a.Met, a.Nearest.Changes, a.Cautions)
	for _, c := range a.Conflicts {
		t.Log(c.Wish.Of.Key, c.Nearest, c.Against, c.Alone, c.Cautions)
		for _, x := range c.Trade {
			t.Log(x.Value, x.Against)
		}
	}
}

func TestWhatPullsApartIsNamed(t *testing.T) {
	m := models(t)
	d, _ := eightLevers(t)
	d.Serving.TemperatureC = -18
	nan := math.NaN()
	a, err := Balance(background, m, d, Ask{NoSwaps: true, Locks: Locks{Settings: map[string]bool{"dense.overrun_percent": true}}, Wishes: []Wish{
		{Of: CustardHardness, Low: 1, High: 2, Weight: 1, AtC: -18}, {Of: CustardSweetness, Low: 11, High: 12, Weight: 1, AtC: nan},
	}})
	require.NoError(t, err)
	require.False(t, a.Met)
	for _, c := range a.Conflicts {
		t.Log(c.Wish.Of.Key, c.Nearest, c.Against, c.Alone, c.Cautions)
		for _, x := range c.Trade {
			t.Log(x.Value, x.Against)
		}
	}
	require.NotEmpty(t, a.Conflicts)
	met := [2]bool{} // one way out keeps the one wish, another the other
	for _, x := range a.Alternatives {
		for i, o := range x.Outcomes {
			met[i] = met[i] || o.Met
		}
		assert.NotEmpty(t, x.Changes)
	}
	assert.Equal(t, [2]bool{true, true}, met, "%d alternatives", len(a.Alternatives))
	for _, c := range a.Conflicts {
		require.Len(t, c.Against, 1)
		require.NotEmpty(t, c.Trade)
		for i := 1; i < len(c.Trade); i++ {
			w, o := c.Wish, a.Outcomes[c.Against[0]].Wish
			assert.LessOrEqual(t, math.Abs(w.miss(c.Trade[i].Value)), math.Abs(w.miss(c.Trade[i-1].Value))+0.05)
			assert.GreaterOrEqual(t, math.Abs(o.miss(c.Trade[i].Against[0])), math.Abs(o.miss(c.Trade[i-1].Against[0]))-0.05, "what one gains the other loses")
		}
	}
}

// A wish that pulls against two others has a curve for each of the pairs.
func TestEveryOpposingPairHasItsCurve(t *testing.T) {
	m := models(t)
	d, _ := eightLevers(t)
	d.Serving.TemperatureC = -18
	nan := math.NaN()
	a, err := Balance(background, m, d, Ask{NoSwaps: true, Locks: Locks{Settings: map[string]bool{"dense.overrun_percent": true}}, Wishes: []Wish{
		{Of: CustardHardness, Low: 1, High: 2, Weight: 1, AtC: -18}, {Of: CustardSweetness, Low: 11, High: 12, Weight: 3, AtC: nan}, {Of: CustardSolids, Low: 30, High: 31, Weight: 3, AtC: nan},
	}})
	require.NoError(t, err)
	require.False(t, a.Met)
	pairs := 0
	for _, c := range a.Conflicts {
		for _, p := range c.Trade {
			require.Len(t, p.Against, len(c.Against))
		}
		if len(c.Trade) > 1 {
			pairs += len(c.Against)
		}
	}
	assert.GreaterOrEqual(t, pairs, 2)
	for i, x := range a.Alternatives {
		for _, y := range a.Alternatives[:i] {
			assert.False(t, sameMoves(x.Changes, y.Changes) && sameMet(x.Outcomes, y.Outcomes) && x.Result.Dense.State.YieldKPa == y.Result.Dense.State.YieldKPa, "an alternative stands there twice")
		}
	}
}

func BenchmarkEightLeversFiveWishesWholeEggs(b *testing.B) {
	m := models(b)
	d, ask := eightLevers(b)
	b.ResetTimer()
	began := used(b)
	defer func() { b.ReportMetric(1e3*(used(b)-began).Seconds()/float64(b.N), "cpu-ms/op") }()
	for range b.N {
		if _, err := Balance(background, m, d, ask); err != nil {
			b.Fatal(err)
		}
	}
}
