package report

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
)

// WriteText writes the evaluation as a page for a terminal.
func (e Evaluation) WriteText(w io.Writer) error {
	p, r := &page{w: w}, e.result
	p.line("%s (%s), served at %s", e.design.Name, e.file, Reads.Temperature(e.design.Serving.TemperatureC))
	p.line("%s", say.Verdict(Reads, r.Verdict))
	if advice := say.Advice(Reads, r.Verdict, e.found, e.cold); advice != "" {
		p.line("%s", advice)
	}
	if e.cold != nil {
		p.line("%s", say.LeaveOut(Reads, &e.cold.Counter))
	}
	for _, text := range say.Taught(Reads, r) {
		p.line("%s", text)
	}
	p.line("")
	p.lines(figure.Phases.Heads(), figure.All(Reads, r))
	p.line("")
	p.lines(figure.Food(Reads, r))
	p.line("")
	p.line("≥ marks a lower bound, as some ingredient leaves it unknown; – stands for not known or not there.")
	p.line("")
	p.line("Allergens (US): %s", orNone(say.Allergens(r.Allergens.US)))
	p.line("Allergens (EU, UK): %s", orNone(say.Allergens(r.Allergens.EU)))
	if len(r.Allergens.Unstated) > 0 {
		p.line("Allergens not stated, which is not the same as none: %s", strings.Join(r.Allergens.Unstated, ", "))
	}
	if r.Cost.Priced {
		p.line("")
		p.line("%s", say.Cost(Reads, &r.Cost))
	}
	p.line("")
	p.gramMore(r)
	if len(r.Warnings) > 0 {
		p.line("")
		for _, x := range r.Warnings {
			p.line("%s: %s [%s, %s]", say.Of(x.Severity.String()), say.Warning(Reads, x), x.Code, x.Where)
		}
	}
	return p.err
}

// lines writes figures as laid out, under heads.
func (p *page) lines(heads []string, lines []say.TableRow) {
	width := 0
	for _, l := range lines {
		width = max(width, len([]rune(l.Head())))
	}
	rows := []string{left("", width) + "\t" + strings.Join(heads, "\t")}
	for _, l := range lines {
		rows = append(rows, left(l.Head(), width)+"\t"+strings.Join(l.Cells, "\t"))
	}
	p.table(rows)
}

// gramMore writes what a gram more of each line does.
func (p *page) gramMore(r *model.Result) {
	heads, cells := figure.GramMore(Reads, r)
	name := func(l *model.BatchLine) string { return say.Part(l.Part) + ": " + say.Kitchen(l.Ingredient) }
	const head say.Message = "A gram more changes"
	width := len([]rune(head.String()))
	for i := range r.Lines {
		width = max(width, len([]rune(name(&r.Lines[i]))))
	}
	rows := []string{left(head.String(), width) + "\t" + strings.Join(heads, "\t")}
	for i := range r.Lines {
		rows = append(rows, left(name(&r.Lines[i]), width)+"\t"+strings.Join(cells[i], "\t"))
	}
	p.table(rows)
}

func orNone(words []string) string {
	if len(words) == 0 {
		return say.T("none known")
	}
	return strings.Join(words, ", ")
}

// page writes until the first error.
type page struct {
	w   io.Writer
	err error
}

// line writes a line of the catalogue; words within it that somebody else wrote stay in it.
func (p *page) line(m say.Message, args ...any) {
	for i, a := range args {
		if text, ok := a.(string); ok {
			args[i] = say.HarmlessLine(text)
		}
	}
	if p.err == nil {
		_, p.err = fmt.Fprintln(p.w, say.T(m, args...))
	}
}

// table writes rows whose cells are parted by tabs, numbers to the right.
func (p *page) table(rows []string) {
	if p.err != nil {
		return
	}
	t := tabwriter.NewWriter(p.w, 0, 0, 2, ' ', tabwriter.AlignRight)
	for _, r := range rows {
		cells := strings.Split(r, "\t")
		for i := range cells {
			cells[i] = say.HarmlessLine(cells[i])
		}
		fmt.Fprintln(t, strings.Join(cells, "\t")+"\t")
	}
	p.err = t.Flush()
}

// left pads a word on the right, so that a column of words aligns left in a
// table that aligns right.
func left(s string, width int) string {
	if n := len([]rune(s)); n < width {
		return s + strings.Repeat(" ", width-n)
	}
	return s
}
