package label

import "slices"

// Standard is a name of food that has limits.
type Standard struct {
	ID   string // in files, as in "frozen_custard"
	test func(*makeup) Name
}

// Standards lists them, in the order in which they are told. The caller must not
// change it.
var Standards = []Standard{
	{"ice_cream", iceCream}, {"frozen_custard", frozenCustard}, {"sherbet", sherbet}, {"water_ice", waterIce}, {"mellorine", mellorine},
	{"eu_dairy_ice_cream", euDairyIceCream}, {"eu_ice_cream", euIceCream},
	{"uk_ice_cream", ukIceCream}, {"uk_dairy_ice_cream", ukDairyIceCream}, {"uk_milk_ice", ukMilkIce},
}

// StandardOf returns the standard with that id.
func StandardOf(id string) (Standard, bool) {
	i := slices.IndexFunc(Standards, func(s Standard) bool { return s.ID == id })
	if i < 0 {
		return Standard{}, false
	}
	return Standards[i], true
}

// Of tests a food, all of it, against the limits of the name.
func (s Standard) Of(f *Food) Name {
	m := composition(f)
	return s.of(&m)
}

func (s Standard) of(m *makeup) Name {
	n := s.test(m)
	n.Met = true
	for _, l := range n.Limits {
		n.Met = n.Met && (l.Met || l.Judge)
	}
	return n
}

// ShortFraction returns by what share of its bound a limit is missed, negative with so much
// to spare. figure is false where the limit is no figure, or hangs on what is
// unknown.
func (l Limit) ShortFraction() (fraction float64, figure bool) {
	if l.Own == nil || l.Incomplete || l.bound == 0 {
		return 0, false
	}
	if fraction = (*l.Own - l.bound) / l.bound; l.least {
		fraction = -fraction
	}
	return fraction, true
}
