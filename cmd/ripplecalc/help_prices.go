package main

import (
	"fmt"
	"strings"

	"ripplewright/internal/food/price"
	"ripplewright/internal/show/say"
)

// helpPrices tells the form of the maker's prices, from the table that checks it.
func helpPrices() string {
	var b strings.Builder
	b.WriteString(say.T(`Your prices stand in prices.yaml in ripplewright's part of the user's configuration
folder, beside your own ingredients, and hold for every design:

version: 1
currency: €
prices:
  - {ingredient: sugar, price: 1.29, pack_g: 1000}
  - {ingredient: milk_whole, price: 1.15, pack_ml: 1000}
  - {ingredient: egg_whole, price: 3.20, pieces: 12, note: at the farm}

`))
	for _, f := range price.Fields() {
		about := say.Of(f.About)
		if f.Unit != "" {
			about += ", " + f.Unit
		}
		fmt.Fprintf(&b, "  %-12s%s\n", f.Path, about)
	}
	b.WriteString(say.T(`
A pack holds grams, millilitres or pieces, one of them. Millilitres need an
ingredient whose density is known. Eggs are priced by the piece as egg_whole; yolk
and white then cost what they weigh of one. A price here counts before a line's
price_per_kg. An ingredient without a price is unknown, not free: totals are then
"at least". Reading is strict: an error names the file, the line and the key.
`))
	return b.String()
}
