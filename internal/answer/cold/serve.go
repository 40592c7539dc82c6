package cold

import (
	"context"
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/heat"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Bands are looked for between these, °C: above 0 nothing is a frozen dessert.
const coldestBand, warmestBand = -40, 0

// How long a tub is followed, s, and how often its picture is kept.
const (
	counterLimit, counterFrames = 12 * 3600, 60
	fridgeLimit, fridgeFrames   = 48 * 3600, 300
)

// serve follows the tub from the freezer to the counter and, instead, to the
// refrigerator.
func (pl *planner) serve() error {
	for _, s := range [...]struct {
		to            *Softening
		name          string
		place         Place
		limit, frames float64
	}{
		{&pl.a.Counter, "counter", pl.p.Counter, counterLimit, counterFrames},
		{&pl.a.Fridge, "refrigerator", pl.p.Refrigerator, fridgeLimit, fridgeFrames},
	} {
		s.to.Place = s.name
		if err := pl.soften(s.to, s.place, s.limit, s.frames); err != nil {
			return err
		}
	}
	return nil
}

// Thaw follows the tub of d from the freezer to the counter: Plan's Counter, as its
// coefficient stands, without bands and pictures, in a twentieth of the time.
func Thaw(ctx context.Context, d design.Design, r *model.Result, p Profile) (Softening, error) {
	if err := p.Validate(); err != nil {
		return Softening{}, err
	}
	tub, err := rippled(r)
	if err != nil {
		return Softening{}, err
	}
	a := Answer{Profile: p, Tub: tubVessel(d.Tubs), Counter: Softening{Place: "counter"}}
	pl := planner{runner{ctx: ctx, alone: true, total: 1}, d, r, p, tub, &a, Options{}}
	if err := pl.soften(&a.Counter, p.Counter, counterLimit, counterFrames); err != nil {
		return Softening{}, flaw.New("the cold: %v", err)
	}
	return a.Counter, nil
}

// bands sets the temperatures between which each phase eats as it should, and
// those between which both do.
func (pl *planner) bands(s *Softening) {
	s.FromC, s.ToC, s.OK = coldestBand, warmestBand, true
	known := true
	for i, b := range pl.tub.bodies {
		band := &s.Dense
		if b.Role == phase.Foam {
			band = &s.Foam
		}
		band.Present = true
		band.FromC, band.ToC, band.OK = b.ScoopRangeC(coldestBand, warmestBand)
		var read bool
		if band.LawFromC, read = b.LawFromC(coldestBand, warmestBand); !read {
			band.LawFromC = math.NaN()
		}
		if !band.OK {
			band.FromC, band.ToC = math.NaN(), math.NaN()
			served := b.At(pl.d.Serving.TemperatureC)
			known = known && !b.LawRange(&served).Ends()
		}
		s.FromC, s.ToC = math.Max(s.FromC, band.FromC), math.Min(s.ToC, band.ToC)
		s.OK = s.OK && band.OK
		// Melting at the wall is the first phase to become pourable; a foam
		// with a film never does, and then it is the last of its ice.
		melt, _ := b.YieldAtC(phase.Words[0].BelowKPa, coldestBand, warmestBand)
		if melt == warmestBand {
			melt = b.FreezingPointC
		}
		if i == 0 || melt < s.MeltC && b.Role == phase.Dense {
			s.MeltC = melt
		}
	}
	switch {
	case !known:
		s.Why = NobodyKnows
	case !s.OK:
		s.Why = NeverScoops
	case !(s.FromC < s.ToC):
		s.OK, s.Why = false, NeverTogether
	}
}

func (pl *planner) soften(s *Softening, place Place, limit, frames float64) error {
	s.AirC, s.StartC = place.AirC, pl.p.Freezer.AirC
	pl.bands(s)
	serving := pl.d.Serving.TemperatureC
	levels := []heat.Level{
		{Of: heat.Ring, AtC: s.Dense.FromC}, {Of: heat.Ring, AtC: s.Dense.ToC},
		{Of: heat.Ring, AtC: s.Foam.FromC}, {Of: heat.Ring, AtC: s.Foam.ToC},
		{Of: heat.Ring, AtC: s.FromC}, {Of: heat.Ring, AtC: s.ToC},
		{Of: heat.Mean, AtC: s.FromC}, {Of: heat.Coldest, AtC: s.FromC},
		{Of: heat.Ring, AtC: serving}, {Of: heat.Mean, AtC: serving},
		{Of: heat.Wall, AtC: s.MeltC},
	}
	for i, b := range [...]*ScoopTimes{&s.Dense, &s.Foam} {
		if !b.Present {
			levels[2*i].AtC, levels[2*i+1].AtC = math.NaN(), math.NaN()
		}
	}
	times, out, mesh, err := pl.follow(exposure{
		what: s.Place, substance: pl.tub, vessel: pl.a.Tub, cells: counterMesh,
		place: place, pack: pl.p.Package, lid: pl.p.Package.LidM2KPerW,
		start: s.StartC, target: warmestBand, limit: limit,
		levels: levels, every: 30, frames: frames,
	})
	if err != nil {
		return err
	}
	for i := range times {
		times[i] = times[i].over(60)
	}
	s.Dense.FromMinutes, s.Dense.ToMinutes, s.Foam.FromMinutes, s.Foam.ToMinutes = times[0], times[1], times[2], times[3]
	s.FromMinutes, s.ToMinutes, s.WholeMinutes, s.CoreMinutes = times[4], times[5], times[6], times[7]
	s.RingServingMinutes, s.MeanServingMinutes, s.MeltsAtWallMinutes = times[8], times[9], times[10]
	s.Run = picture(out, mesh, pl.a.Tub, heat.Coldest)
	if s.OK && s.ToMinutes.Value == 0 {
		s.OK, s.Why = false, TooSoft
	}
	if !s.OK {
		s.FromMinutes, s.ToMinutes = never(), never()
	}
	s.RingC, s.CoreC, s.EndCoreC = math.NaN(), math.NaN(), math.NaN()
	if s.FromMinutes.Known() {
		at := s.Run.At(s.FromMinutes.Value)
		s.RingC, s.CoreC = at.RingC, at.CoreC
	}
	if s.ToMinutes.Known() {
		s.EndCoreC = s.Run.At(s.ToMinutes.Value).CoreC
	}
	return nil
}
