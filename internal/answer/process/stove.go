package process

import (
	"math"

	"ripplewright/internal/answer/cold"
)

// Kitchen is what of a kitchen the stove and the bowl need. Start from Default:
// the zero Kitchen is none.
type Kitchen struct {
	PanMM         float64 // inside diameter of the pan
	FlameW        float64 // heat that reaches the pan, net
	FlameMeasured bool    // FlameW comes from a timed boil
	ProbeBoilsC   float64 // what the probe shows in boiling plain water; 0: never checked

	BowlG   float64
	BowlIs  Material
	RoomC   float64 // of bowl and air
	WhitesC float64 // as they go into the bowl
	Pour    Pour

	IceBathC float64
	FridgeC  float64

	BowlReadC float64 // what a thermometer showed in the foam right after this batch's pour; 0: nobody looked

	DishMM      float64 // depth of a layer that freezes still
	DishCM2     float64 // floor of one dish
	ShelfCM2    float64 // shelf that the freezer has free
	FreezerL    float64 // of the freezer
	FreezesKG   float64 // rated kg per 24 h; 0: by its litres
	ChurnBowlML float64 // a churn's bowl as filled, before its air; 0: no churn
	Churn       Churn
	Tool        Tool

	FromHours, ToHours float64 // the hours of the day in which the cook works
	WashUpMinutes      float64 // for beaters and bowl between two uses
}

// Material is what a mixing bowl is made of.
type Material string

// The materials.
const (
	Steel   Material = "steel"
	Glass   Material = "glass"
	Plastic Material = "plastic"
)

// heatJPerGK is the specific heat of a bowl's material, J/(g K): general
// handbook values (from memory); steel as in the table of mixing.
var heatJPerGK = map[Material]float64{Steel: 0.50, Glass: 0.84, Plastic: 1.9}

// Tool is what the foam is beaten with.
type Tool string

// The tools.
const (
	HandMixer  Tool = "hand_mixer"
	StandMixer Tool = "stand_mixer"
	HandWhisk  Tool = "whisk"
	InChurn    Tool = "churn"
)

// Churn is what turns the custard while it freezes.
type Churn string

// The churns.
const (
	AnyChurn     Churn = "any" // nobody said
	Tray         Churn = "tray"
	FrozenBowl   Churn = "frozen_bowl"
	BatchFreezer Churn = "batch_freezer"
)

// Pour is how the syrup goes in.
type Pour string

// The ways.
const (
	Stream Pour = "stream"
	AtOnce Pour = "at_once"
)

// minutes is how long a pour takes: common practice, no source.
func (p Pour) minutes() float64 {
	if p == AtOnce {
		return 0.2
	}
	return 1.5
}

// Default returns cold.Default's kitchen.
func Default() Kitchen { return KitchenOf(cold.Default()) }

// KitchenOf returns what of a kitchen profile the stove and the bowl need.
func KitchenOf(p cold.Profile) Kitchen {
	return Kitchen{
		PanMM: p.Stove.PanMM, FlameW: p.Stove.FlameW, FlameMeasured: p.Stove.FlameMeasured != "", ProbeBoilsC: p.Stove.ProbeBoilsC,
		BowlG: p.Bowl.Grams, BowlIs: Material(p.Bowl.Material), WhitesC: p.Bowl.WhitesC, Pour: Pour(p.Bowl.Pour),
		RoomC: p.Counter.AirC, FridgeC: p.Refrigerator.AirC, IceBathC: iceBathC,
		DishMM: p.Layer.DepthMM, DishCM2: p.Layer.DishCM2, ShelfCM2: p.FreeShelfCM2,
		Tool: Tool(p.Bowl.Tool), Churn: Churn(p.Churn.Kind), FromHours: p.Cook.FromHours, ToHours: p.Cook.ToHours, WashUpMinutes: p.Cook.WashUpMinutes,
		FreezerL: p.FreezerL, FreezesKG: p.FreezerRatedKG, ChurnBowlML: p.Churn.BowlML,
	}
}

// A pan is about half as high as it is wide; a custard fills it to two thirds at
// most, a syrup, which boils up, to one third at the start: common practice, no
// source.
const (
	panHigh   = 0.5
	panFull   = 2.0 / 3
	syrupFull = 1.0 / 3
)

// holdsML is what the pan holds to its rim, mL.
func (k Kitchen) holdsML() float64 {
	return math.Pi / 4 * k.PanMM * k.PanMM * panHigh * k.PanMM / 1000
}

// pans returns in how many parts the pan takes ml: 1 as long as it does not run
// over, else as many as fill it to a share of what it holds.
func (k Kitchen) pans(ml, share float64) int {
	if !(ml > k.holdsML()) {
		return 1
	}
	return int(math.Ceil(ml / (share * k.holdsML())))
}

// iceBathC is stirred ice water with a warm bowl in it: common practice.
const iceBathC = 1

// flameSpread is how far an unmeasured flame may be off, as a factor; a timed
// boil leaves less. Both estimates.
func (k Kitchen) flameSpread() float64 {
	if k.FlameMeasured {
		return 1.15
	}
	return 1.6
}
