package designfile

import (
	"bytes"
	"sync"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/design"
)

// skeleton is the text from which a new file is made: the keys that are
// written even when they have their default.
const skeleton = `ripplewright: 1
name: Untitled
notes: ""
serving: {temperature_c: -13}
tubs: {count: 4, volume_ml: 500, fill_percent: 96}
blend: {foam_volume_percent: 40, strokes: 6}
batch: {basis: tubs}
dense:
  lines: []
  stove_loss_percent: 6
  overrun_percent: 20
foam:
  lines: []
  syrup:
    cook_temperature_c: 118
    lines: []
  overrun_percent: 300
`

// blank is the file that skeleton makes.
var blank = sync.OnceValue(func() *File {
	f, err := Decode("new design", []byte(skeleton))
	if err != nil {
		panic("designfile: " + err.Error())
	}
	return f
})

// Encode returns d as bytes that Decode reads back as an equal design, in the
// form of the file f: an unchanged design gives the very bytes that were
// read; otherwise comments, order and style of what remains are kept. Keys
// are added only for values other than the default. A comment that belongs to
// a removed line goes with it.
//
// If d does not pass design.Validate, the error is an *Error naming each
// problem, and there are no bytes.
func (f *File) Encode(d design.Design) ([]byte, error) {
	next, err := f.encode(f.Name, d)
	if err != nil {
		return nil, err
	}
	return next.raw, nil
}

func (f *File) encode(name string, d design.Design) (*File, error) {
	if problems := design.Validate(d); len(problems) > 0 {
		e := &Error{Name: name}
		for _, p := range problems {
			e.Problems = append(e.Problems, Problem{Kind: Invalid, Path: p.Path, Err: p.Err})
		}
		return nil, e
	}
	if f.raw == nil {
		f = blank()
	}
	if d.Equal(f.Design) {
		g := *f
		g.Name = name
		return &g, nil
	}
	// Each result is read back, so that no quirk of the YAML package can lose a value.
	if got, err := f.readBack(name, d, f.splice); err == nil {
		return got, nil
	}
	var best *File
	var last error
	least := 0
	for _, way := range [...]func(design.Design) ([]byte, error){
		f.rewriteWithGaps, f.rewrite, f.rewriteInQuotes, blank().rewrite,
	} {
		got, err := f.readBack(name, d, way)
		if err != nil {
			last = err
			continue
		}
		lost := f.commentsLost(got)
		if best == nil || lost < least {
			best, least = got, lost
		}
		if lost == 0 {
			break
		}
	}
	if best == nil {
		return nil, flaw.New("writing the design %s: %v", name, last)
	}
	return best, nil
}

// readBack writes d in that way, and reads it.
func (f *File) readBack(name string, d design.Design, way func(design.Design) ([]byte, error)) (*File, error) {
	data, err := way(d)
	if err != nil {
		return nil, err
	}
	got, err := Decode(name, data)
	if err == nil && !got.Design.Equal(d) && !equalButForOwn(got.Design, d) {
		err = flaw.New("it would read back differently")
	}
	return got, err
}

// equalButForOwn reports whether the designs differ at most in how their own
// ingredients are filled in, which is for package ingredient to keep.
func equalButForOwn(a, b design.Design) bool {
	if len(a.Own) != len(b.Own) {
		return false
	}
	for i := range a.Own {
		if a.Own[i].ID != b.Own[i].ID {
			return false
		}
	}
	a.Own = b.Own
	return a.Equal(b)
}

// splice changes values, keys and lines within the bytes, so that blank lines
// and alignment stay too. It gives up on any other change.
func (f *File) splice(d design.Design) ([]byte, error) {
	n, _ := parse(f.raw)
	p := patcher{from: &f.Design, to: &d, in: newInPlace(f.raw, n)}
	if p.document(n); p.rebuilt {
		return nil, errNotInPlace
	}
	return p.in.changed(p.changes)
}

// rewrite patches the tree and writes the whole anew. Blank lines and
// alignment are lost.
func (f *File) rewrite(d design.Design) ([]byte, error) {
	data, err := f.rewriteText(yamltext.Unix(f.raw), d, false)
	return yamltext.LikeIn(f.raw, data), err
}

// rewriteInQuotes does as rewrite, with quotes around text in blocks, of which
// the YAML package writes some (with a first line that is empty) so that it
// cannot read them.
func (f *File) rewriteInQuotes(d design.Design) ([]byte, error) {
	data, err := f.rewriteText(yamltext.Unix(f.raw), d, true)
	return yamltext.LikeIn(f.raw, data), err
}

// rewriteWithGaps does as rewrite, but carries the blank lines through as
// comments.
func (f *File) rewriteWithGaps(d design.Design) ([]byte, error) {
	text := yamltext.Unix(f.raw)
	n, _ := parse(text)
	if n == nil {
		return nil, errNotInPlace
	}
	marked, ok := markGaps(text, n)
	if !ok {
		return nil, flaw.New("the file has no blank lines to carry through")
	}
	data, err := f.rewriteText(marked, d, false)
	return yamltext.LikeIn(f.raw, unmarkGaps(data)), err
}

func (f *File) rewriteText(text []byte, d design.Design, quote bool) ([]byte, error) {
	doc, err := yamltext.Document(text)
	if err != nil {
		return nil, err
	}
	p := patcher{from: &f.Design, to: &d}
	if p.document(doc.Content[0]); p.err != nil {
		return nil, p.err
	}
	if quote {
		each(doc, func(n *yaml.Node) {
			if n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 {
				n.Style = yaml.DoubleQuotedStyle
			}
		})
	}
	var b bytes.Buffer
	e := yaml.NewEncoder(&b)
	e.SetIndent(2)
	if err := e.Encode(doc); err != nil {
		return nil, err
	}
	if err := e.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
