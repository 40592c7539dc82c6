package designfile

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"
)

// validator checks texts of design files against Schema, by another's reading
// of the draft.
func validator(t *testing.T) func(text []byte) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("design.json", doc))
	s, err := c.Compile("design.json")
	require.NoError(t, err, "a schema of draft 2020-12")
	return func(text []byte) error {
		var v any
		require.NoError(t, yaml.Unmarshal(text, &v))
		return s.Validate(v)
	}
}

func TestTheSchemaAgreesWithTheReader(t *testing.T) {
	validate := validator(t)
	read := 0
	for _, pattern := range []string{designs + "*.yaml", "../../../assets/demos/*.yaml"} {
		paths, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			if _, err := Decode(path, text); err != nil {
				continue
			}
			read++
			assert.NoError(t, validate(text), path)
		}
	}
	assert.Greater(t, read, 8)
	assert.NoError(t, validate([]byte(example)))
	assert.NoError(t, validate([]byte(skeleton)))
	assert.Error(t, validate(readTestFile(t, "broken.yaml")))

	for old, bad := range map[string]string{
		"ripplewright: 1": "ripplewright: 2", "temperature_c: -13": "temperature_c: 13", "count: 4": "count: 4.5", "basis: tubs": "basis: bowls",
		"grams: 520": "gramms: 520", "yolks: 6": "yolks: -1", "notes: \"\"": "notes: 12", "foam:\n": "froth:\n", "serving:": "servin:",
		"overrun_percent: 20\n": "overrun_percent: 151\n", "{yolks: 6": "{yolks: 6, grams: 3", "name: Hazelnut and burnt honey": "name: " + strings.Repeat("a", 201),
		"blend: {": "blend: {dense_colour: red, ",
	} {
		require.Contains(t, example, old)
		text := []byte(strings.Replace(example, old, bad, 1))
		assert.Error(t, validate(text), bad)
		_, err := Decode("x", text)
		assert.Error(t, err, bad)
	}

	own := func(more string) []byte {
		return []byte(example + "ingredients:\n  - {id: quay_jam, name: Quay jam, " + more + "}\n")
	}
	for _, good := range []string{"water: 30, fat: ~", "allergens_eu: [milk]", "allergens_us: ~", "polyol: xylitol", "standing: \"\"", "compound: true", "compound: 1",
		"pack: {per: 500 g, energy_kcal: 1500}", "pack: {per: 30, carbohydrate_with_fibre: true}", "density: 1.3, notes: ~"} {
		assert.NoError(t, validate(own(good)), good)
		_, err := Decode("x", own(good))
		assert.NoError(t, err, good)
	}
	for _, bad := range []string{"water: 101", "energy_kcal: 911", "fatt: 3", "polyol: sugar", "standing: tea", "compound: maybe", "density: 0", "density: -1",
		"pack: {fatt: 3}", "pack: {fat: 1e5}", "pack: {per: 0}", "g_per_cup: 1001", "kitchen_name: " + strings.Repeat("a", 201)} {
		assert.Error(t, validate(own(bad)), bad)
		_, err := Decode("x", own(bad))
		assert.Error(t, err, bad)
	}
	for _, bad := range []string{"{name: Quay jam}", "{id: quay_jam}", "{id: Jam, name: Quay jam}", "{id: a, name: \"\"}"} {
		text := []byte(example + "ingredients:\n  - " + bad + "\n")
		assert.Error(t, validate(text), bad)
		_, err := Decode("x", text)
		assert.Error(t, err, bad)
	}
}
