// Package tub gives the tub of a design its measurements: a maker knows what
// it holds and roughly what it looks like, and the ripple and the cold need
// millimetres.
//
// The proportions are common practice, no source. Walls are upright and thin.
package tub

import (
	"math"

	"ripplewright/internal/work/design"
)

// The proportions that stand behind the shapes' names.
const (
	shallowRatio = 3.0 // diameter over height
	boxRatio     = 1.5 // length over breadth, and breadth over height
	boxCorner    = 0.1 // radius of an upright corner over the breadth
)

// Dimensions are the inside of one tub, in mm.
type Dimensions struct {
	Round     bool
	LengthMM  float64 // the longer side; the diameter of a round tub
	BreadthMM float64 // the shorter side; the diameter of a round tub
	CornerMM  float64 // radius of the upright corners; half the diameter of a round tub
	HeightMM  float64 // to the brim
	FillMM    float64 // height of the filling
}

// Size returns the inside of one tub of t: the volume to the brim fixes the
// height, the fill that of the filling. An unknown shape is taken as round;
// design.Validate refuses it before.
func Size(t design.Tubs) Dimensions {
	mm3 := t.VolumeML * 1000
	var d Dimensions
	switch t.Shape {
	case design.ShapeRectangle:
		// boxRatio·b · b · b/boxRatio, less what the four corners lack.
		b := math.Cbrt(mm3 / (1 - (4-math.Pi)*boxCorner*boxCorner/boxRatio))
		d = Dimensions{LengthMM: boxRatio * b, BreadthMM: b, CornerMM: boxCorner * b, HeightMM: b / boxRatio}
	case design.ShapeShallow:
		d = cylinder(mm3, shallowRatio)
	default:
		d = cylinder(mm3, 1)
	}
	d.FillMM = d.HeightMM * t.FillPercent / 100
	return d
}

// cylinder returns that of the volume whose diameter is ratio times its height.
func cylinder(mm3, ratio float64) Dimensions {
	across := math.Cbrt(4 / math.Pi * ratio * mm3)
	return Dimensions{Round: true, LengthMM: across, BreadthMM: across, CornerMM: across / 2, HeightMM: across / ratio}
}

// BaseMM2 returns the area of the bottom, mm².
func (d Dimensions) BaseMM2() float64 {
	return d.LengthMM*d.BreadthMM - (4-math.Pi)*d.CornerMM*d.CornerMM
}
