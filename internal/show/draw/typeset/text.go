package typeset

import (
	"regexp"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
)

// Run is a piece of text in one style.
type Run struct {
	Text string
	Style
}

// Plain strips what no font can set: line ends become spaces, and other
// control and zero-width signs go. Letters and their accents become one sign,
// and the hyphen before a number the minus it stands for.
func Plain(s string) string {
	s = minus.ReplaceAllString(norm.NFC.String(s), "$1−$2")
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r) && r != '\u00a0':
			return ' '
		case unicode.Is(unicode.Cc, r), unicode.Is(unicode.Cf, r), r >= 0xfe00 && r <= 0xfe0f:
			return -1
		}
		return r
	}, s)), " ")
}

var minus = regexp.MustCompile(`(^|[\s(])-(\d)`)

// unit finds a space between a number and its unit, where no line may end.
var unit = regexp.MustCompile(`(\d) (%|°C|°F|g|kg|oz|lb|mL|L|kPa|mm|cm|min|h)([^\pL]|$)`)

func tied(s string) string { return unit.ReplaceAllString(s, "$1\u00a0$2$3") }

// Wrapped breaks runs into lines no longer than width mm, at spaces and, where
// one word alone is longer, within the word.
func Wrapped(runs []Run, width float64) [][]Run {
	var lines [][]Run
	var line []Run
	x := 0.0
	add := func(st Style, s string) {
		if n := len(line); n > 0 && line[n-1].Style == st {
			line[n-1].Text += s
		} else if s != "" {
			line = append(line, Run{s, st})
		}
		x += st.Width(s)
	}
	flush := func() {
		if n := len(line); n > 0 {
			line[n-1].Text = strings.TrimRight(line[n-1].Text, " ")
		}
		lines = append(lines, line)
		line, x = nil, 0
	}
	for _, word := range together(runs) {
		w := 0.0
		for _, r := range word {
			w += r.Width(strings.TrimRight(r.Text, " "))
		}
		if x > 0 && x+w > width {
			flush()
		}
		for _, r := range word {
			if w <= width {
				add(r.Style, r.Text)
				continue
			}
			for _, c := range r.Text {
				if x > 0 && x+r.Width(string(c)) > width {
					flush()
				}
				add(r.Style, string(c))
			}
		}
	}
	if len(line) > 0 {
		flush()
	}
	return lines
}

// together splits runs into words, each with the spaces after it; a word may
// change its Style within.
func together(runs []Run) [][]Run {
	var all [][]Run
	var word []Run
	for _, r := range runs {
		rest := tied(r.Text)
		for rest != "" {
			end := len(rest)
			space := false
			if i := strings.IndexByte(rest, ' '); i >= 0 {
				end, space = i, true
				for end < len(rest) && rest[end] == ' ' {
					end++
				}
			}
			word = append(word, Run{rest[:end], r.Style})
			rest = rest[end:]
			if space {
				all = append(all, word)
				word = nil
			}
		}
	}
	if word != nil {
		all = append(all, word)
	}
	return all
}

// Paragraph sets runs as a part of the given width with lines lead pt apart.
// The first line's capitals touch its upper edge.
func Paragraph(width, lead float64, runs ...Run) *draw.List {
	p := &draw.List{W: width}
	for i, line := range Wrapped(runs, width) {
		l := OneLine(line)
		if i == 0 {
			p.H = l.H
		} else {
			p.H += lead * Point
		}
		p.Place(l, 0, p.H-l.H, 1)
	}
	return p
}

// Text sets one string as a paragraph.
func Text(width, lead float64, st Style, s string) *draw.List {
	return Paragraph(width, lead, Run{s, st})
}

// Stack sets parts one under the other, gap mm apart.
func Stack(gap float64, parts ...*draw.List) *draw.List {
	out := &draw.List{}
	for _, p := range parts {
		if p == nil {
			continue
		}
		if out.H > 0 {
			out.H += gap
		}
		out.Place(p, 0, out.H, 1)
		out.H += p.H
		out.W = max(out.W, p.W)
	}
	return out
}

// OneLine sets runs that fit into a line. Its capitals touch its upper edge.
func OneLine(line []Run) *draw.List {
	s := &draw.List{}
	for _, r := range line {
		s.H = max(s.H, face.CapHeight*r.Size*Point)
	}
	for _, r := range line {
		s.W = Write(s, s.W, s.H, r.Style, r.Text)
	}
	return s
}
