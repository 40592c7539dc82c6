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

// worn are names of types that stood for too many things, and where they stand still:
// no other package declares one.
var worn = map[string]string{
	"Line":    "internal/answer/model internal/food/label internal/work/design",
	"Serving": "internal/matter/ripple internal/work/design",
	"Band":    "internal/matter/phase",
	"Field":   "internal/answer/cold internal/form/setting internal/work/design", // one engine and two of its uses
	"Figure":  "internal/answer/sure internal/desk/stove",
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
				if s, ok := n.(*ast.TypeSpec); ok && worn[s.Name.Name] != "" {
					assert.Contains(t, strings.Fields(worn[s.Name.Name]), filepath.ToSlash(dir), "%s: %s means other things already", path, s.Name.Name)
				}
				_, inFunc := n.(*ast.FuncDecl)
				return !inFunc
			})
			return nil
		})
		require.NoError(t, err)
	}
}
