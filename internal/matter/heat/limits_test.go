package heat

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
)

// Plank's P and R are those of the ways out: a long cylinder freezes in half of
// a slab's time, a sphere in a third (Singh & Heldman, Introduction to Food
// Engineering, ch. 7), whether the air or the food holds it up.
func TestPlanksShapesAreAHalfAndAThirdOfASlab(t *testing.T) {
	for _, c := range []struct{ h, k float64 }{{50, 1.2}, {1e9, 1.2}, {50, 1e9}} {
		slab := PlankS(PlaneWall, 250e6, 40, 0.07, c.h, c.k)
		assert.InEpsilon(t, slab/2, PlankS(LongCylinder, 250e6, 40, 0.07, c.h, c.k), 1e-9)
		assert.InEpsilon(t, slab/3, PlankS(Ball, 250e6, 40, 0.07, c.h, c.k), 1e-9)
	}
	// A slab as wide as it is thick: the latent heat of half of it leaves through
	// a face by half of what lies before it, on the mean.
	assert.InEpsilon(t, 250e6/40.*(0.07/2/50+0.07*0.07/8/1.2), PlankS(PlaneWall, 250e6, 40, 0.07, 50, 1.2), 1e-9)
	good := []float64{250e6, 40, 0.07, 50, 1.2}
	for i := range good {
		for _, bad := range []float64{0, -1, math.NaN()} {
			x := append([]float64(nil), good...)
			x[i] = bad
			assert.True(t, math.IsNaN(PlankS(Ball, x[0], x[1], x[2], x[3], x[4])), "%d", i)
		}
		x := append([]float64(nil), good...)
		x[i] *= 1e-9 // little is not nothing
		assert.False(t, math.IsNaN(PlankS(Ball, x[0], x[1], x[2], x[3], x[4])), "%d", i)
	}
	assert.True(t, math.IsNaN(PlankS(Shape(9), 1, 1, 1, 1, 1)))
}

// A freezing half-space needs what its equation divides by.
func TestNeumannRefusesWhatHasNoFront(t *testing.T) {
	good := Neumann{SolidWPerMK: 2, LiquidWPerMK: 0.5, SolidJPerM3K: 0.9, LiquidJPerM3K: 0.8, LatentJPerM3: 0.7, MeltingC: -1, StartC: -1, FaceC: -1.5}
	_, err := good.Solve()
	require.NoError(t, err, "at its melting point, and within one unit of everything")
	for name, spoil := range map[string]func(*Neumann){
		"solid k": func(n *Neumann) { n.SolidWPerMK = 0 }, "liquid k": func(n *Neumann) { n.LiquidWPerMK = 0 }, "solid c": func(n *Neumann) { n.SolidJPerM3K = -1 },
		"liquid c": func(n *Neumann) { n.LiquidJPerM3K = 0 }, "latent": func(n *Neumann) { n.LatentJPerM3 = 0 }, "face": func(n *Neumann) { n.FaceC = -1 }, "start": func(n *Neumann) { n.StartC = -1.1 },
	} {
		n := good
		spoil(&n)
		_, err := n.Solve()
		assert.Error(t, err, name)
	}
	// The front leaves the face at its temperature and meets melting, and behind
	// it the liquid is as it was.
	n := Neumann{SolidWPerMK: 2.2, LiquidWPerMK: 0.56, SolidJPerM3K: 1.9e6, LiquidJPerM3K: 4.2e6, LatentJPerM3: 306e6, MeltingC: 0, StartC: 4, FaceC: -20}
	f, err := n.Solve()
	require.NoError(t, err)
	at := f.PositionM(3600)
	assert.InDelta(t, -20, f.TemperatureC(0, 3600), 1e-9)
	assert.InDelta(t, 0, f.TemperatureC(at*(1-1e-9), 3600), 1e-6)
	assert.InDelta(t, 0, f.TemperatureC(at*(1+1e-9), 3600), 1e-6)
	assert.InDelta(t, 4, f.TemperatureC(1, 3600), 1e-6)
	assert.InEpsilon(t, 2*at, f.PositionM(4*3600), 1e-9, "as the root of time")
	// What flows on both sides of the front differs by the heat of freezing.
	h := 1e-6 * at
	in := n.SolidWPerMK * (f.TemperatureC(at-h, 3600) - f.TemperatureC(at-2*h, 3600)) / h
	out := n.LiquidWPerMK * (f.TemperatureC(at+2*h, 3600) - f.TemperatureC(at+h, 3600)) / h
	assert.InEpsilon(t, n.LatentJPerM3*at/(2*3600), in-out, 1e-3)
}

