package phase

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

// Water says which of a phase's water a solute is held against.
type Water uint8

// The waters.
const (
	// Unfrozen is what is liquid and not bound at the temperature asked for: of
	// solutes that crystallise readily once ice has taken the rest.
	Unfrozen Water = iota
	// Syrup is all water of a foam, against what dissolves in a kitchen: of the
	// sugars that stay syrup in the cold. Beside ice sucrose is over its
	// solubility in every frozen dessert and yet does not crystallise for months
	// (common practice, no source); a confectioner's syrup that is over it at
	// 20 °C grains.
	Syrup
	// Trade is all water, against a rule of the trade: lactose is over its
	// solubility in every frozen dairy phase, and most of those are smooth.
	Trade
)

// measured is g of solute that 100 g of water dissolve at t °C; the zero value
// is none.
type measured struct{ t, g float64 }

// crystalRule is what a solute is held against.
type crystalRule struct {
	solute mix.Species
	water  Water
	at     measured // the coldest that was measured, or the rule's own
	warmer measured // for van 't Hoff below at
}

// crystalRules has one rule for each solute that crystallises, in pure water.
// The figures are rows of testdata/tables/solubility.csv, which says how each was
// read.
var crystalRules = [...]crystalRule{
	{mix.Erythritol, Unfrozen, measured{20, 58.7}, measured{80, 300}}, // a supplier's page
	{mix.Trehalose, Unfrozen, measured{10, 73.3}, measured{20, 87.3}}, // Lammert, Schmidt & Day 1998, Food Chem. 61:139
	{mix.Xylitol, Unfrozen, measured{10, 138}, measured{20, 168}},     // from memory
	{mix.Mannitol, Unfrozen, measured{25, 22}, measured{}},            // from memory; less in the cold, nobody measured how much
	{mix.Isomalt, Unfrozen, measured{25, 32}, measured{}},             // from memory; likewise
	{mix.Sucrose, Syrup, measured{20, 203.9}, measured{}},             // Mohos 2010, Confectionery and Chocolate Engineering, table A2.2
	{mix.Glucose, Syrup, measured{20, 83.1}, measured{}},              // Combs & Bele, in Lowe, Experimental Cookery
	{mix.Maltose, Syrup, measured{21, 78.9}, measured{}},              // Gillis, same book
	{mix.Lactose, Trade, measured{math.NaN(), 100. / 12}, measured{}}, // one twelfth: common practice, one trade page
}

// Unruled are the solutes that crystallise in confectionery and have no rule here:
// of sorbitol (235 g) and maltitol (150 g) in 100 g of water at 25 °C one remembered
// figure each is all there is, more than a phase in the cold concentrates them to or
// about as much, and of lactitol none was found.
var Unruled = [...]mix.Species{mix.Sorbitol, mix.Maltitol, mix.Lactitol}

// usualLactose is g lactose per 100 g water in the mix of the most milk solids
// that is usual, which is not sandy: 12 % without fat (Goff, Univ. of Guelph, Ice
// Cream Technology e-Book: 9 to 12 %), 54 % of that lactose (same book, ch. 16),
// in the 61.7 % water of its standard mix. The rule of one twelfth, of one trade
// page, calls that standard mix itself sandy.
const usualLactose = 0.54 * 12 / 61.7 * 100

// Dissolved is one solute beside the rule by which it crystallises.
type Dissolved struct {
	Solute       mix.Species
	Water        Water
	GPer100G     float64 // g per 100 g of that water
	MostGPer100G float64 // g per 100 g of it above which it crystallises
	// UsualGPer100G is g per 100 g of it up to which usual mixes go in spite of
	// the rule; 0: there are none.
	UsualGPer100G float64
	AtC           float64 // °C that Most is for; NaN of a rule of the trade
}

// Over reports whether there is more than dissolves.
func (d Dissolved) Over() bool { return d.GPer100G > d.MostGPer100G }

// Surely reports whether there is more than in any usual mix too.
func (d Dissolved) Surely() bool { return d.GPer100G > math.Max(d.MostGPer100G, d.UsualGPer100G) }

// Dissolved returns, at t °C, each solute of the phase that has a rule. Over it
// a solute may crystallise; when, nobody can tell.
//
// Check: erythritol, 17.0 g per 100 g at −18 °C and 22.6 g at −10 °C.
func (b *Body) Dissolved(t float64) []Dissolved {
	var out []Dissolved
	for i := range crystalRules {
		r := &crystalRules[i]
		g := b.Mix.Grams[r.solute]
		if g <= 0 || r.water == Syrup && b.Role != Foam {
			continue
		}
		if out == nil {
			out = make([]Dissolved, 0, len(crystalRules)-i)
		}
		d := Dissolved{Solute: r.solute, Water: r.water, MostGPer100G: r.at.g, AtC: r.at.t}
		w := b.water
		switch r.water {
		case Unfrozen:
			w -= b.IceG(t) + b.sorption.BoundG
			d.MostGPer100G, d.AtC = r.dissolvesAt(t), t
		case Trade:
			d.UsualGPer100G = usualLactose
		}
		d.GPer100G = 100 * g / math.Max(w, 1e-9)
		out = append(out, d)
	}
	return out
}

// dissolvesAt returns what 100 g of water dissolve at t °C: by van 't Hoff's
// line through the two coldest figures, or, of a solute with one, no more than
// that.
func (r *crystalRule) dissolvesAt(t float64) float64 {
	if r.warmer.g == 0 {
		return r.at.g
	}
	so, _ := solution.SoluteOf(r.solute)
	perWater := so.GPerMol * 100 / water.MolarMass // g per 100 g, of a mol to a mol of water
	share := func(g float64) float64 { return g / (g + perWater) }
	inverse := func(c float64) float64 { return 1 / (c + water.ZeroC) }
	slope := math.Log(share(r.warmer.g)/share(r.at.g)) / (inverse(r.at.t) - inverse(r.warmer.t))
	x := share(r.at.g) * math.Exp(slope*(inverse(r.at.t)-inverse(t)))
	return perWater * x / (1 - x)
}
