package learn

import (
	"math"
	"slices"

	"ripplewright/internal/answer/photo"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/batch"
)

// Observation is one measurement beside what was expected, as what it says of the
// factors: Says = Σ Along·factor + its error. All are in the factors' units, of the
// logarithm of a ratio.
type Observation struct {
	Batch   int    // its place among the batches
	Path    string // what was measured, as batch's entry
	Of      Factor // the one that it is about
	Says    float64
	Along   [NumFactors]float64
	ErrorSD float64

	Chance float64 // that it is no slip, 0 to 1, given all others
}

// Slip reports whether it is more likely a slip than a measurement.
func (o *Observation) Slip() bool { return o.Chance < 0.5 }

// Observe returns what a batch says of the factors; what was not measured, or had no
// forecast, says nothing.
func Observe(i int, b *batch.Batch) []Observation {
	var out []Observation
	add := func(path string, of Factor, says, sd float64, along ...float64) {
		if math.IsNaN(says) || math.IsInf(says, 0) || !(sd > 0) || math.IsInf(sd, 0) {
			return
		}
		o := Observation{Batch: i, Path: path, Of: of, Says: says, ErrorSD: sd, Chance: 1}
		o.Along[of] = 1
		for k := 0; k+1 < len(along); k += 2 {
			o.Along[int(along[k])] = along[k+1]
		}
		out = append(out, o)
	}
	f := &b.Forecast
	if v, want, ok := both(b.Syrup.WaterBoilsC, f.WaterBoilsC); ok {
		add("syrup.water_boils_c", Probe, v-want, boilK)
	}
	if g, want, ok := both(b.Syrup.MassG(), f.SyrupG); ok && f.SyrupSolidsPercent.Known && g > 0 && b.Syrup.ReadingC.Known {
		along := []float64{}
		if per := f.SyrupSolidsPerK; per.Known { // a probe that shows too much comes off too early
			along = []float64{float64(Probe), -per.Value}
		}
		add("syrup.weighed_g", SyrupSolids, f.SyrupSolidsPercent.Value*(want/g-1), solidsPoints, along...)
	}
	if g, want, ok := both(b.Custard.WeighedG, f.CustardG); ok && f.CustardInG.Known && f.CustardInG.Value > 0 {
		add("custard.weighed_g", StoveLoss, 100*(want-g)/f.CustardInG.Value, lossPoints)
	}
	air := func(path string, of Factor, cup, wantCup, wantPercent batch.Measured) {
		g, want, ok := both(cup, wantCup)
		if !ok || !wantPercent.Known || !(wantPercent.Value > 0) || !(g > 0) {
			return
		}
		o := wantPercent.Value / 100
		got := (1+o)*want/g - 1
		add(path, of, math.Log(got/o), math.Hypot(airDay, cupShare*(1+o)/o))
	}
	air("custard.cup_g", CustardAir, b.Custard.CupG, f.CustardCupG, f.CustardOverrun)
	air("foam.cup_g", FoamAir, b.Foam.CupG, f.FoamCupG, f.FoamOverrun)
	if v, want, ok := both(b.FreezerC, f.FreezerC); ok {
		add("freezer_c", FreezerK, v-want, freezerReadK)
	}
	if v, want, ok := both(b.Scooped.CoreC, f.FreezerC); ok {
		add("scooped.core_c", FreezerK, v-want, coreK)
	}
	if mm, want, ok := both(b.Cut.RibbonMM, f.CutRibbonMM); ok && mm > 0 && want > 0 {
		add("cut.ribbon_mm", Mixing, math.Log(mm/want), cutShare)
	}
	thawed(b, add)
	eaten(b, add)
	return out
}

type adder func(path string, of Factor, says, sd float64, along ...float64)

// CutOf is what a photograph of a cut shows, as a batch notes it. view is package ripple's.
func CutOf(view string, r *photo.Reading) batch.Cut {
	return batch.Cut{View: view, FoamPercent: known(100 * r.FoamFraction.Value), RibbonMM: known(r.FoamMeanMM.Value),
		ThickestMM: known(r.ThickestTenthMM.Value), LeastMM: known(r.LeastMM)}
}

