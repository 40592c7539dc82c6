// Package proofs is what the page "How sure are we?" shows of the checks, without a
// toolkit: in which order, what each proves, and its points as plots and tables.
package proofs

import (
	"fmt"
	"math"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/show/say"
)

// Proof is a kind of check and what it proves.
type Proof struct {
	Kind  validate.Kind
	Name  string
	Under string
}

// Order is the order in which checks are shown: the strongest proof first.
func Order() []Proof {
	return []Proof{
		{validate.Independent, say.T("Independent"), say.ProvesIndependent.String()},
		{validate.Elsewhere, say.T("Products of others"), say.ProvesElsewhere.String()},
		{validate.Regression, say.T("What the constants came from"), say.ProvesRegression.String()},
		{validate.Remembered, say.T("From memory"), say.ProvesRemembered.String()},
		{validate.Twice, say.T("Computed twice"), say.ProvesTwice.String()},
		{validate.Identity, say.T("Exact by definition"), say.ProvesIdentity.String()},
	}
}

// Listed is a line of the list: the overview, the head of a kind, or a check.
type Listed struct {
	Head  string        // "" of a check
	Under string        // what the entries below a head prove
	Row   *validate.Row // nil of a head
}

// Summary is all checks, in order.
type Summary struct {
	Entries []Listed
	Kinds   []say.TableRow // a row for each kind
	Text    string
	Failed  bool // some check misses its limit
}

// Summarize orders rows. A kind without checks has no head.
func Summarize(s say.Style, rows []validate.Row) Summary {
	out := Summary{Entries: []Listed{{Head: say.RestOn.String(), Under: say.RestUnder.String()}}}
	all, pass, open := 0, 0, 0
	for _, k := range Order() {
		var of []Listed
		n, met, points := 0, 0, 0
		for i := range rows {
			r := &rows[i]
			if r.Kind != k.Kind {
				continue
			}
			of = append(of, Listed{Row: r})
			if !limited(r) {
				open++
				continue
			}
			n, points = n+1, points+r.Points
			if r.Pass {
				met++
			}
		}
		if of == nil {
			continue
		}
		out.Entries = append(append(out.Entries, Listed{Head: k.Name, Under: k.Under}), of...)
		all, pass = all+n, pass+met
		out.Kinds = append(out.Kinds, say.TableRow{Name: k.Name, Cells: []string{fmt.Sprint(n), fmt.Sprint(met), fmt.Sprint(points)}})
	}
	out.Text, out.Failed = say.ChecksKept(s, pass, all, open), pass < all
	return out
}

// limited reports whether a check has a limit to keep; others only compare.
func limited(r *validate.Row) bool { return !math.IsInf(r.Bar, 1) }

// Mark is the sign of an entry: met, not met, only compared, or none.
func (e Listed) Mark() string {
	switch {
	case e.Row == nil:
		return ""
	case !limited(e.Row):
		return "–"
	case e.Row.Pass:
		return "✓"
	}
	return "✗"
}

// Title is what an entry is called.
func (e Listed) Title() string {
	if e.Row == nil {
		return e.Head
	}
	return say.Said(e.Row.Title())
}

// Line is what stands under the title.
func (e Listed) Line(s say.Style) string {
	if e.Row == nil {
		return e.Under
	}
	return say.CheckLine(s, e.Row.Pass, e.Row.Points, largest(s, e.Row))
}

func largest(s say.Style, r *validate.Row) string {
	return say.OfLimit(s, r.MaxAbsError, r.Bar, say.Of(string(r.Unit)))
}

// Verdict says how well a check holds.
func Verdict(s say.Style, r *validate.Row) string {
	return say.CheckVerdict(s, r.Pass, limited(r), largest(s, r), r.RMSError, r.Points, len(r.Pairs)-r.Points)
}

// Pairs tabulates every point.
func Pairs(s say.Style, r *validate.Row) []say.TableRow {
	rows := make([]say.TableRow, 0, len(r.Pairs))
	for _, q := range r.Pairs {
		name := q.Label
		if name == "" {
			name = say.Of(string(r.XLabel)) + " " + s.Sized(q.X)
		}
		row := say.TableRow{Name: name, Cells: []string{s.FiveDigits(q.Measured), s.FiveDigits(q.Model), s.Sized(q.Error)}}
		if !q.Counted {
			row.Unit = say.NotCounted.String()
		}
		rows = append(rows, row)
	}
	return rows
}

// Places are the decimals in which a plot of r is read, on each axis: four digits of
// the largest value.
func Places(r *validate.Row) (x, y int) {
	most := func(of func(validate.Pair) float64) int {
		m := 0.0
		for _, q := range r.Pairs {
			if v := math.Abs(of(q)); v > m && !math.IsInf(v, 0) {
				m = v
			}
		}
		if m == 0 {
			return 1
		}
		return min(6, max(0, 3-int(math.Floor(math.Log10(m)))))
	}
	return most(func(q validate.Pair) float64 { return q.X }), most(func(q validate.Pair) float64 { return q.Measured })
}
