package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStartWritesADesignThatEveryCommandReads(t *testing.T) {
	k := newKitchen(t)
	code, out, errs := k.run("", "start", "rich", "--foam", "honey", "--tubs", "6", "--volume", "350")
	require.Equal(t, exitFine, code, errs)
	assert.Contains(t, out, "count: 6")
	assert.Contains(t, out, "honey")
	code, _, errs = k.run(out, "check", "-")
	assert.Equal(t, exitFine, code, errs)
	code, _, errs = k.run("", "start", "milk-and-yolk", "-o", "new.yaml")
	require.Equal(t, exitFine, code, errs)
	code, again, _ := k.run("", "start", "new.yaml", "--tubs", "8")
	require.Equal(t, exitFine, code)
	assert.Contains(t, again, "count: 8")
	for _, args := range [][]string{{"start"}, {"start", "poor"}, {"start", "rich", "--foam", "cloud"}, {"start", "rich", "--tubs", "0"},
		{"start", "rich", "--tubs", "501"}, {"start", "rich", "--volume", "NaN"}, {"start", "rich", "-o", "new.txt"}, {"start", "rich", "-o", "new.yaml"}, {"start", "new.yaml", "--foam", "honey"}} {
		code, out, errs = k.run("", args...)
		assert.NotEqual(t, exitFine, code, "%v", args)
		assert.Empty(t, out, "%v", args)
		assert.NotEmpty(t, errs, "%v", args)
	}
}

func TestCompareLaysDesignsSideBySide(t *testing.T) {
	k := newKitchen(t)
	k.file("sweet.yaml", strings.NewReplacer("sugar, grams: 110", "sugar, grams: 130", "    - {yolks: 5}\n", "").Replace(quay))
	code, out, errs := k.run("", "compare", "quay.yaml", "sweet.yaml", "quay.yaml")
	require.Equal(t, exitFine, code, errs)
	assert.Contains(t, out, "≠")
	assert.Contains(t, out, "sweet.yaml")
	assert.NotContains(t, out, "salt", "what is the same is left out")
	code, out, _ = k.run("", "compare", "quay.yaml", "sweet.yaml", "quay.yaml", "--json")
	require.Equal(t, exitFine, code)
	var got struct {
		Files                    []string
		Same                     bool
		Lines, Settings, Figures []struct {
			Key     string
			Values  []any
			Differs bool
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &got))
	assert.False(t, got.Same)
	require.Len(t, got.Files, 3)
	assert.Equal(t, got.Files[0], got.Files[2])
	for _, l := range got.Lines {
		require.Len(t, l.Values, 3)
		assert.Equal(t, l.Values[0], l.Values[2], l.Key)
		if l.Key == "dense.egg_yolk" {
			assert.True(t, l.Differs)
			assert.Nil(t, l.Values[1])
		}
	}
	code, out, _ = k.run("", "compare", "quay.yaml", "quay.yaml")
	assert.Equal(t, exitFine, code)
	assert.Equal(t, "They are the same.\n", out)
	for _, args := range [][]string{{"quay.yaml"}, {"quay.yaml", "gone.yaml"}} {
		code, _, errs = k.run("", append([]string{"compare"}, args...)...)
		assert.NotEqual(t, exitFine, code)
		assert.NotEmpty(t, errs)
	}
}
