package balance

import (
	"encoding/json"
	"strings"
)

// WishSchema returns the JSON Schema (draft 2020-12) of a file of wishes, from the table
// that checks it.
func WishSchema() []byte {
	root := section()
	for i := range wishFields {
		f := &wishFields[i]
		names, at := strings.Split(f.Path, "."), root
		for _, name := range names[:len(names)-1] {
			at = under(at, name)
		}
		at.properties()[names[len(names)-1]] = object(f.Schema(nil))
	}
	for path, key := range brief { // or what stands for the section in brief
		names := strings.Split(path, ".")
		at := root
		for _, name := range names[:len(names)-1] {
			at = at.properties()[name].(object)
		}
		name := names[len(names)-1]
		long := at.properties()[name].(object)
		at.properties()[name] = object{"anyOf": []any{long.properties()[key], long}}
	}
	root["$schema"], root["title"] = "https://json-schema.org/draft/2020-12/schema", "Ripplewright wishes, version 1"
	text, err := json.MarshalIndent(root, "", "  ")
	if err != nil {
		panic("balance: " + err.Error()) // maps of plain values always can be
	}
	return append(text, '\n')
}

type object map[string]any

func section() object {
	return object{"type": "object", "properties": object{}, "additionalProperties": false}
}

func (o object) properties() object { return o["properties"].(object) }

// under returns the section of that name in at.
func under(at object, name string) object {
	if at.properties()[name] == nil {
		at.properties()[name] = section()
	}
	return at.properties()[name].(object)
}
