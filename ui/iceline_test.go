package ui

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// How the ice eats is one answer on the bench and, where it matters, on the card.
func TestBenchAndCardSayAlikeHowTheIceEats(t *testing.T) {
	b := newBed(t)
	line := b.bench.cold
	require.True(t, b.happens(func() bool { return line.ice != "" }), "the bench has a line of the ice")
	assert.Contains(t, line.label.Text(), line.ice)

	m := model.New(market.Library(t))
	told := 0
	for name, d := range market.Demos(t) {
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		a, err := cold.Plan(context.Background(), d, &r, cold.Default(), cold.Options{NoPictures: true})
		require.NoError(t, err)
		ice, err := icy.Tell(&r, &a, icy.Options{})
		require.NoError(t, err)
		want := say.IceLine(page.Reads, &ice)
		path := filepath.Join(t.TempDir(), "card.md")
		require.NoError(t, card.Write(path, d, &r, card.Options{Cold: &a, Style: page.Reads}))
		written, err := os.ReadFile(path)
		require.NoError(t, err)
		if ice.Matters() {
			told++
			assert.Contains(t, string(written), "Ice: "+want, name)
		} else {
			assert.NotContains(t, string(written), "Ice: ", name)
		}
		// At the ordinary size of text nothing of the line is cut.
		full := leaveOut(&a) + " Ice: " + want + "."
		assert.Equal(t, full, kit.Shortened(full, startWidth-8*theme.Padding(), theme.Size(theme.SizeNameCaptionText), fyne.TextStyle{}), name)
	}
	assert.Positive(t, told)
}
