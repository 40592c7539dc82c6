package card

import (
	"fmt"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// The steps that wait for the cold: with the times of a computed kitchen where
// there is one, with what practice says where there is none.

// freezeText says how the custard gets its ice.
func freezeText(c *cold.Answer) string {
	const churn = "Churn until it holds a swirl. "
	if c == nil || !c.StillFreeze.Dense.Present || len(c.StillFreeze.Dense.Stirs) == 0 || !c.StillFreeze.Dense.Ready.Known() {
		return churn + "No machine: freeze it 3 cm deep in a cold tray and beat it hard with the hand mixer every half hour, three or four times."
	}
	s := &c.StillFreeze
	var at []string
	for _, b := range s.Dense.Stirs {
		at = append(at, number(b.Minute, 0))
	}
	how := fmt.Sprintf("No machine: freeze it %s mm deep and beat it hard at %s min; it can be swirled after %s",
		number(s.Dense.Vessel.HeightMM, 0), strings.Join(at, ", "), printed.DurationBand(s.Dense.Ready.Value, s.Dense.Ready.Low, s.Dense.Ready.High))
	if s.Foam.Present && s.StartFirst == "custard" && s.HeadStartMinutes >= 5 {
		how += fmt.Sprintf(". Start it %s before the foam", printed.Duration(s.HeadStartMinutes))
	}
	return churn + how + "."
}

// hardenText says how long the filled tub stays in the freezer.
func hardenText(c *cold.Answer) string {
	const lid = "Press film on the surface, put the lid on and freeze at "
	if c == nil || !(c.Harden.Hours.Value > 0.1) || !c.Harden.MoveHours.Known() {
		return lid + "−18 °C or colder overnight, tubs apart from each other."
	}
	h := &c.Harden
	return fmt.Sprintf(lid+"%s, tubs apart from each other. Hard enough to move after %s, to store after %s: the core is at %s and %s then.",
		printed.Temperature(h.AirC), hours(h.MoveHours), hours(h.Hours), printed.Temperature(h.MoveC), printed.Temperature(h.CoreToC))
}

func hours(r cold.Range) string { return printed.DurationBand(60*r.Value, 60*r.Low, 60*r.High) }

// serveText says how a tub comes to the temperature it is eaten at.
func serveText(d design.Design, c *cold.Answer) string {
	t := printed.Temperature(d.Serving.TemperatureC)
	switch {
	case c != nil:
		s := say.LeaveOut(printed, &c.Counter)
		if say.Out(&c.Counter) > 0 && say.Out(&c.Fridge) > 0 {
			s += " Or in the refrigerator: " + say.OutFor(printed, &c.Fridge) + "."
		}
		return s + " It is made for " + t + "."
	case d.Serving.TemperatureC <= -18:
		return fmt.Sprintf("Serve at %s, straight from a freezer that holds it; many hold only −18 °C.", t)
	}
	return "Leave a tub in the refrigerator until a thermometer in its middle shows " + t + "."
}

// kitchenNote says what the times rest on.
func kitchenNote(c *cold.Answer) string {
	return fmt.Sprintf("Times in the cold are computed for the kitchen “%s”, freezer %s, room %s.",
		c.Profile.Name, printed.Temperature(c.Profile.Freezer.AirC), printed.Temperature(c.Profile.Counter.AirC))
}
