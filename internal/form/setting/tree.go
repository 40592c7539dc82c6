package setting

import (
	"strings"

	"ripplewright/internal/form/flaw"

	"gopkg.in/yaml.v3"
)

// TreeError says what is wrong at a place of a tree of keys and values.
type TreeError struct {
	Line    int
	Path    string
	Err     error
	Unknown bool // there is no such setting
}

func (e *TreeError) Error() string { return e.Path + ": " + e.Err.Error() }

// Read sets in v what the mapping n says, and returns the line of each path.
// The error is a *TreeError.
func Read[T any](fields []Field[T], n *yaml.Node, v *T) (lines map[string]int, err error) {
	lines = map[string]int{}
	return lines, read(fields, n, v, "", lines)
}

func read[T any](fields []Field[T], n *yaml.Node, v *T, prefix string, lines map[string]int) error {
	if n = aliased(n); n.Kind != yaml.MappingNode {
		return &TreeError{Line: n.Line, Path: strings.TrimSuffix(prefix, "."), Err: flaw.New("must be keys and values")}
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], aliased(n.Content[i+1])
		if key.Kind != yaml.ScalarNode {
			return &TreeError{Line: key.Line, Path: strings.TrimSuffix(prefix, "."), Err: flaw.New("a name is expected here")}
		}
		path := prefix + key.Value
		if _, twice := lines[path]; twice {
			return &TreeError{Line: key.Line, Path: path, Err: flaw.New("is given twice")}
		}
		lines[path] = key.Line
		f, ok := Find(fields, path)
		switch {
		case !ok && Under(fields, path):
			if err := read(fields, value, v, path+".", lines); err != nil {
				return err
			}
			continue
		case !ok:
			return &TreeError{Line: key.Line, Path: path, Err: flaw.New("is no setting"), Unknown: true}
		}
		text, wrong := f.scalar(value)
		if wrong == nil {
			wrong = f.Set(v, text)
		}
		if wrong != nil {
			return &TreeError{Line: value.Line, Path: path, Err: wrong}
		}
	}
	return nil
}

// aliased follows *name to what &name stands at.
func aliased(n *yaml.Node) *yaml.Node {
	if n.Kind == yaml.AliasNode {
		return n.Alias
	}
	return n
}

// scalar returns the text of the value n: "" for ~ where the field may be
// empty, and a list as Text has it.
func (f Field[T]) scalar(n *yaml.Node) (text string, wrong error) {
	switch {
	case n.Kind == yaml.SequenceNode && f.Kind() == KindList:
		items := make([]string, len(n.Content))
		for i, c := range n.Content {
			c = aliased(c)
			if c.Kind != yaml.ScalarNode || strings.Contains(c.Value, ";") {
				return "", flaw.New("a list of words is expected here")
			}
			items[i] = c.Value
		}
		return strings.Join(items, "; "), nil
	case n.Kind != yaml.ScalarNode:
		return "", flaw.New("must be a single value")
	case n.Tag == "!!null" && f.Optional:
		return "", nil
	}
	return n.Value, nil
}

// Node returns v as a mapping that Read reads, what is empty left out.
func Node[T any](fields []Field[T], v *T) *yaml.Node {
	top := &yaml.Node{Kind: yaml.MappingNode}
	groups := map[string]*yaml.Node{"": top}
	for _, f := range fields {
		if f.Text(v) == "" {
			continue
		}
		group, key, found := strings.Cut(f.Path, ".")
		if !found {
			group, key = "", f.Path
		}
		if groups[group] == nil {
			groups[group] = &yaml.Node{Kind: yaml.MappingNode}
			top.Content = append(top.Content, WordNode(group), groups[group])
		}
		groups[group].Content = append(groups[group].Content, WordNode(key), f.Node(v))
	}
	return top
}

// WordNode returns a key or a word of a file.
func WordNode(s string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: s}
}

// Node returns the field's value in v as a file has it, ~ where it is empty.
func (f Field[T]) Node(v *T) *yaml.Node {
	text := f.Text(v)
	switch kind := f.Kind(); {
	case text == "" && f.Optional:
		return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!null", Value: "~"}
	case kind == KindText || f.WithUnit:
		return WordNode(text)
	case kind == KindList:
		list := &yaml.Node{Kind: yaml.SequenceNode, Style: yaml.FlowStyle}
		for _, item := range strings.Split(text, "; ") {
			list.Content = append(list.Content, WordNode(item))
		}
		return list
	}
	return &yaml.Node{Kind: yaml.ScalarNode, Value: text}
}
