package ui

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/cold"
)

func TestTheBenchSaysHowLongToLeaveItOut(t *testing.T) {
	never := cold.Range{Value: math.NaN(), Low: math.NaN(), High: math.NaN()}
	at := func(v, low, high float64) cold.Range { return cold.Range{Value: v, Low: low, High: high} }
	for want, s := range map[string]cold.Serving{
		"To serve at −14.0 °C leave out 9 to 14 min; it scoops from 7 to 25 min (Quay)": {
			StartC: -18, AirC: 22, OK: true, MeanServing: at(11, 9, 14), From: at(7, 5, 9), To: at(25, 20, 33)},
		"To serve at −14.0 °C leave out 9 to 14 min (Quay)": {
			StartC: -18, AirC: 22, MeanServing: at(11, 9, 14), From: never, To: never},
		"To serve at −14.0 °C take it straight from the freezer; it scoops until 25 min (Quay)": {
			StartC: -14, OK: true, MeanServing: at(0, 0, 0), From: at(0, 0, 0), To: at(25, 20, 33)},
		"The freezer, −12 °C, is warmer than −14.0 °C (Quay)": {StartC: -12, MeanServing: at(0, 0, 0), From: never, To: never},
		"It does not come to −14.0 °C on the counter, 22 °C (Quay)": {
			StartC: -18, AirC: 22, MeanServing: never, From: never, To: never},
	} {
		a := &cold.Answer{Profile: cold.Profile{Name: "Quay"}, Counter: s}
		assert.Equal(t, want, leaveOut(-14, a))
	}
}
