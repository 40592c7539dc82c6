package process

import (
	"math"

	"ripplewright/internal/food/kind"
)

// Where a custard sets and curdles, °C. A milk, sugar and egg custard thickens
// at 78 to 80, sets at 79 to 83 and curdles 3 to 6 above (McGee 2004, On Food
// and Cooking, custards). With 20 g of pure starch to the litre of liquid, 32 g
// of flour, it does not curdle at the boil, but the yolk's amylase must be
// boiled away or it thins again (McGee; French Culinary Institute; Figoni 2003:
// boil 2 min): 95 to 100.
const (
	setsFromC, setsToC     = 80, 83
	curdlesC               = 86
	starchHoldsGPerL       = 20
	amylaseFromC           = 95
	boilAtLeastMin         = 2
	thickensWithoutYolkGKG = 50 // g yolk per kg below which yolk alone does not coat a spoon: from memory
)

// Custard is the custard's window on the stove.
type Custard struct {
	Present     bool
	Yolk        bool
	Milk        bool    // milk or cream, not plant drinks
	FromC, ToC  float64 // to cook to; NaN where nothing has to be cooked
	CurdlesC    float64 // NaN where it does not: no egg, or starch enough
	StarchC     float64 // that starch needs; NaN without starch
	StarchGPerL float64
	YolkGPerKG  float64
	SourG       float64 // stirred in cold
	SpiritG     float64 // likewise

	WaterOffG  float64 // as the design says
	WaterG     float64 // that it keeps
	WeighedG   float64 // that the scale shows then, without the pan and without what goes in cold
	OffMinutes float64 // that the open pan takes for it at ToC; NaN if it must boil
	LogYolk    float64 // tenfold reductions of Salmonella in ten seconds at FromC by the sugared yolk's data
	Cool       Cool
}

func custardOf(p phaseFacts, k Kitchen) Custard {
	c := Custard{
		Present: true, Yolk: p.g[kind.Yolk] > 0, Milk: p.milk > 0,
		FromC: setsFromC, ToC: setsToC, CurdlesC: math.NaN(), StarchC: math.NaN(), OffMinutes: math.NaN(), LogYolk: math.NaN(),
		SourG: p.g[kind.Sour] + p.g[kind.Acid] + p.g[kind.Cultured], SpiritG: p.g[kind.Spirit],
		WaterOffG: p.waterOff,
	}
	if p.total > 0 {
		c.YolkGPerKG = 1000 * p.g[kind.Yolk] / p.total
	}
	if liquid := p.g[kind.Liquid] + p.g[kind.Sour] + p.g[kind.Cultured]; liquid > 0 {
		c.StarchGPerL = 1000 * p.g[kind.Starch] / liquid
	}
	if c.Yolk {
		c.CurdlesC = curdlesC
	}
	if p.g[kind.Starch] > 0 {
		c.StarchC = math.Min(amylaseFromC, p.boilsC)
		c.FromC, c.ToC = c.StarchC, p.boilsC
		if c.StarchGPerL >= starchHoldsGPerL {
			c.CurdlesC = math.NaN()
		}
	}
	if c.WaterOffG > 0 {
		c.OffMinutes = c.WaterOffG / stoveGPerMin(math.Min(c.ToC, setsToC), k.PanMM)
	}
	if c.Yolk {
		c.LogYolk = 10.0 / 60 / SugaredYolk.D(c.FromC)
	}
	c.Cool = cool(p.total, p.heat, c.ToC, k)
	return c
}

// Starch reports whether starch must boil.
func (c *Custard) Starch() bool { return !math.IsNaN(c.StarchC) }
