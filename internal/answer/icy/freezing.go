package icy

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/matter/ice"
)

// seedUM is the mean diameter with which crystals begin, 8 to 25 µm, chosen with
// the ranges of finished products in mind (an assumption). It hardly matters: a
// tray of four hours leaves 4 % of it.
const seedUM = 15

// The plates that crystals grow into where nothing parts them: felt as if so many
// times as large, and the ends of what that may be (assumptions; few, large,
// grown together and coarse is McGee 2004, On Food and Cooking).
var plates = struct{ times, least, most float64 }{2, 1.3, 3}

// Airy is the share of air by volume from which bubbles keep crystals apart as a
// beater does, as in a mousse (an assumption).
const Airy = 0.4

// The churns: minutes from 4 °C to half frozen and what cools
// them. A bowl from the freezer is as cold as that is, the wall of one that cools
// itself about −30 °C. Common practice, no source.
var bowlChurn, machine = churn{30, math.NaN()}, churn{20, -30}

type churn struct{ minutes, wallC float64 }

// The doubts. Churns: crystals that grow together and a slow dasher are left out,
// so the size is likely low; products drawn from one have 20 to 35 µm (from
// memory).
var (
	churned  = ice.Doubt{FinerFactor: 1.35, CoarserFactor: 2}
	unparted = ice.Doubt{FinerFactor: ice.Unbroken.FinerFactor * plates.times / plates.least, CoarserFactor: ice.Unbroken.CoarserFactor * plates.most / plates.times}
)

// beatCounts is the ice share from which a beat parts crystals; below, new ones
// still form by themselves (as package ice has it).
const beatCounts = 0.1

// frozen is a phase as it goes into the tub, all in µm³.
type frozen struct {
	seed, beaten, y float64 // beaten: at the last beat
	unbeaten        bool
	doubt           ice.Doubt
}

const seedVolume = seedUM * seedUM * seedUM

// custard follows the custard until it goes into the tub.
func (t *teller) custard(law *ice.Law) frozen {
	f := frozen{seed: seedVolume, doubt: ice.Unbroken}
	if t.a.Profile.Churn.Turns() {
		c := bowlChurn
		if t.a.Profile.Churn.Kind == "batch_freezer" {
			c = machine
		}
		wall := c.wallC
		if math.IsNaN(wall) {
			wall = t.a.Profile.Freezer.AirC
		}
		if path, ok := law.Cool(c.minutes, wall); ok {
			f.beaten = law.BeatenUM3(f.seed, 0.5, path.Path)
			f.y, f.doubt = f.beaten, churned
			return f
		}
	}
	c := &t.a.StillFreeze.Dense
	path := dish(c)
	last := lastBeat(c, law)
	switch {
	case t.a.Profile.Layer.Beating == cold.Never:
		last = math.NaN()
	case t.toEnd && len(path) > 0:
		last = path[len(path)-1].AtMinutes
	}
	if math.IsNaN(last) {
		f.unbeaten = true
		f.beaten = law.BeatenUM3(f.seed, 1, path)
		f.y = law.StillUM3(f.seed, path)
		if t.r.Dense.Body.AirFraction() <= Airy {
			f.y, f.doubt = math.Max(f.y, math.Pow(plates.times, 3)*f.beaten), unparted
		}
		f.beaten = math.Min(f.beaten, f.y)
		return f
	}
	before, after := split(path, last)
	f.beaten = law.BeatenUM3(f.seed, 1, before)
	f.y = law.StillUM3(f.beaten, after)
	return f
}

// foam follows the foam until it goes into the tub. Nothing beats it; its bubbles
// part its crystals as a beater does (an assumption: of a foam nothing was
// measured).
func (t *teller) foam(law *ice.Law) frozen {
	f := frozen{seed: seedVolume, beaten: seedVolume, doubt: ice.Unbroken}
	f.y = law.StillUM3(f.seed, dish(&t.a.StillFreeze.Foam))
	return f
}

// dish is the history of a phase in its dish: the mean's, mixed, until it is
// taken out.
func dish(c *cold.Cooling) []ice.Moment {
	var path []ice.Moment
	for _, m := range c.Run.Track {
		if c.ReadyMinutes.Known() && m.AtMinutes >= c.ReadyMinutes.Value {
			break
		}
		path = append(path, ice.Moment{AtMinutes: m.AtMinutes, C: m.MeanC})
	}
	if c.ReadyMinutes.Known() && !math.IsNaN(c.ReadyC) {
		path = append(path, ice.Moment{AtMinutes: c.ReadyMinutes.Value, C: c.ReadyC})
	}
	return path
}

// lastBeat is the minute of the last stir that counts, NaN without one.
func lastBeat(c *cold.Cooling, law *ice.Law) float64 {
	last := math.NaN()
	for _, s := range c.Stirs {
		if law.IceFraction(s.MeanC) >= beatCounts {
			last = s.AtMinutes
		}
	}
	return last
}

// split parts a history at a minute.
func split(path []ice.Moment, minute float64) (before, after []ice.Moment) {
	for i, m := range path {
		if m.AtMinutes < minute {
			continue
		}
		at := m
		if i > 0 && m.AtMinutes > minute {
			p := path[i-1]
			at = ice.Moment{AtMinutes: minute, C: p.C + (minute-p.AtMinutes)/(m.AtMinutes-p.AtMinutes)*(m.C-p.C)}
		}
		return append(path[:i:i], at), append([]ice.Moment{at}, path[i:]...)
	}
	return path, nil
}
