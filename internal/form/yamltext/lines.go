package yamltext

import (
	"bytes"
	"unicode/utf8"
)

// mark is the byte order mark that some editors put before a file.
var mark = []byte("\xef\xbb\xbf")

// breakAt returns how many bytes the line break at the beginning of text
// takes, 0 for none: CR LF, CR, LF, NEL, U+2028 or U+2029, which are the
// breaks of YAML 1.1, chapter 5.4, and those that the parser counts.
func breakAt(text []byte) int {
	switch {
	case len(text) == 0:
		return 0
	case text[0] == '\n':
		return 1
	case text[0] == '\r':
		if len(text) > 1 && text[1] == '\n' {
			return 2
		}
		return 1
	case bytes.HasPrefix(text, []byte("\u0085")):
		return len("\u0085")
	case bytes.HasPrefix(text, []byte("\u2028")), bytes.HasPrefix(text, []byte("\u2029")):
		return len("\u2028")
	}
	return 0
}

// Lines says where the lines of a text begin and end, as the parser counts
// them.
type Lines struct {
	text   []byte
	starts []int
}

// LinesOf finds the lines of text.
func LinesOf(text []byte) Lines {
	l := Lines{text: text, starts: []int{0}}
	if bytes.HasPrefix(text, mark) {
		l.starts[0] = len(mark)
	}
	for i := l.starts[0]; i < len(text); {
		if n := breakAt(text[i:]); n > 0 {
			i += n
			l.starts = append(l.starts, i)
			continue
		}
		i++
	}
	return l
}

// Count returns how many lines there are; a text that ends with a break has
// an empty one behind it.
func (l Lines) Count() int { return len(l.starts) }

// Start returns where line i begins, from 1; the text's end beyond the last.
func (l Lines) Start(i int) int {
	switch {
	case i < 1:
		return 0
	case i > len(l.starts):
		return len(l.text)
	}
	return l.starts[i-1]
}

// End returns where the text of line i ends, before its break.
func (l Lines) End(i int) int {
	at := l.Start(i)
	for next := l.Start(i + 1); at < next && breakAt(l.text[at:]) == 0; {
		at++
	}
	return at
}

// Of returns the line, from 1, on which the byte at offset stands.
func (l Lines) Of(offset int) int {
	line := 1
	for line < len(l.starts) && l.starts[line] <= offset {
		line++
	}
	return line
}

// Offset returns where the character of that line and column stands, both
// from 1; false if the line has none there.
func (l Lines) Offset(line, column int) (int, bool) {
	if line < 1 || line > len(l.starts) {
		return 0, false
	}
	at := l.starts[line-1]
	for range column - 1 {
		if at >= len(l.text) || breakAt(l.text[at:]) > 0 {
			return 0, false
		}
		_, n := utf8.DecodeRune(l.text[at:])
		at += n
	}
	return at, at < len(l.text)
}

// EndsWithBreak reports whether the last line of text is whole.
func EndsWithBreak(text []byte) bool {
	for _, n := range [...]int{1, 2, 3} {
		if len(text) >= n && breakAt(text[len(text)-n:]) == n {
			return true
		}
	}
	return false
}

// Unix returns text with a single LF for CR LF, CR and NEL, which the parser
// reads alike. U+2028 and U+2029 stay: inside quotes they are kept as such.
func Unix(text []byte) []byte {
	out := make([]byte, 0, len(text))
	for i := 0; i < len(text); {
		n := breakAt(text[i:])
		switch {
		case n == 0 || n == len("\u2028"):
			n = max(n, 1)
			out = append(out, text[i:i+n]...)
		default:
			out = append(out, '\n')
		}
		i += n
	}
	return out
}

// LikeIn returns text, whose breaks are LF, with the break that most lines of
// model end with.
func LikeIn(model, text []byte) []byte {
	count := map[string]int{}
	most := "\n"
	for i := 0; i < len(model); {
		n := breakAt(model[i:])
		if n > 0 && n < len("\u2028") {
			count[string(model[i:i+n])]++
		}
		i += max(n, 1)
	}
	for _, b := range [...]string{"\r\n", "\r", "\u0085"} {
		if count[b] > count[most] {
			most = b
		}
	}
	if most == "\n" {
		return text
	}
	return bytes.ReplaceAll(text, []byte("\n"), []byte(most))
}
