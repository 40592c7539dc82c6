package balance

import (
	"math"
	"math/rand"
	"testing"
	"time"

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

// perturbed moves what a search may move.
func perturbed(d design.Design, r *rand.Rand) design.Design {
	by := func() float64 { return 0.75 + 0.5*r.Float64() }
	for _, p := range [...]design.Part{design.DensePart, design.SyrupPart} {
		for i, l := range d.Lines(p) {
			if l.Ingredient == "sugar" || l.Ingredient == "milk_whole" || l.Ingredient == "cream_heavy" || l.Ingredient == "dextrose_monohydrate" {
				d = d.WithGrams(p, i, l.Grams*by())
			}
		}
	}
	d.Foam.OverrunPercent *= by()
	return d
}

func roundTrip(t testing.TB, n int) (met int, longest time.Duration) {
	m, r := models(t), rand.New(rand.NewSource(5))
	wishes := []*Quantity{CustardHardness, CustardSweetness, FoamFreezes, TubSweetness, CustardFat, FoamHardness, CustardFreezes, CustardSolids, FoamSweetness}
	for range n {
		d := good(t, m, r)
		d.Serving.TemperatureC = -13
		s, err := m.Sketch(d)
		require.NoError(t, err)
		var ask Ask
		for _, k := range r.Perm(len(wishes))[:4] {
			ask.Wishes = append(ask.Wishes, exactly(wishes[k], &s))
		}
		from := perturbed(d, r)
		began := time.Now()
		a, err := Balance(background, m, from, ask)
		require.NoError(t, err)
		longest = max(longest, time.Since(began))
		ok := true
		for _, o := range a.Outcomes {
			ok = ok && o.Met
		}
		if ok {
			met++
		} else if v, is := t.(*testing.T); is {
			for _, o := range a.Outcomes {
				v.Logf("%s want %.4g has %.4g %v", o.Wish.Of.Key, o.Wish.Low, o.Value, o.Met)
			}
			v.Log(a.Cautions)
		}
	}
	return met, longest
}

func TestADesignsOwnFiguresAreFoundAgain(t *testing.T) {
	const n = 100
	met, longest := roundTrip(t, n)
	t.Logf("%d of %d met; longest %v", met, n, longest)
	assert.GreaterOrEqual(t, float64(met), 0.99*n)
}
