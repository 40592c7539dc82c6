package card

import (
	"fmt"
	"strings"

	"ripplewright/internal/show/say"
)

// markdown writes the card's words, without its pictures.
func markdown(c content) []byte {
	var b strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	p("# %s\n\n*%s*\n\n%s. **Serve at %s.**\n\n**%s**", escaped(c.name), escaped(c.strap), escaped(c.makes), c.serve, escaped(c.verdict))
	if c.advice != "" {
		p(" %s", escaped(c.advice))
	}
	p("\n")
	for _, l := range c.parts {
		p("\n## %s\n\n", l.title)
		if l.note != "" {
			p("%s, %s.\n\n", l.total, l.note)
		} else {
			p("%s.\n\n", l.total)
		}
		p("| weight | | measure | note |\n|---:|---|---|---|\n")
		for _, r := range l.rows {
			p("| %s %s | %s | %s | %s |\n", r.grams, r.unit, escaped(r.name), escaped(r.measure), escaped(r.note))
		}
	}
	if len(c.notes) > 0 {
		p("\n## Notes\n")
	}
	for _, n := range c.notes {
		p("\n%s\n", escaped(n))
	}
	if len(c.checks) > 0 {
		p("\n## Check on the scale\n\n")
		for _, k := range c.checks {
			p("- %s: %s\n", escaped(k.Title), escaped(k.Text))
		}
	}
	p("\n## How it is made\n\n")
	for i, s := range c.steps {
		p("%d. **%s.** %s\n", i+1, escaped(s.Title), escaped(s.Text))
	}
	if len(c.day) > 0 {
		p("\n## %s\n\n| day | time | step |\n|---|---|---|\n", escaped(say.DayTitle(serveMinute)))
	}
	for _, row := range c.day {
		p("| %s | %s | %s |\n", row.Day, row.Time, escaped(row.Title))
	}
	p("\n## The figures\n\n| | custard | foam | tub |\n|---|---:|---:|---:|\n")
	for _, f := range c.figures {
		p("| %s | %s | %s | %s |\n", f.name, f.dense, f.foam, f.tub)
	}
	p("\n## What the verdict rests on\n\n")
	for _, list := range [][]string{c.rests, c.warnings} {
		for _, s := range list {
			p("- %s\n", escaped(s))
		}
	}
	if c.cost != "" {
		p("\n## What it costs\n\n%s\n", escaped(c.cost))
	}
	p("\n## Label\n\n")
	if c.label == nil {
		p("%s\n", escaped(c.labelNote))
	} else {
		p("```\n%s```\n", strings.ReplaceAll(string(labelText(c.label)), "```", "'''")) // which would end the fence
	}
	p("\n## Cautions\n\n")
	for _, k := range c.cautions {
		p("- **%s.** %s\n", escaped(k.Title), escaped(k.Text))
	}
	return []byte(b.String())
}

// escaped keeps Markdown from reading signs of s as its own.
func escaped(s string) string { return say.Harmless(s, say.Markdown) }
