package arch

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// quantity is a format of a number with its unit.
var quantity = regexp.MustCompile(`"[^"]*%[-+0-9.]*[dfgvs] ?(°C|kPa|mL|min\b|h\b|%%)`)

// stillFormat counts the lines that format a quantity outside say: errors about
// what was typed, what is kept in a file, and pages not moved to say yet. A
// count may only fall.
var stillFormat = map[string]int{
	"internal/answer/model/model.go":    1, // an error
	"internal/answer/cold/calibrate.go": 2, // kept in a kitchen's file
	"internal/answer/cold/place.go":     1, // an error
	"internal/show/report/curve.go":     3, // errors
	"cmd/ripplecalc/evaluate.go":        1, // an error
	"internal/show/report/page.go":      4,
	"internal/show/report/ripple.go":    2,
	"ui/coldpage/stage.go":              1,
	"ui/ripplepage/page.go":             1,
	"ui/ripplepage/found.go":            5,
	"ui/menus.go":                       1,
	"ui/tubcolumn.go":                   1,
	"ui/column.go":                      1,
}

func TestQuantitiesAreWordedInSay(t *testing.T) {
	for _, root := range []string{"internal/show", "internal/answer", "ui", "cmd"} {
		err := filepath.WalkDir(filepath.Join(top, root), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			name, err := filepath.Rel(top, path)
			if err != nil {
				return err
			}
			if name = filepath.ToSlash(name); strings.HasPrefix(name, "internal/show/say/") {
				return nil
			}
			text, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			n := len(quantity.FindAllIndex(text, -1))
			assert.LessOrEqual(t, n, stillFormat[name], "%s formats a quantity: let say do it", name)
			return nil
		})
		require.NoError(t, err)
	}
}
