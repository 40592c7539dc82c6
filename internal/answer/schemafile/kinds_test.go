package schemafile

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/userdata"
)

// readers are what the program itself reads each kind with.
func readers(t *testing.T) map[schemaline.Kind]func(text []byte) error {
	lib := market.Library(t)
	return map[schemaline.Kind]func(text []byte) error{
		schemaline.Design:      func(text []byte) error { _, err := designfile.Decode("x", text); return err },
		schemaline.Batches:     func(text []byte) error { _, err := batch.Decode("x", text); return err },
		schemaline.Kitchens:    func(text []byte) error { _, err := cold.DecodeProfiles(text); return err },
		schemaline.Prices:      func(text []byte) error { _, err := userdata.DecodePrices(text); return err },
		schemaline.Ingredients: func(text []byte) error { _, err := userdata.Decode(text); return err },
		schemaline.Wishes: func(text []byte) error {
			_, err := balance.DecodeAsk("x", text, market.Honey(), lib, cold.Default())
			return err
		},
	}
}

// validators check texts by another's reading of the draft, each document of a text.
func validators(t *testing.T) map[schemaline.Kind]func(text []byte) error {
	t.Helper()
	out := map[schemaline.Kind]func(text []byte) error{}
	for _, s := range All() {
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(s.Text()))
		require.NoError(t, err)
		c := jsonschema.NewCompiler()
		require.NoError(t, c.AddResource("schema.json", doc))
		schema, err := c.Compile("schema.json")
		require.NoError(t, err, "%s has a schema of draft 2020-12", s.Kind)
		out[s.Kind] = func(text []byte) error {
			d := yaml.NewDecoder(bytes.NewReader(text))
			for {
				var n yaml.Node
				if err := d.Decode(&n); err == io.EOF {
					return nil
				} else if err != nil {
					return err
				}
				var v any
				undated(&n)
				if err := n.Decode(&v); err != nil {
					return err
				}
				if err := schema.Validate(v); err != nil {
					return err
				}
			}
		}
	}
	return out
}

// undated takes days for words, as YAML 1.2 does (chapter 10.3.2, the core schema, has no
// dates), which editors read by.
func undated(n *yaml.Node) {
	if n.ShortTag() == "!!timestamp" {
		n.Tag = "!!str"
	}
	for _, c := range n.Content {
		undated(c)
	}
}

// written are texts as the program writes them, with every field that they can have.
func written(t *testing.T) map[schemaline.Kind][]string {
	t.Helper()
	text := func(data []byte, err error) string { require.NoError(t, err); return string(data) }
	full := batch.Batch{}
	for _, e := range batch.Entries() {
		said := e.Text(&batch.Batch{})
		switch {
		case e.Choices != nil:
			said = e.Choices[0]
		case strings.HasPrefix(e.Format, "YYYY-MM-DD HH"):
			said = "2026-11-28 16:30"
		case strings.HasPrefix(e.Format, "YYYY"):
			said = "2026-11-28"
		case e.Path == "weighed":
			said = "dense sucrose 118 g"
		case e.Path == "custard.stirs_min":
			said = "30; 60"
		case e.Unit != "":
			said = fmt.Sprint(e.Min)
		default:
			said = "7"
		}
		require.Empty(t, e.Set(&full, said), e.Path)
	}
	fig, err := ingredient.FromPack("fig_paste", "Fig paste", ingredient.Pack{
		PerG: 100, Fat: ingredient.Known(0.5), Carbohydrate: ingredient.Known(62), Protein: ingredient.Known(2)})
	require.NoError(t, err)
	f, err := designfile.Save(filepath.Join(t.TempDir(), "new.yaml"), nil, design.New(), designfile.SaveOptions{})
	require.NoError(t, err)
	return map[schemaline.Kind][]string{
		schemaline.Design:   {string(f.Bytes())},
		schemaline.Batches:  {text(batch.Encode(full)), text(batch.Encode(batch.Batch{ID: "7"}))},
		schemaline.Kitchens: {text(cold.EncodeProfiles(cold.BuiltIn())), "version: 1\nprofiles:\n  - name: Quay\n", "version: 1\nprofiles:\n"},
		schemaline.Prices: {text(userdata.EncodePrices(price.NewBook("kr", []price.Pack{{Ingredient: "sugar", Price: 1.29, Grams: 1000, Note: "the good one"},
			{Ingredient: price.Eggs, Price: 3.2, Pieces: 12}, {Ingredient: "lemon", Price: 2, Pieces: 4, PieceG: 90}, {Ingredient: "water", ML: 1000}})))},
		schemaline.Ingredients: {text(userdata.Encode([]*ingredient.Ingredient{fig})), "ingredients: []\n"},
		schemaline.Wishes: {"eggs: {whole: true}\npacks: [cream_heavy 250]\nno_cautions: [too_sweet]\n",
			"custard: {texture: {from: soft, to: scoopable, at_c: -16, weight: 2}, name: frozen_custard}\nfoam: {keeps_ice: {is: true, weight: 3}, texture: soft}\n"},
	}
}

