package onpack

import (
	"math"
	"slices"
	"strings"

	"ripplewright/internal/form/flaw"
)

// maker is what an element needs to be filled in.
type maker struct {
	*Pack
	*Food
	words Words
}

func plain(parts []Part) string {
	var all []string
	for _, p := range parts {
		var b strings.Builder
		for _, r := range p.Runs {
			b.WriteString(r.Text)
		}
		if s := b.String(); !slices.Contains(all, s) {
			all = append(all, s)
		}
	}
	return strings.Join(all, " / ")
}

func said(lang, text string) Part { return Part{Lang: lang, Runs: []Run{{Text: text}}} }

// weakest is how the weakest of the words in parts was read.
func weakest(parts []Part) SourceClass {
	worst := -1
	for _, p := range parts {
		worst = max(worst, slices.Index(classRank, p.Class))
	}
	if worst < 0 {
		return ""
	}
	return classRank[worst]
}

// fill returns what stands on the label of an element, with words of ours for it where it
// is no text, or nothing and what the maker must add.
func (m *maker) fill(key Key) (parts []Part, told *flaw.Remark) {
	switch key {
	case Name:
		return m.names()
	case Quantity:
		if m.NominalML > m.HoldsML+customaryWithin {
			tolerable, never := TolerableErrorML(m.NominalML)
			return nil, flaw.Say("a quantity that the tubs hold: frozen they hold %.0f mL, and their average must reach what stands on them; single ones may miss %.0f mL by %.4g mL, none by more than %.4g mL",
				math.Floor(m.HoldsML), m.NominalML, tolerable, never)
		}
		return m.quantity(), nil
	case Ingredients:
		return m.lists()
	case Allergens:
		return m.allergens()
	case Nutrition:
		return []Part{said("", "the panel")}, flaw.Say("the panel")
	case Maker:
		if strings.TrimSpace(m.Pack.Maker) == "" {
			return nil, flaw.Say("your name and address")
		}
		return []Part{said("", strings.Join(strings.FieldsFunc(m.Pack.Maker, func(r rune) bool { return r == '\n' }), ", "))}, nil
	case Date:
		return m.date()
	case Storage:
		return m.storage(), nil
	case Lot:
		return m.lot()
	case Warnings:
		return m.statements(), nil
	}
	return nil, nil
}

func (m *maker) names() (parts []Part, add *flaw.Remark) {
	var lacking []string
	for _, lang := range m.languages() {
		name := m.Names[lang]
		if lang == "en" && name == "" {
			name = m.Food.Name
		}
		if strings.TrimSpace(name) == "" {
			lacking = append(lacking, lang)
			continue
		}
		parts = append(parts, Part{Lang: lang, Runs: []Run{{name, true}}})
	}
	if len(lacking) > 0 {
		return nil, flaw.Say("the name of the food in %s, as in “%s”", languageList(lacking), m.Food.Name)
	}
	return parts, nil
}

func (m *maker) quantity() []Part {
	var parts []Part
	for _, lang := range m.languages() {
		sign, _ := m.words.In(lang, "decimal_sign")
		text := NetQuantity(m.Place, m.nominalML(m.Food), sign.Text)
		if m.WithGrams && m.Place != US && m.HoldsG > 0 {
			text += " (" + grams(m.HoldsG*m.nominalML(m.Food)/m.HoldsML) + ")"
		}
		if !slices.ContainsFunc(parts, func(p Part) bool { return p.Runs[0].Text == text }) {
			parts = append(parts, said(lang, text))
		}
	}
	return parts
}

func (m *maker) lists() (parts []Part, add *flaw.Remark) {
	var lacking []string
	for _, lang := range m.languages() {
		if lang == "en" && m.Lists[lang] == "" {
			parts = append(parts, Part{Lang: lang, Runs: m.Food.Ingredients})
			continue
		}
		list := strings.TrimSpace(m.Lists[lang])
		if list == "" {
			lacking = append(lacking, lang)
			continue
		}
		head, _ := m.words.In(lang, "ingredients")
		runs := m.words.Emphasised(lang, m.Food.Allergens, list)
		parts = append(parts, Part{Lang: lang, Runs: append([]Run{{Text: head.Text + ": "}}, runs...)}.of(head))
	}
	if len(lacking) > 0 {
		return nil, flaw.Say("the ingredients in %s, in the order of “%s”", languageList(lacking), m.IngredientsText)
	}
	return parts, nil
}