// Saturation pressures of the CRC Handbook (from memory), Pa: over water at 0,
// 20 and 50 °C, over ice at −20 and −40 °C. WMO-No. 8 says 0.5 %.
func TestVapourPressuresAreTheHandbooks(t *testing.T) {
	for c, want := range map[float64]float64{0: 611.2, 20: 2339, 50: 12352} {
		assert.InEpsilon(t, want, vapourPressure(c, false), 0.005, "%g °C", c)
	}
	for c, want := range map[float64]float64{-20: 103.3, -40: 12.84} {
		assert.InEpsilon(t, want, vapourPressure(c, true), 0.005, "%g °C", c)
	}
}

// Incropera & DeWitt, Fundamentals of Heat and Mass Transfer: flow up a wall is
// laminar to Ra 1e9. For air at some 10 °C (ν 1.42e-5, α 2.0e-5 m²/s: table A.4,
// from memory) and 20 K that is a wall of 0.74 m.
func TestStillAirKnowsLaminarFlowAndItsRange(t *testing.T) {
	high := math.Cbrt(1e9 * 1.42e-5 * 2.0e-5 * 283.15 / (9.81 * 20))
	for k, ok := range map[float64]bool{0.95: true, 1.05: false} {
		_, err := StillAir(UprightWall{HeightM: k * high, Emissivity: 0.9}, 0, 20)
		assert.Equal(t, ok, err == nil, "%g m", k*high)
	}
	wall := UprightWall{HeightM: 0.1, Emissivity: 0.9}
	for _, c := range []struct {
		surface, air float64
		ok           bool
	}{{-45, 0, true}, {-45.1, 0, false}, {50, 60, true}, {50, 60.1, false}} {
		_, err := StillAir(wall, c.surface, c.air)
		assert.Equal(t, c.ok, err == nil, "%g °C in %g", c.surface, c.air)
	}
	for _, c := range []struct {
		w  UprightWall
		ok bool
	}{
		{UprightWall{HeightM: 0.5, Emissivity: 0}, true}, {UprightWall{HeightM: 0.5, Emissivity: 1, HumidityFraction: 1}, true},
		{UprightWall{HeightM: 0, Emissivity: 0.9}, false}, {UprightWall{HeightM: 0.1, Emissivity: 1.01}, false}, {UprightWall{HeightM: 0.1, Emissivity: -0.1}, false},
		{UprightWall{HeightM: 0.1, Emissivity: 0.9, HumidityFraction: 1.01}, false}, {UprightWall{HeightM: 0.1, Emissivity: 0.9, HumidityFraction: -0.1}, false},
	} {
		_, err := StillAir(c.w, -5, 5)
		assert.Equal(t, c.ok, err == nil, "%+v", c.w)
	}
}

