package ui

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// wicked turns round what follows it, rings, clears a terminal and stands in no width.
const wicked = "Quay\u202eevil\u001b[2J\u0007\u200b"

// A design whose names and notes are made to mislead says on every page, in every dialog
// and in the window's title what it says, and no more. A field shows what is in it.
func TestNoNameMisleadsInTheWindow(t *testing.T) {
	b := newBed(t)
	d := market.Demo(t)
	d.Name, d.Notes, d.Label.Portion = wicked+" name", wicked+" notes", wicked+" portion"
	honey, ok := market.Library(t).Find("honey")
	require.True(t, ok)
	own := *honey
	own.ID, own.Own, own.Name, own.KitchenName = "quay_honey", true, wicked+" own", wicked+" own"
	d.Own = append(d.Own, &own)
	d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: own.ID, Grams: 20, Note: wicked + " note"})
	for _, p := range design.Parts {
		lines := d.Lines(p)
		for i := range lines {
			lines[i].Note = wicked + " note"
		}
	}
	b.Session.Start(d)
	b.frame()
	title := b.win.Title()
	assert.Equal(t, say.HarmlessLine(title), title)
	assert.Contains(t, title, "Quayevil[2J name")

	seen := 0
	look := func(o fyne.CanvasObject, from string) {
		for _, text := range shownIn(o) {
			assert.Equal(t, say.HarmlessPage(text), text, from)
			if strings.Contains(text, "Quayevil") {
				seen++
			}
		}
	}
	for p := places.Place(0); int(p) < places.Count; p++ {
		object := b.standAt(p)
		for begun := time.Now(); time.Since(begun) < 700*time.Millisecond; time.Sleep(20 * time.Millisecond) {
			b.frame()
		}
		look(object, p.Name())
	}
	b.openAll(func(from string) {
		canvas := b.win.Canvas()
		for n := 0; canvas.Overlays().Top() != nil && n < 9; n++ {
			b.frame()
			look(canvas.Overlays().Top(), "a dialog from "+from)
			canvas.Overlays().Remove(canvas.Overlays().Top())
			b.frame()
		}
	})
	for _, m := range b.win.MainMenu().Items {
		for _, it := range m.Items {
			assert.Equal(t, say.HarmlessLine(it.Label), it.Label)
		}
	}
	require.Greater(t, seen, 5, "the names are shown")
}

// shownIn are all texts in sight but what stands in fields.
func shownIn(in fyne.CanvasObject) (all []string) {
	typed := map[string]bool{}
	var texts []string
	for _, o := range test.LaidOutObjects(in) {
		switch x := o.(type) {
		case interface{ SelectedText() string }: // a field of the toolkit, or one of ours about one
			for _, line := range strings.Split(reflect.ValueOf(x).Elem().FieldByName("Text").String(), "\n") {
				typed[line] = true
			}
		case *canvas.Text:
			texts = append(texts, x.Text)
		case fyne.Widget:
			texts = append(texts, setIn(x)...)
		}
	}
	for _, text := range texts {
		if !typed[text] {
			all = append(all, text)
		}
	}
	return all
}
