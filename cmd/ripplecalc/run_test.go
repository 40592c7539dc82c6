package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// quay is a design of the invented stall at Saltmarsh Quay.
const quay = `ripplewright: 1
name: Rosehip and brown butter
serving: {temperature_c: -12}
tubs: {count: 3, volume_ml: 500, fill_percent: 95}
blend: {foam_volume_percent: 35, strokes: 5}
dense:
  lines:
    - {ingredient: milk_whole, grams: 420}
    - {ingredient: cream_heavy, grams: 180}
    - {yolks: 5}
    - {ingredient: sugar, grams: 110}
foam:
  lines: [{whites: 5}]
  syrup:
    lines:
      - {ingredient: sugar, grams: 180}
      - {ingredient: water, grams: 60}
`

// kitchen is a folder with designs, and no own ingredients.
type kitchen struct {
	t      *testing.T
	dir    string
	locale string // of the system
}

func newKitchen(t *testing.T) kitchen {
	k := kitchen{t: t, dir: t.TempDir()}
	t.Setenv("XDG_CONFIG_HOME", filepath.Join(k.dir, "config"))
	t.Setenv("HOME", k.dir)
	k.file("quay.yaml", quay)
	k.file("warm.yaml", strings.Replace(quay, "temperature_c: -12", "temperature_c: 12", 1))
	k.file("rosehip.yaml", strings.Replace(quay, "ingredient: sugar, grams: 110", "ingredient: rosehip_quay, grams: 110", 1))
	return k
}

func (k kitchen) path(name string) string { return filepath.Join(k.dir, name) }

func (k kitchen) file(name, text string) {
	require.NoError(k.t, os.MkdirAll(filepath.Dir(k.path(name)), 0o755))
	require.NoError(k.t, os.WriteFile(k.path(name), []byte(text), 0o644))
}

// run runs ripplecalc; words that end in .yaml name files of the kitchen.
func (k kitchen) run(in string, words ...string) (code int, out, err string) {
	args := make([]string, len(words))
	for i, w := range words {
		if args[i] = w; strings.HasSuffix(w, ".yaml") {
			args[i] = k.path(w)
		}
	}
	var stdout, stderr bytes.Buffer
	code = run(&shell{in: strings.NewReader(in), out: &stdout, err: &stderr, locale: k.locale}, args)
	return code, stdout.String(), stderr.String()
}

func TestExitCodesSayWhoseFaultItIs(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	k := newKitchen(t)
	for _, c := range []struct {
		args string
		want int
	}{
		{"", exitUsage},
		{"melt quay.yaml", exitUsage},
		{"evaluate", exitUsage},
		{"evaluate quay.yaml --jsn", exitUsage},
		{"evaluate quay.yaml --at cold", exitUsage},
		{"evaluate quay.yaml --at -41", exitUsage},
		{"curve quay.yaml warm.yaml", exitUsage},
		{"curve quay.yaml --step 0", exitUsage},
		{"ripple quay.yaml --view inside", exitUsage},
		{"ripple quay.yaml --size 5", exitUsage},
		{"ripple quay.yaml -o cut.gif", exitUsage},
		{"label quay.yaml --region moon", exitUsage},
		{"label quay.yaml -o label.doc", exitUsage},
		{"card quay.yaml", exitUsage},
		{"card quay.yaml -o card.txt", exitUsage},
		{"card quay.yaml -o card.pdf --paper a3", exitUsage},
		{"card quay.yaml -o card.png --dpi 5", exitUsage},
		{"validate quay.yaml", exitUsage},
		{"help snow", exitUsage},

		{"evaluate warm.yaml", exitInput},
		{"evaluate rosehip.yaml", exitInput},
		{"evaluate nowhere.yaml", exitInput},
		{"check warm.yaml", exitInput},
		{"curve warm.yaml", exitInput},
		{"label nowhere.yaml", exitInput},
		{"ripple quay.yaml -o /no/such/folder/cut.png --size 60", exitInput},
		{"ingredients plutonium", exitInput},
		{"ingredients --unknown -3", exitUsage},

		{"evaluate quay.yaml", exitFine},
		{"evaluate quay.yaml --at -8 --json", exitFine},
		{"evaluate quay.yaml --at -40", exitFine},
		{"evaluate quay.yaml --at 0", exitFine},
		{"evaluate --json --at=-8 -- quay.yaml", exitFine},
		{"curve quay.yaml", exitFine},
		{"check quay.yaml", exitFine},
		{"label quay.yaml --region eu", exitFine},
		{"ripple quay.yaml --size 120", exitFine},
		{"ingredients honey", exitFine},
		{"ingredients --unknown 2 egg", exitFine},
		{"help", exitFine},
		{"help format", exitFine},
		{"help json", exitFine},
		{"help curve", exitFine},
		{"curve --help", exitFine},
		{"--help", exitFine},
		{"--version", exitFine},
	} {
		code, out, err := k.run("", strings.Fields(c.args)...)
		assert.Equal(t, c.want, code, "%s\n%s", c.args, err)
		if c.want == exitFine {
			assert.NotEmpty(t, out, c.args)
			assert.Empty(t, err, c.args)
		} else {
			assert.Empty(t, out, "%s: messages belong on standard error", c.args)
			assert.NotEmpty(t, err, c.args)
		}
	}
}

