// Package yamltext reads YAML that people write, whatever is wrong with it:
// bounded in size, depth and time, one notion of a line, and errors that name
// the line.
package yamltext

import (
	"bytes"
	"errors"
	"io"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
)

// The bounds of what is read. A design of a hundred lines has some 10 kB, and
// its values stand five deep; the parser takes some 300 bytes for one of a list
// of nothing.
const (
	MaxSize  = 400_000 // bytes
	MaxDepth = 32      // lists and groups within each other
)

// Fault says why a text holds no document.
type Fault struct {
	Line   int // from 1; 0: the text as a whole
	Err    error
	Second bool // it holds two
	Newer  bool // it is of a newer program
}

// Words are the line and what is wrong there.
func (f *Fault) Words() error { return flaw.InLine(f.Line, f.Err) }

func (f *Fault) Error() string { return f.Words().Error() }

func (f *Fault) Unwrap() error { return f.Err }

// Parse returns the one document in data, nil for a text without any. The
// error is a *Fault.
func Parse(data []byte) (*yaml.Node, error) {
	if len(data) > MaxSize {
		return nil, &Fault{Err: flaw.New("the file is longer than %d bytes", MaxSize)}
	}
	if !utf8.Valid(data) {
		return nil, &Fault{Line: lineOfBadText(data), Err: flaw.New("not UTF-8 text; save the file as UTF-8")}
	}
	hidden, sign := hideMarks(data)
	d := yaml.NewDecoder(bytes.NewReader(hidden))
	var doc, second yaml.Node
	switch err := decode(d, &doc); {
	case errors.Is(err, io.EOF):
		return nil, nil
	case err != nil:
		return nil, syntaxFault(data, err)
	}
	if len(doc.Content) != 1 {
		return nil, nil
	}
	if line := tooDeep(doc.Content[0], MaxDepth); line > 0 {
		return nil, &Fault{Line: line, Err: flaw.New("lists and groups stand more than %d deep here", MaxDepth)}
	}
	switch err := decode(d, &second); {
	case errors.Is(err, io.EOF):
	case err != nil:
		return nil, syntaxFault(data, err)
	default:
		return nil, &Fault{Line: max(second.Line, 1), Err: flaw.New("a second document begins here"), Second: true}
	}
	showMarks(&doc, sign)
	return doc.Content[0], nil
}

// decode reads the next document. The parser is known to panic on some texts,
// which are no YAML then.
func decode(d *yaml.Decoder, n *yaml.Node) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = flaw.New("the text is not well formed")
		}
	}()
	return d.Decode(n)
}

// tooDeep returns the line of what stands more than most deep within n, 0 if
// nothing does.
func tooDeep(n *yaml.Node, most int) int {
	if len(n.Content) > 0 && most == 0 {
		return n.Line
	}
	for _, c := range n.Content {
		if line := tooDeep(c, most-1); line > 0 {
			return line
		}
	}
	return 0
}

// lineOfBadText returns the line of the first byte that is not UTF-8.
func lineOfBadText(data []byte) int {
	for i := 0; i < len(data); {
		r, n := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && n == 1 {
			return LinesOf(data).Of(i)
		}
		i += n
	}
	return 0
}

var lineInMessage = regexp.MustCompile(`^line ([0-9]+): `)

// patience is how many bytes are parsed again to find the line of an error.
const patience = 256 << 10

// syntaxFault turns a parser's error into ours. The parser names the line
// where the broken construct began or less, so the line is looked for: it is
// the first after which no beginning of the text parses; in a long text, where that is
// too far to go, the one that halving finds.
func syntaxFault(data []byte, err error) *Fault {
	message := strings.TrimPrefix(err.Error(), "yaml: ")
	line := 0
	if m := lineInMessage.FindStringSubmatch(message); m != nil {
		line, _ = strconv.Atoi(m[1])
		message = message[len(m[0]):]
	}
	lines := LinesOf(data)
	for k, left := lines.Count(), patience; k >= 1; k-- {
		start := lines.Start(k)
		if len(bytes.TrimSpace(data[start:lines.Start(k+1)])) == 0 {
			continue
		}
		if left -= start; left < 0 {
			break
		}
		if _, err := Document(data[:start]); err == nil || errors.Is(err, io.EOF) {
			line = k
			break
		}
	}
	if line == 0 && len(data) <= patience {
		line = 1 + sort.Search(lines.Count()-1, func(k int) bool {
			_, err := Document(data[:lines.Start(k+2)])
			return err != nil && !errors.Is(err, io.EOF)
		})
	}
	return &Fault{Line: line, Err: flaw.New("not readable as YAML: %s", echo.Line(message, 2*echo.Most))}
}
