// Package arch holds the program to its layers.
package arch

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	module = "ripplewright"
	top    = "../.."
	fyne   = "fyne.io/fyne/v2"
)

// A layer is one package and the packages of ours that it may import. Each
// row names only rows above it, so the table also shows that nothing imports
// in a circle.
type layer struct {
	path string
	uses string
}

// layers is the program, bottom to top.
var layers = []layer{
	{"assets", ""},
	{"internal/num", ""},
	{"internal/atomicfile", ""},
	{"internal/mix", ""},
	{"internal/egg", ""},
	{"internal/water", "internal/num"},
	{"internal/ingredient", "internal/mix"},
	{"internal/userdata", "internal/atomicfile internal/ingredient"},
	{"internal/label", "internal/mix internal/ingredient"},
	{"internal/solution", "internal/num internal/mix internal/water"},
	{"internal/phase", "internal/num internal/mix internal/water internal/solution"},
	{"internal/blend", "internal/phase"},
	{"internal/heat", "internal/num"},
	{"internal/ripple", "internal/num"},
	{"internal/chart", ""},
	{"internal/design", "internal/egg internal/ingredient"},
	{"internal/designfile", "internal/atomicfile internal/ingredient internal/design"},
	{"internal/tub", "internal/design internal/ripple"},
	{"internal/model", "internal/mix internal/egg internal/water internal/ingredient internal/label internal/solution internal/phase internal/blend internal/design"},
	{"internal/cold", "internal/num internal/userdata internal/mix internal/solution internal/phase internal/heat internal/design internal/tub internal/model"},
	{"internal/validate", "internal/num internal/mix internal/water internal/ingredient internal/label internal/solution internal/phase internal/blend internal/heat internal/ripple"},
	{"internal/card", "internal/atomicfile internal/mix internal/egg internal/ingredient internal/label internal/phase internal/ripple internal/chart internal/design internal/tub internal/model internal/cold"},
	{"internal/report", "internal/mix internal/ingredient internal/label internal/solution internal/phase internal/ripple internal/design internal/model internal/cold internal/validate"},
	{"internal/session", "internal/design internal/designfile internal/model"},
	{"ui/kit", "internal/chart"},
	{"ui/theme", "ui/kit"},
	{"ui/page", "internal/mix internal/ingredient internal/label internal/phase internal/ripple internal/chart internal/design internal/tub internal/userdata internal/atomicfile internal/model internal/cold internal/card internal/validate internal/report ui/kit"},
	{"ui", "internal/egg internal/chart internal/ingredient internal/userdata internal/phase internal/ripple internal/design internal/designfile internal/tub internal/model internal/cold internal/session ui/kit ui/theme ui/page"},
	{"cmd/librarygen", "internal/ingredient"},
	{"cmd/ripplecalc", "assets internal/atomicfile internal/ingredient internal/userdata internal/label internal/ripple internal/design internal/designfile internal/tub internal/model internal/cold internal/card internal/validate internal/report"},
	{"cmd/ripplewright", "assets internal/ingredient internal/userdata internal/design internal/designfile internal/model internal/session ui"},
}

// everything returns the import paths of every Go file by package, tests
// apart.
func everything(t *testing.T, tests bool) map[string]map[string][]string {
	t.Helper()
	all := map[string]map[string][]string{}
	err := filepath.WalkDir(top, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if name := d.Name(); path != top && (strings.HasPrefix(name, ".") || name == "testdata" || name == "bin") {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") != tests {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(top, path)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		dir := rel[:max(strings.LastIndex(rel, "/"), 0)]
		if all[dir] == nil {
			all[dir] = map[string][]string{}
		}
		for _, spec := range f.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			all[dir][rel] = append(all[dir][rel], name)
		}
		return nil
	})
	require.NoError(t, err)
	require.NotEmpty(t, all)
	return all
}

func ours(name string) (string, bool) { return strings.CutPrefix(name, module+"/") }

func TestEachPackageImportsOnlyWhatItsLayerAllows(t *testing.T) {
	may := map[string][]string{}
	for _, l := range layers {
		may[l.path] = strings.Fields(l.uses)
	}
	for dir, files := range everything(t, false) {
		allowed, known := may[dir]
		if !known {
			t.Errorf("%s has no row in the table of layers: say what it may import", dir)
			continue
		}
		for file, imports := range files {
			for _, name := range imports {
				if name, ok := ours(name); ok && name != "testdata" && !slices.Contains(allowed, name) {
					t.Errorf("%s imports %s, which its layer does not allow", file, name)
				}
			}
		}
	}
}

func TestEachLayerRestsOnlyOnLayersBelowIt(t *testing.T) {
	below := map[string]bool{}
	packages := everything(t, false)
	for _, l := range layers {
		assert.Contains(t, packages, l.path, "a row without a package")
		assert.False(t, below[l.path], "%s has two rows", l.path)
		for _, name := range strings.Fields(l.uses) {
			assert.True(t, below[name], "%s rests on %s, which is not below it", l.path, name)
		}
		below[l.path] = true
	}
}

func TestOnlyTheWindowKnowsFyne(t *testing.T) {
	for _, tests := range []bool{false, true} {
		for dir, files := range everything(t, tests) {
			for file, imports := range files {
				for _, name := range imports {
					if !strings.HasPrefix(name, fyne) {
						continue
					}
					assert.False(t, strings.HasPrefix(dir, "internal/") || dir == "assets" || dir == "cmd/ripplecalc",
						"%s imports %s: no Fyne in what must run without a display", file, name)
					// With the app package comes a C toolchain; without it every test
					// of the window runs on a machine that has none.
					assert.False(t, name == fyne+"/app" && !strings.HasPrefix(dir, "cmd/"),
						"%s imports %s: only commands open a display", file, name)
				}
			}
		}
	}
}

func TestInternalIsHandedItsAssets(t *testing.T) {
	for dir, files := range everything(t, false) {
		for file, imports := range files {
			if strings.HasPrefix(dir, "internal/") {
				assert.NotContains(t, imports, module+"/assets", file)
			}
		}
	}
}

func TestTheTopLevelHoldsOnlyTheFoldersThatTheGuideNames(t *testing.T) {
	for dir := range everything(t, false) {
		first, _, _ := strings.Cut(dir, "/")
		assert.Contains(t, []string{"cmd", "ui", "internal", "assets"}, first, "%s", dir)
	}
}
