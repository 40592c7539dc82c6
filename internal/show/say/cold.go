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
		return "later than computed"
	case minutes*r.Value < 0.5:
		return "at once"
	}
	return "after " + s.DurationBand(minutes*r.Value, minutes*r.Low, minutes*r.High)
}

// Reached is when something is reached, in minutes and in the unit of the longest
// of others: "45 min", "at once", "not reached".
func Reached(s Style, minutes float64, others ...float64) string {
	switch {
	case !known(minutes):
		return "not reached"
	case minutes < 0.5:
		return "at once"
	}
	return s.DurationLike(minutes, others...)
}

// Moment tells the temperatures of a tub after so many minutes.
func Moment(s Style, minutes float64, m cold.Moment) string {
	return "After " + s.Duration(minutes) + ": core " + s.TemperatureTo(m.CoreC, 1) + ", mean " + s.TemperatureTo(m.MeanC, 1) +
		", outer ring " + s.TemperatureTo(m.RingC, 1) + ", wall " + s.TemperatureTo(m.WallC, 1) + "."
}

// IntoTheFreezer says how a filled tub goes into the freezer.
func IntoTheFreezer(s Style, a *cold.Answer) string {
	return "The tub goes in as swirled, at " + s.TemperatureTo(a.Harden.StartC, 1) + ", " + s.Length(2*a.Tub.RadiusMM) + " across and filled " +
		s.Length(a.Tub.HeightMM) + " high, into air of " + s.Temperature(a.Harden.AirC) + "."
}

// Harden says how long a filled tub stays in the freezer.
func Harden(s Style, h *cold.Harden) string {
	if !h.Hours.Known() {
		return "The core does not come down to " + s.Temperature(h.CoreToC) + " in the time computed."
	}
	store := "to store " + after(s, h.Hours, 60) + " (core at " + s.Temperature(h.CoreToC) + ")."
	from := "From " + s.TemperatureTo(h.StartC, 1) + " it is hard enough "
	if h.MoveC <= h.CoreToC {
		return from + store
	}
	return from + "to move " + after(s, h.MoveHours, 60) + " (core at " + s.Temperature(h.MoveC) + "), " + store
}

// StillFreeze says how both phases get cold before they meet.
func StillFreeze(s Style, f *cold.StillFreeze) string {
	var b []string
	if c := &f.Dense; c.Present {
		if c.ReadyMinutes.Known() {
			b = append(b, "Custard, "+s.Length(c.Vessel.HeightMM)+" deep: "+beats(s, c.Stirs)+"; whip air in "+whip(s, c)+", swirl it "+after(s, c.ReadyMinutes, 1)+".")
		} else {
			b = append(b, "Custard: "+Ready(s, c)+".")
		}
	}
	if c := &f.Foam; c.Present && c.ReadyMinutes.Known() {
		b = append(b, "Foam: leave it alone; it is ready "+after(s, c.ReadyMinutes, 1)+", "+Ready(s, c)+".")
	}
	if head := HeadStart(s, f); head != "" {
		b = append(b, head)
	}
	return strings.Join(b, " ")
}

func whip(s Style, c *cold.Cooling) string {
	if c.WhipMinutes.Value < 0.5 {
		return "at once"
	}
	return "after " + s.Duration(c.WhipMinutes.Value)
}

// HeadStart says which phase goes into the freezer first, for both to be ready
// together; "" where one is missing or never ready.
func HeadStart(s Style, f *cold.StillFreeze) string {
	if f.StartFirst == "" {
		return ""
	}
	if f.HeadStartMinutes < 1 {
		return "To have both ready together, put them in at the same time."
	}
	second := "foam"
	if f.StartFirst == second {
		second = "custard"
	}
	return "To have both ready together, put the " + f.StartFirst + " in " + s.Duration(f.HeadStartMinutes) + " before the " + second + "."
}

// beats says when to beat.
func beats(s Style, stirs []cold.Stir) string {
	if len(stirs) == 0 {
		return "no beating before it is ready"
	}
	return "beat it after " + Minutes(s, stirs)
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
		return "at " + s.Temperature(c.AirC) + " half of its water never turns to ice"
	case cold.AsCustard:
		return "as cold as the custard when that is swirled (" + s.Temperature(c.ReadyC) + ")"
	case cold.ByItself:
		return "at " + s.TemperatureTo(c.ReadyC, 0)
	case cold.AsCustardBare:
		return "as cold as the custard when that is swirled (" + s.Temperature(c.ReadyC) + "); it has no ice there, and only its film holds its shape"
	}
	return "half of its water is ice: thick and hard to stir"
}

