package ripple

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"
)

// saltmarsh is the tub of the Saltmarsh Quay stall, a stall in a seaside town of our
// invention: 85 mm across and filled to 83 mm.
var saltmarsh = RoundTub(85, 83)

func settings(t testing.TB, v View, l Layout, motion string, n int, seed uint64) Settings {
	t.Helper()
	strokes, err := Sequence(motion, n, 0, 0)
	require.NoError(t, err)
	return Settings{Tub: saltmarsh, View: v, FoamFraction: 0.35, Layout: l, Strokes: strokes, Seed: seed}
}

func stir(t testing.TB, s Settings) *Cut {
	t.Helper()
	c, err := Stir(s)
	require.NoError(t, err)
	return c
}

func sample(t testing.TB, c *Cut, px int) *Raster {
	t.Helper()
	r, err := c.Raster(context.Background(), px, nil)
	require.NoError(t, err)
	return r
}
