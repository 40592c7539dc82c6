package label

import (
	"slices"
	"sort"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/form/flaw"
)

// Name is one name with the limits that stand before it.
type Name struct {
	Name   string       `json:"name"`
	Region Region       `json:"region"`
	Of     string       `json:"of"`  // "whole food", or "dense phase alone"
	Met    bool         `json:"met"` // every limit that can be computed is met
	Limits []Limit      `json:"limits"`
	Note   *flaw.Remark `json:"note,omitempty"`
}

// names returns the proposed name and every name tested, those of the label's
// own region first: on the whole food, then on the dense phase alone.
func names(f *Food, region Region) (proposed string, all []Name) {
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
		for _, s := range Standards {
			n := s.of(&p.m)
			n.Of = p.of
			all = append(all, n)
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Region == region && all[j].Region != region })
	return propose(f, region, &whole, all), all
}

func iceCream(m *makeup) Name {
	yolk := m.yolk
	if rest := 100 - m.bulky.Known; rest > 0 {
		yolk = times(yolk, 100/rest)
	}
	limits := append(m.iceCreamMix(), below(flaw.Say("egg yolk solids without bulky flavours"), "21 CFR 135.110(a)(2)", yolk, yolkSolids, "%"))
	return Name{Name: m.named("ice cream"), Region: US, Limits: limits, Note: m.bulkyNote()}
}

func frozenCustard(m *makeup) Name {
	need := max(leastYolkSolids, yolkSolids*(100-m.bulky.Known)/100)
	limits := append(m.iceCreamMix(), atLeast("egg yolk solids", "21 CFR 135.110(a)(2)", m.yolk, need, "%"))
	return Name{Name: m.named(string(flaw.Word("frozen custard (also french ice cream)"))), Region: US, Limits: limits, Note: m.bulkyNote()}
}

func sherbet(m *makeup) Name {
	const section = "21 CFR 135.140"
	total := m.milkFat.Plus(m.msnf, 1)
	return Name{Name: m.named("sherbet"), Region: US, Limits: []Limit{
		m.stirred(section), judged("mix pasteurised", section),
		atLeast("weight", section, exactly(m.density/gPerMLOfLbPerGal), sherbetLbPerGal, "lb/gal"),
		atLeast("milkfat", section, m.milkFat, 1, "%"),
		atMost("milkfat", section, m.milkFat, 2, "%"),
		atLeast("nonfat milk-derived solids", section, m.msnf, 1, "%"),
		atLeast("milk solids", section, total, 2, "%"),
		atMost("milk solids", section, total, 5, "%"),
	}}
}

// waterIce: made "in the same manner" as sherbet, but that the mix need not be
// pasteurised (§ 135.160; that the sherbet's weight holds too is from memory).
func waterIce(m *makeup) Name {
	const section = "21 CFR 135.160"
	return Name{Name: "water ice", Region: US, Limits: []Limit{
		m.stirred(section),
		atLeast("weight", string(flaw.Word("21 CFR 135.160 by 135.140"))+", from memory", exactly(m.density/gPerMLOfLbPerGal), sherbetLbPerGal, "lb/gal"),
		fact("milk ingredients", section, "none", !m.hasDairy),
		fact("egg ingredients other than white", section, "none", !m.hasYolk),
	}}
}

// mellorine: 6 % fat and 2.7 % protein of the food without its bulky flavours
// (that exclusion from memory), and in no case under 4.8 and 2.2 %.
func mellorine(m *makeup) Name {
	const section = "21 CFR 135.130"
	limits := m.frozenMix(section)
	if rest := 100 - m.bulky.Known; m.bulky.Known == 0 {
		limits = append(limits, atLeast("fat", section, m.fat, 6, "%"), atLeast("protein", section, m.protein, 2.7, "%"))
	} else if rest > 0 {
		limits = append(limits,
			atLeast("fat without the bulky flavours' weight", section, times(m.fat, 100/rest), 6, "%"),
			atLeast("protein without the bulky flavours' weight", section, times(m.protein, 100/rest), 2.7, "%"),
			atLeast("fat", section, m.fat, 4.8, "%"), atLeast("protein", section, m.protein, 2.2, "%"))
	} else {
		limits = append(limits, fact("food beside its bulky flavours", section, "some", false))
	}
	return Name{Name: "mellorine", Region: US, Note: flaw.Say("made with fat only part of which may be milkfat; protein quality and vitamin A are for you to judge"),
		Limits: append(limits, fact("fat other than milk, egg and flavour fat", section, "some, from an ingredient used for its fat", m.fatSources > incidentalFat))}
}

