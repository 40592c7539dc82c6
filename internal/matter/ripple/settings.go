package ripple

import (
	"fmt"
	"math"
)

// The limits of Settings.
const (
	MaxStrokes = 24  // beyond it nothing is left to see, and air loss is not modelled
	MinSizeMM  = 30  // of a tub's length and breadth
	MinFillMM  = 5   // of the filling: a handle is as wide, and stirs no flatter one
	MaxSizeMM  = 600 // of any side of a cut
	MinWidthMM = 5   // of a handle
	MaxWidthMM = 40  // of a handle
)

// Settings say how the tub was filled and stirred.
type Settings struct {
	Tub          Tub
	View         View
	FoamFraction float64  // of the volume, 0 to 1
	Layout       Layout   // before the first stroke
	Strokes      []Stroke // in order, at most MaxStrokes; see Sequence
	Seed         uint64   // where the dollops fall and the strokes go; another seed is another tub
}

// FieldError is a value of Settings that cannot be drawn.
type FieldError struct {
	Field string // path in Settings, such as "Strokes[3].WidthMM"
	Value float64
	Want  string
}

func (e *FieldError) Error() string {
	return fmt.Sprintf("ripple: %s is %g, want %s", e.Field, e.Value, e.Want)
}

// Validate returns a *FieldError for the first value that cannot be drawn.
func (s Settings) Validate() error {
	size := fmt.Sprintf("%d to %d mm", MinSizeMM, MaxSizeMM)
	checks := []fieldCheck{
		{"Tub.LengthMM", s.Tub.LengthMM, MinSizeMM, MaxSizeMM, size},
		{"Tub.BreadthMM", s.Tub.BreadthMM, MinSizeMM, MaxSizeMM, size},
		{"Tub.HeightMM", s.Tub.HeightMM, MinFillMM, MaxSizeMM, fmt.Sprintf("%d to %d mm", MinFillMM, MaxSizeMM)},
		{"Tub.CornerMM", s.Tub.CornerMM, 0, math.Min(s.Tub.LengthMM, s.Tub.BreadthMM) / 2, "0 to half the shorter side"},
		{"View", float64(s.View), 0, float64(Top), "Side or Top"},
		{"FoamShare", s.FoamFraction, 0, 1, "0 to 1"},
		{"Layout", float64(s.Layout), 0, float64(len(layoutNames) - 1), "a Layout of this package"},
		{"Strokes", float64(len(s.Strokes)), 0, MaxStrokes, fmt.Sprintf("at most %d strokes", MaxStrokes)},
	}
	for i, k := range s.Strokes {
		at := fmt.Sprintf("Strokes[%d].", i)
		checks = append(checks,
			fieldCheck{at + "Kind", float64(k.Kind), 0, float64(len(kindNames) - 1), "a Kind of this package"},
			fieldCheck{at + "DepthMM", k.DepthMM, 0, MaxSizeMM, "0 (to the bottom) to 600 mm"})
		if k.WidthMM != 0 {
			checks = append(checks, fieldCheck{at + "WidthMM", k.WidthMM, MinWidthMM, MaxWidthMM,
				fmt.Sprintf("0 (%g) or %d to %d mm", defaultWidthMM, MinWidthMM, MaxWidthMM)})
		}
	}
	for _, c := range checks {
		if !(c.value >= c.lo && c.value <= c.hi) { // also catches NaN
			return &FieldError{c.field, c.value, c.want}
		}
	}
	return nil
}

type fieldCheck struct {
	field         string
	value, lo, hi float64
	want          string
}
