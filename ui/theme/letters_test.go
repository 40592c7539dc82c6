package theme

import (
	"image"
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"

	base "fyne.io/fyne/v2/theme"
	"ripplewright/ui/kit"
)

// What changes in a drag is set by us, what stands beside it by the toolkit: an eye must not
// see which.
var settable = []string{
	"549 g, 662 mL, 0.64 times the recipe · 0.83 g/mL",
	"freezes at −2.4 °C (−2.8 to −2.1 °C) · sweetness 10.4 %",
	"both eat well from −9.7 to −4.8 °C",
	"Leave it out 3 to 7 min: first the edge scoops. Völlig weich – 5 µm ≥ ½",
	"AVAWA To. LTY. 1,1; 7.7",
}

func seen(o fyne.CanvasObject, size fyne.Size, scale float32) image.Image {
	c := software.NewTransparentCanvas()
	c.SetScale(scale)
	c.SetPadded(false)
	c.SetContent(o)
	c.Resize(size)
	return c.Capture()
}

// inked is the smallest box around what is set.
func inked(img image.Image) (box image.Rectangle) {
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			if _, _, _, a := img.At(x, y).RGBA(); a > 0x4000 {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return box
}

func TestLinesAreSetAsTheToolkitSetsText(t *testing.T) {
	test.NewTempApp(t)
	for _, name := range []fyne.ThemeSizeName{base.SizeNameText, base.SizeNameCaptionText, base.SizeNameSubHeadingText} {
		for _, text := range []float32{1, 1.3} {
			test.ApplyTheme(t, New(Options{TextScale: text}))
			for _, s := range settable {
				for _, scale := range []float32{1, 1.5, 2} {
					for _, bold := range []bool{false, true} {
						style := fyne.TextStyle{Bold: bold}
						theirs := canvas.NewText(s, base.Color(base.ColorNameForeground))
						theirs.TextSize = base.Size(name)
						theirs.TextStyle = style
						ours := kit.NewLines(1, fyne.TextAlignLeading, name, style)
						ours.ShowText(s)
						size := theirs.MinSize().AddWidthHeight(40, 0)
						want, got := seen(theirs, size, scale), seen(ours, size, scale)
						inset := int(math.Round(float64(base.InnerPadding() * scale)))
						was, is := inked(want), inked(got).Sub(image.Pt(inset, 0))
						for i, d := range []int{was.Min.X - is.Min.X, was.Max.X - is.Max.X, was.Min.Y - is.Min.Y, was.Max.Y - is.Max.Y} {
							assert.LessOrEqual(t, max(d, -d), 1+i%2, "%q, %v, texts of %v, scale %v, bold %v: %v, not %v", s, name, text, scale, bold, is, was)
						}
					}
				}
			}
		}
	}
}

func BenchmarkLine(b *testing.B) {
	test.NewTempApp(b)
	fyne.CurrentApp().Settings().SetTheme(New(Options{}))
	texts := [2]string{settable[0], "548 g, 661 mL, 0.64 times the recipe · 0.83 g/mL"}
	b.Run("letters", func(b *testing.B) {
		l := kit.NewLines(1, fyne.TextAlignLeading, base.SizeNameCaptionText, fyne.TextStyle{})
		c := software.NewTransparentCanvas()
		c.SetContent(l)
		c.Resize(fyne.NewSize(400, 20))
		for i := range b.N {
			l.ShowText(texts[i%2])
			c.Capture()
		}
	})
	b.Run("toolkit", func(b *testing.B) {
		t := canvas.NewText("", color.Black)
		t.TextSize = base.CaptionTextSize()
		c := software.NewTransparentCanvas()
		c.SetContent(t)
		c.Resize(fyne.NewSize(400, 20))
		for i := range b.N {
			t.Text = texts[i%2]
			t.Refresh()
			c.Capture()
		}
	})
}
