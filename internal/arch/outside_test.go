package arch

import (
	"go/ast"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// outside are packages, or files of them, whose words are not in the catalogue, and why.
var outside = map[string]string{
	"internal/desk/notebook":            "errors",
	"internal/show/tongue":              "the languages' own names and the files of the catalogue",
	"internal/show/figure":              "its tables are told by say.Of, and looked up as data; sources stay as they were published",
	"internal/show/card/eupanel.go":     "the law's own words",
	"internal/show/card/panel.go":       "the law's own words",
	"internal/show/card/smallpanel.go":  "the law's own words",
	"internal/show/card/tabular.go":     "the law's own words",
	"internal/show/card/labelfile.go":   "the law's own words",
	"internal/show/card/recipe.go":      "the words of schema.org",
	"internal/show/card/lacking.go":     "the places of texts in a design",
	"internal/show/card/cutfile.go":     "errors",
	"internal/show/card/card.go":        "errors",
	"internal/show/card/sections.go":    "errors",
	"internal/desk/notebook/save.go":    "errors",
	"internal/show/say/gauge.go":        "signs of units",
	"internal/show/say/harmless.go":     "names of devices and of signs",
	"ui/theme":                          "names of fonts",
	"ui/spare":                          "the name of a measure of the runtime",
	"ui/kit/lines.go":                   "what a width is measured by",
	"internal/desk/larder/allergens.go": "words of the library, by which allergens are kept",
}

// plain are literals that nobody reads as words.
var plain = regexp.MustCompile(`^(#|<svg|%0|U\+)|^[a-z0-9_.:\[\]%-]+$|^[A-Z0-9]{1,3}$|^[^\pL]+$|^(%[sd]|[^\pL%])+$|^\.[A-Z]+$|^(Letter|Ripplewright|org\.ripplewright.*|fyne:.*|ripplewright(Step|Timer)|de,en|Saltmarsh Quay.*|, cut\.png|\x{2009})$|^\{[^{}]*\}$|^(kPa|mL|µm|°C|°F|g/mL|lb/gal|fl oz|kcal|g/100 g|kJ|cu ft|2006-01-02|15:04|L\*| kcal)`)

// unread are calls whose texts nobody reads as words of the program: errors, events,
// searches within texts.
var unread = regexp.MustCompile(`^(Errorf|New|panic|event|Event|told|HasPrefix|HasSuffix|Contains|ContainsAny|TrimPrefix|TrimSuffix|Cut|CutPrefix|CutSuffix|Replace|ReplaceAll|Split|NewReplacer|MustCompile|Format|Join|Getenv|with|span|Gauge|Row|L|LogError|Parse|AddTranslationsForLocale|Fprintf|Fprintln|WriteString|NewStaticResource|Println|Fail|Sprint)$`)

// words returns the literals of a file that a person would read and the catalogue does
// not have.
func words(r *reader, f *ast.File) []string {
	var found []string
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.Field:
			return n.Tag == nil
		case *ast.CaseClause:
			for _, s := range n.Body {
				ast.Inspect(s, func(m ast.Node) bool { return visit(r, m, &found) })
			}
			return false
		}
		return visit(r, n, &found)
	})
	return found
}

func visit(r *reader, n ast.Node, found *[]string) bool {
	switch n := n.(type) {
	case *ast.ImportSpec, *ast.CaseClause:
		if c, ok := n.(*ast.CaseClause); ok {
			for _, s := range c.Body {
				ast.Inspect(s, func(m ast.Node) bool { return visit(r, m, found) })
			}
		}
		return false
	case *ast.CallExpr:
		return !unread.MatchString(called(n))
	case *ast.IndexExpr:
		ast.Inspect(n.X, func(m ast.Node) bool { return visit(r, m, found) })
		return false
	case *ast.KeyValueExpr:
		ast.Inspect(n.Value, func(m ast.Node) bool { return visit(r, m, found) })
		return false
	case *ast.BinaryExpr:
		return n.Op == token.ADD || n.Op == token.LAND || n.Op == token.LOR
	case *ast.BasicLit:
		text, err := strconv.Unquote(n.Value)
		if err != nil || n.Kind != token.STRING || !strings.ContainsFunc(text, isLetter) || plain.MatchString(strings.TrimSpace(text)) || !strings.ContainsFunc(text, unicode.IsLetter) || r.known(n) {
			return true
		}
		*found = append(*found, r.fset.Position(n.Pos()).String()+" says "+n.Value)
	}
	return true
}

// No word stands outside the catalogue in what a person reads.
func TestNoWordStandsOutsideTheCatalogue(t *testing.T) {
	if testing.Short() {
		t.Skip("one goroutine reads the sources: nothing for the race detector")
	}
	r := newReader()
	dirs := append([]string{}, worded...)
	pages, err := filepath.Glob(filepath.Join(top, "ui", "*"))
	require.NoError(t, err)
	for _, page := range pages {
		if filepath.Ext(page) == "" && filepath.Base(page) != "pagetest" {
			dirs = append(dirs, "ui/"+filepath.Base(page))
		}
	}
	for _, dir := range dirs {
		files := r.read(t, dir)
		if outside[dir] != "" {
			continue
		}
		for _, f := range files {
			name, err := filepath.Rel(top, r.fset.Position(f.Pos()).Filename)
			require.NoError(t, err)
			if outside[filepath.ToSlash(name)] == "" {
				for _, where := range words(r, f) {
					assert.Fail(t, where, "let T say it, or name it among what stands outside")
				}
			}
		}
	}
}
