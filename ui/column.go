package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// column is one phase: its name and verdict, its lines, its process, and at the
// foot its figures.
type column struct {
	w       *Window
	lists   []*lineList
	knobs   []*knob
	scroll  *container.Scroll
	word    *kit.Lines
	figures *kit.Lines
	part    design.Part
	object  fyne.CanvasObject
}

// leastLines is how many lines a column shows without scrolling, at any size of
// text.
const leastLines = 3

func newColumn(w *Window, title string, part design.Part) *column {
	c := &column{w: w, part: part,
		word:    kit.NewLines(1, fyne.TextAlignTrailing, theme.SizeNameText, fyne.TextStyle{Bold: true}),
		figures: kit.NewLines(3, fyne.TextAlignLeading, theme.SizeNameCaptionText, fyne.TextStyle{})}
	name := widget.NewLabelWithStyle(title, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	name.SizeName = theme.SizeNameSubHeadingText

	lines := container.New(layout.NewCustomPaddedVBoxLayout(0))
	process := container.New(layout.NewCustomPaddedVBoxLayout(2))
	list := func(p design.Part, name string) {
		l := newLineList(w, p, name)
		c.lists = append(c.lists, l)
		lines.Add(l.object)
	}
	// A knob with a button beside it that finds its value with a scale.
	knob := func(name, path, what string, step float64, decimals int, hint, byScale string, weigh func()) {
		k := w.knob(name, path, what, step, decimals)
		c.knobs = append(c.knobs, k)
		scale := kit.NewButtonWithIcon("", scaleIcon, weigh)
		scale.Importance = widget.LowImportance
		process.Add(container.NewBorder(nil, nil, nil, w.hints.Wrap(scale, byScale), w.hints.Wrap(k.Slide, hint)))
	}
	cup := say.CupHint.String()
	if part == design.DensePart {
		list(design.DensePart, say.T("Cooked"))
		knob(say.T("Stove loss"), "dense.stove_loss_percent", say.T("stove loss"), 0.5, 1, say.LossHint.String(),
			say.PanHint.String(), c.panDialog)
		knob(say.T("Overrun"), "dense.overrun_percent", say.T("custard overrun"), 1, 1, say.AirOfMix.String(), cup, c.cupDialog)
	} else {
		list(design.FoamPart, say.T("Beaten"))
		list(design.SyrupPart, say.T("Boiled to syrup"))
		knob(say.T("Syrup to"), "foam.syrup.cook_temperature_c", say.T("syrup temperature"), 0.5, 1, say.SyrupHint.String(),
			say.SyrupByScale.String(), c.syrupDialog)
		knob(say.T("Overrun"), "foam.overrun_percent", say.T("foam overrun"), 5, 1, say.AirOfFoam.String(), cup, c.cupDialog)
	}
	var slides []*kit.Slide
	for _, k := range c.knobs {
		slides = append(slides, k.Slide)
	}
	kit.AlignSlides(slides...)

	c.scroll = container.NewVScroll(lines)
	least := func() float32 {
		row := c.knobs[0].MinSize().Height + 2
		head := lineHeight() + 2*theme.InnerPadding() - tightBy
		return leastLines*row + float32(len(c.lists))*head
	}
	how := kit.NewButtonWithIcon("", theme.InfoIcon(), w.askHow)
	how.Importance = widget.LowImportance
	body := container.NewBorder(
		tightly(container.NewBorder(nil, nil, name, nil, container.NewVBox(layout.NewSpacer(), c.word, layout.NewSpacer()))),
		container.New(keep(layout.NewCustomPaddedVBoxLayout(2)), inset(process),
			container.NewBorder(nil, nil, nil, container.NewVBox(w.hints.Wrap(how, say.HowHint.String())), c.figures)),
		nil, nil,
		container.New(keep(atLeast{least}), c.scroll))
	c.object = container.NewStack(kit.NewPanel(), container.NewPadded(body))
	return c
}

func (c *column) show(d design.Design, r *model.Result) {
	// All amounts of a column stand under each other.
	beside := ""
	for _, l := range c.lists {
		for _, x := range d.Lines(l.part) {
			if x.Count > 0 {
				beside = say.Of(string(design.Whites)) // the widest unit
			}
		}
	}
	for _, l := range c.lists {
		l.show(d, beside)
		if l.part == design.SyrupPart {
			l.entitle(say.SyrupTitle(page.Reads, &r.Syrup))
		}
	}
	for _, k := range c.knobs {
		k.show(d)
	}
	p := &r.Dense
	if c.part != design.DensePart {
		p = &r.Foam
	}
	if p.WrittenG == 0 {
		c.word.ShowText(say.NoLines.String())
		c.figures.ShowText(say.AddToSee.String())
		return
	}
	if r.Absent(p) {
		c.word.ShowText(say.InNoTub.String())
		c.figures.ShowText(say.InNoTubWhy.String())
		return
	}
	if word := say.Of(p.Word.Name); p.Felt() {
		c.word.ShowTexts(say.WordAndHardness(page.Reads, word, p.YieldKPa))
	} else {
		c.word.ShowText(say.HowHard.String())
	}
	c.figures.ShowTexts(say.PhaseLines(page.Reads, r, p))
}

// inset stands as far from the left as the toolkit's labels do.
func inset(o fyne.CanvasObject) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(0, 0, theme.InnerPadding(), 0), o)
}
