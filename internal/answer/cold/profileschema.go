package cold

import (
	"ripplewright/internal/form/setting"
	"ripplewright/internal/form/yamltext"
)

// ProfilesSchema returns the JSON Schema (draft 2020-12) of the file of own kitchens, made
// from the table that reads and checks it. That a working day ends after its beginning is
// beyond it.
func ProfilesSchema() []byte {
	ordinary := Default()
	kitchen := setting.Object(fields, &ordinary)
	kitchen["required"] = []string{"name"}
	name := setting.Part(kitchen, "name")
	name["pattern"] = `\S`
	delete(name, "default")
	return setting.Document("Ripplewright kitchens, version 1",
		setting.Listed(profilesVersion, keyProfiles, yamltext.MaxListed, kitchen, nil))
}
