package designfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// MaxSize is the longest file that is read, in bytes. A design of a hundred
// lines has some 10 kB.
const MaxSize = 1 << 20

// parse returns the one document in data, or why there is none.
func parse(data []byte) (*yaml.Node, []Problem) {
	unreadable := func(line int, message string) (*yaml.Node, []Problem) {
		return nil, []Problem{{Kind: Unreadable, Line: line, Message: message}}
	}
	if len(data) > MaxSize {
		return unreadable(0, fmt.Sprintf("the file is longer than %d bytes; this is no design", MaxSize))
	}
	if !utf8.Valid(data) {
		return unreadable(lineOfBadText(data), "not UTF-8 text; save the file as UTF-8")
	}
	d := yaml.NewDecoder(bytes.NewReader(data))
	var doc yaml.Node
	switch err := d.Decode(&doc); {
	case errors.Is(err, io.EOF):
		return unreadable(0, "the file is empty")
	case err != nil:
		line, message := syntaxError(data, err)
		return unreadable(line, message)
	}
	if len(doc.Content) != 1 {
		return unreadable(0, "the file is empty")
	}
	var second yaml.Node
	switch err := d.Decode(&second); {
	case errors.Is(err, io.EOF):
	case err != nil:
		line, message := syntaxError(data, err)
		return unreadable(line, message)
	default:
		return nil, []Problem{{Kind: NotAllowed, Line: max(second.Line, 1), Message: "a second document begins here; a file holds one design"}}
	}
	return doc.Content[0], nil
}

// lineOfBadText returns the line of the first byte that is not UTF-8.
func lineOfBadText(data []byte) int {
	rest := data
	for len(rest) > 0 {
		r, n := utf8.DecodeRune(rest)
		if r == utf8.RuneError && n == 1 {
			break
		}
		rest = rest[n:]
	}
	return 1 + bytes.Count(data[:len(data)-len(rest)], []byte("\n"))
}

var lineInMessage = regexp.MustCompile(`^line ([0-9]+): `)

// syntaxError returns line and message of a parser's error. The parser names
// the line where the broken construct began or less, so the line is looked
// for: it is the first after which no beginning of the file parses.
func syntaxError(data []byte, err error) (int, string) {
	message := strings.TrimPrefix(err.Error(), "yaml: ")
	line := 0
	if m := lineInMessage.FindStringSubmatch(message); m != nil {
		line, _ = strconv.Atoi(m[1])
		message = message[len(m[0]):]
	}
	ends := lineEnds(data)
	const patience = 2 << 20 // bytes to parse again, at most: some 0.1 s
	if len(ends)*len(data) <= patience {
		for k := len(ends) - 1; k >= 0; k-- {
			start := 0
			if k > 0 {
				start = ends[k-1]
			}
			var n yaml.Node
			if len(bytes.TrimSpace(data[start:ends[k]])) > 0 && (start == 0 || yaml.Unmarshal(data[:start], &n) == nil) {
				line = k + 1
				break
			}
		}
	}
	return line, "not readable as YAML: " + message
}

// lineEnds returns the offset behind each line.
func lineEnds(data []byte) []int {
	var ends []int
	for i, b := range data {
		if b == '\n' {
			ends = append(ends, i+1)
		}
	}
	if len(data) > 0 && data[len(data)-1] != '\n' {
		ends = append(ends, len(data))
	}
	return ends
}

// tidy reports what YAML allows and a design file does not: anchors, aliases,
// tags, keys that are no words, keys given twice.
func tidy(n *yaml.Node, path string, report func(Problem)) {
	if n.Anchor != "" {
		report(Problem{NotAllowed, n.Line, path, fmt.Sprintf("the anchor &%s is not allowed; write the value out", n.Anchor)})
	}
	if n.Style&yaml.TaggedStyle != 0 {
		report(Problem{NotAllowed, n.Line, path, fmt.Sprintf("the tag %s is not allowed; write the value alone", n.Tag)})
	}
	switch n.Kind {
	case yaml.AliasNode:
		report(Problem{NotAllowed, n.Line, path, fmt.Sprintf("the reference *%s is not allowed; write the value out", n.Value)})
	case yaml.SequenceNode:
		for i, c := range n.Content {
			tidy(c, fmt.Sprintf("%s[%d]", path, i), report)
		}
	case yaml.MappingNode:
		first := make(map[string]int, len(n.Content)/2)
		for i := 0; i+1 < len(n.Content); i += 2 {
			k := n.Content[i]
			if k.Kind != yaml.ScalarNode {
				report(Problem{WrongType, k.Line, path, "a key must be a word"})
				continue
			}
			at := join(path, k.Value)
			if k.Anchor != "" || k.Style&yaml.TaggedStyle != 0 {
				report(Problem{NotAllowed, k.Line, at, "a key has neither anchor nor tag"})
			}
			if line, twice := first[k.Value]; twice {
				report(Problem{DuplicateKey, k.Line, at, fmt.Sprintf("duplicate key; it is already on line %d", line)})
			} else {
				first[k.Value] = k.Line
			}
			tidy(n.Content[i+1], at, report)
		}
	}
}

// join returns the path of name below path.
func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}
