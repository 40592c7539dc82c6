package balance

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Milk whose lactose has come apart has one mol of glucose and one of galactose for each
// of lactose: so many more in its water lower the freezing point by 1.86 K a mol in the kg
// (the cryoscopic constant of water), on top of what salts and lactose do.
func TestLactoseFreeMilkFreezesColderBySoManyMols(t *testing.T) {
	m := models(t)
	of := func(id string) float64 {
		d := design.New()
		d.Dense.Lines = []design.Line{{Ingredient: id, Grams: 500}}
		d.Dense.StoveLossPercent = 0
		s, err := m.Sketch(d)
		require.NoError(t, err)
		return s.Phase(phase.Dense).Body.FreezingPointC
	}
	lactose := 5.05 / 342.3 / 0.08813 // mol in the kg of water
	want := 1.86 * lactose
	assert.InDelta(t, want, of("milk_whole")-of("lactose_free_milk"), 0.1*want)
}

// What few kitchens keep comes in where the wishes are not met without, and not before.
func TestWhatFewKitchensKeepComesInOnlyWhereItIsNeeded(t *testing.T) {
	m := models(t)
	d, _ := eightLevers(t)
	all := Locks{Lines: map[LineAt]bool{}, Settings: map[string]bool{"dense.overrun_percent": true, "blend.foam_volume_percent": true}}
	for _, p := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
		for i := range d.Lines(p) {
			all.Lines[LineAt{p, i}] = true
		}
	}
	delete(all.Lines, LineAt{design.DensePart, 0}) // the milk alone may move
	s, err := m.Sketch(d)
	require.NoError(t, err)
	sweet := CustardSweetness.of(&s, nil)
	ask := func(hard, sweeter float64) Ask {
		return Ask{Locks: all, Cautions: []string{}, Wishes: []Wish{
			{Of: CustardHardness, Low: hard * s.Phase(phase.Dense).State.YieldKPa, High: 1.01 * hard * s.Phase(phase.Dense).State.YieldKPa, Weight: 1, AtC: math.NaN()},
			{Of: CustardSweetness, Low: sweet + sweeter, High: sweet + sweeter + 0.2, Weight: 1, AtC: math.NaN()},
			{Of: CustardFat, Low: 0, High: 60, Weight: 1, AtC: math.NaN()},
		}}
	}
	brings := func(a *Answer) (ids []string) {
		for _, c := range a.Nearest.Changes {
			if c.Ingredient != nil && c.Before == 0 {
				ids = append(ids, c.Ingredient.ID)
			}
		}
		return ids
	}
	for _, c := range []struct {
		hard, sweeter float64
		needed        bool
	}{{0.6, 2, false}, {0.6, 4.2, true}} {
		a, err := Balance(background, m, d, ask(c.hard, c.sweeter))
		require.NoError(t, err)
		assert.True(t, a.Met, "%+v", a.Outcomes)
		came := brings(&a)
		t.Log(came)
		has := false
		for _, id := range came {
			for _, rare := range append(seldom[:], lactoseFree) {
				has = has || id == rare
			}
		}
		assert.Equal(t, c.needed, has, "%v", came)
	}
}
