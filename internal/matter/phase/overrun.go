package phase

import "math"

// OverrunFraction returns the overrun, volume of air per volume of mix, of
// a product of which the same cup holds productG grams where it held mixG grams
// of unaerated mix. Both must be positive; otherwise it returns NaN. A product
// heavier than its mix has a negative overrun: it was mismeasured, or cooled.
//
//	o = m_mix/m_product − 1
//
// Source: H. D. Goff, University of Guelph, "Figuring package overrun by
// weight, no particulates". Check there: 1090 g and 560 g, 94.6 %.
func OverrunFraction(mixG, productG float64) float64 {
	if !(mixG > 0 && productG > 0) {
		return math.NaN()
	}
	return mixG/productG - 1
}
