package setting

import (
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/echo"
)

// TreeError says what is wrong at a place of a tree of keys and values.
type TreeError struct {
	Line    int
	Path    string
	Message string
}

func (e *TreeError) Error() string { return e.Path + ": " + e.Message }

// Read sets in v what the mapping n says, and returns the line of each path.
// The error is a *TreeError.
func Read[T any](fields []Field[T], n *yaml.Node, v *T) (lines map[string]int, err error) {
	lines = map[string]int{}
	return lines, read(fields, n, v, "", lines)
}

func read[T any](fields []Field[T], n *yaml.Node, v *T, prefix string, lines map[string]int) error {
	if n.Kind != yaml.MappingNode {
		return &TreeError{n.Line, strings.TrimSuffix(prefix, "."), "must be keys and values"}
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		path := prefix + key.Value
		if _, twice := lines[path]; twice {
			return &TreeError{key.Line, path, "is given twice"}
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
			return &TreeError{key.Line, path, "is no setting"}
		case value.Kind != yaml.ScalarNode:
			return &TreeError{value.Line, path, "must be a single value"}
		}
		switch x := f.Of(v).(type) {
		case *string:
			*x = value.Value
		case *float64:
			number, err := strconv.ParseFloat(value.Value, 64)
			if err != nil {
				return &TreeError{value.Line, path, echo.Quoted(value.Value) + " is not a number"}
			}
			*x = number
		}
	}
	return nil
}

// Node returns v as a mapping that Read reads, empty words left out.
func Node[T any](fields []Field[T], v *T) *yaml.Node {
	top := &yaml.Node{Kind: yaml.MappingNode}
	groups := map[string]*yaml.Node{"": top}
	text := func(s string) *yaml.Node {
		n := &yaml.Node{}
		n.SetString(s)
		return n
	}
	for _, f := range fields {
		group, key, found := strings.Cut(f.Path, ".")
		if !found {
			group, key = "", f.Path
		}
		var value *yaml.Node
		switch x := f.Of(v).(type) {
		case *string:
			if *x == "" {
				continue
			}
			value = text(*x)
		case *float64:
			value = &yaml.Node{Kind: yaml.ScalarNode, Value: Number(*x)}
		}
		if groups[group] == nil {
			groups[group] = &yaml.Node{Kind: yaml.MappingNode}
			top.Content = append(top.Content, text(group), groups[group])
		}
		groups[group].Content = append(groups[group].Content, text(key), value)
	}
	return top
}
