package heat

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// row is one line of a table in testdata/tables, by column name.
type row map[string]string

func (r row) num(t testing.TB, column string) float64 {
	t.Helper()
	text, ok := r[column]
	require.True(t, ok, "no column %s", column)
	if text == "" || text == "NaN" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return v
}

func table(t testing.TB, name string) []row {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "tables", name+".csv"))
	require.NoError(t, err)
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	lines, err := r.ReadAll()
	require.NoError(t, err)
	var rows []row
	for _, line := range lines[1:] {
		one := row{}
		for i, column := range lines[0] {
			one[column] = line[i]
		}
		rows = append(rows, one)
	}
	require.NotEmpty(t, rows)
	return rows
}

// phase returns a test mix of phase_properties.csv, and the ice per water of
// its rows over temperature.
func phase(t testing.TB, name string) *Material {
	t.Helper()
	var temperature, u, k []float64
	for _, r := range table(t, "phase_properties") {
		if r["phase"] == name {
			temperature = append(temperature, r.num(t, "T_C"))
			u = append(u, 1e6*r.num(t, "u_MJ_m3"))
			k = append(k, r.num(t, "k_W_mK"))
		}
	}
	m, err := NewMaterial(temperature, u, k)
	require.NoError(t, err)
	return m
}

// pint is the tub of pint_reference.csv.
func pint(t testing.TB, nr, nz int) Mesh {
	t.Helper()
	m, err := Cylinder(0.0425, 0.0834, nr, nz)
	require.NoError(t, err)
	return m
}

// standing surrounds a tub with air at ta and the given overall coefficients.
func standing(ta, side, top, bottom float64) Surroundings {
	return Surroundings{Face{Ambient: ta, H: side}, Face{Ambient: ta, H: top}, Face{Ambient: ta, H: bottom}}
}