// Frost and dew settle only from air that holds more vapour than the surface
// leaves it; on ice they bring the heat of sublimation, 2.834 MJ/kg, on water
// that of condensation, 2.501 (CRC Handbook, from memory).
func TestFrostSettlesFromMoistAirOnACoolerSurface(t *testing.T) {
	latent := func(surface, air, humidity float64) float64 {
		c, err := StillAir(UprightWall{HeightM: 0.1, Emissivity: 0.9, HumidityFraction: humidity}, surface, air)
		require.NoError(t, err)
		return c.LatentWPerM2K
	}
	assert.Zero(t, latent(-5, 22, 0))
	assert.Zero(t, latent(15, 22, 0.3), "above the dew point")
	assert.Zero(t, latent(22, 4, 1), "a warm surface dries")
	assert.Greater(t, latent(-5, 22, 0.5), 1.0)
	assert.InEpsilon(t, 2.834/2.501, latent(-0.001, 22, 0.5)/latent(0.001, 22, 0.5), 0.002)
	assert.Less(t, latent(0.9, 22, 0.5), latent(0.001, 22, 0.5), "dew, and the less the warmer the surface")
	still, err := StillAir(UprightWall{HeightM: 0.1, Emissivity: 0.9}, 10, 10)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.9*4*5.670374419e-8*math.Pow(283.15, 3), still.RadiationWPerM2K, 1e-9, "Stefan & Boltzmann's law at one temperature")
}

// Incropera & DeWitt, table 5.1 (from memory): the first eigenvalue for Bi 1,
// and its sums: a body begins at 1 all over, and its mean is the integral of
// what is inside.
func TestTheSeriesIsWhatItsBooksSay(t *testing.T) {
	for s, first := range map[Shape]string{PlaneWall: "0.8603", LongCylinder: "1.2558", Ball: "1.5708"} {
		series, err := NewSeries(s, 1)
		require.NoError(t, err)
		check.Printed(t, series.beta[0], first)
		n := map[Shape]float64{PlaneWall: 1, LongCylinder: 2, Ball: 3}[s]
		for _, fo := range []float64{0.02, 0.3} {
			sum := 0.0
			const steps = 2000
			for i := range steps { // ∫ Y d(xⁿ) by midpoints
				x := (float64(i) + 0.5) / steps
				sum += series.At(x, fo) * n * math.Pow(x, n-1) / steps
			}
			assert.InDelta(t, sum, series.Mean(fo), 1e-5, "%v", s)
		}
		assert.InDelta(t, 1, series.At(0, 0.002), 1e-3)
		assert.InDelta(t, series.At(0, 0.1), series.At(1e-7, 0.1), 1e-9, "no jump at the centre")
		assert.InDelta(t, series.At(1, 0.1), series.At(1-1e-7, 0.1), 1e-6)
	}
	for _, bi := range []float64{1e-3, 1, 1000} { // insulated nearly, and held nearly
		for _, s := range []Shape{PlaneWall, LongCylinder, Ball} {
			series, err := NewSeries(s, bi)
			require.NoError(t, err)
			assert.True(t, 0 < series.beta[0] && series.beta[0] < math.Pi)
			assert.InDelta(t, 1, series.Mean(1e-5), 0.02, "%v, Bi %g", s, bi)
		}
	}
	for _, bad := range []float64{0, -1, math.Inf(1), math.NaN()} {
		_, err := NewSeries(Ball, bad)
		assert.Error(t, err)
	}
	for _, bad := range []Shape{-1, 3} {
		_, err := NewSeries(bad, 1)
		assert.Error(t, err)
	}
}

func TestWordsAreSaidOfWhatThereIs(t *testing.T) {
	for q := Hottest; q < quantities; q++ {
		assert.NotContains(t, q.String(), "Quantity")
	}
	assert.Equal(t, "Quantity(-1)", Quantity(-1).String())
	assert.Equal(t, "Quantity(5)", quantities.String())
	for s := Finished; s <= Stuck; s++ {
		assert.NotContains(t, s.String(), "Status")
	}
	assert.Equal(t, "Status(5)", Status(5).String())
	assert.Equal(t, "Status(-1)", Status(-1).String())
}

