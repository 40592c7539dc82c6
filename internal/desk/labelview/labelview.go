// Package labelview is what the page of the label shows, without a toolkit: which
// label in which form, its panel as rows, and what it may be called and may claim.
package labelview

import (
	"slices"
	"strings"
	"unicode/utf8"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/say"
)

// Forms word the forms of a panel.
func Forms() []say.Choice {
	return []say.Choice{
		{Value: string(card.Vertical), Name: say.T("Vertical")}, {Value: string(card.Tabular), Name: say.T("Tabular")}, {Value: string(card.Dual), Name: say.T("Two columns")},
	}
}

// FormNamed is the form behind a name, "" where it is none.
func FormNamed(name string) card.Form { return card.Form(say.ValueOf(Forms(), name)) }

// FormNames are the names of forms.
func FormNames(forms []card.Form) []string {
	names := make([]string, len(forms))
	for i, f := range forms {
		names[i] = say.NameOf(Forms(), string(f))
	}
	return names
}

// Label returns the label of a food in the form that is named, and the names of the
// forms that the rules leave, the usual one first. Where the form is none of these, it
// is the usual one: form names the one taken.
func Label(food label.Food, region label.Region, named string) (l *label.Label, names []string, form string, err error) {
	l, err = label.For(food, region, label.Options{})
	if err != nil {
		return nil, nil, "", err
	}
	names = FormNames(card.Forms(l))
	if form = named; !slices.Contains(names, form) {
		form = names[0]
	}
	if FormNamed(form) == card.Dual && l.Columns != "dual" { // the maker's choice
		l, err = label.For(food, region, label.Options{SecondColumn: true})
	}
	return l, names, form, err
}

// Per says what the panel's first amounts are of.
func Per(l *label.Label) string {
	if l.Region == label.EU {
		return l.PanelColumns()[0].Per
	}
	return strings.TrimSpace(l.ServingsText + "\n" + l.ServingSize())
}

// Panel lays out the lines of a panel with their shares of the day, under heads.
func Panel(l *label.Label) (heads []string, rows []say.TableRow) {
	columns := l.PanelColumns()
	for _, c := range columns {
		heads = append(heads, c.Per)
		if c.Share != "" {
			heads = append(heads, c.Share)
		}
	}
	for i, line := range l.Lines {
		row := say.TableRow{Name: strings.Repeat(say.Indent, line.Indent) + line.Name}
		for _, c := range columns {
			row.Cells = append(row.Cells, c.Lines[i].Marked(c.Lines[i].AmountText()))
			if c.Share != "" {
				row.Cells = append(row.Cells, none(c.ShareText(i)))
			}
		}
		rows = append(rows, row)
	}
	return heads, rows
}

// none keeps a table from a dash, its sign for unknown, where a line has no share.
func none(s string) string {
	if s == "" {
		return " "
	}
	return s
}

// mostRemarks is how many warnings or notes the page has room for.
const mostRemarks = 12

// Remarks returns texts, or the first of them and how many more there are.
func Remarks(texts []string) []string {
	if n := len(texts) - mostRemarks; n > 0 {
		return append(slices.Clone(texts[:mostRemarks]), say.MoreWarnings(n))
	}
	return texts
}

// Warnings are the remarks on what is incomplete, with the mark of the panel, and on
// allergens.
func Warnings(l *label.Label) []string {
	marked := say.SaidAll(l.Warnings)
	for i := range min(l.Gaps, len(marked)) {
		marked[i] = label.IncompleteMark + " " + marked[i]
	}
	return Remarks(marked)
}

// Statement returns the list of ingredients up to so many letters, and whether that
// is all.
func Statement(l *label.Label, letters int) (runs []label.Run, all bool) {
	left := letters
	for _, r := range l.Ingredients {
		if left <= 1 {
			return runs, false
		}
		n := utf8.RuneCountInString(r.Text)
		if n > left {
			r.Text = strings.TrimRight(string([]rune(r.Text)[:left-1]), " ,(") + "…"
		}
		runs = append(runs, r)
		left -= n
	}
	return runs, left >= 0
}

// Reading is a name or a claim, whether it is met, and its conditions.
type Reading struct {
	Title      string
	Conditions []string
}

// Names groups the names that the food, or its custard, may bear, under their heads.
func Names(s say.Style, l *label.Label) (heads []string, of [][]Reading) {
	for i, n := range l.Names {
		if i == 0 || n.Of != l.Names[i-1].Of || n.Region != l.Names[i-1].Region {
			heads, of = append(heads, say.NamesUnder(n)), append(of, nil)
		}
		last := len(of) - 1
		of[last] = append(of[last], rule(s, say.MetMark(n.Met, false), say.Of(n.Name), n.Limits, say.Said(n.Note)))
	}
	return heads, of
}

// Claims are the claims, with their conditions.
func Claims(s say.Style, l *label.Label) []Reading {
	var out []Reading
	for _, c := range l.Claims {
		out = append(out, rule(s, say.MetMark(c.Met, c.Incomplete), c.Claim, c.Conditions, say.Said(c.Disclosure)))
	}
	return out
}

func rule(s say.Style, mark, name string, limits []label.Limit, note string) Reading {
	r := Reading{Title: mark + " — " + name}
	for _, l := range limits {
		r.Conditions = append(r.Conditions, say.LimitLine(s, l))
	}
	if note != "" {
		r.Conditions = append(r.Conditions, note)
	}
	return r
}
