package arch

import (
	"bytes"
	"encoding/json"
	"flag"
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"go/types"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/answer/validate"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/food/price"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
)

var update = flag.Bool("update", false, "write the English catalogue from the sources")

// worded are the packages whose texts are messages.
var worded = []string{"internal/show/tongue", "internal/show/say", "internal/show/figure", "internal/desk/benchview", "internal/desk/coldview",
	"internal/desk/labelview", "internal/desk/larder", "internal/desk/proofs", "internal/desk/rippleview", "internal/desk/stove", "internal/desk/typed",
	"internal/desk/dayplan", "internal/show/card", "internal/desk/notebook", "ui"}

// A reader finds the messages of packages by their types.
type reader struct {
	fset *token.FileSet
	done map[string]*types.Package
	at   map[string]string // of a message, a place that says it
	in   [][2]token.Pos    // where messages stand
	// tell is asked of each package that is read, if it is set.
	tell func(*token.FileSet, *types.Info, []*ast.File)
}

func newReader() *reader {
	return &reader{fset: token.NewFileSet(), done: map[string]*types.Package{}, at: map[string]string{}}
}

// known reports whether a literal is a message, or a part of one.
func (r *reader) known(n ast.Node) bool {
	return slices.ContainsFunc(r.in, func(at [2]token.Pos) bool { return at[0] <= n.Pos() && n.End() <= at[1] })
}

// Import is the declarations of a package of ours, and nothing of any other: what a
// body says of those is unknown, and is passed over.
func (r *reader) Import(path string) (*types.Package, error) {
	if p, ok := r.done[path]; ok {
		return p, nil
	}
	p := types.NewPackage(path, filepath.Base(path))
	p.MarkComplete()
	r.done[path] = p
	if dir, ok := ours(path); ok {
		files, err := r.parse(dir)
		if err != nil {
			return nil, err
		}
		conf := types.Config{Importer: r, IgnoreFuncBodies: true, Error: func(error) {}}
		r.done[path], _ = conf.Check(path, r.fset, files, nil)
	}
	return r.done[path], nil
}

// parse reads the files of a package, but for its tests.
func (r *reader) parse(dir string) (files []*ast.File, err error) {
	names, err := filepath.Glob(filepath.Join(top, dir, "*.go"))
	if err != nil {
		return nil, err
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(r.fset, name, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		files = append(files, f)
	}
	return files, nil
}

// read collects the messages of a package.
func (r *reader) read(t *testing.T, dir string) []*ast.File {
	t.Helper()
	files, err := r.parse(dir)
	require.NoError(t, err)
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	conf := types.Config{Importer: r, Error: func(error) {}}
	_, _ = conf.Check(module+"/"+dir, r.fset, files, info) // what is unknown is an error, and is passed over
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool { return r.message(info, n) })
	}
	if r.tell != nil {
		r.tell(r.fset, info, files)
	}
	return files
}

// message notes a message, and reports whether to look within n.
func (r *reader) message(info *types.Info, n ast.Node) bool {
	switch n := n.(type) {
	case *ast.CallExpr:
		from, to := 0, 0
		switch name := called(n); name {
		case "T":
			to = 1
		case "Count", "Plural", "Many":
			from, to = 1, 3
		}
		for i := from; i < to && i < len(n.Args); i++ {
			if l, ok := n.Args[i].(*ast.BasicLit); ok && l.Kind == token.STRING {
				text, _ := strconv.Unquote(l.Value)
				r.add(text, l)
			}
		}
	case ast.Expr:
		if tv := info.Types[n]; tv.Value != nil && tv.Value.Kind() == constant.String && isMessage(tv.Type) {
			r.add(constant.StringVal(tv.Value), n)
			return false
		}
	}
	return true
}

// isMessage reports whether a constant of that type is told from the catalogue.
func isMessage(t types.Type) bool {
	for _, of := range []string{"show/tongue.Message", "form/flaw.Message", "form/flaw.Word"} {
		if strings.HasSuffix(t.String(), of) {
			return true
		}
	}
	return false
}

func (r *reader) add(text string, n ast.Node) {
	r.in = append(r.in, [2]token.Pos{n.Pos(), n.End()})
	if strings.ContainsFunc(text, isLetter) && r.at[text] == "" {
		r.at[text] = r.fset.Position(n.Pos()).String()
	}
}

// signsAlone is a message of verbs and signs alone, which a language says otherwise only
// where it turns them round.
func signsAlone(m string) bool {
	return !strings.ContainsFunc(verbs.ReplaceAllString(m, ""), isLetter)
}

func isLetter(c rune) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c > 0xBF && c != '×' && c != '–' && c != '−' && c != '…' && c != '≥'
}

func called(c *ast.CallExpr) string {
	switch f := c.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		return f.Sel.Name
	}
	return ""
}