func TestTheResidualIsOfWhatCameInOrWhatWasThere(t *testing.T) {
	assert.InDelta(t, 0.1, Balance{InJ: -0.5, StoredJ: -0.45}.Residual(), 1e-12)
	assert.InDelta(t, 0.25, Balance{StoredJ: 0.1, ContentJ: 0.4}.Residual(), 1e-12)
	assert.Zero(t, Balance{}.Residual())
	assert.InDelta(t, 1/(1/7.+0.1), Face{WPerM2K: 7, M2KPerW: 0.1}.OverallWPerM2K(), 1e-12)
	assert.InDelta(t, 10, Face{WPerM2K: math.Inf(1), M2KPerW: 0.1}.OverallWPerM2K(), 1e-12)
}

// The ring's temperature is that of the mean enthalpy of what lies in the outer
// 10 mm: of a cylinder and a sphere by volume, of a slab the top. So wide as the
// body, it is the mean.
func TestTheRingIsTheOuterTenMillimetres(t *testing.T) {
	m := phase(t, "custard")
	cylinder, err := Cylinder(0.03, 0.05, 6, 5)
	require.NoError(t, err)
	ball, err := Sphere(0.03, 6)
	require.NoError(t, err)
	slab, err := Slab(0.03, 6)
	require.NoError(t, err)
	for name, mesh := range map[string]Mesh{"cylinder": cylinder, "sphere": ball, "slab": slab} {
		solve := func(ring float64) Result {
			out, err := Solve(context.Background(), Problem{Material: m, Mesh: mesh, StartC: -5, RingM: ring,
				Segments: []Segment{{1200, everywhere(Face{AmbientC: -25, WPerM2K: 30})}}}, Options{})
			require.NoError(t, err)
			return out
		}
		out := solve(0)
		nr, nz := mesh.Cells()
		sum, weight := 0.0, 0.0
		for j := range nz {
			for i := range nr {
				edge := func(i int) float64 { return 0.03 * float64(i) / 6 }
				v, in := 1.0, j >= 4 // of a slab's six layers the upper two
				switch name {
				case "cylinder":
					v, in = math.Pow(edge(i+1), 2)-math.Pow(edge(i), 2), i >= 4
				case "sphere":
					v, in = math.Pow(edge(i+1), 3)-math.Pow(edge(i), 3), i >= 4
				}
				if in {
					sum, weight = sum+v*out.FieldJPerM3[j*nr+i], weight+v
				}
			}
		}
		last := out.Track[len(out.Track)-1]
		assert.InDelta(t, m.TemperatureC(sum/weight), last.OfC(Ring), 1e-6, name)
		assert.Less(t, last.OfC(Ring), last.OfC(Mean)-0.1, name)
		whole := solve(1)
		last = whole.Track[len(whole.Track)-1]
		assert.InDelta(t, last.OfC(Mean), last.OfC(Ring), 1e-9, name)
		half := solve(0.005)
		assert.Less(t, half.Track[len(half.Track)-1].OfC(Ring), out.Track[len(out.Track)-1].OfC(Ring), "a narrower ring is the colder")
	}
}

// A level that the body starts at is crossed at once, one that its surface leaps
// over as it is set there too, and one beyond the air never.
func TestCrossingsAtTheStart(t *testing.T) {
	p := goodProblem(t)
	p.Segments = []Segment{{3600, everywhere(Face{AmbientC: -30, WPerM2K: 500})}}
	p.Levels = []Level{{Hottest, -5}, {Coldest, -5}, {Wall, -6}, {Mean, -6}, {Mean, -3}, {Wall, -29.9}}
	out, err := Solve(context.Background(), p, Options{})
	require.NoError(t, err)
	assert.Zero(t, out.CrossingsS[0])
	assert.Zero(t, out.CrossingsS[1])
	assert.Zero(t, out.CrossingsS[2])
	assert.True(t, out.CrossingsS[3] > 0 && out.CrossingsS[3] < 3600)
	assert.True(t, math.IsNaN(out.CrossingsS[4]))
	assert.True(t, out.CrossingsS[5] > 0, "not at once")
	// A hair beyond the start, on the other side of it, nothing ever comes.
	p.Levels = []Level{{Wall, -4.9}, {Hottest, -4.99}}
	p.Segments = []Segment{{600, everywhere(Face{AmbientC: -8, WPerM2K: 5})}}
	out, err = Solve(context.Background(), p, Options{})
	require.NoError(t, err)
	assert.True(t, math.IsNaN(out.CrossingsS[0]) && math.IsNaN(out.CrossingsS[1]))
}