func TestTheSchemasTakeWhatTheProgramWrites(t *testing.T) {
	validate, readers := validators(t), readers(t)
	for kind, texts := range written(t) {
		for _, text := range texts {
			require.NoError(t, readers[kind]([]byte(text)), "%s: %s", kind, text)
			assert.NoError(t, validate[kind]([]byte(text)), "%s: %s", kind, text)
		}
	}
}

// What a slip makes of a file, the reader refuses and so does the schema.
func TestTheSchemasRefuseWhatTheReadersRefuse(t *testing.T) {
	validate, readers := validators(t), readers(t)
	for kind, texts := range map[schemaline.Kind][]string{
		schemaline.Batches: {"---\nmade: 2026-11-28\n...\n", "---\nbatch: a\nmade: yesterday\n...\n", "---\nbatch: a\nfreezer_c: -50\n...\n",
			"---\nbatch: a\nfreezr_c: -18\n...\n", "---\nbatch: a\nate: {icy: frosty}\n...\n", "---\nbatch: a\nsyrup: {reading_c: hot}\n...\n",
			"---\nbatch: " + strings.Repeat("a", 41) + "\n...\n", "---\nbatch: a\nfoam: 3\n...\n", "---\nbatch: a\noff: {ice: 1}\n...\n"},
		schemaline.Kitchens: {"version: 2\n", "profiles: 3\n", "profile: []\n", "profiles:\n  - {}\n", "profiles:\n  - name: ' '\n",
			"profiles:\n  - name: Quay\n    freezer: {airc: -18}\n", "profiles:\n  - name: Quay\n    counter: {air_c: 80}\n",
			"profiles:\n  - name: Quay\n    bowl: {tool: spoon}\n", "profiles:\n  - name: Quay\n    freezer: [1]\n"},
		schemaline.Prices: {"currency: " + strings.Repeat("k", 9) + "\n", "prices:\n  - {ingredient: sugar, price: 1}\n",
			"prices:\n  - {price: 1, pack_g: 500}\n", "prices:\n  - {ingredient: sugar, pack_g: 500}\n", "prices:\n  - {ingredient: sugar, price: 1, pack_g: 0}\n",
			"prices:\n  - {ingredient: sugar, price: 1, pack_g: 500, pack_ml: 500}\n", "prices:\n  - {ingredient: sugar, price: -1, pack_g: 500}\n",
			"prices:\n  - {ingredient: lemon, price: 1, pieces: 3}\n", "prices:\n  - {ingredient: lemon, price: 1, pack_g: 300, piece_g: 90}\n",
			"prices:\n  - {ingredient: sugar, price: 1, pack_kg: 1}\n", "price: []\n"},
		schemaline.Ingredients: {"ingredients:\n  - {id: a}\n", "ingredients:\n  - {id: a, name: A, fatt: 3}\n", "ingredients:\n  - {id: a, name: A, fat: 101}\n",
			"ingredient: []\n", "version: one\n"},
		schemaline.Wishes: {"scope: 3\n", "foam: {texture: fluffy}\n", "custard: {hardness_kpa: {to: 201}}\n", "foam: {keeps_ice: {is: perhaps}}\n"},
	} {
		for _, text := range texts {
			assert.Error(t, readers[kind]([]byte(text)), "%s: %s", kind, text)
			assert.Error(t, validate[kind]([]byte(text)), "%s: %s", kind, text)
		}
	}
}

// The designs that we keep are of one mind too.
func TestTheSchemasTakeTheDesignsThatTheReaderTakes(t *testing.T) {
	validate, read := validators(t)[schemaline.Design], readers(t)[schemaline.Design]
	taken := 0
	for _, pattern := range []string{"../../../testdata/designs/*.yaml", "../../../assets/demos/*.yaml", "../../../assets/bases/*.yaml"} {
		paths, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			if read(text) == nil {
				taken++
				assert.NoError(t, validate(text), path)
			}
		}
	}
	assert.Greater(t, taken, 12)
}
