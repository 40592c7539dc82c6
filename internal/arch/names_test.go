package arch

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// worn are names of types that stood for too many things, and what each of them
// is left to: no other package declares one.
var worn = map[string]string{
	"Line":    "internal/work/design",
	"Serving": "internal/work/design",
	"Band":    "internal/matter/phase",
	"Field":   "internal/form/setting",
	"Figure":  "", // a row of package figure is a Row
}

func TestWornNamesAreGivenToNothingNew(t *testing.T) {
	for _, root := range []string{"internal", "ui", "cmd"} {
		err := filepath.WalkDir(filepath.Join(top, root), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			require.NoError(t, err)
			dir, err := filepath.Rel(top, filepath.Dir(path))
			require.NoError(t, err)
			ast.Inspect(f, func(n ast.Node) bool {
				if s, ok := n.(*ast.TypeSpec); ok {
					if home, worn := worn[s.Name.Name]; worn {
						assert.Equal(t, home, filepath.ToSlash(dir), "%s: %s means something else already", path, s.Name.Name)
					}
				}
				_, inFunc := n.(*ast.FuncDecl)
				return !inFunc
			})
			return nil
		})
		require.NoError(t, err)
	}
}
