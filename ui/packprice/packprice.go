// Package packprice is the question what a pack of an ingredient costs and holds,
// asked alike from the bench, the library and the shopping page.
package packprice

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/userdata"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Setup is what the question needs beside a Host.
type Setup struct {
	Prices *userdata.Prices
	// Use makes the changed prices those that the program works with.
	Use func()
}

// pieces is a pack that is counted.
const pieces = "pieces"

// asking is one question on screen.
type asking struct {
	host  page.Host
	setup Setup
	in    *ingredient.Ingredient // whose price was asked for
	id    string                 // of the pack: an egg's yolk is bought as eggs

	cost, holds, piece *kit.NumberField
	unit               *kit.Select
	note, currency     *kit.TextField
	wrong              *widget.Label
	form               *widget.Form
	dg                 *dialog.CustomDialog
}

// Ask asks what a pack of in costs, and keeps the answer.
func Ask(h page.Host, s Setup, in *ingredient.Ingredient) {
	a := &asking{host: h, setup: s, in: in, id: in.ID}
	pack, known := s.Prices.Book().For(in.ID)
	if _, own := s.Prices.Book().Find(in.ID); !own && price.OfShell(in.ID) {
		a.id = price.Eggs
	}
	a.fields(pack, known)
	a.form = widget.NewForm(widget.NewFormItem(say.T("A pack costs"), a.cost),
		widget.NewFormItem(say.T("and holds"), container.NewHBox(a.holds, a.unit)), widget.NewFormItem(say.T("One piece is"), a.piece),
		widget.NewFormItem(say.T("Note"), a.note), widget.NewFormItem(say.T("Currency of all prices"), a.currency))
	a.dg = kit.Ask(h.Window(), say.PriceTitle(a.id, page.Brief(say.Kitchen(in), 40)), container.NewVBox(a.form, a.wrong),
		kit.Answer{Name: say.T("Keep it¦a price"), Role: kit.ByReturn, Do: a.keep},
		kit.Answer{Name: say.T("No price"), Role: kit.ByHand, Do: a.forget},
		kit.Answer{Name: say.T("Cancel"), Role: kit.ByEscape})
	a.dg.Resize(fyne.NewSize(max(420, 30*theme.TextSize()), 0))
	a.showPiece()
	h.Window().Canvas().Focus(a.cost.Focusable())
}

func (a *asking) fields(pack price.Pack, known bool) {
	a.cost, a.holds, a.piece = page.NumberField("", 0, price.Most, 2), page.NumberField("", 0.001, 1e6, 3), page.NumberField("g", 0.001, 1e6, 1)
	a.holds.Step, a.piece.Step = 1, 1
	// What a first pack holds is looked at before it is kept.
	a.cost.Submits, a.holds.Submits, a.piece.Submits = known, true, true
	var names []string
	for _, m := range say.PackMeasures(page.Reads) {
		names = append(names, m.Name)
	}
	a.unit = kit.NewSelect(append(names, pieces), func(string) { a.showPiece() })
	a.note, a.currency = kit.NewTextField(), kit.NewTextField()
	a.wrong = page.Prose("")
	a.wrong.Importance = widget.DangerImportance
	a.currency.SetText(a.setup.Prices.Book().Currency)
	holds, unit := 1000., say.Gram
	switch {
	case pack.Grams > 0:
		holds = pack.Grams
	case pack.ML > 0:
		holds, unit = pack.ML, say.Millilitre
	case pack.Pieces > 0:
		holds, unit = pack.Pieces, pieces
	case a.id == price.Eggs:
		holds, unit = 12, pieces
	}
	a.cost.ShowValue(math.NaN())
	if known {
		a.cost.ShowValue(pack.Price)
	}
	a.holds.ShowValue(holds)
	a.piece.ShowValue(math.NaN())
	if pack.PieceG > 0 {
		a.piece.ShowValue(pack.PieceG)
	}
	a.unit.Selected = unit
	a.note.SetText(pack.Note)
}

// showPiece shows the weight of a piece where that counts.
func (a *asking) showPiece() {
	if a.form == nil {
		return
	}
	if a.unit.Selected == pieces {
		a.piece.Enable()
	} else {
		a.piece.Disable()
	}
}

// pack is what was typed, or why it is none.
func (a *asking) pack() (p price.Pack, wrong string) {
	p = price.Pack{Ingredient: a.id, Price: a.cost.Value(), Note: a.note.Text}
	holds := a.holds.Value()
	if math.IsNaN(p.Price) || math.IsNaN(holds) || a.cost.Problem() != nil || a.holds.Problem() != nil {
		return p, say.PriceWants.String()
	}
	m := say.PackMeasureOf(page.Reads, a.unit.Selected)
	switch {
	case m.Grams > 0:
		p.Grams = holds * m.Grams
	case m.ML > 0:
		p.ML = holds * m.ML
		if !a.in.Density.Known {
			return p, say.PriceDensity.String()
		}
	default:
		p.Pieces = holds
		if g := a.piece.Value(); g > 0 {
			p.PieceG = g
		} else if a.id != price.Eggs { // whose size says it
			return p, say.PricePiece.String()
		}
	}
	return p, ""
}

func (a *asking) keep() {
	p, wrong := a.pack()
	if wrong == "" {
		wrong = say.Sentence(say.Flaw(price.NotCurrency(a.currency.Text)))
	}
	if wrong != "" {
		a.wrong.SetText(wrong)
		return
	}
	err := a.setup.Prices.Put(p)
	if err == nil && a.currency.Text != a.setup.Prices.Book().Currency {
		err = a.setup.Prices.SetCurrency(a.currency.Text)
	}
	if err != nil {
		a.wrong.SetText(say.Sentence(say.Flaw(err)))
		return
	}
	a.dg.Hide()
	a.setup.Use()
	a.host.Say(say.PriceKept(a.setup.Prices.Path()))
}

// forget takes the price away, and that of the design's lines, which would count
// instead.
func (a *asking) forget() {
	if err := a.setup.Prices.Remove(a.id); err != nil {
		a.wrong.SetText(say.Sentence(say.Flaw(err)))
		return
	}
	a.dg.Hide()
	d := a.host.Design()
	now := d
	for _, part := range design.Parts {
		for i, l := range d.Lines(part) {
			if l.Ingredient == a.in.ID && l.Price.Known {
				l.Price = ingredient.Cell{}
				now = now.WithLine(part, i, l)
			}
		}
	}
	if !now.Equal(d) {
		a.host.Commit(now, say.PriceStep(say.Kitchen(a.in)))
	}
	a.setup.Use()
	a.host.Say(say.PriceForgotten.String())
}
