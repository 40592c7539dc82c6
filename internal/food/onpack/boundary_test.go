package onpack_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/onpack"
)

// Rows of our own on either side of each step, worked by hand from the rule beside
// them.

// 16 CFR 500.19 gives the units; 21 CFR 101.7 the largest whole unit, by the uniform
// rule that states print; what is not the filled measure is rounded down.
func TestNetQuantitiesBesideEachStep(t *testing.T) {
	for _, c := range []struct {
		place onpack.Place
		ml    float64
		sign  string
		want  string
	}{
		{onpack.US, 472.60, ".", "15.9 FL OZ (472 mL)"}, // 15.98 fl oz, 0.58 mL under a pint
		{onpack.US, 472.70, ".", "1 PINT (473 mL)"},     // within half a millilitre of it
		{onpack.US, 473.60, ".", "1 PINT (473 mL)"},
		{onpack.US, 476.13, ".", "1 PINT (476 mL)"},           // 16.0999 fl oz
		{onpack.US, 476.15, ".", "1 PINT 0.1 FL OZ (476 mL)"}, // 16.1006
		{onpack.US, 29.57, ".", "0.9 FL OZ (29 mL)"},
		{onpack.US, 29.58, ".", "1 FL OZ (29 mL)"},
		{onpack.US, 999.9, ".", "1 QUART 1.8 FL OZ (999 mL)"},
		{onpack.US, 1064.7, ".", "1 QUART 4 FL OZ (1.06 L)"}, // 36.002 fl oz
		{onpack.US, 3785.41, ".", "1 GALLON (3.78 L)"},       // 128 fl oz are 3785.408 mL
		{onpack.US, 4000, ".", "1 GALLON 7.2 FL OZ (4 L)"},   // 135.256 fl oz
		{onpack.US, 5700, ".", "1 GALLON 2 QUARTS 0.7 FL OZ (5.7 L)"},
		{onpack.US, 12345, ".", "3 GALLONS 1 QUART 1.4 FL OZ (12.3 L)"}, // 417.43 fl oz
		{onpack.UK, 999.9, ".", "999 ml"},
		{onpack.UK, 1000, ".", "1 l"},
		{onpack.DE, 1500, ",", "1,5 l"},
		{onpack.IT, 1259.9, ",", "1,25 l"},
		{onpack.DE, 457.9, ",", "457 ml"},
	} {
		assert.Equal(t, c.want, onpack.NetQuantity(c.place, c.ml, c.sign), "%s %g", c.place, c.ml)
	}
}

// Directive 76/211/EEC, Annex I as FPackV § 38(2): up to and including 50, 200 and
// 1000; 21 CFR 101.7(i) likewise, in square inches.
func TestHeightsOfFiguresBesideEachStep(t *testing.T) {
	for _, c := range []struct{ ml, mm float64 }{{50, 2}, {50.01, 3}, {200, 3}, {200.01, 4}, {1000, 4}, {1000.01, 6}} {
		assert.Equal(t, c.mm, onpack.FigureMM(c.ml), "%g", c.ml)
	}
	for _, c := range []struct{ in2, inches float64 }{{4.99, 1. / 16}, {5.001, 1. / 8}, {24.9, 1. / 8}, {25.001, 3. / 16}, {99.9, 3. / 16}, {100.001, 1. / 4}, {399, 1. / 4}, {401, 1. / 2}} {
		assert.InDelta(t, 25.4*c.inches, onpack.USFigureMM(c.in2), 1e-9, "%g", c.in2)
	}
}

// Article 13(3): under 80 cm² letters of 0.9 mm; Annex V, 18 under 25; Article 16(2)
// under 10. A box's largest surface is its larger side or lid.
func TestSurfacesBesideEachStep(t *testing.T) {
	box := func(length, height float64) onpack.Tub {
		return onpack.Tub{LengthMM: length, BreadthMM: 20, HeightMM: height}
	}
	assert.Equal(t, 1.2, box(100, 80).XHeightMM(), "80 cm² is not under 80")
	assert.Equal(t, 0.9, box(100, 79.9).XHeightMM())
	assert.False(t, box(50, 50).NoPanel(), "25 cm²")
	assert.True(t, box(50, 49.9).NoPanel())
	assert.False(t, box(50, 20).FewWords(), "10 cm²")
	assert.True(t, box(49, 20).FewWords())
}

