package cold

import (
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
)

// Profile is a maker's kitchen as the cold sees it. Designs name one and share
// it. Start from Default: the zero Profile is no kitchen.
type Profile struct {
	Name  string
	About string

	Freezer      Place
	SwingK       float64 // the freezer's air goes this far up and down, K
	Openings     float64 // of its door, a day
	Counter      Place
	Refrigerator Place
	Package      Package
	Layer        Layer

	Stove          Stove
	Bowl           Bowl
	FreezerL       float64
	FreezerRatedKG float64 // kg from room temperature in 24 h; 0: by its litres
	FreeShelfCM2   float64
	Churn          Churn
	Cook           Cook

	Learnt Learnt
}

// Learnt is what batches made here have taught that no setting of a kitchen says. No
// file of kitchens keeps it: a notebook teaches it anew. The zero Learnt is nothing.
type Learnt struct {
	IceBatches      int     // of which somebody said how icy they ate
	IceFactor       float64 // on the diameter of crystals; 0: not learnt
	IceLeftFraction float64 // of the logarithm of their band, where IceFactor is learnt
}

// Churn is what freezes the custard while it turns.
type Churn struct {
	BowlML float64 // 0: no churn
	Kind   string  // "any", where nobody said; "tray", "frozen_bowl" or "batch_freezer"
}

// Turns reports whether the custard turns while it freezes: a churn of a named kind,
// or, where nobody said, one with a bowl.
func (c Churn) Turns() bool {
	switch c.Kind {
	case "frozen_bowl", "batch_freezer":
		return true
	case "tray":
		return false
	}
	return c.BowlML > 0
}

// Cook is who works, and when.
type Cook struct {
	FromHours, ToHours float64 // hours of the day between which hands are there; ToHours over 24: past midnight
	WashUpMinutes      float64 // to wash beaters and bowl between two uses
}

// Stove is pan, flame and thermometer.
type Stove struct {
	PanMM         float64
	FlameW        float64
	FlameMeasured string  // the timed boil that FlameW rests on; "": none
	ProbeBoilsC   float64 // 0: never checked
}

// Bowl is what the foam is whisked in, and how the hot syrup gets there.
type Bowl struct {
	Grams    float64
	Material string // "steel", "glass" or "plastic"
	WhitesC  float64
	Pour     string // "stream" or "at_once"
	Tool     string // that beats the foam: "hand_mixer", "stand_mixer", "whisk" or "churn"
}

// Package is what lies between the food and the air.
type Package struct {
	WallM2KPerW float64 // thickness/conductivity, m² K/W
	LidM2KPerW  float64 // lid and head space, m² K/W
}

// Form is what a phase freezes in before it goes into the tubs.
type Form string

// The forms.
const (
	FormDish Form = "dish" // open, shallow
	FormBowl Form = "bowl" // open, about a third as deep as wide
	FormBox  Form = "box"  // with a lid
)

// Layer is how a phase is still-frozen.
type Layer struct {
	Form             Form
	DepthMM          float64 // 0: the form's own, see layerVessel
	StartC           float64 // °C, as it goes in
	StirEveryMinutes float64 // 0: when the edge is icy
	EdgeIcePercent   float64 // of the edge's water, at which to stir then
	ShelfWPerM2K     float64 // below, W/(m² K); 0: as the freezer's shelf
	DishCM2          float64 // floor of one dish
	Beating          Beating // of the custard in its dish; a churn does without
}

// Beating is what keeps the custard's crystals apart in a dish.
type Beating string

// The beatings.
const (
	ByHand Beating = "hand" // at every stir
	Never  Beating = "none" // left alone
)

