package ripplepage

import (
	"fmt"
	"image/color"
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/tub"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// option is a word of a design file as a maker reads it.
type option struct{ word, name string }

var layouts = [...]option{
	{"dollops", "dollops"}, {"layers", "layers"}, {"halves", "two halves"}, {"spiral", "piped spiral"},
}

var motions = [...]option{
	{"plunge", "plunging"}, {"fold", "folding"}, {"eight", "figure eights"}, {"drag", "dragging"}, {"mixed", "a mixture"},
}

// wordList is a list for one word of the design.
type wordList struct {
	list    *kit.Select
	options []option
	of      func(*design.Design) *string
}

// newWordList returns a list; change is told the step and how it changes a design.
func newWordList(step string, options []option, change func(string, func(*design.Design)), of func(*design.Design) *string) wordList {
	var names []string
	for _, o := range options {
		names = append(names, o.name)
	}
	c := wordList{kit.NewSelect(names, nil), options, of}
	c.list.PlaceHolder = ""
	for _, o := range options { // never seen, but it asks for the room of the longest
		if len(o.name) > len(c.list.PlaceHolder) || c.list.PlaceHolder == "" {
			c.list.PlaceHolder = o.name
		}
	}
	c.list.OnChanged = mishap.With(func(name string) {
		i := slices.IndexFunc(options, func(o option) bool { return o.name == name })
		change(step, func(d *design.Design) { *of(d) = options[i].word })
	})
	return c
}

// show puts d's word on screen.
func (c wordList) show(d *design.Design) {
	word := *c.of(d)
	name := word // an unknown word is shown as it stands
	if i := slices.IndexFunc(c.options, func(o option) bool { return o.word == word }); i >= 0 {
		name = c.options[i].name
	}
	page.ShowSelected(c.list, name)
}

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

// own is what the list says of a colour that is no food's.
const own = "your own"

func newColourRow(p *Page, name string, foam bool) *colourRow {
	r := &colourRow{sample: kit.NewSwatch(foam), foam: foam, name: widget.NewLabel(name)}
	commit := func(hex string) {
		p.change(strings.ToLower(name)+" colour", func(d *design.Design) {
			if foam {
				d.Blend.FoamColour = hex
			} else {
				d.Blend.DenseColour = hex
			}
		})
	}
	var names []string
	for _, f := range tub.Foods() {
		names = append(names, f.Name)
	}
	r.foods = kit.NewSelect(names, func(name string) {
		for _, f := range tub.Foods() {
			if f.Name == name {
				commit(r.colourOf(f))
			}
		}
	})
	r.foods.PlaceHolder = " "
	r.hex = newHexEntry(commit)
	pick := kit.NewButtonWithIcon("", theme.ColorPaletteIcon(), func() {
		kit.AskColour(p.host.Window(), "Colour of the "+strings.ToLower(name), colourOf(r.hex.shown), foam, func(c color.NRGBA) { commit(hexOf(c)) })
	})
	r.object = container.NewBorder(nil, nil, r.sample, container.NewHBox(r.hex, pick), r.foods)
	return r
}

func (r *colourRow) colourOf(f tub.Food) string {
	if r.foam {
		return f.Foam
	}
	return f.Dense
}

// show puts a colour on screen.
func (r *colourRow) show(hex string) {
	hex = strings.ToLower(hex)
	name := own
	for _, f := range tub.Foods() {
		if r.colourOf(f) == hex {
			name = f.Name
		}
	}
	page.ShowSelected(r.foods, name)
	r.hex.show(hex)
	r.sample.ShowColour(colourOf(hex))
}

// colourOf reads "#rrggbb"; what is none is black.
func colourOf(hex string) color.NRGBA {
	c := color.NRGBA{A: 255}
	if _, err := fmt.Sscanf(hex, "#%02x%02x%02x", &c.R, &c.G, &c.B); err != nil {
		return color.NRGBA{A: 255}
	}
	return c
}

func hexOf(c color.Color) string {
	v := color.NRGBAModel.Convert(c).(color.NRGBA)
	return fmt.Sprintf("#%02x%02x%02x", v.R, v.G, v.B)
}

// hexEntry is a colour to be typed. It tells of a colour when it is left or at
// Enter, and goes back to the last good one from what is none.
type hexEntry struct {
	widget.Entry
	shown  string
	commit func(hex string)
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
	typed := strings.ToLower(strings.TrimSpace(e.Text))
	if !strings.HasPrefix(typed, "#") {
		typed = "#" + typed
	}
	good := len(typed) == 7 && hexOf(colourOf(typed)) == typed
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

// alikeLightness is the difference of lightness under which two phases run
// together at arm's length: our own choice.
const alikeLightness = 15

// tooAlike says that the phases are hard to tell apart by colour, "" if they are not.
func tooAlike(s ripple.Style) string {
	apart := math.Abs(ripple.Lightness(s.Foam) - ripple.Lightness(s.Dense))
	if apart >= alikeLightness {
		return ""
	}
	return fmt.Sprintf("The two are almost equally light (L* %s apart; from %d on they can be told apart at arm's length). Only the foam's bubbles tell them apart.", page.Number(apart, 0), alikeLightness)
}

// beside lays objects in a row where they fit, else under each other.
type beside struct {
	even bool // give each the same width, not just what it asks for
	rows bool
}

const besideGap = 10

func (b *beside) row(objects []fyne.CanvasObject, width float32) bool {
	need, widest := float32(besideGap*(len(objects)-1)), float32(0)
	for _, o := range objects {
		need += o.MinSize().Width
		widest = max(widest, o.MinSize().Width)
	}
	if b.even {
		need = float32(len(objects))*(widest+besideGap) - besideGap
	}
	return need <= width
}

// Layout implements fyne.Layout.
func (b *beside) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	if size.Width <= 0 {
		return // no place yet: what fits is not known
	}
	n := float32(len(objects))
	if b.rows = !b.row(objects, size.Width); b.rows {
		y := float32(0)
		for _, o := range objects {
			h := o.MinSize().Height
			o.Move(fyne.NewPos(0, y))
			o.Resize(fyne.NewSize(size.Width, h))
			y += h + theme.Padding()
		}
		return
	}
	need := besideGap * (n - 1)
	for _, o := range objects {
		need += o.MinSize().Width
	}
	x := float32(0)
	for _, o := range objects {
		w := o.MinSize().Width + (size.Width-need)/n
		if b.even {
			w = (size.Width - besideGap*(n-1)) / n
		}
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(w, size.Height))
		x += w + besideGap
	}
}

// MinSize implements fyne.Layout: of the way they were laid last.
func (b *beside) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for i, o := range objects {
		m := o.MinSize()
		s.Width = max(s.Width, m.Width)
		if !b.rows {
			s.Height = max(s.Height, m.Height)
			continue
		}
		s.Height += m.Height
		if i > 0 {
			s.Height += theme.Padding()
		}
	}
	return s
}
