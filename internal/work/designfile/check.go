package designfile

import (
	"fmt"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// Check reports lines whose ingredient neither lib nor the file itself has,
// as an *Error with the place of each; nil if there is none.
func Check(f *File, lib *ingredient.Library) error {
	return errorOf(f.Name, unknown(f, lib, nil))
}

// unknown finds the lines that name what lib, the file and known lack. Lines
// without a name are reported elsewhere.
func unknown(f *File, lib *ingredient.Library, known map[string]bool) []Problem {
	lib = lib.With(f.Design.Own)
	var found []Problem
	for _, part := range design.Parts {
		for i, l := range f.Design.Lines(part) {
			if _, ok := lib.Find(l.Ingredient); ok || l.Ingredient == "" || known[l.Ingredient] {
				continue
			}
			if len(found) == maxFaults {
				return found
			}
			path := fmt.Sprintf("%s.lines[%d].ingredient", part, i)
			if l.CountOf != "" {
				path = fmt.Sprintf("%s.lines[%d].%s", part, i, l.CountOf)
			}
			found = append(found, Problem{UnknownIngredient, f.Line(path), path, lib.Unknown(l.Ingredient)})
		}
	}
	return found
}
