package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/ui/kit"
)

func TestAPriceIsAskedByThePackAndGoesWithItsIngredient(t *testing.T) {
	b := newBed(t)
	l := b.bench.dense.lists[0]
	price := func() ingredient.Cell { return b.Design().Dense.Lines[0].Price }
	l.price(0)
	fields := numbersIn(b.win.Canvas().Overlays().Top())
	require.Len(t, fields, 2)
	b.press("Use it")
	assert.False(t, price().Known, "nothing was typed")
	for i, text := range []string{"2.20", "2000"} {
		b.win.Canvas().Focus(fields[i].Focusable())
		fields[i].Focusable().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
		test.Type(fields[i].Focusable(), text)
		fields[i].Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}
	b.press("Use it")
	assert.InDelta(t, 1.1, price().Value, 1e-12)
	assert.InDelta(t, 1.1*b.Result().Lines[0].Grams/1000, b.Result().Cost.Known, 1e-12)

	l.put(0, kit.FinderItem{ID: "milk_goat", Title: "Goat's milk"})
	assert.False(t, price().Known, "it was the other's")
	require.True(t, b.Session.Undo())
	l.price(0)
	b.press("No price")
	assert.False(t, price().Known)
}
