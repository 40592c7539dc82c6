package label

import (
	"math"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/customary"
	"ripplewright/internal/form/flaw"
)

// Limit is one condition with the food's own figure.
type Limit struct {
	What    *flaw.Remark `json:"what"`
	Section string       `json:"section"`
	Bound   *flaw.Remark `json:"bound"`
	Own     *float64     `json:"own"` // nil where it is not a figure, or unknown
	Unit    string       `json:"unit"`
	Met     bool         `json:"met"`
	Judge   bool         `json:"judge"`          // for the maker to judge; Met says nothing
	Miss    float64      `json:"miss,omitempty"` // by how much it is missed, in Unit

	// Incomplete tells that Own is only the known part, and that what is
	// unknown could change Met.
	Incomplete bool `json:"incomplete"`

	bound float64
	least bool // Own is at fault below bound, not above it
}

// Limits of the US standards, g/mL: 4.5, 1.6 and 6 lb/gal, at 453.59237 g to
// the pound and 3785.411784 mL to the gallon.
const (
	gPerMLOfLbPerGal = customary.PoundG / customary.GallonML
	weightLbPerGal   = 4.5
	solidsLbPerGal   = 1.6
	sherbetLbPerGal  = 6.0
)

// atLeast is a limit from below: the known part must reach it.
func atLeast(what flaw.Message, section string, own ingredient.Amount, bound float64, unit string) Limit {
	return atLeastOf(flaw.Say(what), section, own, bound, unit)
}

func atLeastOf(what *flaw.Remark, section string, own ingredient.Amount, bound float64, unit string) Limit {
	v := own.Known
	met := dec(v).GreaterThanOrEqual(dec(bound))
	return Limit{What: what, Section: section, Bound: flaw.Say("at least %.4g", bound), Own: &v, Unit: unit,
		Met: met, Miss: max(0, bound-v), bound: bound, least: true, Incomplete: !met && (math.IsInf(own.Most, 1) || dec(own.Most).GreaterThanOrEqual(dec(bound)))}
}

// atMost is a limit from above: the most it can be must keep it.
func atMost(what flaw.Message, section string, own ingredient.Amount, bound float64, unit string) Limit {
	return upper(flaw.Say(what), section, own, bound, unit, "at most %.4g", false)
}

// below is atMost without the bound itself.
func below(what *flaw.Remark, section string, own ingredient.Amount, bound float64, unit string) Limit {
	return upper(what, section, own, bound, unit, "below %.4g", true)
}

func upper(what *flaw.Remark, section string, own ingredient.Amount, bound float64, unit string, word flaw.Message, strict bool) Limit {
	keeps := func(v float64) bool {
		if math.IsInf(v, 1) {
			return false
		}
		c := dec(v).Cmp(dec(bound))
		return c < 0 || c == 0 && !strict
	}
	v := own.Known
	met := keeps(own.Most)
	return Limit{What: what, Section: section, Bound: flaw.Say(word, bound), Own: &v, Unit: unit,
		Met: met, Miss: max(0, v-bound), bound: bound, Incomplete: !met && keeps(v)}
}

func exactly(v float64) ingredient.Amount { return ingredient.Amount{Known: v, Most: v} }

func judged(what flaw.Message, section string) Limit {
	return Limit{What: flaw.Say(what), Section: section, Bound: flaw.Say("for you to judge"), Judge: true}
}

func fact(what flaw.Message, section string, bound flaw.Message, met bool) Limit {
	return Limit{What: flaw.Say(what), Section: section, Bound: flaw.Say(bound), Met: met}
}

// frozenMix are the limits that 21 CFR 135.110 puts on mix and freezing.
func (m *makeup) frozenMix(section string) []Limit {
	return append([]Limit{m.stirred(section), judged("mix pasteurised", section)}, m.weights(section)...)
}

// stirred is for the maker to judge, but that a folded foam never is.
func (m *makeup) stirred(section string) Limit {
	if m.hasFoam {
		return fact("frozen while stirring", section, "all of it; the foam is folded in", false)
	}
	return judged("frozen while stirring", section)
}

// iceCreamMix are the limits that ice cream and frozen custard share: 21 CFR
// 135.110(a).
func (m *makeup) iceCreamMix() []Limit {
	limits := m.frozenMix("21 CFR 135.110(a)")
	limits = append(limits, atMost("fat that is neither milk, egg nor a flavour's", string(flaw.Word("21 CFR 135.110(a)(1), incidental taken as 0.5 %")), exactly(m.addedFat), incidentalFat, "%"))
	if m.hasGoat && m.hasCow {
		limits = append(limits, fact("milk", "21 CFR 135.110, 135.115", "of cows alone or of goats alone", false))
	}
	return append(limits, m.dairyLimits()...)
}

// named puts the goat before a name, 21 CFR 135.115.
func (m *makeup) named(name string) string {
	if m.hasGoat {
		return "goat's milk " + name
	}
	return name
}

// weights are the limits on what a gallon weighs.
func (m *makeup) weights(section string) []Limit {
	return []Limit{
		atLeast("weight", section, exactly(m.density/gPerMLOfLbPerGal), weightLbPerGal, "lb/gal"),
		atLeast("total solids", section, exactly(m.density*m.solids/100/gPerMLOfLbPerGal), solidsLbPerGal, "lb/gal"),
	}
}

// dairyLimits are milkfat and nonfat milk solids of 21 CFR 135.110(a)(2). The
// pairs are 10/10, 11/9, 12/8, 13/7 and 14/6 %; with bulky flavours 10 and
// 20 % of the remainder, and 8 and 16 % of the food.
func (m *makeup) dairyLimits() []Limit {
	const section = "21 CFR 135.110(a)(2)"
	rest := 100 - m.bulky.Known // % of the food
	limits := []Limit{atMost("whey, of the nonfat milk solids", "7 CFR 58.2825", exactly(m.whey), 25, "%")}
	if m.bulky.Known == 0 {
		need := 20 - dec(min(max(m.milkFat.Known, 10), 14)).Floor().InexactFloat64()
		return append(limits,
			atLeast("milkfat", section, m.milkFat, 10, "%"),
			atLeastOf(flaw.Say("nonfat milk solids beside %.1f %% milkfat", m.milkFat.Known), section, m.msnf, need, "%"))
	}
	if rest <= 0 {
		return append(limits, fact("food beside its bulky flavours", section, "some", false))
	}
	total := m.milkFat.Plus(m.msnf, 1)
	ofRest := func(a ingredient.Amount) ingredient.Amount { return times(a, 100/rest) }
	return append(limits,
		atLeast("milkfat without the bulky flavours", section, ofRest(m.milkFat), 10, "%"),
		atLeast("milk solids without the bulky flavours", section, ofRest(total), 20, "%"),
		atLeast("milkfat", section, m.milkFat, 8, "%"),
		atLeast("milk solids", section, total, 16, "%"))
}

// Egg yolk solids that divide ice cream from frozen custard, and the least of
// a custard with bulky flavours, % (read in state copies of the standard).
const yolkSolids, leastYolkSolids = 1.4, 1.12

// bulkyNote says what was counted as bulky.
func (m *makeup) bulkyNote() *flaw.Remark {
	switch {
	case m.bulky.Most > m.bulky.Known:
		return flaw.Say("bulky flavours are at least %.1f %% at their counted weight; the cocoa solids of an ingredient are unknown", m.bulky.Known)
	case m.bulky.Known > 0:
		return flaw.Say("bulky flavours are %.1f %% at their counted weight (cocoa × 2.5, fruit and nuts × 1.4)", m.bulky.Known)
	}
	return nil
}
