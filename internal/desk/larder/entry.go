package larder

import (
	"strings"

	"ripplewright/internal/desk/typed"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/setting"
)

// An Entry is a field for a figure that may be left empty, which is unknown.
type Entry struct {
	Key, Name, Unit string // Key is that of the file
	Text            string // as typed

	column ingredient.Column
	beside bool   // set by hand beside a pack that says otherwise
	began  string // the text and the figure that it began with
	cell   ingredient.Cell
}

func newEntry(key, name, unit string, cell ingredient.Cell) *Entry {
	e := &Entry{Key: key, Name: name, Unit: unit, cell: cell, column: ingredient.NumColumns}
	if cell.Known {
		e.began = setting.Number(cell.Value)
	}
	e.Text = e.began
	return e
}

// Read returns what is typed.
func (e *Entry) Read() (ingredient.Cell, error) {
	switch {
	case e.Text == e.began:
		return e.cell, nil // to the last digit, however few are shown
	case strings.TrimSpace(e.Text) == "":
		return ingredient.Cell{}, nil
	}
	v, err := typed.Number(e.Text, e.Unit)
	return ingredient.Known(v), err
}

// fieldAt is the field of a record that has that path; each entry's has.
func fieldAt(path string) setting.Field[ingredient.Ingredient] {
	f, ok := setting.Find(ingredient.Fields(), path)
	if !ok {
		panic("larder: no field of an ingredient: " + path)
	}
	return f
}

// cellAt is the place in a record of the figure that has that path.
func cellAt(in *ingredient.Ingredient, path string) *ingredient.Cell {
	return fieldAt(path).At(in).(*ingredient.Cell)
}