// Stirred by its edge, a body rests a minute where nobody says how long.
func TestTheLeastRestIsAMinute(t *testing.T) {
	mesh, err := Cylinder(0.06, 0.06, 10, 10)
	require.NoError(t, err)
	out, err := Solve(context.Background(), Problem{Material: phase(t, "custard"), Mesh: mesh, StartC: -2,
		Segments: []Segment{{3600, everywhere(Face{AmbientC: -40, WPerM2K: 200})}},
		Stirring: Stirring{ByEdge: true, EdgeC: -4},
	}, Options{})
	require.NoError(t, err)
	require.Greater(t, len(out.Stirs), 2)
	least := math.Inf(1)
	for i := 1; i < len(out.Stirs); i++ {
		least = math.Min(least, out.Stirs[i].TimeS-out.Stirs[i-1].TimeS)
	}
	assert.InDelta(t, 60, least, 1e-6)
}

// The error of one step grows with the square of its length (a method of second
// order with an estimate of first, Hairer & Wanner 1996, Solving Ordinary
// Differential Equations II, section IV.7), so that of n steps over a smooth
// course each may err a quarter as much if there are twice as many.
func TestAQuarterOfTheToleranceTakesTwiceTheSteps(t *testing.T) {
	count := func(p Problem, o Options) (steps, rejected float64) {
		out, err := Solve(context.Background(), p, o)
		require.NoError(t, err)
		return float64(out.Steps), float64(out.Rejected)
	}
	harden := Problem{Material: phase(t, "custard"), Mesh: pint(t, 15, 30), StartC: 4, Segments: []Segment{{16 * 3600, freezer}}}
	warm := Problem{Material: phase(t, "custard"), Mesh: pint(t, 15, 30), StartC: 20, Segments: []Segment{{4 * 3600, counter}}}
	for name, p := range map[string]Problem{"harden": harden, "warm": warm} {
		coarse, _ := count(p, Options{Tolerance: 3e-4})
		given, _ := count(p, Options{})
		assert.Equal(t, coarse, given, "the tolerance that the comparison of schemes chose")
		for _, tolerance := range []float64{7.5e-5, 1.875e-5} {
			fine, rejected := count(p, Options{Tolerance: tolerance})
			assert.InEpsilon(t, 2, fine/coarse, 0.04, "%s to %g", name, tolerance)
			assert.Less(t, rejected, 0.03*fine, "%s: a cautious aim repeats few steps", name)
			coarse = fine
		}
	}
	out, err := Solve(context.Background(), harden, Options{Tolerance: 1e-300})
	require.NoError(t, err)
	assert.Equal(t, Stuck, out.Status)
}

