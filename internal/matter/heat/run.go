package heat

import (
	"context"
	"math"
	"slices"
)

// run drives a stepper through the segments of a problem and notes what the
// problem asks for. Between the ends of a step everything is read from the
// cubic through the values and slopes there, so no step is cut short for a
// reading.
type run struct {
	*stepper
	p       *Problem
	o       Options
	lowest  float64 // °C, of everything that touches the body
	highest float64

	time, end, step float64 // s: now, of the run, proposed for the next step
	lastStep        float64 // s, of the last step since the restart; 0 if there was none
	base            []float64
	floor           float64 // least scale of the error, J/m³

	weights   [quantities][]float64 // of the cells in Mean and Ring, adding up to 1
	first     [quantities]int       // the innermost ring of cells with weight
	volume    float64               // m³
	thinnest  float64               // m, of the cells
	wall      int                   // the cell at half height behind the side
	beside    *film                 // what lies between it and the air
	now, then [quantities]reading
	prior     [quantities]reading // one step before then
	priorStep float64             // s from prior to then; 0 if there is none
	levels    []float64           // J/m³; of the Wall °C
	content   float64
	stored    float64 // sum of u over the volume at the start, J
	nextFrame int
	nextTrack float64
	nextStir  float64 // s, by the clock
	lastStir  float64 // s
	edge      float64 // J/m³

	out Result
}

func newRun(p Problem, o Options, lowest, highest float64) *run {
	r := &run{stepper: newStepper(p.Material, p.Mesh), p: &p, o: o, lowest: lowest, highest: highest}
	if p.FieldJPerM3 != nil {
		copy(r.u, p.FieldJPerM3)
	} else {
		fill(r.u, p.Material.JPerM3(p.StartC))
	}
	r.base = append([]float64(nil), r.u...)
	for _, s := range p.Segments {
		r.end += s.ForS
	}
	r.floor = 1e-3 * (p.Material.JPerM3(highest) - p.Material.JPerM3(lowest))
	r.weigh()
	r.wall, r.beside = (p.Mesh.nz/2)*p.Mesh.nr+p.Mesh.nr-1, &r.side
	if p.Mesh.sideless {
		r.wall, r.beside = p.Mesh.nz-1, &r.top
	}
	for _, l := range p.Levels {
		at := l.AtC
		if l.Of != Wall {
			at = p.Material.JPerM3(at)
		}
		r.levels = append(r.levels, at)
		r.out.CrossingsS = append(r.out.CrossingsS, math.NaN())
	}
	r.stored, r.content = r.energy()
	r.edge = p.Material.JPerM3(p.Stirring.EdgeC)
	r.nextStir, r.lastStir = math.Inf(1), math.Inf(-1)
	if p.Stirring.EveryS > 0 {
		r.nextStir = p.Stirring.EveryS
	}
	r.out.Track = make([]Sample, 0, 512)
	return r
}

func fill(x []float64, v float64) {
	for i := range x {
		x[i] = v
	}
}

// weigh finds each cell's share of the body and of its outer ring.
func (r *run) weigh() {
	m := r.p.Mesh
	width := r.p.RingM
	if width == 0 {
		width = RingWidth
	}
	mean, ring := make([]float64, len(r.u)), make([]float64, len(r.u))
	sumMean, sumRing := 0.0, 0.0
	outer := make([]float64, m.nr) // part of each cell of a row that lies in the ring
	for i := range outer {
		n, from, to := m.dimension, m.ring[i], m.ring[i+1]
		if inner := max(from, m.ring[m.nr]-width); inner < to {
			outer[i] = (math.Pow(to, n) - math.Pow(inner, n)) / (math.Pow(to, n) - math.Pow(from, n))
		}
	}
	for j := 0; j < m.nz; j++ {
		for i, v := range m.volume {
			v *= m.height[j]
			part := outer[i]
			if m.sideless {
				inner := max(m.layer[j], m.layer[m.nz]-width)
				part = max(0, m.layer[j+1]-inner) / m.height[j]
			}
			mean[j*m.nr+i], ring[j*m.nr+i] = v, part*v
			sumMean += v
			sumRing += part * v
		}
	}
	for i := range mean {
		mean[i] /= sumMean
		ring[i] /= sumRing
	}
	r.weights[Mean], r.weights[Ring] = mean, ring
	for r.first[Ring] < m.nr-1 && ring[r.first[Ring]] == 0 && !m.sideless {
		r.first[Ring]++
	}
	r.volume, r.thinnest = m.VolumeM3(), m.thinnest()
}

