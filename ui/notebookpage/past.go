package notebookpage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/desk/notebook"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

func inks() notebook.Inks {
	return notebook.Inks{Reads: page.Reads, Forecast: page.Ink(theme.ColorNamePlaceHolder), Measured: page.Ink(theme.ColorNamePrimary), Slip: page.Ink(theme.ColorNameWarning)}
}

// teaching shows what was learnt: a table, and of one factor a picture.
type teaching struct {
	p      *Page
	table  *kit.Figures
	which  *kit.Select
	pick   func(i int)
	factor learn.Factor
	on     *kit.Check
	plot   *kit.Plot
	slips  *widget.Label
	next   *widget.Label
	asks   *widget.Label
	object fyne.CanvasObject
	of     learn.Posterior
}

func newTeaching(p *Page) *teaching {
	t := &teaching{p: p, table: kit.NewFigures(say.LearntHeads()[2:5]...), plot: kit.NewPlot(), slips: page.Bold(""), next: page.Prose(""), asks: page.Prose("")}
	var names []string
	for f := range learn.NumFactors {
		names = append(names, say.Learnt(f))
	}
	t.which, t.pick = page.SelectOf(names, func(i int) { t.factor = learn.Factor(i); t.draw() })
	t.on = kit.NewCheck(say.NotebookLearn.String(), t.turn)
	t.object = container.NewVBox(page.Heading(say.NotebookTeaches.String()), container.NewHScroll(t.table), page.Prose(say.LearntHow.String()), t.slips, t.next,
		page.Small(say.AskedMost.String()), t.asks, container.NewBorder(nil, nil, nil, t.on, t.which), container.New(plotHigh{}, t.plot))
	t.pick(int(learn.Hardness))
	t.factor = learn.Hardness
	return t
}

func (t *teaching) show(p *learn.Posterior) {
	t.of = *p
	var rows []say.TableRow
	for f := range learn.NumFactors {
		row := say.LearntRow(page.Reads, p, f)
		rows = append(rows, say.TableRow{Name: row[0], Cells: row[2:5]}) // the picture has the rest
	}
	t.table.ShowFigures(rows)
	kit.SetText(t.slips, say.SlipsOf(page.Reads, t.p.book.Notes.Batches, p))
	t.slips.Hidden = t.slips.Text == ""
	kit.SetText(t.next, say.NextBatchText(page.Reads, p, &t.p.expected))
	kit.SetText(t.asks, say.AskText(page.Reads, p.Ask(&t.p.expected)))
	t.draw()
}

func (t *teaching) draw() {
	t.on.Checked = !t.of.Off[t.factor]
	t.on.Refresh()
	if t.of.Factors[t.factor].SD > 0 {
		t.plot.ShowPlot(inks().Learnt(&t.of, t.factor))
	}
}

// turn is told whether the factor is to be learnt.
func (t *teaching) turn(on bool) {
	if on != t.of.Off[t.factor] {
		return // as it is
	}
	if err := t.p.book.Switch(t.factor, on, t.p.clock()); err != nil {
		t.p.host.Say(say.Sentence(say.Flaw(err)))
	}
	t.p.Show()
}

// history shows forecast and measurement, batch by batch.
type history struct {
	p      *Page
	which  *kit.Select
	path   string
	plot   *kit.Plot
	table  *kit.Figures
	export *kit.Button
	none   *widget.Label
	object fyne.CanvasObject
	of     learn.Posterior
}

func newHistory(p *Page) *history {
	h := &history{p: p, plot: kit.NewPlot(), table: kit.NewFigures(say.BatchPairHeads()[1:]...), none: page.Prose(say.NoBatches.String())}
	paths := learn.Paired()
	var names []string
	for _, path := range paths {
		names = append(names, say.BatchMeasured(path))
	}
	var pick func(int)
	h.which, pick = page.SelectOf(names, func(i int) { h.path = paths[i]; h.draw() })
	h.path = "scooped.after_min"
	for i, path := range paths {
		if path == h.path {
			pick(i)
		}
	}
	h.export = kit.NewButton(say.NotebookExport.String(), p.export)
	h.object = container.NewVBox(page.Heading(say.NotebookHistory.String()), h.none, container.NewBorder(nil, nil, nil, h.export, h.which),
		container.New(plotHigh{}, h.plot), container.NewHScroll(h.table))
	return h
}

func (h *history) show(p *learn.Posterior) {
	h.of = *p
	notes := &h.p.book.Notes
	h.none.Hidden = len(notes.Batches) > 0
	var rows []say.TableRow
	for i := len(notes.Batches) - 1; i >= 0; i-- { // the newest first
		b := &notes.Batches[i]
		for _, q := range p.Pairs(i, b) {
			rows = append(rows, say.TableRow{Name: say.BatchPairName(b, &q), Cells: []string{say.BatchValue(page.Reads, q.Path, q.Expected), say.BatchGot(page.Reads, &q)}})
		}
	}
	h.table.ShowFigures(rows)
	h.draw()
}

func (h *history) draw() {
	v := inks().History(&h.of, &h.p.book.Notes, h.path)
	if len(v.Series) == 0 {
		v = chart.Nothing()
	}
	h.plot.ShowPlot(v)
}

// plotHigh gives a small plot its height.
type plotHigh struct{}

func (plotHigh) Layout(o []fyne.CanvasObject, size fyne.Size) { o[0].Resize(size) }

func (plotHigh) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(20*theme.TextSize(), 13*theme.TextSize())
}
