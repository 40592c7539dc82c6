package onpack

import "ripplewright/internal/form/flaw"

// A rule is what the law of a place asks of an element in one way of sale.
type rule struct {
	due       bool
	voluntary bool         // not asked for, and printed all the same where it is known
	why       flaw.Message // why it is not needed
	section   flaw.Word
	class     SourceClass
}

func due(section flaw.Word, class SourceClass) rule {
	return rule{due: true, section: section, class: class}
}

func free(why flaw.Message, section flaw.Word, class SourceClass) rule {
	return rule{why: why, section: section, class: class}
}

func may(why flaw.Message, section flaw.Word, class SourceClass) rule {
	return rule{voluntary: true, why: why, section: section, class: class}
}

// usRules are those of a package, whoever sells it. A panel is always there to
// print, though small sellers may do without.
var usRules = map[Key]rule{
	Name:        due("21 CFR 101.3", LawRead),
	Quantity:    due("21 CFR 101.7; by volume, frozen: (b)(2)(i) from memory", LawRead),
	Ingredients: due("21 CFR 101.4", LawRead),
	Allergens:   due("FD&C Act 403(w)", Secondary),
	Nutrition:   due("21 CFR 101.9; small sellers may be exempt, (j)(1) to (3), (18)", LawRead),
	Maker:       due("21 CFR 101.5", FromMemory),
	Date:        may("no federal rule asks for a date; some states rule milk products", "21 CFR 101; state law", FromMemory),
	Storage:     may("", "voluntary", Decided),
	Lot:         may("not required of this food", "21 CFR 101", FromMemory),
	Origin:      free("only imported food names its origin", "19 CFR 134", FromMemory),
	Warnings:    may("nothing in it calls for one", "21 CFR 101.17 and the sections named", FromMemory),
}

// euRules are those of prepacked food, Regulation (EU) No 1169/2011, which the UK
// keeps.
var euRules = map[Key]rule{
	Name:        due("Reg. (EU) No 1169/2011, Art 9(1)(a), 17", Authority),
	Quantity:    due("Reg. (EU) No 1169/2011, Art 9(1)(e), 23", Authority),
	Ingredients: due("Reg. (EU) No 1169/2011, Art 9(1)(b), (d), 18", LawRead),
	Allergens:   due("Reg. (EU) No 1169/2011, Art 9(1)(c), 21", LawRead),
	Nutrition:   due("Reg. (EU) No 1169/2011, Art 9(1)(l); small amounts sold by their maker may be exempt, Annex V, 19", LawRead),
	Maker:       due("Reg. (EU) No 1169/2011, Art 9(1)(h)", Authority),
	Date:        due("Reg. (EU) No 1169/2011, Art 9(1)(f), 24, Annex X", LawRead),
	Storage:     due("Reg. (EU) No 1169/2011, Art 9(1)(g), 25", Authority),
	Lot:         due("Directive 2011/91/EU", FromMemory),
	Origin:      free("due only where its lack would mislead: that is yours to judge", "Reg. (EU) No 1169/2011, Art 26", Authority),
	Warnings:    may("nothing in it calls for one", "Reg. (EU) No 1169/2011, Annex III", FromMemory),
}

const (
	article44 flaw.Word    = "Reg. (EU) No 1169/2011, Art 44"
	onTheSpot flaw.Message = "food packed for direct sale owes the allergens alone by EU law; ask what your state adds"
	toOrder   flaw.Message = "food served to order needs no label"
)

// stallOnly are the elements that a stall's own tubs owe, packed before the
// order; what is not named is not needed.
var stallOnly = map[Place]map[Key]rule{
	EU: {Name: due(article44, Secondary), Allergens: due(article44+"(1)(a)", LawRead)},
	IE: {Name: due(article44, Secondary), Allergens: due(article44+"(1)(a)", LawRead)},
	IT: {Name: due(article44, Secondary), Allergens: due(article44+"(1)(a)", LawRead)},
	UK: {
		Name:        due("prepacked for direct sale since 1 October 2021, read in council pages", Secondary),
		Ingredients: due("prepacked for direct sale since 1 October 2021, read in council pages", Secondary),
		Allergens:   due("prepacked for direct sale since 1 October 2021, read in council pages", Secondary),
	},
	// Taken from the counter by the customer: LMIDV § 4(1) asks for Article
	// 9(1)(a) to (d) and (f) to (k), FPackV § 19 for the quantity.
	DE: {
		Name:        due("LMIDV § 4(1), Art 9(1)(a)", LawRead),
		Ingredients: due("LMIDV § 4(1), Art 9(1)(b), (d)", LawRead),
		Allergens:   due("LMIDV § 4(1), Art 9(1)(c)", LawRead),
		Quantity:    due("FPackV § 19(1), (4); of what is made by hand a sign beside it does, § 38(7)", LawRead),
		Date:        due("LMIDV § 4(1), Art 9(1)(f)", LawRead),
		Storage:     due("LMIDV § 4(1), Art 9(1)(g)", LawRead),
		Maker:       due("LMIDV § 4(1), Art 9(1)(h)", LawRead),
	},
}

