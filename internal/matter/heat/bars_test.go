package heat

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
)

func neumann(t testing.TB, r check.Row) (Neumann, NeumannFront) {
	n := Neumann{
		SolidWPerMK: r.Num("ks_W_mK"), LiquidWPerMK: r.Num("kl_W_mK"), SolidJPerM3K: r.Num("cs_J_m3K"), LiquidJPerM3K: r.Num("cl_J_m3K"),
		LatentJPerM3: r.Num("L_J_m3"), MeltingC: r.Num("Tf_C"), StartC: r.Num("T0_C"), FaceC: r.Num("Ts_C"),
	}
	f, err := n.Solve()
	require.NoError(t, err)
	return n, f
}

// stefan_neumann.csv: Carslaw & Jaeger 1959, ch. XI; printed digits.
func TestNeumannSolutionReproducesItsTable(t *testing.T) {
	for _, r := range check.Table(t, "stefan_neumann") {
		_, f := neumann(t, r)
		at := r.Num("t_s")
		r.Printed(f.Lambda, "lambda")
		r.Printed(1e3*f.PositionM(at), "front_mm")
		r.Printed(f.TemperatureC(0.005, at), "T_5mm_C")
		r.Printed(f.TemperatureC(0.020, at), "T_20mm_C")
		r.Printed(f.TemperatureC(0.060, at), "T_60mm_C")
	}
}

// Source: Carslaw & Jaeger 1959, ch. XI. The front crosses a 4 mm cell in
// jumps, so cases where it has crossed few cells are held on finer ones.
func TestFreezingFrontFollowsNeumannWithin0_1Percent(t *testing.T) {
	if testing.Short() {
		t.Skip("the solver under other tests is the same")
	}
	for _, r := range check.Table(t, "stefan_neumann") {
		for _, cells := range []int{50, 400} {
			if cells == 50 && r.Text("case") != "1" || r.Text("t_s") != "7200" {
				continue
			}
			n, exact := neumann(t, r)
			front, _, err := ComputedFrontM(n, 0.200, cells, 7200)
			require.NoError(t, err)
			want := exact.PositionM(7200)
			t.Logf("case %s, %d cells: front %.4f mm, exact %.4f: %+.3f %%", r.Text("case"), cells, 1e3*front, 1e3*want, 100*(front/want-1))
			assert.InEpsilon(t, want, front, 1e-3)
		}
	}
}

// Source: Carslaw & Jaeger 1959, ch. XI.
func TestFreezingTemperatureFollowsNeumannWithin0_1K(t *testing.T) {
	for _, r := range check.Table(t, "stefan_neumann") {
		if r.Text("t_s") != "7200" || r.Text("case") != "1" {
			continue
		}
		n, exact := neumann(t, r)
		_, temperature, err := ComputedFrontM(n, 0.200, 100, 7200)
		require.NoError(t, err)
		worst := 0.0
		for j, got := range temperature {
			worst = max(worst, math.Abs(got-exact.TemperatureC((float64(j)+0.5)*0.002, 7200)))
		}
		t.Logf("worst %.4f K", worst)
		assert.Less(t, worst, 0.1)
	}
}

var shapes = map[string]Shape{"slab": PlaneWall, "cylinder": LongCylinder, "sphere": Ball}

// heisler_series.csv: Incropera & DeWitt, ch. 5.
func TestSeriesReproducesItsTableTo1e_7(t *testing.T) {
	for _, r := range check.Table(t, "heisler_series") {
		s, err := NewSeries(shapes[r.Text("shape")], r.Num("Bi"))
		require.NoError(t, err)
		fo := r.Num("Fo")
		r.Printed(s.beta[0], "first_eigenvalue")
		r.Printed(s.At(0, fo), "Y_centre")
		r.Printed(s.At(1, fo), "Y_surface")
		r.Printed(s.Mean(fo), "Y_mean")
	}
}

// plain is a material of constant properties: k 1 W/(m K), c 1 MJ/(m³ K).
func plain(t testing.TB) *Material {
	m, err := NewMaterial([]float64{-1, 101}, []float64{-1e6, 101e6}, []float64{1, 1})
	require.NoError(t, err)
	return m
}