// thawed adds what the time on the counter says.
func thawed(b *batch.Batch, add adder) {
	f := &b.Forecast
	if v, want, ok := both(b.Scooped.AfterMinutes, f.ScoopedMinutes); ok && v > 0 && want > 0 {
		var along []float64
		says := -math.Log(v / want)
		sd := math.Hypot(minutesDay, tryEvery/math.Sqrt(12)/want)
		if b.Scooped.RingC.Known { // clock and probe are read together, whenever it scooped
			sd = minutesDay
		}
		if h := f.ScoopedTwiceHard; h.Known && h.Value > 0 && !b.Scooped.RingC.Known {
			along = append(along, float64(Hardness), -math.Log(h.Value/want)/math.Ln2)
		}
		if k := f.ScoopedFreezerWarmer; k.Known && k.Value > 0 {
			perK := -math.Log(k.Value / want)
			if f.FreezerC.Known {
				along = append(along, float64(FreezerK), perK)
			} else { // of another setting of the freezer it tells nothing
				sd = math.Hypot(sd, perK*freezerReadK)
			}
			if c, nominal, ok := both(b.FreezerC, f.FreezerC); ok { // the forecast is of the freezer as read, which errs more than what all readings say
				says += perK * (c - nominal)
			}
			if b.Scooped.RingC.Known {
				sd = math.Hypot(sd, perK*ringK) // a warmer ring is sooner there, as if it came out as much warmer
			}
		}
		// Twice the coefficient is half the time: as much heat has to come in.
		add("scooped.after_min", Counter, says, sd, along...)
	}
	if _, kPa, ok := both(b.Scooped.RingC, f.ScoopedKPa); ok && kPa > 0 {
		add("scooped.ring_c", Hardness, math.Log(phase.Dense.Band().FirmKPa/kPa), math.Hypot(hardnessScoop, math.Hypot(ringK, triedK(f))*hardnessPerK))
	}
}

// triedK is by how much the ring warms between two tries with the spoon, one standard
// deviation; 0 where nobody knows how fast it does.
func triedK(f *batch.Forecast) float64 {
	want, warmer, ok := both(f.ScoopedMinutes, f.ScoopedFreezerWarmer)
	if !ok || !(want > warmer) {
		return 0
	}
	return tryEvery / math.Sqrt(12) / (want - warmer)
}

// eaten adds what the plain scales say.
func eaten(b *batch.Batch, add adder) {
	f := &b.Forecast
	if low, high, ok := hardnessOf(b.Ate.Hardness); ok && f.HardnessKPa.Known && f.HardnessKPa.Value > 0 {
		add("ate.hardness", Hardness, math.Log(math.Sqrt(low*high)/f.HardnessKPa.Value), stepped(hardnessWord, low, high, tasteK*hardnessPerK))
	}
	if low, high, ok := iceOf(b.Ate.Icy); ok && f.IceUM.Known && f.IceUM.Value > 0 {
		add("ate.icy", Ice, math.Log(math.Sqrt(low*high)/f.IceUM.Value), stepped(iceWord, low, high, 0))
	}
}

// stepped is an error with that of a step of a scale, of which any place is as
// likely, and another on top.
func stepped(sd, low, high, also float64) float64 {
	return math.Hypot(math.Hypot(sd, also), math.Log(high/low)/math.Sqrt(12))
}

// hardnessOf returns the step of a word for hardness, kPa.
func hardnessOf(word string) (lowKPa, highKPa float64, ok bool) {
	return stepOf(word, phase.Words[:], func(w phase.Word) (string, float64) { return w.Name, w.BelowKPa })
}

// iceOf returns the step of a word for crystals, µm.
func iceOf(word string) (lowUM, highUM float64, ok bool) {
	return stepOf(word, ice.Words[:], func(w ice.Word) (string, float64) { return w.Name, w.BelowUM })
}

// openStep is how wide the outermost words of a scale are, of their neighbours' logarithm:
// they have no end, and a middle too near is surer than anybody is.
const openStep = 1.5

// stepOf returns the step of a word on a scale, whose words each end below a bound, the
// first and the last nowhere, for which openStep stands.
func stepOf[W any](word string, scale []W, is func(W) (name string, below float64)) (low, high float64, ok bool) {
	below := func(i int) float64 { _, b := is(scale[i]); return b }
	i := slices.IndexFunc(scale, func(w W) bool { name, _ := is(w); return name == word })
	switch {
	case i < 0:
		return 0, 0, false
	case i == 0:
		return below(0) * math.Pow(below(0)/below(1), openStep), below(0), true
	case math.IsInf(below(i), 1):
		return below(i - 1), below(i-1) * math.Pow(below(i-1)/below(i-2), openStep), true
	}
	return below(i - 1), below(i), true
}

func both(a, b batch.Measured) (x, y float64, ok bool) { return a.Value, b.Value, a.Known && b.Known }

// wordOf is the name of a hardness.
func wordOf(kPa float64) string { return phase.WordFor(kPa).Name }
