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
	l.entitle(l.title.Text + " and more words than before")
	wide := func() float32 { return l.head.Objects[1].Position().X }
	assert.GreaterOrEqual(t, wide(), l.title.MinSize().Width, "before the toolkit looks")
}
