package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write testdata/golden/evaluate anew")

// Keys and figures of evaluate --json are promises: a change shows in the
// golden files, which -update writes.
func TestTheJSONOfEveryDesignIsAsKept(t *testing.T) {
	newKitchen(t) // without the own ingredients of whoever runs this
	kept := 0
	for _, pattern := range []string{"testdata/designs/*.yaml", "assets/demos/*.yaml"} {
		names, err := filepath.Glob(filepath.Join("../..", pattern))
		require.NoError(t, err)
		for _, name := range names {
			var out, errs bytes.Buffer
			if code := run(&shell{in: strings.NewReader(""), out: &out, err: &errs}, []string{"evaluate", "--json", name}); code != exitFine {
				continue // made to be refused
			}
			golden := filepath.Join("../../testdata/golden/evaluate", filepath.Base(filepath.Dir(name))+"-"+strings.TrimSuffix(filepath.Base(name), ".yaml")+".json")
			if *update {
				require.NoError(t, os.MkdirAll(filepath.Dir(golden), 0o755))
				require.NoError(t, os.WriteFile(golden, out.Bytes(), 0o644))
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err, "go test ./cmd/ripplecalc -update")
			assert.JSONEq(t, string(want), out.String(), name)
			kept++
		}
	}
	assert.Positive(t, kept)
}
