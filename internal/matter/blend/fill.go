package blend

import (
	"math"

	"ripplewright/internal/matter/phase"
)

// Order is what the maker wants of the batch.
type Order struct {
	FillML       float64 // volume to fill in all tubs together
	FoamFraction float64 // of the volume, 0 to 1
	Scale        bool    // scale both phases to the order; else keep what there is
}

// Portion is what becomes of one phase. Made = in the tubs + left over.
type Portion struct {
	Factor       float64 // from what is written to what is made
	UsedFraction float64 // share of what is made that goes into the tubs, 0 to 1
	MassG        float64 // in the tubs
	VolumeML     float64 // in the tubs
	MadeG        float64
	MadeML       float64
	LeftG        float64 // left over at the order's share; in no tub
	LeftML       float64
}

// Tub is the two phases joined, without what is left over.
type Tub struct {
	Dense, Foam        Portion
	FoamVolumeFraction float64 // share of the volume that is foam
	FoamMassFraction   float64
	MassG              float64
	VolumeML           float64
	FilledFraction     float64 // of the order's volume: 1 is all tubs full
}

// Fill returns what the order makes of the two phases as written. A phase
// with no volume that the order asks for leaves Filled below 1.
//
// The share is the maker's. Scaled, each phase gets a factor of its own and
// nothing is left over. As written, both factors are 1, the scarcer phase
// decides how much is filled, and what is over of the other is in no tub. A
// phase that is not there at all decides nothing: the other fills alone.
func Fill(dense, foam *phase.Body, o Order) Tub {
	vd, vf := dense.VolumeML(), foam.VolumeML()
	t := Tub{Dense: Portion{Factor: 1}, Foam: Portion{Factor: 1}}
	if o.Scale {
		t.Dense.Factor = factor(o.FillML*(1-o.FoamFraction), vd)
		t.Foam.Factor = factor(o.FillML*o.FoamFraction, vf)
	}
	t.Dense.make(dense, vd)
	t.Foam.make(foam, vf)
	wantDense, wantFoam := t.Dense.MadeML, t.Foam.MadeML
	if !o.Scale && vd > 0 && vf > 0 {
		all := atShare(vd, vf, o.FoamFraction)
		wantDense, wantFoam = all*(1-o.FoamFraction), all*o.FoamFraction
	}
	t.Dense.use(wantDense)
	t.Foam.use(wantFoam)
	t.VolumeML = t.Dense.VolumeML + t.Foam.VolumeML
	t.MassG = t.Dense.MassG + t.Foam.MassG
	if t.VolumeML > 0 {
		t.FoamVolumeFraction = t.Foam.VolumeML / t.VolumeML
		t.FoamMassFraction = t.Foam.MassG / t.MassG
	}
	if o.FillML > 0 {
		t.FilledFraction = t.VolumeML / o.FillML
	}
	return t
}

func factor(want, have float64) float64 {
	if have <= 0 {
		return 0
	}
	return want / have
}

// atShare returns how much can be filled of two volumes at a share of foam.
func atShare(dense, foam, share float64) float64 {
	all := math.Inf(1)
	if share < 1 {
		all = dense / (1 - share)
	}
	if share > 0 {
		all = math.Min(all, foam/share)
	}
	return all
}

func (p *Portion) make(b *phase.Body, volume float64) {
	p.MadeML = p.Factor * volume
	p.MadeG = p.Factor * b.Mix.TotalG()
}

// use puts ml of what is made into the tubs and leaves the rest over.
func (p *Portion) use(ml float64) {
	if p.MadeML <= 0 {
		return
	}
	p.UsedFraction = math.Min(1, ml/p.MadeML)
	p.VolumeML, p.MassG = p.UsedFraction*p.MadeML, p.UsedFraction*p.MadeG
	p.LeftML, p.LeftG = (1-p.UsedFraction)*p.MadeML, (1-p.UsedFraction)*p.MadeG
}

// Mean returns the mean of a per-mass figure over the tub.
func (t *Tub) Mean(dense, foam float64) float64 {
	return (1-t.FoamMassFraction)*dense + t.FoamMassFraction*foam
}
