// Package schemaline puts into a file the line by which editors of text find the JSON
// Schema of its kind. It is the open convention of the YAML language server (README of
// redhat-developer/yaml-language-server, "Using inlined schema", from memory): to every
// other reader of the file it is a comment.
package schemaline

import (
	"bytes"
	"encoding/json"
	"strings"
)

// A Kind is a kind of file that a maker has.
type Kind string

// The kinds, by the words that the command line has for them.
const (
	Design      Kind = "design"
	Batches     Kind = "batches"
	Kitchens    Kind = "kitchens"
	Prices      Kind = "prices"
	Ingredients Kind = "ingredients"
	Wishes      Kind = "wishes"
)

// Schemas tells the address of the schema of a kind, "" where there is none. The nil
// Schemas knows none, and no file names its schema then.
type Schemas func(Kind) string

// Prefix begins the line.
const Prefix = "# yaml-language-server: $schema="

var mark = []byte("\ufeff") // that some editors put before a file

// Head returns text with the line before it. A text that names a schema anywhere, by
// whatever address, is left as it is, and so is JSON, which has no comments.
func (s Schemas) Head(text []byte, kind Kind) []byte {
	if s == nil || Named(text) || json.Valid(text) {
		return text
	}
	address := s(kind)
	if address == "" || strings.ContainsFunc(address, func(r rune) bool { return r <= ' ' || r == 0x7f || r == 0x85 || r == 0x2028 || r == 0x2029 }) {
		return text
	}
	end := "\n"
	if i := bytes.IndexByte(text, '\n'); i > 0 && text[i-1] == '\r' {
		end = "\r\n"
	}
	rest, marked := bytes.CutPrefix(text, mark)
	var b bytes.Buffer
	if marked {
		b.Write(mark)
	}
	b.WriteString(Prefix + address + end)
	b.Write(rest)
	return b.Bytes()
}

// Named reports whether a line of text names a schema.
func Named(text []byte) bool {
	for len(text) > 0 {
		line, rest, _ := bytes.Cut(text, []byte("\n"))
		if names(line) {
			return true
		}
		text = rest
	}
	return false
}

// names reports whether a line is a comment that names a schema, in the form of the
// language server or in that of other editors, "# $schema: ADDRESS".
func names(line []byte) bool {
	comment, is := bytes.CutPrefix(bytes.TrimSpace(bytes.TrimPrefix(line, mark)), []byte("#"))
	comment = bytes.TrimSpace(bytes.TrimPrefix(bytes.TrimSpace(comment), []byte("yaml-language-server:")))
	comment, ours := bytes.CutPrefix(comment, []byte("$schema"))
	return is && ours && len(comment) > 0 && (comment[0] == '=' || comment[0] == ':')
}

// Same reports whether two texts say the same, whatever schemas they name.
func Same(a, b []byte) bool { return bytes.Equal(without(a), without(b)) }

func without(text []byte) []byte {
	var b bytes.Buffer
	text = bytes.TrimPrefix(text, mark)
	for len(text) > 0 {
		n := bytes.IndexByte(text, '\n') + 1
		if n == 0 {
			n = len(text)
		}
		if !names(text[:n]) {
			b.Write(text[:n])
		}
		text = text[n:]
	}
	return b.Bytes()
}
