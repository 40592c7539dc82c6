package coldview

import (
	"context"
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// A Calibration asks for the factor of a kitchen at which a design's tub takes a
// measured time.
type Calibration struct {
	Design      design.Design
	Result      *model.Result // its evaluation, which nobody changes any more
	Kitchen     cold.Profile
	Measurement cold.Measurement
}

// Found is a kitchen as measured, and the plans without and with the measurement.
type Found struct {
	Kitchen       cold.Profile
	Before, After cold.Answer
}

// Measurable says, as a sentence, why a measurement cannot be one; "" if it can.
// What was not typed is NaN.
func Measurable(s say.Style, m cold.Measurement, k *cold.Profile) string {
	for _, f := range cold.MeasurementFields(m.Kind) {
		if v := *f.At(&m).(*float64); math.IsNaN(v) || f.Check(&m) != nil {
			return say.FillInFirst.String()
		}
	}
	if !m.Between(k.Freezer.AirC) {
		return say.CoreBetween(s, k.Freezer.AirC)
	}
	return ""
}

// Find finds the factor and what it changes.
func (c Calibration) Find(ctx context.Context) (Found, error) {
	plan := func(k cold.Profile) (cold.Answer, error) {
		return cold.Plan(ctx, c.Design, c.Result, k, cold.Options{NoPictures: true})
	}
	var f Found
	var err error
	if f.Kitchen, err = cold.Calibrate(ctx, c.Design, c.Result, c.Kitchen, c.Measurement); err != nil {
		return f, err
	}
	if f.Before, err = plan(c.Kitchen); err != nil {
		return f, err
	}
	f.After, err = plan(f.Kitchen)
	return f, err
}
