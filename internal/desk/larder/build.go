package larder

import (
	"strings"

	"ripplewright/internal/food/ingredient"
)

// Made returns the ingredient that the form makes. The error is a
// *ingredient.FieldError, which Fault words.
func (f *Form) Made() (*ingredient.Ingredient, error) {
	return f.made(strings.TrimSpace(f.ID), strings.TrimSpace(f.Name))
}

// Shown is what Made would return if the form had a name, for a preview.
func (f *Form) Shown() (*ingredient.Ingredient, error) { return f.made("own", "own") }

func (f *Form) made(id, name string) (*ingredient.Ingredient, error) {
	cells := map[*Entry]ingredient.Cell{}
	for _, e := range f.entries() {
		cell, err := e.Read()
		if err != nil {
			return nil, &ingredient.FieldError{Field: e.Key, Err: err}
		}
		cells[e] = cell
	}
	in, err := f.packed(id, name, cells)
	if err != nil {
		return nil, err
	}
	for _, e := range f.Columns {
		if e.beside || e.cell != cells[e] {
			in = in.With(e.column, cells[e])
		}
	}
	out := *in
	out.ID, out.Name = id, name
	for _, e := range f.Spoons {
		*cellAt(&out, e.Key) = cells[e]
	}
	if out.Density.Known && out.DensityKind == "" {
		out.DensityKind = "bulk"
	}
	out.Group, out.Standing, out.Polyol, out.Compound = f.Group, f.Standing, f.Polyol, f.Compound
	out.CommonName, out.CommonNameEU, out.Parts = strings.TrimSpace(f.NameUS), strings.TrimSpace(f.NameEU), strings.TrimSpace(f.Parts)
	out.AllergensUS = f.Ticks.words(f.from.AllergensUS, func(a Allergen) string { return a.US })
	out.AllergensEU = f.Ticks.words(f.from.AllergensEU, func(a Allergen) string { return a.EU })
	return ingredient.Checked(&out)
}

// packed is the record that the form began with, with the figures of its pack if it
// has one.
func (f *Form) packed(id, name string, cells map[*Entry]ingredient.Cell) (*ingredient.Ingredient, error) {
	out := f.from
	if f.Per == nil {
		return &out, nil
	}
	pack := ingredient.Pack{PerG: cells[f.Per].Or(0), AvailableCarbohydrate: !f.WithFibre}
	for i, x := range ingredient.PackFigures() {
		*x.At(&pack) = cells[f.Pack[i]]
	}
	in, err := ingredient.FromPack(id, name, pack)
	if err != nil {
		return nil, err
	}
	out.Pack, out.Cells, out.Derived, out.WithoutFibre = in.Pack, in.Cells, in.Derived, in.WithoutFibre
	return &out, nil
}
