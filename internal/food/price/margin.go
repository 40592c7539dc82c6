package price

import "math"

// Margin returns what of a selling price is left once the cost is paid, as a
// share of the price: the trade's gross margin (common practice, no source).
// Both are without VAT. It is below 0 for a sale at a loss, and NaN for a
// price that is not above 0.
func Margin(cost, selling float64) float64 {
	if !(selling > 0) {
		return math.NaN()
	}
	return (selling - cost) / selling
}

// Selling returns the price, without VAT, that leaves a margin, which is below
// 1; NaN for others.
func Selling(cost, margin float64) float64 {
	if !(margin < 1) {
		return math.NaN()
	}
	return cost / (1 - margin)
}
