package costpage

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/shop"
	"ripplewright/internal/food/price"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// sale is the panel of a tub's selling price and its margin: a hand sets one, the
// other follows. While costs change, what a hand has set last stays.
type sale struct {
	price, margin *kit.NumberField
	byMargin      bool
	said, offers  *widget.Label
	kept          float64                // what the design says that a tub sells for
	keep          func(sellsFor float64) // writes that
	cost          model.Cost
	object        fyne.CanvasObject
}

// The least margin that can be asked for, %: who sells for a tenth of the cost.
const leastMargin = -900

func newSale(keep func(sellsFor float64)) *sale {
	s := &sale{keep: keep, price: page.NumberField("", 0.01, price.Most, 2), margin: page.NumberField("%", leastMargin, 99.9, 1), said: page.Bold(""), offers: page.Prose("")}
	kit.LineUp(s.price, s.margin)
	s.price.Step, s.margin.Step = 0.1, 1
	s.price.ShowValue(math.NaN())
	s.margin.ShowValue(math.NaN())
	s.price.OnChanged = func(float64) { s.set(false) }
	s.margin.OnChanged = func(float64) { s.set(true) }
	form := widget.NewForm(widget.NewFormItem(say.T("A tub sells for"), s.price), widget.NewFormItem(say.T("Margin, of the price"), s.margin))
	s.object = container.NewVBox(form, s.said, s.offers, page.Prose(say.MarginRests.String()))
	return s
}

// set is what a hand has set: the design keeps the price to the hundredth.
func (s *sale) set(byMargin bool) {
	s.byMargin = byMargin
	s.show(&s.cost, s.kept)
	if v := math.Round(100*s.price.Value()) / 100; v > 0 && v <= price.Most && v != s.kept {
		s.kept = v
		s.keep(v)
	}
}

// show brings the one that follows up to date; kept is what the design says.
func (s *sale) show(c *model.Cost, kept float64) {
	s.cost = *c
	if kept != s.kept {
		s.kept, s.byMargin = kept, false
		s.price.ShowValue(math.NaN())
		if kept > 0 {
			s.price.ShowValue(kept)
		}
	}
	sells, margin := s.price.Value(), s.margin.Value()/100
	switch {
	case !c.Priced:
	case s.byMargin:
		sells = price.Selling(c.PerTub, margin)
		s.price.ShowValue(sells)
	case !math.IsNaN(sells):
		s.margin.ShowValue(100 * price.Margin(c.PerTub, sells))
	}
	kit.SetText(s.said, say.Margin(page.Reads, c, sells))
	var lines []string
	for _, o := range shop.Offers(c) {
		m, p := say.Offer(page.Reads, c, o)
		lines = append(lines, say.OfferLine(m, p))
	}
	kit.SetText(s.offers, strings.Join(lines, "\n"))
}
