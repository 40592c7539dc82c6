package say

import (
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/work/design"
)

// The steps that wait for the cold: with the times of a computed kitchen where
// there is one, with what practice says where there is none.

// freezeSoft says how the custard gets its ice.
func freezeSoft(s Style, c *cold.Answer, tray bool) string {
	churn := "Churn until it holds a swirl. No machine: freeze it "
	if tray {
		churn = "Freeze it "
	}
	if c == nil || !c.StillFreeze.Dense.Present || len(c.StillFreeze.Dense.Stirs) == 0 || !c.StillFreeze.Dense.ReadyMinutes.Known() {
		return churn + s.Length(practiceDepthMM) + " deep in a cold tray and beat it hard with the hand mixer every half hour, three or four times."
	}
	f := &c.StillFreeze
	how := s.Length(f.Dense.Vessel.HeightMM) + " deep and beat it hard after " + Minutes(s, f.Dense.Stirs) +
		"; it can be swirled " + after(s, f.Dense.ReadyMinutes, 1) + "."
	if f.Foam.Present && f.StartFirst == "custard" && f.HeadStartMinutes >= 5 {
		how += " Start it " + s.Duration(f.HeadStartMinutes) + " before the foam."
	}
	return churn + how
}

// practiceDepthMM is how deep a tray is filled: common practice, no source.
const practiceDepthMM = 30

// hardenStep says how long the filled tub stays in the freezer.
func hardenStep(s Style, c *cold.Answer) string {
	const lid = "Press film on the surface, put the lid on and freeze at "
	if c == nil || !(c.Harden.Hours.Value > 0.1) || !c.Harden.MoveHours.Known() {
		return lid + s.Temperature(-18) + " or colder overnight, tubs apart from each other."
	}
	h := &c.Harden
	text := lid + s.Temperature(h.AirC) + ", tubs apart from each other. Hard enough "
	if h.MoveC > h.CoreToC {
		text += "to move, core at " + s.Temperature(h.MoveC) + ", " + after(s, h.MoveHours, 60) + "; "
	}
	return text + "to store, core at " + s.Temperature(h.CoreToC) + ", " + after(s, h.Hours, 60) + "."
}

// serveStep says how a tub comes from the freezer to the spoon.
func serveStep(s Style, d design.Design, c *cold.Answer) string {
	t := s.Temperature(d.Serving.TemperatureC)
	switch {
	case c != nil:
		text := LeaveOut(s, &c.Counter)
		if Out(&c.Counter) > 0 && Out(&c.Fridge) > 0 {
			text += " Or in the refrigerator: " + OutFor(s, &c.Fridge) + "."
		}
		return text + " It is made for " + t + "."
	case d.Serving.TemperatureC == -18:
		return "Serve at " + t + ", straight from the freezer."
	case d.Serving.TemperatureC < -18:
		return "Serve at " + t + ", straight from a freezer that holds it; many hold only " + s.Temperature(-18) + "."
	}
	return "Leave a tub in the refrigerator until a thermometer in its middle shows " + t + "."
}
