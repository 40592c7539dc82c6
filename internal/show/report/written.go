package report

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/written"
	"ripplewright/internal/show/say"
)

// WrittenLine is a line of a pasted recipe as JSON: text, ingredient, grams, how,
// doubt; null where there is none.
func WrittenLine(lib *ingredient.Library, l *written.Said) any {
	o := object{}
	o.put("text", l.Text)
	o.put("ingredient", nil)
	if l.Ingredient != nil {
		o.set("ingredient", l.Ingredient.ID)
	}
	o.put("grams", nil)
	if l.Grams.Known {
		o.set("grams", Number(l.Grams.Value))
	}
	o.put("how", orNull(say.WrittenHow(Reads, l)))
	o.put("doubt", orNull(say.WrittenDoubt(l, func(id string) string {
		if in, ok := lib.Find(id); ok {
			return in.Kitchen()
		}
		return id
	})))
	return o
}

func orNull(text string) any {
	if text == "" {
		return nil
	}
	return text
}
