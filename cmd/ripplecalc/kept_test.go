package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/versions"
)

func TestVersionsAreKeptListedAndGoneBackTo(t *testing.T) {
	k := newKitchen(t)
	list := func(args ...string) (versions []struct {
		Number     int
		Note, Path string
	}) {
		code, out, errs := k.run("", append(append([]string{"version"}, args...), "--json")...)
		require.Equal(t, exitFine, code, errs)
		var got struct{ Versions json.RawMessage }
		require.NoError(t, json.Unmarshal([]byte(out), &got))
		require.NoError(t, json.Unmarshal(got.Versions, &versions))
		return versions
	}
	assert.Empty(t, list("list", "quay.yaml"))
	assert.Len(t, list("keep", "quay.yaml", "--note", "as everyone\nliked it"), 1)
	sweet := strings.Replace(quay, "sugar, grams: 110", "sugar, grams: 130", 1)
	k.file("quay.yaml", sweet+"# a word of mine\n")
	kept := list("back", "quay.yaml", "1")
	require.Len(t, kept, 2, "what it said before is kept")
	assert.Equal(t, "as everyone liked it", kept[0].Note)
	code, _, _ := k.run("", "diff", "quay.yaml", strings.TrimPrefix(kept[0].Path, k.dir+"/"))
	assert.Equal(t, 0, code)
	code, _, _ = k.run("", "diff", "quay.yaml", strings.TrimPrefix(kept[1].Path, k.dir+"/"))
	assert.Equal(t, 1, code)
	code, out, _ := k.run("", "version", "list", "quay.yaml")
	assert.Equal(t, exitFine, code)
	assert.Contains(t, out, "as everyone liked it")

	for _, args := range [][]string{{"back", "quay.yaml", "9"}, {"keep", "gone.yaml"}} {
		code, _, errs := k.run("", append([]string{"version"}, args...)...)
		assert.Equal(t, exitInput, code, args)
		assert.NotEmpty(t, errs)
	}
	for _, args := range [][]string{{"list"}, {"burn", "quay.yaml"}, {"back", "quay.yaml"}, {"back", "quay.yaml", "one"}, {"keep", "quay.yaml", "3"}, {"list", "-"}, {"list", "quay.yaml", "--note", "x"}} {
		code, _, errs := k.run("", append([]string{"version"}, args...)...)
		assert.Equal(t, exitUsage, code, args)
		assert.NotEmpty(t, errs)
	}
}

func TestGoingBackKeepsTheFilesOwnWords(t *testing.T) {
	k := newKitchen(t)
	k.run("", "version", "keep", "quay.yaml")
	k.file("quay.yaml", "# a word of mine\n"+strings.Replace(quay, "sugar, grams: 110", "sugar, grams: 130", 1))
	code, _, errs := k.run("", "version", "back", "quay.yaml", "1")
	require.Equal(t, exitFine, code, errs)
	text, err := os.ReadFile(filepath.Join(k.dir, "quay.yaml"))
	require.NoError(t, err)
	assert.Contains(t, string(text), "# a word of mine")
	assert.Contains(t, string(text), "sugar, grams: 110")
}

func TestABatchKeepsTheVersionItWasMadeBy(t *testing.T) {
	k := newKitchen(t)
	for range 2 {
		code, _, errs := k.run("", "batch", "add", "quay.yaml", "freezer_c=-19")
		require.Equal(t, exitFine, code, errs)
	}
	kept, err := versions.List(filepath.Join(k.dir, "quay.yaml"))
	require.NoError(t, err)
	require.Len(t, kept, 1, "the second is of the same design")
	assert.NotEmpty(t, kept[0].Batch)

	k.file("quay.yaml", strings.Replace(quay, "sugar, grams: 110", "sugar, grams: 130", 1))
	code, _, errs := k.run("", "batch", "add", "quay.yaml", "batch="+kept[0].Batch, "ate.icy=fine")
	require.Equal(t, exitFine, code, errs)
	kept, err = versions.List(filepath.Join(k.dir, "quay.yaml"))
	require.NoError(t, err)
	assert.Len(t, kept, 1, "the batch that is added to was not made by what the file says now")
}
