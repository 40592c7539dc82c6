package ui

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// scaleIcon is a kitchen scale: a plate on a body with a dial.
var scaleIcon = theme.NewThemedResource(fyne.NewStaticResource("scale.svg", []byte(
	`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24"><path fill="#000000" fill-rule="evenodd" d="M2 3h20v2h-9v2h5.500l2.500 14H3L5.500 7H11V5H2zM7.200 9L5.400 19h13.200L16.800 9z"/><path fill="#000000" d="M12 10.200a3.800 3.800 0 0 0-3.800 3.800h2a1.800 1.800 0 0 1 3.600 0h2a3.800 3.800 0 0 0-3.800-3.800z"/></svg>`)))

// weighing asks for weights in grams and shows at once what they come to. find
// returns the answer, NaN if there is none, and says so in words.
func (w *Window) weighing(title, intro string, names []string, find func(g []float64) (float64, string), use func(v float64)) {
	fields := make([]*kit.NumberField, len(names))
	form := widget.NewForm()
	found := math.NaN()
	answer := widget.NewLabel("")
	answer.Wrapping = fyne.TextWrapWord
	answer.TextStyle.Bold = true
	take := kit.NewButton("Use it", nil)
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
	for i, name := range names {
		fields[i] = kit.NewNumberField("g", 0, 20000, 1)
		fields[i].OnChanged = work
		form.Append(name, fields[i])
	}
	fields[len(fields)-1].ShowValue(0) // the empty vessel: none, or tared
	work(0)
	about := widget.NewLabel(intro)
	about.Wrapping = fyne.TextWrapWord
	dg := dialog.NewCustomWithoutButtons(title, container.NewVBox(about, form, answer), w.win)
	take.OnTapped = func() {
		dg.Hide()
		use(found)
	}
	dg.SetButtons([]fyne.CanvasObject{kit.NewCancel("Cancel", dg.Hide), take})
	dg.Resize(fyne.NewSize(max(460, 32*theme.TextSize()), 0))
	dg.Show()
	w.win.Canvas().Focus(fields[0].Focusable())
}

// cupDialog finds the overrun from the same cup, weighed before and after.
func (c *column) cupDialog() {
	s := settingAt("dense.overrun_percent", "overrun from cup weights")
	if c.part != design.DensePart {
		s = settingAt("foam.overrun_percent", "overrun from cup weights")
	}
	c.w.weighing("Overrun from a cup weighed twice",
		"Fill the same cup to the brim, level it, and weigh it: once with the mix before beating, once with the finished phase.",
		[]string{"Cup with the mix", "Cup with the finished phase", "The empty cup, 0 if tared"},
		func(g []float64) (float64, string) { return cupOverrun(g[0], g[1], g[2], s.Max) },
		func(v float64) { c.w.commit(s, v) })
}

// cupOverrun is the overrun, %, that the weights of a cup tell, g, and the words
// to say it; NaN where they tell none.
func cupOverrun(before, after, empty, most float64) (float64, string) {
	v := math.Round(100 * phase.OverrunFraction(before-empty, after-empty))
	switch {
	case math.IsNaN(before) || math.IsNaN(after) || math.IsNaN(empty):
		return math.NaN(), "Two weights tell the overrun."
	case math.IsNaN(v):
		return v, "Both weights must be more than the empty cup's."
	case v < 0:
		return math.NaN(), "The cup weighs more with the finished phase than with the mix: weigh again."
	case v > most:
		return math.NaN(), "An overrun of " + page.Reads.Percent(v, 0) + " is more than the " + page.Reads.Percent(most, 0) + " that such a phase holds: weigh again."
	}
	return v, "Overrun " + page.Reads.Percent(v, 0) + "."
}

// panDialog finds the loss on the stove from the pan, weighed before and after.
func (c *column) panDialog() {
	s := settingAt("dense.stove_loss_percent", "stove loss from pan weights")
	c.w.weighing("Stove loss from a pan weighed twice",
		"Weigh the pan with everything in it, once before the heat and once when the custard comes off it.",
		[]string{"Pan before the heat", "Pan after the heat", "The empty pan, 0 if tared"},
		func(g []float64) (float64, string) { return stoveLoss(g[0], g[1], g[2], s.Max) },
		func(v float64) { c.w.commit(s, v) })
}

// stoveLoss is the loss, % of the mass put in, that the weights of a pan tell, g.
func stoveLoss(before, after, empty, most float64) (float64, string) {
	v := math.Round(1000*(before-after)/(before-empty)) / 10
	switch {
	case math.IsNaN(before) || math.IsNaN(after) || math.IsNaN(empty):
		return math.NaN(), "Two weights tell the loss."
	case before <= empty || after <= empty:
		return math.NaN(), "Both weights must be more than the empty pan's."
	case v < 0:
		return math.NaN(), "The pan has gained weight: weigh again."
	case v > most:
		return math.NaN(), "A loss of " + page.Reads.Percent(v, 1) + " is more than the " + page.Reads.Percent(most, 0) + " that a custard can lose: weigh again."
	}
	return v, "Stove loss " + page.Reads.Percent(v, 1) + "."
}

// syrupDialog takes the syrup's weight, which tells its water better than a
// thermometer.
func (c *column) syrupDialog() {
	s := settingAt("foam.syrup.weighed_g", "syrup weight")
	intro := "Weigh the pan with the boiled syrup, and the empty pan. The syrup's ingredients less this weight is the water boiled off: the thermometer is not needed."
	if g := s.of(c.w.Design()); g > 0 {
		intro += " Now " + page.Reads.MassTo(g, 1) + " counts; a weight of 0 lets the thermometer count again."
	}
	c.w.weighing("Syrup by its weight", intro,
		[]string{"Pan with the syrup", "The empty pan, 0 if tared"},
		func(g []float64) (float64, string) { return syrupWeight(g[0], g[1], s.Max) },
		func(v float64) { c.w.commit(s, v) })
}

// syrupWeight is the weight of a syrup, g, in its pan.
func syrupWeight(pan, empty, most float64) (float64, string) {
	switch v := pan - empty; {
	case math.IsNaN(v):
		return v, "The pan's weight tells the syrup's."
	case v < 0 || v > most:
		return math.NaN(), "The empty pan weighs more than the full one: weigh again."
	case v == 0:
		return v, "Not weighed: the thermometer counts."
	default:
		return v, page.Reads.MassTo(v, 1) + " of syrup."
	}
}
