package design

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/food/onpack"
)

// A design takes the words of just those languages in which a label can be set.
func TestALabelsLanguagesAreThoseWhoseWordsWereRead(t *testing.T) {
	words, err := onpack.OpenWords(assets.LabelWords)
	require.NoError(t, err)
	beside := slices.DeleteFunc(words.Languages(), func(s string) bool { return s == "en" })
	assert.Equal(t, beside, labelLanguages[:])
}

func TestTranslatedGivesWhatTheMakerTyped(t *testing.T) {
	d := New()
	for _, path := range []string{"label.de.name", "label.cs.ingredients"} {
		f, ok := FieldAt(path)
		require.True(t, ok, path)
		*f.At(&d).(*string) = path
	}
	names, lists := d.Label.Translated()
	assert.Equal(t, map[string]string{"de": "label.de.name"}, names)
	assert.Equal(t, map[string]string{"cs": "label.cs.ingredients"}, lists)
}
