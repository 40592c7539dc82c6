// Package differing words in what two designs differ, for a dialog.
package differing

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/compare"
	"ripplewright/internal/work/design"
)

// A View is all that differs, a line each.
type View struct {
	Choices []string // lines, settings and own ingredients: what a maker has chosen
	Figures []string // what follows, as far as it can be read
}

// Between turns before into after. Figures are left out where either cannot be
// evaluated.
func Between(m *model.Model, s say.Style, before, after design.Design) View {
	v := View{Choices: Choices(m, s, before, after)}
	x, err := m.Evaluate(before)
	if err != nil {
		return v
	}
	y, err := m.Evaluate(after)
	if err != nil {
		return v
	}
	for _, c := range figure.Differing(&x, &y) {
		was, is := c.Text(s)
		from, to := c.Bands(s)
		if was == is && from == to {
			continue
		}
		v.Figures = append(v.Figures, say.FigureChange(c.Name, was, is, from, to))
	}
	return v
}

// Choices are those of a View alone.
func Choices(m *model.Model, s say.Style, before, after design.Design) []string {
	return say.DifferencesIn(s, compare.Between(before, after), func(id string) string {
		for _, d := range [...]design.Design{after, before} {
			if in, ok := m.Library().With(d.Own).Find(id); ok {
				return say.Kitchen(in)
			}
		}
		return id
	})
}

// Same reports whether nothing differs that can be read.
func (v View) Same() bool { return len(v.Choices) == 0 && len(v.Figures) == 0 }