// Incropera & DeWitt, ch. 5, for Bi 0.1–10 and Fo 0.1–2.
func TestSolverMeanMatchesSeriesTo5e_4With20Cells(t *testing.T) {
	worst := 0.0
	for _, r := range check.Table(t, "heisler_series") {
		y, err := ComputedMean(shapes[r.Text("shape")], r.Num("Bi"), r.Num("Fo"), 20)
		require.NoError(t, err)
		worst = max(worst, math.Abs(y-r.Num("Y_mean")))
		assert.InDelta(t, r.Num("Y_mean"), y, 5e-4, "%v", r)
	}
	t.Logf("worst %.1e", worst)
}

func TestSolverMeanOfAFiniteCylinderIsTheProductOfTwoSeries(t *testing.T) {
	m := plain(t)
	for _, bi := range []float64{0.3, 1, 5} {
		const radius, height = 0.05, 0.12
		want, err := finiteCylinderMean(bi, 0.3, bi*height/2/radius, 0.3*math.Pow(radius/(height/2), 2))
		require.NoError(t, err)
		mesh, err := Cylinder(radius, height, 20, 40)
		require.NoError(t, err)
		out, err := Solve(context.Background(), Problem{Material: m, Mesh: mesh, StartC: 100,
			Segments: []Segment{{0.3 * radius * radius * 1e6, everywhere(Face{WPerM2K: bi / radius})}}}, Options{})
		require.NoError(t, err)
		assert.InDelta(t, want, out.Track[len(out.Track)-1].OfC(Mean)/100, 5e-4)
	}
}

// pintRow runs one row of pint_reference.csv.
func pintRow(t testing.TB, r check.Row, nr, nz int, o Options) Result {
	t0, ta := r.Num("T0_C"), r.Num("Tamb_C")
	slowest := Hottest
	if ta > t0 {
		slowest = Coldest
	}
	at := r.Num("target_C")
	out, err := Solve(context.Background(), Problem{
		Material: phase(t, r.Text("phase")), Mesh: pint(t, nr, nz), StartC: t0,
		Segments: []Segment{{r.Num("end_s"), standing(ta, r.Num("Uside"), r.Num("Utop"), r.Num("Ubot"))}},
		Levels:   []Level{{slowest, at}, {Mean, at}, {Ring, at}},
	}, o)
	require.NoError(t, err)
	return out
}

// pint_reference.csv: a prototype of other make, on 40 × 80 cells.
func TestPintTimesMatchTheFineReference(t *testing.T) {
	for _, r := range check.Table(t, "pint_reference") {
		hot, mean := 1e-3, 5e-3
		if r.Num("Tamb_C") > 0 {
			hot, mean = 1e-2, 1.5e-2
		}
		for _, cells := range [][2]int{{10, 20}, {15, 30}, {20, 40}} {
			out := pintRow(t, r, cells[0], cells[1], Options{})
			last := out.Track[len(out.Track)-1].OfC(Mean)
			t.Logf("%-17s %-8s %v: slowest %+.3f %%, mean %+.3f %%, ring %+.2f %%, end %+.4f K; %d steps, %d rejected", r.Text("case"), r.Text("phase"), cells,
				100*(out.CrossingsS[0]/r.Num("t_hot_s")-1), 100*(out.CrossingsS[1]/r.Num("t_eq_s")-1), 100*(out.CrossingsS[2]/r.Num("t_shell_s")-1),
				last-r.Num("T_eq_end_C"), out.Steps, out.Rejected)
			if cells[0] < 15 {
				continue
			}
			if want := r.Num("t_hot_s"); math.IsNaN(want) {
				assert.True(t, math.IsNaN(out.CrossingsS[0]), "the reference never gets there")
			} else {
				assert.InEpsilon(t, want, out.CrossingsS[0], hot, "%v", r)
			}
			assert.InEpsilon(t, r.Num("t_eq_s"), out.CrossingsS[1], mean, "%v", r)
		}
	}
}

// finiteCylinderMean returns the mean Y of a cylinder of radius R and half
// height Z with the Biot and Fourier numbers of each direction: the product of
// the two means.
func finiteCylinderMean(biR, foR, biZ, foZ float64) (float64, error) {
	round, err := NewSeries(LongCylinder, biR)
	if err != nil {
		return math.NaN(), err
	}
	flat, err := NewSeries(PlaneWall, biZ)
	if err != nil {
		return math.NaN(), err
	}
	return round.Mean(foR) * flat.Mean(foZ), nil
}
