package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/form/schemaline"
)

// Every file that a command writes names the schema of its kind, once, in its first line
// or behind a version's own words; what a hand wrote before stays.
func TestWhatIsWrittenNamesItsSchema(t *testing.T) {
	k := newKitchen(t)
	k.file("quay.yaml", "# a word of mine\n"+quay)
	at := func(kind schemaline.Kind) string { return "file:///quay/" + string(kind) + ".json" }
	do := func(args ...string) {
		t.Helper()
		for i, w := range args {
			if strings.HasSuffix(w, ".yaml") {
				args[i] = k.path(w)
			}
		}
		var out, errs bytes.Buffer
		code := run(&shell{in: strings.NewReader(""), out: &out, err: &errs, schemas: at}, args)
		require.Equal(t, exitFine, code, "%v: %s", args, &errs)
	}
	do("version", "keep", "quay.yaml")
	do("balance", "quay.yaml", "-o", "mended.yaml")
	do("eggs", "quay.yaml", "-o", "whole.yaml")
	do("start", "rich", "-o", "begun.yaml")
	do("batch", "add", "quay.yaml", "freezer_c=-17", "made=2026-11-28")
	do("batch", "add", "quay.yaml", "freezer_c=-18", "made=2026-11-29")
	do("version", "back", "quay.yaml", "1")

	paths, err := filepath.Glob(k.path("quay.versions/*.yaml"))
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, name := range []string{"mended.yaml", "whole.yaml", "begun.yaml", "quay.yaml"} {
		paths = append(paths, k.path(name))
	}
	for _, path := range append(paths, k.path("quay.batches.yaml")) {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		want := schemaline.Prefix + at(schemaline.Design) + "\n"
		if strings.HasSuffix(path, "batches.yaml") {
			want = schemaline.Prefix + at(schemaline.Batches) + "\n"
		}
		assert.Equal(t, 1, strings.Count(string(text), "$schema"), "%s: %s", path, text)
		assert.Contains(t, string(text), want, path)
		if !strings.Contains(path, "versions") {
			assert.True(t, strings.HasPrefix(string(text), want), "%s: %s", path, text)
		}
		if strings.Contains(path, "quay.versions") || strings.HasSuffix(path, "mended.yaml") || strings.HasSuffix(path, "quay.yaml") {
			assert.Contains(t, string(text), "# a word of mine", path)
		}
	}
}

func TestEveryKindOfFileHasItsSchema(t *testing.T) {
	k := newKitchen(t)
	seen := map[string]bool{}
	for _, kind := range append(schemaKinds(), "") {
		code, out, errs := k.run("", strings.Fields("schema "+kind)...)
		require.Equal(t, exitFine, code, errs)
		assert.Contains(t, out, "https://json-schema.org/draft/2020-12/schema", kind)
		seen[out] = true
	}
	assert.Len(t, seen, len(schemaKinds()), "without a word it is the design's")
	code, _, errs := k.run("", "schema", "pictures")
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, errs, `"pictures"`)
}
