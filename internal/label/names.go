package label

import (
	"fmt"
	"math"
	"strings"

	"ripplewright/internal/ingredient"
)

// Name is one name with the limits that stand before it.
type Name struct {
	Name   string  `json:"name"`
	Region Region  `json:"region"`
	Of     string  `json:"of"`  // "whole food", or "dense phase alone"
	Met    bool    `json:"met"` // every limit that can be computed is met
	Limits []Limit `json:"limits"`
	Note   string  `json:"note,omitempty"`
}

// Limit is one condition with the food's own figure.
type Limit struct {
	What    string   `json:"what"`
	Section string   `json:"section"`
	Bound   string   `json:"bound"`
	Own     *float64 `json:"own"` // nil where it is not a figure, or unknown
	Unit    string   `json:"unit"`
	Met     bool     `json:"met"`
	Judge   bool     `json:"judge"`          // for the maker to judge; Met says nothing
	Miss    float64  `json:"miss,omitempty"` // by how much it is missed, in Unit
}

// Limits of the US standards, g/mL: 4.5, 1.6 and 6 lb/gal, at 453.59237 g to
// the pound and 3785.411784 mL to the gallon.
const (
	gPerMLOfLbPerGal = 453.59237 / 3785.411784
	weightLbPerGal   = 4.5
	solidsLbPerGal   = 1.6
	sherbetLbPerGal  = 6.0
)

// names returns the proposed name and every name tested: US standards on the
// whole food and on the dense phase alone, then the EU and UK yardsticks.
func names(f *Food) (proposed string, all []Name) {
	whole := composition(f)
	dense := whole
	parts := []struct {
		m  makeup
		of string
	}{{whole, "whole food"}}
	if f.Dense != nil && f.Dense.MassG() > 0 && whole.hasFoam {
		dense = composition(f.Dense)
		parts = append(parts, struct {
			m  makeup
			of string
		}{dense, "dense phase alone"})
	}
	for _, p := range parts {
		for _, test := range [...]func(*makeup) Name{iceCream, frozenCustard, sherbet, waterIce, mellorine,
			euDairyIceCream, euIceCream, ukIceCream, ukDairyIceCream, ukMilkIce} {
			n := test(&p.m)
			n.Of = p.of
			n.Met = true
			for _, l := range n.Limits {
				n.Met = n.Met && (l.Met || l.Judge)
			}
			all = append(all, n)
		}
	}
	return propose(f, &whole, all), all
}

// atLeast is a limit from below: the known part must reach it.
func atLeast(what, section string, own ingredient.Amount, bound float64, unit string) Limit {
	v := own.Known
	return Limit{What: what, Section: section, Bound: fmt.Sprintf("at least %.4g", bound), Own: &v, Unit: unit,
		Met: dec(v).GreaterThanOrEqual(dec(bound)), Miss: max(0, bound-v)}
}

// atMost is a limit from above: the most it can be must keep it.
func atMost(what, section string, own ingredient.Amount, bound float64, unit string) Limit {
	return upper(what, section, own, bound, unit, "at most", false)
}

// below is atMost without the bound itself.
func below(what, section string, own ingredient.Amount, bound float64, unit string) Limit {
	return upper(what, section, own, bound, unit, "below", true)
}

func upper(what, section string, own ingredient.Amount, bound float64, unit, word string, strict bool) Limit {
	v := own.Known
	l := Limit{What: what, Section: section, Bound: fmt.Sprintf("%s %.4g", word, bound), Own: &v, Unit: unit, Miss: max(0, v-bound)}
	if !math.IsInf(own.Most, 1) {
		c := dec(own.Most).Cmp(dec(bound))
		l.Met = c < 0 || c == 0 && !strict
	}
	return l
}

func exactly(v float64) ingredient.Amount { return ingredient.Amount{Known: v, Most: v} }

func judged(what, section string) Limit {
	return Limit{What: what, Section: section, Bound: "for you to judge", Judge: true}
}

func fact(what, section, bound string, met bool) Limit {
	return Limit{What: what, Section: section, Bound: bound, Met: met}
}

