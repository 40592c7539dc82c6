package designfile

import (
	"bytes"
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/design"
)

// Decode reads a design file's bytes; name stands for the file in messages.
// Keys left out have the values of design.Default. Decode is strict: any other
// error is an *Error that lists every problem found, with its line. Whether
// the ingredients exist is for DecodeWith and Check.
func Decode(name string, data []byte) (*File, error) { return DecodeWith(name, data, nil) }

// DecodeWith does as Decode, and reports lines whose ingredient neither lib nor
// the file has along with the other problems; a nil lib has everything.
func DecodeWith(name string, data []byte, lib *ingredient.Library) (*File, error) {
	n, found := parse(data)
	if n == nil {
		return nil, errorOf(name, found)
	}
	r := reader{d: design.Default(), at: map[string]int{}, broken: map[string]bool{}}
	r.document(n, data)
	f := &File{Name: name, Design: r.d, at: r.at}
	if lib != nil && (r.plain || len(r.found) == 0) {
		for _, p := range unknown(f, lib, r.broken) {
			r.add(p)
		}
	}
	if err := errorOf(name, r.found); err != nil {
		return nil, err
	}
	f.raw = bytes.Clone(data)
	return f, nil
}

// reader fills a design from a tree and collects what is wrong.
type reader struct {
	d     design.Design
	at    map[string]int // line of each key
	found []Problem
	plain bool // no aliases or anchors anywhere

	broken map[string]bool // ids of own ingredients that could not be read
}

func (r *reader) report(kind Kind, line int, path string, err error) {
	r.add(Problem{kind, line, path, err})
}

// add keeps a problem; beyond maxFaults nobody reads them.
func (r *reader) add(p Problem) {
	if len(r.found) < maxFaults {
		r.found = append(r.found, p)
	}
}

func (r *reader) document(n *yaml.Node, data []byte) {
	if n.Kind != yaml.MappingNode {
		r.report(WrongType, n.Line, "", flaw.New("a design file begins with the line ripplewright: 1"))
		return
	}
	if v := valueOf(n, "ripplewright"); v != nil {
		if num, wrong := readWhole(v, 64); wrong == nil && num != Version {
			r.report(UnknownVersion, v.Line, "ripplewright",
				flaw.New("this is format version %d; this program reads version %d", num, Version))
			return
		}
	}
	tidy(n, "", r.add)
	r.plain = len(r.found) == 0
	r.section(n, root)
	r.cutShort(n, data)
	known := make(map[string]bool, len(r.found))
	for _, p := range r.found {
		known[p.Path] = true
	}
	for _, p := range design.Validate(r.d) {
		// What could not be read has been reported as such.
		if outer := around(p.Path); !known[p.Path] && (outer == "" || !known[outer]) {
			r.report(Invalid, lineOf(r.at, p.Path), p.Path, p.Err)
		}
	}
}

// around returns the path of what holds path, "" for the whole file.
func around(path string) string {
	return path[:max(strings.LastIndexAny(path, ".["), 0)]
}

// lineOf returns the line of path, or else that of the nearest key around it.
func lineOf(at map[string]int, path string) int {
	for path != "" {
		if line, ok := at[path]; ok {
			return line
		}
		path = around(path)
	}
	return 0
}

// section reads the mapping n by the keys of s.
func (r *reader) section(n *yaml.Node, s *key) {
	if n.Kind == yaml.AliasNode {
		return // reported
	}
	if n.Kind != yaml.MappingNode {
		r.report(WrongType, n.Line, s.path, flaw.New("a group of keys is expected here, such as %s", s.keys[0].name))
		return
	}
	r.keys(n, s.path, s.names(), func(name string, v *yaml.Node) {
		r.value(v, s.child(name))
	})
	for _, k := range s.keys {
		if k.required && valueOf(n, k.name) == nil {
			line := n.Line
			if !strings.Contains(k.path, ".") { // the file as a whole lacks it
				line = 0
			}
			r.report(MissingKey, line, k.path, flaw.New("is missing"))
		}
	}
}

// keys calls f for each pair of the mapping n whose key is one of names, and
// reports the others.
func (r *reader) keys(n *yaml.Node, path string, names []string, f func(name string, v *yaml.Node)) {
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		if k.Kind != yaml.ScalarNode || seen[k.Value] {
			continue // reported
		}
		seen[k.Value] = true
		at := join(path, echo.Plain(k.Value))
		if len(r.found) >= maxFaults {
			return
		}
		known := false
		for _, name := range names {
			known = known || name == k.Value
		}
		if !known {
			r.report(UnknownKey, k.Line, at, unknownKey(n, i, names))
			continue
		}
		r.at[at] = k.Line
		if v.Kind != yaml.AliasNode {
			f(k.Value, v)
		}
	}
}

// unknownKey says what may be meant by key i of the mapping n.
func unknownKey(n *yaml.Node, i int, names []string) error {
	name := n.Content[i].Value
	if i >= 2 && n.Style&yaml.FlowStyle != 0 && n.Content[i+1].ShortTag() == "!!null" {
		if number := n.Content[i-1].Value + "." + name; len(number) <= echo.Most && plainNumber.MatchString(number) {
			return flaw.New("unknown key; if it is what follows a comma in a number, write a decimal point: %s", number)
		}
	}
	if like := nearest(name, names); like != "" {
		return flaw.New("unknown key; did you mean %q?", like)
	}
	if elsewhere := root.find(name); elsewhere != "" {
		return flaw.New("unknown key here; did you mean %s?", elsewhere)
	}
	return flaw.New("unknown key; known here are %s", strings.Join(names, ", "))
}

// value reads the value n of key k.
func (r *reader) value(n *yaml.Node, k *key) {
	switch k.kind {
	case version:
		if _, wrong := readWhole(n, 64); wrong != nil {
			r.report(WrongType, n.Line, k.path, wrong)
		}
	case oneSetting:
		if wrong := readSetting(n, k.field, &r.d); wrong != nil {
			r.report(WrongType, n.Line, k.path, wrong)
		}
	case section:
		r.section(n, k)
	case lines:
		if items, ok := r.list(n, k, design.MaxLines); ok {
			list := make([]design.Line, 0, len(items))
			for i, item := range items {
				list = append(list, r.lineItem(item, fmt.Sprintf("%s[%d]", k.path, i)))
			}
			r.d = r.d.WithLines(k.part, list)
		}
	case own:
		if items, ok := r.list(n, k, design.MaxOwn); ok && r.plain {
			for i, item := range items {
				r.ingredient(item, fmt.Sprintf("%s[%d]", k.path, i))
			}
		}
	}
}

// list returns the items of a list, unless they are more than most.
func (r *reader) list(n *yaml.Node, k *key, most int) ([]*yaml.Node, bool) {
	switch {
	case n.Kind == yaml.SequenceNode && len(n.Content) > most:
		r.report(Invalid, n.Content[most].Line, k.path, flaw.New("%d entries are more than the %d that may stand here", len(n.Content), most))
	case n.Kind == yaml.SequenceNode:
		return n.Content, true
	case n.Kind == yaml.ScalarNode && n.ShortTag() == "!!null":
		r.report(WrongType, n.Line, k.path, flaw.New("has no value; write [] for none"))
	default:
		r.report(WrongType, n.Line, k.path, flaw.New("a list is expected here, not a %s", shapeOf(n)))
	}
	return nil, false
}

// valueOf returns the first value of key name in the mapping n, or nil.
func valueOf(n *yaml.Node, name string) *yaml.Node {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Kind == yaml.ScalarNode && n.Content[i].Value == name {
			return n.Content[i+1]
		}
	}
	return nil
}
