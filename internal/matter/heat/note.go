package heat

import "ripplewright/internal/matter/num"

// temperature is T(u) for enthalpies that the cubic between two steps may have
// taken a hair past the table.
func (m *Material) temperature(u float64) float64 {
	return m.TemperatureC(min(max(u, m.u[0]), m.u[len(m.u)-1]))
}

// sampleStart notes the moment 0.
func (r *run) sampleStart() {
	r.then = r.now
	r.sample(0, 1)
	r.nextTrack = r.p.EveryS
	for r.nextFrame < len(r.p.FramesS) && r.p.FramesS[r.nextFrame] == 0 {
		r.frame(0, 1)
	}
	for i, l := range r.p.Levels {
		if r.now[l.Of].u == r.levels[i] || l.Of == Wall && r.leapt(l.AtC) {
			r.out.CrossingsS[i] = 0
		}
	}
}

// leapt reports whether the wall passed t °C as the body was set there: its
// surface takes the air's side at once.
func (r *run) leapt(t float64) bool {
	inner := r.mat.temperature(r.u[r.wall])
	return (inner-t)*(r.now[Wall].u-t) < 0
}

// note records what the step from the time from to now has passed, and reports
// whether the run may stop.
func (r *run) note(from float64) (stop bool) {
	h := r.time - from
	if r.p.EveryS == 0 {
		r.sample(r.time, h)
	}
	for r.p.EveryS > 0 && r.nextTrack <= r.time {
		r.sample(r.nextTrack, h)
		r.nextTrack = r.p.EveryS * float64(len(r.out.Track))
	}
	for r.nextFrame < len(r.p.FramesS) && r.p.FramesS[r.nextFrame] <= r.time {
		r.frame(r.p.FramesS[r.nextFrame], h)
	}
	missing := false
	for i, l := range r.p.Levels {
		if r.out.CrossingsS[i] >= 0 {
			continue
		}
		if f, ok := r.cross(l.Of, r.levels[i], h); ok {
			r.out.CrossingsS[i] = from + f*h
		} else {
			missing = true
		}
	}
	if r.o.StopEarly && !missing && len(r.levels) > 0 {
		r.out.Status = Reached
		return true
	}
	return false
}

// sample appends the quantities at time t of the last step, h long.
func (r *run) sample(t, h float64) {
	s := Sample{TimeS: t}
	f := 1 - (r.time-t)/h
	for q := range s.TemperatureC {
		v := r.between(Quantity(q), f, h)
		if Quantity(q) != Wall {
			v = r.mat.temperature(v)
		}
		s.TemperatureC[q] = v
	}
	r.out.Track = append(r.out.Track, s)
}

// frame appends the whole field at time t of the last step, h long.
func (r *run) frame(t, h float64) {
	temperature := make([]float64, len(r.u))
	f := 1 - (r.time-t)/h
	for i, u := range r.u {
		if f < 1 {
			u = num.Hermite(f, h, r.last[i], r.before[i], u, r.rate[i])
		}
		temperature[i] = r.mat.temperature(u)
	}
	r.out.Frames = append(r.out.Frames, Frame{t, temperature})
	r.nextFrame++
}
