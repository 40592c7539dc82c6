package balance

import (
	"strings"

	"ripplewright/internal/form/setting"
)

// WishSchema returns the JSON Schema (draft 2020-12) of a file of wishes, from the table
// that checks it.
func WishSchema() []byte {
	root := setting.Object(wishFields, nil)
	for path, key := range brief { // or what stands for the section in brief
		names := strings.Split(path, ".")
		at := root
		for _, name := range names[:len(names)-1] {
			at = setting.Properties(at)[name].(map[string]any)
		}
		name := names[len(names)-1]
		long := setting.Properties(at)[name].(map[string]any)
		setting.Properties(at)[name] = map[string]any{"anyOf": []any{setting.Properties(long)[key], long}}
	}
	return setting.Document("Ripplewright wishes, version 1", root)
}
