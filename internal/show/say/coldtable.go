package say

import (
	"time"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
)

// The words about the tables of the cold.

// NamedAt names a row by a computed temperature: "Swirl, −5.1 °C".
func NamedAt(s Style, name string, c float64) string { return name + ", " + s.TemperatureTo(c, 1) }

// ReachesAt names a row by what comes to a temperature: "Ring at −13.0 °C".
func ReachesAt(s Style, what string, c float64) string {
	return T("%s at %s", what, s.TemperatureTo(c, 1))
}

// FreezerAxis and FrozenAxis are the axes of the plot of a freezer.
func FreezerAxis(s Style) string { return T("%s in the freezer", s.Degree()) }

const FrozenAxis Message = "% of the water frozen"

// FreezerSwing is how far a freezer's air goes up and down: "freezer ± 2 °C".
func FreezerSwing(s Style, k float64) string { return T("freezer ± %s", s.TemperatureStep(k)) }

// CoreAt names a row by the temperature that a core has to reach: "Store: core at
// −15 °C".
func CoreAt(s Style, name string, c float64) string {
	return T("%s: core at %s", name, s.Temperature(c))
}

// FreezerWarmer names the row of a temperature that a freezer never reaches.
func FreezerWarmer(s Style, c float64) string {
	return T("%s: the freezer is warmer", s.TemperatureTo(c, 1))
}

// TimeBand is a time with its band in a cell: "45 min (40 to 51 min)".
func TimeBand(s Style, r cold.Range, minutes float64) string {
	text := Reached(s, minutes*r.Value)
	if r.Known() {
		text += " (" + s.DurationSpan(minutes*r.Low, minutes*r.High) + ")"
	}
	return text
}

// AgeingHead is the head of the table of how fast crystals grow.
func AgeingHead(s Style) string {
	return T("How fast ice crystals grow, %s = 1", s.Temperature(ageingBase))
}

// FromAndTo says what the columns from and to of a table of times are.
func FromAndTo(s Style, p cold.Place) string {
	spread := s.Percent(100*p.SpreadFraction(), 0)
	if p.Measured != "" {
		return T("From and to: how fast the air takes the heat away is known to ±%s, as measured here.", spread)
	}
	return T("From and to: how fast the air takes the heat away is known to ±%s.", spread)
}

// StirColumns says when the temperatures of a table of stirs are, of which listed
// stand in it out of all.
func StirColumns(listed, all int) string {
	switch {
	case all == 0:
		return T("It needs no stir before it is ready.")
	case listed < all:
		return T("More stirs follow. %s", stirColumns.String())
	}
	return stirColumns.String()
}

const stirColumns Message = "Mean and ice just after the stir; the edge, the coldest spot, just before it."

// LeaveFoam says what the foam needs in the freezer.
const LeaveFoam Message = "Leave it alone: beating lets its air out."

// InDish says how a phase stands in the freezer and when it is ready.
func InDish(s Style, c *cold.Cooling) string {
	if !c.Present {
		return T("The tub has none.")
	}
	text := T("%s, %s deep.", s.Volume(c.VolumeML), s.Length(c.Vessel.HeightMM)) + " "
	switch {
	case !c.ReadyMinutes.Known():
		text += T("It is never ready: %s.", Ready(s, c))
	case c.Means == cold.HalfFrozen:
		text += T("Ready when %s.", Ready(s, c))
	default:
		text += T("Ready when it is %s.", Ready(s, c))
	}
	if c.Vessel.Box {
		text += " " + Warning(s, model.Warning{Code: "box_as_round", Facts: cold.BoxAsRound{Dish: true}})
	}
	return text
}

// Together says which phase goes into the freezer first and when both can be
// swirled.
func Together(s Style, f *cold.StillFreeze) string {
	switch {
	case !f.Dense.Present || !f.Foam.Present:
		return T("Only one phase has to freeze.")
	case f.StartFirst == "":
		return T("The two cannot be swirled together: one never gets stiff enough.")
	}
	return T("%s Both can be swirled %s after the first goes in.", HeadStart(s, f), s.Duration(f.ReadyMinutes))
}

// Remark is a warning with how much it weighs before it.
func Remark(s Style, w model.Warning) string { return Severity(w.Severity) + ": " + Warning(s, w) }

// BandEnds says that a phase's band in a plot ends where its hardness is no longer
// known, at c and colder.
func BandEnds(s Style, phase string, c float64) string {
	return T("Colder than %s nobody knows how hard the %s is: the band ends there.", s.TemperatureTo(c, 1), phase)
}

// NoBand says why a plot has no band of a phase.
func NoBand(phase string) string {
	return T("Nobody knows how hard the %s is, so it has no band.", phase)
}

// ComputedIn says how long an answer took.
func ComputedIn(s Style, took time.Duration) string {
	return T("Computed in %s ms", s.Grouped(float64(took.Milliseconds())))
}

// StaleTimes says that the times shown are not the design's.
const StaleTimes Message = "Cancelled: these times belong to an earlier design."
