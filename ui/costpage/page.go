// Package costpage is the page of money: what a tub costs and sells for, and what packs
// cost.
package costpage

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/packprice"
	"ripplewright/ui/page"
)

// Page is the page of money.
type Page struct {
	host  page.Host
	setup packprice.Setup

	fault *fyne.Container // tells of a file of prices that cannot be read
	wrong *widget.Label
	cost  *widget.Label
	sale  *sale
	packs *kit.Figures
	which *kit.Select
	ask   *kit.Button
	lines []*ingredient.Ingredient // of the choice

	object fyne.CanvasObject
}

// New returns the page.
func New(h page.Host, s packprice.Setup) *Page {
	p := &Page{host: h, setup: s, cost: page.Prose(""), packs: kit.NewFigures(say.T("a pack"), say.Of(figure.Cost.Row("per_100_g").Name))}
	p.sale = newSale(func(sellsFor float64) {
		d := h.Design()
		d.Tubs.SellsFor = sellsFor
		h.Commit(d, say.SellingStep.String())
	})
	p.which = kit.NewSelect(nil, nil)
	p.which.PlaceHolder = say.T("Choose an ingredient")
	p.ask = kit.NewButton(say.T("Price…"), p.askPrice)
	p.wrong = page.Bold("")
	p.wrong.Importance = widget.DangerImportance
	p.fault = container.NewBorder(nil, nil, nil, container.NewCenter(kit.NewButton(say.T("Read it again"), func() {
		s.Prices.Read()
		s.Use()
		p.Show()
	})), p.wrong)
	left := page.ScrolledBothWays(p.fault, page.Heading(say.T("What it costs")), p.cost,
		page.Heading(say.T("Selling price and margin")), p.sale.object)
	right := page.ScrolledBothWays(page.Heading(say.T("What packs cost")), container.NewBorder(nil, nil, nil, p.ask, p.which), p.packs)
	p.object = container.NewHSplit(left, right)
	return p
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {}

// Show implements page.Page.
func (p *Page) Show() {
	p.showFault()
	r := p.host.Result()
	cost := say.Cost(page.Reads, &r.Cost)
	if r.Cost.Priced {
		cost += " " + say.CostRests.String()
	}
	kit.SetText(p.cost, cost)
	p.sale.show(&r.Cost, p.host.Design().Tubs.SellsFor)
	p.showPacks()
}

// showFault tells that the maker's prices are left out.
func (p *Page) showFault() {
	err := p.setup.Prices.Err()
	if err != nil {
		kit.SetText(p.wrong, say.PricesLeftOut(err))
	}
	if p.fault.Visible() != (err != nil) {
		p.fault.Hidden = err == nil
		p.object.Refresh()
	}
}

// showPacks lists what is known of the price of each ingredient of the design.
func (p *Page) showPacks() {
	r, book := p.host.Result(), p.host.Model().Prices()
	var lines []*ingredient.Ingredient
	var rows []say.TableRow
	s := page.Reads.In(book.Currency)
	for i := range r.Lines {
		l := &r.Lines[i]
		if slices.Contains(lines, l.Ingredient) {
			continue
		}
		lines = append(lines, l.Ingredient)
		row := say.TableRow{Name: page.Brief(say.Kitchen(l.Ingredient), 30), Cells: []string{"", ""}}
		if pack, ok := book.For(l.Ingredient.ID); ok {
			row.Cells[0] = say.PackPrice(s, pack)
		}
		if l.PerGram.Known {
			row.Cells[1] = s.Money(100 * l.PerGram.Value)
		}
		rows = append(rows, row)
	}
	p.packs.ShowFigures(rows)
	if slices.Equal(lines, p.lines) {
		return
	}
	p.lines = lines
	p.which.Options = nil
	for i := range rows {
		p.which.Options = append(p.which.Options, rows[i].Name)
	}
	if !slices.Contains(p.which.Options, p.which.Selected) {
		p.which.Selected = ""
	}
	p.which.Refresh()
}

func (p *Page) askPrice() {
	i := p.which.SelectedIndex()
	if i < 0 || i >= len(p.lines) {
		p.host.Say(say.PriceOfWhich.String())
		return
	}
	packprice.Ask(p.host, p.setup, p.lines[i])
}
