package designfile

import (
	"errors"
	"fmt"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/yamltext"
)

// MaxSize is the longest file that is read, in bytes.
const MaxSize = yamltext.MaxSize

// maxFaults is how many problems are looked for in one file, so that none can
// hold up the program.
const maxFaults = 200

// parse returns the one document in data, or why there is none.
func parse(data []byte) (*yaml.Node, []Problem) {
	n, err := yamltext.Parse(data)
	var fault *yamltext.Fault
	switch {
	case errors.As(err, &fault) && fault.Second:
		return nil, []Problem{{Kind: NotAllowed, Line: fault.Line, Err: flaw.New("%v; a file holds one design", fault.Err)}}
	case errors.As(err, &fault) && len(data) > MaxSize:
		return nil, []Problem{{Kind: Unreadable, Err: flaw.New("%v; this is no design", fault.Err)}}
	case errors.As(err, &fault):
		return nil, []Problem{{Kind: Unreadable, Line: fault.Line, Err: fault.Err}}
	case n == nil:
		return nil, []Problem{{Kind: Unreadable, Err: flaw.New("the file is empty")}}
	}
	return n, nil
}

// tidy reports what YAML allows and a design file does not: anchors, aliases,
// tags, keys that are no words, keys given twice.
func tidy(n *yaml.Node, path string, report func(Problem)) {
	if n.Anchor != "" {
		report(Problem{NotAllowed, n.Line, path, flaw.New("the anchor &%s is not allowed; write the value out", echo.Plain(n.Anchor))})
	}
	if n.Style&yaml.TaggedStyle != 0 {
		report(Problem{NotAllowed, n.Line, path, flaw.New("the tag %s is not allowed; write the value alone", echo.Plain(n.Tag))})
	}
	switch n.Kind {
	case yaml.AliasNode:
		report(Problem{NotAllowed, n.Line, path, flaw.New("the reference *%s is not allowed; write the value out", echo.Plain(n.Value))})
	case yaml.SequenceNode:
		for i, c := range n.Content {
			tidy(c, fmt.Sprintf("%s[%d]", path, i), report)
		}
	case yaml.MappingNode:
		first := make(map[string]int, len(n.Content)/2)
		for i := 0; i+1 < len(n.Content); i += 2 {
			k := n.Content[i]
			if k.Kind != yaml.ScalarNode {
				report(Problem{WrongType, k.Line, path, flaw.New("a key must be a word")})
				continue
			}
			at := join(path, echo.Plain(k.Value))
			if k.Anchor != "" || k.Style&yaml.TaggedStyle != 0 {
				report(Problem{NotAllowed, k.Line, at, flaw.New("a key has neither anchor nor tag")})
			}
			if line, twice := first[k.Value]; twice {
				report(Problem{DuplicateKey, k.Line, at, flaw.New("duplicate key; it is already on line %d", line)})
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
