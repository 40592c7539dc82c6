package process

import (
	"math"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
)

// Where a custard sets and curdles, °C. A milk, sugar and egg custard thickens
// at 78 to 80, sets at 79 to 83 and curdles 3 to 6 above (McGee 2004, On Food
// and Cooking, custards). With 20 g of pure starch to the litre of liquid, 32 g
// of flour, it does not curdle at the boil, but the yolk's amylase must be
// boiled away or it thins again (McGee; French Culinary Institute; Figoni 2003:
// boil 2 min): 95 to 100. It works best from 68 to 85 and fails above 88 (a
// pastry page).
const (
	setsFromC, setsToC = 80, 83
	curdlesC           = 86
	starchHoldsGPerL   = 20
	flourHolds         = 20.0 / 32
	amylaseFromC       = 95
	enzymeDiesC        = 88
)

// SteamsC is where milk steams: common practice, no source.
const SteamsC = 70

// LeastYolkGPerKG is the yolk below which yolk alone does not coat a spoon:
// from memory. MostYolkGPerKG is the richest French custard (see limits.Yolk).
const (
	LeastYolkGPerKG = 50
	MostYolkGPerKG  = 155
)

// A hold of the custard, beside what egg plants had to do with sugared yolk: 9
// CFR 590.570, table I, as it stood before the rewrite of 2020 (table read):
// 146 °F for 3.5 min.
const (
	HoldSeconds = 10
	PlantYolkC  = 63.33
	PlantYolkM  = 3.5
)

// gels is from where to where a starch swells in water without sugar, which
// makes it later, °C: from memory.
var gels = map[string][2]float64{
	"cornstarch": {62, 72}, "potato_starch": {59, 68}, "potato_flour": {59, 68}, "tapioca_starch": {59, 69}, "tapioca_pearls": {59, 69},
	"wheat_starch": {52, 64}, "wheat_flour": {52, 64}, "rice_starch": {68, 78}, "rice_flour": {68, 78}, "arrowroot": {62, 70},
}

// Starch is one of the custard's.
type Starch struct {
	*ingredient.Ingredient
	FromC, ToC float64 // in which it swells; NaN where that is not known
}

// Custard is the custard's window on the stove.
type Custard struct {
	Present     bool
	Yolk        bool
	Milk        bool    // milk or cream, not plant drinks
	FromC, ToC  float64 // to cook to; NaN where nothing has to be cooked
	CurdlesC    float64 // NaN where it does not: no egg, or starch enough
	StarchC     float64 // that starch needs; NaN without starch
	StarchGPerL float64 // as pure starch
	Starches    []Starch
	YolkGPerKG  float64
	FatPercent  float64
	AcidPerKG   float64 // g citric acid equivalent to a kg of milk; NaN without milk
	SourG       float64 // stirred in cold
	SpiritG     float64 // likewise

	WaterOffG   float64 // as the design says
	WaterG      float64 // that it keeps
	WeighedG    float64 // that the scale shows then, without the pan and without what goes in cold
	OffMinutes  float64 // that the open pan takes for a part of it at ToC; NaN if it must boil
	LogYolk     float64 // tenfold reductions of Salmonella in HoldSeconds at FromC by the sugared yolk's data
	HoldMinutes float64 // what that hold counts as at PlantYolkC, minutes
	Parts       int     // in which this pan takes it
	Cool        Cool    // of one part
}

func custardOf(p phaseFacts, k Kitchen) Custard {
	c := Custard{
		Present: true, Yolk: p.g[kind.Yolk] > 0, Milk: p.milk > 0,
		FromC: setsFromC, ToC: setsToC, CurdlesC: math.NaN(), StarchC: math.NaN(), OffMinutes: math.NaN(), LogYolk: math.NaN(), HoldMinutes: math.NaN(),
		AcidPerKG: math.NaN(),
		SourG:     p.g[kind.Sour] + p.g[kind.Acid] + p.g[kind.Cultured], SpiritG: p.g[kind.Spirit],
		WaterOffG: p.waterOff,
	}
	if p.total > 0 {
		c.YolkGPerKG = 1000 * p.g[kind.Yolk] / p.total
	}
	if liquid := p.g[kind.Liquid] + p.g[kind.Sour] + p.g[kind.Cultured]; liquid > 0 {
		c.StarchGPerL = 1000 * p.pureStarch / liquid
	}
	if p.milk > 0 {
		c.AcidPerKG = 1000 * p.acid / p.milk
	}
	if c.Yolk {
		c.CurdlesC = curdlesC
	}
	if p.g[kind.Starch] > 0 {
		needs := 0.0
		for _, in := range p.starch {
			s := Starch{in, math.NaN(), math.NaN()}
			if g, ok := gels[in.ID]; ok {
				s.FromC, s.ToC = g[0], g[1]
				needs = math.Max(needs, g[1])
			}
			c.Starches = append(c.Starches, s)
		}
		if c.Yolk || needs == 0 {
			needs = amylaseFromC
		}
		c.StarchC = math.Min(needs, p.boilsC)
		c.FromC, c.ToC = math.Min(amylaseFromC, p.boilsC), p.boilsC
		if c.StarchGPerL >= starchHoldsGPerL {
			c.CurdlesC = math.NaN()
		}
	}
	hot := c.ToC
	if !c.cooked() {
		c.FromC, c.ToC, hot = math.NaN(), math.NaN(), SteamsC
	}
	c.Parts = k.pans((p.total-c.SourG-c.SpiritG+c.WaterOffG)/custardGPerML, panFull)
	if c.WaterOffG > 0 {
		c.OffMinutes = c.WaterOffG / float64(c.Parts) / stoveGPerMin(math.Min(hot, setsToC), k.PanMM)
	}
	if c.Yolk {
		c.LogYolk = HoldSeconds / 60.0 / SugaredYolk.DMinutes(c.FromC)
		c.HoldMinutes = HoldSeconds / 60.0 * SugaredYolk.DMinutes(PlantYolkC) / SugaredYolk.DMinutes(c.FromC)
	}
	c.Cool = cool((p.total-c.SourG-c.SpiritG)/float64(c.Parts), p.heat, hot, k)
	return c
}

// Starch reports whether starch must boil.
func (c *Custard) Starch() bool { return !math.IsNaN(c.StarchC) }
