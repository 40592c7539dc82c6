package model

import (
	"math"
	"slices"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// costOf adds up the prices of d's lines. A line without a price has that of
// another line of the same ingredient.
func costOf(d design.Design, lines []Line, tubs float64) Cost {
	prices := map[string]ingredient.Cell{}
	for _, l := range lines {
		if p := d.Lines(l.Part)[l.Index].Price; p.Known && !prices[l.Ingredient.ID].Known {
			prices[l.Ingredient.ID] = p
		}
	}
	inTubs := 0.0 // what is left over is paid for, but by no tub
	c := Cost{PerTub: math.NaN(), Priced: len(prices) > 0}
	for _, l := range lines {
		price := d.Lines(l.Part)[l.Index].Price
		if !price.Known {
			price = prices[l.Ingredient.ID]
		}
		switch {
		case price.Known:
			c.Known += l.Grams * price.Value / 1000
			inTubs += l.InTubs * price.Value / 1000
		case l.Grams > 0 && !slices.Contains(c.Missing, l.Ingredient):
			c.Missing = append(c.Missing, l.Ingredient)
		}
	}
	if tubs > 0 {
		c.PerTub = inTubs / tubs
	}
	return c
}
