package ui

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/desk/places"
)

func TestTheBenchCutsItsTubOnlyWhereItIsSeenAndOnlyGoodDesigns(t *testing.T) {
	b := newBed(t)
	c := b.bench.tub.cut
	require.True(t, b.happens(func() bool { return c.shown.Cut != nil }))
	first := c.shown.Cut

	b.turnTo(places.Figures)
	asked := c.asked
	d := b.Design()
	d.Blend.Strokes++
	b.Commit(d, "strokes")
	b.frame()
	require.Equal(t, asked, c.asked, "nobody sees the bench")
	b.turnTo(places.Bench)
	require.NotEqual(t, asked, c.asked)
	require.True(t, b.happens(func() bool { return c.shown.Cut != first }))

	good := d
	d.Blend.DenseColour = "brownish"
	b.Preview(d)
	b.frame()
	require.Nil(t, c.shown.Cut)
	b.Preview(good)
	require.True(t, b.happens(func() bool { return c.shown.Cut != nil }))
}
