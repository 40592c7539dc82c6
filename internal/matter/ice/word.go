package ice

import "math"

// Word is a step of the word scale for the tongue.
type Word struct {
	BelowUM float64 // µm; the step reaches from the one before to here
	Name    string
}

// Words is the word scale. Normal ice cream has 30 to 50 µm, and above 100 it is
// icy and gritty (chapter Ice Cream, repository of Wageningen University,
// abstract); below about 50 it is smooth and creamy (Hartel 2019, Chem. Eng.
// Prog., May); a trained panel told 57 from 75 µm (Sinclair et al. 2025,
// Exploration of Foods and Foodomics, doi 10.37349/eff.2025.1010104).
var Words = [...]Word{{30, "fine"}, {50, "smooth"}, {75, "slightly coarse"}, {math.Inf(1), "icy"}}

// WordFor returns the place in Words of a mean diameter in µm.
func WordFor(um float64) int {
	for i, w := range Words {
		if um < w.BelowUM {
			return i
		}
	}
	return len(Words) - 1
}

// Size is a mean diameter, µm, with its band.
type Size struct{ ValueUM, LowUM, HighUM float64 }

// Doubt is how far a size that a process made may be off: by Finer below and by
// Coarser above, both factors of 1 or more.
type Doubt struct{ FinerFactor, CoarserFactor float64 }

// Unbroken is the doubt of a phase that was beaten, or needed no beating: the
// seed's size, the freezing time and the beater together, an estimate.
var Unbroken = Doubt{1.35, 1.35}

// Banded returns the diameter of made + stored with its band: made is what the
// process left, known to the doubt; stored what storage added, to Uncertain.
func Banded(madeUM3, storedUM3 float64, doubt Doubt) Size {
	d := math.Cbrt(madeUM3)
	cube := func(x float64) float64 { return x * x * x }
	return Size{
		ValueUM: math.Cbrt(madeUM3 + storedUM3),
		LowUM:   math.Cbrt(cube(d/doubt.FinerFactor) + storedUM3/Uncertain),
		HighUM:  math.Cbrt(cube(d*doubt.CoarserFactor) + storedUM3*Uncertain),
	}
}
