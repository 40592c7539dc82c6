package say

import (
	"errors"
	"math"
	"strings"
	"unicode"

	"ripplewright/internal/answer/cold"
)

// MeasuredPlace names the place of a kitchen that a measurement tells of.
func MeasuredPlace(k cold.MeasurementKind) string {
	if k == cold.ScoopedWell {
		return T("counter")
	}
	return T("freezer")
}

// CalibrationTitle heads the question for a measured time.
func CalibrationTitle(k cold.MeasurementKind, kitchen string) string {
	return T("Calibrate the %s of “%s”", MeasuredPlace(k), KitchenName(kitchen))
}

// CalibrationHead heads what a place rests on.
func CalibrationHead(k cold.MeasurementKind) string {
	return T("Calibration of the %s", MeasuredPlace(k))
}

// HowToMeasure says what a maker measures.
func HowToMeasure(k cold.MeasurementKind) string {
	if k == cold.CoreAt {
		return T("Stand a tub of this design, filled as it says, in the freezer with a thermometer in its core.")
	}
	return T("Take a tub of this design, filled as it says, from the freezer and stand it on the counter. How long is it until the outer ring scoops just right?")
}

// FillInFirst asks for what is missing.
const FillInFirst Message = "Fill in the fields above first."

// CoreBetween says between what a measured core lies.
func CoreBetween(s Style, airC float64) string {
	return T("The core must be colder than at the start and warmer than the freezer's air, %s.", s.TemperatureTo(airC, 1))
}

// Calibrated says what a calibration found; what it changes stands below.
func Calibrated(s Style, k cold.MeasurementKind, factor float64) string {
	return T("With heat going %s times as fast %s, the tub takes the time you measured. What that changes:", s.Number(factor, 2), inPlace(k))
}

func inPlace(k cold.MeasurementKind) string {
	if k == cold.ScoopedWell {
		return T("on the counter")
	}
	return T("in the freezer")
}

// NotCalibrated says why no calibration was found.
func NotCalibrated(s Style, k cold.MeasurementKind, err error) string {
	var none *cold.CalibrationError
	if !errors.As(err, &none) {
		return Capital(strings.TrimSuffix(Flaw(err), ".")) + "."
	}
	return T("No %s in reason takes %s for that, but %s. Look again at what was measured.", MeasuredPlace(k), s.Duration(none.Measured.Minutes), s.DurationSpan(none.ShortestMinutes, none.LongestMinutes))
}

// Measured says on what a place of a kitchen rests.
func Measured(s Style, p cold.Place) string {
	if p.Measured == "" {
		return T("Nothing is measured in this kitchen yet: one measured time makes the answers closer.")
	}
	return T("Measured: %s. Heat goes %s times as fast as first assumed.", measurement(s, p.Measured), s.Number(p.Factor, 2))
}

// CalibrationStep names a calibration that was kept.
func CalibrationStep(s Style, measured string) string {
	return T("calibration, %s", measurement(s, measured))
}

// measurement tells what a kitchen's file says was measured.
func measurement(s Style, text string) string {
	m, ok := cold.ReadMeasurement(text)
	minutes := s.with(s.Number(m.Minutes, 0), "min")
	switch {
	case !ok:
		return TrueMinus(text)
	case m.Kind == cold.ScoopedWell:
		return T("scooped well after %s", minutes)
	}
	degrees := func(c float64) string {
		if c == math.Round(c) {
			return s.TemperatureTo(c, 0)
		}
		return s.TemperatureTo(c, 1)
	}
	return T("core at %s after %s from %s", degrees(m.CoreC), minutes, degrees(m.StartC))
}

// TrueMinus gives the numbers in a text of a file, after a space, a bracket or
// nothing, their true minus sign.
func TrueMinus(text string) string {
	r := []rune(text)
	for i, c := range r {
		begins := i == 0 || r[i-1] == ' ' || r[i-1] == '('
		if c == '-' && begins && i+1 < len(r) && unicode.IsDigit(r[i+1]) {
			r[i] = '−'
		}
	}
	return string(r)
}
