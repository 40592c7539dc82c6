package ingredient

import (
	"errors"
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// OwnSource is the source of an ingredient that a maker entered.
const OwnSource = "own"

// FromYAML reads a maker's own ingredient from a mapping of the fields' names
// to numbers, text or lists. A field left out, empty or ~ is unknown. A
// mapping under key pack is a pack's nutrition declaration, which FromPack
// turns into figures; a figure given beside it wins. An error is a
// *FieldError naming line and field.
func FromYAML(node *yaml.Node) (*Ingredient, error) {
	node = resolveAlias(node)
	if node.Kind == yaml.DocumentNode && len(node.Content) == 1 {
		node = node.Content[0]
	}
	if node.Kind != yaml.MappingNode {
		return nil, &FieldError{Line: node.Line, Err: errors.New("an ingredient is a mapping of names to figures")}
	}
	in := &Ingredient{Source: OwnSource, Group: OwnSource, Own: true}
	if err := eachKey(node, func(key, value *yaml.Node) error {
		if key.Value != "pack" {
			return nil
		}
		pack, err := packFromYAML(value)
		if err != nil {
			return err
		}
		pack.fill(in)
		return nil
	}); err != nil {
		return nil, err
	}
	err := eachKey(node, func(key, value *yaml.Node) error {
		if key.Value == "pack" {
			return nil
		}
		f := fieldNamed[key.Value]
		if f == nil {
			return &FieldError{key.Line, in.ID, key.Value, errors.New("is no field of an ingredient")}
		}
		s, err := scalar(value)
		if err == nil {
			err = f.set(in, s)
		}
		if err != nil {
			return &FieldError{value.Line, in.ID, f.name, err}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return in.finish(node.Line)
}

// ToYAML returns the mapping that FromYAML reads back as the same record,
// marked as a maker's own. What follows from its pack is left to the pack.
func ToYAML(in *Ingredient) (*yaml.Node, error) {
	if in.ID == "" {
		return nil, errors.New("an ingredient without an id cannot be written")
	}
	m := &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map"}
	given := &Ingredient{} // what need not be written
	if in.Pack != nil {
		in.Pack.fill(given)
	}
	for _, f := range fields {
		if in.Pack != nil && f.name == "water" { // id, name and the like stand before it
			m.Content = append(m.Content, textNode("pack"), in.Pack.toYAML())
		}
		s := f.get(in)
		if s == f.get(given) {
			continue
		}
		v := textNode(s)
		switch {
		case s == "":
			v = &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!null", Value: "~"}
		case f.kind == number:
			v = numberNode(s)
		case f.kind == list:
			v = &yaml.Node{Kind: yaml.SequenceNode, Tag: "!!seq", Style: yaml.FlowStyle}
			for _, item := range strings.Split(s, "; ") {
				v.Content = append(v.Content, textNode(item))
			}
		}
		m.Content = append(m.Content, textNode(f.name), v)
	}
	return m, nil
}

func textNode(s string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: s}
}

func numberNode(s string) *yaml.Node {
	n := &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!float", Value: s}
	if !strings.ContainsAny(s, ".e") {
		n.Tag = "!!int"
	}
	return n
}

// resolveAlias follows *name to what &name stands at.
func resolveAlias(n *yaml.Node) *yaml.Node {
	if n.Kind == yaml.AliasNode {
		return n.Alias
	}
	return n
}

// eachKey calls f for each pair of a mapping, and refuses a key given twice.
func eachKey(m *yaml.Node, f func(key, value *yaml.Node) error) error {
	seen := map[string]bool{}
	for i := 0; i+1 < len(m.Content); i += 2 {
		key, value := m.Content[i], resolveAlias(m.Content[i+1])
		if key.Kind != yaml.ScalarNode {
			return &FieldError{Line: key.Line, Err: errors.New("a name is expected here")}
		}
		if seen[key.Value] {
			return &FieldError{Line: key.Line, Field: key.Value, Err: errors.New("is given twice")}
		}
		seen[key.Value] = true
		if err := f(key, value); err != nil {
			return err
		}
	}
	return nil
}

// scalar returns the text of a plain value, "" for null, and a list as items
// between semicolons.
func scalar(n *yaml.Node) (string, error) {
	switch n.Kind {
	case yaml.ScalarNode:
		if n.Tag == "!!null" {
			return "", nil
		}
		return n.Value, nil
	case yaml.SequenceNode:
		var items []string
		for _, c := range n.Content {
			c = resolveAlias(c)
			if c.Kind != yaml.ScalarNode || strings.Contains(c.Value, ";") {
				return "", fmt.Errorf("line %d: a word is expected here", c.Line)
			}
			items = append(items, c.Value)
		}
		return strings.Join(items, "; "), nil
	}
	return "", errors.New("a single value is expected here")
}
