package coldview

import (
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// A Lever is a number of a kitchen that a hand moves.
type Lever struct {
	setting.Field[cold.Profile]
	From     float64 // its least
	Step     float64
	Decimals int
}

// LeverOf returns the lever of the setting at path. A path that no setting has is
// a slip of ours.
func LeverOf(path string, step float64) Lever {
	for _, f := range cold.Fields() {
		if f.Path != path {
			continue
		}
		l := Lever{Field: f, From: f.Min, Step: step}
		if f.Least > 0 {
			l.From = f.Least
		}
		if step < 1 {
			l.Decimals = 1
		}
		return l
	}
	panic("coldview: no setting of a kitchen: " + path)
}

// Value returns where the lever of k stands, to be read and set.
func (l Lever) Value(k *cold.Profile) *float64 { return l.At(k).(*float64) }

// An Option is one of a few choices, in words.
type Option struct{ Name, Value string }

// Vessels are what a phase freezes in.
func Vessels() []Option {
	return []Option{
		{say.T("In a shallow dish"), string(cold.FormDish)},
		{say.T("In a mixing bowl"), string(cold.FormBowl)},
		{say.T("In a lidded box"), string(cold.FormBox)},
	}
}

// UseVessel lets phases freeze in another vessel. It has a depth of its own until
// one is chosen.
func UseVessel(k *cold.Profile, form string) {
	if k.Layer.Form != cold.Form(form) {
		k.Layer.Form, k.Layer.DepthMM = cold.Form(form), 0
	}
}

// OwnDepth is the depth, mm, that a phase has in a vessel without one.
func (q Question) OwnDepth(a *cold.Answer) float64 { return q.Freezes(a).Vessel.HeightMM }

// The rules of stirring.
const (
	ByTheClock = "clock"
	ByTheEdge  = "edge"
)

// StirRules are when to stir.
func StirRules() []Option {
	return []Option{{say.T("Stir by the clock"), ByTheClock}, {say.T("Stir when the edge is icy"), ByTheEdge}}
}

// UseStirRule stirs by another rule.
func UseStirRule(k *cold.Profile, rule string) {
	k.Layer.StirEveryMinutes = 0
	if rule == ByTheClock {
		k.Layer.StirEveryMinutes = cold.Default().Layer.StirEveryMinutes
	}
}

// StirRule returns the rule that k stirs by.
func StirRule(k *cold.Profile) string {
	if k.Layer.StirEveryMinutes > 0 {
		return ByTheClock
	}
	return ByTheEdge
}

// TubShapes are the shapes of a tub.
func TubShapes() []Option {
	return []Option{
		{say.T("Round, about as high as wide"), string(design.ShapeRound)},
		{say.T("Round, wide and shallow"), string(design.ShapeShallow)},
		{say.T("Box, longer than wide"), string(design.ShapeRectangle)},
	}
}

// PlaceOf returns the place of k that a kind of measurement tells of.
func PlaceOf(k *cold.Profile, kind cold.MeasurementKind) *cold.Place {
	if kind == cold.ScoopedWell {
		return &k.Counter
	}
	return &k.Freezer
}

// Replaced keeps what each last calibration replaced, by kitchen and kind.
type Replaced map[replacedKey]cold.Place

type replacedKey struct {
	kitchen string
	kind    cold.MeasurementKind
}

// Remember keeps the place of k as it is now.
func (r Replaced) Remember(k cold.Profile, kind cold.MeasurementKind) {
	r[replacedKey{k.Name, kind}] = *PlaceOf(&k, kind)
}

// Has reports whether there is something to take back in the kitchen of that name.
func (r Replaced) Has(kitchen string, kind cold.MeasurementKind) bool {
	_, ok := r[replacedKey{kitchen, kind}]
	return ok
}

// Take returns what was replaced, and forgets it.
func (r Replaced) Take(kitchen string, kind cold.MeasurementKind) (cold.Place, bool) {
	key := replacedKey{kitchen, kind}
	p, ok := r[key]
	delete(r, key)
	return p, ok
}
