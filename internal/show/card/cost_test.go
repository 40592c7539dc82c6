package card

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/food/price"
)

func TestTheCardSaysWhatTheDessertCostsWhereAPriceIsKnown(t *testing.T) {
	d := market.Plain()
	plain := contentOf(d, evaluated(t, d), Options{Region: label.US})
	assert.Empty(t, plain.cost)
	assert.NotContains(t, string(markdown(plain)), "What it costs")

	b := price.NewBook("€", []price.Pack{{Ingredient: "sugar", Price: 1.5, Grams: 1000}})
	r, err := model.New(market.Library(t)).Priced(b).Evaluate(d)
	require.NoError(t, err)
	c := contentOf(d, &r, Options{Region: label.US})
	for _, each := range []string{"at least € ", " for the batch", " a tub", " for 100 g", " a serving"} {
		assert.Contains(t, strings.ReplaceAll(c.cost, "\u00a0", " "), each)
	}
	text := string(markdown(c))
	assert.Contains(t, text, "## What it costs")
	assert.Contains(t, text, "VAT, work, tubs and power are not in it")
	blocks, fewer := figureBlocks(c, 100), figureBlocks(plain, 100)
	assert.Len(t, blocks, len(fewer)+1)
}
