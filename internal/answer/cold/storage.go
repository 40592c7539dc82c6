package cold

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
)

// spareK is how far below both freezing points storage should be: own rule,
// one swing of an ordinary freezer.
const spareK = 2

// store judges the tub at the freezer's temperature.
//
// Where both phases hold ice, both have ice's water activity and nothing
// moves, whatever the recipes. Where one has none, its activity differs, and
// water moves to the lower.
func (pl *planner) store() {
	s := &pl.a.Storage
	s.AtC, s.SwingK = pl.p.Freezer.AirC, pl.p.SwingK
	s.DrawnG, s.KeepBelowC = math.NaN(), math.NaN()
	s.age()
	var dense, foam *phase.Body
	for _, b := range pl.tub.bodies {
		if b.Role == phase.Foam {
			foam = b
			s.Foam = stored(b, s.AtC, s.SwingK)
		} else {
			dense = b
			s.Dense = stored(b, s.AtC, s.SwingK)
		}
	}
	s.swing()
	if dense == nil || foam == nil {
		return
	}
	if k := math.Min(dense.FreezingPointC, foam.FreezingPointC) - spareK; k > validC[0] {
		s.KeepBelowC = k
	}
	if s.Dense.HasIce && s.Foam.HasIce {
		if s.AtC+s.SwingK > s.KeepBelowC+spareK {
			pl.note(model.Caution, "swing_thaws_phase", "storage", SwingThaws{s.SwingK, s.KeepBelowC})
		}
		return
	}
	pl.draw(s, dense, foam)
}

func stored(b *phase.Body, at, swing float64) Stored {
	s := Stored{Present: true, FreezingPointC: b.FreezingPointC, SwingPercent: math.NaN()}
	ice := b.Ice(at)
	s.WaterFrozenPercent = 100 * b.At(at).WaterFrozen
	s.IceWhenWarm = b.Ice(at+swing) > 0
	if s.HasIce = ice > 0; s.HasIce {
		s.SwingPercent = 100 * (b.Ice(at-swing) - b.Ice(at+swing)) / b.Ice(at-swing)
	}
	return s
}

// swing finds what the freezer's swing does, and to which phase the most.
func (s *Storage) swing() {
	most := 0.0
	for _, p := range [...]struct {
		name string
		Stored
	}{{"custard", s.Dense}, {"foam", s.Foam}} {
		if !p.HasIce || !(p.SwingPercent > most) {
			continue
		}
		most, s.SwingPhase = p.SwingPercent, p.name
		switch {
		case !p.IceWhenWarm:
			s.Swing = SwingAll
		case most >= 50:
			s.Swing = SwingMost
		default:
			s.Swing = SwingPart
		}
	}
}

// draw finds which phase takes water from the other.
func (pl *planner) draw(s *Storage, dense, foam *phase.Body) {
	bound := solution.Bound{Protein: pl.d.Model.BoundWaterProtein, Fibre: pl.d.Model.BoundWaterFibre}
	drawer, from := foam, dense
	if !s.Dense.HasIce && (s.Foam.HasIce || lower(dense, foam, bound, s.AtC)) {
		drawer, from = dense, foam
	}
	s.WaterDrawn, s.Drawer = true, drawer.Role.String()
	sorption := solution.NewSorption(drawer.Mix, bound)
	if from.Ice(s.AtC) > 0 {
		s.DrawnG = missing(&sorption, drawer, s.AtC)
	}
	s.Change = Change{drawer.FreezingPointC, math.Ceil(missing(&sorption, drawer, s.AtC+spareK)), s.AtC + spareK}
	pl.note(model.Caution, "water_drawn_in_storage", "storage", WaterDrawn{*s})
}

// missing returns the water that b lacks to be in balance with ice at t, g per
// 100 g.
func missing(s *solution.Sorption, b *phase.Body, t float64) float64 {
	return 100 * math.Max(0, s.Held(t)-b.Mix.Mass[mix.Water]) / b.Mix.Total()
}

// lower reports whether a's water activity is below b's, neither with ice.
func lower(a, b *phase.Body, bound solution.Bound, t float64) bool {
	x, errX := solution.Activity(a.Mix, bound, t)
	y, errY := solution.Activity(b.Mix, bound, t)
	return errX == nil && errY == nil && x < y
}

// ageing is the growth of ice crystals, µm³ a day, in R³ = R0³ + K t:
//
//	K = (4/9) f D |d ln C/dT| 2γT0/(ρL)
//
// with 2γT0/(ρL) = 5.9e-8 K m and f = 2.5. The diffusivity of sucrose in what
// is left unfrozen is an order of magnitude (2e-12 m²/s at −10 °C, 1e-13 at
// −18 °C, from memory), so only ratios are shown, and no days. Measured rate
// constants were not found; that growth speeds up with temperature and swings
// is (Donhowe & Hartel 1996, Int. Dairy J. 6:1209, abstract).
var ageing = [...]struct{ t, k float64 }{{-18, 7}, {-15, 27}, {-12, 120}, {-10, 360}, {-5, 18000}}

// AgeingFromC and AgeingToC are the ends of the index, °C.
const AgeingFromC, AgeingToC = -18, -5

// AgeingIndex returns the growth at t relative to −18 °C, its logarithm by
// line between the points; NaN outside them.
func AgeingIndex(t float64) float64 {
	for i := 1; i < len(ageing); i++ {
		a, b := ageing[i-1], ageing[i]
		if t >= a.t && t <= b.t {
			return math.Exp(math.Log(a.k)+(t-a.t)/(b.t-a.t)*math.Log(b.k/a.k)) / ageing[0].k
		}
	}
	return math.NaN()
}

func (s *Storage) age() {
	s.AgeingIndex, s.AgeingIndexWarm = AgeingIndex(s.AtC), AgeingIndex(s.AtC+s.SwingK)
}
