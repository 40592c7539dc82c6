package say

import (
	"math"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/matter/ice"
)

// after is when something is reached: "after 3.1 h (2.4 to 4.0)", and "at once"
// of what needs no minute.
func after(s Style, r cold.Range, minutes float64) string {
	switch {
	case !r.Known():
		return T("later than computed")
	case minutes*r.Value < 0.5:
		return T("at once")
	}
	return T("after %s", s.DurationBand(minutes*r.Value, minutes*r.Low, minutes*r.High))
}

// Reached is when something is reached, in minutes and in the unit of the longest
// of others: "45 min", "at once", "not reached".
func Reached(s Style, minutes float64, others ...float64) string {
	switch {
	case !known(minutes):
		return T("not reached")
	case minutes < 0.5:
		return T("at once")
	}
	return s.DurationLike(minutes, others...)
}

// Moment tells the temperatures of a tub after so many minutes.
func Moment(s Style, minutes float64, m cold.Moment) string {
	return T("After %s: core %s, mean %s, outer ring %s, wall %s.", s.Duration(minutes), s.TemperatureTo(m.CoreC, 1), s.TemperatureTo(m.MeanC, 1), s.TemperatureTo(m.RingC, 1), s.TemperatureTo(m.WallC, 1))
}

// IntoTheFreezer says how a filled tub goes into the freezer.
func IntoTheFreezer(s Style, a *cold.Answer) string {
	return T("The tub goes in as swirled, at %s, %s across and filled %s high, into air of %s.", s.TemperatureTo(a.Harden.StartC, 1), s.Length(2*a.Tub.RadiusMM), s.Length(a.Tub.HeightMM), s.Temperature(a.Harden.AirC))
}

// Harden says how long a filled tub stays in the freezer.
func Harden(s Style, h *cold.Harden) string {
	if !h.Hours.Known() {
		return T("The core does not come down to %s in the time computed.", s.Temperature(h.CoreToC))
	}
	from, store, core := s.TemperatureTo(h.StartC, 1), after(s, h.Hours, 60), s.Temperature(h.CoreToC)
	if h.MoveC <= h.CoreToC {
		return T("From %s it is hard enough to store %s (core at %s).", from, store, core)
	}
	return T("From %s it is hard enough to move %s (core at %s), to store %s (core at %s).", from, after(s, h.MoveHours, 60), s.Temperature(h.MoveC), store, core)
}

// StillFreeze says how both phases get cold before they meet.
func StillFreeze(s Style, f *cold.StillFreeze) string {
	var b []string
	if c := &f.Dense; c.Present {
		if c.ReadyMinutes.Known() {
			b = append(b, T("Custard, %s deep: %s; whip air in %s, swirl it %s.", s.Length(c.Vessel.HeightMM), beats(s, c.Stirs), whip(s, c), after(s, c.ReadyMinutes, 1)))
		} else {
			b = append(b, T("Custard: %s.", Ready(s, c)))
		}
	}
	if c := &f.Foam; c.Present && c.ReadyMinutes.Known() {
		b = append(b, T("Foam: leave it alone; it is ready %s, %s.", after(s, c.ReadyMinutes, 1), Ready(s, c)))
	}
	if head := HeadStart(s, f); head != "" {
		b = append(b, head)
	}
	return strings.Join(b, " ")
}

func whip(s Style, c *cold.Cooling) string {
	if c.WhipMinutes.Value < 0.5 {
		return T("at once")
	}
	return T("after %s", s.Duration(c.WhipMinutes.Value))
}

// HeadStart says which phase goes into the freezer first, for both to be ready
// together; "" where one is missing or never ready.
func HeadStart(s Style, f *cold.StillFreeze) string {
	if f.StartFirst == "" {
		return ""
	}
	if f.HeadStartMinutes < 1 {
		return T("To have both ready together, put them in at the same time.")
	}
	first, second := T("custard"), T("foam")
	if f.StartFirst == "foam" {
		first, second = second, first
	}
	return T("To have both ready together, put the %s in %s before the %s.", first, s.Duration(f.HeadStartMinutes), second)
}

