package report

import (
	"io"
	"slices"

	"ripplewright/internal/answer/shop"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/show/say"
)

// Shopping is a shopping list and what its designs cost and sell for.
type Shopping struct {
	files  []string
	orders []shop.Order
	list   shop.List
	sells  float64 // of a tub; NaN if nobody asked
}

// ShoppingOf returns the report of a list for orders read from files. sells is a
// selling price of a tub, NaN for that of each design.
func ShoppingOf(files []string, orders []shop.Order, l shop.List, sells float64) Shopping {
	return Shopping{files, orders, l, sells}
}

// MarshalJSON returns one object; "ripplecalc help shop" tells its keys.
func (x Shopping) MarshalJSON() ([]byte, error) {
	designs, items, missing := []object{}, []object{}, []string{}
	for i := range x.orders {
		o := &x.orders[i]
		d := object{{"file", x.files[i]}, {"name", o.Design.Name}, {"batches", o.Batches}, {"cost", costObject(o.Result)}, {"offers", offers(o)}}
		if sells := x.sellsFor(o); Number(sells).known() {
			d.put("margin_percent", percent(price.Margin(o.Result.Cost.PerTub, sells)))
		}
		designs = append(designs, d)
	}
	for i := range x.list.Items {
		it := &x.list.Items[i]
		items = append(items, itemObject(it))
		if !it.Paid.Known {
			missing = append(missing, say.BuyName(it))
		}
	}
	o := object{{"designs", designs}, {"items", items}, {"currency", nil}, {"pays", nil}, {"used", nil}, {"left_worth", nil}, {"at_least", len(missing) > 0}, {"missing", missing}}
	if x.list.Currency != "" {
		o.set("currency", x.list.Currency)
	}
	if slices.ContainsFunc(x.list.Items, func(it shop.Item) bool { return it.Paid.Known && !it.FromTap() }) {
		o.set("pays", Number(x.list.Paid))
		o.set("used", Number(x.list.Used))
		o.set("left_worth", Number(x.list.Worth))
	}
	return o.MarshalJSON()
}

// sellsFor is what a tub of a design sells for, NaN where nobody said.
func (x Shopping) sellsFor(o *shop.Order) float64 {
	if !Number(x.sells).known() && o.Design.Tubs.SellsFor > 0 {
		return o.Design.Tubs.SellsFor
	}
	return x.sells
}

func offers(o *shop.Order) []object {
	out := []object{}
	for _, f := range shop.Offers(&o.Result.Cost) {
		out = append(out, object{{"margin_percent", percent(f.Margin)}, {"price_per_tub", Number(f.Price)}})
	}
	return out
}

func itemObject(it *shop.Item) object {
	o := object{{"ingredient", it.Ingredient.ID}, {"name", say.BuyName(it)}, {"note", it.Pack.Note}, {"need_g", Number(it.NeedG)},
		{"packs", nil}, {"pack_price", nil}, {"pack_holds_g", cell(it.PackG)}, {"left_g", Number(it.LeftG)},
		{"pays", cell(it.Paid)}, {"used", cell(it.Used)}, {"left_worth", cell(it.Worth)}, {"from_tap", it.FromTap()}, {"eggs", nil}}
	if it.Pack != (price.Pack{}) {
		o.set("pack_price", Number(it.Pack.Price))
	}
	if it.Packs > 0 {
		o.set("packs", it.Packs)
	}
	if e := it.Eggs; e != nil {
		o.set("eggs", object{{"system", e.Size.System}, {"size", e.Size.Name}, {"crack", e.Crack}, {"if_pooled", e.Pooled},
			{"yolks_over", Number(e.Over.Yolks)}, {"whites_over", Number(e.Over.Whites)}, {"left", cell(e.Left)}})
	}
	return o
}

func cell(c ingredient.Cell) Number {
	if !c.Known {
		return unknown
	}
	return Number(c.Value)
}

// lines are the list in words, sums and all, the same for each way to write it.
func (x Shopping) lines() (items [][]string, after []string) {
	h := say.BoughtHeads()
	items = [][]string{{h.What, h.Need, h.Buy, h.Pays, h.Left}}
	s := Reads.In(x.list.Currency)
	for i := range x.list.Items {
		b := say.Buy(s, &x.list.Items[i])
		items = append(items, []string{b.What, b.Need, b.Buy, b.Pays, b.Left})
	}
	after = append(after, say.ShopTotal(Reads, &x.list))
	if eggs := say.ShopEggs(Reads, &x.list); eggs != "" {
		after = append(after, eggs)
	}
	return items, after
}

// WriteText writes the list as a table for a terminal.
func (x Shopping) WriteText(w io.Writer) error {
	p := &page{w: w}
	for i := range x.orders {
		p.line("%s (%s)", say.ShopFor(Reads, x.orders[i].Batches, x.orders[i].Design.Name), x.files[i])
	}
	p.line("")
	items, after := x.lines()
	width := 0
	for _, r := range items {
		width = max(width, len([]rune(r[0])))
	}
	rows := make([]string, len(items))
	for i, r := range items {
		rows[i] = left(say.HarmlessLine(r[0]), width) + "\t" + r[1] + "\t" + r[2] + "\t" + r[3] + "\t" + r[4]
	}
	p.table(rows)
	p.line("")
	for _, l := range after {
		p.line("%s", l)
	}
	for i := range x.orders {
		p.line("")
		p.selling(&x.orders[i], x.sellsFor(&x.orders[i]))
	}
	return p.err
}

// selling writes what the tubs of a design cost and sell for.
func (p *page) selling(o *shop.Order, sells float64) {
	c := &o.Result.Cost
	p.line("%s: %s", o.Design.Name, say.Cost(Reads, c))
	for _, f := range shop.Offers(c) {
		margin, sells := say.Offer(Reads, c, f)
		p.line("%s", say.OfferLine(margin, sells))
	}
	if Number(sells).known() {
		p.line("%s", say.Margin(Reads, c, sells))
	}
	if c.Priced {
		p.line("%s", say.MarginRests.String())
	}
}

// WriteMarkdown writes the list with boxes to tick, words made harmless.
func (x Shopping) WriteMarkdown(w io.Writer) error {
	cell := func(s string) string { return say.Harmless(s, say.Markdown) }
	p := &page{w: w}
	p.line("# Shopping list")
	p.line("")
	for i := range x.orders {
		p.line("- %s", cell(say.ShopFor(Reads, x.orders[i].Batches, x.orders[i].Design.Name)))
	}
	p.line("")
	items, after := x.lines()
	for i, r := range items {
		box := `\[ \]`
		if i == 0 {
			box = ""
		}
		p.line("| %s | %s | %s | %s | %s | %s |", box, cell(r[0]), cell(r[1]), cell(r[2]), cell(r[3]), cell(r[4]))
		if i == 0 {
			p.line("| --- | --- | --- | --- | --- | --- |")
		}
	}
	for _, l := range after {
		p.line("")
		p.line("%s", cell(l))
	}
	return p.err
}
