package benchview

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/say"
)

// railPoints is how many temperatures the rail's curves have.
const railPoints = 121

// Rail is what the rail of temperatures shows of both phases. It keeps its
// slices from frame to frame.
type Rail struct {
	AtC         []float64 // rising
	Dense, Foam RailPhase

	states []phase.State
}

// RailPhase is one phase along the rail, a value for each temperature; NaN where
// none is known.
type RailPhase struct {
	Name              string
	HardnessKPa       []float64
	IceVolumeFraction []float64
	Scoop             model.ScoopRange
	Note              string // in place of a range that is none
}

// Follow brings the rail up to r.
func (x *Rail) Follow(r *model.Result) {
	if x.AtC == nil {
		x.AtC = model.RailC(railPoints)
	}
	x.follow(&x.Dense, &r.Dense, r, say.T("Custard"))
	x.follow(&x.Foam, &r.Foam, r, say.T("Foam"))
}

func (x *Rail) follow(c *RailPhase, p *model.Phase, r *model.Result, name string) {
	if c.HardnessKPa == nil {
		c.HardnessKPa, c.IceVolumeFraction = make([]float64, railPoints), make([]float64, railPoints)
	}
	c.Name = name
	x.states = model.Curve(&p.Body, x.AtC, x.states)
	for k, s := range x.states {
		c.HardnessKPa[k], c.IceVolumeFraction[k] = p.Body.HardnessKPa(&s), s.IceVolumeFraction
		if !r.Shown(p) {
			c.HardnessKPa[k], c.IceVolumeFraction[k] = math.NaN(), math.NaN()
		}
	}
	c.Scoop, c.Note = p.Scoop, ""
	switch {
	case p.WrittenG == 0:
		c.Scoop, c.Note = model.ScoopRange{}, say.NoLines.String()
	case r.Absent(p):
		c.Scoop, c.Note = model.ScoopRange{}, say.InNoTub.String()
	case p.Scoop.OK:
	case !p.Felt():
		c.Note = say.HowHard.String()
	default:
		c.Note = say.NowhereHere.String()
	}
}
