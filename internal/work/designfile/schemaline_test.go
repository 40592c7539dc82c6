package designfile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/work/design"
)

const ourSchema = "file:///usr/share/ripplewright/schema/design.schema.json"

// lies has every kind's schema at one address.
func lies(address string) schemaline.Schemas { return func(schemaline.Kind) string { return address } }

// A new file names its schema in its first line and is otherwise what it would be
// without; the line stays when the file is saved again, whatever has changed.
func TestANewFileNamesItsSchema(t *testing.T) {
	dir := t.TempDir()
	d := design.New()
	d.Name = "Harbour wall"
	d.Dense.Lines = []design.Line{{Ingredient: "milk_whole", Grams: 500}}
	saved := func(name string, f *File, d design.Design, schema string) (*File, string) {
		f, err := Save(filepath.Join(dir, name), f, d, SaveOptions{Schemas: lies(schema), Force: true})
		require.NoError(t, err)
		data, err := os.ReadFile(f.Path())
		require.NoError(t, err)
		return f, string(data)
	}
	_, plain := saved("plain.yaml", nil, d, "")
	f, text := saved("named.yaml", nil, d, ourSchema)
	head, rest, _ := strings.Cut(text, "\n")
	// The convention of the YAML language server, README, "Using inlined schema".
	assert.Equal(t, "# yaml-language-server: $schema="+ourSchema, head)
	assert.Equal(t, plain, rest)
	assert.True(t, f.Design.Equal(d))

	d.Notes = "two lines\n  of notes"
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Count: 3, CountOf: design.Whites}}
	d.Dense.Lines = nil
	_, text = saved("named.yaml", f, d, "file:///elsewhere")
	assert.True(t, strings.HasPrefix(text, head+"\n"), text)
	assert.NotContains(t, text, "elsewhere")
}

// A file that was there has the line before the head it has, once, and a design that
// a hand made name another schema keeps that.
func TestAFileThatWasThereKeepsItsHead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "old.yaml")
	require.NoError(t, os.WriteFile(path, []byte("# From the old stall.\n"+skeleton), 0o644))
	f, err := Load(path)
	require.NoError(t, err)
	d := f.Design
	d.Name = "Still the old stall"
	f, err = Save(path, f, d, SaveOptions{Schemas: lies(ourSchema)})
	require.NoError(t, err)
	head := schemaline.Prefix + ourSchema + "\n# From the old stall.\n"
	assert.True(t, strings.HasPrefix(string(f.Bytes()), head), "%s", f.Bytes())
	assert.True(t, f.Design.Equal(d))
	changed, err := f.ChangedOnDisk()
	require.NoError(t, err)
	assert.False(t, changed)
	d.Name = "Once more"
	f, err = Save(path, f, d, SaveOptions{Schemas: lies("file:///elsewhere")})
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(f.Bytes()), head), "%s", f.Bytes())
	assert.Equal(t, 1, strings.Count(string(f.Bytes()), "$schema"))
}

func TestAnAddressThatIsNoLineIsLeftOut(t *testing.T) {
	f, err := Save(filepath.Join(t.TempDir(), "x.yaml"), nil, design.New(), SaveOptions{Schemas: lies("file:///a\nname: twice")})
	require.NoError(t, err)
	assert.NotContains(t, string(f.Bytes()), "schema")
}
