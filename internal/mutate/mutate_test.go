package main

import (
	"bytes"
	"go/format"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// little is a package with one of each thing: its comparisons can meet at one
// place, and its constants be fixed when compiled.
const little = `package little

const limit = 2.5

var sizes = [...]float64{1.5, 0}

func over(a, b float64) bool { return a < b == (b > limit*2) }
`

func littleChanges(t *testing.T) (pkg, []change) {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "little.go"), []byte(little), 0o600))
	p := pkg{ImportPath: "little", Name: "little", Dir: dir, GoFiles: []string{"little.go"}}
	all, err := changes(p, nil)
	require.NoError(t, err)
	return p, all
}

func TestEveryConstantAndComparisonIsChanged(t *testing.T) {
	p, all := littleChanges(t)
	var got []string
	for _, c := range all {
		if c.kind != "arithmetic" {
			got = append(got, c.named(p))
		}
	}
	assert.Equal(t, []string{
		"little/little.go:3  2.5 → 3.125", "little/little.go:5  1.5 → 1.2", "little/little.go:5  0 → 1",
		"little/little.go:7  == → !=", "little/little.go:7  < → >=", "little/little.go:7  > → <=", "little/little.go:7  2 → 1.6",
	}, got)
}

// What is fixed when compiled cannot sleep; all else becomes a call, and the
// file stays one that Go reads.
func TestChangesSleepInTheSource(t *testing.T) {
	p, all := littleChanges(t)
	replace, err := switches(p, all, t.TempDir())
	require.NoError(t, err)
	src, err := os.ReadFile(replace[filepath.Join(p.Dir, "little.go")])
	require.NoError(t, err)
	_, err = format.Source(src)
	require.NoError(t, err, "%s", src)
	assert.Contains(t, string(src), "const limit = 2.5\n")
	assert.Contains(t, string(src), "{mutateFloat[float64](1, 1.5, 1.2), mutateFloat[float64](2, 0, 1)}")
	assert.Equal(t, 3, strings.Count(string(src), "!= mutateIs("))
}

func TestTheTableCountsWhatWasCaught(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, table([]score{{"a", 8, 6}, {"b", 2, 2}}, &b))
	assert.Equal(t, []string{"package", "tried", "caught", "%", "a", "8", "6", "75.0", "b", "2", "2", "100.0", "all", "10", "8", "80.0"}, strings.Fields(b.String()))
}
