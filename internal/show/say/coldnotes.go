package say

import (
	"math"

	"ripplewright/internal/answer/cold"
)

// coldSentences has one entry for each code of a note of the cold.
var coldSentences = map[string]sentence{
	"box_as_round": of(func(s Style, f cold.BoxAsRound) string {
		if f.Dish {
			return T("The box is computed as a round dish of its area and depth.")
		}
		return T("The box is computed as a round tub of its volume and height.")
	}),
	"never_hardens": of(func(s Style, f cold.NeverHardens) string {
		return T("The core does not reach %s within %s.", s.Temperature(f.CoreC), s.Duration(f.WithinMinutes))
	}),
	"never_half_frozen": of(func(s Style, f cold.NeverHalfFrozen) string {
		return T("In air of %s half of the custard's water never turns to ice: it stays too thin to swirl. Use less sugar or alcohol.", s.Temperature(f.AirC))
	}),
	"longer_than_practice": func(s Style, facts any) string {
		switch f := facts.(type) {
		case cold.LongBeating:
			return T("Cooks beat about five times over about two hours; this layer of %s takes %s. Two hours need %s or less, a fan, or a cold metal shelf.", s.Length(f.DepthMM), s.Duration(f.TakesMinutes), s.Length(15))
		case cold.LongHardening:
			return T("Cooks harden a tub of this size overnight; this one needs %s.", s.Duration(f.TakesMinutes))
		}
		return ""
	},
	"unlike_practice": of(func(s Style, f cold.UnlikePractice) string {
		scoops := T("this one scoops after %s", s.Duration(f.FromMinutes))
		if known(f.ToMinutes) {
			scoops = T("this one scoops from %s", s.DurationSpan(f.FromMinutes, f.ToMinutes))
		}
		return T("Cooks leave a tub of this size out for %s; %s.", s.DurationSpan(f.PracticeFromMinutes, f.PracticeToMinutes), scoops)
	}),
	"wall_before_core": of(func(s Style, f cold.WallBeforeCore) string {
		when := T("at once")
		if f.MeltsMinutes >= 0.5 {
			when = T("after %s", s.Duration(f.MeltsMinutes))
		}
		return T("The wall begins to melt %s, before the core scoops: take from the outside, or soften the tub in the refrigerator.", when)
	}),
	"swing_thaws_phase": of(func(s Style, f cold.SwingThaws) string {
		swing := s.TemperatureStep(f.SwingK)
		if known(f.KeepBelowC) {
			return T("When the freezer swings %s up, one phase loses its ice and draws water from the other: keep the tub at %s or colder.", swing, s.TemperatureTo(math.Floor(f.KeepBelowC), 0))
		}
		return T("When the freezer swings %s up, one phase loses its ice and draws water from the other.", swing)
	}),
	"water_drawn_in_storage": of(func(s Style, f cold.WaterDrawn) string {
		return Storage(s, &f.Storage) + " " + StorageChange(s, &f.Storage)
	}),
}
