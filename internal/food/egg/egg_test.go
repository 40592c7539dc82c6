package egg_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/egg"
)

func TestLargeUSEggIsThatOfSR28(t *testing.T) {
	for part, want := range map[string]float64{ // USDA SR28, household weights
		"eggs":   50, // NDB 01123
		"yolks":  17, // NDB 01125
		"whites": 33, // NDB 01124
	} {
		got, err := egg.Grams("US", "large", part, 3)
		require.NoError(t, err)
		assert.InDelta(t, 3*want, got, 1e-12, part)
	}
}

// US Standards, Grades, and Weight Classes for Shell Eggs (AMS 56), minimum
// net weight per dozen in ounces; 28.3495 g to the ounce.
func TestUSClassesAreTheStandardsMinimum(t *testing.T) {
	for name, ounces := range map[string]float64{"peewee": 15, "small": 18, "medium": 21, "large": 24, "extra large": 27, "jumbo": 30} {
		s, err := egg.Find("US", name)
		require.NoError(t, err)
		assert.InDelta(t, ounces*28.3495/12, s.InShellG, 0.05, name)
	}
}

func TestYolkAndWhiteMakeTheEdiblePart(t *testing.T) {
	for _, system := range egg.Systems() {
		last := 0.0
		for _, s := range egg.Sizes(system) {
			assert.InDelta(t, s.EdibleG, s.YolkG+s.WhiteG, 0.15, s.Name) // each is rounded to 0.1 g
			assert.InDelta(t, 0.88, s.EdibleG/s.InShellG, 0.02, s.Name)
			assert.Greater(t, s.InShellG, last, s.Name)
			last = s.InShellG
		}
	}
}

func TestErrorsSayWhatIsKnown(t *testing.T) {
	_, err := egg.Grams("US", "huge", "eggs", 1)
	require.EqualError(t, err, `no US egg size is called "huge"; known are peewee, small, medium, large, extra large, jumbo`)
	var size *egg.SizeError
	require.ErrorAs(t, err, &size)
	_, err = egg.Grams("Moon", "large", "eggs", 1)
	require.EqualError(t, err, `egg sizes of "Moon" are not known; known are US and EU`)
	_, err = egg.Grams("EU", "m", "shells", 1)
	require.EqualError(t, err, `"shells" is no part of an egg; known are eggs, yolks, whites`)
	for _, n := range []float64{-1, math.NaN(), math.Inf(1)} {
		_, err = egg.Grams("EU", "M", "eggs", n)
		require.Error(t, err)
	}
}
