// Package headed puts a few words before a text, in lines that the text's own form
// takes for comments: "# note: "as everyone liked it"".
package headed

import (
	"bytes"
	"strconv"
	"strings"
)

// A Word is a key and what it says.
type Word struct{ Key, Value string }

// Put returns text with a line for each word before it. Values are quoted, so that
// whatever they hold stays on its line.
func Put(text []byte, words ...Word) []byte {
	var b bytes.Buffer
	for _, w := range words {
		b.WriteString("# " + w.Key + ": " + strconv.Quote(w.Value) + "\n")
	}
	b.Write(text)
	return b.Bytes()
}

// Take returns the values that Put has written under those keys, in their order, and
// the text behind them. It reports false if data does not begin with all of them; the
// text is then data.
func Take(data []byte, keys ...string) (values []string, text []byte, ok bool) {
	rest := data
	for _, key := range keys {
		line, behind, whole := bytes.Cut(rest, []byte("\n"))
		quoted, is := strings.CutPrefix(strings.TrimRight(string(line), "\r"), "# "+key+": ")
		value, err := strconv.Unquote(quoted)
		if !whole || !is || err != nil || quoted[0] != '"' {
			return nil, data, false
		}
		values, rest = append(values, value), behind
	}
	return values, rest, true
}
