package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"github.com/stretchr/testify/require"

	"github.com/stretchr/testify/assert"
)

func TestALongNameIsCutToItsWidthAndAShortOneIsNot(t *testing.T) {
	test.NewTempApp(t)
	const long = "Glucose (corn) syrup, about DE 42, 80 % solids (calculated)"
	for _, width := range []float32{60, 110, 200} {
		cut := fitting(long, width)
		require.True(t, strings.HasSuffix(cut, "…"), cut)
		require.LessOrEqual(t, fyne.MeasureText(cut, theme.TextSize(), fyne.TextStyle{Bold: true}).Width, width)
	}
	require.Equal(t, "Honey", fitting("Honey", 200))
}

func TestAListsHeadMakesRoomForItsTitle(t *testing.T) {
	b := newBed(t)
	l := b.bench.foam.lists[1]
	for _, title := range []string{"Boiled to syrup, 87 % solids", "Boiled", "Boiled to syrup, of which nobody knows how much is solid"} {
		l.entitle(title)
		typing, least := l.head.Objects[1].Position(), l.title.MinSize()
		assert.True(t, typing.X == least.Width || typing.Y >= least.Height, "%s: typed at %v, before the toolkit looks", title, typing)
	}
}
