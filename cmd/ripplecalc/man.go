package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/spf13/cobra/doc"
	"github.com/spf13/pflag"

	"ripplewright/internal/show/say"
)

var manCommand = &command{
	name:  "man",
	usage: "man FOLDER",
	short: "Writes the manual pages into a folder",
	long: `
One page for ripplecalc and one for each of its commands, for man(1). They are English.
`,
	first: "folder",
	least: 1,
	most:  1,
}

func init() { manCommand.flags = manFlags }

func manFlags(*command, *pflag.FlagSet) action {
	return func(s *shell, folders []string) error {
		if _, err := os.Stat(folders[0]); err != nil {
			return err
		}
		plain := *s
		plain.locale = "" // the pages are English wherever they are written
		root := tree(&plain)
		root.Long, root.DisableAutoGenTag = set(root.Long), true
		for _, built := range root.Commands() {
			if c, ok := find(built.Name()); ok {
				built.Long, built.DisableAutoGenTag = set(say.Sentence(c.short.String())+"\n"+c.long.String()), true
			}
		}
		day := time.Time{}.AddDate(2025, 0, 0) // the same pages from the same program
		header := &doc.GenManHeader{Title: "RIPPLECALC", Section: "1", Source: "Ripplewright", Manual: "Ripplewright", Date: &day}
		for _, on := range append(root.Commands(), root) {
			var page bytes.Buffer
			if err := doc.GenMan(on, header, &page); err != nil {
				return &faultError{err}
			}
			name := strings.ReplaceAll(on.CommandPath(), " ", "-") + ".1"
			if err := os.WriteFile(filepath.Join(folders[0], name), []byte(tidy(page.String(), day)), 0o644); err != nil {
				return err
			}
		}
		return nil
	}
}

// widest is how many bytes a line of a page has at most where its lines flow.
const widest = 78

// tidy mends what mandoc warns of: a date that it cannot read, tabs before what options
// mean, long lines. No option is worth not a number.
func tidy(page string, day time.Time) string {
	page = strings.Replace(page, day.Format(`"Jan 2006"`), day.Format(`"2006-01-02"`), 1)
	var out []string
	stands := false // between .EX and .EE
	for _, line := range strings.Split(strings.ReplaceAll(page, `\fP=NaN`, `\fP`), "\n") {
		stands = stands && line != ".EE" || line == ".EX"
		meaning, isMeaning := strings.CutPrefix(line, "\t")
		if last := len(out) - 1; isMeaning && last > 0 {
			if out[last-1] == ".PP" {
				out[last-1] = ".TP"
			} else { // the first of its section
				out = append(out[:last], ".TP", out[last])
			}
			line = meaning
		}
		if stands || strings.HasPrefix(line, ".") {
			out = append(out, line)
			continue
		}
		out = append(out, folded(line)...)
	}
	return strings.Join(out, "\n")
}

// folded parts a line at blanks. A letter beyond ASCII counts as its escape, \[u20AC].
func folded(line string) (out []string) {
	at, wide := -1, 0
	for i := 0; i < len(line); i++ {
		if line[i] == ' ' {
			at = i
		}
		if wide++; line[i] >= utf8.RuneSelf {
			wide += 3
		}
		if wide > widest && at > 0 {
			out, line = append(out, line[:at]), line[at+1:]
			at, wide, i = -1, 0, -1
		}
	}
	return append(out, line)
}

// set keeps the lines of lists as they stand: as Markdown, which the pages are
// made from, knows by four blanks before them. Paragraphs flow.
func set(text string) string {
	var pages []string
	for _, paragraph := range strings.Split(text, "\n\n") {
		if lines := strings.Split(paragraph, "\n"); listed(lines) {
			paragraph = "    " + strings.Join(lines, "\n    ")
		}
		pages = append(pages, paragraph)
	}
	return strings.Join(pages, "\n\n")
}

// listed reports whether lines stand in columns.
func listed(lines []string) bool {
	for _, line := range lines {
		if strings.HasPrefix(line, "  ") || strings.Contains(strings.TrimSpace(line), "   ") {
			return true
		}
	}
	return false
}
