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
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
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
		table:     kit.NewFigures("custard", "foam", "tub"),
		nutrition: kit.NewFigures("per 100 g", "per 2/3 cup"),
		lines:     kit.NewFigures("grams", "freezes, K", "hardness, %", "sweetness", "density, %"),
		cost:      page.Prose(""),
		warnings:  container.NewVBox(),
	}
	left := page.ScrolledBothWays(page.Heading("The phases and the tub"), p.table,
		page.Prose("Contrast is the custard's hardness over the foam's, the foam's sweetness less the custard's, and the custard's start of scooping less the foam's. Between: what unknown composition and the bound-water freedom leave open; for hardness also the thickness of the syrup and the factor 2 between batches. Ice by volume is of the volume without air. Overrun, density and volume are those at filling, 4 °C."))
	right := page.ScrolledBothWays(page.Heading("What to know"), p.warnings,
		page.Heading("Nutrition of the whole food"), p.nutrition,
		page.Heading("What the ingredients cost"), p.cost,
		page.Heading("What one gram more of a line does"), p.lines,
		page.Prose("Per gram as written, to the phase the line goes into, at the serving temperature: the freezing point in kelvin, hardness and density in per cent of themselves, sweetness in points of sucrose equivalent. They are slopes: good for small changes."))
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
	p.table.ShowFigures(phaseRows(r))
	p.nutrition.ShowFigures(nutritionRows(&r.Nutrition))
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

// between names the row of a figure's band.
const between = "    between"

// phaseRows lists the figures of both phases and the tub.
func phaseRows(r *model.Result) []kit.Figure {
	d, f, b := &r.Dense, &r.Foam, &r.Blend
	row := func(name, unit string, dense, foam, tub string) kit.Figure {
		return kit.Figure{Name: name, Unit: unit, Cells: []string{dense, foam, tub}}
	}
	num := func(name, unit string, decimals int, dense, foam, tub float64) kit.Figure {
		return row(name, unit, page.Number(dense, decimals), page.Number(foam, decimals), page.Number(tub, decimals))
	}
	mean := func(dense, foam float64) float64 { return b.Mean(dense, foam) }
	pct := func(name string, of func(*model.Phase) float64) kit.Figure {
		x, y := of(d), of(f)
		return num(name, "%", 1, x, y, mean(x, y))
	}
	rows := []kit.Figure{
		num("Mass", "g", 0, d.Portion.MassG, f.Portion.MassG, b.MassG),
		num("Volume", "mL", 0, d.Portion.VolumeML, f.Portion.VolumeML, b.VolumeML),
		num("Density", "g/mL", 3, d.Body.Density(), f.Body.Density(), b.DensityGPerML),
		num("Overrun", "%", 0, 100*d.Body.Overrun, 100*f.Body.Overrun, nan),
		num("Left over", "mL", 0, b.Dense.LeftML, b.Foam.LeftML, nan),
		num("Tubs filled", "", 2, nan, nan, b.TubsFilled),
		pct("Water", func(p *model.Phase) float64 { return p.Percent(mix.Water) }),
		pct("Total solids", func(p *model.Phase) float64 { return p.Body.Mix.Solids() }),
		pct("Fat", func(p *model.Phase) float64 { return p.Percent(mix.Fat) }),
		row("Milk solids-not-fat", "%", part(d, ingredient.MSNF), part(f, ingredient.MSNF), page.Amount(r.Nutrition.Per100G[ingredient.MSNF], 1)),
		pct("Sugars", func(p *model.Phase) float64 { return p.Body.Mix.TotalSugars() }),
	}
	for _, s := range mix.Sugars {
		if d.Percent(s)+f.Percent(s) > 0.005 {
			rows = append(rows, pct("    "+s.String(), func(p *model.Phase) float64 { return p.Percent(s) }))
		}
	}
	return append(rows,
		num("Initial freezing point", "°C", 2, d.FreezingPoint.Value, f.FreezingPoint.Value, nan),
		row(between, "°C", page.Band(d.FreezingPoint, 1, 2), page.Band(f.FreezingPoint, 1, 2), ""),
		num("Water frozen", "%", 0, 100*d.WaterFrozen.Value, 100*f.WaterFrozen.Value, 100*b.WaterFrozen),
		row(between, "%", page.Band(d.WaterFrozen, 100, 0), page.Band(f.WaterFrozen, 100, 0), ""),
		num("Ice by mass", "%", 1, 100*d.State.IceMass, 100*f.State.IceMass, 100*b.IceMass),
		num("Ice by volume", "%", 1, 100*d.State.IceVolume, 100*f.State.IceVolume, 100*b.IceVolume),
		num("Hardness", "kPa", 2, d.Yield.Value, f.Yield.Value, b.Yield),
		row(between, "kPa", page.Band(d.Yield, 1, 2), page.Band(f.Yield, 1, 2), ""),
		row("On the spoon", "", d.Word.Name, f.Word.Name, ""),
		row("Scoops from", "°C", scoop(d.Scoop, d.Scoop.From), scoop(f.Scoop, f.Scoop.From), scoop(b.Both, b.Both.From)),
		row("Scoops to", "°C", scoop(d.Scoop, d.Scoop.To), scoop(f.Scoop, f.Scoop.To), scoop(b.Both, b.Both.To)),
		num("Sweetness, as sucrose", "%", 1, d.SweetnessPercent, f.SweetnessPercent, b.SweetnessPercent),
		num("    melted, at 20 °C", "%", 1, d.SweetnessMelted, f.SweetnessMelted, mean(d.SweetnessMelted, f.SweetnessMelted)),
		row("    the trade's aim for an ice cream", "%", "", "", tradeSweetness()),
		num("    in a 15 mL spoonful", "g", 2, d.SweetnessPerSpoon, f.SweetnessPerSpoon, b.SweetnessPerSpoon),
		num("Contrast: hardness", "×", 1, nan, nan, b.Hardness),
		num("Contrast: sweetness", "points", 1, nan, nan, b.Sweetness),
		row("Contrast: starts to scoop", "K", "", "", scoopContrast(b.ScoopsK, b.ScoopsAtLeast)),
		num("Frozen, of that filled", "%", 1, 100*d.Swelling, 100*f.Swelling, nan),
		num("Syrup solids", "%", 1, nan, r.Syrup.SolidsPercent, nan),
		num("Syrup, water boiled off", "g", 1, nan, r.Syrup.WaterOffG, nan),
	)
}

