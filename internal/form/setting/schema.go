package setting

import (
	"encoding/json"
	"strings"
)

// Document returns o as a JSON Schema (draft 2020-12) with a title.
func Document(title string, o map[string]any) []byte {
	o["$schema"], o["title"] = "https://json-schema.org/draft/2020-12/schema", title
	text, err := json.MarshalIndent(o, "", "  ")
	if err != nil {
		panic("setting: " + err.Error()) // maps of plain values always can be
	}
	return append(text, '\n')
}

// Object returns the schema of a mapping that Read reads, with the defaults in
// byDefault, nil for none. Read takes any single value for a word, so a number is one.
func Object[T any](fields []Field[T], byDefault *T) map[string]any {
	root := section()
	for _, f := range fields {
		names := strings.Split(f.Path, ".")
		at := root
		for _, name := range names[:len(names)-1] {
			properties := Properties(at)
			if properties[name] == nil {
				properties[name] = section()
			}
			at = properties[name].(map[string]any)
		}
		o := f.Schema(byDefault)
		switch f.Kind() {
		case KindText:
			if f.Choices == nil {
				o["type"] = []string{"string", "number", "boolean", "null"}
			}
		case KindList:
			o["items"] = map[string]any{"type": []string{"string", "number"}}
		}
		Properties(at)[names[len(names)-1]] = o
	}
	return root
}

// Part returns the part of an object's schema at a path of its fields.
func Part(object map[string]any, path string) map[string]any {
	for _, name := range strings.Split(path, ".") {
		object = Properties(object)[name].(map[string]any)
	}
	return object
}

// Properties returns the parts of an object's schema by their keys.
func Properties(object map[string]any) map[string]any {
	return object["properties"].(map[string]any)
}

func section() map[string]any {
	return map[string]any{"type": "object", "properties": map[string]any{}, "additionalProperties": false}
}

// Listed returns the schema of a file of the maker's own, as yamltext.Listed reads it: at
// most that version, some words and a list under key.
func Listed(version int, key string, most int, entry map[string]any, words map[string]any) map[string]any {
	o := section()
	Properties(o)["version"] = map[string]any{"type": "integer", "minimum": 0, "maximum": version, "description": "version of this format"}
	Properties(o)[key] = map[string]any{"type": []string{"array", "null"}, "maxItems": most, "items": entry}
	for word, schema := range words {
		Properties(o)[word] = schema
	}
	return o
}

// Schema returns the part of a JSON Schema (draft 2020-12) that describes the
// field, with its default in byDefault; nil: it has none.
func (f Field[T]) Schema(byDefault *T) map[string]any {
	o := map[string]any{"description": f.About}
	if f.Unit != "" {
		o["description"] = f.About + ", " + f.Unit
	}
	switch f.Kind() {
	case KindNumber:
		f.bounds(o, "number")
	case KindWhole:
		if _, any := f.Of(new(T)).(*int64); any {
			o["type"] = "integer"
			break
		}
		f.bounds(o, "integer")
	case KindFlag:
		o["enum"] = []any{true, false, 1, 0}
	case KindList:
		o["type"], o["items"] = []string{"array", "string", "null"}, map[string]any{"type": "string"}
	case KindText:
		f.words(o)
	}
	if byDefault != nil {
		o["default"] = f.plain(byDefault)
	}
	return o
}

func (f Field[T]) bounds(o map[string]any, kind string) {
	types := []string{kind}
	if f.WithUnit {
		types = append(types, "string")
	}
	if _, maybe := f.Of(new(T)).(Maybe); maybe {
		types = append(types, "null")
	}
	o["type"] = oneOrMore(types)
	o["maximum"] = f.Max
	if f.Over {
		o["exclusiveMinimum"] = f.Min
	} else {
		o["minimum"] = f.Min
	}
}

func (f Field[T]) words(o map[string]any) {
	types := []string{"string"}
	if f.Optional {
		types = append(types, "null")
	}
	o["type"] = oneOrMore(types)
	if f.Pattern != "" {
		o["pattern"] = f.Pattern
	}
	if f.Longest > 0 {
		o["maxLength"] = f.Longest
	}
	if f.Choices != nil {
		words := make([]any, 0, len(f.Choices)+2)
		for _, w := range f.Choices {
			words = append(words, w)
		}
		if f.Optional {
			words = append(words, "", nil)
		}
		o["enum"] = words
	}
}

func oneOrMore(types []string) any {
	if len(types) == 1 {
		return types[0]
	}
	return types
}

// plain returns the field's value in v as JSON has it.
func (f Field[T]) plain(v *T) any {
	switch x := f.Of(v).(type) {
	case *float64:
		return *x
	case *int:
		return *x
	case *int64:
		return *x
	case *bool:
		return *x
	case Switch:
		return x.On()
	case Maybe:
		if number, known := x.Get(); known {
			return number
		}
		return nil
	case *[]string:
		return *x
	}
	return f.Text(v)
}
