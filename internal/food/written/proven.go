package written

import (
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
)

// saltless is the most sodium of what is called unsalted, mg/100 g: "very low sodium" of
// Codex Alimentarius, CAC/GL 23-1997, table of conditions.
const saltless = 40

// proven reports whether a word that could make another food of it tells what the record is
// anyway: it has no salt, no sugar is added, or it is measured in that shape.
func proven(in *ingredient.Ingredient, w string) bool {
	cell, most := ingredient.Cell{}, 0.0
	switch w = one(w); w {
	case "unsalted":
		cell, most = in.Cell(ingredient.SodiumMG), saltless
	case "unsweetened":
		cell = in.Cell(ingredient.AddedSugars)
	case "kernel", "mini", "miniature":
		return in.Group == "nut_seed" && w == "kernel" || words(keyOf(strings.ReplaceAll(in.Measures, ";", " ")))[w] || w == "mini" && proven(in, "miniature")
	case "chip", "crumb":
		return words(keyOf(strings.NewReplacer("crushed", "crumb", ";", " ").Replace(in.Measures)))[w]
	}
	return cell.Known && cell.Value <= most
}

var toProve = words("unsalted unsweetened chip crumb kernel mini miniature")

// provenly returns what name means without words that are proven.
func (n *names) provenly(name string) (meaning, bool) {
	var told []string
	kept := slices.DeleteFunc(strings.Fields(strings.ToLower(name)), func(w string) bool {
		drop := toProve[one(w)]
		if drop {
			told = append(told, w)
		}
		return drop
	})
	m, _, ok := n.look(strings.Join(kept, " "), "")
	if !ok || len(told) == 0 || len(m.ids) != 1 || m.perhaps {
		return meaning{}, false
	}
	in, _ := n.lib.Find(m.ids[0])
	return m, !slices.ContainsFunc(told, func(w string) bool { return !proven(in, w) })
}
