package process

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/food/limits"
)

// Air is how much of it a foam of such things comes to, overrun %, and what
// moved it from what such foams come to in general. NaN where nothing is known,
// as of a foam without whites.
type Air struct {
	LowPercent, HighPercent float64
	Why                     []AirCause
}

// AirCause is what takes air from a foam.
type AirCause string

// The causes.
const (
	ByTool    AirCause = "tool"     // a whisk by hand, a churn
	BySugar   AirCause = "sugar"    // over twice the white
	ByFat     AirCause = "fat"      // fat in the bowl, from yolk or else
	ByFolding AirCause = "folding"  // fat, cocoa or nuts folded in
	ByWhites  AirCause = "whites"   // dried, or of a carton
	ByNoAcid  AirCause = "no_acid"  // beside such whites
	OfWhites  AirCause = "whites_g" // more white than the tool beats
)

// What foams of whites come to, overrun %, by how they are made: from memory,
// no measurement of a finished meringue was found.
var (
	boiledSyrup = Air{LowPercent: 250, HighPercent: 400}
	heldOver    = Air{LowPercent: 200, HighPercent: 350}
	beatenCold  = Air{LowPercent: 300, HighPercent: 500}
	// Cream about doubles: from memory. Under creamFat g of fat to 100 g of the
	// base nothing is known.
	whippedCream = Air{LowPercent: 80, HighPercent: 130}
	churnedAir   = Air{LowPercent: 15, HighPercent: 35} // limits.FrozenBowlAir
)

// What takes air away. Less air with more sugar, and more with acid: abstracts of
// J. Food Eng. 108:453 (2012) and Bovšková & Míková 2011, Czech J. Food Sci.
// 29:322, against Foods 2022 11:1248, which found none; so a band and no curve.
// 2 g sugar to 1 g white: McGee 2004, On Food and Cooking, meringues. Dried and
// carton whites 10 to 30 % less: from memory. Whites pasteurised in the shell do
// not stand without acid: a pastry author, 2012. Fat: a drop of yolk in one
// white, 135 to 40 mL (St. John & Flor 1931, as remembered); such a drop is
// 0.04 g of fat to 100 g. By hand: common practice.
const (
	mostSugarPerWhite = 2
	fatSpoilsPercent  = 0.03
	fatLeaves         = 40.0 / 135
	whitesLeaveLeast  = 0.7
	whitesLeaveMost   = 0.9
	noAcidLeaves      = 0.5
	handLeaves        = 0.8
	creamFat          = 20
)

// The most white that a hand mixer beats in one bowl, g, and the least that any
// whisk catches: common practice, no source (2 to 8 eggs).
const (
	MostWhiteG  = 250
	LeastWhiteG = 60
)

// expected returns the air that the foam of p comes to.
func (f *Foam) expected(p phaseFacts, k Kitchen) Air {
	switch {
	case f.Cream && p.bowlFat > creamFat:
		return whippedCream
	case f.Whites == NoWhite || f.Whites == FreshYolk:
		return Air{LowPercent: math.NaN(), HighPercent: math.NaN()}
	}
	if k.Tool == InChurn {
		a := churnedAir
		a.Why = []AirCause{ByTool}
		return a
	}
	a := beatenCold
	switch {
	case f.Hot:
		a = boiledSyrup
	case f.Whites == FreshWhite:
		a = heldOver
	}
	mid := (a.LowPercent + a.HighPercent) / 2
	by := func(c AirCause) { a.Why = append(a.Why, c) }
	if f.SugarGPerG > mostSugarPerWhite {
		a.HighPercent = mid
		by(BySugar)
	}
	if f.Whites != FreshWhite {
		a.LowPercent, a.HighPercent = a.LowPercent*whitesLeaveLeast, a.HighPercent*whitesLeaveMost
		by(ByWhites)
		if f.Whites == CartonWhite && !f.Acid {
			a.LowPercent *= noAcidLeaves
			by(ByNoAcid)
		}
	}
	if k.Tool == HandWhisk {
		a.LowPercent, a.HighPercent = a.LowPercent*handLeaves, a.HighPercent*handLeaves
		by(ByTool)
	}
	if p.bowlFatPercent > fatSpoilsPercent {
		a.LowPercent, a.HighPercent = a.LowPercent*fatLeaves, math.Min(a.HighPercent, mid)
		by(ByFat)
	}
	if p.g[kind.Fat]+p.g[kind.Paste]+p.g[kind.Chocolate]+p.g[kind.Cocoa] > 0 {
		a.LowPercent, a.HighPercent = a.LowPercent*fatLeaves, math.Min(a.HighPercent, mid)
		by(ByFolding)
	}
	if f.Bowls > 1 {
		by(OfWhites)
	}
	return a
}

// CustardAir is what the kitchen's way of freezing puts into a custard.
func (k Kitchen) CustardAir() *limits.Limit {
	switch {
	case k.Churn == BatchFreezer:
		return &limits.BatchFreezerAir
	case k.Churns():
		return &limits.FrozenBowlAir
	case k.Churn == Tray:
		return &limits.TrayAir
	}
	return &limits.CustardAir
}

// Churns reports whether the custard turns while it freezes.
func (k Kitchen) Churns() bool {
	return cold.Churn{BowlML: k.ChurnBowlML, Kind: string(k.Churn)}.Turns()
}