// incidentalFat is the % of fat from flavours that the yardsticks of the EU
// trade and the UK are read to leave out of account (common practice, no
// source).
const incidentalFat = 0.5

const (
	euCode  = string(flaw.Word("Code for Edible Ices, the EU trade's yardstick (no law; read in secondary pages)"))
	ukGuide = string(flaw.Word("UK trade guide (no law since 2014; read in secondary pages)"))
)

func euDairyIceCream(m *makeup) Name {
	return Name{Name: "dairy ice cream", Region: EU, Limits: []Limit{
		atLeast("milk fat", euCode, m.anyMilkFat, 5, "%"),
		atMost("fat that is neither milk nor egg", euCode, exactly(m.otherFat), incidentalFat, "%"),
	}, Note: flaw.Say("fat of nuts or cocoa that only flavours is for you to judge")}
}

func euIceCream(m *makeup) Name {
	return Name{Name: string(flaw.Word("ice cream (EU code)")), Region: EU, Limits: []Limit{
		fact("fat", euCode, "some", m.fat.Known > 0),
		fact("protein", euCode, "some", m.protein.Known > 0),
	}}
}

func ukIceCream(m *makeup) Name {
	return Name{Name: string(flaw.Word("ice cream (UK guide)")), Region: EU, Limits: []Limit{
		atLeast("fat", ukGuide, m.fat, 5, "%"),
		atLeast("milk protein", ukGuide, m.milkProtein, 2.5, "%"),
	}}
}

func ukDairyIceCream(m *makeup) Name {
	return Name{Name: string(flaw.Word("dairy ice cream (UK guide)")), Region: EU, Limits: []Limit{
		atLeast("milk fat", ukGuide, m.anyMilkFat, 5, "%"),
		atLeast("milk protein", ukGuide, m.milkProtein, 2.5, "%"),
		atMost("fat that is neither milk nor egg", ukGuide, exactly(m.otherFat), incidentalFat, "%"),
	}, Note: flaw.Say("fat of nuts or cocoa that only flavours is for you to judge")}
}

func ukMilkIce(m *makeup) Name {
	return Name{Name: string(flaw.Word("milk ice (UK guide)")), Region: EU, Limits: []Limit{
		atLeast("milk fat", ukGuide, m.anyMilkFat, 2.5, "%"),
		atLeast("nonfat milk solids", ukGuide, m.msnf, 6, "%"),
	}}
}

// propose words a truthful descriptive name (21 CFR 101.3(b), from memory;
// Regulation (EU) No 1169/2011, Article 17). A standard's name stands for the
// whole only where the whole meets it, and for the custard where that does.
func propose(f *Food, region Region, whole *makeup, all []Name) string {
	met := func(name, of string) bool {
		return slices.ContainsFunc(all, func(n Name) bool {
			return n.Met && n.Region == region && n.Of == of && strings.HasPrefix(strings.TrimPrefix(n.Name, "goat's milk "), name)
		})
	}
	const here, alone = "whole food", "dense phase alone"
	head, part := "Frozen dessert", ""
	if whole.hasDairy {
		head = "Frozen dairy dessert"
	}
	if whole.hasYolk {
		part = "egg custard"
	}
	if whole.hasDairy && whole.hasYolk {
		part = "custard"
	}
	if region == EU {
		switch {
		case met("dairy ice cream (UK guide)", here):
			head = "Dairy ice cream"
		case met("ice cream (UK guide)", here):
			head = "Ice cream"
		}
	} else {
		standards := [...]string{"frozen custard", "ice cream", "sherbet", "water ice", "mellorine"}
		for _, name := range standards {
			if met(name, here) {
				head, part = whole.named(name), ""
				head = flaw.Capital(head)
				break
			}
		}
		for _, name := range standards[:2] {
			if part != "" && met(name, alone) {
				part = whole.named(name)
				break
			}
		}
	}
	if whole.hasFoam && !whole.hasDense {
		part = foamWord(f)
	}
	if part != "" {
		head += ": " + part
	}
	if with := characterising(f, region); with != "" {
		head += " with " + with
	}
	if whole.hasFoam && whole.hasDense {
		head += " rippled with " + foamWord(f)
	}
	return head
}

