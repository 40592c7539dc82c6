package basket_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/shop"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/basket"
	"ripplewright/internal/work/designfile"
)

func TestABasketHoldsTheOpenDesignAndOthersInBatches(t *testing.T) {
	m := model.New(market.Library(t))
	path := filepath.Join(t.TempDir(), "honey.yaml")
	_, err := designfile.Save(path, nil, market.Honey(), designfile.SaveOptions{})
	require.NoError(t, err)
	d := market.Plain()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	need := func(b *basket.Basket, id string) float64 {
		l, _, err := b.List(m, "", d, &r)
		require.NoError(t, err)
		for _, it := range l.Items {
			if it.Ingredient.ID == id {
				return it.NeedG
			}
		}
		return 0
	}
	var b basket.Basket
	assert.Equal(t, 1, b.Batches())
	once := need(&b, "milk_whole")
	b.SetBatches(3)
	assert.InEpsilon(t, 3*once, need(&b, "milk_whole"), 1e-12)
	assert.Zero(t, need(&b, "honey"))

	require.NoError(t, b.Add(path, m))
	assert.Positive(t, need(&b, "honey"))
	honey := need(&b, "honey")
	b.SetOther(0, 2)
	assert.InEpsilon(t, 2*honey, need(&b, "honey"), 1e-12)
	_, list, err := b.List(m, "", d, &r)
	require.NoError(t, err)
	var text strings.Builder
	require.NoError(t, list.WriteMarkdown(&text))
	assert.Contains(t, text.String(), "3 batches of Quay custard")
	assert.Contains(t, text.String(), "2 batches of Burnt honey")
	b.Remove(0)
	assert.Zero(t, need(&b, "honey"))

	for n, want := range map[int]int{0: 1, -4: 1, shop.MostBatches + 1: shop.MostBatches} {
		b.SetBatches(n)
		assert.Equal(t, want, b.Batches())
	}
}

func TestAFileThatIsNoDesignStaysOut(t *testing.T) {
	m := model.New(market.Library(t))
	path := filepath.Join(t.TempDir(), "list.yaml")
	require.NoError(t, os.WriteFile(path, []byte("ripplewright: 1\ndense: {lines: [{ingredient: moonmilk, grams: 3}]}\nfoam: {}\n"), 0o644))
	var b basket.Basket
	require.ErrorContains(t, b.Add(path, m), "moonmilk")
	require.Error(t, b.Add(filepath.Join(t.TempDir(), "gone.yaml"), m))
	assert.Empty(t, b.Others())
}
