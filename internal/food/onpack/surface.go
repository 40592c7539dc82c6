package onpack

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"ripplewright/internal/form/flaw"
)

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
func (t Tub) Sector() (innerMM, outerMM, degrees float64) {
	if t.Box() || t.TopMM == t.BottomMM {
		return math.NaN(), math.NaN(), math.NaN()
	}
	s := t.SlantMM()
	narrow, wide := min(t.TopMM, t.BottomMM), max(t.TopMM, t.BottomMM)
	innerMM = s * narrow / (wide - narrow)
	return innerMM, innerMM + s, math.Pi * (wide - narrow) / s * 180 / math.Pi
}

// OutsideML is the volume of the tub by its outside, mL: more than it can ever hold
// up to its rim.
func (t Tub) OutsideML() float64 {
	if t.Box() {
		return t.LengthMM * t.BreadthMM * t.HeightMM / mm3PerML
	}
	return math.Pi / 12 * t.HeightMM * (t.TopMM*t.TopMM + t.TopMM*t.BottomMM + t.BottomMM*t.BottomMM) / mm3PerML
}

const mm3PerML = 1000

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

// tubs are invented round tubs, none a product, by the names that a maker may
// choose: top and bottom diameter and height of the wall, mm.
var tubs = []struct {
	name string
	tub  Tub
}{
	{"cup 120 mL", Tub{TopMM: 64, BottomMM: 60, HeightMM: 40}},
	{"tub 350 mL", Tub{TopMM: 95, BottomMM: 80, HeightMM: 60}},
	{"pint of the project", Tub{TopMM: 85, BottomMM: 85, HeightMM: 83.4}},
	{"tub 500 mL", Tub{TopMM: 97, BottomMM: 80, HeightMM: 83}},
	{"tub 1 L", Tub{TopMM: 118, BottomMM: 100, HeightMM: 112}},
	{"tub 2 L", Tub{TopMM: 150, BottomMM: 130, HeightMM: 130}},
	{"tiny 40 mL", Tub{TopMM: 46, BottomMM: 40, HeightMM: 28}},
}

// TubNames are the tubs that TubNamed knows.
func TubNames() []string {
	var out []string
	for _, t := range tubs {
		out = append(out, t.name)
	}
	return out
}

// TubNamed returns a tub by its name, spaces and capitals aside.
func TubNamed(name string) (Tub, error) {
	bare := func(s string) string {
		return strings.Map(func(r rune) rune {
			if strings.ContainsRune(" -_", r) {
				return -1
			}
			return unicode.ToLower(r)
		}, s)
	}
	for _, t := range tubs {
		if bare(t.name) == bare(name) || bare(t.name) == bare(name)+"oftheproject" {
			return t.tub, nil
		}
	}
	return Tub{}, flaw.New("is not one of %s", strings.Join(TubNames(), ", "))
}

// The sizes of tubs that are taken for one, mm.
const leastTubMM, mostTubMM = 15, 600

// ParseTub reads the outside of a tub in mm: "97,80,83" for a round one's top and
// bottom diameter and height, or "box:120,80,60" for length, breadth and height.
func ParseTub(s string) (Tub, error) {
	rest, box := strings.CutPrefix(strings.ToLower(strings.TrimSpace(s)), "box:")
	parts := strings.Split(rest, ",")
	var mm [3]float64
	ok := len(parts) == 3
	for i := 0; ok && i < 3; i++ {
		v, err := strconv.ParseFloat(strings.TrimSpace(parts[i]), 64)
		ok = err == nil && v >= leastTubMM && v <= mostTubMM
		mm[i] = v
	}
	switch {
	case !ok:
		return Tub{}, flaw.New(`a tub is three sizes in mm from 15 to 600: top, bottom and height, as 97,80,83; or "box:" and length, breadth, height`)
	case box:
		return Tub{LengthMM: max(mm[0], mm[1]), BreadthMM: min(mm[0], mm[1]), HeightMM: mm[2]}, nil
	}
	return Tub{TopMM: mm[0], BottomMM: mm[1], HeightMM: mm[2]}, nil
}
