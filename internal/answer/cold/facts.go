package cold

import "ripplewright/internal/answer/model"

func (pl *planner) note(severity model.Severity, code, where string, facts any) {
	pl.a.Notes = append(pl.a.Notes, model.Warning{Code: code, Where: where, Severity: severity, Facts: facts})
}

// The facts of the notes, each named after its code. Times are minutes,
// temperatures °C.
type (
	// BoxAsRound is of box_as_round: the tub, or the custard's dish.
	BoxAsRound struct{ Dish bool }

	// NeverHardens is of never_hardens.
	NeverHardens struct{ CoreC, WithinMinutes float64 }

	// NeverHalfFrozen is of never_half_frozen.
	NeverHalfFrozen struct{ AirC float64 }

	// LongBeating is of longer_than_practice in still_freeze: a layer of so
	// many mm, and how long it takes.
	LongBeating struct{ DepthMM, TakesMinutes float64 }

	// LongHardening is of longer_than_practice in harden.
	LongHardening struct{ TakesMinutes float64 }

	// UnlikePractice is of unlike_practice: when the tub scoops, and when
	// practice says that it does.
	UnlikePractice struct{ FromMinutes, ToMinutes, PracticeFromMinutes, PracticeToMinutes float64 }

	// WallBeforeCore is of wall_before_core.
	WallBeforeCore struct{ MeltsMinutes float64 }

	// SwingThaws is of swing_thaws_phase: by how much the freezer swings, K, and
	// where both phases hold ice; NaN if nowhere.
	SwingThaws struct{ SwingK, KeepBelowC float64 }

	// WaterDrawn is of water_drawn_in_storage.
	WaterDrawn struct{ Storage Storage }
)
