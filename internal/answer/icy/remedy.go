package icy

import (
	"context"
	"math"
	"sort"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/work/design"
)

// Change is what a maker could do otherwise.
type Change string

// The changes.
const (
	ShallowerDish Change = "shallower_dish"
	ColderTray    Change = "colder_tray"
	BeatToTheEnd  Change = "beat_to_the_end"
	BeatAtAll     Change = "beat_it"
	SmallerTubs   Change = "smaller_tubs"
	ColderFreezer Change = "colder_freezer"
	SteadyFreezer Change = "steadier_freezer"
	OpenLess      Change = "open_less"
	LessFreeWater Change = "less_water"
)

// How far each change goes, all our own but the shelf.
const (
	leastRemedy    = 1.0  // µm that are worth a word
	shallowest     = 10.0 // mm
	metalShelf     = 40.0 // W/(m² K): a tray that was cold before, on cold metal (from memory)
	colderBy       = 4.0  // K
	coldestFreezer = -24.0
	leastTub       = 200.0 // mL
	waterOff       = 0.10  // of the custard's water, boiled away or left out
)

// Remedy is one change by itself, computed anew.
type Remedy struct {
	Change   Change
	From, To float64  // of what is changed; NaN where it is no number
	Hardened ice.Size // the coarser place then
	After    ice.Size // and after all weeks
	FinerUM  float64  // µm finer at that place after all weeks
	Word     Word     // then
}

// Remedies returns the changes that would make the custard's coarser place finer
// after all weeks by a micrometre or more, each alone and computed anew,
// what helps most first. t is Tell's answer with the same Options; d, r and a are
// what it was told of. It solves the heat again for each, some tens of
// milliseconds; a cancelled context gives its error.
func Remedies(ctx context.Context, d design.Design, r *model.Result, a *cold.Answer, t *Answer) ([]Remedy, error) {
	if !t.Custard.Frozen {
		return nil, nil
	}
	now := t.Custard.Weeks[t.Weeks].Coarser()
	var list []Remedy
	for _, c := range changes(d, r, &a.Profile, &a.StillFreeze.Dense) {
		then, err := c.tell(ctx, a, t)
		if err != nil {
			return nil, flaw.New("the ice, %s: %v", c.change, err)
		}
		if !then.Custard.Frozen {
			continue
		}
		end := then.Custard.Weeks[t.Weeks].Coarser()
		if finer := now.ValueUM - end.ValueUM; finer >= leastRemedy {
			list = append(list, Remedy{c.change, c.from, c.to, then.Custard.Weeks[0].Coarser(), end, finer, then.Custard.Word})
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].FinerUM > list[j].FinerUM })
	return list, nil
}

// trial is a changed design in a changed kitchen.
type trial struct {
	change   Change
	from, to float64
	d        design.Design
	r        *model.Result
	kitchen  cold.Profile
	toEnd    bool
	storage  bool // it changes nothing before the storage: no heat to solve
}

// tell tells the trial's ice, with the weeks of the answer that it is held against.
func (c *trial) tell(ctx context.Context, a *cold.Answer, was *Answer) (Answer, error) {
	plan := *a
	plan.Profile = c.kitchen
	if !c.storage {
		var err error
		if plan, err = cold.Plan(ctx, c.d, c.r, c.kitchen, cold.Options{NoPictures: true, OnlyFreezing: true}); err != nil {
			return Answer{}, err
		}
	}
	t := told(c.r, &plan)
	t.weeks, t.toEnd, t.gums = was.Weeks, c.toEnd, was.Gums
	return t.all(), nil
}

// changes lists what could be done otherwise in this kitchen with this design.
func changes(d design.Design, r *model.Result, p *cold.Profile, dish *cold.Cooling) []trial {
	var list []trial
	try := func(change Change, from, to float64, alter func(*trial)) {
		c := trial{change: change, from: from, to: to, d: d, r: r, kitchen: *p}
		alter(&c)
		if c.kitchen.Validate() == nil {
			list = append(list, c)
		}
	}
	none := math.NaN()
	byHand := p.Layer.Beating == cold.ByHand
	if turns := p.Churn.Turns(); !turns && dish.Present {
		if depth := dish.Vessel.HeightMM; depth > shallowest {
			to := math.Max(shallowest, math.Round(depth/2))
			try(ShallowerDish, depth, to, func(c *trial) { c.kitchen.Layer.DepthMM = to })
		}
		if shelf := math.Max(p.Layer.ShelfWPerM2K, p.Freezer.ShelfWPerM2K); shelf < metalShelf {
			try(ColderTray, none, none, func(c *trial) { c.kitchen.Layer.ShelfWPerM2K = metalShelf })
		}
	}
	switch {
	case p.Churn.Turns():
	case byHand && len(dish.Stirs) > 0:
		try(BeatToTheEnd, dish.Stirs[len(dish.Stirs)-1].AtMinutes, dish.ReadyMinutes.Value, func(c *trial) { c.toEnd, c.storage = true, true })
	default:
		try(BeatAtAll, none, none, func(c *trial) {
			c.kitchen.Layer.Beating, c.kitchen.Layer.StirEveryMinutes, c.toEnd = cold.ByHand, cold.Default().Layer.StirEveryMinutes, true
		})
	}
	if ml := d.Tubs.VolumeML / 2; ml >= leastTub {
		try(SmallerTubs, d.Tubs.VolumeML, ml, func(c *trial) { c.d.Tubs.VolumeML, c.d.Tubs.Count = ml, 2*d.Tubs.Count })
	}
	if to := math.Max(coldestFreezer, p.Freezer.AirC-colderBy); to < p.Freezer.AirC {
		try(ColderFreezer, p.Freezer.AirC, to, func(c *trial) { c.kitchen.Freezer.AirC = to })
	}
	if p.SwingK > 0 {
		try(SteadyFreezer, p.SwingK, p.SwingK/2, func(c *trial) { c.kitchen.SwingK, c.storage = p.SwingK/2, true })
	}
	if p.Openings > 0 {
		to := math.Floor(p.Openings / 2)
		try(OpenLess, p.Openings, to, func(c *trial) { c.kitchen.Openings, c.storage = to, true })
	}
	try(LessFreeWater, 0, 100*waterOff, func(c *trial) {
		c.r = dried(d, r)
	})
	return list
}

// dried returns r with less water in the custard, its other things the same.
func dried(d design.Design, r *model.Result) *model.Result {
	out := *r
	b := &r.Dense.Body
	bound := solution.Bound{ProteinGPerG: d.Model.ProteinGPerG, FibreGPerG: d.Model.FibreGPerG}
	out.Dense.Body = phase.Prepare(b.Mix.WithWater((1-waterOff)*b.Mix.Grams[mix.Water]), b.OverrunFraction, phase.Dense, bound)
	out.Dense.Body.HarderFactor = b.HarderFactor
	return &out
}
