package customary_test

import (
	"testing"

	"ripplewright/internal/check"
	"ripplewright/internal/form/customary"
)

// NIST Special Publication 811 (2008), Appendix B.8, prints seven digits: fluid ounce,
// cup, pint, quart, gallon, tablespoon and teaspoon, ounce and pound (avoirdupois).
func TestMeasuresAreThoseOfAnotherPublication(t *testing.T) {
	for _, c := range []struct {
		has     float64
		printed string
	}{
		{customary.FluidOunceML, "29.57353"}, {customary.CupML, "236.5882"}, {customary.PintML, "473.1765"}, {customary.QuartML, "946.3529"},
		{customary.GallonML, "3785.412"}, {customary.TablespoonML, "14.78676"}, {customary.TeaspoonML, "4.928922"},
		{customary.OunceG, "28.34952"}, {customary.PoundG, "453.5924"}, {customary.InchMM, "25.4"}, {customary.FootM, "0.3048"},
	} {
		check.Printed(t, c.has, c.printed)
	}
}
