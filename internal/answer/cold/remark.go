package cold

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// Practice, against which the figures are held. All are common practice, no
// source, but for McGee's half frozen.
const (
	practicePintFrom, practicePintTo = 350, 650 // mL that count as a pint or so
	practiceNight                    = 14       // h from evening to the next noon
	practiceSoftFrom                 = 5        // min at room temperature
	practiceSoftTo                   = 15
	practiceBeating                  = 150 // min, "about five times over about two hours"
)

// remark says where the figures differ from common practice, and what of the
// plan needs a word.
func (pl *planner) remark() {
	a := pl.a
	for i, v := range [...]Vessel{a.Tub, a.StillFreeze.Dense.Vessel} {
		if v.Box {
			pl.note(model.Note, "box_as_round", "tubs", BoxAsRound{Dish: i == 1})
		}
	}
	if h := a.Harden.Hours; !h.Known() {
		pl.note(model.Serious, "never_hardens", "harden", NeverHardens{a.Harden.CoreToC, hardenLimit / 60})
	}
	if c := a.StillFreeze.Dense; c.Present && math.IsNaN(c.ReadyC) {
		pl.note(model.Caution, "never_half_frozen", "still_freeze", NeverHalfFrozen{a.Harden.AirC})
	} else if c.Present && c.ReadyMinutes.Value > practiceBeating {
		pl.note(model.Note, "longer_than_practice", "still_freeze", LongBeating{c.Vessel.HeightMM, c.ReadyMinutes.Value})
	}
	pint := pl.d.Tubs.VolumeML >= practicePintFrom && pl.d.Tubs.VolumeML <= practicePintTo && pl.d.Tubs.Shape == design.ShapeRound
	if pint && a.Harden.Hours.Value > practiceNight {
		pl.note(model.Note, "longer_than_practice", "harden", LongHardening{60 * a.Harden.Hours.Value})
	}
	if s := a.Counter; pint && s.OK && s.FromMinutes.Known() && (s.FromMinutes.Value > practiceSoftTo || s.ToMinutes.Value < practiceSoftFrom) {
		pl.note(model.Note, "unlike_practice", "serving_window", UnlikePractice{s.FromMinutes.Value, s.ToMinutes.Value, practiceSoftFrom, practiceSoftTo})
	}
	if s := a.Counter; s.OK && s.MeltsAtWallMinutes.Known() && s.FromMinutes.Known() && s.MeltsAtWallMinutes.Value < s.CoreMinutes.Value {
		pl.note(model.Note, "wall_before_core", "serving_window", WallBeforeCore{s.MeltsAtWallMinutes.Value})
	}
}

// Cause is the setting whose change acts most on what a note n of an answer tells of: of
// the kitchen (Fields), or "tubs.shape" of the design; "" where it is the recipe, as for
// the water that one phase draws from the other.
func Cause(n model.Warning) string {
	switch f := n.Facts.(type) {
	case BoxAsRound:
		if f.Dish {
			return "layer.form"
		}
		return "tubs.shape"
	case LongBeating:
		return "layer.depth_mm"
	case WallBeforeCore:
		return "counter.air_c"
	case SwingThaws:
		return "freezer.swing_k"
	case NeverHardens, NeverHalfFrozen, LongHardening, UnlikePractice:
		return "freezer.air_c"
	}
	return ""
}
