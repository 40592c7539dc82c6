// Package userdata keeps a maker's own ingredients in their configuration
// folder, so that they outlive the program's versions.
package userdata

import (
	"gopkg.in/yaml.v3"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/yamltext"
)

// whatIngredients names the file in errors.
const (
	whatIngredients = "own ingredients"
	keyIngredients  = "ingredients"
)

// IngredientsPath returns where the own ingredients are kept: ingredients.yaml
// in ripplewright's part of the user's configuration folder.
func IngredientsPath() (string, error) {
	return Path("ingredients.yaml", whatIngredients)
}

// LoadIngredients reads the file at path. A file that is not there holds no
// ingredients. An error about the contents is a *ingredient.FieldError with
// its line; nothing is returned then, so that saving cannot lose a record.
func LoadIngredients(path string) ([]*ingredient.Ingredient, error) {
	data, err := Read(path, whatIngredients)
	if err != nil {
		return nil, err
	}
	list, err := Decode(data)
	if err != nil {
		return nil, flaw.New("own ingredients in %s: %v", path, err)
	}
	return list, nil
}

// Onto returns lib with the maker's own ingredients, which win. A machine
// without a configuration folder has none. After an error it returns lib.
func Onto(lib *ingredient.Library) (*ingredient.Library, error) {
	path, err := IngredientsPath()
	if err != nil {
		return lib, nil
	}
	own, err := LoadIngredients(path)
	if err != nil {
		return lib, err
	}
	return lib.With(own), nil
}

// version is that of the file's form.
const version = 1

// Decode reads the text of the file: version and a list under ingredients.
func Decode(data []byte) ([]*ingredient.Ingredient, error) {
	nodes, err := yamltext.Listed(data, version, keyIngredients)
	if err != nil {
		return nil, err
	}
	var list []*ingredient.Ingredient
	seen := map[string]bool{}
	for _, node := range nodes {
		in, err := ingredient.FromYAML(node)
		if err != nil {
			return nil, err
		}
		if seen[in.ID] {
			return nil, &ingredient.FieldError{Line: node.Line, ID: in.ID, Field: "id", Err: flaw.New("is given twice")}
		}
		seen[in.ID] = true
		list = append(list, in)
	}
	return list, nil
}

// Encode returns the text that Decode reads.
func Encode(list []*ingredient.Ingredient) ([]byte, error) {
	nodes := make([]*yaml.Node, len(list))
	for i, in := range list {
		var err error
		if nodes[i], err = ingredient.ToYAML(in); err != nil {
			return nil, err
		}
	}
	text, err := encode(struct {
		Version     int          `yaml:"version"`
		Ingredients []*yaml.Node `yaml:"ingredients"`
	}{version, nodes})
	return append([]byte("# Own ingredients, per 100 g. A figure left out is unknown, which is not zero.\n"), text...), err
}
