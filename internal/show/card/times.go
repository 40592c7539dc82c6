package card

import (
	"fmt"
	"math"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
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
		number(s.Dense.Vessel.HeightMM, 0), strings.Join(at, ", "), banded(s.Dense.Ready, 1))
	if s.Foam.Present && s.StartFirst == "custard" && s.HeadStartMinutes >= 5 {
		how += fmt.Sprintf(". Start it %s before the foam", cold.Clock(s.HeadStartMinutes))
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
		model.Celsius(h.AirC), banded(h.MoveHours, 60), banded(h.Hours, 60), model.Celsius(h.MoveC), model.Celsius(h.CoreToC))
}

// serveText says how a tub comes to the temperature it is eaten at.
func serveText(d design.Design, c *cold.Answer) string {
	t := model.Celsius(d.Serving.TemperatureC)
	if c != nil && d.Serving.TemperatureC > c.Counter.StartC && c.Counter.OK && c.Counter.From.Value >= 0.5 {
		s := fmt.Sprintf("Leave a tub out %s, or in the refrigerator %s: the edge scoops first, then the whole tub. It is made for %s.", window(&c.Counter), window(&c.Fridge), t)
		if c.Counter.To.Known() {
			s += fmt.Sprintf(" After %s out the edge is too soft.", cold.Clock(c.Counter.To.Value))
		}
		return s
	}
	if d.Serving.TemperatureC <= -18 {
		return fmt.Sprintf("Serve at %s, straight from a freezer that holds it; many hold only −18 °C.", t)
	}
	return "Leave a tub in the refrigerator until a thermometer in its middle shows " + t + "."
}

// window words the time from the ring's first scoop to the whole tub's.
func window(s *cold.Serving) string {
	from, to := s.From.Value, s.Whole.Value
	if !s.OK || !s.From.Known() {
		return "for longer than was computed"
	}
	if s.Whole.Known() && math.Round(to) > math.Round(from) && !(to > s.To.Value) {
		return cold.ClockSpan(from, to)
	}
	return cold.Clock(from)
}

// banded words a time with its band; k is the minutes in its unit.
func banded(r cold.Range, k float64) string {
	if !r.Known() {
		return "longer than was computed"
	}
	s, k2, places := cold.Clock(k*r.Value), k, 0
	if k*r.Value >= cold.Hourly {
		k2, places = k/60, 1
	}
	if !(r.High > r.Low) {
		return s
	}
	return s + " (" + number(k2*r.Low, places) + " to " + number(k2*r.High, places) + ")"
}

// kitchenNote says what the times rest on.
func kitchenNote(c *cold.Answer) string {
	return fmt.Sprintf("Times in the cold are computed for the kitchen “%s”, freezer %s, room %s.",
		c.Profile.Name, model.Celsius(c.Profile.Freezer.AirC), model.Celsius(c.Profile.Counter.AirC))
}
