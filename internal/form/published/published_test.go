package published

import (
	"math"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func files(text string) fstest.MapFS {
	return fstest.MapFS{"tables/quay.csv": {Data: []byte(text)}}
}

func TestARowIsReadByItsColumns(t *testing.T) {
	rows, err := Read(files("# Saltmarsh Quay, a tide table of our invention\nat,level\nnoon,3.35\n# low\ndusk,\n"), "quay")
	require.NoError(t, err)
	require.Len(t, rows, 2)
	at, err := rows[1].Text("at")
	require.NoError(t, err)
	assert.Equal(t, "dusk", at)
	level, err := rows[0].Number("level")
	require.NoError(t, err)
	assert.Equal(t, 3.35, level)
	none, err := rows[1].Number("level")
	require.NoError(t, err)
	assert.True(t, math.IsNaN(none), "an empty cell is unknown, not zero")
	assert.Equal(t, "quay.csv:5", rows[1].String())

	_, err = rows[0].Number("height")
	require.EqualError(t, err, `quay.csv:3: no column "height"`)
	_, err = rows[0].Number("at")
	require.ErrorContains(t, err, `quay.csv:3: column "at"`)
}

func TestATableWithoutRowsIsAnError(t *testing.T) {
	for _, text := range []string{"", "# nothing\n", "at,level\n", "at,level\nnoon\n"} {
		_, err := Read(files(text), "quay")
		require.ErrorContains(t, err, "quay.csv", "%q", text)
	}
	_, err := Read(files(""), "harbour")
	require.Error(t, err)
}

func TestTheLastDigitIsThatWhichIsPrinted(t *testing.T) {
	for text, want := range map[string]float64{
		"3.35": 0.01, "3.30": 0.01, "-18": 1, "300": 1, "0.0070": 1e-4, "0.353658941e4": 1e-5, "1.2E-3": 1e-4, " 4.5 ": 0.1, "7.": 1,
	} {
		got, err := LastDigit(text)
		require.NoError(t, err)
		assert.InEpsilon(t, want, got, 1e-12, text)
	}
	for _, text := range []string{"", "about 3", "1e", "12 %"} {
		_, err := LastDigit(text)
		require.Error(t, err, "%q", text)
	}
}
