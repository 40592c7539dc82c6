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
	for _, v := range [...]Vessel{a.Tub, a.StillFreeze.Dense.Vessel} {
		if v.Note != "" {
			pl.note(model.Note, "box_as_round", "tubs", "%s", v.Note)
		}
	}
	if h := a.Harden.Hours; !h.Known() {
		pl.note(model.Serious, "never_hardens", "harden", "The core does not reach %s within %d h.", model.Celsius(a.Harden.CoreToC), hardenLimit/3600)
	}
	if c := a.StillFreeze.Dense; c.Present && math.IsNaN(c.ReadyC) {
		pl.note(model.Caution, "never_half_frozen", "still_freeze", "The custard never has half of its water as ice in air of %s: it stays too thin to swirl. Less sugar or alcohol helps.", model.Celsius(a.Harden.AirC))
	} else if c.Present && c.Ready.Value > practiceBeating {
		pl.note(model.Note, "longer_than_practice", "still_freeze", "Practice beats about five times over about two hours; this layer of %.0f mm takes %s. Two hours needs 15 mm or less, a fan, or a cold metal shelf.", c.Vessel.HeightMM, Clock(c.Ready.Value))
	}
	pint := pl.d.Tubs.VolumeML >= practicePintFrom && pl.d.Tubs.VolumeML <= practicePintTo && pl.d.Tubs.Shape == design.ShapeRound
	if pint && a.Harden.Hours.Value > practiceNight {
		pl.note(model.Note, "longer_than_practice", "harden", "Practice hardens a tub of this size overnight; this one needs %.0f h.", a.Harden.Hours.Value)
	}
	if s := a.Counter; pint && s.OK && s.From.Known() && (s.From.Value > practiceSoftTo || s.To.Value < practiceSoftFrom) {
		pl.note(model.Note, "unlike_practice", "serving_window", "Practice leaves a tub of this size out for 5 to 15 minutes; this one scoops from %.0f to %s.", s.From.Value, Clock(s.To.Value))
	}
	if s := a.Counter; s.OK && s.MeltsAtWall.Known() && s.From.Known() && s.MeltsAtWall.Value < s.Core.Value {
		pl.note(model.Note, "wall_before_core", "serving_window", "The wall begins to melt after %s, before the core scoops: take from the outside, or soften it in the refrigerator.", Clock(s.MeltsAtWall.Value))
	}
}
