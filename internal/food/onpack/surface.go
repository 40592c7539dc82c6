package onpack

import "math"

// Tub is the outside of a tub, mm: round, straight or tapered, or a box with
// upright walls.
type Tub struct {
	TopMM, BottomMM float64 // outer diameters of a round tub
	LengthMM        float64 // of a box, over 0 only there
	BreadthMM       float64
	HeightMM        float64 // of the wall
}

// Box reports whether the tub has four walls.
func (t Tub) Box() bool { return t.LengthMM > 0 }

// SlantMM is the length of the wall from rim to base.
func (t Tub) SlantMM() float64 {
	if t.Box() {
		return t.HeightMM
	}
	return math.Hypot(t.HeightMM, (t.TopMM-t.BottomMM)/2)
}

// RoundMM is the mean way around the tub.
func (t Tub) RoundMM() float64 {
	if t.Box() {
		return 2 * (t.LengthMM + t.BreadthMM)
	}
	return math.Pi * (t.TopMM + t.BottomMM) / 2
}

// WallMM2 is the area of the wall.
func (t Tub) WallMM2() float64 { return t.RoundMM() * t.SlantMM() }

// LidMM2 is the area of the lid.
func (t Tub) LidMM2() float64 {
	if t.Box() {
		return t.LengthMM * t.BreadthMM
	}
	return math.Pi / 4 * t.TopMM * t.TopMM
}

// Sector returns the wall of a tapered tub rolled out: a ring's sector of inner
// and outer radius, mm, over an angle in degrees. Of a straight wall all are NaN.
func (t Tub) Sector() (inner, outer, degrees float64) {
	if t.Box() || t.TopMM == t.BottomMM {
		return math.NaN(), math.NaN(), math.NaN()
	}
	s := t.SlantMM()
	narrow, wide := min(t.TopMM, t.BottomMM), max(t.TopMM, t.BottomMM)
	inner = s * narrow / (wide - narrow)
	return inner, inner + s, math.Pi * (wide - narrow) / s * 180 / math.Pi
}

// The share of a round wall that is the principal display panel: 21 CFR
// 101.1(b).
const panelShare = 0.4

// PanelIn2 is the area of the US principal display panel in square inches: 40 %
// of height × circumference of a round tub (of a cone the mean circumference,
// read in a secondary page), the larger side of a box; 21 CFR 101.1.
func (t Tub) PanelIn2() float64 {
	if t.Box() {
		return t.LengthMM * t.HeightMM / mm2PerInch
	}
	return panelShare * t.HeightMM * t.RoundMM() / mm2PerInch
}

// LidIn2 is the area of the lid in square inches, if that is the principal
// display panel.
func (t Tub) LidIn2() float64 { return t.LidMM2() / mm2PerInch }

// LabelAreaIn2 is all that can bear a label, in square inches: the wall and the
// lid. 21 CFR 101.9(j)(13) asks whether it is 40 or less, or under 12.
func (t Tub) LabelAreaIn2() float64 { return (t.WallMM2() + t.LidMM2()) / mm2PerInch }

// LargestMM2 is the largest surface by our reading of Article 13: the whole
// wall of a round tub, the larger side of a box, or the lid if that is larger.
func (t Tub) LargestMM2() float64 {
	if t.Box() {
		return max(t.LengthMM*t.HeightMM, t.LidMM2())
	}
	return max(t.WallMM2(), t.LidMM2())
}

// The steps of Regulation (EU) No 1169/2011 in mm² of the largest surface.
const (
	smallLettersMM2 = 8000 // Article 13(3), Annex IV: under it 0.9 mm do
	noPanelMM2      = 2500 // Annex V, 18: under it no nutrition declaration
	fewWordsMM2     = 1000 // Article 16(2): under it name, allergens, quantity and date
)

// XHeightMM is the least height of a lower-case x outside the US.
func (t Tub) XHeightMM() float64 {
	if t.LargestMM2() < smallLettersMM2 {
		return 0.9
	}
	return 1.2
}

// NoPanel reports whether the tub is too small for a nutrition declaration to
// be due, Annex V, 18.
func (t Tub) NoPanel() bool { return t.LargestMM2() < noPanelMM2 }

// FewWords reports whether it is so small that name, allergens, quantity and
// date alone are due, Article 16(2).
func (t Tub) FewWords() bool { return t.LargestMM2() < fewWordsMM2 }
