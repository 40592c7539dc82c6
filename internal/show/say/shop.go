package say

import (
	"math"
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/shop"
	"ripplewright/internal/food/price"
)

// Bought is a thing to buy, in words for the columns of a list. What is not known
// is a dash.
type Bought struct{ What, Need, Buy, Pays, Left string }

// BoughtHeads are the heads of a list's columns.
func BoughtHeads() Bought {
	return Bought{T("what"), T("needed"), T("buy"), T("costs"), T("left over")}
}

// Buy words an item of a list.
func Buy(s Style, it *shop.Item) Bought {
	b := Bought{What: Capital(BuyName(it)), Need: s.Mass(it.NeedG), Buy: Unknown, Pays: Unknown, Left: Unknown}
	if e := it.Eggs; e != nil {
		b.Need = s.Count(e.Crack, "egg", "eggs")
	}
	if it.Pack.Note != "" {
		b.What += " (" + it.Pack.Note + ")"
	}
	if it.Paid.Known {
		b.Pays = s.Money(it.Paid.Value)
	}
	switch {
	case it.FromTap():
		b.Buy, b.Pays = T("from the tap"), T("nothing")
	case it.Packs > 0:
		b.Buy, b.Left = T("%s of %s", s.Count(it.Packs, "pack", "packs"), PackHolds(s, it.Pack)), left(s, it)
	default:
		b.Buy = b.Need
	}
	return b
}

// BuyName is what an item is called in a sentence.
func BuyName(it *shop.Item) string {
	if e := it.Eggs; e != nil {
		return T("eggs, %s %s", e.Size.System, Of(e.Size.Name))
	}
	return Kitchen(it.Ingredient)
}

// left is what is over of the packs and what it is worth.
func left(s Style, it *shop.Item) string {
	text := s.Mass(it.LeftG)
	if e := it.Eggs; e != nil {
		text = overOfEggs(s, e)
	}
	if text == "" || it.Eggs == nil && it.LeftG < 0.05 {
		return T("nothing")
	}
	if it.Worth.Known {
		text = T("%s, worth %s", text, s.Money(it.Worth.Value))
	}
	return text
}

func overOfEggs(s Style, e *shop.Eggs) string {
	var list []string
	if n := e.Left.Or(0); n > 0 {
		list = append(list, s.Count(int(math.Round(n)), "egg", "eggs"))
	}
	if e.Over.Yolks >= 0.05 {
		list = append(list, s.few(e.Over.Yolks, "yolk", "yolks"))
	}
	if e.Over.Whites >= 0.05 {
		list = append(list, s.few(e.Over.Whites, "white", "whites"))
	}
	return List(list)
}

// PackHolds is what a pack holds: "1000 g", "12".
func PackHolds(s Style, p price.Pack) string {
	switch {
	case p.Grams > 0:
		return s.Mass(p.Grams)
	case p.ML > 0:
		return s.Volume(p.ML)
	}
	return s.Short(p.Pieces, 1)
}

// PackPrice is "€ 1.20 for 1000 g".
func PackPrice(s Style, p price.Pack) string {
	return T("%s for %s", s.Money(p.Price), PackHolds(s, p))
}

// PriceOf says what a book knows of the price of an ingredient.
func PriceOf(s Style, b price.Book, id string) string {
	pack, ok := b.For(id)
	if !ok {
		return T("No price yet.")
	}
	text := PackPrice(s.In(b.Currency), pack)
	if pack.Note != "" {
		text += " (" + pack.Note + ")"
	}
	if pack.Ingredient != id {
		return T("Bought as eggs: %s.", text)
	}
	return T("A pack: %s.", text)
}

// ShopFor says what a list is for: "2 batches of Night tram".
func ShopFor(s Style, batches int, name string) string {
	return T("%s of %s", s.Count(batches, "batch", "batches"), name)
}

// ShopTotal says what a list costs in all, what of that goes into the bowls and
// what is left. It is "" where nothing has a price.
func ShopTotal(s Style, l *shop.List) string {
	missing := l.Missing()
	priced := slices.ContainsFunc(l.Items, func(it shop.Item) bool { return it.Paid.Known && !it.FromTap() })
	if !priced {
		return T("No ingredient has a price yet.")
	}
	s = s.In(l.Currency)
	text := T("You pay %s: %s goes into the bowls, %s is left over.", s.Money(l.Paid), s.Money(l.Used), s.Money(l.Worth))
	if len(missing) > 0 {
		text = T("You pay at least %s: %s goes into the bowls, %s is left over.", s.Money(l.Paid), s.Money(l.Used), s.Money(l.Worth))
	}
	var names []string
	for i := range missing {
		names = append(names, BuyName(&missing[i]))
	}
	if len(names) > 0 {
		text += " " + T("Without a price: %s.", List(names))
	}
	return text
}

// ShopEggs says where fewer eggs would do, "" where not.
func ShopEggs(s Style, l *shop.List) string {
	text := ""
	for i := range l.Items {
		if e := l.Items[i].Eggs; e != nil && e.Pooled < e.Crack {
			if text != "" {
				text += " "
			}
			text += T("%s (%s %s) would do if what one batch leaves over goes into the next.", s.Count(e.Pooled, "egg", "eggs"), e.Size.System, Of(e.Size.Name))
		}
	}
	return text
}

// Offer words a selling price of a tub and its margin: "60 %" and "€ 7.50". A cost
// that is a lower bound makes the price one too.
func Offer(s Style, c *model.Cost, o shop.Offer) (margin, sells string) {
	sells = s.In(c.Currency).Money(o.Price)
	if len(c.Missing) > 0 {
		sells = AtLeast(sells)
	}
	return s.Percent(100*o.Margin, 0), sells
}

// OfferLine is an offer as a line of text.
func OfferLine(margin, sells string) string {
	return T("A margin of %s takes %s a tub.", margin, sells)
}

// Margin says what margin a selling price leaves on a tub.
func Margin(s Style, c *model.Cost, sells float64) string {
	m := price.Margin(c.PerTub, sells)
	if !known(m) || !c.Priced {
		return T("A margin needs a selling price and what a tub costs.")
	}
	if len(c.Missing) > 0 {
		return T("At %s a tub the margin is at most %s of the price.", s.In(c.Currency).Money(sells), s.Percent(100*m, 0))
	}
	return T("At %s a tub the margin is %s of the price.", s.In(c.Currency).Money(sells), s.Percent(100*m, 0))
}

// MarginRests says what a margin leaves out.
const MarginRests Message = "The margin is of the price. VAT, work, tubs and power are in neither price nor cost."

// What the question of a price says of what is typed, or not.
const (
	PriceWants     Message = "A price needs what a pack costs and how much it holds."
	PriceDensity   Message = "Its density is not known: say how many grams the pack holds."
	PricePiece     Message = "Say how many grams one piece brings into the bowl."
	PriceOfWhich   Message = "Choose an ingredient first."
	PriceForgotten Message = "Its price is forgotten."
)

// PriceTitle heads the question what a pack costs: of eggs for their yolk and white.
func PriceTitle(id, name string) string {
	if id == price.Eggs {
		name = T("eggs")
	}
	return T("Price of %s", name)
}

// PriceKept says where a price is kept.
func PriceKept(path string) string { return T("Kept in %s", path) }

// PriceStep is the name of the step that takes an older price from the lines.
func PriceStep(name string) string { return T("price of %s", name) }

// PricesLeftOut says why no price counts.
func PricesLeftOut(err error) string {
	return T("Your prices could not be read and are left out; the file stays as it is. %s Correct the file by hand, then read it again.", Sentence(Flaw(err)))
}
