// Package shop says what to buy for some designs and batches: grams of all of
// them together, in whole packs, what those cost and what is left of them.
//
// Masses are g that go into the bowl, money is the maker's own. What has no
// price is unknown, not free.
package shop

import (
	"cmp"
	"math"
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/work/design"
)

// MostBatches is how many batches of a design one list may be for. It is there
// to catch slips of the finger.
const MostBatches = 1000

// Order is a design, what it comes to, and how often it is made.
type Order struct {
	Design  design.Design
	Result  *model.Result
	Batches int
}

// Item is one thing to buy.
type Item struct {
	Ingredient *ingredient.Ingredient
	NeedG      float64

	Pack  price.Pack      // as the prices have it
	PackG ingredient.Cell // what that holds; unknown without a pack, or of one that nobody can weigh
	Packs int             // to buy, whole; 0 where PackG is unknown
	LeftG float64         // over of what is bought, Packs × PackG − NeedG; NaN where PackG is unknown

	Paid  ingredient.Cell // for the packs or, without any, by weight as a line says
	Used  ingredient.Cell // worth of what the batches take
	Worth ingredient.Cell // of what is over: Paid less Used

	Eggs *Eggs // of eggs in their shell, which are bought by the piece; else nil
}

// Eggs is the eggs of one size. Each batch cracks its own whole eggs, so that no
// list comes up short.
type Eggs struct {
	Size   egg.Size
	Crack  int             // in all batches
	Pooled int             // that would do if what one batch leaves went into the next
	Over   model.EggParts  // of those cracked
	Left   ingredient.Cell // whole eggs of the packs; unknown without a pack
}

// FromTap reports whether the item runs from the tap, since it has no price.
func (it *Item) FromTap() bool { return it.Ingredient.ID == price.Tap && it.Pack == (price.Pack{}) }

// List is what to buy.
type List struct {
	Currency string
	Items    []Item  // by group of foods, then name
	Paid     float64 // of what has a price, likewise the next two
	Used     float64
	Worth    float64 // of what is over
}

// Missing returns the items without a price: with any, the sums are at least
// what they say.
func (l List) Missing() []Item {
	return slices.DeleteFunc(slices.Clone(l.Items), func(it Item) bool { return it.Paid.Known })
}

// For returns the list of some orders by the prices of b. Each Result is what
// its Design comes to with the same prices.
func For(orders []Order, b price.Book) List {
	c := counter{book: b}
	for _, o := range orders {
		c.add(o)
	}
	l := List{Currency: b.Currency}
	for i := range c.items {
		it := &c.items[i].Item
		c.items[i].buy()
		l.Items = append(l.Items, *it)
		l.Paid, l.Used, l.Worth = l.Paid+it.Paid.Or(0), l.Used+it.Used.Or(0), l.Worth+it.Worth.Or(0)
	}
	slices.SortStableFunc(l.Items, func(x, y Item) int {
		a, b := x.Ingredient, y.Ingredient
		return cmp.Or(cmp.Compare(a.Group, b.Group), cmp.Compare(a.Kitchen(), b.Kitchen()), cmp.Compare(a.ID, b.ID))
	})
	return l
}

// counter adds up what the orders take.
type counter struct {
	book  price.Book
	items []counted
}

// counted is an item and the sums behind it.
type counted struct {
	Item
	open  bool // some of it has no price
	size  egg.Size
	parts model.EggParts // taken, of all batches
}

func (c *counter) add(o Order) {
	size, _ := egg.Find(o.Design.Eggs.System, o.Design.Eggs.Size)
	n := float64(o.Batches)
	shell := map[int]model.EggParts{} // of one batch, by item
	for _, l := range o.Result.Lines {
		if l.Grams == 0 {
			continue
		}
		i := c.at(l.Ingredient, size)
		it := &c.items[i]
		it.NeedG += n * l.Grams
		it.Used.Value += n * l.Grams * l.PerGram.Value
		it.open = it.open || !l.PerGram.Known
		if it.Eggs != nil {
			shell[i] = shell[i].Plus(model.EggsIn(l.Ingredient.ID, l.Grams, size), 1)
		}
	}
	for i, parts := range shell {
		it := &c.items[i]
		it.Eggs.Crack += o.Batches * int(parts.ToCrack())
		it.parts = it.parts.Plus(parts, n)
	}
}

// at returns the place of the item that in is bought as. What of an egg has no
// pack of its own is bought as eggs of a size.
func (c *counter) at(in *ingredient.Ingredient, size egg.Size) int {
	pack, own := c.book.Find(in.ID)
	shell := price.OfShell(in.ID) && (!own || pack.Pieces > 0 && in.ID == price.Eggs)
	for i := range c.items {
		it := &c.items[i]
		switch {
		case shell && it.Eggs != nil && it.Eggs.Size == size:
			if in.ID == price.Eggs {
				it.Ingredient = in
			}
			return i
		case !shell && it.Eggs == nil && (it.Ingredient == in || it.Ingredient.ID == in.ID && it.Ingredient.Equal(in)):
			return i
		}
	}
	next := counted{size: size}
	next.Ingredient, next.Pack = in, pack
	if shell {
		next.Pack, _ = c.book.For(in.ID)
		next.Eggs = &Eggs{Size: size}
	}
	c.items = append(c.items, next)
	return len(c.items) - 1
}

// enough is what of a pack may be short: rounding.
const enough = 1e-9

// buy rounds what is needed up to packs and pays for them.
func (it *counted) buy() {
	it.Used.Known = !it.open
	it.PackG, it.LeftG = it.Pack.InGrams(it.Ingredient, it.size), math.NaN()
	if it.Eggs != nil {
		it.crack()
		return
	}
	switch {
	case it.PackG.Known:
		it.Packs = int(math.Ceil(it.NeedG/it.PackG.Value - enough))
		it.LeftG = float64(it.Packs)*it.PackG.Value - it.NeedG
		it.Paid = ingredient.Known(float64(it.Packs) * it.Pack.Price)
	case !it.open:
		it.Paid = it.Used
	}
	it.worth()
}

// crack is buy for eggs in their shell.
func (it *counted) crack() {
	e := it.Eggs
	e.Pooled = int(it.parts.ToCrack())
	e.Over = model.EggParts{Yolks: float64(e.Crack) - it.parts.Yolks, Whites: float64(e.Crack) - it.parts.Whites}
	switch {
	case it.Pack.Pieces > 0:
		it.Packs = int(math.Ceil(float64(e.Crack)/it.Pack.Pieces - enough))
		e.Left = ingredient.Known(float64(it.Packs)*it.Pack.Pieces - float64(e.Crack))
		it.LeftG = float64(it.Packs)*it.PackG.Value - it.NeedG
		it.Paid = ingredient.Known(float64(it.Packs) * it.Pack.Price)
	case !it.open:
		it.Paid = it.Used
	}
	it.worth()
}

func (it *counted) worth() {
	if it.Paid.Known {
		it.Worth = ingredient.Known(it.Paid.Value - it.Used.Value)
	}
}
