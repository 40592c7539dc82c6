package arch

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/figure"
)

// figureNames are what the figures are called: names of their own, and the heads of
// columns with their units.
func figureNames() map[string]string {
	names := map[string]string{}
	for _, t := range figure.Tables {
		for i := range t.Rows {
			f := &t.Rows[i]
			names[f.Name] = t.Key + "." + f.Key
			if unit := f.Unit.Sign(); unit != "" && t.Key != "foam.syrup" {
				names[f.Short+", "+unit] = t.Key + "." + f.Key
				names[strings.ToLower(f.Name)+", "+unit] = t.Key + "." + f.Key
			}
		}
	}
	names["freezes, °C"] = "per_gram.initial_freezing_point_c" // a difference reads so
	return names
}

// listedByHand returns the texts of a file that are the name of a figure.
func listedByHand(f *ast.File, names map[string]string) []string {
	var found []string
	ast.Inspect(f, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
			s, _ := strconv.Unquote(l.Value)
			if key := names[strings.TrimSpace(s)]; key != "" {
				found = append(found, strconv.Quote(s)+" is "+key)
			}
		}
		return true
	})
	return found
}

// mayName are files with a word that is a figure's name too, and what it means there.
var mayName = map[string]string{
	"ui/column.go":                     "the setting",
	"ui/weigh.go":                      "the setting that is weighed out",
	"internal/desk/coldview/tables.go": "of a tub in the freezer, not of the design as served",
	"internal/desk/larder/record.go":   "of an ingredient's record",
	"internal/desk/larder/form.go":     "of an ingredient's pack",
}

func TestNoFigureIsListedByHand(t *testing.T) {
	names := figureNames()
	for _, root := range []string{"internal/show", "internal/desk", "ui", "cmd"} {
		err := filepath.WalkDir(filepath.Join(top, root), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			name, err := filepath.Rel(top, path)
			require.NoError(t, err)
			name = filepath.ToSlash(name)
			if strings.HasPrefix(name, "internal/show/figure/") || strings.HasPrefix(name, "internal/show/say/") || mayName[name] != "" {
				return nil
			}
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			require.NoError(t, err)
			assert.Empty(t, listedByHand(f, names), "%s: take the row of package figure", name)
			return nil
		})
		require.NoError(t, err)
	}
}

func TestTheTestOfFiguresSeesThem(t *testing.T) {
	for code, seen := range map[string]int{
		`kit.NewFigures("grams", "freezes, °C", "density, g/mL")`: 2,
		`row("Initial freezing point", 1)`:                        1,
		`row("Freezes while you talk")`:                           0,
	} {
		f, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\nvar x = "+code, 0)
		require.NoError(t, err)
		assert.Len(t, listedByHand(f, figureNames()), seen, code)
	}
}
