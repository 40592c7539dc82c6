package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// What is sold by the piece weighs what its record says of one, and a fruit that of the very
// size: USDA SR28, NDB 18175 (ladyfingers), 18272 (sugar cones), 19116 (marshmallows), 09003
// (apples), 09040 (bananas), 09236 (peaches) and 09316 (strawberries).
func TestAPieceIsTheRecordsOwn(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string]float64{
		"20 ladyfingers": 220, "sugar cones - 200 pcs": 2000, "20 marshmallows": 144, "2 large apples, peeled & diced": 446, "6 med. peaches, peeled + mashed": 900, "2 extra large bananas": 304,
		"4 medium bananas, frozen": 472, "12 large strawberries": 216, "1/2 large apple": 111.5, "2 large apples (about 500 g)": 500, "24 ladyfingers (200 g)": 200, "24 ladyfingers (10 g each)": 240,
	} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 1e-9, text)
	}
	for _, text := range []string{
		"20 mini marshmallows", "20 large marshmallows", "200 ladyfingers", "30 jumbo ladyfingers", "1 packet ladyfingers", "6 waffle cones", "15 chocolate sandwich cookies", "2 small sugar cones", "3 ripe mangoes", "2 large mangoes",
		"10 passion fruit", "8 dried figs", "2 small boxes raisins", "2-3 large apples", "2 large apples, dried", "2 large apples (200 g)", "2 medium bananas (3 cups)", "2 medium or large apples", "12 large strawberries, candied",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.False(t, l.Taken(), text)
	}
	all := r.Read("Ingredient\tg\nSugar\t100\nLadyfingers\t12")
	assert.False(t, all[len(all)-1].Taken(), "twelve, or 12 g")
}

// A part of a fruit is asked about, and offered as itself.
func TestAPartOfAFruitIsOffered(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, id := range map[string]string{"1 lemon, just the zest": "lemon_peel", "finely grated rind of 2 lemons": "lemon_peel", "2 oranges, juice only": "orange_juice", "juice of half a lemon": "lemon_juice", "1 lemon, juice and zest": "lemon_juice"} {
		l, _ := r.Line(text)
		assert.False(t, l.Taken(), text)
		if assert.NotEmpty(t, l.Meanings, text) {
			assert.Equal(t, id, l.Meanings[0], text)
		}
	}
}
