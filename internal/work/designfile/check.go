package designfile

import (
	"fmt"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// Check reports lines whose ingredient neither lib nor the file itself has,
// as an *Error with the place of each; nil if there is none.
func Check(f *File, lib *ingredient.Library) error {
	lib = lib.With(f.Design.Own)
	var found []Problem
	for _, part := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
		for i, l := range f.Design.Lines(part) {
			if _, ok := lib.Find(l.Ingredient); ok {
				continue
			}
			path := fmt.Sprintf("%s.lines[%d].ingredient", part, i)
			if l.CountOf != "" {
				path = fmt.Sprintf("%s.lines[%d].%s", part, i, l.CountOf)
			}
			found = append(found, Problem{UnknownIngredient, f.Line(path), path, lib.Unknown(l.Ingredient).Error()})
		}
	}
	return errorOf(f.Name, found)
}
