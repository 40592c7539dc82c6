package cold

import (
	"fmt"
	"math"
	"strings"

	"ripplewright/internal/answer/model"
)

// ClockSpan is two times of so many minutes in one unit, as in "9 to 14 min".
func ClockSpan(from, to float64) string {
	if to < Hourly || math.IsNaN(to) {
		return fmt.Sprintf("%.0f to %s", from, Clock(to))
	}
	return fmt.Sprintf("%.1f to %.1f h", from/60, to/60)
}

// Hourly is where minutes stop telling anything.
const Hourly = 100

// Clock is a time of so many minutes as a clock has it, "never" for NaN.
func Clock(m float64) string {
	switch {
	case math.IsNaN(m):
		return "never"
	case m < Hourly:
		return fmt.Sprintf("%.0f min", m)
	}
	return fmt.Sprintf("%.1f h", m/60)
}

// sentence is the hardening in words.
func (h *Harden) sentence() string {
	if !h.Hours.Known() {
		return fmt.Sprintf("The core does not come down to %s in the time looked at.", model.Celsius(h.CoreToC))
	}
	store := fmt.Sprintf("to store (core at %s) after %s", model.Celsius(h.CoreToC), hours(h.Hours))
	if h.MoveC <= h.CoreToC {
		return fmt.Sprintf("From %s: hard enough %s.", model.Celsius(h.StartC), store)
	}
	return fmt.Sprintf("From %s: hard enough to move (core at %s) after %s, %s.", model.Celsius(h.StartC), model.Celsius(h.MoveC), hours(h.MoveHours), store)
}

func hours(r Range) string {
	if math.IsNaN(r.High) {
		return fmt.Sprintf("%.1f h (%.1f or more)", r.Value, r.Low)
	}
	return fmt.Sprintf("%.1f h (%.1f to %.1f)", r.Value, r.Low, r.High)
}

// sentence is the still-freezing in words.
func (s *StillFreeze) sentence() string {
	var b strings.Builder
	if c := s.Dense; c.Present {
		switch {
		case !c.Ready.Known():
			fmt.Fprintf(&b, "Custard: %s. ", c.How)
		default:
			fmt.Fprintf(&b, "Custard, %.0f mm deep: %s; whip air in after %s, swirl after %s (%s). ",
				c.Vessel.HeightMM, stirs(c.Stirs), Clock(c.Whip.Value), Clock(c.Ready.Value), ClockSpan(c.Ready.Low, c.Ready.High))
		}
	}
	if c := s.Foam; c.Present && c.Ready.Known() {
		fmt.Fprintf(&b, "Foam: leave it alone; ready after %s, %s. ", Clock(c.Ready.Value), c.How)
	}
	if s.StartFirst != "" && s.HeadStartMinutes >= 1 {
		fmt.Fprintf(&b, "To have both together, put the %s in %s before the other.", s.StartFirst, Clock(s.HeadStartMinutes))
	}
	return strings.TrimSpace(b.String())
}

func stirs(list []Stir) string {
	at := make([]string, len(list))
	for i, s := range list {
		at[i] = fmt.Sprintf("%.0f", s.Minute)
	}
	switch len(at) {
	case 0:
		return "no stir before it is ready"
	case 1:
		return "stir at " + at[0] + " min"
	}
	return "stir at " + strings.Join(at[:len(at)-1], ", ") + " and " + at[len(at)-1] + " min"
}

// sentence is the storage in words.
func (s *Storage) sentence() string {
	switch {
	case s.WaterDrawn:
		drawn := ""
		if !math.IsNaN(s.DrawnG) {
			drawn = fmt.Sprintf(", up to %.0f g per 100 g of it", s.DrawnG)
		}
		return fmt.Sprintf("At %s the %s draws water from the other phase%s. %s", model.Celsius(s.AtC), s.Drawer, drawn, s.Change)
	case s.Dense.Present && s.Foam.Present:
		return fmt.Sprintf("At %s both phases hold ice, so no water moves between them.", model.Celsius(s.AtC))
	}
	return "There is one phase only, so no water moves."
}
