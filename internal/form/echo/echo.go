// Package echo makes input fit to be repeated in a message: short, on one
// line, and without signs that steer a terminal or turn the text around.
package echo

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Most is how many characters of input a message repeats.
const Most = 80

// Short returns s, or its beginning with "…" in place of what is beyond Most
// characters.
func Short(s string) string { return cut(s, Most) }

func cut(s string, most int) string {
	if len(s) <= most || utf8.RuneCountInString(s) <= most {
		return s
	}
	at := 0
	for range most - 1 {
		_, n := utf8.DecodeRuneInString(s[at:])
		at += n
	}
	return s[:at] + "…"
}

// Quoted returns s in quotes, cut to Most characters; what is not printable,
// the marks that turn the direction of writing among it, shows as an escape.
func Quoted(s string) string { return strconv.Quote(Short(s)) }

// Plain returns s without quotes, cut to Most characters; what is not
// printable shows as "�".
func Plain(s string) string { return Line(s, Most) }

// Line returns s on one line of at most that many characters; what is not
// printable shows as "�".
func Line(s string, most int) string {
	return strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return utf8.RuneError
		}
		return r
	}, cut(s, most))
}
