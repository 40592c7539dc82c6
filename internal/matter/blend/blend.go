// Package blend joins the two phases in the tub: how much of each goes in, how
// many tubs that fills, what is left over, and how the pair compares.
//
// Volumes are mL as filled (phase.ReferenceC), masses g, fractions of 1.
package blend

import (
	"math"

	"ripplewright/internal/matter/phase"
)

// Order is what the maker wants of the batch.
type Order struct {
	FillML    float64 // volume to fill in all tubs together
	FoamShare float64 // of the volume, 0 to 1
	Scale     bool    // scale both phases to the order; else keep what there is
}

// Portion is what becomes of one phase.
type Portion struct {
	Factor   float64 // on everything as written
	MassG    float64 // made
	VolumeML float64 // made
	LeftG    float64 // of it, left over when blended at the order's share
	LeftML   float64
}

// Tub is the two phases joined.
type Tub struct {
	Dense, Foam Portion
	FoamVolume  float64 // share of the volume made that is foam
	FoamMass    float64
	MassG       float64
	VolumeML    float64
	Filled      float64 // of the order's volume: 1 is all tubs full
}

// Fill returns what the order makes of the two phases as written. A phase
// with no volume that the order asks for leaves Filled below 1.
//
// Scaled, each phase gets a factor of its own and nothing is left over. As
// written, both factors are 1, all that is made counts as the blend, and what
// would be left over at the order's share is told.
func Fill(dense, foam *phase.Body, o Order) Tub {
	vd, vf := dense.Volume(), foam.Volume()
	t := Tub{Dense: Portion{Factor: 1}, Foam: Portion{Factor: 1}}
	if o.Scale {
		t.Dense.Factor = factor(o.FillML*(1-o.FoamShare), vd)
		t.Foam.Factor = factor(o.FillML*o.FoamShare, vf)
	}
	t.Dense.make(dense, vd)
	t.Foam.make(foam, vf)
	t.VolumeML = t.Dense.VolumeML + t.Foam.VolumeML
	t.MassG = t.Dense.MassG + t.Foam.MassG
	if t.VolumeML > 0 {
		t.FoamVolume = t.Foam.VolumeML / t.VolumeML
		t.FoamMass = t.Foam.MassG / t.MassG
	}
	if o.FillML > 0 {
		t.Filled = t.VolumeML / o.FillML
	}
	if !o.Scale {
		t.leave(o.FoamShare)
	}
	return t
}

func factor(want, have float64) float64 {
	if have <= 0 {
		return 0
	}
	return want / have
}

func (p *Portion) make(b *phase.Body, volume float64) {
	p.VolumeML = p.Factor * volume
	p.MassG = p.Factor * b.Mix.Total()
}

// leave sets what is left of each phase when they are blended at share s: the
// scarcer one is used up.
func (t *Tub) leave(s float64) {
	all := math.Inf(1)
	if s < 1 {
		all = t.Dense.VolumeML / (1 - s)
	}
	if s > 0 {
		all = math.Min(all, t.Foam.VolumeML/s)
	}
	t.Dense.left(math.Max(0, t.Dense.VolumeML-all*(1-s)))
	t.Foam.left(math.Max(0, t.Foam.VolumeML-all*s))
}

func (p *Portion) left(ml float64) {
	if p.VolumeML <= 0 {
		return
	}
	p.LeftML = ml
	p.LeftG = p.MassG * ml / p.VolumeML
}

// Mean returns the mean of a per-mass figure over the tub.
func (t *Tub) Mean(dense, foam float64) float64 {
	return (1-t.FoamMass)*dense + t.FoamMass*foam
}

// Contrast is how the phases differ at one temperature.
type Contrast struct {
	Hardness  float64 // yield stress of the custard over that of the foam
	Sweetness float64 // foam minus custard, points of % sucrose equivalent
	ScoopsK   float64 // temperature at which the custard starts to scoop minus the foam's, K; NaN where a phase never does in the range or the custard always does
	// ScoopsAtLeast says that ScoopsK is a lower bound: the foam is never too
	// firm in the range, so it starts to scoop somewhere colder.
	ScoopsAtLeast bool
	Yield         float64 // one number for the tub, kPa: the geometric mean by volume (an estimate)
}

// Compare returns the contrast at the temperature of the states. scoopLo and
// scoopHi bound the search for the start of scooping, °C.
func Compare(dense, foam *phase.Body, at [2]phase.State, foamVolume, scoopLo, scoopHi float64) Contrast {
	c := Contrast{
		Hardness:  at[0].YieldKPa / at[1].YieldKPa,
		Sweetness: phase.SweetnessPercent(foam.Mix) - phase.SweetnessPercent(dense.Mix),
		Yield:     math.Exp((1-foamVolume)*math.Log(at[0].YieldKPa) + foamVolume*math.Log(at[1].YieldKPa)),
		ScoopsK:   math.NaN(),
	}
	fd, _, okd := dense.ScoopRange(scoopLo, scoopHi)
	ff, _, okf := foam.ScoopRange(scoopLo, scoopHi)
	if okd && okf && fd > scoopLo {
		c.ScoopsK, c.ScoopsAtLeast = fd-ff, ff <= scoopLo
	}
	return c
}

// Both returns the temperatures at which both phases are in their bands.
func Both(dense, foam *phase.Body, lo, hi float64) (from, to float64, ok bool) {
	fd, td, okd := dense.ScoopRange(lo, hi)
	ff, tf, okf := foam.ScoopRange(lo, hi)
	from, to = math.Max(fd, ff), math.Min(td, tf)
	return from, to, okd && okf && from < to
}