// A tub's mesh is thinnest at its faces, 1.25 mm, and grows by one ratio inward.
func TestATubsMeshIsThinAtItsFaces(t *testing.T) {
	m, err := Tub(0.0425, 0.0834)
	require.NoError(t, err)
	nr, nz := m.Cells()
	assert.Equal(t, [2]int{15, 26}, [2]int{nr, nz})
	assert.InEpsilon(t, 0.00125, m.thinnest(), 1e-6)
	assert.InEpsilon(t, 0.00125, m.ring[nr]-m.ring[nr-1], 1e-6)
	assert.InEpsilon(t, 0.00125, m.height[0], 1e-6)
	assert.InEpsilon(t, 0.00125, m.height[nz-1], 1e-6)
	assert.InEpsilon(t, math.Pi*0.0425*0.0425*0.0834, m.VolumeM3(), 1e-9)
	for j := 2; j < nz/2; j++ {
		assert.InEpsilon(t, m.height[1]/m.height[0], m.height[j]/m.height[j-1], 1e-6)
	}
	flat, err := Cylinder(0.05, 0.01, 5, 5)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.002, flat.thinnest(), 1e-9)
	tall, err := Cylinder(0.01, 0.05, 5, 5)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.002, tall.thinnest(), 1e-9)
	slab, err := Slab(0.03, 6)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.005, slab.thinnest(), 1e-9)
	assert.InEpsilon(t, 0.03, slab.VolumeM3(), 1e-9, "of a square metre")
	ball, err := Sphere(0.03, 6)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.005, ball.thinnest(), 1e-9)
	assert.InEpsilon(t, 4./3*math.Pi*0.03*0.03*0.03, ball.VolumeM3(), 1e-9)
	// Too few cells for that stay even.
	wide, err := Graded(0.0425, 0.0834, 15, 26, 0.01)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.0834/26, wide.height[0], 1e-9)
	assert.InEpsilon(t, 0.0834/26, wide.height[7], 1e-9)
	for _, bad := range []func() (Mesh, error){
		func() (Mesh, error) { return Cylinder(0.5, 0.5, 1, 1) },
		func() (Mesh, error) { return Cylinder(0.5, 0.5, 0, 9) },
		func() (Mesh, error) { return Cylinder(0.5, 0.5, 9, 0) },
		func() (Mesh, error) { return Graded(0.5, 0.5, 9, 9, 0) },
	} {
		_, err := bad()
		assert.Error(t, err)
	}
	_, err = Cylinder(0.5, 0.5, 2, 1)
	assert.NoError(t, err)
}

// A stage of a step may overshoot the table of a face by a hair: there the flux
// goes on as at its end.
func TestAFaceGoesOnBeyondItsTable(t *testing.T) {
	m := phase(t, "custard")
	var f film
	f.build(m, Face{AmbientC: -18, WPerM2K: 20}, 0.001, -18, 4)
	for _, c := range []float64{-18, 4} {
		at := m.PotentialWPerM(c)
		edge, slope := f.at(at)
		for _, off := range []float64{-1e-6, 1e-6} {
			flux, _ := f.at(at + off)
			assert.InDelta(t, edge+slope*off, flux, 1e-6, "%g °C", c)
		}
		assert.InDelta(t, 20*(-18-f.surface(at, c)), edge, 1e-3*math.Abs(edge)+1e-6)
	}
	assert.Negative(t, func() float64 { flux, _ := f.at(m.PotentialWPerM(4)); return flux }(), "heat leaves")
	f.build(m, Face{}, 0.001, -18, 4)
	assert.Equal(t, -3.0, f.surface(m.PotentialWPerM(-3), -3), "insulated, the surface is as its cell")
}

// Pictures and curves of one moment show one body, however long the steps are.
func TestAPictureIsOfItsMoment(t *testing.T) {
	p := goodProblem(t)
	p.Segments = []Segment{{16 * 3600, freezer}}
	p.EveryS = 3600
	for i := range 17 {
		p.FramesS = append(p.FramesS, 3600*float64(i))
	}
	out, err := Solve(context.Background(), p, Options{})
	require.NoError(t, err)
	require.Len(t, out.Frames, 17)
	for i, f := range out.Frames {
		coldest, hottest := extremes(f.TemperatureC)
		assert.InDelta(t, out.Track[i].OfC(Hottest), f.TemperatureC[hottest], 0.01, "%d h", i)
		assert.InDelta(t, out.Track[i].OfC(Coldest), f.TemperatureC[coldest], 0.01, "%d h", i)
	}
}
