package say

import "ripplewright/internal/answer/cold"

// A Brief is an answer as a tile has it: the answer, and a word on it.
type Brief struct{ Answer, More string }

// CustardBrief says when the custard can be swirled, and how often it is stirred
// until then.
func CustardBrief(s Style, c *cold.Cooling) Brief {
	b := frozenBrief(s, c)
	if c.Present && c.ReadyMinutes.Known() {
		b.More = T("to swirl; stir %s", often(s, stirsBefore(c)))
	}
	return b
}

// FoamBrief says when the foam can be swirled.
func FoamBrief(s Style, f *cold.StillFreeze) Brief {
	b := frozenBrief(s, &f.Foam)
	if f.Foam.Present && f.Foam.ReadyMinutes.Known() {
		b.More = T("to swirl; leave it alone")
		if f.StartFirst == "custard" && f.HeadStartMinutes >= 1 {
			b.More = T("to swirl; put it in %s after the custard", s.Duration(f.HeadStartMinutes))
		}
	}
	return b
}

func frozenBrief(s Style, c *cold.Cooling) Brief {
	switch {
	case !c.Present:
		return Brief{Unknown, T("the tub has none")}
	case !c.ReadyMinutes.Known():
		return Brief{T("never"), T("not stiff enough to swirl")}
	}
	return Brief{Answer: s.Duration(c.ReadyMinutes.Value)}
}

// stirsBefore is how many stirs come before a phase is ready.
func stirsBefore(c *cold.Cooling) int {
	n := 0
	for _, x := range c.Stirs {
		if x.AtMinutes < c.ReadyMinutes.Value {
			n++
		}
	}
	return n
}

func often(s Style, n int) string {
	switch n {
	case 0:
		return T("never")
	case 1:
		return T("once")
	case 2:
		return T("twice")
	}
	return s.Count(n, "time", "times")
}

// HardenBrief says when a tub can be stored, and when it can be moved.
func HardenBrief(s Style, h *cold.Harden) Brief {
	switch {
	case !h.Hours.Known():
		return Brief{T("never"), T("the core stays above %s", s.Temperature(h.CoreToC))}
	case h.MoveC > h.CoreToC:
		return Brief{s.Duration(60 * h.Hours.Value), T("to store; %s until it can be moved", s.Duration(60*h.MoveHours.Value))}
	}
	return Brief{s.Duration(60 * h.Hours.Value), T("until its core is at %s, as cold as this freezer makes it", s.Temperature(h.CoreToC))}
}

// LeaveOutBrief is LeaveOut in a word or two.
func LeaveOutBrief(s Style, v *cold.Softening) Brief {
	soft := ""
	if v.ToMinutes.Known() {
		soft = T("the ring is too soft by %s", s.Duration(v.ToMinutes.Value))
	}
	switch {
	case v.Why == cold.NobodyKnows:
		return Brief{NotKnown.String(), T("the model does not know how hard it is")}
	case v.Why == cold.TooSoft:
		return Brief{T("no time"), T("too soft straight from the freezer")}
	case v.Why == cold.NeverScoops:
		return Brief{T("no time"), T("it never scoops well")}
	case !v.OK:
		return Brief{T("no time"), T("never right for both phases")}
	case !v.FromMinutes.Known():
		return Brief{T("never"), T("it does not soften that far")}
	case Out(v) == 0:
		return Brief{T("at once"), soft}
	}
	return Brief{OutFor(s, v), soft}
}

// StorageBrief says whether water moves in the freezer, and how fast ice coarsens.
func StorageBrief(s Style, st *cold.Storage) Brief {
	b := Brief{T("no water moves"), coarsens(s, st)}
	switch {
	case st.WaterDrawn:
		b = Brief{T("water moves"), T("the %s draws it; %s", Of(st.Drawer), b.More)}
	case st.Swing == cold.SwingAll && st.Dense.Present && st.Foam.Present:
		b = Brief{T("water moves"), T("at each swing; %s", b.More)}
	}
	return b
}

func coarsens(s Style, st *cold.Storage) string {
	if !known(st.AgeingIndex) {
		return T("no ice to coarsen")
	}
	if times := s.Number(st.AgeingIndex, 1); times != s.Number(1, 1) {
		return T("ice coarsens %s times as fast as at %s", times, s.Temperature(ageingBase))
	}
	return T("ice coarsens as fast as at %s", s.Temperature(ageingBase))
}

// ageingBase is the temperature, °C, at which the growth of crystals is 1.
const ageingBase = -18