func TestAPanicIsOurFault(t *testing.T) {
	var stderr bytes.Buffer
	s := &shell{err: &stderr}
	assert.Equal(t, exitFault, s.report(guard(func() error { panic("slipped") })))
	assert.Contains(t, stderr.String(), "our fault: slipped")
}

// objects returns the JSON objects of out, one from each line.
func objects(t *testing.T, out string) []map[string]any {
	t.Helper()
	var all []map[string]any
	for _, line := range strings.Split(strings.TrimSpace(out), "\n") {
		var o map[string]any
		require.NoError(t, json.Unmarshal([]byte(line), &o), line)
		all = append(all, o)
	}
	return all
}

func TestABadFileStopsNoOther(t *testing.T) {
	k := newKitchen(t)
	code, out, err := k.run("", "evaluate", "--json", "quay.yaml", "warm.yaml", "rosehip.yaml", "quay.yaml")
	assert.Equal(t, exitInput, code)
	all := objects(t, out)
	require.Len(t, all, 2)
	assert.Equal(t, k.path("quay.yaml"), all[1]["file"])
	assert.Contains(t, err, "warm.yaml:3: serving.temperature_c: ")
	assert.Contains(t, err, "rosehip.yaml:11: dense.lines[3].ingredient: ")
}

func TestAnswersKeepTheOrderOfTheFiles(t *testing.T) {
	k := newKitchen(t)
	args := []string{"evaluate", "--json"}
	for i := range 40 {
		name := fmt.Sprintf("tub%02d.yaml", i)
		k.file(name, strings.Replace(quay, "Rosehip", fmt.Sprintf("Batch %02d,", i), 1))
		args = append(args, name)
	}
	code, out, _ := k.run("", args...)
	assert.Equal(t, exitFine, code)
	all := objects(t, out)
	require.Len(t, all, 40)
	for i, o := range all {
		assert.Equal(t, fmt.Sprintf("Batch %02d, and brown butter", i), o["name"])
	}
}

func TestAtReplacesTheServingTemperature(t *testing.T) {
	k := newKitchen(t)
	frozen := func(args ...string) float64 {
		_, out, err := k.run("", append([]string{"evaluate", "--json", "quay.yaml"}, args...)...)
		require.Empty(t, err)
		return objects(t, out)[0]["dense"].(map[string]any)["water_frozen_percent"].(float64)
	}
	assert.Equal(t, frozen(), frozen("--at", "-12"))
	assert.Greater(t, frozen("--at", "-20"), frozen("--at", "-12"))
}

func TestADesignMayComeFromStandardInput(t *testing.T) {
	code, out, _ := newKitchen(t).run(quay, "evaluate", "--json", "-")
	assert.Equal(t, exitFine, code)
	assert.Equal(t, "Rosehip and brown butter", objects(t, out)[0]["name"])
}