// energy returns the sum over the cells of enthalpy times volume and of its
// absolute value, J.
func (r *run) energy() (sum, absolute float64) {
	m := r.p.Mesh
	for j, h := range m.height {
		for i, v := range m.volume {
			u := h * v * r.u[j*m.nr+i]
			sum += u
			absolute += math.Abs(u)
		}
	}
	return sum, absolute
}

// all takes the body through its segments.
func (r *run) all(ctx context.Context) error {
	limit := 0.0
	for i, s := range r.p.Segments {
		r.surround(s.Surroundings, r.lowest, r.highest)
		r.restart()
		if i == 0 {
			r.sampleStart()
		}
		limit += s.ForS
		if i == len(r.p.Segments)-1 {
			limit = r.end
		}
		for r.time < limit {
			more, err := r.advance(ctx, limit)
			if !more {
				return err
			}
		}
	}
	return nil
}

// restart follows a sudden change of surroundings or of the field.
func (r *run) restart() {
	r.refresh()
	copy(r.base, r.u)
	r.now = r.read()
	r.priorStep, r.lastStep = 0, 0
	r.step = 0.1 * r.thinnest * r.thinnest / slices.Max(r.slope)
}

// poll is how many steps pass between looks at the context.
const poll = 64

// advance takes one step toward limit, or rejects it and proposes a shorter
// one. It reports whether to go on.
func (r *run) advance(ctx context.Context, limit float64) (more bool, err error) {
	if tried := r.out.Steps + r.out.Rejected; tried%poll == 0 {
		if err := ctx.Err(); err != nil {
			r.out.Status = Cancelled
			return false, err
		}
		if r.o.Progress != nil {
			r.o.Progress(r.time / r.end)
		}
		if tried >= r.o.MaxSteps {
			r.out.Status = StepLimit
			return false, nil
		}
	}
	limit = min(limit, r.nextStir)
	h, arrive := r.step, false
	if r.time+h >= limit*(1-1e-14) {
		h, arrive = limit-r.time, true
	}
	ratio := r.try(h) / (r.o.Tolerance * r.scale())
	factor := 0.2
	if !math.IsNaN(ratio) {
		// The error of one step grows with the square of its length, and jumps
		// where cells begin to melt: a cautious aim and slow growth save more
		// repeated steps than they cost.
		factor = min(max(0.68/math.Sqrt(ratio), 0.2), 1.3)
	}
	if !(ratio <= 1) {
		r.out.Rejected++
		r.step = h * min(factor, 0.9)
		if r.step < 1e-12*r.end {
			r.out.Status = Stuck
			return false, nil
		}
		return true, nil
	}
	if !arrive || factor < 1 {
		r.step = h * factor
	}
	r.accept()
	r.out.Steps++
	from := r.time
	r.time += h
	if arrive {
		r.time = limit
	}
	r.prior, r.then, r.now = r.then, r.now, r.read()
	r.priorStep, r.lastStep = r.lastStep, r.time-from
	due := r.stirDue(from)
	if r.note(from) {
		return false, nil
	}
	if due && r.time < r.end {
		r.stir()
	}
	return true, nil
}

// scale is the largest change of a cell's enthalpy since the last restart,
// J/m³: early crossings are as sharp, relative to the time, as late ones.
func (r *run) scale() float64 {
	most := r.floor
	base := r.base[:len(r.u)]
	for i, v := range r.u {
		if d := math.Abs(v - base[i]); d > most {
			most = d
		}
	}
	return most
}
