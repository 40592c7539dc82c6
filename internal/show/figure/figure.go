package figure

import (
	"math"
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
)

// Bound says what is known of a figure.
type Bound uint8

// The bounds.
const (
	Unknown Bound = iota // not known, or there is nothing of the kind
	Exact                // as exact as its band, if it has one
	AtLeast              // only the known part: what some ingredient leaves unknown comes on top
	AtMost               // it may lie below, where nothing was tried
)

// Value is a figure of one column.
type Value struct {
	Value     float64 // NaN where it is unknown
	Low, High float64 // how low and how high it may be; NaN without a band, High +Inf where nothing bounds it
	Bound     Bound
	Made      bool   // the band is of what kitchens make of the recipe, or batches came to
	Word      string // instead of a number: the texture; beside NaN, why there is none
	Currency  string // of money, where the maker named one

	places int // what it is worth by its own band, where Made; see Places
}

// Row is one figure.
type Row struct {
	Key   string  // in JSON, a promise
	Name  string  // in words, "Initial freezing point"
	Short string  // for narrow columns, "freezes"
	Unit  Unit    // of the values
	Step  float64 // the finest step worth printing, in the unit; 0: two figures
	Help  string  // what name and unit leave open, in a line

	WithBand bool // its values have a band that is worth a line of its own
	Origin
	from
}

// from is where a row's values are found.
type from struct {
	only     []int // the columns that have it; nil: all
	of       func(r *model.Result, column int) Value
	forecast bool              // of the tub as it is made, which its band holds
	record   ingredient.Column // behind a row of Nutrition
}

// Origin says how a figure is computed.
type Origin struct {
	Inputs   string // what goes in
	Equation string
	Source   string // author, year, title or section; "common practice, no source"; "from memory"
	Band     string // what its band covers, or how well it is known
}

// Table is a set of figures with the same columns.
type Table struct {
	Key     string   // where its keys stand in JSON
	Columns []string // heads, in words
	Rows    []Row
}

// Heads are the heads of the table as the maker reads them.
func (t *Table) Heads() []string {
	heads := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = say.Of(c)
	}
	return heads
}

// In reports whether a column of the table has such a figure at all.
func (f *Row) In(column int) bool { return f.only == nil || slices.Contains(f.only, column) }

// Forecasts reports whether the row is of the tub as it is made: what kitchens make of the
// recipe, or this one's batches came to, is in its band. Weights, money and the label's amounts are of the recipe as written.
func (f *Row) Forecasts() bool { return f.forecast }

// Of returns the row's figure in a column of its table.
func (f *Row) Of(r *model.Result, column int) Value {
	if !f.In(column) {
		return none
	}
	v := f.of(r, column)
	if !f.forecast || v.Bound != Exact || !v.Known() {
		return v
	}
	s := r.Spread(func(r *model.Result) model.Span {
		v := f.of(r, column)
		return model.Span{Value: v.Value, Low: v.Low, High: v.High}
	})
	if s.Low != v.Low && known(s.Low) || s.High != v.High && known(s.High) {
		v.places = f.Places(v)
		v.Low, v.High, v.Made = s.Low, s.High, true
	}
	return v
}

// Row returns the row of a key. It panics where there is none: a view that
// asks for one is at fault.
func (t *Table) Row(key string) *Row {
	for i := range t.Rows {
		if t.Rows[i].Key == key {
			return &t.Rows[i]
		}
	}
	panic("figure: " + t.Key + " has no row " + key)
}

// Open reports whether some ingredient leaves part of the value unknown, which
// is then from Low to High.
func (v Value) Open() bool { return v.Bound != Exact && known(v.Low) }

// Known reports whether there is a number.
func (v Value) Known() bool { return known(v.Value) }

// Banded reports whether the value has a band.
func (v Value) Banded() bool { return v.Known() && (known(v.Low) || known(v.High)) }

func known(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

var nan = math.NaN()

// none is what there is nothing of.
var none = Value{Value: nan, Low: nan, High: nan}

// exact is a figure without a band.
func exact(v float64) Value {
	if !known(v) {
		return none
	}
	return Value{Value: v, Low: nan, High: nan, Bound: Exact}
}

// banded is a figure with its band, whose ends may come in either order.
func banded(v, a, b float64) Value {
	out := exact(v)
	if out.Bound == Exact {
		out.Low, out.High = math.Min(a, b), math.Max(a, b)
	}
	return out
}

// spanned is a model's span, times k for the unit.
func spanned(s model.Span, k float64) Value { return banded(k*s.Value, k*s.Low, k*s.High) }

// counted is a sum of what ingredients hold, some of which may not say: its
// known part is a lower bound then.
func counted(a ingredient.Amount) Value {
	switch {
	case !known(a.Known):
		return none
	case a.Complete():
		return exact(a.Known)
	case a.Nothing():
		return Value{Value: nan, Low: 0, High: a.Most}
	}
	return Value{Value: a.Known, Low: a.Known, High: a.Most, Bound: AtLeast}
}
