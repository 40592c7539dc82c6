package model

import (
	"math"
	"slices"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/work/design"
)

// Priced returns m with a maker's prices, which its results count with.
func (m *Model) Priced(b price.Book) *Model {
	priced := *m
	priced.prices = b
	return &priced
}

// Prices returns the prices that m counts with.
func (m *Model) Prices() price.Book { return m.prices }

// setPrices gives each line what a gram of it costs. A line that says no price
// per kg has that of another line of the same ingredient.
func setPrices(d design.Design, lines []BatchLine, b price.Book) {
	size, _ := egg.Find(d.Eggs.System, d.Eggs.Size) // no size: no price by the egg
	var said map[string]ingredient.Cell
	for _, l := range lines {
		if p := d.Lines(l.Part)[l.Index].Price; p.Known && !said[l.Ingredient.ID].Known {
			if said == nil {
				said = map[string]ingredient.Cell{}
			}
			said[l.Ingredient.ID] = p
		}
	}
	for i := range lines {
		l := &lines[i]
		perKG := d.Lines(l.Part)[l.Index].Price
		if !perKG.Known {
			perKG = said[l.Ingredient.ID]
		}
		l.PerGram = b.PerGram(l.Ingredient, size, perKG)
	}
}

// costOf adds up what the lines of a batch cost.
func costOf(d design.Design, r *Result, b price.Book) Cost {
	setPrices(d, r.Lines, b)
	inTubs := 0.0 // what is left over is paid for, but by no tub
	c := Cost{Currency: b.Currency, PerTub: math.NaN(), Per100G: math.NaN(), PerServing: math.NaN()}
	for _, l := range r.Lines {
		switch {
		case l.PerGram.Known:
			if l.Ingredient.ID == price.Tap && l.PerGram.Value == 0 {
				c.Tap = c.Tap || l.Grams > 0
			} else {
				c.Priced = true
			}
			c.Known += l.Grams * l.PerGram.Value
			inTubs += l.InTubsG * l.PerGram.Value
		case l.Grams > 0 && !slices.Contains(c.Missing, l.Ingredient):
			c.Missing = append(c.Missing, l.Ingredient)
			if _, priced := b.For(l.Ingredient.ID); priced {
				c.Unweighed = append(c.Unweighed, l.Ingredient)
			}
		}
	}
	if r.Blend.TubsFilled > 0 {
		c.PerTub = inTubs / r.Blend.TubsFilled
		c.Per100G = 100 * inTubs / r.Blend.MassG
		c.PerServing = c.Per100G * r.Nutrition.ServingG / 100
	}
	return c
}