// inData are the words of the library and of tables below say, which are told by
// say.Of.
func inData(t *testing.T) []string {
	t.Helper()
	var all []string
	lib, err := ingredient.Open(assets.Library)
	require.NoError(t, err)
	for _, in := range lib.All() {
		all = append(all, in.Kitchen())
	}
	for _, w := range phase.Words {
		all = append(all, w.Name)
	}
	all = append(all, phase.NoWord.Name, phase.Dense.String(), phase.Foam.String(), "never", "never together", "not at all", "points", "eggs", "yolks", "whites",
		string(process.Mixer), string(process.Pan), string(process.Dish), string(process.Turning), string(process.Freezer), string(process.Fridge))
	for _, e := range append(egg.Sizes("US"), egg.Sizes("EU")...) {
		all = append(all, e.Name)
	}
	all = append(all, onpack.TubNames()...)
	for _, f := range tub.Foods() {
		all = append(all, f.Name)
	}
	for _, x := range phase.Explanation {
		all = append(all, string(x.Standing), x.Text)
	}
	for _, w := range ripple.Words() {
		all = append(all, w.Word.String())
	}
	for _, w := range ice.Words {
		all = append(all, w.Name)
	}
	for k := mix.Species(0); k < mix.NumSpecies; k++ {
		all = append(all, k.String())
	}
	for c := ingredient.Column(0); c < ingredient.NumColumns; c++ {
		all = append(all, c.Words())
	}
	for _, f := range cold.Fields() {
		all = append(all, f.About)
		for _, c := range f.Choices {
			if said := strings.ReplaceAll(c, "_", " "); say.KitchenChoice(c) == said { // no words of its own in say
				all = append(all, said)
			}
		}
	}
	for _, k := range []cold.MeasurementKind{cold.CoreAt, cold.ScoopedWell} {
		for _, f := range cold.MeasurementFields(k) {
			all = append(all, f.About)
		}
	}
	all = append(all, "a day", "days") // units that are words
	for _, e := range batch.Entries() {
		all = append(all, e.About, e.Format)
	}
	for _, f := range design.Fields() {
		if all = append(all, f.About); !strings.HasPrefix(f.Format, "#") {
			all = append(all, f.Format)
		}
	}
	words, err := onpack.OpenWords(assets.LabelWords)
	require.NoError(t, err)
	for _, lang := range words.Languages() {
		all = append(all, onpack.LanguageName(lang))
	}
	for _, f := range price.Fields() {
		all = append(all, f.About)
	}
	for _, k := range balance.WishKeys() {
		if all = append(all, string(k.About.Message)); k.Allowed != nil {
			all = append(all, string(k.Allowed.Message))
		}
	}
	for _, p := range cold.BuiltIn() {
		all = append(all, p.Name, p.About)
	}
	for _, f := range design.Fields() {
		if !strings.HasPrefix(f.Path, "label.") || strings.Count(f.Path, ".") == 1 { // else of each language, which say words
			all = append(all, say.SettingName(f.Path))
		}
	}
	for _, s := range []model.Severity{model.Note, model.Caution, model.Serious} {
		all = append(all, s.String())
	}
	all = append(all, ripple.Side.String(), ripple.Top.String(), ripple.WordsBasis)
	for _, q := range balance.Quantities {
		all = append(all, q.About)
	}
	for _, k := range []validate.Kind{validate.Regression, validate.Independent, validate.Identity, validate.Twice, validate.Elsewhere, validate.Remembered} {
		all = append(all, k.Words(), string(k))
	}
	for _, table := range []*figure.Table{&figure.Phases, &figure.Kinds, &figure.Batch, &figure.Nutrition, &figure.Servings, &figure.Syrup, &figure.Lines, &figure.PerGram, &figure.Cost, &figure.Eggs} {
		all = append(all, table.Columns...)
		for _, f := range table.Rows {
			all = append(all, f.Name, f.Short, f.Help, f.Inputs, f.Equation, f.Origin.Band)
		}
	}
	return slices.DeleteFunc(all, func(s string) bool { return !strings.ContainsFunc(s, isLetter) })
}

// messages are all, with where each is said.
func messages(t *testing.T) map[string]string {
	t.Helper()
	r := newReader()
	for _, dir := range worded {
		r.read(t, dir)
	}
	pages, err := filepath.Glob(filepath.Join(top, "ui", "*"))
	require.NoError(t, err)
	for dir := range everything(t, false) {
		if strings.HasPrefix(dir, "internal/") && !slices.Contains(worded, dir) || dir == "cmd/ripplecalc" {
			r.read(t, dir) // for what is wrong
		}
	}
	for _, page := range pages {
		if info, err := os.Stat(page); err == nil && info.IsDir() {
			r.read(t, "ui/"+filepath.Base(page))
		}
	}
	for _, text := range inData(t) {
		if r.at[text] == "" {
			r.at[text] = "data"
		}
	}
	return r.at
}

