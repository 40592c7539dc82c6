package icy

import (
	"math"
	"math/cmplx"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/matter/ice"
)

// mostFrames is how many frames of the hardening tub are walked; the rest are
// passed over evenly. More moves no size by a tenth of a percent.
const mostFrames = 128

// What a freezer does to its air. The swing's slow part is what reaches a tub:
// defrosts every 6 to 12 hours, days and nights; the compressor's own minutes do
// not (consumer pages; common practice, no source). One opening of a minute or so
// warms the air by 10 K for ten minutes: an estimate; one page met that warmth for
// half an hour after a long one.
const (
	swingMinutes   = 12 * 60
	openingK       = 10
	openingMinutes = 10
)

// tubHistory is the hardening tub's cells, and how they follow the air.
type tubHistory struct {
	minutes []float64
	frames  [][]float64 // °C by cell, one a minute of minutes
	volume  []float64   // of the cells, adding up to 1
	wall    int         // the side's cell at half height

	// Late in hardening every cell nears the air by the tub's one slowest decay.
	lag  float64   // its time constant, minutes; 0 where it is not known: the tub then follows at once
	part []float64 // how far each cell is from the air then, over the mean
}

func historyOf(h *cold.Harden) tubHistory {
	run := &h.Run
	var t tubHistory
	stride := 1 + (len(run.Frames)-1)/mostFrames
	for i := 0; i < len(run.Frames); i += stride {
		t.minutes, t.frames = append(t.minutes, run.Frames[i].AtMinutes), append(t.frames, run.Frames[i].C)
	}
	if n := len(run.Frames); n > 0 && (n-1)%stride != 0 {
		t.minutes, t.frames = append(t.minutes, run.Frames[n-1].AtMinutes), append(t.frames, run.Frames[n-1].C)
	}
	n := run.Outward * run.Upward
	t.volume, t.part = make([]float64, n), make([]float64, n)
	for c := range t.volume {
		t.volume[c] = float64(2*(c%run.Outward)+1) / float64(run.Outward*run.Outward*run.Upward)
		t.part[c] = 1
	}
	t.wall = run.Upward/2*run.Outward + run.Outward - 1
	t.follow(h.AirC)
	return t
}

// follow finds the slowest decay from the mean's last way to the air, over which
// its distance falls to two fifths.
func (t *tubHistory) follow(air float64) {
	const fall = 2.5
	last := len(t.frames) - 1
	if last < 1 {
		return
	}
	mean := func(i int) float64 {
		sum := 0.0
		for c, v := range t.volume {
			sum += v * t.frames[i][c]
		}
		return sum - air
	}
	end := mean(last)
	if !(end > 0) {
		return
	}
	for i := last - 1; i >= 0; i-- {
		if was := mean(i); was >= fall*end {
			t.lag = (t.minutes[last] - t.minutes[i]) / math.Log(was/end)
			for c := range t.part {
				t.part[c] = (t.frames[last][c] - air) / end
			}
			return
		}
	}
}

// swing returns by how many kelvin a cell goes up and down with the air's ±k: a
// part of it with the tub's lag, the rest at once.
func (t *tubHistory) swing(cell int, k float64) float64 {
	if len(t.part) == 0 {
		return k
	}
	a := complex(t.part[cell], 0)
	return k * cmplx.Abs(a/complex(1, 2*math.Pi*t.lag/swingMinutes)+1-a)
}

// opening returns a cell's history through one opening, stored at t °C.
func (t *tubHistory) opening(cell int, stored float64) []ice.Moment {
	const points = 24
	part := 1.0
	if len(t.part) > 0 {
		part = t.part[cell]
	}
	lagged := func(minutes float64) float64 { // what is left of a distance
		if t.lag == 0 {
			return 0
		}
		return math.Exp(-minutes / t.lag)
	}
	var path []ice.Moment
	add := func(minute, rise float64) {
		path = append(path, ice.Moment{AtMinutes: minute, C: stored + math.Max(0, rise)})
	}
	for i := range points + 1 {
		m := openingMinutes * float64(i) / points
		add(m, openingK*(1-part*lagged(m)))
	}
	peak := openingK * part * (1 - lagged(openingMinutes))
	for i := range points + 1 {
		m := 5 * t.lag * float64(i) / points
		add(openingMinutes+m, peak*lagged(m))
	}
	return path
}

// cellSize is a cell and its crystals, µm³.
type cellSize struct {
	cell int
	y    float64
}

// harden returns the wall's crystals, the coarsest cell's and the mean of all
// cells once the tub is as cold as its air, from crystals of y µm³.
func (t *tubHistory) harden(law *ice.Law, y, air float64) (wall float64, core cellSize, mean float64) {
	if len(t.frames) == 0 {
		return y, cellSize{0, y}, y
	}
	n := len(t.minutes)
	path := make([]ice.Moment, n+1)
	for c, v := range t.volume {
		for i, f := range t.frames {
			path[i] = ice.Moment{AtMinutes: t.minutes[i], C: f[c]}
		}
		path[n] = ice.Moment{AtMinutes: t.minutes[n-1] + 3*t.lag, C: air}
		grown := law.StillUM3(y, path)
		mean += v * grown
		if c == t.wall {
			wall = grown
		}
		if grown > core.y {
			core = cellSize{c, grown}
		}
	}
	return wall, core, mean
}