func TestOwnIngredientsAreOnTheShelf(t *testing.T) {
	k := newKitchen(t)
	k.file("config/ripplewright/ingredients.yaml", `version: 1
ingredients:
  - id: rosehip_quay
    name: Rosehip purée of the quay
    pack: {per: 100 g, fat: 0, carbohydrate: 20, sugars: 15, protein: 1, salt: 0}
`)
	code, out, err := k.run("", "check", "rosehip.yaml")
	assert.Equal(t, exitFine, code, err)
	assert.Contains(t, out, "no errors")

	k.file("config/ripplewright/ingredients.yaml", "version: 1\ningredients: [{id: rosehip_quay, fat: much}]\n")
	code, _, err = k.run("", "check", "rosehip.yaml")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, err, "ingredients.yaml")
}

func TestCheckNamesTheLineOfAWarning(t *testing.T) {
	code, out, _ := newKitchen(t).run("", "check", "quay.yaml")
	assert.Equal(t, exitFine, code)
	assert.Regexp(t, `quay\.yaml:\d+: foam\.syrup: note: .*\[syrup_band\]`, out)
}

func TestTheRippleIsAPictureOfTheSizeAsked(t *testing.T) {
	k := newKitchen(t)
	for _, view := range []string{"side", "top"} {
		code, out, err := k.run("", "ripple", "quay.yaml", "-o", k.path("cut.png"), "--view", view, "--size", "320", "--json")
		require.Equal(t, exitFine, code, err)
		f, openErr := os.Open(k.path("cut.png"))
		require.NoError(t, openErr)
		picture, decodeErr := png.Decode(f)
		f.Close()
		require.NoError(t, decodeErr)
		b := picture.Bounds()
		assert.Equal(t, 320, max(b.Dx(), b.Dy()))
		var o map[string]any
		require.NoError(t, json.Unmarshal([]byte(out), &o))
		assert.Equal(t, view, o["view"])
		assert.InDelta(t, 35, o["foam_area_percent"], 0.1)
	}
}

func TestLabelsAreJSONTextAndFiles(t *testing.T) {
	k := newKitchen(t)
	_, out, err := k.run("", "label", "quay.yaml", "--region", "us", "--json")
	require.Empty(t, err)
	var o map[string]any
	require.NoError(t, json.Unmarshal([]byte(out), &o))
	for _, key := range []string{"serving_g", "serving_measure", "servings_per_container", "lines", "ingredients_text", "contains", "energy_method", "names", "claims"} {
		assert.NotEmpty(t, o[key], key)
	}
	code, out, err := k.run("", "label", "quay.yaml", "-o", k.path("label.txt"))
	require.Equal(t, exitFine, code, err)
	assert.Empty(t, out)
	text, readErr := os.ReadFile(k.path("label.txt"))
	require.NoError(t, readErr)
	assert.Contains(t, string(text), "Nutrition Facts")
}

func TestHelpKnowsEveryCommand(t *testing.T) {
	k := newKitchen(t)
	_, all, _ := k.run("", "help")
	for _, c := range commands() {
		assert.Contains(t, all, "\n  "+c.name)
		code, out, _ := k.run("", "help", c.name)
		assert.Equal(t, exitFine, code)
		assert.Contains(t, out, "usage: ripplecalc "+c.usage)
	}
}

func TestHelpNamesEveryKeyOfTheJSON(t *testing.T) {
	_, out, _ := newKitchen(t).run("", "evaluate", "--json", "quay.yaml")
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, inner := range v {
				if key == "sugars_by_kind_percent" {
					assert.Contains(t, helpJSON(), key)
					continue // its keys are names of sugars
				}
				assert.Contains(t, helpJSON(), key)
				walk(inner)
			}
		case []any:
			for _, inner := range v {
				walk(inner)
			}
		}
	}
	walk(objects(t, out)[0])
}

func BenchmarkSweep(b *testing.B) {
	dir := b.TempDir()
	b.Setenv("XDG_CONFIG_HOME", dir)
	name := filepath.Join(dir, "quay.yaml")
	require.NoError(b, os.WriteFile(name, []byte(quay), 0o644))
	bench, err := openBench()
	require.NoError(b, err)
	files := make([]string, b.N)
	for i := range files {
		files[i] = name
	}
	s := &shell{out: io.Discard, err: os.Stderr}
	w := sweep{bench: bench, shell: s, json: true, at: -10}
	b.ResetTimer()
	require.NoError(b, w.run(files))
}