func (m *maker) allergens() (parts []Part, told *flaw.Remark) {
	if len(m.Unstated) > 0 {
		return nil, flaw.Say("the allergens of %s, which nobody has stated", strings.Join(m.Unstated, ", "))
	}
	if m.Place == US {
		if m.Contains == "" {
			return []Part{said("en", "none of the nine")}, flaw.Say("none of the nine")
		}
		return []Part{said("en", m.Contains)}, nil
	}
	for _, lang := range m.languages() {
		var words, missing []string
		var classes []Part
		for _, a := range m.Food.Allergens {
			word, _ := m.words.In(lang, allergenTerm(a))
			classes = append(classes, Part{}.of(word))
			if word.Text == "" {
				word.Text = strings.ReplaceAll(a, "_", " ")
			}
			words = append(words, word.Text)
			if list := m.Lists[lang]; list != "" && !m.words.NamesAllergen(lang, a, list) {
				missing = append(missing, word.Text)
			}
		}
		if len(missing) > 0 {
			return nil, flaw.Say("the allergens that your list in %s does not name: %s", flaw.Word(LanguageName(lang)), strings.Join(missing, ", "))
		}
		if len(words) == 0 {
			words, told = []string{"none of the fourteen"}, flaw.Say("none of the fourteen")
		}
		part := said(lang, strings.Join(words, ", "))
		part.Class = weakest(classes)
		parts = append(parts, part)
	}
	return parts, told
}

func (m *maker) date() (parts []Part, add *flaw.Remark) {
	switch {
	case m.Made.IsZero() && !m.Durability.Known():
		return nil, flaw.Say("the day it was made and for how long it keeps, as you have found out")
	case m.Made.IsZero():
		return nil, flaw.Say("the day it was made")
	case !m.Durability.Known():
		return nil, flaw.Say("for how long it keeps, as you have found out")
	}
	b := BestBeforeOf(m.Made, m.Durability)
	if m.Place == US {
		return []Part{said("en", b.USText())}, nil
	}
	for _, lang := range m.languages() {
		day, _ := m.words.In(lang, "best_before_day")
		end, known := m.words.In(lang, "best_before_end")
		if !known {
			end.Text = ""
		}
		text := b.Text(m.Form, day.Text, end.Text)
		if text == "" { // the full date is always lawful
			text = b.Text(ByDay, day.Text, end.Text)
		}
		parts = append(parts, said(lang, text).of(day))
	}
	return parts, nil
}

func (m *maker) storage() []Part {
	if s := strings.TrimSpace(m.Pack.Storage); s != "" {
		return []Part{said("", s)}
	}
	if m.Place == US {
		return []Part{said("en", "Keep frozen")}
	}
	var parts []Part
	for _, lang := range m.languages() {
		word, ok := m.words.In(lang, "keep_frozen")
		if !ok { // the cold in figures reads in every language
			word.Text = "−18 °C"
		}
		parts = append(parts, said(lang, strings.Replace(word.Text, "-18", "−18", 1)).of(word))
	}
	return parts
}

func (m *maker) lot() (parts []Part, add *flaw.Remark) {
	switch {
	case m.Pack.Lot != "":
		return []Part{said("", m.Pack.Lot)}, nil
	case m.Made.IsZero():
		return nil, flaw.Say("a lot, or the day it was made")
	}
	return []Part{said("", LotOf(m.Made))}, nil
}

func (m *maker) statements() []Part {
	var parts []Part
	for _, s := range m.Statements {
		parts = append(parts, said("en", s))
	}
	return parts
}