// LeaveOut says how long to leave a tub out, on the counter or in the
// refrigerator, before it is eaten. It is the one answer to that question.
func LeaveOut(s Style, v *cold.Softening) string {
	switch {
	case v.Why == cold.NeverTogether:
		return "No time out of the freezer is right: there is no temperature at which both phases eat well."
	case v.Why == cold.NeverScoops:
		return "No time out of the freezer is right: it never scoops well."
	case v.Why == cold.NobodyKnows:
		return "How long to leave it out is not known: the model does not know how hard it is."
	case v.Why == cold.TooSoft:
		return "It is too soft straight from the freezer, at " + s.Temperature(v.StartC) + "."
	case !v.FromMinutes.Known():
		return "It does not soften enough to scoop" + where(v) + " in the time computed."
	case Out(v) == 0 && !v.ToMinutes.Known():
		return "It scoops straight from the freezer, and stays so" + where(v) + "."
	case Out(v) == 0:
		return "It scoops straight from the freezer, for " + s.Duration(v.ToMinutes.Value) + where(v) + "."
	}
	how := "Leave it out "
	if v.Place == "refrigerator" {
		how = "Leave it in the refrigerator "
	}
	text := how + OutFor(s, v)
	if wholeInTime(v) {
		text += ": first the edge scoops, then the whole tub."
	} else {
		text += ": the edge scoops then."
	}
	if v.ToMinutes.Known() {
		text += " After " + s.Duration(v.ToMinutes.Value) + " the edge is too soft."
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
	return "Kitchens vary: start looking at " + s.Duration(v.FromMinutes.Low) + "."
}

func where(v *cold.Softening) string {
	if v.Place == "refrigerator" {
		return " in the refrigerator"
	}
	return " on the counter"
}

// Softening is LeaveOut with LookFrom.
func Softening(s Style, v *cold.Softening) string {
	return strings.TrimSpace(LeaveOut(s, v) + " " + LookFrom(s, v))
}

// Storage says whether water moves between the phases in the freezer.
func Storage(s Style, st *cold.Storage) string {
	if st.WaterDrawn {
		drawn := ""
		if known(st.DrawnG) {
			drawn = ", up to " + s.Number(st.DrawnG, 0) + " g per 100 g of it"
		}
		return "At " + s.Temperature(st.AtC) + " the " + st.Drawer + " holds no ice, so it draws water from the other phase" + drawn + ": it weeps and shrinks."
	}
	if !st.Dense.Present || !st.Foam.Present {
		return "There is one phase only, so no water moves."
	}
	text := "At " + s.Temperature(st.AtC) + " both phases hold ice, so no water moves between them"
	if st.SwingK > 0 && known(st.Dense.SwingPercent) && known(st.Foam.SwingPercent) {
		text += "; a swing of " + s.TemperatureStep(st.SwingK) + " melts and refreezes " + s.Percent(st.Dense.SwingPercent, 0) + " of the custard's ice and " +
			s.Percent(st.Foam.SwingPercent, 0) + " of the foam's"
	}
	return text + "."
}

// StorageChange says what keeps water from moving, "" where none moves.
func StorageChange(s Style, st *cold.Storage) string {
	if !st.WaterDrawn {
		return ""
	}
	does := "never freezes"
	if known(st.Change.FreezesAtC) {
		does = "freezes at " + s.TemperatureTo(st.Change.FreezesAtC, 1)
	}
	text := "The " + st.Drawer + " " + does + ": give it less sugar, or about " + s.Number(st.Change.WaterG, 0) +
		" g more water per 100 g, and it freezes at " + s.Temperature(st.Change.ThenC) + "."
	if known(st.KeepBelowC) {
		text += " Or keep the tub at " + s.TemperatureTo(math.Floor(st.KeepBelowC), 0) + " or colder."
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
		return "At " + s.Temperature(st.AtC) + " the custard has no ice whose crystals could grow."
	}
	text := "How fast the custard's crystals grow is known to a factor of " + s.Number(ice.Uncertain, 0) + ", so it gives no keeping time."
	if st.AtC < ice.FloorFromC {
		text += " Below " + s.Temperature(ice.FloorFromC) + " crystals were measured to grow on where the law has them stop, so the law is held at a floor."
	}
	return text
}
