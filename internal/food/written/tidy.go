package written

import (
	"html"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

var fractions = strings.NewReplacer("½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4", "⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5",
	"⅙", " 1/6", "⅚", " 5/6", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⅑", " 1/9", "⅒", " 1/10", "⅐", " 1/7")

var signs = strings.NewReplacer("⁄", "/", "×", "x", "–", "-", "—", "-", "−", "-", "‐", "-", "‑", "-", "’", "'", "‘", "'", "\ufeff", "", "\u200b", "", "\u00ad", "", "[", "(", "]", ")")

// tidy is a line without bullets, in one form of each sign.
func tidy(text string) string {
	raw := text
	text = footnote.swap(struck.swap(html.UnescapeString(text), " "), "$1 ")
	if strings.TrimSpace(text) == "" {
		text = strings.ReplaceAll(raw, "~~", "")
	}
	s := norm.NFKC.String(fractions.Replace(text))
	s = signs.Replace(s)
	if cells, isRow := strings.CutPrefix(strings.TrimSpace(s), "|"); isRow {
		s = strings.ReplaceAll(strings.Trim(cells, "| "), "|", "\t")
	}
	s = halfs.swap(marked.swap(s, "$1$2"), "half and half")
	s = tightly.swap(s, "$1 $2")
	s = arrow.swap(s, "$1: ")
	s = celled.swap(s, "$1, $2 $3")
	if m := ahead.parts(s); m != nil {
		if _, rest, ok := read(m[1]); ok && strings.TrimSpace(rest) == "" && !amountFirst(m[2]) {
			s = m[1] + " " + m[2] // "(2) egg whites"
		}
	}
	s = strings.Map(func(c rune) rune {
		if unicode.IsControl(c) && c != '\t' {
			return ' '
		}
		return c
	}, s)
	s = box.swap(strings.ToValidUTF8(s, ""), "")
	if m := ordinal.parts(s); m != nil && !measuresFirst(m[1]) {
		s = m[1]
	}
	if cell, next, isTable := strings.Cut(s, "\t"); isTable && cell != "" {
		_, rest, _, ok := number(strings.TrimSpace(cell))
		if ok && rest == "" && !strings.ContainsAny(next[:min(1, len(next))], "0123456789.") { // two numbers may be a row and its amount
			s = strings.ReplaceAll(s, "\t", " ") // amount, measure and name in columns
		}
	}
	return strings.TrimSpace(idle.swap(bid.swap(s, ""), ""))
}

// amountFirst reports whether s begins with an amount in a measure: a number in brackets
// before it is that of the line, or nobody knows.
func amountFirst(s string) bool {
	a, _, ok := read(s)
	return ok && a.word != ""
}

var (
	tightly  = find(`(\pL{3,})(\d)`) // "sugar100g"
	footnote = find(`(\pL)(?:[*\x{2020}\x{2021}]|[\x{00B9}\x{00B2}\x{00B3}])+(?:\s|$|,)`)
	arrow    = find(`(\pL)\s*(?:=>|->|\x{2192})\s*`)
	celled   = find(`^(\pL[^,;]*)[,;]\s*(\d[\d./]*)\s*[,;]\s*(\pL{1,12}\.?)$`) // "sugar, 100, g"
	ahead    = find(`^\(([^()]*)\)\s*(.*)$`)

	// What is crossed out, in the forms of plain text and of pages.
	struck = find(`(?i)~~[^~]*~~|<(?:s|del|strike)>.*?</(?:s|del|strike)>|(?:[^\x{0335}-\x{0338}][\x{0335}-\x{0338}])+`)

	bid  = find(`^(?i)take\s+`)
	idle = find(`(?i)\s+or so\b|\s*@.*$|!+\s*$`) // or so; a price; emphasis
)
