package ui

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/benchview"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// scaleIcon is a kitchen scale: a plate on a body with a dial.
var scaleIcon = theme.NewThemedResource(fyne.NewStaticResource("scale.svg", []byte(
	`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24"><path fill="#000000" fill-rule="evenodd" d="M2 3h20v2h-9v2h5.500l2.500 14H3L5.500 7H11V5H2zM7.200 9L5.400 19h13.200L16.800 9z"/><path fill="#000000" d="M12 10.200a3.800 3.800 0 0 0-3.800 3.800h2a1.800 1.800 0 0 1 3.600 0h2a3.800 3.800 0 0 0-3.800-3.800z"/></svg>`)))

// weighing asks for weights in grams and shows at once what they come to. find
// returns the answer, NaN if there is none, and says so in words.
func (w *Window) weighing(ask say.Weighing, find func(g []float64) (float64, string), use func(v float64)) {
	fields := make([]*kit.NumberField, len(ask.Fields))
	form := widget.NewForm()
	found := math.NaN()
	answer := widget.NewLabel("")
	answer.Wrapping = fyne.TextWrapWord
	answer.TextStyle.Bold = true
	take := kit.NewButton(say.UseIt.String(), nil)
	take.Importance = widget.HighImportance
	work := func(float64) {
		g := make([]float64, len(fields))
		for i, f := range fields {
			g[i] = f.Value()
		}
		var text string
		found, text = find(g)
		kit.SetText(answer, text)
		if math.IsNaN(found) {
			take.Disable()
		} else {
			take.Enable()
		}
	}
	for i, name := range ask.Fields {
		fields[i] = page.NumberField("g", 0, 20000, 1)
		fields[i].OnChanged = work
		form.Append(name, fields[i])
	}
	fields[len(fields)-1].ShowValue(0) // the empty vessel: none, or tared
	work(0)
	about := widget.NewLabel(ask.Intro)
	about.Wrapping = fyne.TextWrapWord
	dg := dialog.NewCustomWithoutButtons(ask.Title, container.NewVBox(about, form, answer), w.win)
	take.OnTapped = func() {
		dg.Hide()
		use(found)
	}
	dg.SetButtons([]fyne.CanvasObject{kit.NewCancel(say.Cancel.String(), dg.Hide), take})
	dg.Resize(fyne.NewSize(max(460, 32*theme.TextSize()), 0))
	dg.Show()
	w.win.Canvas().Focus(fields[0].Focusable())
}

// cupDialog finds the overrun from the same cup, weighed before and after.
func (c *column) cupDialog() {
	s := settingAt("dense.overrun_percent", say.T("overrun from cup weights"))
	if c.part != design.DensePart {
		s = settingAt("foam.overrun_percent", say.T("overrun from cup weights"))
	}
	c.w.weighing(say.CupWeighing(),
		func(g []float64) (float64, string) { return benchview.CupOverrun(page.Reads, g[0], g[1], g[2], s.Max) },
		func(v float64) { c.w.commit(s, v) })
}

// panDialog finds the loss on the stove from the pan, weighed before and after.
func (c *column) panDialog() {
	s := settingAt("dense.stove_loss_percent", say.T("stove loss from pan weights"))
	c.w.weighing(say.PanWeighing(),
		func(g []float64) (float64, string) { return benchview.StoveLoss(page.Reads, g[0], g[1], g[2], s.Max) },
		func(v float64) { c.w.commit(s, v) })
}

// syrupDialog takes the syrup's weight, which tells its water better than a
// thermometer.
func (c *column) syrupDialog() {
	s := settingAt("foam.syrup.weighed_g", say.T("syrup weight"))
	c.w.weighing(say.SyrupWeighing(page.Reads, s.of(c.w.Design())),
		func(g []float64) (float64, string) { return benchview.SyrupWeight(page.Reads, g[0], g[1], s.Max) },
		func(v float64) { c.w.commit(s, v) })
}
