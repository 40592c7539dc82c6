package phase

import (
	"ripplewright/internal/matter/mix"
)

// solubleAtZero is g of anhydrous solute that 100 g of water hold at about
// 0 °C, and below it, where nothing was measured: the value at 0 °C is then the
// most that is stable. Each is taken in pure water; beside other solutes it
// usually dissolves less. testdata/tables/solubility.csv.
var solubleAtZero = [...]struct {
	solute mix.Species
	g      float64
}{
	{mix.Sucrose, 179.2},   // Mohos 2010, Confectionery and Chocolate Engineering, table A2.2
	{mix.Lactose, 11.9},    // Hudson, in Lowe, Experimental Cookery
	{mix.Maltose, 56.5},    // Gillis, same book, 0.6 °C
	{mix.Glucose, 54},      // Jackson & Silsbee 1922 (from memory)
	{mix.Trehalose, 62},    // extrapolated from 10 and 20 °C, Lammert, Schmidt & Day 1998, Food Chem. 61:139
	{mix.Erythritol, 31.7}, // van 't Hoff through a supplier's 20 and 80 °C
}

// Dissolved is one solute in the water that is liquid at a temperature.
type Dissolved struct {
	Solute     mix.Species
	Per100     float64 // g per 100 g of liquid water
	Solubility float64 // g per 100 g of water at 0 °C
	Over       bool    // more than dissolves there
}

// Dissolved returns, at t °C, each solute of which the solubility in the cold
// is known and which the phase holds. Over says that it may crystallise, not
// that it does: sucrose stays syrup for months, and lactose is over in every
// frozen dairy phase, see LactoseRatio.
func (b *Body) Dissolved(t float64) []Dissolved {
	liquid := b.water - b.Ice(t)
	if liquid <= 0 {
		return nil
	}
	var out []Dissolved
	for _, s := range solubleAtZero {
		if g := b.Mix.Mass[s.solute]; g > 0 {
			x := 100 * g / liquid
			out = append(out, Dissolved{s.solute, x, s.g, x > s.g})
		}
	}
	return out
}
