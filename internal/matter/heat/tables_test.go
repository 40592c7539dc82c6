package heat

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
)

// phase returns a test mix of phase_properties.csv, and the ice per water of
// its rows over temperature.
func phase(t testing.TB, name string) *Material {
	t.Helper()
	var temperature, u, k []float64
	for _, r := range check.Table(t, "phase_properties") {
		if r.Text("phase") == name {
			temperature = append(temperature, r.Num("T_C"))
			u = append(u, 1e6*r.Num("u_MJ_m3"))
			k = append(k, r.Num("k_W_mK"))
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
	return Surroundings{Face{AmbientC: ta, WPerM2K: side}, Face{AmbientC: ta, WPerM2K: top}, Face{AmbientC: ta, WPerM2K: bottom}}
}

// everywhere surrounds a body with f on all sides.
func everywhere(f Face) Surroundings { return Surroundings{f, f, f} }
