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

// floors is the order of the folders under internal: the way the data flows. A
// package rests on packages of its own floor and of those below.
var floors = []string{"form", "matter", "food", "work", "answer", "show", "desk"}

// layers is the program, bottom to top.
var layers = []layer{
	{"assets", ""},
	{"internal/form/customary", ""},
	{"internal/form/echo", ""},
	{"internal/form/flaw", ""},
	{"internal/form/fold", ""},
	{"internal/form/headed", ""},
	{"internal/form/published", ""},
	{"internal/form/schemaline", ""},
	{"internal/form/setting", "internal/form/flaw internal/form/echo"},
	{"internal/form/yamltext", "internal/form/flaw internal/form/echo"},
	{"internal/matter/num", ""},
	{"internal/matter/mix", ""},
	{"internal/matter/water", "internal/matter/num"},
	{"internal/matter/solution", "internal/matter/num internal/matter/mix internal/matter/water"},
	{"internal/matter/phase", "internal/matter/num internal/matter/mix internal/matter/water internal/matter/solution"},
	{"internal/matter/ice", "internal/matter/mix internal/matter/water internal/matter/solution internal/matter/phase"},
	{"internal/matter/blend", "internal/matter/phase"},
	{"internal/matter/heat", "internal/matter/num"},
	{"internal/matter/ripple", "internal/matter/num"},
	{"internal/food/egg", "internal/form/flaw internal/form/echo"},
	{"internal/food/limits", ""},
	{"internal/food/ingredient", "internal/form/flaw internal/form/published internal/form/echo internal/form/setting internal/matter/mix"},
	{"internal/food/kind", "internal/food/ingredient"},
	{"internal/food/written", "internal/food/egg internal/food/ingredient internal/form/fold internal/form/customary"},
	{"internal/food/price", "internal/form/flaw internal/form/echo internal/form/setting internal/food/egg internal/food/ingredient"},
	{"internal/food/label", "internal/form/flaw internal/form/published internal/matter/mix internal/food/ingredient internal/food/kind internal/food/limits internal/form/customary"},
	{"internal/food/onpack", "internal/form/flaw internal/food/label"},
	{"internal/work/atomicfile", "internal/form/flaw"},
	{"internal/work/userdata", "internal/form/flaw internal/form/schemaline internal/form/echo internal/form/setting internal/form/yamltext internal/work/atomicfile internal/food/ingredient internal/food/price"},
	{"internal/work/backups", "internal/form/flaw internal/form/headed internal/form/yamltext internal/work/atomicfile"},
	{"internal/work/journal", "internal/form/flaw internal/form/headed internal/form/yamltext internal/work/atomicfile"},
	{"internal/work/design", "internal/form/flaw internal/form/echo internal/food/egg internal/food/ingredient internal/form/setting internal/food/onpack"},
	{"internal/work/batch", "internal/form/flaw internal/form/schemaline internal/form/echo internal/form/setting internal/form/yamltext internal/matter/ice internal/matter/phase internal/food/ingredient internal/work/atomicfile internal/work/design"},
	{"internal/work/designfile", "internal/form/flaw internal/form/schemaline internal/form/echo internal/form/yamltext internal/work/atomicfile internal/food/ingredient internal/work/design internal/form/setting"},
	{"internal/work/versions", "internal/form/flaw internal/form/schemaline internal/food/ingredient internal/form/headed internal/form/yamltext internal/work/atomicfile internal/work/designfile"},
	{"internal/work/compare", "internal/form/setting internal/food/ingredient internal/work/design"},
	{"internal/answer/tub", "internal/work/design internal/matter/ripple"},
	{"internal/answer/photo", "internal/form/flaw internal/form/echo internal/matter/num internal/matter/ripple"},
	{"internal/answer/model", "internal/form/flaw internal/matter/mix internal/food/egg internal/food/price internal/matter/water internal/food/ingredient internal/food/label internal/matter/solution internal/matter/phase internal/matter/blend internal/work/design internal/food/kind internal/food/limits internal/form/setting"},
	{"internal/answer/cold", "internal/form/flaw internal/form/schemaline internal/form/echo internal/form/yamltext internal/matter/num internal/work/userdata internal/matter/mix internal/matter/solution internal/matter/phase internal/matter/heat internal/work/design internal/answer/tub internal/answer/model internal/form/setting internal/matter/ice"},
	{"internal/answer/balance", "internal/form/flaw internal/answer/cold internal/food/label internal/matter/mix internal/matter/phase internal/food/egg internal/food/ingredient internal/food/kind internal/food/limits internal/work/design internal/answer/model internal/form/echo internal/form/setting internal/form/yamltext"},
	{"internal/answer/sure", "internal/matter/phase internal/work/design internal/answer/model internal/answer/cold"},
	{"internal/answer/icy", "internal/form/flaw internal/matter/mix internal/matter/solution internal/matter/ice internal/matter/phase internal/food/kind internal/work/design internal/answer/model internal/answer/cold"},
	{"internal/answer/process", "internal/food/limits internal/matter/blend internal/matter/heat internal/matter/mix internal/matter/phase internal/matter/solution internal/matter/water internal/food/ingredient internal/food/kind internal/work/design internal/answer/model internal/answer/cold internal/food/egg internal/matter/num"},
	{"internal/answer/learn", "internal/form/flaw internal/answer/photo internal/answer/tub internal/matter/ripple internal/matter/ice internal/matter/phase internal/matter/solution internal/matter/water internal/work/batch internal/work/design internal/answer/cold internal/answer/icy internal/answer/model internal/answer/process internal/answer/sure"},
	{"internal/answer/plan", "internal/form/flaw internal/answer/process"},
	{"internal/answer/selling", "internal/answer/cold internal/answer/icy internal/food/label internal/food/onpack internal/work/design internal/answer/tub internal/answer/model"},
	{"internal/answer/validate", "internal/form/flaw internal/answer/model internal/food/egg internal/answer/process internal/form/published internal/matter/num internal/matter/mix internal/matter/water internal/food/ingredient internal/food/label internal/matter/solution internal/matter/phase internal/matter/blend internal/matter/heat internal/matter/ripple internal/matter/ice"},
	{"internal/answer/shop", "internal/food/egg internal/food/ingredient internal/food/price internal/work/design internal/answer/model"},
	{"internal/answer/whole", "internal/form/flaw internal/matter/num internal/food/egg internal/work/design internal/answer/model"},
	{"internal/answer/start", "internal/form/flaw internal/form/echo internal/work/design internal/work/designfile internal/answer/model"},
	{"internal/answer/schemafile", "internal/answer/balance internal/answer/cold internal/form/schemaline internal/work/atomicfile internal/work/batch internal/work/designfile internal/work/userdata"},
	{"internal/show/tongue", ""},
	{"internal/show/say", "internal/form/flaw internal/show/tongue internal/answer/photo internal/food/written internal/answer/sure internal/matter/mix internal/food/ingredient internal/food/label internal/matter/phase internal/matter/ripple internal/work/design internal/answer/model internal/answer/cold internal/food/limits internal/food/kind internal/answer/process internal/food/egg internal/answer/plan internal/matter/ice internal/answer/icy internal/form/echo internal/answer/whole internal/answer/shop internal/food/price internal/food/onpack internal/answer/balance internal/work/compare internal/answer/learn internal/work/batch internal/form/customary"},
	{"internal/show/draw", ""},
	{"internal/show/draw/face", "internal/show/draw"},
	{"internal/show/draw/raster", "internal/matter/num internal/show/draw internal/show/draw/face"},
	{"internal/show/draw/pdf", "internal/show/draw internal/show/draw/face"},
	{"internal/show/draw/svg", "internal/show/draw internal/show/draw/face"},
	{"internal/show/draw/typeset", "internal/show/draw internal/show/draw/face"},
	{"internal/show/figure", "internal/matter/mix internal/food/ingredient internal/food/label internal/matter/phase internal/answer/model internal/show/say"},
	{"internal/show/chart", "internal/show/draw internal/show/say"},
	{"internal/show/card", "internal/form/flaw internal/show/tongue internal/show/draw/typeset internal/show/figure internal/work/atomicfile internal/matter/mix internal/food/egg internal/food/ingredient internal/food/label internal/matter/phase internal/matter/ripple internal/show/draw internal/show/draw/face internal/show/draw/raster internal/show/draw/pdf internal/show/draw/svg internal/show/chart internal/work/design internal/answer/tub internal/answer/model internal/answer/cold internal/show/say internal/answer/process internal/answer/icy internal/answer/balance internal/answer/plan"},
	{"internal/show/sticker", "internal/form/flaw internal/food/label internal/food/onpack internal/show/card internal/show/draw internal/show/draw/face internal/show/draw/typeset internal/answer/model internal/answer/selling internal/work/batch internal/work/design"},
	{"internal/show/beside", "internal/answer/model internal/show/figure internal/show/say internal/work/compare internal/work/design"},
	{"internal/show/report", "internal/form/flaw internal/show/beside internal/answer/photo internal/food/written internal/show/figure internal/matter/mix internal/food/egg internal/food/ingredient internal/food/label internal/matter/solution internal/matter/phase internal/matter/ripple internal/work/design internal/answer/model internal/answer/cold internal/answer/validate internal/show/say internal/answer/process internal/answer/plan internal/answer/icy internal/answer/whole internal/answer/shop internal/food/price internal/food/onpack internal/answer/balance internal/answer/sure internal/work/compare internal/form/setting internal/answer/learn internal/work/batch internal/work/versions"},
	{"internal/desk/session", "internal/form/schemaline internal/work/atomicfile internal/work/design internal/work/designfile internal/answer/model internal/food/ingredient internal/work/backups"},
	{"internal/desk/mishap", "internal/form/flaw"},
	{"internal/desk/keeping", "internal/form/flaw internal/work/atomicfile internal/desk/mishap internal/desk/session internal/food/ingredient internal/work/design internal/work/designfile internal/work/journal"},
	{"internal/desk/past", "internal/form/schemaline internal/desk/session internal/show/say internal/work/design internal/work/designfile internal/work/versions"},
	{"internal/desk/differing", "internal/answer/model internal/show/figure internal/show/say internal/work/compare internal/work/design"},
	{"internal/desk/chime", ""},
	{"internal/desk/typed", "internal/form/echo internal/form/fold internal/show/say"},
	{"internal/desk/larder", "internal/desk/typed internal/food/ingredient internal/form/setting internal/matter/mix internal/show/say"},
	{"internal/desk/rescue", "internal/form/flaw internal/work/userdata"},
	{"internal/desk/newest", "internal/desk/mishap"},
	{"internal/desk/kitchens", "internal/form/flaw internal/form/schemaline internal/answer/cold internal/show/say internal/work/design internal/work/userdata"},
	{"internal/desk/basket", "internal/form/flaw internal/answer/model internal/answer/shop internal/show/report internal/work/design internal/work/designfile"},
	{"internal/desk/notebook", "internal/matter/ice internal/matter/phase internal/form/schemaline internal/desk/mishap internal/answer/sure internal/answer/cold internal/answer/learn internal/answer/model internal/answer/process internal/show/chart internal/show/draw internal/show/say internal/work/batch internal/work/design internal/work/designfile internal/work/versions"},
	{"internal/desk/preferences", "internal/form/flaw internal/work/atomicfile"},
	{"internal/desk/planning", "internal/answer/cold internal/answer/model internal/desk/newest internal/work/design internal/desk/mishap internal/answer/icy"},
	{"internal/desk/benchview", "internal/answer/balance internal/answer/cold internal/answer/model internal/food/egg internal/food/ingredient internal/matter/phase internal/show/say internal/work/design"},
	{"internal/desk/coldview", "internal/form/flaw internal/answer/cold internal/answer/model internal/desk/kitchens internal/form/setting internal/show/chart internal/show/draw internal/show/say internal/work/design internal/answer/icy internal/matter/ice"},
	{"internal/desk/mending", "internal/answer/balance internal/answer/cold internal/answer/model internal/desk/newest internal/work/design"},
	{"internal/desk/wishing", "internal/food/egg internal/food/ingredient internal/food/label internal/matter/phase internal/answer/balance internal/answer/cold internal/answer/model internal/answer/sure internal/desk/newest internal/work/design"},
	{"internal/desk/making", "internal/answer/cold internal/answer/model internal/answer/process internal/show/say internal/work/design"},
	{"internal/desk/stove", "internal/answer/model internal/answer/process internal/desk/making internal/show/figure internal/show/say internal/work/design"},
	{"internal/desk/dayplan", "internal/form/flaw internal/show/chart internal/show/draw internal/answer/plan internal/answer/process internal/desk/making internal/show/report internal/show/say"},
	{"internal/desk/cutting", "internal/form/flaw internal/matter/ripple internal/work/design internal/answer/tub internal/answer/model internal/show/say internal/desk/newest internal/desk/mishap"},
	{"internal/desk/cutphoto", "internal/answer/learn internal/answer/model internal/answer/photo internal/answer/tub internal/matter/ripple internal/show/say internal/work/batch internal/work/design"},
	{"internal/check", "internal/form/published"},
	{"internal/check/market", "assets internal/food/ingredient internal/work/design internal/work/designfile internal/food/onpack"},
	{"internal/check/astray", "internal/show/say internal/show/tongue"},
	{"internal/desk/labelview", "internal/food/label internal/show/card internal/show/say"},
	{"internal/desk/proofs", "internal/answer/validate internal/show/chart internal/show/draw internal/show/say"},
	{"internal/desk/rippleview", "internal/answer/learn internal/answer/model internal/answer/tub internal/desk/cutting internal/matter/ripple internal/show/chart internal/show/draw internal/show/report internal/show/say internal/work/design"},
	{"internal/desk/places", "internal/show/say"},
	{"ui/kit", "internal/form/echo internal/form/fold internal/show/draw internal/show/draw/raster internal/show/chart internal/show/say internal/desk/mishap internal/desk/typed"},
	{"ui/spare", ""},
	{"ui/theme", "ui/kit internal/show/say"},
	{"ui/page", "internal/answer/model internal/food/ingredient internal/food/label internal/show/card internal/show/draw internal/work/design internal/show/say internal/desk/mishap ui/kit"},
	{"ui/page/pagetest", "internal/answer/model internal/check/market internal/work/design ui/kit ui/page ui/theme internal/show/say"},
	{"ui/balancepage", "internal/food/ingredient internal/answer/cold internal/desk/kitchens internal/food/label internal/answer/model internal/show/chart internal/show/draw internal/answer/balance internal/answer/sure internal/desk/mending internal/desk/wishing internal/matter/phase internal/show/say internal/work/design ui/kit ui/page"},
	{"ui/figurespage", "internal/show/figure internal/answer/model internal/food/ingredient internal/matter/mix ui/kit ui/page internal/show/say"},
	{"ui/ripplepage", "internal/answer/learn internal/desk/cutting internal/desk/mishap internal/desk/rippleview internal/matter/ripple internal/show/card internal/show/chart internal/show/figure internal/show/say internal/work/design ui/kit ui/page"},
	{"ui/coldpage", "internal/answer/cold internal/answer/model internal/desk/coldview internal/desk/kitchens internal/desk/mishap internal/desk/newest internal/desk/planning internal/form/setting internal/show/chart internal/show/say internal/work/design ui/kit ui/page internal/answer/icy internal/show/draw"},
	{"ui/labelpage", "internal/desk/newest internal/food/label internal/show/card ui/kit ui/page internal/show/say internal/desk/mishap internal/desk/labelview"},
	{"ui/tubpage", "internal/answer/icy internal/answer/selling internal/desk/mishap internal/desk/newest internal/food/label internal/food/onpack internal/show/card internal/show/draw internal/show/draw/raster internal/show/say internal/show/sticker ui/kit ui/page internal/desk/preferences internal/answer/model internal/work/design internal/desk/notebook"},
	{"ui/cardpage", "internal/answer/balance internal/answer/cold internal/answer/model internal/desk/kitchens internal/desk/newest internal/show/card internal/work/design ui/kit ui/page internal/show/say internal/desk/mishap"},
	{"ui/librarypage", "internal/desk/larder internal/desk/mishap internal/food/ingredient internal/show/say internal/work/design internal/work/userdata ui/kit ui/page"},
	{"ui/kitchenpage", "internal/answer/process internal/desk/kitchens internal/desk/making internal/desk/newest internal/desk/stove internal/show/say internal/work/design ui/kit ui/page internal/desk/mishap "},
	{"ui/daypage", "internal/form/flaw internal/answer/cold internal/answer/plan internal/answer/process internal/desk/dayplan internal/desk/kitchens internal/desk/making internal/desk/newest internal/show/draw internal/show/chart internal/show/report internal/show/say internal/work/atomicfile ui/kit ui/page"},
	{"ui/notebookpage", "internal/desk/mishap internal/answer/learn internal/desk/kitchens internal/desk/newest internal/desk/notebook internal/form/setting internal/show/chart internal/show/say internal/work/atomicfile internal/work/batch ui/kit ui/page"},
	{"ui/photodialog", "internal/answer/photo internal/desk/cutphoto internal/desk/mishap internal/desk/newest internal/matter/ripple internal/show/say ui/kit ui/page"},
	{"ui/packprice", "internal/food/ingredient internal/food/price internal/show/say internal/work/design internal/work/userdata ui/kit ui/page"},
	{"ui/costpage", "internal/answer/model internal/answer/shop internal/food/ingredient internal/food/price internal/show/figure internal/show/say ui/kit ui/packprice ui/page"},
	{"ui/shoppage", "internal/answer/shop internal/desk/basket internal/show/report internal/show/say internal/work/atomicfile ui/kit ui/page"},
	{"ui/surepage", "internal/answer/validate internal/matter/phase internal/show/draw internal/show/chart ui/kit ui/page internal/show/say internal/desk/mishap internal/desk/proofs"},
	{"internal/desk/entering", "internal/food/ingredient internal/food/written internal/form/fold internal/work/design"},
	{"ui", "internal/form/flaw internal/form/schemaline internal/show/tongue internal/desk/places ui/costpage internal/desk/cutphoto ui/photodialog internal/answer/start internal/show/beside internal/desk/entering internal/food/price internal/desk/benchview ui/balancepage internal/answer/icy internal/desk/preferences internal/answer/cold internal/answer/model internal/answer/tub internal/desk/cutting internal/desk/kitchens internal/desk/larder internal/desk/planning internal/desk/session internal/food/egg internal/food/ingredient internal/matter/phase internal/matter/ripple internal/show/chart internal/work/design internal/work/designfile internal/work/userdata ui/cardpage ui/coldpage ui/daypage ui/figurespage ui/kit ui/kitchenpage ui/labelpage ui/librarypage ui/page ui/ripplepage ui/surepage ui/theme internal/show/say internal/desk/mishap internal/desk/rescue internal/answer/balance internal/desk/mending ui/packprice ui/shoppage ui/spare internal/answer/process internal/answer/whole internal/desk/newest internal/show/figure internal/food/onpack internal/form/setting ui/tubpage internal/desk/notebook ui/notebookpage internal/desk/keeping internal/desk/differing internal/work/journal internal/desk/past internal/work/compare internal/work/batch"},
	{"internal/arch", ""},
	{"internal/mutate", ""},
	{"cmd/librarygen", "internal/food/ingredient"},
	{"cmd/ripplecalc", "internal/form/flaw internal/answer/schemafile internal/form/schemaline internal/show/tongue internal/answer/start internal/show/beside internal/answer/photo internal/work/versions internal/food/egg internal/food/written assets internal/form/echo internal/show/figure internal/work/atomicfile internal/food/ingredient internal/food/price internal/work/userdata internal/food/label internal/matter/ripple internal/work/design internal/work/designfile internal/answer/tub internal/answer/model internal/answer/cold internal/show/card internal/answer/validate internal/show/report internal/show/say internal/answer/process internal/answer/plan internal/answer/icy internal/answer/whole internal/answer/shop internal/food/onpack internal/answer/selling internal/show/sticker internal/answer/balance internal/form/yamltext internal/answer/sure internal/work/compare internal/answer/learn internal/work/batch"},
	{"cmd/ripplewright", "ui/spare internal/show/tongue internal/answer/schemafile internal/answer/start internal/desk/preferences assets internal/food/ingredient internal/work/userdata internal/work/design internal/work/designfile internal/answer/model internal/desk/session ui internal/desk/rescue internal/food/onpack internal/work/journal internal/work/backups internal/desk/chime internal/desk/keeping internal/desk/newest internal/work/batch"},
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

func TestNoFloorRestsOnAHigherOne(t *testing.T) {
	// These look at the house from outside.
	outside := []string{"internal/arch", "internal/check", "internal/check/market", "internal/check/astray", "internal/mutate"}
	floor := func(dir string) int {
		rest, ok := strings.CutPrefix(dir, "internal/")
		if !ok || slices.Contains(outside, dir) {
			return -1
		}
		name, _, inside := strings.Cut(rest, "/")
		i := slices.Index(floors, name)
		if i < 0 || !inside {
			t.Errorf("%s stands on no floor: internal holds %s", dir, strings.Join(floors, ", "))
		}
		return i
	}
	last := -1
	for _, l := range layers {
		if i := floor(l.path); i >= 0 {
			assert.GreaterOrEqual(t, i, last, "%s stands in the table above a floor that carries it", l.path)
			last = i
		}
	}
	for dir, files := range everything(t, false) {
		own := floor(dir)
		for file, imports := range files {
			for _, name := range imports {
				if name, ok := ours(name); ok && own >= 0 {
					assert.LessOrEqual(t, floor(name), own, "%s imports %s from a floor above", file, name)
				}
			}
		}
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
			if strings.HasPrefix(dir, "internal/") && dir != "internal/check/market" {
				assert.NotContains(t, imports, module+"/assets", file)
			}
		}
	}
}

func TestOnlyTestsUseWhatTestsShare(t *testing.T) {
	shared := []string{"internal/check", "internal/check/market", "internal/check/astray", "ui/page/pagetest"}
	for dir, files := range everything(t, false) {
		for file, imports := range files {
			for _, name := range imports {
				if name, ok := ours(name); ok && !slices.Contains(shared, dir) {
					assert.NotContains(t, shared, name, "%s", file)
				}
			}
		}
	}
}

// A table has its one reader, and a bar that its digits give.
func TestNoTestReadsATableByItself(t *testing.T) {
	for _, files := range everything(t, true) {
		for file, imports := range files {
			assert.NotContains(t, imports, "encoding/csv", "%s: read tables by check.Table", file)
		}
	}
}

func TestTheTopLevelHoldsOnlyTheFoldersThatTheGuideNames(t *testing.T) {
	for dir := range everything(t, false) {
		first, _, _ := strings.Cut(dir, "/")
		assert.Contains(t, []string{"cmd", "ui", "internal", "assets"}, first, "%s", dir)
	}
}