// Least of a fruit or of nuts, in % of the food, that is not "too little" to
// stand in a name: 21 CFR part 135 (older print).
func leastOf(in *ingredient.Ingredient) float64 {
	if in.Standing == ingredient.Nut || in.Standing == ingredient.Cocoa {
		return 2
	}
	words := strings.Fields(strings.ReplaceAll(in.ID, "_", " "))
	any := func(of ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(of, w) })
	}
	switch {
	case any("lemon", "lime", "orange", "yuzu", "grapefruit", "mandarin"):
		return 2
	case any("strawberry", "raspberry", "blackberry", "blueberry", "cranberry", "cherry", "currant", "gooseberry"):
		return 6
	}
	return 10
}

// enough is an ingredient that may characterise the food: cocoa, nuts and
// fruit at their least or more. Dried fruit counts at its fresh weight.
func enough(it *listed, mass float64) bool {
	in, g := it.lines[0].Ingredient, it.grams
	switch {
	case in.Standing == ingredient.DriedFruit:
		g *= (100 - in.Cell(ingredient.Water).Least()) / freshSolids
	case in.Standing != ingredient.Cocoa && in.Standing != ingredient.Nut && !isFruit(in):
		return false
	}
	return dec(100 * g / mass).GreaterThanOrEqual(dec(leastOf(in)))
}

// isFruit tells fruit, a maker's own too: that has no standing, but a name.
func isFruit(in *ingredient.Ingredient) bool {
	return in.Standing == ingredient.Fruit || in.Standing == ingredient.DriedFruit || in.Own && kind.Of(in) == kind.Sour
}

// alcoholPercent returns the alcohol of the finished food, % by weight, and
// whether name and notes tell of it: by the one limit that the card has too.
func (f *Food) alcoholPercent() (percent float64, told bool) {
	percent = 100 * f.alcoholG() / f.MassG()
	return percent, limits.AlcoholTold.Level(percent) > limits.Within
}

// characterising returns what a name should tell of: the fruit, nuts and
// chocolate that the food holds enough of, first what the maker's own name
// speaks of, then the heaviest, two in all; and its spirits. A fruit of which
// there is less than of another that is too little, the lemon juice beside the
// sea buckthorn, sharpens and does not characterise.
func characterising(f *Food, region Region) string {
	var makers, flavours, spirits []string
	_, told := f.alcoholPercent()
	outweighed := false
	mass := f.MassG()
	for _, it := range list(f, region) {
		name, _, _ := strings.Cut(it.name, " (")
		in := it.lines[0].Ingredient
		switch {
		case enough(&it, mass) && mentions(f.Name, in):
			makers = append(makers, name)
		case enough(&it, mass):
			if !isFruit(in) || !outweighed {
				flavours = append(flavours, name)
			}
		case isFruit(in):
			outweighed = true
		case in.Group != "flavour" && in.Cell(ingredient.Alcohol).Least() > 1 && told:
			spirits = append(spirits, name)
		}
	}
	flavours = append(makers, flavours...)
	return wordList(append(flavours[:min(2, len(flavours))], spirits...), "and")
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
