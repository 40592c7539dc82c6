package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestDiffAnswersAsDiffDoes(t *testing.T) {
	k := newKitchen(t)
	k.file("sweet.yaml", strings.NewReplacer("sugar, grams: 110", "sugar, grams: 130", "foam_volume_percent: 35", "foam_volume_percent: 30").Replace(quay))
	code, out, errs := k.run("", "diff", "quay.yaml", "sweet.yaml")
	assert.Equal(t, 1, code)
	assert.Empty(t, errs)
	for _, want := range []string{"custard: sugar: 110 g → 130 g", "blend, foam volume: 35 → 30 %", "Custard: Sweetness", "between  "} {
		assert.Contains(t, out, want)
	}
	code, out, _ = k.run("", "diff", "quay.yaml", "quay.yaml")
	assert.Equal(t, 0, code)
	assert.Equal(t, "The designs are the same.\n", out)
	for _, args := range [][]string{{"quay.yaml"}, {"quay.yaml", "gone.yaml"}, {"quay.yaml", "warm.yaml"}, {"quay.yaml", "quay.yaml", "--colour"}, {"quay.yaml", "quay.yaml", "quay.yaml"}} {
		code, _, errs = k.run("", append([]string{"diff"}, args...)...)
		assert.Equal(t, 2, code, "%v", args)
		assert.NotEmpty(t, errs)
	}
}

func TestDiffInJSONHasBothSides(t *testing.T) {
	k := newKitchen(t)
	k.file("sweet.yaml", strings.NewReplacer("sugar, grams: 110", "sugar, grams: 130", "    - {yolks: 5}\n", "", "foam_volume_percent: 35", "foam_volume_percent: 30").Replace(quay))
	code, out, _ := k.run("", "diff", "quay.yaml", "sweet.yaml", "--json")
	require.Equal(t, 1, code)
	var got struct {
		Same  bool
		Lines []struct {
			Part, Ingredient string
			Before, After    *struct{ Grams, Count float64 }
		}
		Settings []struct {
			Path          string
			Before, After float64
		}
		Figures []struct {
			Key                     string
			Before, After           any
			Before_Band, After_Band *struct{ Low, High float64 }
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &got))
	assert.False(t, got.Same)
	require.Len(t, got.Lines, 2)
	for _, l := range got.Lines {
		if l.Ingredient == "sugar" {
			assert.Equal(t, 110.0, l.Before.Grams)
			assert.Equal(t, 130.0, l.After.Grams)
		} else {
			assert.Equal(t, 5.0, l.Before.Count)
			assert.Nil(t, l.After)
		}
	}
	require.Len(t, got.Settings, 1)
	assert.Equal(t, 30.0, got.Settings[0].After)
	before, after := k.evaluated("quay.yaml"), k.evaluated("sweet.yaml")
	found := 0
	for _, f := range got.Figures {
		if f.Key == "dense.sweetness_sucrose_percent" || f.Key == "foam.mass_g" {
			part, key, _ := strings.Cut(f.Key, ".")
			assert.Equal(t, before[part].(map[string]any)[key], f.Before, f.Key)
			assert.Equal(t, after[part].(map[string]any)[key], f.After, f.Key)
			ends := before[part].(map[string]any)["bands"].(map[string]any)[key].(map[string]any)
			require.NotNil(t, f.Before_Band, f.Key)
			assert.Equal(t, ends["low"], f.Before_Band.Low, f.Key)
			assert.Equal(t, ends["high"], f.Before_Band.High, f.Key)
			found++
		}
	}
	assert.Equal(t, 2, found)
}

// evaluated is the answer of evaluate --json.
func (k kitchen) evaluated(name string) (v map[string]any) {
	code, out, errs := k.run("", "evaluate", name, "--json")
	require.Equal(k.t, exitFine, code, errs)
	require.NoError(k.t, json.Unmarshal([]byte(out), &v))
	return v
}
