package say

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/compare"
	"ripplewright/internal/work/design"
)

// A choice that differs has the name that a maker chooses it by, a colour its sign, and what
// somebody wrote stands in quotes.
func TestASettingThatDiffersIsCalledAsItIsChosen(t *testing.T) {
	a := design.Default()
	b := a
	b.Tubs.Shape, b.Blend.Layout, b.Blend.Motion, b.Batch.Basis = design.ShapeShallow, "spiral", "fold", design.BasisAsWritten
	b.Blend.FoamColour, b.Kitchen.Profile, b.Name = "#f1dfc2", "Home freezer", "Tram"
	for _, c := range []struct{ path, english, german string }{
		{"tubs.shape", "Round and shallow", "Rund und flach"},
		{"blend.layout", "piped spiral", "gespritzte Spirale"},
		{"blend.motion", "folding", "unterhebend"},
		{"batch.basis", "Keep the grams as written", "Die Gramm lassen, wie geschrieben"},
		{"blend.foam_colour", "#f1dfc2", "#f1dfc2"},
		{"kitchen.profile", "“Home freezer”", "„Gefrierschrank zu Hause“"},
		{"name", "“Tram”", "„Tram“"},
	} {
		f, ok := design.FieldAt(c.path)
		require.True(t, ok, c.path)
		x := compare.Setting{Field: f, Before: a, After: b}
		assert.Equal(t, c.english, SettingText(Usual, x))
		require.True(t, tongue.Speak("de"))
		assert.Equal(t, c.german, SettingText(Usual, x))
		tongue.Speak(tongue.English)
	}
}
