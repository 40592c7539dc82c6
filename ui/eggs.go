package ui

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/answer/whole"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// wholeEggs is the question how a design is to use whole eggs: each way beside the
// design as it is, one of them taken as one step.
type wholeEggs struct {
	w    *Window
	of   design.Design // that was asked about
	work *newest.Answers[int, whole.Ways]
	ways whole.Ways

	eggs   *kit.NumberField
	choice *widget.RadioGroup
	about  *widget.Label
	table  *kit.Figures
	use    *kit.Button
	dg     *dialog.CustomDialog
}

// askWholeEggs shows the question.
func (w *Window) askWholeEggs() {
	q := &wholeEggs{w: w, of: w.Design(), about: page.Prose(""), table: kit.NewFigures(figure.ComparedHeads()...)}
	m := w.Model()
	q.work = newest.NewAnswers(w.Post, func(_ context.Context, n int) (whole.Ways, error) { return whole.Of(m, q.of, n) }, q.answer)
	q.eggs = page.NumberField("", 1, design.MaxCount, 0)
	q.eggs.OnChanged = func(v float64) { q.work.Ask(int(v)) }
	q.choice = widget.NewRadioGroup(nil, nil)
	q.choice.Horizontal = true
	q.choice.OnChanged = mishap.With(func(string) { q.show() })
	q.use = kit.NewButton(say.T("Use it"), q.take)
	q.use.Importance = widget.HighImportance
	q.use.Disable()
	ledger := page.Prose(say.EggLedger(page.Reads, process.EggsOf(q.of, w.Result())))
	top := container.NewVBox(ledger, container.NewHBox(widget.NewLabel(say.T("Eggs")), q.eggs, q.choice), q.about)
	q.dg = dialog.NewCustomWithoutButtons(say.T("Use whole eggs"), container.NewBorder(top, nil, nil, nil, container.NewVScroll(q.table)), w.win)
	q.dg.SetButtons([]fyne.CanvasObject{kit.NewCancel(say.T("Cancel"), q.dg.Hide), q.use})
	q.dg.SetOnClosed(q.work.Stop)
	q.dg.Resize(page.Room(w.win.Canvas(), 46, 46))
	q.dg.Show()
	w.win.Canvas().Focus(q.eggs.Focusable())
	q.work.Ask(0)
}

// answer takes what was found.
func (q *wholeEggs) answer(n int, ways whole.Ways, err error) {
	if err != nil {
		q.about.SetText(say.Sentence(say.Flaw(err)))
		q.use.Disable()
		return
	}
	q.ways = ways
	if n == 0 && len(ways.List) > 0 {
		q.eggs.ShowValue(float64(ways.List[0].Eggs))
	}
	q.choice.Options = nil
	for i := range ways.List {
		q.choice.Options = append(q.choice.Options, say.WholeName(ways.List[i].Kind))
	}
	if len(q.choice.Options) > 0 && q.chosen() == nil {
		q.choice.Selected = q.choice.Options[0]
	}
	q.choice.Refresh()
	q.show()
}

// chosen is the way that the choice names, nil for none.
func (q *wholeEggs) chosen() *whole.Way {
	for i := range q.ways.List {
		if x := &q.ways.List[i]; say.WholeName(x.Kind) == q.choice.Selected {
			return x
		}
	}
	return nil
}

// show puts the chosen way beside the design as it is.
func (q *wholeEggs) show() {
	x := q.chosen()
	if x == nil {
		var why []string
		for _, u := range q.ways.Unable {
			if s := say.WholeUnable(page.Reads, q.ways.Before.Eggs, u); len(why) == 0 || why[len(why)-1] != s {
				why = append(why, s)
			}
		}
		q.about.SetText(strings.Join(why, " "))
		q.table.ShowFigures(nil)
		q.use.Disable()
		return
	}
	q.about.SetText(say.Whole(page.Reads, q.of, x))
	q.table.ShowFigures(figure.Compared(page.Reads, &q.ways.Before, &x.After))
	q.use.Enable()
}

// take makes the chosen way the design, as one step.
func (q *wholeEggs) take() {
	x := q.chosen()
	if x == nil {
		return
	}
	q.dg.Hide()
	q.w.Commit(x.Design, say.WholeStep.String())
	q.w.Say(say.Whole(page.Reads, q.of, x))
}
