package say

import (
	"math"

	"ripplewright/internal/answer/cold"
)

// coldSentences has one entry for each code of a note of the cold.
var coldSentences = map[string]sentence{
	"box_as_round": of(func(s Style, f cold.BoxAsRound) string {
		if f.Dish {
			return "The box is computed as a round dish of its area and depth."
		}
		return "The box is computed as a round tub of its volume and height."
	}),
	"never_hardens": of(func(s Style, f cold.NeverHardens) string {
		return "The core does not reach " + s.Temperature(f.CoreC) + " within " + s.Duration(f.WithinMinutes) + "."
	}),
	"never_half_frozen": of(func(s Style, f cold.NeverHalfFrozen) string {
		return "In air of " + s.Temperature(f.AirC) + " half of the custard's water never turns to ice: it stays too thin to swirl. Use less sugar or alcohol."
	}),
	"longer_than_practice": func(s Style, facts any) string {
		switch f := facts.(type) {
		case cold.LongBeating:
			return "Cooks beat about five times over about two hours; this layer of " + s.Length(f.DepthMM) + " takes " + s.Duration(f.TakesMinutes) +
				". Two hours need " + s.Length(15) + " or less, a fan, or a cold metal shelf."
		case cold.LongHardening:
			return "Cooks harden a tub of this size overnight; this one needs " + s.Duration(f.TakesMinutes) + "."
		}
		return ""
	},
	"unlike_practice": of(func(s Style, f cold.UnlikePractice) string {
		scoops := "this one scoops after " + s.Duration(f.FromMinutes)
		if known(f.ToMinutes) {
			scoops = "this one scoops from " + s.DurationSpan(f.FromMinutes, f.ToMinutes)
		}
		return "Cooks leave a tub of this size out for " + s.DurationSpan(f.PracticeFromMinutes, f.PracticeToMinutes) + "; " + scoops + "."
	}),
	"wall_before_core": of(func(s Style, f cold.WallBeforeCore) string {
		when := "at once"
		if f.MeltsMinutes >= 0.5 {
			when = "after " + s.Duration(f.MeltsMinutes)
		}
		return "The wall begins to melt " + when + ", before the core scoops: take from the outside, or soften the tub in the refrigerator."
	}),
	"swing_thaws_phase": of(func(s Style, f cold.SwingThaws) string {
		text := "When the freezer swings " + s.TemperatureStep(f.SwingK) + " up, one phase loses its ice and draws water from the other"
		if known(f.KeepBelowC) {
			text += ": keep the tub at " + s.TemperatureTo(math.Floor(f.KeepBelowC), 0) + " or colder"
		}
		return text + "."
	}),
	"water_drawn_in_storage": of(func(s Style, f cold.WaterDrawn) string {
		return Storage(s, &f.Storage) + " " + StorageChange(s, &f.Storage)
	}),
}