// beats says when to beat.
func beats(s Style, stirs []cold.Stir) string {
	if len(stirs) == 0 {
		return T("no beating before it is ready")
	}
	return T("beat it after %s", Minutes(s, stirs))
}

// Minutes lists when to beat: "30, 60 and 90 min".
func Minutes(s Style, stirs []cold.Stir) string {
	at := make([]string, len(stirs))
	for i, x := range stirs {
		at[i] = s.Number(x.AtMinutes, 0)
	}
	return List(at) + " min"
}

// Ready says what a phase's being ready rests on, without a full stop.
func Ready(s Style, c *cold.Cooling) string {
	switch c.Means {
	case cold.NeverHalf:
		return T("at %s half of its water never turns to ice", s.Temperature(c.AirC))
	case cold.AsCustard:
		return T("as cold as the custard when that is swirled (%s)", s.Temperature(c.ReadyC))
	case cold.ByItself:
		return T("at %s", s.TemperatureTo(c.ReadyC, 0))
	case cold.AsCustardBare:
		return T("as cold as the custard when that is swirled (%s); it has no ice there, and only its film holds its shape", s.Temperature(c.ReadyC))
	}
	return T("half of its water is ice: thick and hard to stir")
}

// LeaveOut says how long to leave a tub out, on the counter or in the
// refrigerator, before it is eaten. It is the one answer to that question.
func LeaveOut(s Style, v *cold.Softening) string {
	switch {
	case v.Why == cold.NeverTogether:
		return T("No time out of the freezer is right: there is no temperature at which both phases eat well.")
	case v.Why == cold.NeverScoops:
		return T("No time out of the freezer is right: it never scoops well.")
	case v.Why == cold.NobodyKnows:
		return T("How long to leave it out is not known: the model does not know how hard it is.")
	case v.Why == cold.TooSoft:
		return T("It is too soft straight from the freezer, at %s.", s.Temperature(v.StartC))
	case !v.FromMinutes.Known():
		return placed(v, "It does not soften enough to scoop on the counter in the time computed.", "It does not soften enough to scoop in the refrigerator in the time computed.")
	case Out(v) == 0 && !v.ToMinutes.Known():
		return placed(v, "It scoops straight from the freezer, and stays so on the counter.", "It scoops straight from the freezer, and stays so in the refrigerator.")
	case Out(v) == 0:
		return placed(v, "It scoops straight from the freezer, for %s on the counter.", "It scoops straight from the freezer, for %s in the refrigerator.", s.Duration(v.ToMinutes.Value))
	}
	text := placed(v, "Leave it out %s: the edge scoops then.", "Leave it in the refrigerator %s: the edge scoops then.", OutFor(s, v))
	if wholeInTime(v) {
		text = placed(v, "Leave it out %s: first the edge scoops, then the whole tub.", "Leave it in the refrigerator %s: first the edge scoops, then the whole tub.", OutFor(s, v))
	}
	if v.ToMinutes.Known() {
		text += " " + T("After %s the edge is too soft.", s.Duration(v.ToMinutes.Value))
	}
	return text
}

// Out is after how many whole minutes out a tub scoops: 0 straight from the
// freezer, NaN of one that never does.
func Out(v *cold.Softening) float64 {
	if !v.OK || !v.FromMinutes.Known() {
		return math.NaN()
	}
	return math.Round(v.FromMinutes.Value)
}

// OutFor is how long a tub stays out, from when its edge scoops until all of it
// does: "3 to 7 min".
func OutFor(s Style, v *cold.Softening) string {
	if wholeInTime(v) {
		return s.DurationSpan(v.FromMinutes.Value, v.WholeMinutes.Value)
	}
	return s.Duration(v.FromMinutes.Value)
}

