// Package egg turns counted eggs, yolks and whites into grams by size class.
//
// The masses are those of an average egg of the class; a single egg is
// lighter or heavier, so weigh when it matters.
package egg

import (
	"math"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
)

// Size is a size class and what an average egg of it holds, in g.
type Size struct {
	System string // "US" or "EU"
	Name   string // as the class is called, such as "large" or "M"

	InShellG, EdibleG, YolkG, WhiteG float64

	// EdibleCalculated and PartsCalculated tell figures that we scaled from
	// those that the source gives.
	EdibleCalculated, PartsCalculated bool
	How                               string // where the figures come from
}

// The US classes are minimum net weights per dozen (US Standards, Grades, and
// Weight Classes for Shell Eggs, AMS 56): jumbo 30 oz, extra large 27, large
// 24, medium 21, small 18, peewee 15, at 28.3495 g and by the dozenth. The EU
// classes are those of Commission Regulation (EC) No 589/2008, Article 4 (S
// under 53 g, M to 63, L to 73, XL above; read in secondary pages), taken at
// their middle, 48 g and 76 g for the open ones.
//
// Edible: USDA SR28 NDB 01123, household weights, or in shell × 0.88 (its
// refuse, 12 %). Yolk and white of large: NDB 01125 and 01124; of the others
// edible × 0.34 and × 0.66, the ratio of large. That is a scaling, no
// measurement: the yolk's share falls a little as eggs grow.
const (
	weighed = "USDA SR28 NDB 01123"
	shell   = "calculated: in shell × 0.88 (refuse of USDA SR28 NDB 01123)"
	parts   = "; yolk and white calculated: edible × 0.34 and × 0.66, as in a large egg"
)

var sizes = []Size{
	{"US", "peewee", 35.4, 31.2, 10.6, 20.6, true, true, shell + parts},
	{"US", "small", 42.5, 38, 12.9, 25.1, false, true, weighed + parts},
	{"US", "medium", 49.6, 44, 15, 29, false, true, weighed + parts},
	{"US", "large", 56.7, 50, 17, 33, false, false, weighed + ", 01125 and 01124"},
	{"US", "extra large", 63.8, 56, 19, 37, false, true, weighed + parts},
	{"US", "jumbo", 70.9, 63, 21.4, 41.6, false, true, weighed + parts},
	{"EU", "S", 48, 42.2, 14.4, 27.9, true, true, shell + parts},
	{"EU", "M", 58, 51, 17.4, 33.7, true, true, shell + parts},
	{"EU", "L", 68, 59.8, 20.3, 39.5, true, true, shell + parts},
	{"EU", "XL", 76, 66.9, 22.7, 44.1, true, true, shell + parts},
}

// How long what is left of raw eggs keeps, covered: whites and yolks KeepsDays in
// the refrigerator, whites FrozenMonths frozen. Yolk by itself sets firm when it
// freezes, so no time is given for it.
//
// Source: USDA Food Safety and Inspection Service, egg storage chart, as
// reprinted in 2018.
var KeepsDays = [2]float64{2, 4}

// FrozenMonths is of whites only.
const FrozenMonths = 12

// Systems returns the names of the size systems.
func Systems() []string { return []string{"US", "EU"} }

// Sizes returns the classes of a system from small to large, none for a
// system that is not known.
func Sizes(system string) []Size {
	var out []Size
	for _, s := range sizes {
		if strings.EqualFold(s.System, system) {
			out = append(out, s)
		}
	}
	return out
}

// SizeError says that no such class exists.
type SizeError struct{ System, Size string }

// Words are what is wrong.
func (e *SizeError) Words() error {
	if len(Sizes(e.System)) == 0 {
		return flaw.New("egg sizes of %s are not known; known are US and EU", echo.Quoted(e.System))
	}
	var names []string
	for _, s := range Sizes(e.System) {
		names = append(names, s.Name)
	}
	return flaw.New("no %s egg size is called %s; known are %s", e.System, echo.Quoted(e.Size), strings.Join(names, ", "))
}

func (e *SizeError) Error() string { return e.Words().Error() }

// Find returns the class of that name, letter case aside, or a *SizeError.
func Find(system, size string) (Size, error) {
	for i := range sizes { // a search asks thousands of times
		if s := &sizes[i]; strings.EqualFold(s.System, system) && strings.EqualFold(s.Name, size) {
			return *s, nil
		}
	}
	return Size{}, &SizeError{system, size}
}

// Grams returns the g of count "eggs" (without shell), "yolks" or "whites" of
// a class. The count may be a fraction, from 0 up. An unknown class gives a
// *SizeError.
func Grams(system, size, part string, count float64) (float64, error) {
	s, err := Find(system, size)
	if err != nil {
		return 0, err
	}
	if !(count >= 0) || math.IsInf(count, 1) {
		return 0, flaw.New("%v %s cannot be counted out", count, flaw.Word(part))
	}
	switch part {
	case "eggs":
		return count * s.EdibleG, nil
	case "yolks":
		return count * s.YolkG, nil
	case "whites":
		return count * s.WhiteG, nil
	}
	return 0, flaw.New("%s is no part of an egg; known are eggs, yolks, whites", echo.Quoted(string(part)))
}
