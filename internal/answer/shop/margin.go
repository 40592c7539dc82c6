package shop

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/price"
)

// Offer is a selling price of a tub and the margin it leaves, as a share of the
// price. VAT, work, tubs and power are in neither.
type Offer struct{ Margin, Price float64 }

// ladder is the margins of Offers: round figures around what the trade aims for
// (common practice, no source).
var ladder = [...]float64{0.5, 0.6, 0.7, 0.8}

// Offers returns what a tub would sell for at some margins, none where its cost is
// not known at all. Where some ingredient has no price, the prices are the least
// that leave these margins.
func Offers(c *model.Cost) []Offer {
	if !c.Priced || !(c.PerTub >= 0) {
		return nil
	}
	out := make([]Offer, len(ladder))
	for i, m := range ladder {
		out[i] = Offer{m, price.Selling(c.PerTub, m)}
	}
	return out
}
