package say

import (
	"html"
	"strings"
	"unicode"
	"unicode/utf8"
)

// For is where a text that somebody else wrote is about to be shown.
type For uint8

// The places.
const (
	Terminal For = iota
	Markdown
	HTML
	FileName
)

// How long a harmless text may be, in runes; a name of a file in bytes, which
// leaves room for its ending and for a mark under the 255 of common file
// systems.
const (
	textRunes = 10000
	nameBytes = 120
)

// Harmless returns text as one line that only says what it says: without
// controls, terminal escapes, overrides of direction and line ends, with the
// signs that its place would act on made plain, and of bounded length. The
// name of a file is never empty, hidden, a way out of its folder or a device.
func Harmless(text string, place For) string {
	switch text = oneLine(text, textRunes); place {
	case Markdown:
		return markdown(text)
	case HTML:
		return html.EscapeString(text)
	case FileName:
		return fileName(text)
	}
	return text
}

// HarmlessLine is one line for a terminal, of any length, whose own spaces stay.
func HarmlessLine(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n', r == '\t', r == '\r', r == '\u0085', r == '\u2028', r == '\u2029':
			return ' '
		case !prints(r):
			return -1
		}
		return r
	}, text)
}

// HarmlessPage is a whole text for a terminal, whose own spaces and line ends
// stay and whose length is nobody's but its writer's.
func HarmlessPage(text string) string {
	return strings.Map(func(r rune) rune {
		if r != '\n' && r != '\t' && !prints(r) {
			return -1
		}
		return r
	}, text)
}

// prints reports whether a sign shows and does nothing else.
func prints(r rune) bool {
	return r != utf8.RuneError && unicode.IsGraphic(r) && !unicode.Is(unicode.Cf, r) && r != '\u2028' && r != '\u2029'
}

// oneLine drops what does not print and cuts at so many runes, with an
// ellipsis for the last.
func oneLine(text string, most int) string {
	var b strings.Builder
	n, space := 0, false
	for _, r := range text {
		switch {
		case unicode.IsSpace(r) && r != '\u00a0' && r != '\u2009', r == '\u2028', r == '\u2029':
			space = b.Len() > 0
			continue
		case !prints(r):
			continue
		}
		need := 1
		if space {
			need = 2
		}
		if n+need > most-1 {
			b.WriteRune('…')
			break
		}
		if space {
			b.WriteByte(' ')
			space = false
		}
		b.WriteRune(r)
		n += need
	}
	return b.String()
}

// markdownSigns keeps Markdown from reading signs of a text as its own, and
// HTML within it from being HTML.
var markdownSigns = strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "`", "\\`", "[", `\[`,
	"#", `\#`, "~", `\~`, "&", "&amp;", "<", "&lt;", ">", "&gt;")

// markdown also keeps a line from beginning a list, a rule or a heading.
func markdown(text string) string {
	if text != "" && strings.ContainsRune("-+=", rune(text[0])) {
		return `\` + markdownSigns.Replace(text)
	}
	digits := len(text) - len(strings.TrimLeft(text, "0123456789"))
	if rest := text[digits:]; digits > 0 && rest != "" && (rest[0] == '.' || rest[0] == ')') {
		return text[:digits] + `\` + markdownSigns.Replace(rest)
	}
	return markdownSigns.Replace(text)
}

// devices are names that Windows keeps for itself, whatever their ending.
var devices = map[string]bool{"con": true, "prn": true, "aux": true, "nul": true}

func fileName(text string) string {
	var b strings.Builder
	for _, r := range text {
		if strings.ContainsRune(`/\:*?"<>|`, r) {
			r = '-'
		}
		if b.Len()+utf8.RuneLen(r) > nameBytes {
			break
		}
		b.WriteRune(r)
	}
	name := strings.Trim(b.String(), " .-\u00a0\u2009")
	if name == "" {
		return T("untitled")
	}
	stem, _, _ := strings.Cut(strings.ToLower(name), ".")
	stem = strings.TrimSpace(stem)
	port := len(stem) == 4 && (strings.HasPrefix(stem, "com") || strings.HasPrefix(stem, "lpt"))
	if devices[stem] || port {
		return "_" + name
	}
	return name
}
