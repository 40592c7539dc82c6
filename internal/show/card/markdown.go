package card

import (
	"fmt"
	"strings"

	"ripplewright/internal/show/say"
)

// markdown writes the card's words, without its pictures.
func markdown(c content) []byte {
	var m marked
	m.write("# %s\n\n*%s*\n\n%s. **%s.**\n\n**%s**", escaped(c.name), escaped(c.strap), escaped(c.makes), say.T("Serve at %s", c.serve), escaped(c.verdict))
	if c.advice != "" {
		m.write(" %s", escaped(c.advice))
	}
	m.write("\n")
	m.recipe(c)
	m.making(c)
	m.figures(c)
	if c.label != nil || c.labelNote != "" {
		m.head(say.T("Label"))
	}
	if c.label == nil {
		m.write("%s\n", escaped(c.labelNote))
	} else {
		m.write("```\n%s```\n", strings.ReplaceAll(string(labelText(c.label)), "```", "'''")) // which would end the fence
	}
	if len(c.cautions) > 0 {
		m.head(say.T("Cautions"))
	}
	for _, k := range c.cautions {
		m.write("- **%s.** %s\n", escaped(k.Title), escaped(k.Text))
	}
	return []byte(m.String())
}

// marked is a text in Markdown.
type marked struct{ strings.Builder }

func (m *marked) write(format string, args ...any) { fmt.Fprintf(m, format, args...) }

// head begins a section.
func (m *marked) head(title string) { m.write("\n## %s\n\n", escaped(title)) }

// columns begins a table whose columns lie as aligned says.
func (m *marked) columns(aligned string, names ...string) {
	m.write("| %s |\n%s\n", strings.Join(names, " | "), aligned)
}

// recipe writes what is weighed, and what is noted of it.
func (m *marked) recipe(c content) {
	for _, l := range c.parts {
		m.write("\n## %s\n\n", l.title)
		if l.note != "" {
			m.write("%s, %s.\n\n", l.total, l.note)
		} else {
			m.write("%s.\n\n", l.total)
		}
		m.columns("|---:|---|---|---|", say.T("weight"), "", say.T("measure"), say.T("note"))
		for _, r := range l.rows {
			m.write("| %s | %s | %s | %s |\n", r.weight(), escaped(r.name), escaped(r.measure), escaped(r.note))
		}
	}
	if len(c.notes) > 0 {
		m.write("\n## %s\n", say.T("Notes"))
	}
	for _, n := range c.notes {
		m.write("\n%s\n", escaped(n))
	}
	if len(c.checks) > 0 {
		m.head(say.T("Check on the scale"))
		for _, k := range c.checks {
			m.write("- %s: %s\n", escaped(k.Title), escaped(k.Text))
		}
	}
}

// making writes the steps, and the day that they fill.
func (m *marked) making(c content) {
	if len(c.steps) > 0 {
		m.head(say.T("How it is made"))
	}
	for i, s := range c.steps {
		m.write("%d. **%s.** %s\n", i+1, escaped(s.Title), escaped(withBlank(s.Text, c.blanks[i])))
	}
	if len(c.day) > 0 {
		m.head(say.DayTitle(serveMinute))
		m.columns("|---|---|---|", say.T("day"), say.T("time¦of day"), say.T("step"))
	}
	for _, row := range c.day {
		m.write("| %s | %s | %s |\n", row.Day, row.Time, escaped(row.Title))
	}
}

// figures writes the figures, what the verdict rests on, and the cost.
func (m *marked) figures(c content) {
	if len(c.figures) > 0 {
		m.head(say.T("The figures"))
		m.columns("|---|---:|---:|---:|", "", say.T("custard"), say.T("foam"), say.T("tub"))
	}
	for _, f := range c.figures {
		m.write("| %s | %s | %s | %s |\n", f.name, f.dense, f.foam, f.tub)
	}
	if len(c.rests)+len(c.warnings) > 0 {
		m.head(say.T("What the verdict rests on"))
	}
	for _, list := range [][]string{c.rests, c.warnings} {
		for _, s := range list {
			m.write("- %s\n", escaped(s))
		}
	}
	if c.cost != "" {
		m.head(say.T("What it costs"))
		m.write("%s\n", escaped(c.cost))
	}
}

// escaped keeps Markdown from reading signs of s as its own.
func escaped(s string) string { return say.Harmless(s, say.Markdown) }
