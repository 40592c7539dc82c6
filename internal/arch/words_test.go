package arch

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const units = `(°C|°F|kPa|g/mL|mL|mm|cm|kg|min|%%|%|[gLhK])`

var (
	// formatted is a verb with a unit after it.
	formatted = regexp.MustCompile(`%[-+0-9.]*[dfgvs] ?` + strings.Replace(units, "|%|", "|", 1) + `($|[^\pL%])`)
	// joined is a unit that something is put before.
	joined = regexp.MustCompile(`^ ?` + units + `($|[^\pL%])`)
)

// quantities returns where a file words a number with its unit: in a format, or
// by a unit put after a value. Errors about what was typed or stands in a file
// may repeat its own numbers: within fmt.Errorf, flaw.New and a command's misused. So may a String in a package under show, which is what
// a file keeps.
func quantities(fset *token.FileSet, f *ast.File, under bool) []string {
	var found []string
	mayRepeat := func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CallExpr:
			s, ok := n.Fun.(*ast.SelectorExpr)
			return ok && (s.Sel.Name == "Errorf" || s.Sel.Name == "misused" || isFlaw(s))
		case *ast.FuncDecl:
			return under && n.Recv != nil && n.Name.Name == "String"
		}
		return false
	}
	text := func(n ast.Node) string {
		l, ok := n.(*ast.BasicLit)
		if !ok || l.Kind != token.STRING {
			return ""
		}
		s, _ := strconv.Unquote(l.Value)
		return s
	}
	ast.Inspect(f, func(n ast.Node) bool {
		if n == nil || mayRepeat(n) {
			return false
		}
		at := func(x ast.Node) { found = append(found, fset.Position(x.Pos()).String()) }
		switch n := n.(type) {
		case *ast.BasicLit:
			if formatted.MatchString(text(n)) {
				at(n)
			}
		case *ast.BinaryExpr:
			if _, constant := n.X.(*ast.BasicLit); n.Op == token.ADD && !constant && joined.MatchString(text(n.Y)) {
				at(n.Y)
			}
		}
		return true
	})
	return found
}

// isFlaw reports whether s is flaw.New.
func isFlaw(s *ast.SelectorExpr) bool {
	of, ok := s.X.(*ast.Ident)
	return ok && of.Name == "flaw" && s.Sel.Name == "New"
}

func TestQuantitiesAreWordedInSay(t *testing.T) {
	for _, root := range []string{"internal/show", "internal/answer", "internal/desk", "ui", "cmd"} {
		err := filepath.WalkDir(filepath.Join(top, root), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			slashed := filepath.ToSlash(path)
			if strings.Contains(slashed, "internal/show/say/") || strings.Contains(slashed, "internal/answer/validate/") {
				return nil // a published table is told in the units of its source
			}
			fset := token.NewFileSet()
			f, err := parser.ParseFile(fset, path, nil, parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			for _, where := range quantities(fset, f, root == "internal/answer") {
				assert.Fail(t, where+" formats a quantity: let say do it")
			}
			return nil
		})
		require.NoError(t, err)
	}
}

func TestTheTestOfQuantitiesSeesThem(t *testing.T) {
	for code, seen := range map[string]int{
		`fmt.Sprintf("at %.1f °C", c)`:                     1,
		`fmt.Sprintf("%s%% foam", n)`:                      1,
		`fmt.Sprintf("of %d mm and %d g", a, b)`:           1,
		`number(c) + " °C"`:                                1,
		`"about " + number(p, 1) + " kPa, firm"`:           1,
		`number(p) + "%"`:                                  1,
		`fmt.Errorf("%g °C is outside %d to %d °C", c, a)`: 0,
		`c.misused("--at %g °C is outside", c)`:            0,
		`Problem{Err: flaw.New("%g °C is cold", c)}`:       0,
		`say.Style{}.Temperature(c) + " there"`:            0,
		`name + " holds it"`:                               0,
		`fmt.Sprintf("%d goes", n)`:                        0,
	} {
		fset := token.NewFileSet()
		f, err := parser.ParseFile(fset, "x.go", "package x\nvar x = "+code, 0)
		require.NoError(t, err)
		assert.Len(t, quantities(fset, f, false), seen, code)
	}
}

// usual are the places where a Style begins; all others are handed theirs.
var usual = map[string]string{
	"ui/page/text.go":                    "the window's",
	"ui/units.go":                        "what the window's is chosen among",
	"cmd/ripplecalc/units.go":            "what a command is told in",
	"internal/show/report/evaluation.go": "the command line's",
	"internal/check/astray/astray.go":    "those in which tests look",
	"internal/desk/cutting/cutter.go":    "an error's text, worded again where it is shown",
	"internal/desk/typed/number.go":      "what is typed into a field, in the field's own unit",
}

func TestNobodyMakesAStyleOfTheirOwn(t *testing.T) {
	made := regexp.MustCompile(`say\.(Style\{|Usual\b)|var \w+ say\.Style`)
	for _, root := range []string{"internal", "ui", "cmd"} {
		err := filepath.WalkDir(filepath.Join(top, root), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			name, err := filepath.Rel(top, path)
			require.NoError(t, err)
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			if usual[filepath.ToSlash(name)] == "" {
				assert.Empty(t, made.FindAllString(string(text), -1), "%s: take the Style of who shows it", name)
			}
			return nil
		})
		require.NoError(t, err)
	}
}