// wholeInTime reports whether the whole tub scoops before its edge is too soft.
func wholeInTime(v *cold.Softening) bool {
	return v.WholeMinutes.Known() && !(v.WholeMinutes.Value > v.ToMinutes.Value) && math.Round(v.WholeMinutes.Value) > math.Round(v.FromMinutes.Value)
}

// LookFrom says when to look first, as kitchens vary; "" where the time does
// not depend on that.
func LookFrom(s Style, v *cold.Softening) string {
	if !(Out(v) > 0) || !known(v.FromMinutes.Low) || math.Round(v.FromMinutes.Low) >= Out(v) {
		return ""
	}
	return T("Kitchens vary: start looking at %s.", s.Duration(v.FromMinutes.Low))
}

// placed is the message for the place where a tub softens.
func placed(v *cold.Softening, counter, refrigerator Message, args ...any) string {
	if v.Place == "refrigerator" {
		return T(refrigerator, args...)
	}
	return T(counter, args...)
}

// Softening is LeaveOut with LookFrom.
func Softening(s Style, v *cold.Softening) string {
	return strings.TrimSpace(LeaveOut(s, v) + " " + LookFrom(s, v))
}

// Storage says whether water moves between the phases in the freezer.
func Storage(s Style, st *cold.Storage) string {
	if st.WaterDrawn {
		at, drawer := s.Temperature(st.AtC), Of(st.Drawer)
		if known(st.DrawnG) {
			return T("At %s the %s holds no ice, so it draws water from the other phase, up to %s g per 100 g of it: it weeps and shrinks.", at, drawer, s.Number(st.DrawnG, 0))
		}
		return T("At %s the %s holds no ice, so it draws water from the other phase: it weeps and shrinks.", at, drawer)
	}
	if !st.Dense.Present || !st.Foam.Present {
		return T("There is one phase only, so no water moves.")
	}
	if st.SwingK > 0 && known(st.Dense.SwingPercent) && known(st.Foam.SwingPercent) {
		return T("At %s both phases hold ice, so no water moves between them; a swing of %s melts and refreezes %s of the custard's ice and %s of the foam's.", s.Temperature(st.AtC), s.TemperatureStep(st.SwingK), s.Percent(st.Dense.SwingPercent, 0), s.Percent(st.Foam.SwingPercent, 0))
	}
	return T("At %s both phases hold ice, so no water moves between them.", s.Temperature(st.AtC))
}

// StorageChange says what keeps water from moving, "" where none moves.
func StorageChange(s Style, st *cold.Storage) string {
	if !st.WaterDrawn {
		return ""
	}
	water, then := s.Number(st.Change.WaterG, 0), s.Temperature(st.Change.ThenC)
	text := T("The %s never freezes: give it less sugar, or about %s g more water per 100 g, and it freezes at %s.", Of(st.Drawer), water, then)
	if known(st.Change.FreezesAtC) {
		text = T("The %s freezes at %s: give it less sugar, or about %s g more water per 100 g, and it freezes at %s.", Of(st.Drawer), s.TemperatureTo(st.Change.FreezesAtC, 1), water, then)
	}
	if known(st.KeepBelowC) {
		text += " " + T("Or keep the tub at %s or colder.", s.TemperatureTo(math.Floor(st.KeepBelowC), 0))
	}
	return text
}

// Ageing says what the index of crystal growth is good for; "" without a custard
// to have one.
func Ageing(s Style, st *cold.Storage) string {
	if !known(st.AgeingIndex) {
		if !st.Dense.Present {
			return ""
		}
		return T("At %s the custard has no ice whose crystals could grow.", s.Temperature(st.AtC))
	}
	text := T("How fast the custard's crystals grow is known to a factor of %s, so it gives no keeping time.", s.Number(ice.Uncertain, 0))
	if st.AtC < ice.FloorFromC {
		text += " " + T("Below %s crystals were measured to grow on where the law has them stop, so the law is held at a floor.", s.Temperature(ice.FloorFromC))
	}
	return text
}
