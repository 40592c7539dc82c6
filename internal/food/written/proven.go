package written

import (
	"slices"
	"strings"
	"sync"

	"ripplewright/internal/food/ingredient"
)

// saltless is the most sodium of what is called unsalted, mg/100 g: "very low sodium" of
// Codex Alimentarius, CAC/GL 23-1997, table of conditions.
const saltless = 40

// proven reports whether a word that could make another food of it tells what the record is
// anyway: it has no salt, no sugar is added, or it is measured in that shape.
func proven(in *ingredient.Ingredient, w string) bool {
	if kinds[in.Group][w] || kinds[in.ID][w] {
		return true
	}
	cell, most := ingredient.Cell{}, 0.0
	switch w = one(w); w {
	case "unsalted":
		cell, most = in.Cell(ingredient.SodiumMG), saltless
	case "unsweetened":
		cell = in.Cell(ingredient.AddedSugars)
	case "kernel", "mini", "miniature":
		return in.Group == "nut_seed" && w == "kernel" || words(keyOf(strings.ReplaceAll(in.Measures, ";", " ")))[w] || w == "mini" && proven(in, "miniature")
	case "whole":
		return in.Group == "fruit" && wholeCup.in(in.Measures) // cranberries that nobody chopped
	case "chip", "crumb":
		return words(keyOf(strings.NewReplacer("crushed", "crumb", ";", " ").Replace(in.Measures)))[w]
	}
	return cell.Known && cell.Value <= most
}

// wholeCup finds that a record measures a fruit whole.
var wholeCup = find(`\bcup, whole\b`)

var toProve = words("unsalted unsweetened chip crumb kernel mini miniature")

// kinds are the sorts that a food is grown in and is the same record for, by the group or
// the id. common practice, no source.
var kinds = map[string]map[string]bool{
	"fruit":         words("granny smith bramley braeburn gala fuji jonagold boskoop cox alphonso kesar ataulfo williams bartlett conference comice anjou bosc morello montmorency bing rainier gariguette mara des bois victoria cavendish key persian tahiti amalfi sorrento sicilian eureka hass"),
	"nut_seed":      words("whole marcona bronte piedmont piemonte sicilian turkish iranian californian texas english"),
	"maple_syrup":   words("dark amber golden robust canadian vermont"),
	"oil_olive":     words("fruity mild peppery grassy"),
	"banana":        words("brown spotty spotted speckled overripe"),
	"egg_yolk_past": words("liquid"), "egg_white_past": words("liquid"), "egg_whole_past": words("liquid"),
	"nfdm_regular": words("low medium high heat"),
	"matcha":       words("uji wazuka nishio yame kagoshima ceremonial culinary"),
	"tea_leaves":   words("earl grey assam darjeeling ceylon english irish breakfast keemun"),
}

// sorts are the words of all kinds.
var sorts = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{}
	for _, kind := range kinds {
		for w := range kind {
			all[w] = true
		}
	}
	return all
})

// provenly returns what name means without words that are proven.
func (n *names) provenly(name string) (meaning, bool) {
	var told []string
	kept := slices.DeleteFunc(strings.Fields(strings.ToLower(name)), func(w string) bool {
		drop := toProve[one(w)] || sorts()[w]
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
