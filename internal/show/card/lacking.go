package card

import (
	"fmt"
	"slices"
	"strings"

	"ripplewright/internal/show/draw/typeset"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// A Lack is a text of a design with letters that the fonts of cards and labels
// do not have. Drawn, each of them is face.Mark; written as text they stay.
type Lack struct {
	Path    string // of the text, as in a design.Problem: "dense.lines[2].note"
	Letters []rune // each once
}

func (l Lack) String() string { return say.Lacking(l.Letters, face.Mark) }

// Lacking returns the texts of an evaluated design that its card prints and
// cannot set as they are, in the design's order.
func Lacking(d design.Design, r *model.Result) []Lack {
	var out []Lack
	look := func(path string, texts ...string) {
		var letters []rune
		for _, s := range texts {
			for _, c := range face.Missing(typeset.Plain(s)) {
				if !slices.Contains(letters, c) {
					letters = append(letters, c)
				}
			}
		}
		if letters != nil {
			out = append(out, Lack{path, letters})
		}
	}
	look("name", d.Name)
	look("notes", d.Notes)
	look("label.portion", d.Label.Portion)
	look("kitchen.profile", d.Kitchen.Profile)
	known := map[*ingredient.Ingredient]bool{}
	for _, l := range r.Lines {
		line := fmt.Sprintf("%s.lines[%d]", l.Part, l.Index)
		look(line+".note", d.Lines(l.Part)[l.Index].Note)
		if known[l.Ingredient] {
			continue
		}
		known[l.Ingredient] = true
		own := slices.IndexFunc(d.Own, func(in *ingredient.Ingredient) bool { return in.ID == l.Ingredient.ID })
		if own < 0 { // it stands on the maker's shelf, not in the file
			look(line+".ingredient", printedOf(l.Ingredient)...)
			continue
		}
		for i, s := range printedOf(l.Ingredient) {
			look(fmt.Sprintf("ingredients[%d].%s", own, printedKeys[i]), s)
		}
	}
	return out
}

// LackingOnLabel does as Lacking for what the design's label l prints.
func LackingOnLabel(d design.Design, r *model.Result, l *label.Label) []Lack {
	text := typeset.Plain(string(labelText(l)))
	var out []Lack
	for _, k := range Lacking(d, r) {
		if k.Path == "notes" || k.Path == "kitchen.profile" || strings.HasSuffix(k.Path, ".note") {
			continue // words for the cook
		}
		k.Letters = slices.DeleteFunc(k.Letters, func(c rune) bool { return !strings.ContainsRune(text, c) })
		if len(k.Letters) > 0 {
			out = append(out, k)
		}
	}
	return out
}

// printedKeys are the words of an ingredient that cards and labels print.
var printedKeys = [...]string{"name", "kitchen_name", "common_name", "common_name_eu", "parts"}

func printedOf(in *ingredient.Ingredient) []string {
	return []string{in.Name, in.KitchenName, in.CommonName, in.CommonNameEU, in.Parts}
}