var nan = math.NaN()

func part(p *model.Phase, c ingredient.Column) string {
	if p.WrittenG == 0 {
		return ""
	}
	return page.Amount(p.PartPercent(c), 1)
}

// tradeSweetness is the range that the trade aims for.
func tradeSweetness() string {
	return page.Number(phase.TradeSweetness[0], 0) + " to " + page.Number(phase.TradeSweetness[1], 0)
}

// scoopContrast says where the contrast is only known from below.
func scoopContrast(k float64, atLeast bool) string {
	if s := page.Number(k, 1); s != "" && atLeast {
		return "≥ " + s
	} else {
		return s
	}
}

func scoop(s model.ScoopRange, t float64) string {
	switch {
	case !s.OK:
		return ""
	case t <= model.RailLow:
		return "below −24"
	case t >= model.RailHigh:
		return "above −4"
	}
	return page.Number(t, 1)
}

// nutritionColumns are the columns of the nutrition table, in a label's order.
var nutritionColumns = [...]struct {
	column   ingredient.Column
	name     string
	unit     string
	decimals int
}{
	{ingredient.Energy, "Energy", "kcal", 0}, {ingredient.Fat, "Fat", "g", 1},
	{ingredient.SaturatedFat, "    saturated", "g", 1}, {ingredient.TransFat, "    trans", "g", 2},
	{ingredient.CholesterolMG, "Cholesterol", "mg", 0}, {ingredient.SodiumMG, "Sodium", "mg", 0},
	{ingredient.Carbohydrate, "Carbohydrate", "g", 1}, {ingredient.Fibre, "    fibre", "g", 1},
	{ingredient.TotalSugars, "    sugars", "g", 1}, {ingredient.AddedSugars, "    added sugars", "g", 1},
	{ingredient.Protein, "Protein", "g", 1}, {ingredient.VitaminDUG, "Vitamin D", "µg", 1},
	{ingredient.CalciumMG, "Calcium", "mg", 0}, {ingredient.IronMG, "Iron", "mg", 2},
	{ingredient.PotassiumMG, "Potassium", "mg", 0},
}

func nutritionRows(n *model.Nutrition) []kit.Figure {
	rows := make([]kit.Figure, 0, len(nutritionColumns))
	for _, c := range nutritionColumns {
		rows = append(rows, kit.Figure{Name: c.name, Unit: c.unit, Cells: []string{
			page.Amount(n.Per100G[c.column], c.decimals), page.Amount(n.PerServing[c.column], c.decimals)}})
	}
	return rows
}

func lineRows(r *model.Result) []kit.Figure {
	rows := make([]kit.Figure, 0, len(r.Lines))
	for _, l := range r.Lines {
		s := l.Slopes
		density := r.Dense.Body.Density()
		if l.Part != 0 {
			density = r.Foam.Body.Density()
		}
		rows = append(rows, kit.Figure{Name: page.Brief(l.Ingredient.Name, 22), Cells: []string{
			page.Number(l.Grams, 0), page.Number(s.FreezingPointC, 4), page.Number(100*s.LnYield, 2), page.Number(s.Sweetness, 3), page.Number(100*s.Density/density, 3)}})
	}
	return rows
}
