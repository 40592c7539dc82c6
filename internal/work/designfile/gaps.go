package designfile

import (
	"bytes"
	"strings"

	"gopkg.in/yaml.v3"
)

// gap stands for a blank line while a tree is rewritten: the YAML package
// keeps comments but not blank lines.
const gap = "#<gap>"

// markGaps replaces the blank lines of text, whose tree is n, by comments. It
// leaves those inside a value alone. It reports false if there is nothing to
// mark or the text has such comments already.
func markGaps(text []byte, n *yaml.Node) ([]byte, bool) {
	if bytes.Contains(text, []byte(gap)) {
		return nil, false
	}
	all := strings.Split(string(text), "\n")
	inside := make([]bool, len(all)+1)
	open := -1 // first line, from 0, of a value of several lines
	each(n, func(c *yaml.Node) {
		if open >= 0 {
			for i := open; i < c.Line-1 && i < len(inside); i++ {
				inside[i] = true
			}
			open = -1
		}
		if c.Kind == yaml.ScalarNode && strings.Contains(c.Value, "\n") {
			open = c.Line - 1
		}
	})
	for i := max(open, 0); open >= 0 && i < len(inside); i++ {
		inside[i] = true
	}
	marked := false
	indent := ""
	for i := len(all) - 1; i >= 0; i-- { // from the end, to know the next line's indent
		line := all[i]
		if trimmed := strings.TrimLeft(line, " "); strings.TrimSpace(line) != "" {
			indent = line[:len(line)-len(trimmed)]
		} else if i < len(all)-1 && !inside[i] {
			all[i] = indent + gap
			marked = true
		}
	}
	return []byte(strings.Join(all, "\n")), marked
}

// unmarkGaps turns the comments back into blank lines. Around comments the
// YAML package adds blank lines of its own; next to a gap they are dropped.
func unmarkGaps(text []byte) []byte {
	var out []string
	all := strings.Split(string(text), "\n")
	isGap := func(i int) bool { return i >= 0 && i < len(all) && strings.TrimSpace(all[i]) == gap }
	for i, line := range all {
		switch {
		case isGap(i):
			out = append(out, "")
		case line == "" && i < len(all)-1 && (isGap(i-1) || isGap(i+1)):
		default:
			out = append(out, line)
		}
	}
	return []byte(strings.Join(out, "\n"))
}

// each calls f for n and everything below it, in the order of the file.
func each(n *yaml.Node, f func(*yaml.Node)) {
	f(n)
	for _, c := range n.Content {
		each(c, f)
	}
}
