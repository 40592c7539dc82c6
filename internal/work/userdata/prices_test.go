package userdata_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/price"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/work/userdata"
	"strings"
)

// The prices are invented, for the stall Saltmarsh Quay.
const quayPrices = `# what the stall pays
version: 1
currency: kr # since we moved
prices:
  # at the mill
  - {ingredient: sugar, price: 12.5, pack_g: 1000}
  - ingredient: egg_whole
    price: 32 # they went up
    pieces: 12
  - {ingredient: milk_whole, price: 11, pack_ml: 1000, note: Tuesdays}
`

func TestPricesComeBackAsSaved(t *testing.T) {
	path := filepath.Join(t.TempDir(), "not", "there", "yet", "prices.yaml")
	p := userdata.NewPrices(path)
	require.NoError(t, p.Err())
	assert.Empty(t, p.Book().Packs())
	sugar := price.Pack{Ingredient: "sugar", Price: 1.29, Grams: 1000, Note: "the good one"}
	eggs := price.Pack{Ingredient: price.Eggs, Price: 3.2, Pieces: 12}
	free := price.Pack{Ingredient: "water", Grams: 1000}
	for _, pack := range []price.Pack{sugar, eggs, free} {
		require.NoError(t, p.Put(pack))
	}
	require.NoError(t, p.SetCurrency("€"))
	again, err := userdata.LoadPrices(path)
	require.NoError(t, err)
	assert.Equal(t, "€", again.Currency)
	assert.Equal(t, []price.Pack{sugar, eggs, free}, again.Packs())
	require.NoError(t, p.Rename("sugar", "quay_sugar"))
	require.NoError(t, p.Rename("quay_sugar", "water"), "which has a price")
	renamed, ok := p.Book().Find("quay_sugar")
	require.True(t, ok)
	assert.Equal(t, sugar.Price, renamed.Price)
	require.NoError(t, p.Rename("quay_sugar", "sugar"))
	require.NoError(t, p.Remove("sugar"))
	require.NoError(t, p.Remove("honey"), "there was none")
	again, err = userdata.LoadPrices(path)
	require.NoError(t, err)
	assert.True(t, again.Equal(p.Book()))
	assert.Equal(t, []price.Pack{eggs, free}, again.Packs())
}

func TestPricesKeepWhatAHandWroteAroundAChange(t *testing.T) {
	path := filepath.Join(t.TempDir(), "prices.yaml")
	require.NoError(t, os.WriteFile(path, []byte(quayPrices), 0o644))
	p := userdata.NewPrices(path)
	require.NoError(t, p.Err())
	require.NoError(t, p.Put(price.Pack{Ingredient: "honey", Price: 60, Grams: 500}))
	require.NoError(t, p.Put(price.Pack{Ingredient: "sugar", Price: 13, Grams: 1000}))
	require.NoError(t, p.SetCurrency("€"))
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	for _, kept := range []string{"# what the stall pays", "# at the mill", "# they went up", "# since we moved", "currency: €", "ingredient: honey", "price: 13"} {
		assert.Contains(t, string(text), kept)
	}
}

func TestPricesSeeWhatAnotherHandWroteMeanwhile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "prices.yaml")
	one, two := userdata.NewPrices(path), userdata.NewPrices(path)
	require.NoError(t, one.Put(price.Pack{Ingredient: "sugar", Price: 1, Grams: 1000}))
	require.NoError(t, two.Put(price.Pack{Ingredient: "honey", Price: 6, Grams: 500}))
	assert.Len(t, two.Book().Packs(), 2)
}

