// Package price turns what a maker pays for a pack into what a gram costs.
//
// Money is in the maker's own currency, masses g of what goes into the bowl,
// volumes mL. A price that nobody gave is unknown, which is not zero.
package price

import (
	"slices"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
)

// Pack is what one pack of an ingredient costs and holds. It holds grams,
// millilitres or pieces: one of the three, the others are 0.
type Pack struct {
	Ingredient string  // id
	Price      float64 // of the pack
	Grams      float64
	ML         float64
	Pieces     float64
	PieceG     float64 // g of one piece as it goes into the bowl; 0 for eggs, whose size says it
	Note       string  // where it is bought, for instance
}

// Eggs is the id under which eggs in their shell are priced, by the piece; their
// yolks and whites cost what they weigh of one.
const Eggs = "egg_whole"

// Tap is the id of what runs from the tap and costs nothing as long as nobody
// says what it does.
const Tap = "water"

// Book is the prices of a maker. The zero Book knows none. It is immutable.
type Book struct {
	Currency string // as the maker writes it, "€" or "kr"; "" if nobody said
	packs    []Pack
	at       map[string]int
}

// NewBook returns the book of some packs, one for an ingredient: the last counts.
func NewBook(currency string, packs []Pack) Book {
	b := Book{Currency: currency, at: map[string]int{}}
	for _, p := range packs {
		if i, ok := b.at[p.Ingredient]; ok {
			b.packs[i] = p
			continue
		}
		b.at[p.Ingredient] = len(b.packs)
		b.packs = append(b.packs, p)
	}
	return b
}

// Packs returns every pack in the order of the book.
func (b Book) Packs() []Pack { return slices.Clone(b.packs) }

// Find returns the pack of an ingredient.
func (b Book) Find(id string) (Pack, bool) {
	i, ok := b.at[id]
	if !ok {
		return Pack{}, false
	}
	return b.packs[i], true
}

// For returns the pack that an ingredient comes out of: its own or, of the yolk
// and the white of an egg in its shell, that of the eggs by the piece.
func (b Book) For(id string) (Pack, bool) {
	if p, ok := b.Find(id); ok || !OfShell(id) {
		return p, ok
	}
	if p, ok := b.Find(Eggs); ok && p.Pieces > 0 {
		return p, true
	}
	return Pack{}, false
}

// OfShell reports whether an ingredient is an egg out of its shell or a part of
// one, rather than a carton's.
func OfShell(id string) bool { return id == Eggs || id == "egg_yolk" || id == "egg_white" }

// InGrams returns what the pack holds, g of what goes into the bowl: of eggs
// without their shell, of the given size. It is unknown for millilitres of
// what nobody knows the density of, and for pieces that nobody weighed.
func (p Pack) InGrams(in *ingredient.Ingredient, size egg.Size) ingredient.Cell {
	switch {
	case p.Grams > 0:
		return ingredient.Known(p.Grams)
	case p.ML > 0:
		if in.Density.Known {
			return ingredient.Known(p.ML * in.Density.Value)
		}
	case p.Pieces > 0 && p.PieceG > 0:
		return ingredient.Known(p.Pieces * p.PieceG)
	case p.Pieces > 0 && OfShell(in.ID) && size.EdibleG > 0:
		return ingredient.Known(p.Pieces * size.EdibleG)
	}
	return ingredient.Cell{}
}

// PerGram returns what a gram of in costs. The book's pack counts before what a
// line of an older design says of a kilogram: the one list that a maker keeps
// up to date beats copies of it. size is that of the design's eggs. Water that
// nobody priced comes from the tap, for nothing.
func (b Book) PerGram(in *ingredient.Ingredient, size egg.Size, perKG ingredient.Cell) ingredient.Cell {
	if p, ok := b.For(in.ID); ok {
		if g := p.InGrams(in, size); g.Known {
			return ingredient.Known(p.Price / g.Value)
		}
	}
	if perKG.Known {
		return ingredient.Known(perKG.Value / 1000)
	}
	if _, bottled := b.For(in.ID); in.ID == Tap && !bottled {
		return ingredient.Known(0)
	}
	return ingredient.Cell{}
}

// Equal reports whether both books say the same.
func (b Book) Equal(o Book) bool { return b.Currency == o.Currency && slices.Equal(b.packs, o.packs) }
