package validate

import (
	"encoding/csv"
	"fmt"
	"io/fs"
	"math"
	"path"
	"strconv"

	"ripplewright/internal/food/ingredient"
)

// tables gives checks their tables and the ingredient library. It is only read.
type tables struct {
	files   fs.FS
	library *ingredient.Library
}

// tableError says what is wrong with a table. It travels as a panic from the
// accessors of line to run.
type tableError struct {
	table string
	err   error
}

// line is one row of a table by column.
type line struct {
	table string
	cells map[string]string
}

// read returns the rows of a table.
func (t *tables) read(name string) []line {
	f, err := t.files.Open(path.Join("tables", name+".csv"))
	if err != nil {
		panic(tableError{name, err})
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil || len(all) < 2 {
		panic(tableError{name, fmt.Errorf("no rows: %w", err)})
	}
	var lines []line
	for _, cells := range all[1:] {
		l := line{name, make(map[string]string, len(cells))}
		for i, c := range cells {
			l.cells[all[0][i]] = c
		}
		lines = append(lines, l)
	}
	return lines
}

// text returns a cell.
func (l line) text(column string) string {
	c, ok := l.cells[column]
	if !ok {
		panic(tableError{l.table, fmt.Errorf("no column %q", column)})
	}
	return c
}

// num returns a cell's number, NaN where it is empty.
func (l line) num(column string) float64 {
	c := l.text(column)
	if c == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(c, 64)
	if err != nil {
		panic(tableError{l.table, fmt.Errorf("column %q: %w", column, err)})
	}
	return v
}

// lastDigit returns the worth of the last printed digit of a cell, which may
// be in plain or in exponent form.
func (l line) lastDigit(column string) float64 {
	c := l.text(column)
	unit, after := 1.0, false
	for i := 0; i < len(c); i++ {
		switch ch := c[i]; {
		case ch == '.':
			after = true
		case ch == 'e' || ch == 'E':
			exp, err := strconv.Atoi(c[i+1:])
			if err != nil {
				panic(tableError{l.table, fmt.Errorf("column %q: %w", column, err)})
			}
			return unit * math.Pow10(exp)
		case after:
			unit /= 10
		}
	}
	return unit
}

// ingredient returns a row of the library.
func (t *tables) ingredient(table, id string) *ingredient.Ingredient {
	in, ok := t.library.Find(id)
	if !ok {
		panic(tableError{table, t.library.Unknown(id)})
	}
	return in
}
