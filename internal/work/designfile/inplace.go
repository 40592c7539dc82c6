package designfile

import (
	"bytes"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/yamltext"
)

var errNotInPlace = flaw.New("the change is more than values, keys and lines where they stand")

// change puts text in the place of the bytes from one offset to another.
type change struct {
	from, to int
	text     string
	column   int // in which the text begins, of text on lines of its own
}

// inPlace is a text with the tree that was read from it. It says which bytes
// to change for a change of the tree, so that all other bytes stay; ok is
// false where that cannot be told. Who uses it reads the result back.
type inPlace struct {
	raw   []byte
	lines yamltext.Lines
	order []*yaml.Node // as they stand in the text
	spots map[*yaml.Node]spot
}

// spot says where a node stands in the tree.
type spot struct {
	up    *yaml.Node
	index int // in the order of the text
	last  int // that of the last node within it

	value   string // as it was read, and so on
	style   yaml.Style
	content []*yaml.Node
}

func newInPlace(raw []byte, root *yaml.Node) *inPlace {
	w := &inPlace{raw: raw, lines: yamltext.LinesOf(raw), spots: map[*yaml.Node]spot{}}
	w.walk(root, nil)
	return w
}

func (w *inPlace) walk(n, up *yaml.Node) {
	s := spot{up: up, index: len(w.order), value: n.Value, style: n.Style, content: slices.Clone(n.Content)}
	w.order = append(w.order, n)
	for _, c := range n.Content {
		w.walk(c, n)
	}
	s.last = len(w.order) - 1
	w.spots[n] = s
}

// has reports whether n was read from the text.
func (w *inPlace) has(n *yaml.Node) bool {
	_, ok := w.spots[n]
	return ok
}

// changed returns the text with all changes made.
func (w *inPlace) changed(all []change) ([]byte, error) {
	all = slices.Clone(all)
	slices.SortStableFunc(all, func(a, b change) int {
		if a.from != b.from {
			return a.from - b.from
		}
		return b.column - a.column // what stands deeper belongs to what is above
	})
	var out []byte
	at := 0
	for _, c := range all {
		if c.from < at || c.to < c.from {
			return nil, errNotInPlace
		}
		out = append(append(out, w.raw[at:c.from]...), c.text...)
		at = c.to
	}
	return append(out, w.raw[at:]...), nil
}

// start returns the offset at which n begins.
func (w *inPlace) start(n *yaml.Node) (int, bool) {
	if !w.has(n) {
		return 0, false
	}
	return w.lines.Offset(n.Line, n.Column)
}

// end returns the offset behind n, which is a value in quotes or without, or a
// list or group in brackets.
func (w *inPlace) end(n *yaml.Node) (int, bool) {
	at, ok := w.start(n)
	if !ok {
		return 0, false
	}
	s := w.spots[n]
	switch {
	case n.Kind == yaml.ScalarNode:
		length := span(w.raw[at:], s.value, s.style)
		return at + length, length >= 0
	case s.style&yaml.FlowStyle == 0:
		return 0, false
	}
	at++
	if len(s.content) > 0 {
		if at, ok = w.end(s.content[len(s.content)-1]); !ok {
			return 0, false
		}
	}
	at += len(w.raw[at:]) - len(bytes.TrimLeft(w.raw[at:], " \t\r\n"))
	closes := byte('}')
	if n.Kind == yaml.SequenceNode {
		closes = ']'
	}
	return at + 1, at < len(w.raw) && w.raw[at] == closes
}

// span returns how many bytes the value takes at the start of text, or −1 if
// it is not found there.
func span(text []byte, value string, style yaml.Style) int {
	switch {
	case style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 || len(text) == 0:
		return -1
	case style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0:
		return quotedSpan(text)
	case bytes.HasPrefix(text, []byte(value)):
		return len(value)
	}
	at := 0 // words on several lines
	for i, word := range strings.Fields(value) {
		rest := text[at:]
		if i > 0 {
			rest = bytes.TrimLeft(rest, " \t\r\n\u0085\u2028\u2029")
		}
		if !bytes.HasPrefix(rest, []byte(word)) {
			return -1
		}
		at = len(text) - len(rest) + len(word)
	}
	return at
}

func quotedSpan(text []byte) int {
	quote := text[0]
	if quote != '"' && quote != '\'' {
		return -1
	}
	for i := 1; i < len(text); i++ {
		switch {
		case text[i] == '\\' && quote == '"':
			i++
		case text[i] == quote && quote == '\'' && i+1 < len(text) && text[i+1] == quote:
			i++
		case text[i] == quote:
			return i + 1
		}
	}
	return -1
}

// lastLine returns the last line of what belongs to n, which stands under a
// key or a dash in that column: what follows it is blank, a comment or
// something else's.
func (w *inPlace) lastLine(n *yaml.Node, column int) int {
	s := w.spots[n]
	last := w.order[s.last]
	line := w.lines.Count()
	if s.last+1 < len(w.order) {
		line = w.order[s.last+1].Line - 1
	}
	inLines := w.spots[last].style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0
	least := last.Line
	if at, ok := w.end(last); ok {
		least = w.lines.Of(at)
	}
	for i := last.Line + 1; inLines && i <= line; i++ { // what stands less deep is no text
		if text := w.text(i); strings.TrimSpace(text) != "" {
			column = max(column, len(text)-len(strings.TrimLeft(text, " ")))
			break
		}
	}
	for ; line > least; line-- {
		text := w.text(line)
		trimmed := strings.TrimLeft(text, " ")
		switch {
		case strings.TrimSpace(trimmed) == "", text == "...":
			continue
		case trimmed[0] == '#' && !(inLines && len(text)-len(trimmed) >= column):
			continue
		}
		break
	}
	return line
}

// text returns a line without its break.
func (w *inPlace) text(line int) string {
	return string(w.raw[w.lines.Start(line):w.lines.End(line)])
}

// breakOf returns the break of a line, or what stands for it at the end.
func (w *inPlace) breakOf(line int) string {
	for _, i := range [...]int{line, 1} {
		if b := w.raw[w.lines.End(i):w.lines.Start(i+1)]; len(b) > 0 {
			return string(b)
		}
	}
	return "\n"
}
