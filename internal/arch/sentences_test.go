package arch

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// wordless are the packages that hold labels of buttons, fields and rows, and no
// sentence: package say has those.
var wordless = []string{"internal/desk/benchview", "internal/desk/coldview", "internal/desk/labelview", "internal/desk/larder",
	"internal/desk/proofs", "internal/desk/rippleview", "ui"}

// mostOfALabel is how many words a label has.
const mostOfALabel = 6

var (
	// ended is a text that ends as a sentence does; an ellipsis is a label's.
	ended = regexp.MustCompile(`\pL\S* .*[\pL\pN)”"][.?!]$`)
	// goesOn is a text of two clauses.
	goesOn = regexp.MustCompile(`\pL[.;:?!] +\pL`)
)

// isSentence reports whether a text is one, or a piece to make one of.
func isSentence(text string) bool {
	if strings.HasPrefix(text, "<svg") {
		return false // a picture
	}
	hasLetter := strings.ContainsFunc(text, unicode.IsLetter)
	words := strings.Fields(text)
	return ended.MatchString(text) || goesOn.MatchString(text) || len(words) > mostOfALabel ||
		hasLetter && strings.TrimSpace(text) != text || strings.Contains(text, "%") && hasLetter && len(words) > 2
}

// sentences returns where a file words a sentence, those of errors, of panics
// and of the log of events, which nobody means to read on a page, apart.
func sentences(fset *token.FileSet, f *ast.File) []string {
	var found []string
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.CallExpr:
			switch x := n.Fun.(type) {
			case *ast.Ident:
				return x.Name != "panic"
			case *ast.SelectorExpr:
				if log := x.Sel.Name; log == "event" || log == "told" || log == "Regexp" {
					return false
				}
				return x.Sel.Name != "Errorf" && (x.Sel.Name != "New" || len(n.Args) != 1) && !isFlaw(x)
			}
		case *ast.BasicLit:
			if text, err := strconv.Unquote(n.Value); err == nil && n.Kind == token.STRING && isSentence(text) {
				found = append(found, fset.Position(n.Pos()).String()+" says "+n.Value)
			}
		}
		return true
	})
	return found
}

func TestSentencesAreWordedInSay(t *testing.T) {
	for _, root := range wordless {
		err := filepath.WalkDir(filepath.Join(top, root), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.Contains(filepath.ToSlash(path), "/pagetest/") {
				return err
			}
			fset := token.NewFileSet()
			f, err := parser.ParseFile(fset, path, nil, parser.SkipObjectResolution)
			require.NoError(t, err)
			assert.Empty(t, sentences(fset, f), "let say word it")
			return nil
		})
		require.NoError(t, err)
	}
}

func TestTheTestOfSentencesSeesThem(t *testing.T) {
	for code, seen := range map[string]int{
		`"Fill in the fields above first."`:                  1,
		`"Delete the kitchen?"`:                              1,
		`"Stir now; the edge is icy"`:                        1,
		`"Saved in the kitchen " + name`:                     1,
		`name + " is left over"`:                             1,
		`"how fast the air takes the heat away"`:             1,
		`fmt.Sprintf("stir %d more times", n)`:               1,
		`"Edit…"`:                                            0,
		`"Name, EU and UK"`:                                  0,
		`"The outer ring is right for"`:                      0,
		`strings.Repeat("    ", 2)`:                          0,
		`errors.New("there is already a kitchen of a name")`: 0,
		`flaw.New("%s is longer than %d letters", a, 3)`:     0,
		`panic("no setting of a kitchen: " + path)`:          0,
	} {
		fset := token.NewFileSet()
		f, err := parser.ParseFile(fset, "x.go", "package x\nimport \"a/b c d e f g\"\nvar x = "+code, 0)
		require.NoError(t, err)
		assert.Len(t, sentences(fset, f), seen, code)
	}
}

// A text becomes a sentence in one place: two ways to put its full stop would differ.
func TestOneFunctionMakesASentence(t *testing.T) {
	var at []string
	for _, root := range []string{"cmd", "internal", "ui"} {
		err := filepath.WalkDir(filepath.Join(top, root), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") {
				return err
			}
			fset := token.NewFileSet()
			f, err := parser.ParseFile(fset, path, nil, parser.SkipObjectResolution)
			require.NoError(t, err)
			for _, decl := range f.Decls {
				if fn, ok := decl.(*ast.FuncDecl); ok && strings.EqualFold(fn.Name.Name, "sentence") && fn.Recv == nil {
					at = append(at, filepath.ToSlash(path))
				}
			}
			return nil
		})
		require.NoError(t, err)
	}
	assert.Equal(t, []string{"../../internal/show/say/sentence.go"}, at)
}
