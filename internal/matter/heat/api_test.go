package heat

import (
	"context"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestMaterialRefusesTablesThatDoNotRise(t *testing.T) {
	for name, c := range map[string]struct{ t, u, k []float64 }{
		"temperature falls":      {[]float64{0, -1}, []float64{0, 1}, []float64{1, 1}},
		"enthalpy repeats":       {[]float64{0, 1}, []float64{1, 1}, []float64{1, 1}},
		"no conductivity":        {[]float64{0, 1}, []float64{0, 1}, []float64{1, 0}},
		"NaN":                    {[]float64{0, 1}, []float64{0, math.NaN()}, []float64{1, 1}},
		"infinite":               {[]float64{0, math.Inf(1)}, []float64{0, 1}, []float64{1, 1}},
		"infinite conductivity":  {[]float64{0, 1}, []float64{0, 1}, []float64{1, math.Inf(1)}},
		"negative conductivity ": {[]float64{0, 1}, []float64{0, 1}, []float64{-1, 1}},
	} {
		_, err := NewMaterial(c.t, c.u, c.k)
		var row *MaterialError
		assert.True(t, errors.As(err, &row), name)
	}
	_, err := NewMaterial([]float64{0}, []float64{0}, []float64{1})
	assert.Error(t, err)
}

func TestMaterialTemperatureUndoesEnthalpy(t *testing.T) {
	for _, name := range []string{"custard", "foam 2:1", "ripple70"} {
		m := phase(t, name)
		for at := -45.0; at <= 100; at += 0.37 {
			require.InDelta(t, at, m.TemperatureC(m.JPerM3(at)), 1e-9)
		}
		assert.True(t, math.IsNaN(m.JPerM3(-46)) && math.IsNaN(m.JPerM3(101)) && math.IsNaN(m.PotentialWPerM(101)))
	}
}

func TestPotentialSlopeIsTheConductivity(t *testing.T) {
	m := phase(t, "custard")
	for i := 1; i < len(m.t); i++ {
		mid, h := (m.t[i]+m.t[i-1])/2, 1e-4
		require.InDelta(t, (m.k[i]+m.k[i-1])/2, (m.PotentialWPerM(mid+h)-m.PotentialWPerM(mid-h))/(2*h), 1e-6)
	}
}

// The table against a plain bisection for the surface temperature.
func TestFilmFluxSatisfiesTheSurfaceBalance(t *testing.T) {
	m := phase(t, "custard")
	const half, air = 0.002, -18.0
	for _, u := range []float64{1e-3, 7, 300, 1e5, 1e12, math.Inf(1)} {
		var f film
		f.build(m, Face{AmbientC: air, WPerM2K: u}, half, air, 4)
		most, _ := f.at(m.PotentialWPerM(4))
		for at := -17.9; at < 4; at += 0.5 {
			lo, hi := air, at
			for range 100 {
				mid := (lo + hi) / 2
				if u*(mid-air) < (m.PotentialWPerM(at)-m.PotentialWPerM(mid))/half {
					lo = mid
				} else {
					hi = mid
				}
			}
			want := u * (air - lo)
			if u > 1e4 {
				want = (m.PotentialWPerM(lo) - m.PotentialWPerM(at)) / half
			}
			q, _ := f.at(m.PotentialWPerM(at))
			require.InDelta(t, want, q, 1e-5*math.Abs(most), "U %g at %g °C", u, at)
		}
	}
}

func goodProblem(t testing.TB) Problem {
	return Problem{Material: phase(t, "custard"), Mesh: pint(t, 6, 12), StartC: -5, Segments: []Segment{{3600, freezer}}}
}

func TestSolveRefusesWhatItCannotRun(t *testing.T) {
	for name, spoil := range map[string]func(*Problem){
		"no material":      func(p *Problem) { p.Material = nil },
		"no mesh":          func(p *Problem) { p.Mesh = Mesh{} },
		"no segments":      func(p *Problem) { p.Segments = nil },
		"no time":          func(p *Problem) { p.Segments = []Segment{{0, freezer}} },
		"start too hot":    func(p *Problem) { p.StartC = 200 },
		"start NaN":        func(p *Problem) { p.StartC = math.NaN() },
		"air too cold":     func(p *Problem) { p.Segments = []Segment{{60, everywhere(Face{AmbientC: -80, WPerM2K: 5})}} },
		"negative H":       func(p *Problem) { p.Segments = []Segment{{60, everywhere(Face{WPerM2K: -5})}} },
		"negative wall":    func(p *Problem) { p.Segments = []Segment{{60, everywhere(Face{WPerM2K: 5, M2KPerW: -1})}} },
		"level outside":    func(p *Problem) { p.Levels = []Level{{Mean, -60}} },
		"level of nothing": func(p *Problem) { p.Levels = []Level{{quantities, -6}} },
		"wrong field":      func(p *Problem) { p.FieldJPerM3 = []float64{1} },
		"frames fall":      func(p *Problem) { p.FramesS = []float64{60, 30} },
		"edge outside":     func(p *Problem) { p.Stirring = Stirring{ByEdge: true, EdgeC: -99} },
	} {
		p := goodProblem(t)
		spoil(&p)
		_, err := Solve(context.Background(), p, Options{})
		assert.Error(t, err, name)
	}
	p := goodProblem(t)
	p.StartC = 200
	_, err := Solve(context.Background(), p, Options{})
	var outside *RangeError
	require.True(t, errors.As(err, &outside))
	assert.Equal(t, 200.0, outside.AtC)
	for _, bad := range []func() (Mesh, error){
		func() (Mesh, error) { return Cylinder(0, 1, 3, 3) },
		func() (Mesh, error) { return Cylinder(1, math.Inf(1), 3, 3) },
		func() (Mesh, error) { return Slab(1, 1) },
		func() (Mesh, error) { return Sphere(math.NaN(), 5) },
	} {
		_, err := bad()
		assert.Error(t, err)
	}
}

func TestCancelledRunSaysSoAndKeepsWhatItHas(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	p := goodProblem(t)
	p.Segments[0].ForS = 16 * 3600
	calls := 0
	out, err := Solve(ctx, p, Options{Tolerance: 1e-7, Progress: func(done float64) {
		assert.True(t, done >= 0 && done <= 1)
		if calls++; calls == 3 {
			cancel()
		}
	}})
	assert.ErrorIs(t, err, context.Canceled)
	assert.Equal(t, Cancelled, out.Status)
	assert.Equal(t, "cancelled", out.Status.String())
	assert.True(t, out.TimeS > 0 && out.TimeS < 16*3600)
	assert.NotEmpty(t, out.Track)
}

func TestStepLimitIsAStatus(t *testing.T) {
	out, err := Solve(context.Background(), goodProblem(t), Options{Tolerance: 1e-8, MaxSteps: 64})
	require.NoError(t, err)
	assert.Equal(t, StepLimit, out.Status)
}

// A run in two parts, the second from the first's field, is the run in one; and
// frames and samples lie where they were asked.
func TestARunContinuesFromItsField(t *testing.T) {
	p := goodProblem(t)
	p.Segments = []Segment{{7200, freezer}, {1800, counter}}
	p.FramesS = []float64{0, 7000, 9000}
	p.EveryS = 600
	whole, err := Solve(context.Background(), p, Options{Tolerance: 1e-6})
	require.NoError(t, err)
	require.Len(t, whole.Frames, 3)
	require.Len(t, whole.Track, 16)
	for i, s := range whole.Track {
		assert.InDelta(t, 600*float64(i), s.TimeS, 1e-9)
		assert.LessOrEqual(t, s.OfC(Coldest), s.OfC(Mean)+1e-9)
		assert.LessOrEqual(t, s.OfC(Mean), s.OfC(Hottest)+1e-9)
	}
	assert.InDelta(t, -5, whole.Frames[0].TemperatureC[0], 1e-9)
	p.FramesS, p.Segments = nil, []Segment{{7200, freezer}}
	first, err := Solve(context.Background(), p, Options{Tolerance: 1e-6})
	require.NoError(t, err)
	p.FieldJPerM3, p.Segments = first.FieldJPerM3, []Segment{{1800, counter}}
	second, err := Solve(context.Background(), p, Options{Tolerance: 1e-6})
	require.NoError(t, err)
	for i, u := range second.FieldJPerM3 {
		assert.InDelta(t, whole.FieldJPerM3[i], u, 1e3)
		assert.InDelta(t, p.Material.TemperatureC(whole.FieldJPerM3[i]), whole.Frames[2].TemperatureC[i], 1e-9)
	}
}

func TestTemperaturesStayBetweenStartAndAir(t *testing.T) {
	for _, name := range []string{"custard", "foam 2:1", "ripple70"} {
		for _, around := range []Surroundings{freezer, counter, everywhere(Face{AmbientC: -30, WPerM2K: 300})} {
			p := goodProblem(t)
			p.Material = phase(t, name)
			p.Segments = []Segment{{4 * 3600, around}}
			out, err := Solve(context.Background(), p, Options{})
			require.NoError(t, err)
			lo, hi := min(-5, around.Side.AmbientC), max(-5, around.Side.AmbientC)
			for _, s := range out.Track {
				assert.GreaterOrEqual(t, s.OfC(Coldest), lo-0.05)
				assert.LessOrEqual(t, s.OfC(Hottest), hi+0.05)
			}
		}
	}
}

func TestUniformBodyInAirOfItsTemperatureStaysThere(t *testing.T) {
	p := goodProblem(t)
	p.Segments = []Segment{{3600, everywhere(Face{AmbientC: -5, WPerM2K: 10})}}
	out, err := Solve(context.Background(), p, Options{})
	require.NoError(t, err)
	assert.InDelta(t, -5, out.Track[len(out.Track)-1].OfC(Hottest), 1e-3, "the resolution of the uniform grid")
}

// A lump of R 42.5 mm, H 83.4 mm, 1082 kg/m³, 3300 J/(kg K), h 7 all round, from
// 60 °C in a room of 20 °C: 20 + 40 e^(−t/7180 s) = 44.23 °C after an hour when
// it conducts perfectly (Incropera & DeWitt, ch. 5, lumped capacitance).
func TestAnAlmostPerfectConductorCoolsAsALump(t *testing.T) {
	m, err := NewMaterial([]float64{0, 100}, []float64{0, 100 * 1082 * 3300}, []float64{400, 400})
	require.NoError(t, err)
	out, err := Solve(context.Background(), Problem{Material: m, Mesh: pint(t, 8, 12), StartC: 60,
		Segments: []Segment{{3600, everywhere(Face{AmbientC: 20, WPerM2K: 7})}}}, Options{})
	require.NoError(t, err)
	assert.InDelta(t, 44.23, out.Track[len(out.Track)-1].OfC(Mean), 0.02)
}

// The factored method is of second order in the step.
func TestHalvingTheStepQuartersTheError(t *testing.T) {
	at := func(steps int) float64 {
		s := newStepper(plain(t), pint(t, 8, 12))
		s.surround(everywhere(Face{AmbientC: 0, WPerM2K: 20}), 0, 100)
		fill(s.u, 100e6)
		s.refresh()
		for range steps {
			s.try(2400 / float64(steps))
			s.accept()
		}
		return s.u[0]
	}
	exact := at(3200)
	coarse, fine := at(50)-exact, at(100)-exact
	assert.InDelta(t, 4, coarse/fine, 0.5)
}
