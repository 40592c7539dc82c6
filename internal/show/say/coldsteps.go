package say

import (
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/work/design"
)

// The steps that wait for the cold: with the times of a computed kitchen where
// there is one, with what practice says where there is none.

// freezeSoft says how the custard gets its ice.
func freezeSoft(s Style, c *cold.Answer, tray bool) string {
	if c == nil || !c.StillFreeze.Dense.Present || len(c.StillFreeze.Dense.Stirs) == 0 || !c.StillFreeze.Dense.ReadyMinutes.Known() {
		if tray {
			return T("Freeze it %s deep in a cold tray and beat it hard with the hand mixer every half hour, three or four times.", s.Length(practiceDepthMM))
		}
		return T("Churn until it holds a swirl. No machine: freeze it %s deep in a cold tray and beat it hard with the hand mixer every half hour, three or four times.", s.Length(practiceDepthMM))
	}
	f := &c.StillFreeze
	deep, beats, ready := s.Length(f.Dense.Vessel.HeightMM), Minutes(s, f.Dense.Stirs), after(s, f.Dense.ReadyMinutes, 1)
	how := T("Churn until it holds a swirl. No machine: freeze it %s deep and beat it hard after %s; it can be swirled %s.", deep, beats, ready)
	if tray {
		how = T("Freeze it %s deep and beat it hard after %s; it can be swirled %s.", deep, beats, ready)
	}
	if f.Foam.Present && f.StartFirst == "custard" && f.HeadStartMinutes >= 5 {
		how += " " + T("Start it %s before the foam.", s.Duration(f.HeadStartMinutes))
	}
	return how
}

// practiceDepthMM is how deep a tray is filled: common practice, no source.
const practiceDepthMM = 30

// hardenStep says how long the filled tub stays in the freezer.
func hardenStep(s Style, c *cold.Answer) string {
	if c == nil || !(c.Harden.Hours.Value > 0.1) || !c.Harden.MoveHours.Known() {
		return T("Press film on the surface, put the lid on and freeze at %s or colder overnight, tubs apart from each other.", s.Temperature(-18))
	}
	h := &c.Harden
	text := T("Press film on the surface, put the lid on and freeze at %s, tubs apart from each other.", s.Temperature(h.AirC)) + " "
	core, stored := s.Temperature(h.CoreToC), after(s, h.Hours, 60)
	if h.MoveC > h.CoreToC {
		return text + T("Hard enough to move, core at %s, %s; to store, core at %s, %s.", s.Temperature(h.MoveC), after(s, h.MoveHours, 60), core, stored)
	}
	return text + T("Hard enough to store, core at %s, %s.", core, stored)
}

// serveStep says how a tub comes from the freezer to the spoon.
func serveStep(s Style, d design.Design, c *cold.Answer) string {
	t := s.Temperature(d.Serving.TemperatureC)
	switch {
	case c != nil:
		text := LeaveOut(s, &c.Counter)
		if Out(&c.Counter) > 0 && Out(&c.Fridge) > 0 {
			text += " " + T("Or in the refrigerator: %s.", OutFor(s, &c.Fridge))
		}
		return text + " " + T("It is made for %s.", t)
	case d.Serving.TemperatureC == -18:
		return T("Serve at %s, straight from the freezer.", t)
	case d.Serving.TemperatureC < -18:
		return T("Serve at %s, straight from a freezer that holds it; many hold only %s.", t, s.Temperature(-18))
	}
	return T("Leave a tub in the refrigerator until a thermometer in its middle shows %s.", t)
}
