package batch

import "ripplewright/internal/form/setting"

// Schema returns the JSON Schema (draft 2020-12) of an entry of a file of batches, made
// from the table that reads and checks it. Each entry of a file is a YAML document.
func Schema() []byte {
	o := setting.Object(entries, nil)
	o["required"] = []string{entries[0].Path}
	for _, f := range entries {
		part := setting.Part(o, f.Path)
		if f.Kind() == setting.KindList {
			part["maxItems"] = MaxListed
			part["items"].(map[string]any)["maxLength"] = MaxItem
		}
	}
	return setting.Document("Ripplewright batches, version 1", o)
}
