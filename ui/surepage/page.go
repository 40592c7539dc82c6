// Package surepage is the page of what the program was checked against.
package surepage

import (
	"fmt"
	"image/color"
	"io/fs"
	"math"
	"strings"
	"sync/atomic"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/desk/mishap"
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
	rows    []validate.Row
	entries []checkEntry
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

// checkEntry is a line of the list: the overview, the head of a kind, or a check.
type checkEntry struct {
	head string
	row  *validate.Row
}

// kindOrder is the order in which checks are shown: the strongest proof first.
var kindOrder = [...]struct {
	kind  validate.Kind
	name  string
	under string
}{
	{validate.Independent, "Independent", "nothing was fitted to them: the strongest proof"},
	{validate.Regression, "What the constants came from", "the model was fitted to them: they show the fit, not a prediction"},
	{validate.Elsewhere, "Measured elsewhere", "not fitted, on products whose mix was not read: level and order"},
	{validate.Remembered, "From memory", "published figures that we did not look up again: no proof"},
	{validate.Twice, "Computed twice", "by a second program of ours: checks the arithmetic only"},
	{validate.Identity, "Exact by definition", "the same equations computed separately: checks the program only"},
}

// The views of a check.
const (
	viewPlot    = "Model and measurement"
	viewErrors  = "Errors"
	viewNumbers = "Numbers"
)

// New returns the page over the check tables.
func New(h page.Host, tables fs.FS) *Page {
	p := &Page{host: h, tables: tables, status: page.Prose("Running the models against the tables…"), busy: widget.NewProgressBarInfinite()}
	p.busy.Stop()
	p.busy.Hide()
	p.list = widget.NewList(func() int { return len(p.entries) }, newCheckLine,
		func(i widget.ListItemID, o fyne.CanvasObject) { p.entries[i].show(o.(*fyne.Container)) })
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
	p.kinds = kit.NewFigures("checks", "within their limit", "points")
	p.overview = container.NewVBox(page.Heading("How sure are we?"),
		page.Prose("When you open this page, the code that computes your design runs against published tables. The list shows what each table proves; choose one to see the model beside the measurement."),
		container.New(page.Indent{}, p.kinds))
	for i, x := range phase.Explanation {
		if i == 0 || phase.Explanation[i-1].Standing != x.Standing {
			s := string(x.Standing)
			p.overview.Add(page.Heading(strings.ToUpper(s[:1]) + s[1:]))
		}
		p.overview.Add(page.Prose(x.Text))
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
	p.numbers = kit.NewFigures("published", "model", "error")
	p.view = kit.NewSelect([]string{viewPlot, viewErrors, viewNumbers}, func(string) { p.draw() })
	p.view.Selected, p.view.PlaceHolder = viewPlot, viewPlot // the latter gives it its width
	p.about = container.NewVBox(p.title, p.verdict, p.proves,
		container.NewBorder(nil, nil, widget.NewLabel("Show"), nil, container.NewHBox(p.view)),
		p.plotBox, p.reading, container.New(page.Indent{}, p.numbers), p.note, p.source)
}

// Title implements page.Page.
func (p *Page) Title() string { return "How sure are we?" }

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {}

// Show runs the checks once, away from the window's thread.
func (p *Page) Show() {
	if p.rows != nil || !p.running.CompareAndSwap(false, true) {
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
		p.status.SetText("The tables could not be read: " + err.Error())
		return
	}
	p.rows = rows
	p.entries = []checkEntry{{head: "What these figures rest on"}}
	var summary []say.TableRow
	all, pass, open := 0, 0, 0
	for _, k := range kindOrder {
		p.entries = append(p.entries, checkEntry{head: k.name})
		n, met, points := 0, 0, 0
		for i := range rows {
			if r := &rows[i]; r.Kind == k.kind {
				p.entries = append(p.entries, checkEntry{row: r})
				if noBar(r) {
					open++
					continue
				}
				n++
				points += r.Points
				if r.Pass {
					met++
				}
			}
		}
		all, pass = all+n, pass+met
		summary = append(summary, say.TableRow{Name: k.name, Cells: []string{fmt.Sprint(n), fmt.Sprint(met), fmt.Sprint(points)}})
	}
	p.kinds.ShowFigures(summary)
	text := fmt.Sprintf("%d of %d checks keep within their limits.", pass, all)
	if pass < all {
		text = fmt.Sprintf("%d of %d checks are NOT within their limits.", all-pass, all)
	}
	if open == 1 {
		text += " One more has no limit: it only compares."
	} else if open > 1 {
		text += fmt.Sprintf(" %d more have no limit: they only compare.", open)
	}
	p.status.TextStyle.Bold = pass < all
	p.status.SetText(text)
	p.list.Refresh()
	p.list.Select(0)
}

// newCheckLine is a line of the list: a mark, a name, and figures under it.
func newCheckLine() fyne.CanvasObject {
	name, figures := widget.NewLabel("name"), widget.NewLabel("figures")
	name.Truncation, figures.Truncation = fyne.TextTruncateEllipsis, fyne.TextTruncateEllipsis
	figures.SizeName = theme.SizeNameCaptionText
	// The labels bring their own padding; one line's worth between them is enough.
	lines := container.New(layout.NewCustomPaddedVBoxLayout(-8), name, figures)
	// Every mark takes the same room, so that names stand under each other.
	room := canvas.NewRectangle(color.Transparent)
	room.SetMinSize(widget.NewLabel("✓✓").MinSize())
	return container.NewBorder(nil, nil, container.NewStack(room, widget.NewLabel("✓")), nil, lines)
}

func (e checkEntry) show(o *fyne.Container) {
	lines, mark := o.Objects[0].(*fyne.Container), o.Objects[1].(*fyne.Container).Objects[1].(*widget.Label)
	name, figures := lines.Objects[0].(*widget.Label), lines.Objects[1].(*widget.Label)
	name.TextStyle.Bold = e.row == nil
	if e.row == nil {
		mark.SetText("")
		name.SetText(e.head)
		figures.SetText(e.under())
		return
	}
	r := e.row
	switch {
	case noBar(r):
		mark.SetText("–")
	case r.Pass:
		mark.SetText("✓")
	default:
		mark.SetText("✗")
	}
	name.SetText(r.Title())
	figures.SetText(fmt.Sprintf("%s%s, largest error %s", notMet(r), count(r.Points, "point"), ofBar(r)))
}

// under says in the list what the entries below a head prove.
func (e checkEntry) under() string {
	for _, k := range kindOrder {
		if k.name == e.head {
			return k.under
		}
	}
	return "measured, computed, a convenience, not settled"
}

// noBar reports whether a check only compares.
func noBar(r *validate.Row) bool { return math.IsInf(r.Bar, 1) }

func notMet(r *validate.Row) string {
	if r.Pass {
		return ""
	}
	return "NOT MET: "
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func ofBar(r *validate.Row) string {
	if noBar(r) {
		return fmt.Sprintf("%s %s, no limit", digits(r.MaxAbsError), r.Unit)
	}
	return fmt.Sprintf("%s of %s %s", digits(r.MaxAbsError), digits(r.Bar), r.Unit)
}

// choose shows entry i.
func (p *Page) choose(i int) {
	e := &p.entries[i]
	p.shown = e.row
	content := p.overview
	if e.row != nil {
		content = p.about
		p.showFacts(e.row)
		p.draw()
	}
	p.scene.Objects = []fyne.CanvasObject{content}
	p.scene.Refresh()
	p.right.ScrollToTop()
}

func (p *Page) showFacts(r *validate.Row) {
	points := count(r.Points, "point")
	if apart := len(r.Pairs) - r.Points; apart > 0 && r.Points > 0 {
		points += fmt.Sprintf(" counted, %d more shown", apart)
	}
	figures := fmt.Sprintf("largest error %s, root mean square %s, %s.", ofBar(r), digits(r.RMSError), points)
	switch {
	case noBar(r):
		p.verdict.SetText("Shown for comparison: " + figures)
	case r.Pass:
		p.verdict.SetText("✓ Within its limit: " + figures)
	default:
		p.verdict.SetText("✗ NOT MET: " + figures)
	}
	p.title.SetText(r.Title())
	p.proves.SetText(r.Kind.Words())
	p.note.SetText(r.Note)
	p.note.Hidden = r.Note == ""
	p.source.SetText("Source: " + r.Source + ".")
}

// draw shows the chosen view of the check in hand.
func (p *Page) draw() {
	r := p.shown
	if r == nil {
		return
	}
	p.reading.SetText("")
	p.plot.XDecimals, p.plot.YDecimals = places(r)
	p.numbers.Hide()
	p.plotBox.Hide()
	switch {
	case len(r.Pairs) == 0:
		p.reading.SetText("This check counts figures; it has no points to draw.")
	case p.view.Selected == viewNumbers:
		p.numbers.ShowFigures(pairRows(r))
		p.numbers.Show()
	case p.view.Selected == viewErrors:
		p.plot.ShowPlot(errorPlot(r))
		p.plotBox.Show()
	default:
		p.plot.ShowPlot(agreement(r))
		p.plotBox.Show()
	}
	p.about.Refresh()
}

// digits writes v to three digits that matter.
func digits(v float64) string {
	a := math.Abs(v)
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return "–"
	case a == 0:
		return "0"
	case a < 1e-4:
		exp := math.Floor(math.Log10(a))
		return trimZeros(page.Number(v/math.Pow(10, exp), 2)) + " × 10" + superscript(fmt.Sprintf("%.0f", exp))
	}
	return trimZeros(page.Number(v, max(0, 2-int(math.Floor(math.Log10(a))))))
}

func trimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

var raised = strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

func superscript(s string) string { return raised.Replace(s) }
