package cold

import (
	"math"

	"ripplewright/internal/matter/heat"
)

// What the core has to come down to. Own conventions: at −10 °C an ordinary
// custard has two thirds of its water frozen and bears carrying; −15 °C is
// within 3 K of a home freezer. The trade asks −18 °C (Euroglaces, code for
// edible ices). Neither is asked closer than 3 K to the air, which a core
// reaches only in the limit.
const (
	moveC   = -10
	storeC  = -15
	aboveK  = 3
	settleK = 1
)

// hardenLimit is how long a tub is followed, s.
const hardenLimit = 96 * 3600

// harden follows the filled tub in the freezer.
func (pl *planner) harden() error {
	air := pl.p.Freezer.AirC
	h := &pl.a.Harden
	h.AirC = air
	h.MoveC, h.CoreToC = math.Max(moveC, air+aboveK), math.Max(storeC, air+aboveK)
	// Both phases are swirled in at the custard's temperature. A foam without
	// custard waits for none: it goes into the tub as whipped.
	h.StartC = pl.a.StillFreeze.Dense.ReadyC
	if math.IsNaN(h.StartC) {
		h.StartC = pl.p.Layer.StartC
	}
	if pl.o.FillC != nil {
		h.StartC = *pl.o.FillC
	}
	h.Already = h.StartC <= h.CoreToC
	times, out, mesh, err := pl.follow(exposure{
		what: "hardening", substance: pl.tub, vessel: pl.a.Tub, cells: hardenCells,
		place: pl.p.Freezer, pack: pl.p.Package, lid: pl.p.Package.LidM2KPerW,
		start: h.StartC, target: h.CoreToC, limit: hardenLimit,
		levels: []heat.Level{{Of: heat.Hottest, AtC: h.MoveC}, {Of: heat.Hottest, AtC: h.CoreToC}},
		settle: &heat.Level{Of: heat.Hottest, AtC: air + settleK},
		every:  300, frames: 300, histories: true,
	})
	if err != nil {
		return err
	}
	h.MoveHours, h.Hours = times[0].over(3600), times[1].over(3600)
	h.Run = picture(out, mesh, pl.a.Tub, heat.Hottest)
	return nil
}
