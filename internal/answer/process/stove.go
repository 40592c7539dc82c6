package process

// Kitchen is what of a kitchen the stove and the bowl need. Start from Default:
// the zero Kitchen is none.
type Kitchen struct {
	PanMM         float64 // inside diameter of the pan
	FlameW        float64 // heat that reaches the pan, net
	FlameMeasured bool    // FlameW comes from a timed boil
	ProbeBoilsC   float64 // what the probe shows in boiling plain water; 0: never checked

	BowlG    float64
	BowlIs   Material
	RoomC    float64 // of bowl and air
	WhitesC  float64 // as they go into the bowl
	Pour     Pour
	Tool     Tool
	WhiskMin float64 // how long the foam is whisked after the syrup is in

	IceBathC float64
	FridgeC  float64

	DishMM      float64 // depth of a layer that freezes still
	DishCM2     float64 // floor of one dish
	ShelfCM2    float64 // shelf that the freezer has free
	FreezerL    float64 // of the freezer
	FreezesKG   float64 // rated kg per 24 h; 0: by its litres
	ChurnBowlML float64 // a churn's bowl as filled, before its air; 0: no churn
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

// Tool is what puts air into the custard.
type Tool string

// The tools.
const (
	HandMixer  Tool = "hand_mixer"  // a tray in the freezer, beaten
	Churn      Tool = "churn"       // a home churn with a frozen bowl
	HandCrank  Tool = "hand_crank"  // ice and salt
	SmallBatch Tool = "small_batch" // a small shop's batch freezer
	SoftServe  Tool = "soft_serve"
)

// Default returns an ordinary kitchen. The pan, bowl and dish are common
// household sizes and the flame a gas ring's small burner at about half of its
// heat: common practice, no source.
func Default() Kitchen {
	return Kitchen{
		PanMM: 160, FlameW: 600,
		BowlG: 600, BowlIs: Steel, RoomC: 22, WhitesC: 20, Pour: Stream, Tool: HandMixer, WhiskMin: 10,
		IceBathC: 1, FridgeC: 4,
		DishMM: 25, DishCM2: 500, ShelfCM2: 1400, FreezerL: 100,
	}
}

// flameSpread is how far an unmeasured flame may be off, as a factor; a timed
// boil leaves less. Both estimates.
func (k Kitchen) flameSpread() float64 {
	if k.FlameMeasured {
		return 1.15
	}
	return 1.6
}
