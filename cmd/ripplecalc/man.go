package main

import (
	"os"
	"strings"
	"time"

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
		return doc.GenManTree(root, header, folders[0])
	}
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
