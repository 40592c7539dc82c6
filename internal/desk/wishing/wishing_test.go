package wishing

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/check/market"
)

func TestWhatIsLeftOpenIsNotWishedFor(t *testing.T) {
	assert.Empty(t, Wishes{}.Ask(balance.Locks{}, cold.Default()).Wishes)
	a := Wishes{Custard: "soft", SweetFrom: At(14), KeepsIce: true, WholeEggs: true, Eggs: At(6)}.Ask(balance.Locks{}, cold.Default())
	require.Len(t, a.Wishes, 4)
	assert.True(t, math.IsInf(a.Wishes[1].High, 1))
	assert.Equal(t, [2]float64{6, 6}, [2]float64{a.Wishes[3].Low, a.Wishes[3].High})
	assert.Len(t, Wishes{Eggs: At(6)}.Ask(balance.Locks{}, cold.Default()).Wishes, 0, "eggs are not counted where they need not be whole")
	more := Wishes{Name: "frozen_custard", More: [MostMore]One{{balance.TubMinutes, End{}, At(8)}, {balance.CustardFreezes, At(-4), At(-2)}, {balance.TubCost, End{}, End{}}}}.Ask(balance.Locks{}, cold.Default())
	require.Len(t, more.Wishes, 3, "what has two open ends is no wish")
	assert.Equal(t, "frozen_custard", more.Wishes[0].Of.Standard.ID)
	assert.Equal(t, 8.0, more.Wishes[1].High)
	assert.Equal(t, [2]float64{-4, -2}, [2]float64{more.Wishes[2].Low, more.Wishes[2].High})
	none := Wishes{More: [MostMore]One{{balance.TubCost, End{}, At(0)}}}.Ask(balance.Locks{}, cold.Default())
	assert.Equal(t, 0.0, none.Wishes[0].High, "nothing is a value to wish for")
	assert.Equal(t, End{}, At(math.NaN()), "an emptied field leaves its end open")
	b := Wishes{SweetTo: At(16)}.Ask(balance.Locks{}, cold.Default())
	assert.Equal(t, [2]float64{math.Inf(-1), 16}, [2]float64{b.Wishes[0].Low, b.Wishes[0].High})
}

func TestWishesCountAsTheMakerSays(t *testing.T) {
	w := Wishes{Custard: "soft", Foam: "soft", SweetFrom: At(14), KeepsIce: true, WholeEggs: true, Eggs: At(6), Name: "frozen_custard", Adds: []string{"invert_syrup"}}
	w.More[0] = One{balance.TubMinutes, End{}, At(8)}
	for c := range NumCounts {
		w.Weight[c] = 2 + float64(c)
	}
	a := w.Ask(balance.Locks{}, cold.Default())
	require.Len(t, a.Wishes, 7)
	seen := map[float64]bool{}
	for _, x := range a.Wishes {
		assert.False(t, seen[x.Weight], "%s counts as another does", x.Of.Key)
		assert.GreaterOrEqual(t, x.Weight, 2.0)
		seen[x.Weight] = true
	}
	assert.Equal(t, 2+float64(CountEggs), a.EggsWeight)
	assert.Equal(t, 2+float64(CountPacks), a.PacksWeight)
	assert.Equal(t, 2+float64(CountCautions), a.CautionsWeight)
	assert.Equal(t, []string{"invert_syrup"}, a.Adds)
	for _, x := range (Wishes{Custard: "soft", KeepsIce: true}).Ask(balance.Locks{}, cold.Default()).Wishes {
		assert.Equal(t, 1.0, x.Weight)
	}
}

func TestPacksAndCautionsAreAskedForAsChosen(t *testing.T) {
	none := Wishes{}.Ask(balance.Locks{}, cold.Default())
	assert.Empty(t, none.Packs)
	assert.Nil(t, none.Cautions, "of none chosen all count")
	a := Wishes{Packs: []Pack{{"cream_heavy", 200}, {"milk_whole", 1030}, {"cream_heavy", 250}}, Cautions: []string{"too_sweet"}}.Ask(balance.Locks{}, cold.Default())
	assert.Equal(t, map[string]float64{"cream_heavy": 250, "milk_whole": 1030}, a.Packs, "what is chosen last of an ingredient counts")
	assert.Equal(t, []string{"too_sweet"}, a.Cautions)
}

func TestAnswersComeByPost(t *testing.T) {
	posted := make(chan func(), 10)
	var found *balance.Answer
	var likely *sure.Answer
	var spots []balance.Spot
	told := false
	f := New(func(f func()) { posted <- f },
		func(a balance.Answer, err error) { require.NoError(t, err); found = &a },
		func(a sure.Answer, err error) { require.NoError(t, err); likely = &a },
		func(a []balance.Spot, err error) { require.NoError(t, err); spots = a },
		func() { told = true })
	m, d := model.New(market.Library(t)), market.Demo(t)
	f.Find(m, d, Wishes{Custard: "scoopable"}.Ask(balance.Locks{}, cold.Default()))
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	f.Sample(m, d, &r, cold.Default(), nil)
	f.Blend(m, d, balance.Locks{})
	require.Eventually(t, func() bool {
		select {
		case f := <-posted:
			f()
		default:
		}
		return found != nil && likely != nil && spots != nil
	}, 60*time.Second, time.Millisecond)
	assert.True(t, found.Met)
	f.Compare(found, d, &r, cold.Default())
	require.Eventually(t, func() bool {
		select {
		case f := <-posted:
			f()
		default:
		}
		return told
	}, 60*time.Second, time.Millisecond)
	for _, p := range found.All() {
		require.NotNil(t, p.Beside)
	}
	assert.Positive(t, likely.Kitchens)
	assert.False(t, math.IsNaN(likely.Spread[sure.Minutes].Middle), "the minutes are not sampled")
}
