// Package figurespage is the page of all figures.
package figurespage

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page is the page of every figure, by phase and for the tub.
type Page struct {
	host      page.Host
	table     *kit.OpenFigures
	nutrition *kit.OpenFigures
	lead      func(model.Warning) // to what causes it
	back      func()
	leave     *kit.Button
	listed    []figure.Listed // what stands in the tables
	food      []figure.Listed
	heads     []string
	gramMore  *kit.OpenFigures
	small     []*small // cost and eggs
	cost      *widget.Label
	warnings  *fyne.Container
	shown     string
	object    fyne.CanvasObject
}

// New returns the page; lead goes to what causes a warning, back to where the page was
// opened from.
func New(h page.Host, lead func(model.Warning), back func()) *Page {
	p := &Page{
		host:     h,
		lead:     lead,
		back:     back,
		cost:     page.Prose(""),
		warnings: container.NewVBox(),
	}
	p.table = kit.NewOpenFigures(func(i int) { AskHow(h, p.listed, figure.Phases.Heads(), p.listed[i].Of) }, figure.Phases.Heads()...)
	p.nutrition = kit.NewOpenFigures(func(i int) { AskHow(h, p.food, p.heads, p.food[i].Of) }, figure.Nutrition.Heads()...)
	p.gramMore = kit.NewOpenFigures(func(i int) {
		heads, listed := figure.GramMoreOf(page.Reads, h.Result(), i)
		AskHow(h, listed, heads, listed[0].Of)
	})
	p.small = []*small{newSmall(h, "", &figure.Cost), newSmall(h, say.TheEggs.String(), &figure.Eggs)}
	left := page.ScrolledBothWays(page.Heading(say.PhasesAndTub.String()), p.table,
		page.Prose(say.AboutFigures(page.Reads)))
	right := page.ScrolledBothWays(page.Heading(say.WhatToKnow.String()), p.warnings,
		page.Heading(say.WholeFood.String()), p.nutrition,
		page.Heading(say.WhatItCosts.String()), p.cost, p.small[0].object, p.small[1].object,
		page.Heading(say.GramMoreTitle.String()), p.gramMore,
		page.Prose(say.AboutGramMore.String()))
	split := container.NewHSplit(left, right)
	split.Offset = 0.53 // the phases have three columns
	p.leave = kit.NewButtonWithIcon(say.BackToBench.String(), theme.NavigateBackIcon(), back)
	p.object = container.NewBorder(container.NewHBox(p.leave, page.Heading(say.AllFigures.String())), nil, nil, nil, split)
	return p
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// TypedKey leads back by Escape, where no widget has the key.
func (p *Page) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape {
		p.back()
	}
}

// Leave implements page.Page.
func (p *Page) Leave() {}

// Show implements page.Page.
func (p *Page) Show() {
	r := p.host.Result()
	p.listed = figure.List(page.Reads, r)
	p.table.ShowFigures(figure.Lined(p.listed))
	p.heads, p.food = figure.FoodList(page.Reads, r)
	p.nutrition.ShowTable(p.heads, figure.Lined(p.food))
	heads, cells := figure.GramMore(page.Reads, r)
	p.gramMore.ShowTable(heads, lineRows(r, cells))
	for _, t := range p.small {
		t.show(r)
	}
	p.cost.SetText(say.Cost(page.Reads, &r.Cost))
	p.showWarnings(r)
}

func (p *Page) showWarnings(r *model.Result) {
	ws, taught := r.Warnings, strings.Join(say.Taught(page.Reads, r), " ")
	all := taught + "\n"
	for _, w := range ws {
		all += w.Where + say.Warning(page.Reads, w) + "\n"
	}
	if all == p.shown && len(p.warnings.Objects) > 0 {
		return
	}
	p.shown = all
	p.warnings.Objects = []fyne.CanvasObject{Warnings(ws, p.lead)}
	if taught != "" {
		p.warnings.Objects = append([]fyne.CanvasObject{page.Prose(taught)}, p.warnings.Objects...)
	}
	p.warnings.Refresh()
}

// Warnings are those of a result, the gravest first, each with a button that leads to
// what causes it.
func Warnings(ws []model.Warning, lead func(model.Warning)) fyne.CanvasObject {
	box := container.NewVBox()
	for s := model.Serious; ; s-- {
		for _, w := range ws {
			if w.Severity == s {
				l := page.Prose(fmt.Sprintf("%s: %s", say.Severity(s), say.Warning(page.Reads, w)))
				l.TextStyle.Bold = s > model.Note
				b := kit.NewButton(say.ShowCause.String(), func() { lead(w) })
				box.Add(container.NewBorder(nil, nil, nil, container.NewVBox(b), l))
			}
		}
		if s == model.Note {
			break
		}
	}
	if len(box.Objects) == 0 {
		box.Add(widget.NewLabel(say.NoWarnings.String()))
	}
	return box
}

// small is a table of one column, of which each figure opens.
type small struct {
	of     *figure.Table
	table  *kit.OpenFigures
	listed []figure.Listed
	object *fyne.Container
}

// newSmall returns a table under a title, "" for none.
func newSmall(h page.Host, title string, of *figure.Table) *small {
	t := &small{of: of}
	t.table = kit.NewOpenFigures(func(i int) { AskHow(h, t.listed, of.Columns, t.listed[i].Of) }, "")
	t.object = container.NewVBox(t.table)
	if title != "" {
		t.object.Objects = []fyne.CanvasObject{page.Heading(title), t.table}
	}
	return t
}

func (t *small) show(r *model.Result) {
	t.listed = figure.ListOf(page.Reads, r, t.of)
	t.table.ShowFigures(figure.Lined(t.listed))
	t.object.Hidden = len(t.listed) == 0
}

// AskHow tells how a figure is computed, and of a choice among those listed another.
func AskHow(h page.Host, listed []figure.Listed, heads []string, of *figure.Row) {
	var all []*figure.Row
	var names []string
	for _, l := range listed {
		if len(all) == 0 || all[len(all)-1] != l.Of {
			all, names = append(all, l.Of), append(names, say.Capital(strings.TrimSpace(l.Name)))
		}
	}
	box := container.NewVBox()
	tell := func(i int) {
		box.Objects = nil
		for _, t := range all[i].Computed(page.Reads, listed, heads) {
			box.Add(container.New(layout.NewCustomPaddedVBoxLayout(-theme.Padding()), page.Small(t.Title), page.Prose(t.Text)))
		}
		box.Refresh()
	}
	pick, show := page.SelectOf(names, tell)
	at := max(0, slices.Index(all, of))
	show(at)
	tell(at)
	dg := kit.Ask(h.Window(), say.HowComputed.String(), container.NewBorder(pick, nil, nil, nil, container.NewVScroll(box)), kit.Answer{Name: say.Close.String(), Role: kit.ByEscape})
	size := h.Window().Canvas().Size()
	dg.Resize(fyne.NewSize(min(size.Width-4*theme.Padding(), 46*theme.TextSize()), min(size.Height-4*theme.Padding(), 40*theme.TextSize())))
	h.Window().Canvas().Focus(pick)
}

func lineRows(r *model.Result, cells [][]string) []say.TableRow {
	out := make([]say.TableRow, len(cells))
	for i := range cells {
		out[i] = say.TableRow{Name: page.Brief(say.Kitchen(r.Lines[i].Ingredient), 22), Cells: cells[i]}
	}
	return out
}
