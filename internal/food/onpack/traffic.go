package onpack

import (
	"fmt"
	"math"
)

// A Colour of the UK's voluntary front of pack.
type Colour string

// The colours. They are words too: nothing is told by colour alone.
const (
	Green Colour = "green"
	Amber Colour = "amber"
	Red   Colour = "red"
)

// FrontFigure is one figure of the front of pack.
type FrontFigure struct {
	Nutrient  string // fat, saturates, sugars, salt
	Per100G   float64
	PortionG  float64 // g of it in a portion
	Colour    Colour
	RIPercent int // of an adult's reference intake, of the portion
}

// thresholds per 100 g and, for portions over 100 g, per portion: the 2013 UK
// guidance, read in secondary pages that agree. Reference intakes: Regulation
// (EU) No 1169/2011, Annex XIII.
var thresholds = map[string]struct{ low, high, portion, intake float64 }{
	"fat":       {3, 17.5, 21, 70},
	"saturates": {1.5, 5, 6, 20},
	"sugars":    {5, 22.5, 27, 90},
	"salt":      {0.3, 1.5, 1.8, 6},
}

// FrontNutrients are the nutrients that have a colour, in their order.
func FrontNutrients() []string { return []string{"fat", "saturates", "sugars", "salt"} }

// Front returns the figure of a nutrient from what is declared per 100 g, g, and
// the portion, g. ok is false for a nutrient that has no colour.
func Front(nutrient string, per100G, portionG float64) (f FrontFigure, ok bool) {
	t, ok := thresholds[nutrient]
	if !ok {
		return FrontFigure{}, false
	}
	f = FrontFigure{Nutrient: nutrient, Per100G: per100G, PortionG: per100G * portionG / 100, Colour: Amber}
	over := func(v, limit float64) bool { return v > limit+1e-9 }
	switch {
	case over(per100G, t.high), portionG > 100 && over(f.PortionG, t.portion):
		f.Colour = Red
	case !over(per100G, t.low):
		f.Colour = Green
	}
	f.RIPercent = int(math.Round(100*f.PortionG/t.intake + 1e-9))
	return f, true
}

// RI is the share of the reference intake as it is printed.
func (f FrontFigure) RI() string { return fmt.Sprintf("%d%%", f.RIPercent) }
