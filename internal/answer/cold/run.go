package cold

import (
	"context"
	"math"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/heat"
)

// runner solves the runs of a plan one after the other and reports how far it
// has come.
type runner struct {
	ctx         context.Context
	progress    func(float64)
	pictures    bool
	alone       bool // each run as its coefficient stands, without the band
	done, total float64
}

func (r *runner) report(part float64) {
	if r.progress != nil {
		r.progress(math.Min((r.done+part)/r.total, 1))
	}
}

// exposure is a vessel left somewhere.
type exposure struct {
	what      string
	substance substance
	vessel    Vessel
	cells     float64 // about so many even ones; 0 for a tub's mesh
	place     Place
	pack      Package
	lid       float64
	start     float64 // °C, uniform
	target    float64 // °C, which with the start decides the still air's coefficient
	limit     float64 // s looked at
	stirring  heat.Stirring
	levels    []heat.Level // NaN ones are never reached
	settle    *heat.Level  // follow the run to here for its curves
	every     float64      // s between samples of the curves, and frames
	frames    float64
	histories bool // of the cells, so the frames are kept without pictures too
}

// follow runs e with its coefficient as it stands and at the ends of its band.
// It returns the time of each level in s, and the run as it stands.
func (r *runner) follow(e exposure) ([]Range, heat.Result, heat.Mesh, error) {
	fail := func(err error) ([]Range, heat.Result, heat.Mesh, error) {
		return nil, heat.Result{}, heat.Mesh{}, flaw.New("%s: %v", e.what, err)
	}
	mesh, err := e.vessel.mesh(e.cells)
	if err != nil {
		return fail(err)
	}
	material, err := e.substance.material(math.Min(e.start, e.place.AirC)-1, math.Max(e.start, e.place.AirC)+1)
	if err != nil {
		return fail(err)
	}
	times := make([]Range, len(e.levels))
	for i := range times {
		times[i] = never()
	}
	var nominal heat.Result
	s := e.place.SpreadFraction()
	scales := []float64{1, 1 + s, 1 - s}
	if r.alone {
		scales = scales[:1]
	}
	for i, scale := range scales {
		out, at, err := r.once(e, material, mesh, scale, i == 0)
		if err != nil {
			return fail(err)
		}
		for n, t := range at {
			switch i {
			case 0:
				times[n].Value = t
			case 1:
				times[n].Low = t
			default:
				times[n].High = t
			}
		}
		if i == 0 {
			nominal = out
		}
		r.done++
		r.report(0)
	}
	return times, nominal, mesh, nil
}

// once is one run of e, with the time of each level: 0 where the start is
// past it, NaN where it is not reached.
func (r *runner) once(e exposure, m *heat.Material, mesh heat.Mesh, scale float64, nominal bool) (heat.Result, []float64, error) {
	around, err := e.place.around(e.vessel.HeightMM, (e.start+e.target)/2, scale, e.pack, e.lid)
	if err != nil {
		return heat.Result{}, nil, err
	}
	p := heat.Problem{Material: m, Mesh: mesh, StartC: e.start,
		Segments: []heat.Segment{{ForS: e.limit, Surroundings: around}},
		Stirring: e.stirring, EveryS: e.limit,
	}
	at := make([]float64, len(e.levels))
	asked := make([]int, 0, len(e.levels))
	warming := e.place.AirC > e.start
	for i, l := range e.levels {
		at[i] = math.NaN()
		switch {
		case math.IsNaN(l.AtC):
		case l.AtC == e.start || warming == (l.AtC < e.start):
			at[i] = 0
		case warming == (l.AtC < e.place.AirC):
			asked = append(asked, i)
			p.Levels = append(p.Levels, l)
		}
	}
	if nominal {
		p.EveryS = e.every
		if e.settle != nil {
			p.Levels = append(p.Levels, *e.settle)
		}
		if r.pictures || e.histories {
			for t := 0.0; t <= e.limit; t += e.frames {
				p.FramesS = append(p.FramesS, t)
			}
		}
	}
	if len(p.Levels) == 0 && !nominal {
		return heat.Result{}, at, nil
	}
	out, err := heat.Solve(r.ctx, p, heat.Options{StopEarly: true, Progress: r.report})
	if err != nil {
		return out, nil, err
	}
	if out.Status != heat.Finished && out.Status != heat.Reached {
		return out, nil, flaw.New("the computation stopped: %v", out.Status)
	}
	for n, i := range asked {
		at[i] = out.CrossingsS[n]
	}
	return out, at, nil
}

// picture turns a result into curves and frames; core is the last spot to
// follow.
func picture(out heat.Result, mesh heat.Mesh, v Vessel, core heat.Quantity) Run {
	run := Run{RadiusMM: v.RadiusMM, HeightMM: v.HeightMM}
	run.Outward, run.Upward = mesh.Cells()
	even := mesh.Evenly()
	run.Track = make([]Moment, len(out.Track))
	for i, s := range out.Track {
		run.Track[i] = Moment{s.TimeS / 60, s.OfC(core), s.OfC(heat.Mean), s.OfC(heat.Ring), s.OfC(heat.Wall)}
	}
	for _, f := range out.Frames {
		run.Frames = append(run.Frames, Frame{f.TimeS / 60, even(f.TemperatureC)})
	}
	return run
}

// over returns the range in units of so many seconds.
func (r Range) over(seconds float64) Range {
	return Range{r.Value / seconds, r.Low / seconds, r.High / seconds}
}
