package balance

import (
	"errors"
	"math"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// FileError says what is wrong in a file of wishes.
type FileError struct {
	Name string
	Line int // 0: the file as a whole
	Path string
	Err  error
}

// Words are the place and what is wrong there.
func (e *FileError) Words() error {
	return flaw.InFile(e.Name, e.Line, flaw.At(echo.Plain(e.Path), e.Err))
}

func (e *FileError) Error() string { return e.Words().Error() }

func (e *FileError) Unwrap() error { return e.Err }

// spelledOut is n, at prefix, with "texture: soft" as "texture: {is: soft}", likewise
// what else may be said in brief. It notes in short the paths that were.
func spelledOut(n *yaml.Node, prefix string, short map[string]bool) *yaml.Node {
	if n.Kind != yaml.MappingNode {
		return n
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		switch key, value := n.Content[i].Value, n.Content[i+1]; {
		case value.Kind == yaml.MappingNode:
			spelledOut(value, prefix+key+".", short)
		case brief[prefix+key] != "":
			is := setting.WordNode(brief[prefix+key])
			is.Line = value.Line
			n.Content[i+1] = &yaml.Node{Kind: yaml.MappingNode, Line: value.Line, Content: []*yaml.Node{is, value}}
			short[prefix+key+"."+brief[prefix+key]] = true
		}
	}
	return n
}

// DecodeAsk reads a file of wishes for the design d, whose ingredients stand in
// lib and whose kitchen is in. The error is a *FileError.
func DecodeAsk(name string, data []byte, d design.Design, lib *ingredient.Library, in cold.Profile) (Ask, error) {
	short := map[string]bool{}
	fail := func(line int, path string, err error) (Ask, error) {
		if short[path] {
			path = path[:strings.LastIndexByte(path, '.')]
		}
		return Ask{}, &FileError{name, line, path, err}
	}
	n, err := yamltext.Parse(data)
	var fault *yamltext.Fault
	switch {
	case errors.As(err, &fault):
		return fail(fault.Line, "", fault.Err)
	case n == nil:
		return fail(0, "", flaw.New("the file holds no wishes"))
	}
	w := wishes{version: wishesVersion, swaps: true}
	lines, err := setting.Read(wishFields, spelledOut(n, "", short), &w)
	var tree *setting.TreeError
	if errors.As(err, &tree) {
		return fail(tree.Line, tree.Path, tree.Err)
	}
	for _, f := range wishFields {
		if line, given := lines[f.Path]; given {
			if wrong := f.Check(&w); wrong != nil {
				return fail(line, f.Path, wrong)
			}
		}
	}
	ask, path, wrong := w.ask(d, lib, in)
	if wrong != nil {
		return fail(lines[path], path, wrong)
	}
	return ask, nil
}

// ask turns what the file says into an Ask; wrong says what is at fault at path.
func (w *wishes) ask(d design.Design, lib *ingredient.Library, in cold.Profile) (ask Ask, path string, wrong error) {
	for i, q := range Quantities {
		b := w.band(i)
		if !b.from.known && !b.to.known && !b.is.known {
			if b.weight.known || b.at.known {
				return ask, q.Key, flaw.New("needs from, to or is")
			}
			continue
		}
		x := Wish{Of: q, Low: b.from.or(math.Inf(-1)), High: b.to.or(math.Inf(1)), Weight: b.weight.or(1), AtC: b.at.or(math.NaN())}
		if b.is.known {
			if b.from.known || b.to.known {
				return ask, q.Key + ".is", flaw.New("stands alone, without from and to")
			}
			x.Low, x.High = b.is.n, b.is.n
		}
		if x.Low > x.High {
			return ask, q.Key + ".from", flaw.New("%g is more than to, %g", x.Low, x.High)
		}
		ask.Wishes = append(ask.Wishes, x)
	}
	if path, wrong = w.inWords(&ask, in.Freezer.AirC); wrong != nil {
		return ask, path, wrong
	}
	ask.Kitchen = &in
	ask.WholeEggs, ask.NoSwaps, ask.MayServeAt = w.whole.on, !w.swaps, w.serving
	ask.EggsWeight, ask.PacksWeight, ask.CautionsWeight = w.whole.weight.or(0), w.packs.weight.or(0), w.none.weight.or(0)
	if ask.Packs, wrong = packsOf(w.packs.of, lib, d); wrong != nil {
		return ask, "packs.of", wrong
	}
	for _, code := range w.none.of {
		if _, known := slotOf[code]; !known {
			return ask, "no_cautions.of", setting.OneOf(code, CautionCodes())
		}
	}
	ask.Cautions = w.none.of
	for _, id := range w.adds {
		if _, ok := lib.With(d.Own).Find(id); !ok {
			return ask, "levers.add", lib.Unknown(id)
		}
	}
	ask.Adds = w.adds
	if ask.Locks, wrong = locksOf(w.keep, lib, d); wrong != nil {
		return ask, "levers.keep", wrong
	}
	if ask.Ranges, wrong = rangesOf(w.ranges, lib, d); wrong != nil {
		return ask, "levers.between", wrong
	}
	return ask, "", nil
}

// inWords adds to ask what the file wishes in words, for a freezer at c °C.
func (w *wishes) inWords(ask *Ask, c float64) (path string, wrong error) {
	for i, q := range [...]*Quantity{CustardHardness, FoamHardness} {
		t, path := &w.texture[i], [...]string{"custard", "foam"}[i]+".texture"
		switch {
		case t.is != "" && (t.from != "" || t.to != ""):
			return path + ".is", flaw.New("stands alone, without from and to")
		case t.is != "":
			t.from, t.to = t.is, t.is
		case t.from == "" && t.to == "":
			if t.weight.known || t.at.known {
				return path, flaw.New("needs from, to or is")
			}
			continue
		}
		x := Wish{Of: q, Low: q.Min, High: math.Inf(1), Weight: t.weight.or(1), AtC: t.at.or(math.NaN()), word: true}
		if t.from != "" {
			x.Low = Texture(q, t.from).Low
		}
		if t.to != "" {
			x.High = Texture(q, t.to).High
		}
		if x.Low > x.High {
			return path + ".from", flaw.New("%s is harder than to, %s", echo.Quoted(t.from), echo.Quoted(t.to))
		}
		ask.Wishes = append(ask.Wishes, x)
	}
	if w.keeps.on {
		x := KeepsIce(w.keeps.at.or(c))
		x.Weight = w.keeps.weight.or(1)
		ask.Wishes = append(ask.Wishes, x)
	}
	dense := phase.Dense
	for i, of := range [...]*phase.Role{&dense, nil} {
		if s, ok := label.StandardOf(w.names[i].is); ok {
			x := Named(s, of)
			x.Weight = w.names[i].weight.or(1)
			ask.Wishes = append(ask.Wishes, x)
		}
	}
	return "", nil
}

// Texture is the wish that the hardness q is called by that word.
func Texture(q *Quantity, word string) Wish {
	w := Wish{Of: q, Low: q.Min, High: math.Inf(1), Weight: 1, AtC: math.NaN(), word: true}
	for i, x := range phase.Words {
		if x.Name == word {
			w.High = x.BelowKPa
			if i > 0 {
				w.Low = phase.Words[i-1].BelowKPa
			}
		}
	}
	return w
}
