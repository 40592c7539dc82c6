package report

import (
	"encoding/json"
	"fmt"
	"io"
	"math"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/show/say"
)

// Validation is how far the models are off the published tables. Its JSON is
// the list of rows.
type Validation []validate.Row

// MarshalJSON returns the list, never null.
func (v Validation) MarshalJSON() ([]byte, error) {
	if v == nil {
		return []byte("[]"), nil
	}
	return json.Marshal([]validate.Row(v))
}

// Missed counts the rows that have a bar and miss it.
func (v Validation) Missed() int {
	n := 0
	for _, r := range v {
		if hasBar(r) && !r.Pass {
			n++
		}
	}
	return n
}

func hasBar(r validate.Row) bool { return !math.IsNaN(r.Bar) && !math.IsInf(r.Bar, 0) }

// WriteText writes four lines a row: the figures, the source, what the row can
// prove, and a note where there is one.
func (v Validation) WriteText(w io.Writer) error {
	p := &page{w: w}
	for _, r := range v {
		word, bar := say.T("shown"), say.T("no bar")
		if hasBar(r) {
			word, bar = say.T("pass"), say.T("bar %s", threeFigures(r.Bar))
			if !r.Pass {
				word = say.T("MISS")
			}
		}
		p.line("%-5s %s: %s, max error %s, rms %s, %s %s", word, r.Table, points(r.Points), threeFigures(r.MaxAbsError), threeFigures(r.RMSError), bar, say.Of(string(r.Unit)))
		p.line("      %s", r.Source)
		p.line("      %s", say.Of(string(r.Kind)))
		if r.Note != nil {
			p.line("      %s", say.Said(r.Note))
		}
	}
	p.line("%d rows, %d miss their bar.", len(v), v.Missed())
	return p.err
}

func points(n int) string {
	if n == 1 {
		return say.T("1 point")
	}
	return say.T("%d points", n)
}

func threeFigures(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return fmt.Sprintf("%.3g", v)
}
