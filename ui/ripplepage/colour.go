package ripplepage

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/rippleview"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// colourRow is the colour of one phase: a sample, a food to start from, and the
// colour itself to be typed or picked.
type colourRow struct {
	sample *kit.Swatch
	foods  *kit.Select
	hex    *hexEntry
	foam   bool
	name   *widget.Label
	object fyne.CanvasObject // all but the name
}

func newColourRow(p *Page, name string, foam bool) *colourRow {
	r := &colourRow{sample: kit.NewSwatch(foam), foam: foam, name: widget.NewLabel(name)}
	commit := func(hex string) {
		p.change(say.ColourStep(say.Lower(name)), func(d *design.Design) {
			if foam {
				d.Blend.FoamColour = hex
			} else {
				d.Blend.DenseColour = hex
			}
		})
	}
	r.foods = kit.NewSelect(rippleview.FoodNames(), func(name string) { commit(rippleview.FoodColour(name, foam)) })
	r.foods.PlaceHolder = " "
	r.hex = newHexEntry(commit)
	pick := kit.NewButtonWithIcon("", theme.ColorPaletteIcon(), func() {
		kit.AskColour(p.host.Window(), say.ColourOf(say.Lower(name)), rippleview.Colour(r.hex.shown), foam, func(c color.NRGBA) { commit(rippleview.Hex(c)) })
	})
	r.object = container.NewBorder(nil, nil, r.sample, container.NewHBox(r.hex, pick), r.foods)
	return r
}

// show puts a colour on screen.
func (r *colourRow) show(hex string) {
	hex = strings.ToLower(hex)
	page.ShowSelected(r.foods, rippleview.FoodOf(hex, r.foam))
	r.hex.show(hex)
	r.sample.ShowColour(rippleview.Colour(hex))
}

// hexEntry is a colour to be typed. It tells of a colour when it is left or at
// Enter, and goes back to the last good one from what is none.
type hexEntry struct {
	widget.Entry
	shown  string
	commit func(hex string)
}

// TappedSecondary implements fyne.SecondaryTappable.
func (e *hexEntry) TappedSecondary(p *fyne.PointEvent) {
	kit.OnScreen(e, func() { e.Entry.TappedSecondary(p) })
}

func newHexEntry(commit func(string)) *hexEntry {
	e := &hexEntry{commit: commit}
	e.ExtendBaseWidget(e)
	e.OnSubmitted = mishap.With(func(string) { e.settle() })
	return e
}

func (e *hexEntry) show(hex string) {
	if hex != e.shown {
		e.shown = hex
		e.SetText(hex)
	}
}

func (e *hexEntry) settle() {
	typed, good := rippleview.TypedHex(e.Text)
	if good && typed != e.shown {
		e.shown = typed
		e.commit(typed)
	}
	e.SetText(e.shown)
}

// FocusLost implements fyne.Focusable.
func (e *hexEntry) FocusLost() {
	e.Entry.FocusLost()
	e.settle()
}

// MinSize implements fyne.CanvasObject: room for a colour, not for a sentence.
func (e *hexEntry) MinSize() fyne.Size {
	s := e.Entry.MinSize()
	s.Width = fyne.MeasureText("#dddddd", theme.TextSize(), fyne.TextStyle{}).Width + 5*theme.InnerPadding()
	return s
}
