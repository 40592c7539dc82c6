// Package figurespage is the page of all figures.
package figurespage

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
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
	table     *kit.Figures
	nutrition *kit.Figures
	lines     *kit.Figures
	cost      *widget.Label
	warnings  *fyne.Container
	shown     string
	object    fyne.CanvasObject
}

// New returns the page.
func New(h page.Host) *Page {
	p := &Page{
		host:      h,
		table:     kit.NewFigures(figure.Phases.Columns...),
		nutrition: kit.NewFigures(figure.Nutrition.Columns...),
		lines:     kit.NewFigures(),
		cost:      page.Prose(""),
		warnings:  container.NewVBox(),
	}
	left := page.ScrolledBothWays(page.Heading(say.PhasesAndTub), p.table,
		page.Prose(say.AboutFigures(page.Reads)))
	right := page.ScrolledBothWays(page.Heading(say.WhatToKnow), p.warnings,
		page.Heading(say.WholeFood), p.nutrition,
		page.Heading(say.WhatItCosts), p.cost,
		page.Heading(say.GramMoreTitle), p.lines,
		page.Prose(say.AboutGramMore))
	split := container.NewHSplit(left, right)
	split.Offset = 0.485
	p.object = split
	return p
}

// Title implements page.Page.
func (p *Page) Title() string { return say.AllFigures }

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {}

// Show implements page.Page.
func (p *Page) Show() {
	r := p.host.Result()
	p.table.ShowFigures(rows(figure.All(page.Reads, r)))
	heads, food := figure.Food(page.Reads, r)
	p.nutrition.ShowTable(heads, rows(food))
	heads, cells := figure.GramMore(page.Reads, r)
	p.lines.ShowTable(heads, lineRows(r, cells))
	p.cost.SetText(say.Cost(page.Reads, &r.Cost))
	p.showWarnings(r)
}

func (p *Page) showWarnings(r *model.Result) {
	ws, taught := r.Warnings, say.HardnessLearnt(page.Reads, r.Taught)
	all := taught + "\n"
	for _, w := range ws {
		all += w.Where + say.Warning(page.Reads, w) + "\n"
	}
	if all == p.shown && len(p.warnings.Objects) > 0 {
		return
	}
	p.shown = all
	var rows []fyne.CanvasObject
	if taught != "" {
		rows = append(rows, page.Prose(taught))
	}
	for s := model.Serious; ; s-- {
		for _, w := range ws {
			if w.Severity == s {
				l := page.Prose(fmt.Sprintf("%s: %s", say.Severity(s), say.Warning(page.Reads, w)))
				l.TextStyle.Bold = s > model.Note
				rows = append(rows, l)
			}
		}
		if s == model.Note {
			break
		}
	}
	if len(rows) == 0 {
		rows = append(rows, widget.NewLabel(say.NoWarnings))
	}
	p.warnings.Objects = rows
	p.warnings.Refresh()
}

// rows are figures as laid out, for a table.
func rows(lines []say.TableRow) []say.TableRow {
	out := make([]say.TableRow, len(lines))
	for i, l := range lines {
		out[i] = say.TableRow{Name: l.Name, Unit: l.Unit, Cells: l.Cells}
	}
	return out
}

func lineRows(r *model.Result, cells [][]string) []say.TableRow {
	out := make([]say.TableRow, len(cells))
	for i := range cells {
		out[i] = say.TableRow{Name: page.Brief(say.Kitchen(r.Lines[i].Ingredient), 22), Cells: cells[i]}
	}
	return out
}
