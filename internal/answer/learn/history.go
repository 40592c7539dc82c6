package learn

import (
	"math"

	"ripplewright/internal/work/batch"
)

// Pair is a measurement of a batch beside its forecast, both in the unit of the
// measurement; of a word's, in that of what it is a word for: kPa or µm.
type Pair struct {
	Path      string  // batch's entry
	Word      string  // of a scale; "" for a number
	Measured  float64 // a word's middle
	Low, High float64 // of its step; both Measured for a number
	Expected  float64 // NaN: nothing was
	Slip      bool    // named rather than believed
}

// Pairs returns what was measured of batch number i of the notebook that taught p, in
// the order of the making.
func (p *Posterior) Pairs(i int, b *batch.Batch) []Pair {
	f := &b.Forecast
	var out []Pair
	add := func(path string, got, want batch.Measured) {
		if !got.Known {
			return
		}
		q := Pair{Path: path, Measured: got.Value, Low: got.Value, High: got.Value, Expected: math.NaN()}
		if want.Known {
			q.Expected = want.Value
		}
		out = append(out, q)
	}
	word := func(path, word string, low, high float64, ok bool, want batch.Measured) {
		if !ok {
			return
		}
		add(path, batch.Of(math.Sqrt(low*high)), want)
		q := &out[len(out)-1]
		q.Word, q.Low, q.High = word, low, high
	}
	add("syrup.water_boils_c", b.Syrup.WaterBoilsC, f.WaterBoilsC)
	add("syrup.weighed_g", b.Syrup.MassG(), f.SyrupG)
	add("custard.weighed_g", b.Custard.WeighedG, f.CustardG)
	add("foam.whites_c", b.Foam.WhitesC, f.FoamC)
	add("foam.cup_g", b.Foam.CupG, f.FoamCupG)
	add("custard.cup_g", b.Custard.CupG, f.CustardCupG)
	add("freezer_c", b.FreezerC, f.FreezerC)
	add("scooped.core_c", b.Scooped.CoreC, f.FreezerC)
	add("scooped.after_min", b.Scooped.AfterMinutes, f.ScoopedMinutes)
	add("cut.foam_percent", b.Cut.FoamPercent, f.CutFoamPercent)
	add("cut.ribbon_mm", b.Cut.RibbonMM, f.CutRibbonMM)
	add("cut.thickest_mm", b.Cut.ThickestMM, f.CutThickestMM)
	low, high, ok := hardnessOf(b.Ate.Hardness)
	word("ate.hardness", b.Ate.Hardness, low, high, ok, f.HardnessKPa)
	low, high, ok = iceOf(b.Ate.Icy)
	word("ate.icy", b.Ate.Icy, low, high, ok, f.IceUM)
	for k := range out {
		for _, o := range p.Observations {
			if o.Batch == i && o.Path == out[k].Path && o.Slip() {
				out[k].Slip = true
			}
		}
	}
	return out
}

// Paired are the paths that Pairs may have, in its order.
func Paired() []string {
	return []string{"syrup.water_boils_c", "syrup.weighed_g", "custard.weighed_g", "foam.whites_c", "foam.cup_g", "custard.cup_g",
		"freezer_c", "scooped.core_c", "scooped.after_min", "cut.foam_percent", "cut.ribbon_mm", "cut.thickest_mm", "ate.hardness", "ate.icy"}
}

// In returns what an observation says alone of its factor, in the factor's own unit, a
// ratio for one, with where it is in 8 of 10 cases.
func (o *Observation) In() (low, value, high float64) {
	return Belief{Mean: o.Says / o.Along[o.Of], SD: o.ErrorSD / math.Abs(o.Along[o.Of])}.Band(o.Of)
}
