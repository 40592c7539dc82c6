package say

import "math"

// hourly is the number of minutes from which hours tell more.
const hourly = 100

// Duration is a time in minutes, as a clock in a kitchen has it: "45 min",
// "3.1 h", "14 h".
func (s Style) Duration(minutes float64) string {
	u := unitOf(minutes)
	return s.with(u.number(s, minutes), u.name)
}

// DurationSpan is two times in minutes, in one unit: "9 to 14 min". Where the
// longer is unknown it is "9 min or more".
func (s Style) DurationSpan(from, to float64) string {
	u := unitOf(longest(from, to))
	return s.span(u.number(s, from), u.number(s, to), u.name)
}

// DurationBand is a time with how short and how long it may be, all in minutes
// and in one unit: "3.1 h (2.4 to 4.0)". A band that reads like its value is
// left out.
func (s Style) DurationBand(minutes, low, high float64) string {
	if !known(minutes) {
		return Unknown
	}
	u := unitOf(minutes)
	value, least, most := u.number(s, minutes), u.number(s, low), u.number(s, high)
	text := value + " " + u.name
	switch {
	case least == Unknown && most == Unknown, least == value && most == value:
		return text
	case most == Unknown:
		return T("%s (%s or more)", text, least)
	case least == Unknown:
		return T("%s (up to %s)", text, most)
	}
	return T("%s (%s to %s)", text, least, most)
}

// DurationLike is a time in minutes, in the unit that the longest of others is
// told in: a column of such times compares at a glance.
func (s Style) DurationLike(minutes float64, others ...float64) string {
	most := minutes
	for _, m := range others {
		most = longest(most, m)
	}
	u := unitOf(most)
	return s.with(u.number(s, minutes), u.name)
}

func longest(a, b float64) float64 {
	switch {
	case !known(a):
		return b
	case !known(b):
		return a
	}
	return math.Max(a, b)
}

// clock is a unit of time and how closely a time in it is told.
type clock struct {
	name    string
	minutes float64
	places  int
}

func unitOf(minutes float64) clock {
	switch m := math.Abs(minutes); {
	case !(m >= hourly-0.5):
		return clock{"min", 1, 0}
	case m < 597: // 9.95 h
		return clock{"h", 60, 1}
	}
	return clock{"h", 60, 0}
}

func (c clock) number(s Style, minutes float64) string {
	return s.Number(minutes/c.minutes, c.places)
}