// deQuantityML is up to how many mL a tub of frozen dessert may leave its
// quantity out in Germany.
const deQuantityML = 200

// ruleOf returns the rule of an element.
func ruleOf(p Pack, f Food, key Key) rule {
	r := prepacked(p, key)
	switch p.Sale {
	case Stall:
		if p.Place != US {
			r = ofStall(p.Place, key, r)
		}
	case Scooped:
		r = scooped(p.Place, key, r)
	}
	m := maker{Pack: &p, Food: &f}
	switch {
	case key == Nutrition && r.due && p.Exempt:
		r = exempt(p.Place)
	case key == Quantity && r.due && p.Place == DE && p.nominalML(&f) <= deQuantityML:
		r = may("frozen dessert of 200 ml or less may leave it out", "FPackV § 22(2) no. 5", LawRead)
	case key == Lot && r.due && m.dateSavesLot():
		r = free("the date with its day and month stands for it", "Directive 2011/91/EU as LKV § 2 no. 5 has it", LawRead)
	}
	if key == Lot && p.Lot != "" && p.Sale != Scooped { // the maker wants it there
		r.voluntary = true
	}
	return r
}

// exempt is the rule of nutrition for one who sells little, as the maker judges.
func exempt(place Place) rule {
	if place == US {
		return free("you say that you are a small seller who is exempt; a claim about nutrition ends that", "21 CFR 101.9(j)(1), (18)", FromMemory)
	}
	return free("you say that you sell small amounts, yourself or to shops near by; a claim about nutrition ends that", "Reg. (EU) No 1169/2011, Annex V, 19", LawRead)
}

// dateSavesLot reports whether the date will show day and month, which it does
// by default.
func (m *maker) dateSavesLot() bool {
	if m.Form == "" || m.Form == ByDay {
		return true
	}
	if m.Made.IsZero() || !m.Durability.Known() {
		return false
	}
	return BestBeforeOf(m.Made, m.Durability).Text(m.Form, "…", "…") == "" // falls back to the full date
}

func prepacked(p Pack, key Key) rule {
	if p.Place == US {
		return usRules[key]
	}
	r := euRules[key]
	switch {
	case p.Tub.FewWords() && (key == Ingredients || key == Nutrition || key == Maker || key == Storage || key == Lot):
		return free("its largest surface is under 10 cm²", "Reg. (EU) No 1169/2011, Art 16(2)", FromMemory)
	case p.Tub.NoPanel() && key == Nutrition:
		return free("its largest surface is under 25 cm²", "Reg. (EU) No 1169/2011, Annex V, 18", LawRead)
	}
	return r
}

func ofStall(place Place, key Key, prepacked rule) rule {
	if r, ok := stallOnly[place][key]; ok {
		return r
	}
	switch {
	case key == Lot:
		return free("food packed for prompt sale where it is made needs none", "Directive 2011/91/EU as LKV § 2 has it", LawRead)
	case key == Nutrition && place == DE:
		return free("not asked of food packed for direct sale", "LMIDV § 4(1)", LawRead)
	case key == Warnings, key == Origin:
		return prepacked
	case place == UK:
		return free("a tub packed on the spot for direct sale owes its name and its ingredients with the allergens", article44+"; council pages", Secondary)
	}
	return free(onTheSpot, article44, LawRead)
}

func scooped(place Place, key Key, prepacked rule) rule {
	switch {
	case key == Name && place == US:
		return may("", "21 CFR 101.3; no label is asked of food served to order", FromMemory)
	case key == Name:
		return due(article44, Secondary)
	case key == Allergens && place == US:
		return due("they must be right when a customer asks", FromMemory)
	case key == Allergens && place == DE:
		return due("LMIDV § 4(2) to (4): by sign, list or menu, or by word with a written record", LawRead)
	case key == Allergens:
		return due(article44+"(1)(a): by sign or by your staff", LawRead)
	case key == Warnings:
		return prepacked
	case place == US:
		return free(toOrder, "21 CFR 101", FromMemory)
	}
	return free(toOrder, article44, LawRead)
}
