package ingredient

import (
	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
)

// OwnSource is the source of an ingredient that a maker entered.
const OwnSource = "own"

// CopyOf begins the source id of one that was copied from the library; it is a word of
// the file.
const CopyOf = "after "

// keyPack is the key of a pack's nutrition declaration.
const keyPack = "pack"

// FromYAML reads a maker's own ingredient from a mapping of the fields' names
// to numbers, text or lists. A field left out, empty or ~ is unknown. A
// mapping under key pack is a pack's nutrition declaration, which FromPack
// turns into figures; a figure given beside it wins. An error is a
// *FieldError naming line and field.
func FromYAML(node *yaml.Node) (*Ingredient, error) {
	if node.Kind == yaml.AliasNode {
		node = node.Alias
	}
	if node.Kind == yaml.DocumentNode && len(node.Content) == 1 {
		node = node.Content[0]
	}
	if node.Kind != yaml.MappingNode {
		return nil, &FieldError{Line: node.Line, Err: flaw.New("an ingredient is a mapping of names to figures")}
	}
	in := &Ingredient{Source: OwnSource, Group: OwnSource, Own: true}
	packs, rest := apart(node)
	switch {
	case len(packs) > 1:
		return nil, &FieldError{Line: packs[1].Line, Field: keyPack, Err: flaw.New("is given twice")}
	case len(packs) == 1:
		pack, err := packFromYAML(packs[0])
		if err != nil {
			return nil, err
		}
		pack.fill(in)
	}
	lines, err := setting.Read(fields, rest, in)
	if err != nil {
		return nil, fault(err, in.ID, errUnknownField)
	}
	return in.finish(node.Line, lines)
}

// apart returns what stands under the key pack of node, and node without it.
func apart(node *yaml.Node) (packs []*yaml.Node, rest *yaml.Node) {
	others := *node
	others.Content = nil
	for i := 0; i+1 < len(node.Content); i += 2 {
		if node.Content[i].Value == keyPack {
			packs = append(packs, node.Content[i+1])
			continue
		}
		others.Content = append(others.Content, node.Content[i], node.Content[i+1])
	}
	return packs, &others
}

// ToYAML returns the mapping that FromYAML reads back as the same record,
// marked as a maker's own. What follows from its pack is left to the pack.
func ToYAML(in *Ingredient) (*yaml.Node, error) {
	if in.ID == "" {
		return nil, flaw.New("an ingredient without an id cannot be written")
	}
	m := &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map"}
	given := &Ingredient{} // what need not be written
	if in.Pack != nil {
		in.Pack.fill(given)
	}
	for _, f := range fields {
		if in.Pack != nil && f.Path == Water.String() { // id, name and the like stand before it
			m.Content = append(m.Content, setting.WordNode(keyPack), setting.Node(packFields, in.Pack))
		}
		if f.Text(in) != f.Text(given) {
			m.Content = append(m.Content, setting.WordNode(f.Path), f.Node(in))
		}
	}
	return m, nil
}

// Schema returns the JSON Schema of what FromYAML reads.
func Schema() map[string]any {
	pack := schemaOf(packFields)
	for _, f := range packFigures {
		pack.properties[f.Path].(map[string]any)["maximum"] = f.most(PerField.Max)
	}
	record := schemaOf(fields)
	record.properties[keyPack] = pack.object()
	return record.object()
}

// schema is the JSON Schema of a group in the making.
type schema struct {
	properties map[string]any
	required   []string
}

func schemaOf[T any](fields []setting.Field[T]) schema {
	s := schema{properties: map[string]any{}}
	for _, f := range fields {
		s.properties[f.Path] = f.Schema(nil)
		if f.Kind() == setting.KindText && !f.Optional {
			s.required = append(s.required, f.Path)
		}
	}
	return s
}

func (s schema) object() map[string]any {
	o := map[string]any{"type": "object", "properties": s.properties, "additionalProperties": false}
	if s.required != nil {
		o["required"] = s.required
	}
	return o
}
