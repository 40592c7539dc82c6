// Package published reads the tables that the models are checked against, for
// the program's own validation and for every test alike. A table is a file
// tables/NAME.csv: comment lines beginning with #, which name its source, then a
// heading, then rows.
package published

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"math"
	"path"
	"strconv"
	"strings"
)

// Row is one line of a table, its cells by the name of their column.
type Row struct {
	Table string // the table's name
	Line  int    // of its file
	cells map[string]string
}

// Read returns the rows of a table of the given files, which testdata.Tables
// are. A table without rows is an error, and errors name the table.
func Read(files fs.FS, name string) ([]Row, error) {
	f, err := files.Open(path.Join("tables", name+".csv"))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	heading, err := r.Read()
	if err != nil {
		return nil, fmt.Errorf("%s.csv: no heading: %w", name, err)
	}
	var rows []Row
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) && len(rows) > 0 {
			return rows, nil
		}
		if err != nil {
			return nil, fmt.Errorf("%s.csv: %w", name, err)
		}
		line, _ := r.FieldPos(0)
		row := Row{name, line, make(map[string]string, len(cells))}
		for i, c := range cells {
			row.cells[heading[i]] = c
		}
		rows = append(rows, row)
	}
}

// String says where the row stands.
func (r Row) String() string { return fmt.Sprintf("%s.csv:%d", r.Table, r.Line) }

// Text returns a cell.
func (r Row) Text(column string) (string, error) {
	c, ok := r.cells[column]
	if !ok {
		return "", fmt.Errorf("%s: no column %q", r, column)
	}
	return c, nil
}

// Number returns a cell's number, NaN where it is empty.
func (r Row) Number(column string) (float64, error) {
	c, err := r.Text(column)
	if err != nil || c == "" {
		return math.NaN(), err
	}
	v, err := strconv.ParseFloat(c, 64)
	if err != nil {
		return math.NaN(), fmt.Errorf("%s: column %q: %w", r, column, err)
	}
	return v, nil
}

// With returns the row with another text in a column.
func (r Row) With(column, text string) Row {
	r.cells = maps.Clone(r.cells)
	r.cells[column] = text
	return r
}

// LastDigit returns the worth of the last digit of a printed number, in plain or
// exponent form: 0.01 of 3.35 and of 3.30, 100 of 1.2e3, 1 of 300. Half of it is
// how far a figure may be from the printed one and still round to it.
func LastDigit(printed string) (float64, error) {
	digits, exponent := strings.TrimSpace(printed), 0
	if i := strings.IndexAny(digits, "eE"); i >= 0 {
		var err error
		if exponent, err = strconv.Atoi(digits[i+1:]); err != nil {
			return 0, fmt.Errorf("%q is no number: %w", printed, err)
		}
		digits = digits[:i]
	}
	if _, err := strconv.ParseFloat(digits, 64); err != nil {
		return 0, fmt.Errorf("%q is no number", printed)
	}
	if _, after, ok := strings.Cut(digits, "."); ok {
		exponent -= len(after)
	}
	return math.Pow10(exponent), nil
}
