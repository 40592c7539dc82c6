// Package surepage is the page of what the program was checked against.
package surepage

import (
	"image/color"
	"io/fs"
	"sync/atomic"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/proofs"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page is the page "How sure are we?": the published tables the program
// carries, run through the models, and what each of its figures rests on.
type Page struct {
	host    page.Host
	tables  fs.FS
	entries []proofs.Listed // nil until the checks have run
	list    *widget.List
	status  *widget.Label
	busy    *widget.ProgressBarInfinite
	running atomic.Bool
	object  fyne.CanvasObject

	shown *validate.Row // nil for an entry without a plot
	scene *fyne.Container
	right *container.Scroll

	overview *fyne.Container
	kinds    *kit.Figures
	about    *fyne.Container // of one check
	title    *widget.Label
	verdict  *widget.Label
	source   *widget.Label
	proves   *widget.Label
	note     *widget.Label
	view     *kit.Select
	plot     *kit.Plot
	plotBox  fyne.CanvasObject
	reading  *widget.Label
	numbers  *kit.Figures
}

// New returns the page over the check tables.
func New(h page.Host, tables fs.FS) *Page {
	p := &Page{host: h, tables: tables, status: page.Prose(say.RunningOver.String()), busy: widget.NewProgressBarInfinite()}
	p.busy.Stop()
	p.busy.Hide()
	p.list = widget.NewList(func() int { return len(p.entries) }, newCheckLine,
		func(i widget.ListItemID, o fyne.CanvasObject) { showEntry(p.entries[i], o.(*fyne.Container)) })
	p.list.OnSelected = mishap.With(func(i widget.ListItemID) { p.choose(i) })
	p.makeOverview()
	p.makeAbout()
	p.scene = container.NewVBox(p.overview)
	p.right = page.Scrolled(p.scene)
	split := container.NewHSplit(p.list, p.right)
	split.Offset = 0.4
	p.object = container.NewBorder(container.NewVBox(p.status, p.busy), nil, nil, nil, split)
	fyne.CurrentApp().Settings().AddListener(func(fyne.Settings) { h.Post(p.draw) })
	return p
}

func (p *Page) makeOverview() {
	p.kinds = kit.NewFigures(say.CheckHeads()...)
	p.overview = container.NewVBox(page.Heading(say.HowSure.String()),
		page.Prose(say.AboutChecks.String()),
		p.kinds)
	for i, x := range phase.Explanation {
		if i == 0 || phase.Explanation[i-1].Standing != x.Standing {
			p.overview.Add(page.Heading(say.Capital(say.Of(string(x.Standing)))))
		}
		p.overview.Add(page.Prose(page.Reads.Text(say.Of(x.Text))))
	}
}

func (p *Page) makeAbout() {
	p.title, p.verdict, p.source, p.proves, p.note, p.reading = page.Heading(""), page.Bold(""), page.Prose(""), page.Prose(""), page.Prose(""), page.Prose("")
	p.title.Wrapping = fyne.TextWrapWord
	p.plot = kit.NewPlot()
	p.plot.OnRead = p.reading.SetText
	tall := canvas.NewRectangle(color.Transparent)
	tall.SetMinSize(fyne.NewSize(0, 330))
	p.plotBox = container.New(page.Indent{}, container.NewStack(tall, p.plot))
	p.numbers = kit.NewFigures(say.CheckPairs()...)
	p.view = kit.NewSelect([]string{say.ModelAndMeasurement.String(), say.Errors.String(), say.Numbers.String()}, func(string) { p.draw() })
	p.view.Selected, p.view.PlaceHolder = say.ModelAndMeasurement.String(), say.ModelAndMeasurement.String() // the latter gives it its width
	p.about = container.NewVBox(p.title, p.verdict, p.proves,
		container.NewBorder(nil, nil, widget.NewLabel(say.Show.String()), nil, container.NewHBox(p.view)),
		p.plotBox, p.reading, p.numbers, p.note, p.source)
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {}

// Show runs the checks once, away from the window's thread.
func (p *Page) Show() {
	if p.entries != nil || !p.running.CompareAndSwap(false, true) {
		return
	}
	p.busy.Show()
	p.busy.Start()
	library := p.host.Model().Library()
	mishap.Go(func() {
		rows, err := mishap.Answer(func() ([]validate.Row, error) { return validate.Run(p.tables, library) })
		p.host.Post(func() { p.done(rows, err) })
	})
}

func (p *Page) done(rows []validate.Row, err error) {
	p.running.Store(false)
	p.busy.Stop()
	p.busy.Hide()
	if err != nil {
		p.status.SetText(say.TablesUnread(err))
		return
	}
	all := proofs.Summarize(page.Reads, rows)
	p.entries = all.Entries
	p.kinds.ShowFigures(all.Kinds)
	p.status.TextStyle.Bold = all.Failed
	p.status.SetText(all.Text)
	p.list.Refresh()
	p.list.Select(0)
}

// newCheckLine is a line of the list: a mark, a name, and figures under it.
func newCheckLine() fyne.CanvasObject {
	name, figures := widget.NewLabel(say.T("name")), widget.NewLabel(say.T("figures"))
	name.Truncation, figures.Truncation = fyne.TextTruncateEllipsis, fyne.TextTruncateEllipsis
	figures.SizeName = theme.SizeNameCaptionText
	// The labels bring their own padding; one line's worth between them is enough.
	lines := container.New(layout.NewCustomPaddedVBoxLayout(-8), name, figures)
	// Every mark takes the same room, so that names stand under each other.
	room := canvas.NewRectangle(color.Transparent)
	room.SetMinSize(widget.NewLabel("✓✓").MinSize())
	return container.NewBorder(nil, nil, container.NewStack(room, widget.NewLabel("✓")), nil, lines)
}

func showEntry(e proofs.Listed, o *fyne.Container) {
	lines, mark := o.Objects[0].(*fyne.Container), o.Objects[1].(*fyne.Container).Objects[1].(*widget.Label)
	name, figures := lines.Objects[0].(*widget.Label), lines.Objects[1].(*widget.Label)
	name.TextStyle.Bold = e.Row == nil
	mark.SetText(e.Mark())
	name.SetText(e.Title())
	figures.SetText(e.Line(page.Reads))
}

// choose shows entry i.
func (p *Page) choose(i int) {
	e := &p.entries[i]
	p.shown = e.Row
	content := p.overview
	if e.Row != nil {
		content = p.about
		p.showFacts(e.Row)
		p.draw()
	}
	p.scene.Objects = []fyne.CanvasObject{content}
	p.scene.Refresh()
	p.right.ScrollToTop()
}

func (p *Page) showFacts(r *validate.Row) {
	p.verdict.SetText(proofs.Verdict(page.Reads, r))
	p.title.SetText(say.Said(r.Title()))
	p.proves.SetText(say.Of(r.Kind.Words()))
	p.note.SetText(say.Said(r.Note))
	p.note.Hidden = r.Note == nil
	p.source.SetText(say.SourceLine(r.Source))
}

// draw shows the chosen view of the check in hand.
func (p *Page) draw() {
	r := p.shown
	if r == nil {
		return
	}
	p.reading.SetText("")
	p.plot.XDecimals, p.plot.YDecimals = proofs.Places(r)
	p.numbers.Hide()
	p.plotBox.Hide()
	switch {
	case len(r.Pairs) == 0:
		p.reading.SetText(say.NoPoints.String())
	case p.view.Selected == say.Numbers.String():
		p.numbers.ShowFigures(proofs.Pairs(page.Reads, r))
		p.numbers.Show()
	case p.view.Selected == say.Errors.String():
		p.plot.ShowPlot(look().Errors(r))
		p.plotBox.Show()
	default:
		p.plot.ShowPlot(look().Agreement(r))
		p.plotBox.Show()
	}
	p.about.Refresh()
}

// look is that of the theme.
func look() proofs.Dress {
	return proofs.Dress{Model: page.Ink(kit.ColorNameFoam), Published: page.Ink(kit.ColorNameDense), Beside: page.Ink(kit.ColorNameBoth),
		Apart: page.Ink(theme.ColorNamePlaceHolder), Reads: page.Reads}
}
