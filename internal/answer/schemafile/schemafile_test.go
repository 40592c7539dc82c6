package schemafile

import (
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/designfile"
)

// lies returns what lies at an address.
func lies(t *testing.T, address string) []byte {
	u, err := url.Parse(address)
	require.NoError(t, err)
	require.Equal(t, "file", u.Scheme)
	data, err := os.ReadFile(u.Path)
	require.NoError(t, err, address)
	return data
}

func TestWithoutAPackageTheUsersFolderHasTheSchema(t *testing.T) {
	home := filepath.Join(t.TempDir(), "Anna Møller")
	t.Setenv("XDG_DATA_HOME", home)
	at := all[0].reference(filepath.Join(t.TempDir(), "bin", "ripplewright"))
	assert.Equal(t, designfile.Schema(), lies(t, at))
	assert.NotContains(t, at, " ", "an editor reads up to a space")
	path := filepath.Join(home, "ripplewright", "schema", "design.schema.json")
	require.NoError(t, os.WriteFile(path, []byte("{}"), 0o644))
	assert.Equal(t, at, all[0].reference(""), "an old one is brought up to date")
	assert.Equal(t, designfile.Schema(), lies(t, at))
}

func TestThePackagesSchemaComesFirst(t *testing.T) {
	root := t.TempDir()
	t.Setenv("XDG_DATA_HOME", filepath.Join(root, "data"))
	installed := filepath.Join(root, "share", "ripplewright", "schema", "design.schema.json")
	require.NoError(t, os.MkdirAll(filepath.Dir(installed), 0o755))
	require.NoError(t, os.WriteFile(installed, []byte("{}"), 0o644))
	assert.True(t, strings.HasSuffix(all[0].reference(filepath.Join(root, "bin", "ripplewright")), installed))
	assert.NoDirExists(t, filepath.Join(root, "data"), "no copy lies about")
}

func TestNoFolderNoReference(t *testing.T) {
	root := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(root, nil, 0o644))
	t.Setenv("XDG_DATA_HOME", root)
	assert.Empty(t, all[0].reference(""))
}