const english = "internal/show/tongue/catalogue/active.en.json"

// toldAtStart are the texts that package variables of files are made of, which stay in the
// language that is spoken before the maker has chosen one.
func toldAtStart(fset *token.FileSet, files []*ast.File) (at []string) {
	for _, f := range files {
		for _, d := range f.Decls {
			v, ok := d.(*ast.GenDecl)
			if !ok || v.Tok != token.VAR {
				continue
			}
			ast.Inspect(v, func(n ast.Node) bool {
				if _, later := n.(*ast.FuncLit); later {
					return false
				}
				call, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				name := ""
				switch f := call.Fun.(type) {
				case *ast.Ident:
					name = f.Name
				case *ast.SelectorExpr:
					name = f.Sel.Name
				}
				if name == "T" || name == "Of" || name == "String" && len(call.Args) == 0 {
					at = append(at, fset.Position(n.Pos()).String())
				}
				return true
			})
		}
	}
	return at
}

// A package variable holds messages, not their text: the language changes while the
// program runs.
func TestNoPackageVariableHoldsATextThatWasTold(t *testing.T) {
	r := newReader()
	for dir := range everything(t, false) {
		files, err := r.parse(dir)
		require.NoError(t, err)
		assert.Empty(t, toldAtStart(r.fset, files), dir)
	}
	f, err := parser.ParseFile(r.fset, "seen.go", `package seen
var a = Whole.String()
var b = []string{say.T("Page")}
var c = func() string { return say.T("Later") }`, 0)
	require.NoError(t, err)
	assert.Len(t, toldAtStart(r.fset, []*ast.File{f}), 2)
}

// The English catalogue has every message of the sources and no other: with -update it
// is written.
func TestTheEnglishCatalogueIsThatOfTheSources(t *testing.T) {
	if testing.Short() {
		t.Skip("one goroutine reads the sources: nothing for the race detector")
	}
	all := map[string]string{"@": "Generated from the sources: go test ./internal/arch -run Catalogue -update"}
	for m := range messages(t) {
		if shown, _, _ := strings.Cut(m, "¦"); !signsAlone(m) {
			all[m] = shown
		}
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	require.NoError(t, e.Encode(all))
	name := filepath.Join(top, english)
	if *update {
		require.NoError(t, os.WriteFile(name, b.Bytes(), 0o644))
	}
	has, err := os.ReadFile(name)
	require.NoError(t, err)
	assert.Equal(t, b.String(), string(has), "run go test ./internal/arch -run Catalogue -update")
}

var verbs = regexp.MustCompile(`%(\[\d+\])?[-+#0-9.]*[a-zA-Z%]`)

// verbsOf are the verbs of a message, each with the place of its argument.
func verbsOf(text string) []string {
	var out []string
	n := 0
	for _, v := range verbs.FindAllString(text, -1) {
		if strings.HasSuffix(v, "%") {
			continue
		}
		if !strings.Contains(v, "[") {
			n++
			v = "%[" + strconv.Itoa(n) + "]" + v[1:]
		}
		out = append(out, v)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// bracesOf are the quantities of a message that a maker's units take the place of, and the
// keys of files.
func bracesOf(text string) []string {
	all := braces.FindAllString(text, -1)
	slices.Sort(all)
	return all
}

var braces = regexp.MustCompile(`\{[^{}]*\}`)

// A message of another language is one of the sources, with its verbs, and leaves
// none out.
func TestOtherLanguagesSayWhatEnglishSays(t *testing.T) {
	if testing.Short() {
		t.Skip("one goroutine reads the sources: nothing for the race detector")
	}
	sources := messages(t)
	for _, l := range tongue.Languages {
		if l.Tag == tongue.English {
			continue
		}
		texts, err := tongue.Texts(l.Tag)
		require.NoError(t, err)
		for m, text := range texts {
			if _, ok := sources[string(m)]; !ok {
				assert.Fail(t, "no source says this message of "+l.Tag, string(m))
				continue
			}
			assert.Equal(t, verbsOf(string(m)), verbsOf(text), "%s: %s", l.Tag, m)
			assert.Equal(t, bracesOf(string(m)), bracesOf(text), "%s: %s", l.Tag, m)
			assert.Equal(t, edges(string(m)), edges(text), "%s: blanks at the ends of %q", l.Tag, m)
		}
		for m, where := range sources {
			if _, ok := texts[tongue.Message(m)]; !ok && !signsAlone(m) {
				assert.Fail(t, l.Tag+" lacks a message", "%s says %q", where, m)
			}
		}
	}
}

// edges are the blanks before and after a text.
func edges(text string) string {
	rest := strings.TrimLeft(text, " \n")
	return text[:len(text)-len(rest)] + "|" + rest[len(strings.TrimRight(rest, " \n")):]
}
