package tongue_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/tongue"
)

const verdict tongue.Message = "At %s the custard %s and the foam %s."

// in speaks a language for the length of a test.
func in(t *testing.T, tag string) {
	require.True(t, tongue.Speak(tag))
	t.Cleanup(func() { tongue.Speak(tongue.English) })
}

func TestEnglishIsTheMessageItself(t *testing.T) {
	assert.Equal(t, "At −14 °C the custard scoops and the foam slumps.", tongue.T(verdict, "−14 °C", "scoops", "slumps"))
	assert.Equal(t, "100 % of it", tongue.T("100 % of it"), "without arguments it is no format")
	assert.Equal(t, "Other", tongue.T("Other¦group"), "what tells two apart is not shown")
	assert.Equal(t, tongue.English, tongue.Language())
}

func TestAnotherLanguageSaysItsOwn(t *testing.T) {
	in(t, "de")
	assert.Equal(t, "Bei −14 °C gilt: die Creme ist zu hart und der Schaum fließt zusammen.",
		tongue.T(verdict, "−14 °C", tongue.T("is too hard"), tongue.T("slumps")))
	assert.Equal(t, "Sonstiges", tongue.T("Other¦group"))
	assert.Equal(t, "Vollmilch", tongue.Of("whole milk"))
	assert.Equal(t, "milk of the quay", tongue.Of("milk of the quay"), "a maker's own word stands as it is")
	assert.Equal(t, "Woche", tongue.Plural(1, "week", "weeks"))
	assert.Equal(t, "Wochen", tongue.Plural(2, "week", "weeks"))
}

func TestAnUnknownLanguageChangesNothing(t *testing.T) {
	in(t, "de")
	assert.False(t, tongue.Speak("tlh"))
	assert.Equal(t, "de", tongue.Language())
}

func TestTheSystemChoosesAmongTheLanguagesThatThereAre(t *testing.T) {
	for locale, tag := range map[string]string{"de_AT.UTF-8": "de", "de-CH": "de", "DE": "de", "en_GB": "en", "fr_FR": "en", "C": "en", "": "en", "den": "en"} {
		assert.Equal(t, tag, tongue.ByLocale(locale), locale)
	}
}

func BenchmarkMessage(b *testing.B) {
	tongue.Speak("de")
	defer tongue.Speak(tongue.English)
	for range b.N {
		_ = tongue.T("is too hard")
	}
}
