package ui

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	base "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/astray"
	"ripplewright/internal/desk/places"
	"ripplewright/ui/kit"
	"ripplewright/ui/theme"
)

// sight is where something can be seen.
type sight struct{ left, top, right, bottom float32 }

// cut returns what of o, which stands at pos, is given less room than it needs or reaches
// out of what can be seen. What scrolls is seen whole where it scrolls.
func cut(o fyne.CanvasObject, pos fyne.Position, in sight) (found []string) {
	if !o.Visible() {
		return nil
	}
	const slack = 1.5
	size, least := o.Size(), o.MinSize()
	tell := func(what string) { found = append(found, fmt.Sprintf("%T %q %s", o, wordsOf(o), what)) }
	if l, ok := o.(*widget.Label); ok && l.Text == "" {
		return nil
	}
	_, holds := o.(*fyne.Container)
	_, scrolls := o.(*container.Scroll)
	if !holds && !scrolls && (size.Width+slack < least.Width || size.Height+slack < least.Height) {
		tell(fmt.Sprintf("has %v of %v", size, least))
	}
	if len(wordsOf(o)) > 0 && (pos.X+slack < in.left || pos.Y+slack < in.top || pos.X+size.Width > in.right+slack || pos.Y+size.Height > in.bottom+slack) {
		tell(fmt.Sprintf("at %v of %v is out of sight in %v", pos, size, in))
	}
	var inner []fyne.CanvasObject
	switch x := o.(type) {
	case *container.Scroll:
		in = sight{pos.X, pos.Y, pos.X + size.Width, pos.Y + size.Height}
		if x.Direction != container.ScrollVerticalOnly {
			in.right = 1e6
		}
		if x.Direction != container.ScrollHorizontalOnly {
			in.bottom = 1e6
		}
		return append(found, cut(x.Content, pos.Add(x.Content.Position()), in)...)
	case *lineEntry, *widget.Entry, *widget.List, *widget.Select, *kit.Select, *widget.Label:
		return found
	case *fyne.Container:
		inner = x.Objects
	case fyne.Widget:
		inner = test.WidgetRenderer(x).Objects()
	}
	for _, c := range inner {
		found = append(found, cut(c, pos.Add(c.Position()), in)...)
	}
	return found
}

// wordsOf is what a widget with words says.
func wordsOf(o fyne.CanvasObject) string {
	switch x := o.(type) {
	case *widget.Label:
		return x.Text
	case *kit.Button:
		return x.Text + "."
	case *kit.Check:
		return x.Text
	case *kit.Tab:
		return x.Text
	case *kit.Tile:
		v, _ := x.View()
		return v.Title
	}
	return ""
}

// everywhere turns to each place.
func (b *bed) everywhere(look func(name string)) {
	for p := places.Place(0); int(p) < places.Count; p++ {
		b.turnTo(p)
		b.frame()
		look(p.Name())
	}
	b.turnTo(places.Bench)
}

// scrolling are the pages that scroll as a whole with the largest text on a small screen:
// their pictures want some height.
var scrolling = map[places.Place]bool{places.Bench: true, places.Ripple: true}

// A screen has so much room, with text of a scale.
type screen struct{ width, height, scale float32 }

// TestNothingIsCut: what a window has no room for hides at its edge, or makes the window
// grow beyond the screen.
func TestNothingIsCut(t *testing.T) {
	nothingIsCut(newBed(t), screen{1280, 720, 1}, screen{1280, 720, 1.5}, screen{1920, 1080, 1.5})
}

// German words are longer.
func TestNothingIsCutInGerman(t *testing.T) {
	b := newBed(t)
	inGerman(t)
	b.inUnits(astray.Systems["comma"])
	b.Say("") // of the units
	nothingIsCut(b, screen{1280, 720, 1}, screen{1280, 720, 1.5})
}

func nothingIsCut(b *bed, screens ...screen) {
	t := b.t
	for _, x := range screens {
		b.App.Settings().SetTheme(theme.New(theme.Options{TextScale: x.scale}))
		menu := lineHeight() + 2*base.InnerPadding() // the menu bar, which is not part of the content
		b.win.Resize(fyne.NewSize(x.width, x.height-menu))
		room := b.win.Content().Size()
		b.everywhere(func(name string) {
			where := fmt.Sprintf("%s on %vx%v with text of %v", name, x.width, x.height, x.scale)
			for range 3 { // as the loop lays out anew what has grown
				b.win.Resize(fyne.NewSize(x.width-1, x.height-menu-1))
				b.win.Resize(fyne.NewSize(x.width, x.height-menu))
			}
			leaf := b.leaves[b.way.At()]
			least := leaf.Content.MinSize()
			assert.LessOrEqual(t, least.Width, leaf.Size().Width, where)
			if high := x.height < 800 && x.scale > 1; !high || !scrolling[b.way.At()] {
				assert.LessOrEqual(t, least.Height, leaf.Size().Height, where)
			}
			assert.Equal(t, room, b.win.Content().Size(), where)
			assert.Empty(t, cut(b.win.Content(), fyne.Position{}, sight{0, 0, room.Width, room.Height}), where)
		})
	}
}

// TestTheRowOfPagesIsOneRow with the largest text on a small screen, whatever is done.
func TestTheRowOfPagesIsOneRow(t *testing.T) {
	b := newBed(t)
	b.App.Settings().SetTheme(theme.New(theme.Options{TextScale: 1.5}))
	b.win.Resize(fyne.NewSize(startWidth, 720))
	b.everywhere(func(name string) {
		for _, s := range b.signs.all() {
			if s.Visible() {
				assert.Equal(t, b.signs.heads[0].Position().Y, s.Position().Y, "%s at %s", s.Text, name)
			}
		}
	})
}
