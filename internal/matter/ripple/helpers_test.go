package ripple

import (
	"context"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
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
	return Settings{Tub: saltmarsh, View: v, FoamShare: 0.35, Layout: l, Strokes: strokes, Seed: seed}
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

// readTable reads a table of testdata/tables without its comment and heading.
// Columns that are not numbers become NaN.
func readTable(t *testing.T, name string) (words [][]string, numbers [][]float64) {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "..", "testdata", "tables", name))
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	words, err = r.ReadAll()
	require.NoError(t, err)
	words = words[1:]
	for _, row := range words {
		var n []float64
		for _, cell := range row {
			v, err := strconv.ParseFloat(cell, 64)
			if err != nil {
				v = math.NaN()
			}
			n = append(n, v)
		}
		numbers = append(numbers, n)
	}
	require.NotEmpty(t, numbers)
	return words, numbers
}
