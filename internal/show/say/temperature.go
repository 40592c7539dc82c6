package say

import (
	"math"

	"ripplewright/internal/answer/model"
)

// Degree is the sign of the scale: "°C".
func (s Style) Degree() string {
	if s.Scale == Fahrenheit {
		return "°F"
	}
	return "°C"
}

// Degrees converts c, in °C, to the scale read.
func (s Style) Degrees(c float64) float64 {
	if s.Scale == Fahrenheit {
		return 1.8*c + 32
	}
	return c
}

// Temperature is a temperature that someone sets, in °C: to a tenth where it
// has one, "−18 °C", and in whole degrees Fahrenheit.
func (s Style) Temperature(c float64) string {
	return s.with(s.temperature(c), s.Degree())
}

func (s Style) temperature(c float64) string {
	if s.Scale == Fahrenheit {
		return s.Number(s.Degrees(c), 0)
	}
	return s.Short(c, 1)
}

// TemperatureTo is a computed temperature, in °C, with so many decimals.
func (s Style) TemperatureTo(c float64, places int) string {
	return s.with(s.Number(s.Degrees(c), places), s.Degree())
}

// TemperatureSpan is two temperatures, in °C, the colder first: "−14 to −9.5 °C".
func (s Style) TemperatureSpan(from, to float64) string {
	return s.span(s.temperature(from), s.temperature(to), s.Degree())
}

// TemperatureBand is two computed temperatures, in °C, the colder first, with so
// many decimals.
func (s Style) TemperatureBand(low, high float64, places int) string {
	return s.span(s.Number(s.Degrees(low), places), s.Number(s.Degrees(high), places), s.Degree())
}

// FreezingStep is the finest step, in K, in which a freezing point is worth printing.
const FreezingStep = 0.1

// Freezing is a computed freezing point, as finely as what is known of the recipe leaves
// it, and the band of what kitchens make of that: "−2.5 °C" and "−2.7 to −2.3 °C".
func (s Style) Freezing(t, made model.Span) (point, band string) {
	places := Places(FreezingStep, t.Low, t.High)
	return s.TemperatureTo(t.Value, places), s.TemperatureBand(made.Low, made.High, places)
}

// TemperatureStep is a difference of temperatures, in K: "2 °C".
func (s Style) TemperatureStep(k float64) string {
	if s.Scale == Fahrenheit {
		return s.with(s.Number(1.8*k, 0), "°F")
	}
	if math.Abs(k) >= 9.95 {
		return s.with(s.Number(k, 0), "°C")
	}
	return s.with(s.Short(k, 1), "°C")
}
