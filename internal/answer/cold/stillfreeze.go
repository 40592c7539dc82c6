package cold

import (
	"math"

	"ripplewright/internal/matter/heat"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
)

// The custard's consistencies, as the share of its water that is ice. Half is
// "thick and difficult to stir", when to stop: McGee 2004, On Food and Cooking.
// A third, when it begins to hold the air that is beaten in, is our own.
const (
	whipFrozen  = 1. / 3
	readyFrozen = 1. / 2
)

const (
	dishLimit = 36 * 3600 // s a dish is followed
	edgeK     = 0.5       // below its freezing point the edge shows its first ice
	stirRest  = 600       // s at least between stirs by the edge
)

// stillFreeze follows both phases in their dishes. The custard goes in without
// air and keeps that volume, as heat goes by mass; the foam with all of its.
func (pl *planner) stillFreeze() error {
	s := &pl.a.StillFreeze
	s.HeadStartMinutes, s.ReadyMinutes = math.NaN(), math.NaN()
	s.Dense, s.Foam = Cooling{StartC: pl.p.Layer.StartC, AirC: pl.p.Freezer.AirC}, Cooling{StartC: pl.p.Layer.StartC, AirC: pl.p.Freezer.AirC}
	s.Dense.blank()
	s.Foam.blank()
	if pl.r.Dense.Portion.MadeG > 0 {
		bound := solution.Bound{ProteinGPerG: pl.d.Model.ProteinGPerG, FibreGPerG: pl.d.Model.FibreGPerG}
		body := phase.Prepare(pl.r.Dense.Body.Mix, 0, phase.Dense, bound)
		if err := pl.freezeCustard(&s.Dense, &body); err != nil {
			return err
		}
	} else {
		pl.done += 3
	}
	if pl.r.Foam.Portion.MadeG > 0 {
		if err := pl.freezeFoam(&s.Foam, &pl.r.Foam.Body); err != nil {
			return err
		}
	} else {
		pl.done += 3
	}
	custard, foam := s.Dense.ReadyMinutes.Value, s.Foam.ReadyMinutes.Value
	if math.IsNaN(custard) || math.IsNaN(foam) {
		return nil
	}
	s.StartFirst, s.HeadStartMinutes = "custard", math.Abs(custard-foam)
	if foam > custard {
		s.StartFirst = "foam"
	}
	s.ReadyMinutes = math.Max(custard, foam)
	return nil
}

func (c *Cooling) blank() {
	c.FirstIceMinutes, c.WhipMinutes, c.ReadyMinutes = never(), never(), never()
	c.WhipC, c.ReadyC, c.ReadyIceFraction = math.NaN(), math.NaN(), math.NaN()
}

// dish is a phase of massG in the kitchen's layer.
func (pl *planner) dish(c *Cooling, body *phase.Body, massG, target float64) exposure {
	l := pl.p.Layer
	c.Present = true
	c.VolumeML = massG / body.GPerML()
	c.Vessel = layerVessel(l, c.VolumeML)
	place := pl.p.Freezer
	if l.ShelfWPerM2K > 0 {
		place.ShelfWPerM2K = l.ShelfWPerM2K
	}
	e := exposure{
		substance: only(body), vessel: c.Vessel, cells: dishCells, place: place,
		start: l.StartC, target: target, limit: dishLimit, every: 60, frames: 60,
	}
	if l.Form == FormBox {
		e.lid = pl.p.Package.LidM2KPerW
	}
	return e
}

func (pl *planner) freezeCustard(c *Cooling, body *phase.Body) error {
	l := pl.p.Layer
	c.Stirred = l.Beating != Never
	c.WhipC, c.ReadyC, c.ReadyIceFraction = body.FrozenAtC(whipFrozen), body.FrozenAtC(readyFrozen), readyFrozen
	target := c.ReadyC
	if !(target > pl.p.Freezer.AirC) {
		target = pl.p.Freezer.AirC
	}
	e := pl.dish(c, body, pl.r.Dense.Portion.MadeG, target)
	e.what = "custard in its dish"
	e.levels = []heat.Level{{Of: heat.Coldest, AtC: body.FreezingPointC - edgeK}, {Of: heat.Mean, AtC: c.WhipC}, {Of: heat.Mean, AtC: c.ReadyC}}
	if !c.Stirred {
		e.stirring = heat.Stirring{}
	} else if l.StirEveryMinutes > 0 {
		e.stirring.EveryS = 60 * l.StirEveryMinutes
	} else if at := body.FrozenAtC(l.EdgeIcePercent / 100); !math.IsNaN(at) && at > validC[0] {
		e.stirring = heat.Stirring{ByEdge: true, EdgeC: at, RestS: stirRest}
		if at < math.Min(e.start, e.place.AirC)-1 {
			e.stirring = heat.Stirring{} // the edge never gets there
		}
	}
	times, out, mesh, err := pl.follow(e)
	if err != nil {
		return err
	}
	c.FirstIceMinutes, c.WhipMinutes, c.ReadyMinutes = times[0].over(60), times[1].over(60), times[2].over(60)
	for _, s := range out.Stirs {
		c.Stirs = append(c.Stirs, Stir{s.TimeS / 60, s.MeanC, s.EdgeC, 100 * body.At(s.MeanC).FrozenFraction})
	}
	c.Run = picture(out, mesh, c.Vessel, heat.Hottest)
	if !(c.ReadyC > pl.p.Freezer.AirC) {
		c.ReadyC, c.ReadyIceFraction = math.NaN(), math.NaN()
		c.Means = NeverHalf
	}
	return nil
}

// freezeFoam cools the foam to the custard's swirling temperature, so that
// neither melts the other. It holds its shape as whipped, with ice or without.
func (pl *planner) freezeFoam(c *Cooling, body *phase.Body) error {
	c.ReadyC = pl.a.StillFreeze.Dense.ReadyC
	if math.IsNaN(c.ReadyC) {
		if c.ReadyC = body.FrozenAtC(readyFrozen); !(c.ReadyC > pl.p.Freezer.AirC+aboveK) {
			c.ReadyC = pl.p.Freezer.AirC + aboveK
		}
	}
	c.ReadyIceFraction = body.At(c.ReadyC).FrozenFraction
	switch c.Means = AsCustard; {
	case !pl.a.StillFreeze.Dense.Present:
		c.Means = ByItself
	case c.ReadyIceFraction == 0:
		c.Means = AsCustardBare
	}
	e := pl.dish(c, body, pl.r.Foam.Portion.MadeG, c.ReadyC)
	e.what = "foam in its dish"
	e.levels = []heat.Level{{Of: heat.Coldest, AtC: body.FreezingPointC - edgeK}, {Of: heat.Mean, AtC: c.ReadyC}}
	if e.levels[0].AtC < c.ReadyC {
		e.levels[0].AtC = math.NaN() // it is out of the dish before
	}
	times, out, mesh, err := pl.follow(e)
	if err != nil {
		return err
	}
	c.FirstIceMinutes, c.ReadyMinutes = times[0].over(60), times[1].over(60)
	c.Run = picture(out, mesh, c.Vessel, heat.Hottest)
	return nil
}