func TestFaultyPricesNameLineAndKey(t *testing.T) {
	for text, want := range map[string]string{
		"version: 2\n":                                   "line 1: version: the file has version 2, this program knows 1",
		"prizes: []\n":                                   "line 1: prizes: unknown key; known here are version, currency, prices",
		"currency: 1\ncurrency: 2\n":                     "line 2: currency: is given twice",
		"currency: [a]\n":                                "line 1: currency: must be a single value",
		"currency: what we pay in\n":                     "line 1: currency: 14 characters are more than the 8 that a currency may have",
		"prices:\n- ingredient: sugar\n  pack_g: 1000\n": "line 2: price of \"sugar\": price: is missing",
		"prices:\n- ingredient: sugar\n  price: 1\n  pack_g: 0\n":                                   "line 4: price of \"sugar\": pack_g: must be more than 0",
		"prices:\n- ingredient: sugar\n  price: dear\n  pack_g: 1\n":                                "line 3: price of \"sugar\": price: \"dear\" is not a number",
		"prices:\n- ingredient: sugar\n  price: 1\n  pack_kg: 1\n":                                  "line 4: price of \"sugar\": pack_kg: is no setting",
		"prices:\n- ingredient: sugar\n  price: -1\n  pack_g: 1\n":                                  "line 3: price of \"sugar\": price: −1 is outside 0 to 1000000",
		"prices:\n- {ingredient: sugar, price: 1}\n":                                                "line 2: price of \"sugar\": say what the pack holds: pack_g, pack_ml or pieces",
		"prices:\n- {price: 1, pack_g: 1}\n":                                                        "line 2: ingredient: must not be empty",
		"prices:\n- {ingredient: a, price: 1, pack_g: 1}\n- {ingredient: a, price: 2, pack_g: 1}\n": "line 3: price of \"a\": ingredient: has a price already",
	} {
		_, err := userdata.DecodePrices([]byte(text))
		require.EqualError(t, err, want, text)
	}
	path := filepath.Join(t.TempDir(), "prices.yaml")
	broken := []byte("prices:\n- ingredient: sugar\n  pack_g: 1000\n")
	require.NoError(t, os.WriteFile(path, broken, 0o644))
	p := userdata.NewPrices(path)
	require.ErrorContains(t, p.Err(), path+": line 2: price of")
	require.Error(t, p.Put(price.Pack{Ingredient: "honey", Price: 6, Grams: 500}))
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, broken, now, "a file broken by hand is left alone")
	require.ErrorContains(t, userdata.NewPrices("").Put(price.Pack{Ingredient: "honey", Price: 6, Grams: 500}), "no folder for settings")
}

func FuzzDecodePrices(f *testing.F) {
	f.Add([]byte(quayPrices))
	f.Add([]byte("currency: €\n"))
	f.Add([]byte("prices:\n- &x {ingredient: a, price: 1, pack_g: 3}\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		b, err := userdata.DecodePrices(data)
		if err != nil {
			return
		}
		text, err := userdata.EncodePrices(b)
		require.NoError(t, err)
		again, err := userdata.DecodePrices(text)
		require.NoError(t, err, "%s", text)
		require.True(t, b.Equal(again))
	})
}

// Both files of the maker's own name their schema once, and new ones begin with it.
func TestFilesOfTheMakersOwnNameTheirSchema(t *testing.T) {
	dir := t.TempDir()
	at := func(kind schemaline.Kind) string { return "file:///" + string(kind) + ".json" }
	byHand := filepath.Join(dir, "hand.yaml")
	require.NoError(t, os.WriteFile(byHand, []byte(quayPrices), 0o644))
	for _, path := range []string{filepath.Join(dir, "new.yaml"), byHand} {
		p := userdata.NewPrices(path)
		p.NameSchemas(at)
		require.NoError(t, p.Put(price.Pack{Ingredient: "salt", Price: 1, Grams: 500}))
		require.NoError(t, p.Put(price.Pack{Ingredient: "salt", Price: 2, Grams: 500}))
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(string(text), schemaline.Prefix+"file:///prices.json\n"), "%s", text)
		assert.Equal(t, 1, strings.Count(string(text), "$schema"), "%s", text)
	}
	text, err := os.ReadFile(byHand)
	require.NoError(t, err)
	for _, kept := range []string{"# what the stall pays", "# since we moved", "# at the mill", "# they went up"} {
		assert.Contains(t, string(text), kept)
	}
	s := userdata.NewShelf(builtIn(), filepath.Join(dir, "ingredients.yaml"))
	s.NameSchemas(at)
	require.NoError(t, s.Put(figPaste(t), ""))
	require.NoError(t, s.Remove("fig_paste"))
	text, err = os.ReadFile(s.Path())
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(text), schemaline.Prefix+"file:///ingredients.json\n"), "%s", text)
	assert.Equal(t, 1, strings.Count(string(text), "$schema"), "%s", text)
}
