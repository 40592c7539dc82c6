// Package check is what the tests of all packages share: the published tables,
// read in one way, and a comparison as near as a source prints.
package check

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/form/published"
	"ripplewright/testdata"
)

// Row is one row of a published table. Asked for a column that the table lacks,
// or for a number where a word stands, it ends the test.
type Row struct {
	published.Row
	t testing.TB
}

// Table returns the rows of testdata/tables/NAME.csv.
func Table(t testing.TB, name string) []Row {
	t.Helper()
	read := Published(t, name)
	rows := make([]Row, len(read))
	for i, r := range read {
		rows[i] = Row{r, t}
	}
	return rows
}

// Published returns the rows of testdata/tables/NAME.csv as the program reads
// them, for a test of what the program does with them.
func Published(t testing.TB, name string) []published.Row {
	t.Helper()
	rows, err := published.Read(testdata.Tables, name)
	require.NoError(t, err)
	return rows
}

// Text returns a cell.
func (r Row) Text(column string) string {
	r.t.Helper()
	c, err := r.Row.Text(column)
	require.NoError(r.t, err)
	return c
}

// Num returns a cell's number, NaN where it is empty.
func (r Row) Num(column string) float64 {
	r.t.Helper()
	v, err := r.Row.Number(column)
	require.NoError(r.t, err)
	return v
}

// With returns the row with another text in a column, for a case beside the
// table's.
func (r Row) With(column, text string) Row {
	r.Row = r.Row.With(column, text)
	return r
}

// Printed compares got, in the column's unit, with a cell as near as it is
// printed.
func (r Row) Printed(got float64, column string) bool {
	r.t.Helper()
	return Printed(r.t, got, r.Text(column), "%s, %s", r, column)
}

// Printed compares got with a number as a source prints it: they agree where got
// is within half a unit of the last digit.
func Printed(t testing.TB, got float64, want string, where ...any) bool {
	t.Helper()
	unit, err := published.LastDigit(want)
	require.NoError(t, err)
	value, err := strconv.ParseFloat(want, 64)
	require.NoError(t, err)
	if off := math.Abs(got - value); off <= unit/2*(1+1e-9) {
		return true
	}
	return assert.Fail(t, fmt.Sprintf("%.10g does not round to the printed %s", got, want), where...)
}

// Long skips a test in a short run, which looks for races and is ten times as
// slow: it takes seconds, and shorter tests run its code.
func Long(t testing.TB) {
	t.Helper()
	if testing.Short() {
		t.Skip("not in a short run")
	}
}
