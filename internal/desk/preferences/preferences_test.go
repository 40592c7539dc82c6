package preferences

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var kinds = map[string]Kind{"look.dark": Text, "look.contrast": YesNo, "look.scale": Count, "recent": Texts}

var now = time.Date(2024, 5, 6, 7, 8, 9, 0, time.UTC)

func TestAFileThatTheToolkitStumblesOverIsPutAside(t *testing.T) {
	for _, c := range []struct{ name, text, fault string }{
		{"all is well", `{"look.dark":"dark","look.contrast":true,"look.scale":1.5,"recent":["/quay/a.yaml"]}`, ""},
		{"a list of nothing", `{"recent":[]}`, ""},
		{"a key of the toolkit's", `{"fyne.other":[1,2],"x":{"y":[1]}}`, ""},
		{"an empty file", "", ""},
		{"a mixed list", `{"recent":["/quay/a.yaml",3]}`, "recent"},
		{"a mixed list that we do not know", `{"other":[true,"x"]}`, "other"},
		{"numbers and null", `{"other":[1,null]}`, "other"},
		{"a text for a number", `{"look.scale":"big"}`, "look.scale is to be a number"},
		{"a number for a text", `{"look.dark":1}`, "look.dark is to be text"},
		{"null for a list", `{"recent":null}`, "recent is to be a list of texts"},
		{"a list at the top", `["dark"]`, "array"},
		{"null at the top", `null`, "no keys"},
		{"cut off", `{"look.dark":"da`, "unexpected end"},
		{"endless", `{"x":"` + strings.Repeat("x", mostBytes) + `"}`, "longer"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			path := filepath.Join(dir, "preferences.json")
			require.NoError(t, os.WriteFile(path, []byte(c.text), 0o600))
			said, err := Aside(path, kinds, now)
			require.NoError(t, err)
			if c.fault == "" {
				assert.Empty(t, said)
				assert.FileExists(t, path)
				return
			}
			kept := filepath.Join(dir, "preferences broken 2024-05-06 070809.json")
			assert.Contains(t, said, c.fault)
			assert.Contains(t, said, kept)
			assert.NoFileExists(t, path)
			old, err := os.ReadFile(kept)
			require.NoError(t, err)
			assert.Equal(t, c.text, string(old))

			said, err = Aside(path, kinds, now)
			require.NoError(t, err)
			assert.Empty(t, said, "it is said once")
		})
	}
}

func TestNoFileIsNoFault(t *testing.T) {
	said, err := Aside(filepath.Join(t.TempDir(), "none", "preferences.json"), kinds, now)
	require.NoError(t, err)
	assert.Empty(t, said)
	said, err = Aside("", kinds, now)
	require.NoError(t, err)
	assert.Empty(t, said)
}

// After Aside the toolkit finds a file that it can read, or none.
func FuzzAside(f *testing.F) {
	for _, s := range []string{`{"recent":["/quay/a.yaml"]}`, `{"look.scale":1e999}`, `{"recent":[1,"a"]}`, `[]`, `null`, `{"a":{"b":[null]}}`, "\xff", `{"look.dark":"\ud800"}`} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		path := filepath.Join(t.TempDir(), "preferences.json")
		require.NoError(t, os.WriteFile(path, data, 0o600))
		_, err := Aside(path, kinds, now)
		require.NoError(t, err)
		left, err := os.ReadFile(path)
		if err != nil || len(left) == 0 {
			return
		}
		var values map[string]any
		require.NoError(t, json.Unmarshal(left, &values))
		if v, ok := values["recent"]; ok {
			require.IsType(t, []any{}, v)
		}
	})
}