// Annex X(1): day and month up to 3 months, month and year up to 18, then the year;
// 3 and 18 calendar months, the day itself included.
func TestDatesBesideEachStep(t *testing.T) {
	for _, c := range []struct {
		made, keeps, last, least, end string
	}{
		{"2027-11-30", "3m", "2028-02-29", "day+month", ""}, // a leap year's February
		{"2027-11-30", "91d", "2028-02-29", "day+month", ""},
		{"2027-11-30", "92d", "2028-03-01", "month+year", "Best before end 02.2028"},
		{"2026-07-14", "18m", "2028-01-14", "month+year", "Best before end 12.2027"},
		{"2026-07-14", "19m", "2028-02-14", "year", "Best before end 01.2028"},
		{"2026-05-31", "4m", "2026-09-30", "month+year", "Best before end 09.2026"},
		{"2026-05-30", "4m", "2026-09-30", "month+year", "Best before end 09.2026"},
		{"2026-05-29", "4m", "2026-09-29", "month+year", "Best before end 08.2026"},
	} {
		made, err := time.Parse(time.DateOnly, c.made)
		require.NoError(t, err)
		keeps, err := onpack.ParseDurability(c.keeps)
		require.NoError(t, err)
		b := onpack.BestBeforeOf(made, keeps)
		assert.Equal(t, c.last, b.Last.Format(time.DateOnly), "%s %s", c.made, c.keeps)
		assert.Equal(t, c.least, b.Least, "%s %s", c.made, c.keeps)
		assert.Equal(t, c.end, b.Text(onpack.ByMonth, "Best before", "Best before end"), "%s %s", c.made, c.keeps)
	}
}

// Thresholds of the 2013 UK guidance as secondary pages give them: the limit itself
// is the milder colour; a portion of 100 g has no rule of its own.
func TestColoursBesideEachStep(t *testing.T) {
	for _, c := range []struct {
		nutrient         string
		per100, portionG float64
		want             onpack.Colour
		ri               int
	}{
		{"fat", 14, 150, onpack.Amber, 30}, {"fat", 14.1, 150, onpack.Red, 30}, {"fat", 17.5, 100, onpack.Amber, 25},
		{"saturates", 4, 150, onpack.Amber, 30}, {"saturates", 4.1, 150, onpack.Red, 31}, {"saturates", 5, 100, onpack.Amber, 25},
		{"sugars", 18, 150, onpack.Amber, 30}, {"sugars", 18.1, 150, onpack.Red, 30}, {"sugars", 22.5, 100, onpack.Amber, 25},
		{"salt", 1.2, 150, onpack.Amber, 30}, {"salt", 1.21, 150, onpack.Red, 30}, {"salt", 0.3, 100, onpack.Green, 5},
		{"fat", 3, 1000, onpack.Red, 43}, // 30 g in the portion
	} {
		f, ok := onpack.Front(c.nutrient, c.per100, c.portionG)
		require.True(t, ok)
		assert.Equal(t, c.want, f.Colour, "%s %g of %g", c.nutrient, c.per100, c.portionG)
		assert.Equal(t, c.ri, f.RIPercent, "%s %g of %g", c.nutrient, c.per100, c.portionG)
	}
}

// Numbers of the prefix that is free inside a shop, worked by hand: 2 + 27 and five
// times 9 + 27 are 209, six times 2 + 3 are 30, 2 + 9 are 11, six times 2 + 6 are 48.
func TestCheckDigitsByHand(t *testing.T) {
	for twelve, want := range map[string]int{"299999999999": 1, "212121212121": 0, "200000000003": 9, "222222222222": 2} {
		got, err := onpack.CheckDigit(twelve)
		require.NoError(t, err)
		assert.Equal(t, want, got, twelve)
	}
}
