package ui

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/work/userdata"
	"ripplewright/ui/kit"
)

// typeInto types text into a number's field and settles it.
func (b *bed) typeInto(n *kit.NumberField, text string) {
	b.win.Canvas().Focus(n.Focusable())
	n.Focusable().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(n.Focusable(), text)
	n.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	b.frame()
}

func TestAPackIsPricedOnceForEveryDesign(t *testing.T) {
	b := newBed(t)
	l := b.bench.dense.lists[0]
	first := func() string { return b.Design().Dense.Lines[0].Ingredient }
	d := b.Design()
	d.Dense.Lines = append(d.Dense.Lines[:0:0], d.Dense.Lines...)
	d.Dense.Lines[0].Price = ingredient.Known(9) // as an older file says it
	b.Commit(d, "price")
	l.price(0)
	fields := numbersIn(b.win.Canvas().Overlays().Top())
	require.Len(t, fields, 3)
	b.press("Keep it")
	assert.Empty(t, b.Prices.Book().Packs(), "nothing was typed")
	b.typeInto(fields[0], "2.20")
	assert.Empty(t, b.Prices.Book().Packs(), "what it holds is still to be said")
	b.typeInto(fields[1], "2000") // whose Return keeps it
	require.Equal(t, []price.Pack{{Ingredient: first(), Price: 2.2, Grams: 2000}}, b.Prices.Book().Packs())
	kept, err := userdata.LoadPrices(b.Prices.Path())
	require.NoError(t, err)
	assert.True(t, kept.Equal(b.Prices.Book()), "it outlives the program")
	assert.InDelta(t, 0.0011*b.Result().Lines[0].Grams, b.Result().Cost.Known, 1e-12, "and counts before the line's own")

	b.Session.Start(d)
	b.frame()
	assert.InDelta(t, 0.0011, b.Result().Lines[0].PerGram.Value, 1e-15, "another design has it too")
	l.price(0)
	b.typeInto(numbersIn(b.win.Canvas().Overlays().Top())[0], "2.40")
	assert.Equal(t, 2.4, b.Prices.Book().Packs()[0].Price, "a price alone is changed by one Return")
	l.price(0)
	b.press("No price")
	assert.Empty(t, b.Prices.Book().Packs())
	assert.False(t, b.Result().Cost.Priced, "nor does the line's older price come back")
	require.True(t, b.Session.Undo())
}

func TestYolksAreBoughtAsEggs(t *testing.T) {
	b := newBed(t)
	l := b.bench.dense.lists[0]
	at := -1
	for i, x := range b.Design().Dense.Lines {
		if x.Ingredient == "egg_yolk" {
			at = i
		}
	}
	require.GreaterOrEqual(t, at, 0)
	l.price(at)
	assert.Contains(t, b.dialogTexts(), "Price of eggs")
	b.typeInto(numbersIn(b.win.Canvas().Overlays().Top())[0], "3.60")
	b.press("Keep it")
	assert.Equal(t, []price.Pack{{Ingredient: price.Eggs, Price: 3.6, Pieces: 12}}, b.Prices.Book().Packs())
	assert.True(t, b.Result().Lines[at].PerGram.Known)
}

func TestPricesBrokenByHandAreToldOf(t *testing.T) {
	b := newBed(t)
	path := b.Prices.Path()
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
	broken := []byte("prices: [{ingredient: sugar}]\n")
	require.NoError(t, os.WriteFile(path, broken, 0o644))
	b.Prices.Read()
	b.greet()
	text := unbroken(b.dialogTexts())
	assert.Contains(t, text, unbroken("our own prices are left out"))
	assert.Contains(t, text, unbroken(`line 1: price of "sugar": price: is missing`))
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, broken, now)
}