// Default returns the ordinary kitchen, "Home freezer".
//
// Resistances: 0.5 mm board of 0.1 W/(m K); lid with 5 mm of air that conducts
// and radiates. Both estimates. Pan, bowl, dish and shelf are common household
// sizes, the flame a gas ring's small burner at about half of its heat, the
// freezer of 100 L, opened four times a day, the hours of an ordinary day: common
// practice, no source.
func Default() Profile {
	return Profile{
		Name:         "Home freezer",
		About:        "an upright freezer without a fan, shelves of wire or plastic",
		Freezer:      Place{AirC: -18, Factor: 1},
		SwingK:       2,
		Openings:     4,
		Counter:      Place{AirC: 22, HumidityPercent: 50, Factor: 1},
		Refrigerator: Place{AirC: 4, HumidityPercent: 60, Factor: 1},
		Package:      Package{WallM2KPerW: 0.005, LidM2KPerW: 0.13},
		Layer:        Layer{Form: FormDish, DepthMM: 25, StartC: 4, StirEveryMinutes: 30, EdgeIcePercent: 40, DishCM2: 500, Beating: ByHand},
		Stove:        Stove{PanMM: 160, FlameW: 600},
		Bowl:         Bowl{Grams: 600, Material: "steel", WhitesC: 20, Pour: "stream", Tool: "hand_mixer"},
		Churn:        Churn{Kind: "any"},
		Cook:         Cook{FromHours: 7, ToHours: 22.5, WashUpMinutes: 5},

		FreezerL: 100, FreeShelfCM2: 1400,
	}
}

// BuiltIn returns the kitchens that need no file. The first is Default.
//
// Coefficients: fan 15 to 25, blast cabinet 25 to 50, cold metal shelf 40 to
// 100 W/(m² K), all from memory. Swings are estimates.
func BuiltIn() []Profile {
	home := Default()
	fan := Default()
	fan.Name, fan.About = "Fan freezer", "a frost-free freezer whose fan moves the air"
	fan.Freezer.CoefficientWPerM2K, fan.SwingK = 20, 3
	shelf := Default()
	shelf.Name, shelf.About = "Metal shelf", "still air, tubs and dishes on a metal shelf that is itself cooled"
	shelf.Freezer.ShelfWPerM2K = 40
	chest := Default()
	chest.Name, chest.About = "Chest on its cold floor", "a chest freezer, colder and steadier, tubs on its floor"
	chest.Freezer.AirC, chest.Freezer.ShelfWPerM2K, chest.SwingK = -20, 40, 1
	blast := Default()
	blast.Name, blast.About = "Blast cabinet", "fast cold air, as the trade hardens; storage there as well"
	blast.Freezer.AirC, blast.Freezer.CoefficientWPerM2K, blast.SwingK = -30, 30, 2
	stall := Default()
	stall.Name, stall.About = "Summer stall", "the home freezer's tubs, served out of doors in the warm"
	stall.Counter.AirC, stall.Counter.HumidityPercent, stall.Counter.CoefficientWPerM2K = 28, 60, 20
	return []Profile{home, fan, shelf, chest, blast, stall}
}

// With returns the built-in kitchens and the maker's own; an own one takes the
// place of a built-in of the same name.
func With(own []Profile) []Profile {
	all := BuiltIn()
next:
	for _, p := range own {
		for i := range all {
			if strings.EqualFold(all[i].Name, p.Name) {
				all[i] = p
				continue next
			}
		}
		all = append(all, p)
	}
	return all
}

// UnknownProfileError says that no kitchen has the name asked for.
type UnknownProfileError struct {
	Name  string
	Known []string
}

// Words are what is wrong.
func (e *UnknownProfileError) Words() error {
	return flaw.New("no kitchen profile %s; there are %s", echo.Quoted(e.Name), echo.Line(strings.Join(e.Known, ", "), 5*echo.Most))
}

func (e *UnknownProfileError) Error() string { return e.Words().Error() }

// Find returns the kitchen called name, letter case aside; "" asks for the
// first. The error is an *UnknownProfileError.
func Find(all []Profile, name string) (Profile, error) {
	if name == "" && len(all) > 0 {
		return all[0], nil
	}
	e := &UnknownProfileError{Name: name}
	for _, p := range all {
		if strings.EqualFold(p.Name, strings.TrimSpace(name)) {
			return p, nil
		}
		e.Known = append(e.Known, p.Name)
	}
	return Profile{}, e
}
