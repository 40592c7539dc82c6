package validate

import (
	"io/fs"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/published"
)

// tables gives checks their tables and the ingredient library. It is only read.
type tables struct {
	files   fs.FS
	library *ingredient.Library
}

// misread is a table that is not as a check wants it. It travels as a panic from
// the accessors of line to run, and would else clutter every line of a check.
type misread struct{ error }

func must[T any](v T, err error) T {
	if err != nil {
		panic(misread{err})
	}
	return v
}

// rows returns the rows of a table.
func (t *tables) rows(name string) []published.Row { return must(published.Read(t.files, name)) }

// line is one row of a table.
type line struct{ published.Row }

// read returns the rows of a table for a check to take figures from.
func (t *tables) read(name string) []line {
	var lines []line
	for _, r := range t.rows(name) {
		lines = append(lines, line{r})
	}
	return lines
}

// text returns a cell.
func (l line) text(column string) string { return must(l.Text(column)) }

// num returns a cell's number, NaN where it is empty.
func (l line) num(column string) float64 { return must(l.Number(column)) }

// lastDigit returns the worth of the last printed digit of a cell.
func (l line) lastDigit(column string) float64 { return must(published.LastDigit(l.text(column))) }

// ingredient returns a row of the library.
func (t *tables) ingredient(id string) *ingredient.Ingredient {
	in, ok := t.library.Find(id)
	if !ok {
		panic(misread{t.library.Unknown(id)})
	}
	return in
}
