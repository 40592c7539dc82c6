package page

import (
	"image/color"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
)

// Reads is how the maker reads quantities, in every part of the window: the one
// place that a setting of units and signs would change. Widgets are handed it
// with what they show.
var Reads = say.Usual

// Number writes v with so many decimals; "" where unknown, which the tables show
// as a dash of their own.
func Number(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return Reads.Number(v, decimals)
}

// Heading is a section's title.
func Heading(text string) *widget.Label {
	l := widget.NewLabelWithStyle(kit.Shown(text), fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	l.SizeName = theme.SizeNameSubHeadingText
	return l
}

// MostProse is how many letters one text on a page has: the toolkit's breaking of
// lines takes time with their square.
const MostProse = 1500

// Prose is text that wraps, cut to MostProse.
func Prose(text string) *widget.Label {
	l := widget.NewLabel(Brief(text, MostProse))
	l.Wrapping = fyne.TextWrapWord
	return l
}

// Bold is prose that stands out.
func Bold(text string) *widget.Label {
	l := Prose(text)
	l.TextStyle.Bold = true
	return l
}

// Folding is a layout of two objects: side by side where both have room, one
// under the other where they have not, as with large text.
type Folding struct{}

// MinSize implements fyne.Layout.
func (Folding) MinSize(o []fyne.CanvasObject) fyne.Size {
	a, b := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(fyne.Max(a.Width, b.Width), a.Height+theme.Padding()+b.Height)
}

// Layout implements fyne.Layout.
func (Folding) Layout(o []fyne.CanvasObject, size fyne.Size) {
	gap := theme.Padding()
	a, b := o[0].MinSize().Width, o[1].MinSize().Width
	first, second := size, size
	if at := fyne.NewPos(0, 0); a+gap+b <= size.Width {
		first.Width = a + (size.Width-gap-a-b)/2 // what is free is shared
		second.Width = size.Width - gap - first.Width
		o[1].Move(at.AddXY(first.Width+gap, 0))
	} else {
		first.Height = (size.Height - gap) / 2
		second.Height = first.Height
		o[1].Move(at.AddXY(0, first.Height+gap))
	}
	o[0].Move(fyne.NewPos(0, 0))
	o[0].Resize(first)
	o[1].Resize(second)
}

// Scrolled puts objects under each other in a column that scrolls, by the wheel over its
// fields and tables too.
func Scrolled(objects ...fyne.CanvasObject) *container.Scroll {
	return kit.NewRoll(container.NewPadded(container.NewVBox(objects...)))
}

// ScrolledBothWays is scrolled that scrolls sideways too where large text makes
// a table wider than the column: the page then asks for no more than a small
// screen has.
func ScrolledBothWays(objects ...fyne.CanvasObject) *container.Scroll {
	s := Scrolled(objects...)
	s.Direction = container.ScrollBoth
	return s
}

// Brief is a name cut to so many letters.
func Brief(name string, letters int) string {
	name = kit.Shown(name)
	if len(name) <= letters {
		return name
	}
	r := []rune(name)
	if len(r) <= letters {
		return name
	}
	return strings.TrimRight(string(r[:letters-1]), " ,(") + "…"
}

// ScrollTo scrolls s so that o, in it, is seen with a few lines below it.
func ScrollTo(s *container.Scroll, o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	top := d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(s.Content).Y
	foot := top + o.Size().Height + 5*theme.TextSize()
	y := min(top, max(s.Offset.Y, foot-s.Size().Height))
	s.ScrollToOffset(fyne.NewPos(0, y))
}

// Indent puts widgets where labels begin their text.
type Indent struct{}

// Layout implements fyne.Layout.
func (Indent) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(theme.InnerPadding(), 0))
		o.Resize(fyne.NewSize(size.Width-theme.InnerPadding(), size.Height))
	}
}

// MinSize implements fyne.Layout.
func (Indent) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for _, o := range objects {
		if o.Visible() {
			s = s.Max(o.MinSize().AddWidthHeight(theme.InnerPadding(), 0))
		}
	}
	return s
}

// Ink is a colour of the theme as plots take it.
func Ink(name fyne.ThemeColorName) draw.Colour {
	return color.NRGBAModel.Convert(theme.Color(name)).(draw.Colour)
}

// ShowSelected puts a choice on screen and calls nobody back.
func ShowSelected(s *kit.Select, name string) {
	if s.Selected != name {
		s.Selected = name
		s.Refresh()
	}
}

// Choice is a group of which one is always chosen, the first to begin with.
func Choice(changed func(), names ...string) *widget.RadioGroup {
	g := widget.NewRadioGroup(names, nil)
	g.Required, g.Selected = true, names[0]
	g.OnChanged = mishap.With(func(string) { changed() })
	return g
}

// Room is the size of a dialog of so many letters' width and height, as large as its
// texts are, and within what c has room for.
func Room(c fyne.Canvas, wide, high float32) fyne.Size {
	edge := 4 * theme.Padding()
	return fyne.NewSize(wide*theme.TextSize(), high*theme.TextSize()).Min(c.Size().SubtractWidthHeight(edge, edge))
}

// Progress is a bar of how much of something is done, in the maker's form of a percentage.
func Progress() *widget.ProgressBar {
	p := widget.NewProgressBar()
	p.TextFormatter = func() string { return Reads.Percent(100*p.Value, 0) }
	return p
}

// Small is a heading inside a view.
func Small(text string) *widget.Label {
	return widget.NewLabelWithStyle(kit.Shown(text), fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
}

// NumberField is a field for a number of one of the files' units, read and typed
// as the maker does.
func NumberField(unit string, min, max float64, decimals int) *kit.NumberField {
	return kit.NewNumberField(unit, min, max, decimals).Reading(Reads.Gauge(unit))
}

// Slide is a row for a number of one of the files' units, likewise.
func Slide(name, unit string, min, max, step float64, decimals int) *kit.Slide {
	return kit.NewSlide(name, unit, min, max, step, decimals).Reading(Reads.Gauge(unit))
}
