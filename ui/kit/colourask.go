package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// AskColour asks for the colour of a phase, from now on, by hue, saturation and
// lightness; bubbles for a foam. use is given the one that is taken.
func AskColour(w fyne.Window, title string, now draw.Colour, bubbles bool, use func(draw.Colour)) {
	sample := NewSwatch(bubbles)
	chosen := now
	h, s, l := draw.HSL(now)
	words := say.ColourSliders()
	hue, strength, light := NewSlide(words[0], "°", 0, 360, 1, 0), NewSlide(words[1], "%", 0, 100, 1, 0), NewSlide(words[2], "%", 0, 100, 1, 0)
	hue.ShowValue(h)
	strength.ShowValue(s)
	light.ShowValue(l)
	sample.ShowColour(now)
	for _, part := range []struct {
		slide *Slide
		of    *float64
	}{{hue, &h}, {strength, &s}, {light, &l}} {
		part.slide.OnChanged = func(v float64) {
			*part.of = v
			chosen = draw.OfHSL(h, s, l)
			sample.ShowColour(chosen)
		}
	}
	AlignSlides(hue, strength, light)
	room := canvas.NewRectangle(color.Transparent)
	room.SetMinSize(fyne.NewSize(26*theme.TextSize(), 6*theme.TextSize()))
	var dg *dialog.CustomDialog
	dg = Ask(w, title, container.NewVBox(container.NewStack(room, sample), hue, strength, light),
		Answer{say.Cancel.String(), ByEscape, nil}, Answer{say.UseIt.String(), ByReturn, func() { dg.Hide(); use(chosen) }})
}
