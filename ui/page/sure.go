package page

import (
	"fmt"
	"io/fs"
	"math"
	"strings"
	"sync/atomic"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/chart"
	"ripplewright/internal/validate"
	"ripplewright/ui/kit"
)

// Sure is the page "How sure are we?": every published table the program
// carries, run through the models, with a plot of model against measurement.
type Sure struct {
	host    Host
	tables  fs.FS
	rows    []validate.Row
	list    *widget.List
	detail  *widget.Label
	plot    *kit.Plot
	reading *widget.Label
	status  *widget.Label
	busy    *widget.ProgressBarInfinite
	running atomic.Bool
	object  fyne.CanvasObject
}

// NewSure returns the page over the check tables.
func NewSure(h Host, tables fs.FS) *Sure {
	p := &Sure{host: h, tables: tables, plot: kit.NewPlot(), detail: prose("Choose a table."),
		reading: widget.NewLabel(""), status: prose("Running the models against the tables…"), busy: widget.NewProgressBarInfinite()}
	p.busy.Stop()
	p.busy.Hide()
	p.plot.OnRead = p.reading.SetText
	p.plot.XDecimals, p.plot.YDecimals = 2, 4
	p.list = widget.NewList(
		func() int { return len(p.rows) },
		func() fyne.CanvasObject {
			return container.NewBorder(nil, nil, widget.NewLabel("✓"), widget.NewLabel("largest 0.0000 of 0.0000 kPa"), widget.NewLabel("table"))
		},
		func(i widget.ListItemID, o fyne.CanvasObject) { p.item(&p.rows[i], o.(*fyne.Container)) },
	)
	p.list.OnSelected = func(i widget.ListItemID) { p.choose(i) }
	intro := prose("The figures come from the models named here, checked against published tables each time this page is opened: the same code that evaluates your design. Tables that constants were fitted to say so; independent ones are the stronger proof. " +
		"Measured fact: freezing points, densities, viscosities, boiling. A scale of convenience: the hardness number, which is anchored on published ice-cream measurements but scatters by a factor of about 1.6 between batches of one recipe; read it as a word.")
	right := container.NewBorder(container.NewVBox(p.detail), p.reading, nil, nil, p.plot)
	split := container.NewHSplit(p.list, right)
	split.Offset = 0.5
	p.object = container.NewBorder(container.NewVBox(intro, p.status, p.busy), nil, nil, nil, split)
	return p
}

// Title implements Page.
func (p *Sure) Title() string { return "How sure are we?" }

// Object implements Page.
func (p *Sure) Object() fyne.CanvasObject { return p.object }

// Leave implements Page.
func (p *Sure) Leave() {}

// Show runs the checks once, away from the window's thread.
func (p *Sure) Show() {
	if p.rows != nil || !p.running.CompareAndSwap(false, true) {
		return
	}
	p.busy.Show()
	p.busy.Start()
	library := p.host.Model().Library()
	go func() {
		rows, err := validate.Run(p.tables, library)
		p.host.Post(func() { p.done(rows, err) })
	}()
}

func (p *Sure) done(rows []validate.Row, err error) {
	p.running.Store(false)
	p.busy.Stop()
	p.busy.Hide()
	if err != nil {
		p.status.SetText("The tables could not be read: " + err.Error())
		return
	}
	p.rows = rows
	pass, points := 0, 0
	for _, r := range rows {
		if r.Pass {
			pass++
		}
		points += r.Points
	}
	p.status.SetText(fmt.Sprintf("%d of %d tables within their stated bars, %d points.", pass, len(rows), points))
	p.list.Refresh()
	if len(rows) > 0 {
		p.list.Select(0)
	}
}

func (p *Sure) item(r *validate.Row, o *fyne.Container) {
	mark := "✓"
	if !r.Pass {
		mark = "✗"
	}
	o.Objects[0].(*widget.Label).SetText(tableName(r.Table))
	o.Objects[1].(*widget.Label).SetText(mark)
	o.Objects[2].(*widget.Label).SetText(fmt.Sprintf("largest %s of %s %s", digits(r.MaxAbsError), digits(r.Bar), r.Unit))
}

func tableName(s string) string { return strings.ReplaceAll(s, "_", " ") }

func digits(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return strings.ReplaceAll(fmt.Sprintf("%.3g", v), "-", "−")
}

func (p *Sure) choose(i int) {
	r := &p.rows[i]
	text := fmt.Sprintf("%s\n%s\n%d points, root mean square %s %s, largest %s, our bar %s. %s.",
		tableName(r.Table), r.Source, r.Points, digits(r.RMSError), r.Unit, digits(r.MaxAbsError), digits(r.Bar), r.Kind)
	if r.Note != "" {
		text += "\n" + r.Note
	}
	p.detail.SetText(text)
	p.plot.ShowPlot(agreement(r))
}

// agreement plots model and measurement of a row over its own x.
func agreement(r *validate.Row) chart.Plot {
	measured := chart.Series{Name: "published", Marker: chart.Disc, Every: 1, Line: chart.Line{Width: 0}}
	model := chart.Series{Name: "model", Line: chart.Line{Width: 2}}
	apart := chart.Series{Name: "shown, not counted", Marker: chart.Diamond, Every: 1, Line: chart.Line{Width: 0}}
	for k, q := range r.Pairs {
		x := q.X
		if math.IsNaN(x) || q.Label != "" {
			x = float64(k + 1)
		}
		if q.Counted {
			measured.X, measured.Y = append(measured.X, x), append(measured.Y, q.Measured)
		} else {
			apart.X, apart.Y = append(apart.X, x), append(apart.Y, q.Measured)
		}
		model.X, model.Y = append(model.X, x), append(model.Y, q.Model)
	}
	series := []chart.Series{model, measured}
	if len(apart.X) > 0 {
		series = append(series, apart)
	}
	return chart.Plot{X: chart.Axis{Title: r.XLabel}, Y: chart.Axis{Title: r.YLabel}, Series: series}
}
