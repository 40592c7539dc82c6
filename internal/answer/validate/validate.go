// Package validate runs the models against the published tables that the
// program carries and says how far off they are. It is the program's page "How
// sure are we?" and the command line's validate: the code it runs is the code
// that evaluates designs, and the tables are those the tests read.
//
// A row passes when its largest error is within its bar. Points outside a
// model's stated range are shown but not counted; nothing else is left out.
package validate

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"math"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/num"
)

// Kind says what a row can prove.
type Kind string

// The kinds.
const (
	Regression  Kind = "regression: constants came from this table"
	Independent Kind = "independent"
	Identity    Kind = "identity"                       // exact by definition
	Twice       Kind = "computed twice"                 // by a second program of ours
	Elsewhere   Kind = "measured elsewhere, not fitted" // like products of others, whose mix was not read
	Remembered  Kind = "remembered"
)

// Words says in a sentence what a row of this kind proves.
func (k Kind) Words() string {
	switch k {
	case Regression:
		return "Constants of the model came from this table: it shows how well the form fits, and proves no prediction."
	case Independent:
		return "Nothing was fitted to this table: the stronger proof."
	case Identity:
		return "Exact by definition: it checks the program, not nature."
	case Twice:
		return "A second program of ours gives these figures: it checks the arithmetic, not nature."
	case Elsewhere:
		return "Nothing was fitted to this table, but the products are others' and their mix was not read: it tests level and order."
	case Remembered:
		return "The figures of this table are from memory and were not read again: a comparison, no proof."
	}
	return ""
}

// Curve is another method's own curve, shown beside a row's.
type Curve struct {
	Name string
	X, Y []float64
}

func (c *Curve) add(x, y float64) { c.X, c.Y = append(c.X, x), append(c.Y, y) }

// Pair is one point: what the model gives and what the table says.
type Pair struct {
	X        float64 // what the row is plotted against, see Row.XLabel
	Model    float64
	Measured float64
	Error    float64 // in the row's unit
	Counted  bool    // false: shown only, for the reason in Why
	Label    string  // the point's name where X has none, or ""
	Why      string
}

// Row is one table and one figure of it.
type Row struct {
	Table       string // name under testdata/tables, with the figure in brackets where a table has several
	Source      string
	Points      int       // counted
	Unit        flaw.Word // of the errors and the bar
	MaxAbsError float64
	RMSError    float64
	Bar         float64
	Pass        bool
	Kind        Kind
	Note        *flaw.Remark // nil for none

	XLabel flaw.Word // of the plot
	YLabel flaw.Word
	Pairs  []Pair
	Beside []Curve

	closed bool // the figures are counts that the check has made itself
}

// MarshalJSON writes the row with the keys of the command line; a figure that
// does not exist is null.
func (r Row) MarshalJSON() ([]byte, error) {
	number := func(v float64) *float64 {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return nil
		}
		return &v
	}
	return json.Marshal(struct {
		Table       string   `json:"table"`
		Source      string   `json:"source"`
		Points      int      `json:"points"`
		Unit        string   `json:"unit"`
		MaxAbsError *float64 `json:"max_abs_error"`
		RMSError    *float64 `json:"rms_error"`
		Bar         *float64 `json:"bar"`
		Pass        bool     `json:"pass"`
		Kind        Kind     `json:"kind"`
		Note        string   `json:"note"`
	}{r.Table, r.Source, r.Points, string(r.Unit), number(r.MaxAbsError), number(r.RMSError), number(r.Bar), r.Pass, r.Kind, r.Note.String()})
}

// add counts a point with the error model − measured.
func (r *Row) add(x, model, measured float64) *Pair {
	return r.addError(x, model, measured, model-measured)
}

// addRelative counts a point with its error in percent of the measured.
func (r *Row) addRelative(x, model, measured float64) *Pair {
	return r.addError(x, model, measured, 100*(model/measured-1))
}

func (r *Row) addError(x, model, measured, err float64) *Pair {
	r.Pairs = append(r.Pairs, Pair{X: x, Model: model, Measured: measured, Error: err, Counted: true})
	return &r.Pairs[len(r.Pairs)-1]
}

// named labels the point and, where why is not empty, takes it out of the count.
func (p *Pair) named(label, why string) {
	p.Label, p.Why = label, why
	p.Counted = why == ""
}

// close computes the row's figures. A point without a number fails the row.
func (r Row) close() Row {
	if r.closed {
		return r
	}
	r.Points, r.MaxAbsError = 0, 0
	sum := 0.0
	for _, p := range r.Pairs {
		if !p.Counted {
			continue
		}
		r.Points++
		sum += p.Error * p.Error
		if e := math.Abs(p.Error); e > r.MaxAbsError || math.IsNaN(e) {
			r.MaxAbsError = e
		}
	}
	if r.Points == 0 {
		r.MaxAbsError, r.RMSError = math.NaN(), math.NaN()
		return r
	}
	r.RMSError = math.Sqrt(sum / float64(r.Points))
	r.Pass = r.MaxAbsError <= r.Bar && !math.IsNaN(sum)
	return r
}

// check computes the rows of one table or of a few that share their work.
type check func(*tables) ([]Row, error)

// checks are all rows, in the order in which they are shown: what freezes,
// what that makes of a dessert and of its ice, how it tastes and weighs, the syrup, the cold,
// the picture, the label.
func checks() []check {
	var list []check
	for _, of := range [...]func() []check{freezingChecks, waterChecks, dessertChecks, iceChecks, liquidChecks, syrupChecks, cookingChecks, heatChecks, rippleChecks, labelChecks} {
		list = append(list, of()...)
	}
	return list
}

// Run computes every row from the tables in the given file system, which
// testdata.Tables is, and the built-in ingredients. It takes a second or two and
// uses every processor. The error names a table that cannot be read; a model
// that misses its bar is not an error but a row that does not pass.
func Run(files fs.FS, library *ingredient.Library) ([]Row, error) {
	t := &tables{files, library}
	list := checks()
	rows, errs := make([][]Row, len(list)), make([]error, len(list))
	num.Parallel(len(list), func(i int) { rows[i], errs[i] = t.run(list[i]) })
	var all []Row
	for i := range list {
		if errs[i] != nil {
			return nil, errs[i]
		}
		for _, r := range rows[i] {
			all = append(all, r.close())
		}
	}
	return all, nil
}

// run carries what is misread out of a check as an error.
func (t *tables) run(c check) (rows []Row, err error) {
	defer func() {
		if r := recover(); r != nil {
			bad, ok := r.(misread)
			if !ok {
				panic(r)
			}
			err = fmt.Errorf("check tables: %w", bad)
		}
	}()
	return c(t)
}
