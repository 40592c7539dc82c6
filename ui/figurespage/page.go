// Package figurespage is the page of all figures.
package figurespage

import (
	"fmt"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
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
		nutrition: kit.NewFigures("per 100 g", "per 2/3 cup"),
		lines:     kit.NewFigures("grams", "freezes, °C", "hardness, %", "sweetness", "density, g/mL"),
		cost:      page.Prose(""),
		warnings:  container.NewVBox(),
	}
	left := page.ScrolledBothWays(page.Heading("The phases and the tub"), p.table,
		page.Prose("Contrast is the custard's hardness over the foam's, the foam's sweetness less the custard's, and the custard's start of scooping less the foam's. Between: what unknown composition and the bound-water freedom leave open; for hardness also the thickness of the syrup and the factor 2 between batches. Ice by volume is of the volume without air. Overrun, density and volume are those at filling, 4 °C. The trade aims for a sweetness of "+page.Reads.PercentSpan(phase.TradeSweetness[0], phase.TradeSweetness[1], 0)+" in an ice cream."))
	right := page.ScrolledBothWays(page.Heading("What to know"), p.warnings,
		page.Heading("Nutrition of the whole food"), p.nutrition,
		page.Heading("What the ingredients cost"), p.cost,
		page.Heading("What one gram more of a line does"), p.lines,
		page.Prose("Per gram as written, to the phase the line goes into, at the serving temperature: the freezing point in degrees, hardness in per cent of itself, density in g/mL, sweetness in points of sucrose equivalent. They are slopes: good for small changes."))
	split := container.NewHSplit(left, right)
	split.Offset = 0.485
	p.object = split
	return p
}

// Title implements page.Page.
func (p *Page) Title() string { return "All figures" }

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {}

// Show implements page.Page.
func (p *Page) Show() {
	r := p.host.Result()
	p.table.ShowFigures(rows(figure.All(page.Reads, r)))
	p.nutrition.ShowFigures(rows(figure.Food(page.Reads, r)))
	p.lines.ShowFigures(lineRows(r))
	p.cost.SetText(costText(&r.Cost))
	p.showWarnings(r.Warnings)
}

// costText is what the batch costs, and of what that is not known.
func costText(c *model.Cost) string {
	if !c.Priced {
		return "No line has a price yet: give it one in the line's menu on the bench."
	}
	text := page.Number(c.Known, 2) + " for the batch"
	if !math.IsNaN(c.PerTub) {
		text += ", " + page.Number(c.PerTub, 2) + " a tub"
	}
	if len(c.Missing) > 0 {
		return "At least " + text + ", in your own money. Without a price: " + strings.Join(c.Missing, "; ") + "."
	}
	return text + ", in your own money."
}

func (p *Page) showWarnings(ws []model.Warning) {
	all := ""
	for _, w := range ws {
		all += w.Where + say.Warning(page.Reads, w) + "\n"
	}
	if all == p.shown && len(p.warnings.Objects) > 0 {
		return
	}
	p.shown = all
	var rows []fyne.CanvasObject
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
		rows = append(rows, widget.NewLabel("Nothing to warn of."))
	}
	p.warnings.Objects = rows
	p.warnings.Refresh()
}

// rows are figures as laid out, for a table.
func rows(lines []figure.Line) []kit.Figure {
	out := make([]kit.Figure, len(lines))
	for i, l := range lines {
		out[i] = kit.Figure{Name: l.Name, Unit: l.Unit, Cells: l.Cells}
	}
	return out
}

func lineRows(r *model.Result) []kit.Figure {
	_, cells := figure.GramMore(page.Reads, r)
	out := make([]kit.Figure, len(cells))
	for i := range cells {
		out[i] = kit.Figure{Name: page.Brief(r.Lines[i].Ingredient.Name, 22), Cells: cells[i]}
	}
	return out
}
