package say

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/learn"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/batch"
)

// A word of a scale is shown in the maker's language, by which it is found again: no two
// of a scale read alike, and English reads as the file does.
func TestTheWordsOfScalesAreTold(t *testing.T) {
	for _, tag := range []string{"en", "de"} {
		require.True(t, tongue.Speak(tag))
		t.Cleanup(func() { tongue.Speak(tongue.English) })
		for _, e := range batch.Entries() {
			seen := map[string]bool{}
			for _, w := range e.Choices {
				told := BatchWord(w)
				assert.False(t, seen[told], "%s: %s", e.Path, told)
				seen[told] = true
				assert.Equal(t, tag == "en", told == w, "%s in %s: %q is %q", e.Path, tag, w, told)
			}
		}
	}
}

// The bases and foams to begin with are named in the maker's language.
func TestWhatADesignBeginsWithIsNamed(t *testing.T) {
	for _, name := range []string{"Milk and yolk", "Rich", "Dairy-free"} { // assets/bases
		assert.Equal(t, "base: "+Lower(name), StartBaseName(name))
	}
	require.True(t, tongue.Speak("de"))
	t.Cleanup(func() { tongue.Speak(tongue.English) })
	for name, want := range map[string]string{"Milk and yolk": "Milch und Eigelb", "Rich": "reichhaltig", "Dairy-free": "ohne Milch"} {
		assert.Equal(t, "Basis: "+want, StartBaseName(name))
	}
	for name, want := range map[string]string{"plain": "schlicht", "honey": "Honig", "brown sugar": "brauner Zucker"} {
		assert.Equal(t, want, StartFoamName(name))
	}
}

// What a kitchen's file says was measured is told in the maker's language and units; words
// of the maker's own stand as they are.
func TestAMeasurementIsToldInTheMakersLanguage(t *testing.T) {
	core, scooped := cold.Measurement{Kind: cold.CoreAt, CoreC: -10, StartC: -3, Minutes: 100}.String(), cold.Measurement{Kind: cold.ScoopedWell, Minutes: 12}.String()
	assert.Equal(t, "calibration, core at −10 °C after 100 min from −3 °C", CalibrationStep(metric, core))
	assert.Equal(t, "calibration, scooped well after 12 min", CalibrationStep(metric, scooped))
	assert.Contains(t, CalibrationStep(us, core), "°F")
	assert.Equal(t, "calibration, by feel at −3", CalibrationStep(metric, "by feel at -3"))
	require.True(t, tongue.Speak("de"))
	t.Cleanup(func() { tongue.Speak(tongue.English) })
	assert.Contains(t, CalibrationStep(metric, core), "Kern bei −10")
	assert.Contains(t, CalibrationStep(metric, scooped), "gut portionierbar nach 12 min")
}

// The notebook's file weighs a cup of 250 mL; a maker who reads US measures weighs a US cup,
// of 236.6 mL, in every place.
func TestANotebooksCupIsTheMakers(t *testing.T) {
	const path = "foam.cup_g"
	q := learn.Question{Path: path}
	assert.Equal(t, "79 g", BatchValue(metric, path, 79.25))
	assert.Contains(t, Ask(metric, &q), "a level 250 mL cup of the foam")
	assert.Contains(t, BatchValue(us, path, 79.25), "75 g")
	assert.Contains(t, Ask(us, &q), "a level cup of the foam")
	assert.InDelta(t, 79.25, BatchGauge(us, path, "g").Kept(75), 0.01)
	assert.InDelta(t, 75, BatchShown(us, path, 79.25), 0.01)
	assert.Equal(t, 60., BatchShown(us, "syrup.weighed_g", 60), "no cup")
}
