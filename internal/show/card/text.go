package card

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/say"
)

// run is a piece of text in one style.
type run struct {
	text string
	style
}

// plain strips what no font can set: line ends become spaces, and other
// control and zero-width signs go. Letters and their accents become one sign,
// and the hyphen before a number the minus it stands for.
func plain(s string) string {
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

// paragraphs splits what stands between empty lines; other ends of lines are
// those of whoever typed it.
func paragraphs(s string) []string {
	var out []string
	for _, p := range emptyLine.Split(s, -1) {
		if p = plain(p); p != "" {
			out = append(out, p)
		}
	}
	return out
}

var emptyLine = regexp.MustCompile(`\n[ \t\r]*\n`)

// What a card holds of notes, in letters and paragraphs; more stays in the design.
const (
	mostNotes      = 20000
	mostParagraphs = 400
	mostLineNote   = 500
)

// notesOf splits a design's notes into the paragraphs that a card has of them.
func notesOf(s string) []string {
	short := cut(s, mostNotes)
	all := paragraphs(short)
	if len(all) > mostParagraphs || short != s {
		all = append(all[:min(len(all), mostParagraphs)], say.NotesGoOn)
	}
	return all
}

// cut returns s, or what begins it and an ellipsis, most letters in all.
func cut(s string, most int) string {
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	n := 0
	for i := range s {
		if n++; n == most {
			return s[:i] + "…"
		}
	}
	return s
}

// unit finds a space between a number and its unit, where no line may end.
var unit = regexp.MustCompile(`(\d) (%|°C|g|kg|mL|kPa|mm|cm)([^\pL]|$)`)

func tied(s string) string { return unit.ReplaceAllString(s, "$1\u00a0$2$3") }

// wrapped breaks runs into lines no longer than width mm, at spaces and, where
// one word alone is longer, within the word.
func wrapped(runs []run, width float64) [][]run {
	var lines [][]run
	var line []run
	x := 0.0
	add := func(st style, s string) {
		if n := len(line); n > 0 && line[n-1].style == st {
			line[n-1].text += s
		} else if s != "" {
			line = append(line, run{s, st})
		}
		x += st.width(s)
	}
	flush := func() {
		if n := len(line); n > 0 {
			line[n-1].text = strings.TrimRight(line[n-1].text, " ")
		}
		lines = append(lines, line)
		line, x = nil, 0
	}
	for _, word := range together(runs) {
		w := 0.0
		for _, r := range word {
			w += r.width(strings.TrimRight(r.text, " "))
		}
		if x > 0 && x+w > width {
			flush()
		}
		for _, r := range word {
			if w <= width {
				add(r.style, r.text)
				continue
			}
			for _, c := range r.text {
				if x > 0 && x+r.width(string(c)) > width {
					flush()
				}
				add(r.style, string(c))
			}
		}
	}
	if len(line) > 0 {
		flush()
	}
	return lines
}

// together splits runs into words, each with the spaces after it; a word may
// change its style within.
func together(runs []run) [][]run {
	var all [][]run
	var word []run
	for _, r := range runs {
		rest := tied(r.text)
		for rest != "" {
			end := len(rest)
			space := false
			if i := strings.IndexByte(rest, ' '); i >= 0 {
				end, space = i, true
				for end < len(rest) && rest[end] == ' ' {
					end++
				}
			}
			word = append(word, run{rest[:end], r.style})
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

// paragraph sets runs as a part of the given width with lines lead pt apart.
// The first line's capitals touch its upper edge.
func paragraph(width, lead float64, runs ...run) *draw.List {
	p := &draw.List{W: width}
	for i, line := range wrapped(runs, width) {
		l := oneLine(line)
		if i == 0 {
			p.H = l.H
		} else {
			p.H += lead * point
		}
		p.Place(l, 0, p.H-l.H, 1)
	}
	return p
}

// text sets one string as a paragraph.
func text(width, lead float64, st style, s string) *draw.List {
	return paragraph(width, lead, run{s, st})
}

// stack sets parts one under the other, gap mm apart.
func stack(gap float64, parts ...*draw.List) *draw.List {
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

// oneLine sets runs that fit into a line. Its capitals touch its upper edge.
func oneLine(line []run) *draw.List {
	s := &draw.List{}
	for _, r := range line {
		s.H = max(s.H, face.CapHeight*r.size*point)
	}
	for _, r := range line {
		s.W = write(s, s.W, s.H, r.style, r.text)
	}
	return s
}
