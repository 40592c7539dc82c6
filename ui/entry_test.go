package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// strike types text where the keyboard is, and then presses keys.
func (b *bed) strike(text string, keys ...fyne.KeyName) {
	for _, r := range text {
		b.win.Canvas().Focused().TypedRune(r)
	}
	for _, k := range keys {
		b.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: k})
	}
	b.frame()
}

// A recipe of eleven lines takes a Return for each, one to go on to the next
// list, and nothing else.
func TestARecipeIsTypedByKeysAlone(t *testing.T) {
	b := newBed(t)
	b.menu("File", "New")
	for _, line := range []string{"420 g whole milk", "180 g heavy cream", "95 g sugar", "6 yolks", "0.8 g salt", "",
		"4 whites", "1 g cream of tartar", "", "160 g sugar", "60 g water", "20 g honey", "0,5 g salt"} {
		b.strike(line, fyne.KeyReturn)
	}
	d := b.Design()
	assert.Equal(t, []design.Line{{Ingredient: "milk_whole", Grams: 420}, {Ingredient: "cream_heavy", Grams: 180}, {Ingredient: "sugar", Grams: 95},
		{Ingredient: "egg_yolk", Count: 6, CountOf: design.Yolks}, {Ingredient: "salt", Grams: 0.8}}, d.Dense.Lines)
	assert.Len(t, d.Foam.Lines, 2)
	require.Len(t, d.Foam.Syrup.Lines, 4)
	assert.Equal(t, 0.5, d.Foam.Syrup.Lines[3].Grams)
}

// What has two meanings is not taken by Return: it is offered, and a second one,
// or another choice, takes it.
func TestADoubtIsOfferedAndNotTaken(t *testing.T) {
	b := newBed(t)
	b.menu("File", "New")
	b.strike("200 g cream", fyne.KeyReturn)
	assert.Empty(t, b.Design().Dense.Lines)
	e := b.entries()[0]
	assert.True(t, e.choices.Visible())
	assert.Contains(t, e.doubt.Text, "may be")
	second := e.now.Choices[1].Of.ID
	b.strike("", fyne.KeyDown, fyne.KeyReturn)
	require.Len(t, b.Design().Dense.Lines, 1)
	assert.Equal(t, design.Line{Ingredient: second, Grams: 200}, b.Design().Dense.Lines[0])
	assert.Empty(t, e.Text)

	b.strike("10 g moon dust", fyne.KeyReturn)
	assert.Len(t, b.Design().Dense.Lines, 1)
	b.strike("", fyne.KeyEscape)
	assert.Empty(t, e.Text)
}

// After a line without an amount, and after one from the list of ingredients, the
// grams have the keyboard.
func TestTheGramsHaveTheKeyboardAfterALineIsAdded(t *testing.T) {
	b := newBed(t)
	b.menu("File", "New")
	b.strike("honey", fyne.KeyReturn)
	require.Len(t, b.Design().Dense.Lines, 1)
	l := b.bench.dense.lists[0]
	assert.Equal(t, l.rows[0].amount.Focusable(), b.win.Canvas().Focused())
	b.strike("45", fyne.KeyReturn)
	assert.Equal(t, 45.0, b.Design().Dense.Lines[0].Grams)

	l.pick(-1)
	for _, r := range "dextrose" {
		b.win.Canvas().Focused().TypedRune(r)
	}
	b.strike("", fyne.KeyReturn)
	require.Len(t, b.Design().Dense.Lines, 2)
	assert.Equal(t, l.rows[1].amount.Focusable(), b.win.Canvas().Focused())
}

// A pasted list is shown before it is taken: what is doubtful is left out until a
// hand chooses, and all of it is one step of undo.
func TestAPastedListIsShownBeforeItIsTaken(t *testing.T) {
	b := newBed(t)
	b.menu("File", "New")
	clip := test.NewClipboard()
	clip.SetContent("For the custard:\n250 g whole milk\n1/2 cup sugar\n2 to 3 yolks\n100 g gold leaf\n2 cups whole mlk\n")
	b.entries()[0].TypedShortcut(&fyne.ShortcutPaste{Clipboard: clip})
	assert.Empty(t, b.Design().Dense.Lines)
	words := b.dialogTexts()
	assert.Contains(t, words, "It is a range: write one amount.")
	assert.Contains(t, words, "No ingredient is called so.")
	assert.Contains(t, words, "No ingredient is called so; is it whole milk?")
	assert.NotContains(t, words, "?.")
	assert.Contains(t, words, "2 lines of 5 will be added")
	b.press(say.RecipeAdd.String())
	require.Len(t, b.Design().Dense.Lines, 2)
	b.menu("Edit", "Undo")
	assert.Empty(t, b.Design().Dense.Lines)

	one := test.NewClipboard()
	one.SetContent("30 g honey")
	b.win.Canvas().Focus(b.entries()[1])
	b.entries()[1].TypedShortcut(&fyne.ShortcutPaste{Clipboard: one})
	assert.Equal(t, "30 g honey", b.entries()[1].Text, "one line is typed text")
}
