package ui

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/design"
	"ripplewright/internal/model"
	"ripplewright/internal/phase"
	"ripplewright/ui/kit"
)

// column is one phase: its lines, its process, and its verdict at the foot.
type column struct {
	w        *Window
	lists    []*lineList
	controls []control
	word     *widget.Label
	figures  *widget.Label
	part     design.Part
	object   fyne.CanvasObject
}

// control is a slider with the number it shows.
type control struct {
	slide *kit.Slide
	field func(*design.Design) *float64
}

func newColumn(w *Window, title string, part design.Part) *column {
	c := &column{w: w, part: part, figures: widget.NewLabel("")}
	c.figures.Wrapping = fyne.TextWrapWord
	c.word = widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	c.word.SizeName = theme.SizeNameSubHeadingText
	c.word.Truncation = fyne.TextTruncateEllipsis
	head := widget.NewLabelWithStyle(title, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	head.SizeName = theme.SizeNameSubHeadingText
	lines := container.NewVBox()
	process := container.NewVBox()
	addList := func(p design.Part, name string) {
		l := newLineList(w, p, name)
		c.lists = append(c.lists, l)
		lines.Add(l.object)
	}
	add := func(name, unit string, lo, hi, step float64, decimals int, what, hint string, of func(*design.Design) *float64) {
		s := w.slide(name, unit, lo, hi, step, decimals, what, of)
		s.NameWidth = 88
		c.controls = append(c.controls, control{s, of})
		process.Add(w.hints.Wrap(s, hint))
	}
	if part == design.DensePart {
		addList(design.DensePart, "")
		add("Stove loss", "%", 0, 30, 0.5, 1, "stove loss", "Water driven off while cooking, of the custard's mass.",
			func(d *design.Design) *float64 { return &d.Dense.StoveLossPercent })
		add("Overrun", "%", 0, 100, 1, 0, "custard overrun", "Air beaten in: volume gained, of the mix's volume.",
			func(d *design.Design) *float64 { return &d.Dense.OverrunPercent })
	} else {
		addList(design.FoamPart, "Beaten")
		addList(design.SyrupPart, "Boiled to syrup")
		add("Syrup to", "°C", 104, 140, 0.5, 1, "syrup temperature", "What the thermometer shows when the syrup comes off the heat.",
			func(d *design.Design) *float64 { return &d.Foam.Syrup.CookTemperatureC })
		add("Syrup weighs", "g", 0, 1000, 1, 0, "syrup weight", "Weigh the pan less the empty pan: exact, and beats the thermometer. 0: not weighed.",
			func(d *design.Design) *float64 { return &d.Foam.Syrup.WeighedG })
		add("Overrun", "%", 0, 700, 5, 0, "foam overrun", "Air beaten in: volume gained, of the unbeaten volume.",
			func(d *design.Design) *float64 { return &d.Foam.OverrunPercent })
	}
	cup := widget.NewButton("Overrun from a cup weighed twice…", c.cupDialog)
	cup.Importance = widget.LowImportance
	process.Add(container.NewHBox(cup))
	body := container.NewBorder(
		head,
		container.NewVBox(process, widget.NewSeparator(), c.word, c.figures),
		nil, nil,
		container.NewVScroll(lines))
	back := canvas.NewRectangle(theme.Color(theme.ColorNameInputBackground))
	back.CornerRadius = 8
	c.object = container.NewStack(&themed{rect: back, name: theme.ColorNameInputBackground}, container.NewPadded(body))
	return c
}

func (c *column) show(d design.Design, r *model.Result) {
	for _, l := range c.lists {
		l.show(d, r)
	}
	for _, x := range c.controls {
		x.slide.ShowValue(*x.field(&d))
	}
	p := &r.Dense
	if c.part != design.DensePart {
		p = &r.Foam
	}
	word, figures := "No lines yet", ""
	if p.WrittenG > 0 {
		word = fmt.Sprintf("%s, about %s kPa", upper(p.Word.Name), number(p.State.YieldKPa, 1))
		figures = fmt.Sprintf("freezes at %s °C; %s %% of the water frozen, %s %% ice by volume\nsweetness %s %%; %s g, %s mL, %s g/mL",
			number(p.FreezingPoint.Value, 1), number(100*p.WaterFrozen.Value, 0), number(100*p.State.IceVolume, 0),
			number(p.SweetnessPercent, 1), number(p.Portion.MassG, 0), number(p.Portion.VolumeML, 0), number(p.Body.Density(), 2))
		if math.IsNaN(p.FreezingPoint.Value) {
			figures = "nothing in it can freeze"
		}
		if c.part != design.DensePart && r.Syrup.Present {
			figures = fmt.Sprintf("syrup %s %% solids, %s g; ", number(r.Syrup.SolidsPercent, 1), number(r.Syrup.MassG, 0)) + figures
		}
	}
	setText(c.word, word)
	setText(c.figures, figures)
}

// cupDialog finds the overrun from the same cup, weighed before and after.
func (c *column) cupDialog() {
	before, after, empty := kit.NewNumber("g", 0, 5000, 1), kit.NewNumber("g", 0, 5000, 1), kit.NewNumber("g", 0, 5000, 1)
	empty.ShowValue(0)
	answer := widget.NewLabel("Fill the same cup to the brim with the mix, later with the finished phase.")
	answer.Wrapping = fyne.TextWrapWord
	found := math.NaN()
	work := func(float64) {
		found = 100 * phase.OverrunFromWeights(before.Value()-empty.Value(), after.Value()-empty.Value())
		switch {
		case math.IsNaN(found):
			answer.SetText("Two weights more than the empty cup's are needed.")
		case found < 0:
			answer.SetText("The finished phase weighs more than the mix: weigh again.")
			found = math.NaN()
		default:
			answer.SetText(fmt.Sprintf("Overrun %s %%.", number(found, 0)))
		}
	}
	before.OnChanged, after.OnChanged, empty.OnChanged = work, work, work
	form := container.NewVBox(widget.NewForm(
		widget.NewFormItem("Cup with mix", before),
		widget.NewFormItem("Cup with finished phase", after),
		widget.NewFormItem("Empty cup", empty)), answer)
	dg := dialog.NewCustomConfirm("Overrun from a cup weighed twice", "Use it", "Cancel", form, func(ok bool) {
		if !ok || math.IsNaN(found) {
			return
		}
		d := c.w.Design()
		if v := math.Round(found); c.part == design.DensePart {
			d.Dense.OverrunPercent = v
		} else {
			d.Foam.OverrunPercent = v
		}
		c.w.Commit(d, "overrun from cup weights")
	}, c.w.win)
	dg.Resize(fyne.NewSize(460, 320))
	dg.Show()
}
