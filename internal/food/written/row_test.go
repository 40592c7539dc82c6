package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// The head of a table says what its bare numbers are; few eggs may be pieces all the same.
func TestATableOfGramsIsNotOneOfPieces(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, head := range []string{"Ingredient\tGrams", "Item\tWeight (g)", "Name\tg"} {
		got := r.Read(head + "\nwhole milk\t500\negg yolks\t120\nsugar\t90,5\negg whites\t6\n")
		require.Len(t, got, 4, head)
		for i, grams := range []float64{500, 120, 90.5} {
			require.True(t, got[i].Taken(), got[i].Text)
			assert.InDelta(t, grams, got[i].Grams.Value, 1e-9, got[i].Text)
		}
		assert.False(t, got[3].Taken(), "six whites, or 6 g")
	}
	for _, text := range []string{"egg yolks\t120", "120 egg yolks", "egg whites: 165"} {
		l, _ := r.Line(text)
		assert.Equal(t, written.PiecesOrGrams, l.Doubt, text)
	}
	l, _ := r.Line("36 egg yolks")
	assert.True(t, l.Taken())
}

// "1. 5 tsp" alone is the first line of a list, or one and a half.
func TestAPointAndABlankMayBeADecimalPoint(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	got := r.Read("100 g sugar\n1. 5 tsp salt\n")
	require.Len(t, got, 2)
	assert.True(t, got[0].Taken())
	assert.False(t, got[1].Taken())
	for _, l := range r.Read("1. 5 tsp salt\n2. 100 g sugar\n") {
		assert.True(t, l.Taken(), l.Text)
	}
}
