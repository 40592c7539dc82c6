package heat

import "ripplewright/internal/matter/num"

// stirDue reports whether a stir follows the step that began at from. When the
// edge asks for one inside the step, the step is cut back to that moment.
func (r *run) stirDue(from float64) bool {
	s := r.p.Stirring
	due := r.time >= r.nextStir
	if !s.ByEdge || r.now[Coldest].u > r.edge || r.now[Mean].u <= r.edge {
		return due
	}
	rest := s.RestS
	if rest == 0 {
		rest = 60
	}
	at := from
	if f, ok := r.cross(Coldest, r.edge, r.time-from); ok {
		at += f * (r.time - from)
	}
	at = max(at, r.lastStir+rest)
	if at < r.time {
		r.cutBack(from, at)
	}
	return due || at <= r.time
}

// cutBack ends the step that began at from at an earlier time, on the cubic of
// every cell; the heat that came in lies on the cubic of the same rates, so the
// accounts still agree.
func (r *run) cutBack(from, at float64) {
	h := r.time - from
	f := (at - from) / h
	for i, u := range r.u {
		r.u[i] = num.Hermite(f, h, r.last[i], r.before[i], u, r.rate[i])
	}
	r.heat = num.Hermite(f, h, r.lastHeat, r.lastFlow, r.heat, r.flow)
	r.refresh()
	r.time = at
	r.now = r.read()
}

// stir mixes the body now and notes it.
func (r *run) stir() {
	mean := r.now[Mean].u
	r.out.Stirs = append(r.out.Stirs, Stir{
		TimeS:  r.time,
		MeanC:  r.mat.temperature(mean),
		EdgeC:  r.mat.temperature(r.now[Coldest].u),
		JPerM3: mean,
	})
	fill(r.u, mean)
	r.lastStir = r.time
	for r.nextStir <= r.time {
		r.nextStir = r.p.Stirring.EveryS * float64(1+int(r.time/r.p.Stirring.EveryS*(1+1e-12)))
	}
	r.restart()
	r.then = r.now
	if r.p.EveryS == 0 {
		r.sample(r.time, 1)
	}
}
