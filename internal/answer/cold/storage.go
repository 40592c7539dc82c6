package cold

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/ice"
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
	s.AgeingIndex, s.AgeingIndexWarm = math.NaN(), math.NaN()
	for i := range s.Ageing {
		s.Ageing[i] = math.NaN()
	}
	var dense, foam *phase.Body
	for _, b := range pl.tub.bodies {
		if b.Role == phase.Foam {
			foam = b
			s.Foam = stored(b, s.AtC, s.SwingK)
		} else {
			dense = b
			s.age(b)
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
	ice := b.IceG(at)
	s.WaterFrozenPercent = 100 * b.At(at).FrozenFraction
	s.IceWhenWarm = b.IceG(at+swing) > 0
	if s.HasIce = ice > 0; s.HasIce {
		s.SwingPercent = 100 * (b.IceG(at-swing) - b.IceG(at+swing)) / b.IceG(at-swing)
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
	bound := solution.Bound{ProteinGPerG: pl.d.Model.ProteinGPerG, FibreGPerG: pl.d.Model.FibreGPerG}
	drawer, from := foam, dense
	if !s.Dense.HasIce && (s.Foam.HasIce || lower(dense, foam, bound, s.AtC)) {
		drawer, from = dense, foam
	}
	s.WaterDrawn, s.Drawer = true, drawer.Role.String()
	sorption := solution.NewSorption(drawer.Mix, bound)
	if from.IceG(s.AtC) > 0 {
		s.DrawnG = missing(&sorption, drawer, s.AtC)
	}
	s.Change = Change{drawer.FreezingPointC, math.Ceil(missing(&sorption, drawer, s.AtC+spareK)), s.AtC + spareK}
	pl.note(model.Caution, "water_drawn_in_storage", "storage", WaterDrawn{*s})
}

// missing returns the water that b lacks to be in balance with ice at t, g per
// 100 g: what its solutes hold at the activity of ice (solution.Sorption) less
// what there is.
//
//	100 max(0, U(y) − W)/m
func missing(s *solution.Sorption, b *phase.Body, t float64) float64 {
	return 100 * math.Max(0, s.HeldG(t)-b.Mix.Grams[mix.Water]) / b.Mix.TotalG()
}

// lower reports whether a's water activity is below b's, neither with ice.
func lower(a, b *phase.Body, bound solution.Bound, t float64) bool {
	x, errX := solution.Activity(a.Mix, bound, t)
	y, errY := solution.Activity(b.Mix, bound, t)
	return errX == nil && errY == nil && x < y
}

// age says how fast the custard's crystals grow here, against −18 °C.
func (s *Storage) age(dense *phase.Body) {
	law := ice.Of(dense, 1)
	s.AgeingIndex, s.AgeingIndexWarm = ageing(law, s.AtC), ageing(law, s.AtC+s.SwingK)
	for i, at := range AgeingAtC {
		s.Ageing[i] = ageing(law, at)
	}
}

// ageing is the law's index, NaN where there is no ice to grow.
func ageing(law *ice.Law, at float64) float64 {
	if !(law.UM3PerDay(at) > 0) {
		return math.NaN()
	}
	return law.IndexRatio(at)
}
