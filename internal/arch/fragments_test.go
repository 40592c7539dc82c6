package arch

import (
	"go/ast"
	"go/constant"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// loose are the messages that may be joined with other texts though they are no
// sentence, and why.
var loose = map[string]string{
	"between":              "the name of a table's row, behind the blanks that put it under the one above",
	"eats as":              "likewise",
	"usage: ripplecalc %s": "a line of its own at the head of a help",
	"ripplecalc computes designs of two-phase, rippled frozen desserts.": "a sentence that begins with the program's name",
}

// counting is where a number meets the noun after it, for everybody.
const counting = "internal/show/say/list.go"

// ends are a blank or a mark at an end of a message, by which it shows that it is a piece;
// two blanks are a row in columns.
var ends = regexp.MustCompile(`^ [^ ]|^[,;:.)]|[^ ] $|[,;(]$`)

// wholeText reports whether a message is one sentence or several, and may stand before
// or after others.
func wholeText(m string) bool {
	m, _, _ = strings.Cut(m, "¦")
	first := strings.TrimLeft(m, "(“✓✗? ")
	last := strings.TrimRight(m, ")”")
	if first == "" || last == "" || ends.MatchString(m) {
		return false
	}
	r := []rune(first)[0]
	return (unicode.IsUpper(r) || unicode.IsDigit(r) || r == '%') && strings.ContainsAny(last[len(last)-1:], ".?!:")
}

// operands are the texts that a chain of + joins.
func operands(e ast.Expr) []ast.Expr {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return operands(e.X)
	case *ast.BinaryExpr:
		if e.Op == token.ADD {
			return append(operands(e.X), operands(e.Y)...)
		}
	}
	return []ast.Expr{e}
}

// told is the message of a catalogue that an expression tells, as T("…") or
// Greeting.String(), false where it tells none or one that is chosen at run time.
func told(info *types.Info, e ast.Expr) (string, bool) {
	c, ok := e.(*ast.CallExpr)
	if !ok {
		return "", false
	}
	of := func(e ast.Expr) (string, bool) {
		if tv := info.Types[e]; tv.Value != nil && tv.Value.Kind() == constant.String {
			return constant.StringVal(tv.Value), true
		}
		if l, ok := e.(*ast.BasicLit); ok && l.Kind == token.STRING {
			text, err := strconv.Unquote(l.Value)
			return text, err == nil
		}
		return "", false
	}
	switch called(c) {
	case "T":
		if len(c.Args) > 0 {
			return of(c.Args[0])
		}
	case "Plural":
		if len(c.Args) == 3 {
			return of(c.Args[1])
		}
	case "String":
		if s, ok := c.Fun.(*ast.SelectorExpr); ok && len(c.Args) == 0 {
			if tv := info.Types[s.X]; tv.Value != nil && isMessage(tv.Type) {
				return of(s.X)
			}
		}
	}
	return "", false
}

// pieces are where files join pieces of sentences with +.
func pieces(fset *token.FileSet, info *types.Info, files []*ast.File) (found []string) {
	look := func(at token.Pos, all []ast.Expr) {
		for _, e := range all {
			if m, ok := told(info, e); ok && !wholeText(m) && loose[m] == "" {
				found = append(found, fset.Position(at).String()+" joins "+strconv.Quote(m))
			}
		}
	}
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BinaryExpr:
				if all := operands(n); len(all) > 1 {
					look(n.Pos(), all)
					for _, e := range all { // within the operands other chains may stand
						ast.Inspect(e, func(m ast.Node) bool {
							if b, ok := m.(*ast.BinaryExpr); ok {
								if all := operands(b); len(all) > 1 {
									look(b.Pos(), all)
									return false
								}
							}
							return true
						})
					}
					return false
				}
			case *ast.AssignStmt:
				if all := operands(n.Rhs[0]); n.Tok == token.ADD_ASSIGN && len(all) == 1 {
					look(n.Pos(), all)
				}
			}
			return true
		})
	}
	return found
}

// A sentence is one message, which a language may turn round: none is made of pieces
// that English alone joins so.
func TestNoSentenceIsJoinedFromPieces(t *testing.T) {
	if testing.Short() {
		t.Skip("one goroutine reads the sources: nothing for the race detector")
	}
	r := newReader()
	r.tell = func(fset *token.FileSet, info *types.Info, files []*ast.File) {
		for _, f := range pieces(fset, info, files) {
			if !strings.Contains(filepath.ToSlash(f), counting) {
				assert.Fail(t, "one template says it whole", f)
			}
		}
	}
	for dir := range everything(t, false) {
		if strings.HasPrefix(dir, "internal/") || strings.HasPrefix(dir, "ui") || dir == "cmd/ripplecalc" {
			r.read(t, dir)
		}
	}
	for m, where := range messages(t) {
		if shown, _, _ := strings.Cut(m, "¦"); !signsAlone(m) {
			assert.False(t, ends.MatchString(shown), "%s: %q is a piece of a sentence", where, m)
		}
	}
}

func TestTheTestOfPiecesSeesThem(t *testing.T) {
	const head = `package x
type Message string
func (m Message) String() string { return string(m) }
func T(m Message, args ...any) string { return "" }
func Plural(n float64, one, many Message) string { return "" }
const Piece, Whole Message = "return to", "It is kept."
var a, n = "", 2.0
`
	for code, want := range map[string]int{
		`var x = a + T("of syrup")`:                                       1,
		`var x = T("keep it, ") + a`:                                      1,
		`func f() { a += " " + T("with %s", a) }`:                         1,
		`var x = a + " " + Plural(n, "yolk", "yolks")`:                    1,
		`var x = T("Weigh it.") + T("It is %s", a+" "+T("cold"))`:         2,
		`var x = T("Weigh it.") + " " + T("(It is %s.)", a)`:              0,
		`func f() { a += " " + T("%s is left over.", a) }`:                0,
		`var x = T("%s with %s", a, T("cream"))`:                          0,
		`func f() { x := T("uses"); _ = x }`:                              0,
		`var x = []string{T("a"), T("b")}`:                                0,
		`var x = Whole.String() + " " + T("A thermometer showed %s.", a)`: 0,
	} {
		fset := token.NewFileSet()
		f, err := parser.ParseFile(fset, "x.go", head+code, 0)
		require.NoError(t, err)
		info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
		_, err = (&types.Config{Importer: importer.Default()}).Check("x", fset, []*ast.File{f}, info)
		require.NoError(t, err)
		assert.Len(t, pieces(fset, info, []*ast.File{f}), want, code)
	}
	for _, m := range []string{", each", " and more", "return to ", "keep ("} {
		assert.True(t, ends.MatchString(m), m)
	}
}
