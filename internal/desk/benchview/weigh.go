// Package benchview is what the bench does with lines and weights, without a toolkit.
package benchview

import (
	"math"

	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/say"
)

// CupOverrun is the overrun, %, that the weights of a cup tell, g, and the words to
// say it; NaN where they tell none, or more than most.
func CupOverrun(s say.Style, before, after, empty, most float64) (float64, string) {
	v := math.Round(100 * phase.OverrunFraction(before-empty, after-empty))
	switch {
	case math.IsNaN(before) || math.IsNaN(after) || math.IsNaN(empty):
		return math.NaN(), say.TwoTellOverrun.String()
	case math.IsNaN(v):
		return v, say.MoreThanCup.String()
	case v < 0:
		return math.NaN(), say.CupGained.String()
	case v > most:
		return math.NaN(), say.TooMuchOverrun(s, v, most)
	}
	return v, say.Overrun(s, v)
}

// StoveLoss is the loss, % of the mass put in, that the weights of a pan tell, g.
func StoveLoss(s say.Style, before, after, empty, most float64) (float64, string) {
	v := math.Round(1000*(before-after)/(before-empty)) / 10
	switch {
	case math.IsNaN(before) || math.IsNaN(after) || math.IsNaN(empty):
		return math.NaN(), say.TwoTellLoss.String()
	case before <= empty || after <= empty:
		return math.NaN(), say.MoreThanPan.String()
	case v < 0:
		return math.NaN(), say.PanGained.String()
	case v > most:
		return math.NaN(), say.TooMuchLoss(s, v, most)
	}
	return v, say.StoveLoss(s, v)
}

// SyrupWeight is the weight of a syrup, g, in its pan.
func SyrupWeight(s say.Style, pan, empty, most float64) (float64, string) {
	switch v := pan - empty; {
	case math.IsNaN(v):
		return v, say.OneTellsSyrup.String()
	case v < 0 || v > most:
		return math.NaN(), say.EmptyHeavier.String()
	case v == 0:
		return v, say.NotWeighed.String()
	default:
		return v, say.SyrupWeight(s, v)
	}
}
