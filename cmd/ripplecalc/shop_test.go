package main

import (
	"encoding/json"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The prices are invented.
const quayPrices = `version: 1
currency: kr
prices:
  - {ingredient: sugar, price: 12, pack_g: 1000}
  - {ingredient: egg_whole, price: 30, pieces: 12}
  - {ingredient: milk_whole, price: 11, pack_ml: 1000}
`

type shopped struct {
	Designs []struct {
		File    string
		Batches int
		Cost    struct {
			Currency string
			Batch    float64
			Missing  []string
		}
		Margin float64 `json:"margin_percent"`
		Offers []struct {
			Price float64 `json:"price_per_tub"`
		}
	}
	Items []struct {
		Ingredient string
		Packs      *int
		Pays       *float64
		FromTap    bool `json:"from_tap"`
		Eggs       *struct{ Crack int }
	}
	Currency *string
	Pays     *float64
	AtLeast  bool `json:"at_least"`
	Missing  []string
}

func TestShoppingTakesTheMakersPricesAndOthersWhereNamed(t *testing.T) {
	k := newKitchen(t)
	shop := func(words ...string) (out shopped) {
		t.Helper()
		code, text, errs := k.run("", append([]string{"shop", "--json"}, words...)...)
		require.Equal(t, exitFine, code, errs)
		require.NoError(t, json.Unmarshal([]byte(text), &out))
		return out
	}
	none := shop("quay.yaml")
	assert.Nil(t, none.Pays)
	assert.Nil(t, none.Currency)
	assert.True(t, none.AtLeast)
	assert.Len(t, none.Missing, len(none.Items)-1, "of all but water")

	k.file("config/ripplewright/prices.yaml", quayPrices)
	one := shop("quay.yaml")
	require.NotNil(t, one.Pays)
	assert.Equal(t, "kr", *one.Currency)
	two := shop("quay.yaml", "quay.yaml", "--batches", "3", "--sell", "90")
	require.Len(t, two.Designs, 2)
	assert.Equal(t, 3, two.Designs[0].Batches)
	assert.Positive(t, two.Designs[0].Margin)
	for i, it := range two.Items {
		if it.Eggs != nil {
			assert.Equal(t, 6*one.Items[i].Eggs.Crack, it.Eggs.Crack)
			assert.Equal(t, (it.Eggs.Crack+11)/12, *it.Packs)
		}
	}
	code, text, errs := k.run("", "evaluate", "--json", "quay.yaml")
	require.Equal(t, exitFine, code, errs)
	var evaluated struct{ Cost struct{ Batch float64 } }
	require.NoError(t, json.Unmarshal([]byte(text), &evaluated))
	assert.Equal(t, one.Designs[0].Cost.Batch, evaluated.Cost.Batch, "one price has one answer")

	k.file("dear.yaml", "prices: [{ingredient: sugar, price: 24, pack_g: 1000}]\n")
	dear := shop("quay.yaml", "--prices", "dear.yaml")
	assert.Nil(t, dear.Currency)
	for i, it := range dear.Items {
		if it.Ingredient == "sugar" {
			assert.InDelta(t, 2**one.Items[i].Pays, *it.Pays, 1e-9)
		}
	}
}

func TestFaultyPricesAreNamed(t *testing.T) {
	k := newKitchen(t)
	k.file("bad.yaml", "prices:\n  - {ingredient: sugar, price: 12}\n")
	code, _, errs := k.run("", "shop", "quay.yaml", "--prices", "bad.yaml")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, errs, `bad.yaml: line 2: price of "sugar": say what the pack holds`)
	code, _, _ = k.run("", "shop", "quay.yaml", "--prices", "gone.yaml")
	assert.Equal(t, exitInput, code)
	for _, wrong := range [][]string{{"--batches", "0"}, {"--sell", "0"}, {"--sell", "NaN"}, {"-o", "x.pdf"}, {"-o", "quay.yaml"}} {
		code, _, errs = k.run("", append([]string{"shop", "quay.yaml"}, wrong...)...)
		assert.Equal(t, exitUsage, code, "%v: %s", wrong, errs)
	}
	k.file("config/ripplewright/prices.yaml", "prices: [{}]\n")
	code, _, errs = k.run("", "evaluate", "quay.yaml")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, errs, "prices.yaml: line 1: ")
}

func TestEggsWritesADesignOfWholeEggs(t *testing.T) {
	k := newKitchen(t)
	for _, way := range []string{"ratio", "recipe"} {
		to := way + ".yaml"
		code, _, errs := k.run("", "eggs", "quay.yaml", "--eggs", "4", "--way", way, "-o", to)
		require.Equal(t, exitFine, code, errs)
		code, text, errs := k.run("", "process", "--json", to)
		require.Equal(t, exitFine, code, errs)
		var made struct {
			Eggs struct {
				Crack      int
				YolksLeft  float64 `json:"yolks_left"`
				WhitesLeft float64 `json:"whites_left"`
				Dense      struct{ Yolks, Whites float64 }
				Foam       struct{ Yolks, Whites float64 }
			}
		}
		require.NoError(t, json.Unmarshal([]byte(text), &made))
		assert.Equal(t, 4, made.Eggs.Crack, way)
		assert.InDelta(t, 4, made.Eggs.Dense.Yolks, 1e-9, way)
		assert.InDelta(t, 4, made.Eggs.Foam.Whites, 1e-9, way)
		assert.InDelta(t, 0, made.Eggs.YolksLeft, 1e-9, way)
		assert.InDelta(t, 0, made.Eggs.WhitesLeft, 1e-9, way)

		code, _, errs = k.run("", "eggs", to, "-o", "again.yaml")
		assert.Equal(t, exitInput, code)
		assert.Contains(t, errs, "It takes 4 whole eggs as it is")
		_, err := os.Stat(k.path("again.yaml"))
		assert.ErrorIs(t, err, os.ErrNotExist)
	}
	before, err := os.ReadFile(k.path("quay.yaml"))
	require.NoError(t, err)
	for _, wrong := range [][]string{{"-o", "quay.yaml"}, {"--way", "luck"}, {"--eggs", "-1"}, {"-o", "x.md"}} {
		code, _, errs := k.run("", append([]string{"eggs", "quay.yaml"}, wrong...)...)
		assert.Equal(t, exitUsage, code, "%v: %s", wrong, errs)
	}
	code, _, _ := k.run("", "eggs", "quay.yaml", "-o", "rosehip.yaml")
	assert.Equal(t, exitInput, code, "a design is not overwritten")
	after, err := os.ReadFile(k.path("quay.yaml"))
	require.NoError(t, err)
	assert.Equal(t, before, after)
}