// frozenMix are the limits that 21 CFR 135.110 puts on mix and freezing.
func (m *makeup) frozenMix(section string) []Limit {
	stirred := judged("frozen while stirring", section)
	if m.hasFoam {
		stirred = fact("frozen while stirring", section, "all of it; the foam is folded in", false)
	}
	return append([]Limit{stirred, judged("mix pasteurised", section)}, m.weights(section)...)
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
		need := 20 - math.Floor(min(max(m.milkFat.Known, 10), 14))
		return append(limits,
			atLeast("milkfat", section, m.milkFat, 10, "%"),
			atLeast(fmt.Sprintf("nonfat milk solids beside %.1f %% milkfat", m.milkFat.Known), section, m.msnf, need, "%"))
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

func iceCream(m *makeup) Name {
	name := "ice cream"
	if m.hasGoat {
		name = "goat's milk ice cream"
	}
	limits := append(m.frozenMix("21 CFR 135.110(a)"), m.dairyLimits()...)
	yolk := m.yolk
	if rest := 100 - m.bulky.Known; rest > 0 {
		yolk = times(yolk, 100/rest)
	}
	limits = append(limits, below("egg yolk solids without bulky flavours", "21 CFR 135.110(f)", yolk, yolkSolids, "%"))
	return Name{Name: name, Region: US, Limits: limits, Note: m.bulkyNote()}
}

func frozenCustard(m *makeup) Name {
	limits := append(m.frozenMix("21 CFR 135.110(a)"), m.dairyLimits()...)
	need := max(leastYolkSolids, yolkSolids*(100-m.bulky.Known)/100)
	limits = append(limits, atLeast("egg yolk solids", "21 CFR 135.110(f)", m.yolk, need, "%"))
	return Name{Name: "frozen custard (also french ice cream)", Region: US, Limits: limits, Note: m.bulkyNote()}
}

// bulkyNote says what was counted as bulky.
func (m *makeup) bulkyNote() string {
	switch {
	case m.bulky.Most > m.bulky.Known:
		return fmt.Sprintf("bulky flavours are at least %.1f %% at their counted weight; the cocoa solids of an ingredient are unknown", m.bulky.Known)
	case m.bulky.Known > 0:
		return fmt.Sprintf("bulky flavours are %.1f %% at their counted weight (cocoa × 2.5, fruit and nuts × 1.4)", m.bulky.Known)
	}
	return ""
}

func sherbet(m *makeup) Name {
	const section = "21 CFR 135.140"
	total := m.milkFat.Plus(m.msnf, 1)
	return Name{Name: "sherbet", Region: US, Limits: []Limit{
		atLeast("weight", section, exactly(m.density/gPerMLOfLbPerGal), sherbetLbPerGal, "lb/gal"),
		atLeast("milkfat", section, m.milkFat, 1, "%"),
		atMost("milkfat", section, m.milkFat, 2, "%"),
		atLeast("nonfat milk-derived solids", section, m.msnf, 1, "%"),
		atLeast("milk solids", section, total, 2, "%"),
		atMost("milk solids", section, total, 5, "%"),
	}}
}

func waterIce(m *makeup) Name {
	const section = "21 CFR 135.160"
	return Name{Name: "water ice", Region: US, Limits: []Limit{
		fact("milk ingredients", section, "none", !m.hasDairy),
		fact("egg ingredients other than white", section, "none", !m.hasYolk),
	}}
}

func mellorine(m *makeup) Name {
	const section = "21 CFR 135.130"
	fatBound, proteinBound := 6.0, 2.7
	if m.bulky.Known > 0 {
		fatBound, proteinBound = 4.8, 2.2
	}
	return Name{Name: "mellorine", Region: US, Note: "made with fat only part of which may be milkfat; protein quality is for you to judge", Limits: append(m.frozenMix(section),
		atLeast("fat", section, m.fat, fatBound, "%"),
		atLeast("protein", section, m.protein, proteinBound, "%"),
		fact("fat other than milk and egg fat", section, "some", m.otherFat > incidentalFat))}
}

// incidentalFat is the % of fat from flavours that the yardsticks of the EU
// trade and the UK are read to leave out of account (common practice, no
// source).
const incidentalFat = 0.5

const (
	euCode  = "Code for Edible Ices, the EU trade's yardstick (no law; read in secondary pages)"
	ukGuide = "UK trade guide (no law since 2014; read in secondary pages)"
)

func euDairyIceCream(m *makeup) Name {
	return Name{Name: "dairy ice cream", Region: EU, Limits: []Limit{
		atLeast("milk fat", euCode, m.anyMilkFat, 5, "%"),
		atMost("fat that is neither milk nor egg", euCode, exactly(m.otherFat), incidentalFat, "%"),
	}, Note: "fat of nuts or cocoa that only flavours is for you to judge"}
}

func euIceCream(m *makeup) Name {
	return Name{Name: "ice cream (EU code)", Region: EU, Limits: []Limit{
		fact("fat", euCode, "some", m.fat.Known > 0),
		fact("protein", euCode, "some", m.protein.Known > 0),
	}}
}

func ukIceCream(m *makeup) Name {
	return Name{Name: "ice cream (UK guide)", Region: EU, Limits: []Limit{
		atLeast("fat", ukGuide, m.fat, 5, "%"),
		atLeast("milk protein", ukGuide, m.milkProtein, 2.5, "%"),
	}}
}

func ukDairyIceCream(m *makeup) Name {
	return Name{Name: "dairy ice cream (UK guide)", Region: EU, Limits: []Limit{
		atLeast("milk fat", ukGuide, m.anyMilkFat, 5, "%"),
		atLeast("milk protein", ukGuide, m.milkProtein, 2.5, "%"),
		atMost("fat that is neither milk nor egg", ukGuide, exactly(m.otherFat), incidentalFat, "%"),
	}, Note: "fat of nuts or cocoa that only flavours is for you to judge"}
}

func ukMilkIce(m *makeup) Name {
	return Name{Name: "milk ice (UK guide)", Region: EU, Limits: []Limit{
		atLeast("milk fat", ukGuide, m.anyMilkFat, 2.5, "%"),
		atLeast("nonfat milk solids", ukGuide, m.msnf, 6, "%"),
	}}
}

// propose words a truthful descriptive name (21 CFR 101.3(b), from memory).
func propose(f *Food, whole *makeup, all []Name) string {
	met := func(name, of string) bool {
		for _, n := range all {
			if n.Met && n.Of == of && strings.HasPrefix(n.Name, name) {
				return true
			}
		}
		return false
	}
	dense := "whole food"
	if f.Dense != nil && whole.hasFoam {
		dense = "dense phase alone"
	}
	var head string
	switch {
	case met("frozen custard", dense):
		head = "Frozen custard"
	case met("ice cream", dense) && whole.hasDairy && whole.milkFat.Known >= 10:
		head = "Ice cream"
	case whole.hasDairy && whole.hasYolk:
		head = "Frozen dairy dessert: custard"
	case whole.hasDairy:
		head = "Frozen dairy dessert"
	case whole.hasYolk:
		head = "Frozen dessert: custard without milk"
	default:
		head = "Frozen dessert"
	}
	if with := characterising(f); with != "" {
		head += " with " + with
	}
	if whole.hasFoam {
		head += " rippled with " + foamWord(f)
	}
	return head
}

// characterising returns the fruit, nuts or chocolate of at least 2 % that
// the food holds, 21 CFR 135.110(f) (older print), the heaviest two.
func characterising(f *Food) string {
	var names []string
	mass := f.MassG()
	for _, it := range list(f, US) {
		switch it.lines[0].Ingredient.Standing {
		case ingredient.Cocoa, ingredient.Fruit, ingredient.Nut, ingredient.DriedFruit:
			if it.grams >= 0.02*mass && len(names) < 2 {
				name, _, _ := strings.Cut(it.name, " (")
				names = append(names, name)
			}
		}
	}
	return wordList(names, "and")
}

// foamWord names the foam by what it is beaten from.
func foamWord(f *Food) string {
	for _, u := range f.Lines {
		in := u.Ingredient
		if u.Phase != DensePhase && u.Grams > 0 && in.Group == "egg" && in.Cell(ingredient.EggYolkSolids).Or(1) == 0 {
			return "egg-white foam"
		}
	}
	return "a sweet foam"
}
