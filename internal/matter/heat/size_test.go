package heat

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
)

// tubs are round ones as wide as high, and flat ones.
var tubs = []struct{ litres, height float64 }{{0.25, 0.068}, {2, 0.137}, {5, 0.12}, {20, 0.12}}

// Own finer mesh: 40 × 70 cells from 0.5 mm.
func TestATubsTimesHoldAtEverySize(t *testing.T) {
	if testing.Short() {
		t.Skip("the solver under other tests is the same")
	}
	for _, name := range []string{"custard", "foam 2:1"} {
		for _, tub := range tubs {
			radius := math.Sqrt(tub.litres * 1e-3 / math.Pi / tub.height)
			mesh, err := Tub(radius, tub.height)
			require.NoError(t, err)
			fine, err := Graded(radius, tub.height, 40, 70, 0.0005)
			require.NoError(t, err)
			for _, c := range []struct {
				what                   string
				start, seconds, target float64
				around                 Surroundings
				ring, slowest          float64
			}{
				{"tempering", -18, 6 * 3600, -12, counter, 0.01, 0.02},
				{"hardening", -5, 60 * 3600, -15, freezer, 0.005, 0.01},
			} {
				s, m, r, err := ComputedTimesS(phase(t, name), mesh, c.start, c.around, c.seconds, c.target)
				require.NoError(t, err)
				fs, fm, fr, err := ComputedTimesS(phase(t, name), fine, c.start, c.around, c.seconds, c.target)
				require.NoError(t, err)
				what := fmt.Sprintf("%s, %s, %g L: slowest %+.2f %%, mean %+.2f %%, ring %+.2f %%", name, c.what, tub.litres, 100*(s/fs-1), 100*(m/fm-1), 100*(r/fr-1))
				t.Log(what)
				assert.InEpsilon(t, fr, r, c.ring, what)
				assert.InEpsilon(t, fm, m, 0.005, what)
				assert.InEpsilon(t, fs, s, c.slowest, what)
			}
		}
	}
}

// heisler_series.csv: Incropera & DeWitt, ch. 5.
func TestTheSurfaceFollowsTheSeries(t *testing.T) {
	for _, r := range check.Table(t, "heisler_series") {
		for _, cells := range []int{10, 20, 40} {
			y, err := ComputedSurface(shapes[r.Text("shape")], r.Num("Bi"), r.Num("Fo"), cells)
			require.NoError(t, err)
			assert.InDelta(t, r.Num("Y_surface"), y, 1e-3*20/float64(cells), "%d cells, %v", cells, r)
		}
	}
}

// The surface's time must not be the mesh's: the mean of the outermost cell came
// 40 % late on the widest cells here.
func TestTheWallsTimeDoesNotDependOnTheRings(t *testing.T) {
	m := phase(t, "ripple70")
	mesh, err := Tub(0.0425, 0.0834)
	require.NoError(t, err)
	want, err := ComputedWallS(m, mesh, -18, counter, 6*3600, -6)
	require.NoError(t, err)
	for _, nr := range []int{10, 15, 30, 60, 120} {
		mesh, err := Cylinder(0.0425, 0.0834, nr, 30)
		require.NoError(t, err)
		at, err := ComputedWallS(m, mesh, -18, counter, 6*3600, -6)
		require.NoError(t, err)
		t.Logf("%d rings: %.1f s", nr, at)
		assert.InEpsilon(t, want, at, 0.015, "%d rings", nr)
	}
}

func TestAGradedMeshHoldsTheBodyAndAnEdgeAtTheRing(t *testing.T) {
	for _, radius := range []float64{0.02, 0.0425, 0.115, 0.23} {
		for _, nz := range []int{25, 26} {
			m, err := Graded(radius, 0.12, 15, nz, 0.00125)
			require.NoError(t, err)
			assert.InEpsilon(t, math.Pi*radius*radius*0.12, m.VolumeM3(), 1e-9)
			assert.InDelta(t, 0.00125, m.ring[15]-m.ring[14], 1e-9)
			assert.InDelta(t, 0.12, m.layer[nz], 1e-12)
			edge := math.Inf(1)
			for i, r := range m.ring {
				edge = min(edge, math.Abs(radius-r-RingWidth))
				assert.True(t, i == 0 || r > m.ring[i-1])
			}
			if radius >= 2*RingWidth {
				assert.Less(t, edge, 1e-9)
			}
		}
	}
}

func TestEvenlyReadsALineExactlyBetweenTheOutermostCentres(t *testing.T) {
	m, err := Tub(0.1, 0.12)
	require.NoError(t, err)
	nr, nz := m.Cells()
	field := make([]float64, nr*nz)
	for c := range field {
		r, z := m.CentreM(c%nr, c/nr)
		field[c] = 3*r - 5*z
	}
	inR, inZ := m.CentreM(0, 0)
	for c, got := range m.Evenly()(field) {
		r, z := 0.1*(float64(c%nr)+0.5)/float64(nr), 0.12*(float64(c/nr)+0.5)/float64(nz)
		r, z = max(r, inR), min(max(z, inZ), 0.12-inZ)
		assert.InDelta(t, 3*r-5*z, got, 1e-12)
	}
}
