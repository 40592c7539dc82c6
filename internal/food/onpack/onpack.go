// Package onpack knows what else must stand on a tub beside what package label
// computes: the net quantity, a date, a lot, storage, the maker, in the
// languages of the place where it is sold, and how large their letters must be.
//
// Volumes are mL, lengths mm and areas mm² unless a name says otherwise. Every
// rule bears its section and how it was read. All of it is our reading; local
// code and licensed practice decide.
package onpack

import (
	"slices"
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/form/flaw"
)

// Place is where a tub is sold.
type Place string

// The places. EU stands for a member state of which no rule of its own was read.
const (
	US Place = "us"
	EU Place = "eu"
	DE Place = "de"
	IE Place = "ie"
	IT Place = "it"
	UK Place = "uk"
)

// Places are all of them.
func Places() []Place { return []Place{US, EU, DE, IE, IT, UK} }

// Region is the region whose rules a place follows in package label.
func (p Place) Region() label.Region {
	if p == US {
		return label.US
	}
	return label.EU
}

// Language is the usual language of a place, as its two letters of ISO 639.
func (p Place) Language() string {
	switch p {
	case DE:
		return "de"
	case IT:
		return "it"
	}
	return "en"
}

// Sale is how a tub reaches the one who eats it.
type Sale string

// The ways of sale.
const (
	Shop    Sale = "shop"    // by a shop, or wholesale: prepacked food
	Stall   Sale = "stall"   // by its maker, packed before the order
	Scooped Sale = "scooped" // by its maker, to order
)

// Sales are all of them.
func Sales() []Sale { return []Sale{Shop, Stall, Scooped} }

// ParsePlace reads a place; the error names those there are.
func ParsePlace(s string) (Place, error) { return among("place", s, Places()) }

// ParseSale reads a way of sale; the error names those there are.
func ParseSale(s string) (Sale, error) { return among("sale", s, Sales()) }

func among[T ~string](what, s string, all []T) (T, error) {
	if slices.Contains(all, T(s)) {
		return T(s), nil
	}
	words := make([]string, len(all))
	for i, a := range all {
		words[i] = string(a)
	}
	return "", flaw.New("%s is not one of %s", flaw.Word(what), strings.Join(words, ", "))
}
