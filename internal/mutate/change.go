package main

import (
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"path/filepath"
	"strconv"
)

// A change puts new where old stands in one file.
type change struct {
	file     string
	line     int
	offset   int // bytes
	old, new string
	kind     string // one of kinds

	// Of a change that can sleep in a running program: the type of a constant,
	// "bool" of a comparison, and where the comparison starts and ends.
	typ        string
	start, end int
}

func (c change) String() string {
	return fmt.Sprintf("%s:%d  %s → %s", c.file, c.line, c.old, c.new)
}

// kinds names what can be changed.
var kinds = []string{"float", "compare", "arithmetic"}

// opposite gives what takes an operator's place.
var opposite = map[token.Token]struct {
	new  token.Token
	kind string
}{
	token.LSS: {token.GEQ, "compare"}, token.GEQ: {token.LSS, "compare"},
	token.GTR: {token.LEQ, "compare"}, token.LEQ: {token.GTR, "compare"},
	token.EQL: {token.NEQ, "compare"}, token.NEQ: {token.EQL, "compare"},
	token.ADD: {token.SUB, "arithmetic"}, token.SUB: {token.ADD, "arithmetic"},
	token.MUL: {token.QUO, "arithmetic"}, token.QUO: {token.MUL, "arithmetic"},
}

// changes returns every change of the package p, in the order of its source.
func changes(p pkg, exports map[string]string) ([]change, error) {
	fset := token.NewFileSet()
	var files []*ast.File
	for _, name := range p.GoFiles {
		f, err := parser.ParseFile(fset, filepath.Join(p.Dir, name), nil, 0)
		if err != nil {
			return nil, err
		}
		files = append(files, f)
	}
	info := types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	config := types.Config{Importer: importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) {
		return os.Open(exports[path])
	})}
	if _, err := config.Check(p.ImportPath, fset, files, &info); err != nil {
		return nil, err
	}
	var all []change
	put := func(at token.Pos, old, new, kind string) *change {
		where := fset.Position(at)
		all = append(all, change{file: where.Filename, line: where.Line, offset: where.Offset, old: old, new: new, kind: kind})
		return &all[len(all)-1]
	}
	visit := func(n ast.Node, fixed bool) {
		switch n := n.(type) {
		case *ast.BasicLit:
			if real(info.Types[n].Type) {
				c := put(n.Pos(), n.Value, other(n.Value, len(all)), "float")
				if b, ok := info.Types[n].Type.(*types.Basic); ok && !fixed && b.Kind() == types.Float64 {
					c.typ = b.Name()
				}
			}
		case *ast.BinaryExpr:
			o, ok := opposite[n.Op]
			if ok && (o.kind == "compare" || real(info.Types[n].Type)) {
				c := put(n.OpPos, n.Op.String(), o.new.String(), o.kind)
				if o.kind == "compare" && !fixed {
					c.typ, c.start, c.end = "bool", fset.Position(n.Pos()).Offset, fset.Position(n.End()).Offset
				}
			}
		}
	}
	for _, f := range files {
		var within []ast.Node
		ast.Inspect(f, func(n ast.Node) bool {
			if n == nil {
				within = within[:len(within)-1]
				return true
			}
			within = append(within, n)
			visit(n, inConst(within))
			return true
		})
	}
	return all, nil
}

// inConst reports whether the innermost of nodes is fixed when compiled: in a
// declaration of constants, or the length of an array.
func inConst(nodes []ast.Node) bool {
	for _, n := range nodes {
		switch n := n.(type) {
		case *ast.GenDecl:
			if n.Tok == token.CONST {
				return true
			}
		case *ast.ArrayType:
			return true
		}
	}
	return false
}

// real reports whether t is a floating-point type.
func real(t types.Type) bool {
	if t == nil {
		return false
	}
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsFloat != 0
}

// other returns a quarter more or, every second time, a fifth less than the
// constant; one in place of nought.
func other(literal string, turn int) string {
	v, err := strconv.ParseFloat(literal, 64)
	switch {
	case err != nil:
		return literal
	case v == 0:
		return "1"
	case turn%2 == 0:
		return strconv.FormatFloat(v*1.25, 'g', 8, 64)
	}
	return strconv.FormatFloat(v*0.8, 'g', 8, 64)
}
