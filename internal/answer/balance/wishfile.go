package balance

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// wishes is a file of wishes as it stands.
type wishes struct {
	version float64
	bands   []band // by quantity
	texture [2]words
	keeps   struct {
		on         bool
		weight, at maybe
	}
	names   [2]words
	adds    []string
	whole   bool
	packs   []string
	none    []string
	keep    []string
	ranges  []string
	swaps   bool
	serving bool
}

// words are a wish in words.
type words struct {
	from, to, is string
	weight, at   maybe
}

type band struct{ from, to, is, weight, at maybe }

// maybe is a number that a file may leave out.
type maybe struct {
	n     float64
	known bool
}

func (m *maybe) Get() (float64, bool)      { return m.n, m.known }
func (m *maybe) Put(n float64, known bool) { *m = maybe{n, known} }

func (m maybe) or(v float64) float64 {
	if m.known {
		return m.n
	}
	return v
}

// wishesVersion is that of the file's form.
const wishesVersion = 1

type wishField = setting.Field[wishes]

// wishFields is the table of a file of wishes: reading, checks and help follow it.
var wishFields = func() []wishField {
	f := []wishField{{Path: "version", About: "form of the file", Min: 1, Max: wishesVersion, Of: func(w *wishes) any { return &w.version }}}
	for i, q := range Quantities {
		end := func(key, about string, of func(b *band) *maybe) {
			f = append(f, wishField{Path: q.Key + "." + key, About: about, Unit: q.Unit, Min: q.Min, Max: q.Max,
				Of: func(w *wishes) any { return of(w.band(i)) }})
		}
		end("from", q.About+", at least", func(b *band) *maybe { return &b.from })
		end("to", q.About+", at most", func(b *band) *maybe { return &b.to })
		end("is", q.About+", exactly", func(b *band) *maybe { return &b.is })
		f = append(f, wishField{Path: q.Key + ".weight", About: "beside other wishes, 1 if left out", Min: 0.01, Max: 100,
			Of: func(w *wishes) any { return &w.band(i).weight }})
		if q.AtC {
			f = append(f, wishField{Path: q.Key + ".at_c", About: "at which temperature; the design's own if left out", Unit: "°C", Min: -40, Max: 0,
				Of: func(w *wishes) any { return &w.band(i).at }})
		}
	}
	for i, of := range [...]string{"custard", "foam"} {
		f = append(f, textureFields(of, func(w *wishes) *words { return &w.texture[i] })...)
	}
	for i, of := range [...]string{"custard", "tub"} {
		f = append(f,
			wishField{Path: of + ".name.is", About: "a name of food whose limits the " + of + " keeps", Choices: names, Of: func(w *wishes) any { return &w.names[i].is }},
			wishField{Path: of + ".name.weight", About: "beside other wishes, 1 if left out", Min: 0.01, Max: 100, Of: func(w *wishes) any { return &w.names[i].weight }})
	}
	return append(f,
		wishField{Path: "foam.keeps_ice.is", About: "it has ice in the kitchen's freezer", Of: func(w *wishes) any { return &w.keeps.on }},
		wishField{Path: "foam.keeps_ice.at_c", About: "in a freezer as cold as that instead", Unit: "°C", Min: -40, Max: 0, Of: func(w *wishes) any { return &w.keeps.at }},
		wishField{Path: "foam.keeps_ice.weight", About: "beside other wishes, 1 if left out", Min: 0.01, Max: 100, Of: func(w *wishes) any { return &w.keeps.weight }},
		wishField{Path: "eggs.whole", About: "eggs, yolks and whites are whole in the batch as made", Of: func(w *wishes) any { return &w.whole }},
		wishField{Path: "packs", About: "ingredients of which whole packs are used up, each with the g of a pack", Of: func(w *wishes) any { return &w.packs }},
		wishField{Path: "no_cautions", About: "codes of the cautions that must not be; all if left out", Of: func(w *wishes) any { return &w.none }},
		wishField{Path: "levers.keep", About: "what must not move: ids of ingredients, and air, ratio, syrup, fill", Of: func(w *wishes) any { return &w.keep }},
		wishField{Path: "levers.between", About: "grams between which an ingredient may go, as milk_whole 300 to 500", Of: func(w *wishes) any { return &w.ranges }},
		wishField{Path: "levers.swaps", About: "whether dextrose and glucose syrup may come in; they may if left out", Of: func(w *wishes) any { return &w.swaps }},
		wishField{Path: "levers.add", About: "what else may come in: ids of ingredients, sugars into the syrup too", Of: func(w *wishes) any { return &w.adds }},
		wishField{Path: "levers.serving", About: "whether the serving temperature may move", Of: func(w *wishes) any { return &w.serving }},
	)
}()

// names are the names of food that can be wished for.
var names = func() (ids []string) {
	for _, s := range label.Standards {
		ids = append(ids, s.ID)
	}
	return ids
}()

// textureFields are the words for the hardness of a phase.
func textureFields(of string, at func(w *wishes) *words) []wishField {
	var list []string
	for _, w := range phase.Words {
		list = append(list, w.Name)
	}
	return []wishField{
		{Path: of + ".texture.is", About: "a word for its hardness", Choices: list, Of: func(w *wishes) any { return &at(w).is }},
		{Path: of + ".texture.from", About: "the softest word for it", Choices: list, Of: func(w *wishes) any { return &at(w).from }},
		{Path: of + ".texture.to", About: "the hardest", Choices: list, Of: func(w *wishes) any { return &at(w).to }},
		{Path: of + ".texture.weight", About: "beside other wishes, 1 if left out", Min: 0.01, Max: 100, Of: func(w *wishes) any { return &at(w).weight }},
		{Path: of + ".texture.at_c", About: "at which temperature; the design's own if left out", Unit: "°C", Min: -40, Max: 0, Of: func(w *wishes) any { return &at(w).at }},
	}
}

// spelledOut is n, at prefix, with "texture: soft" as "texture: {is: soft}", likewise
// what else may be said in a word. It notes in brief the paths that were not as long.
func spelledOut(n *yaml.Node, prefix string, brief map[string]bool) *yaml.Node {
	if n.Kind != yaml.MappingNode {
		return n
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		switch key, value := n.Content[i].Value, n.Content[i+1]; {
		case value.Kind == yaml.MappingNode:
			spelledOut(value, prefix+key+".", brief)
		case value.Kind == yaml.ScalarNode && (key == "texture" || key == "name" || key == "keeps_ice"):
			is := setting.WordNode("is")
			is.Line = value.Line
			n.Content[i+1] = &yaml.Node{Kind: yaml.MappingNode, Line: value.Line, Content: []*yaml.Node{is, value}}
			brief[prefix+key+".is"] = true
		}
	}
	return n
}

func (w *wishes) band(i int) *band {
	if w.bands == nil {
		w.bands = make([]band, len(Quantities))
	}
	return &w.bands[i]
}

// WishKey is a key of a file of wishes, for help.
type WishKey struct{ Path, About, Allowed string }

// WishKeys returns the keys in the order of the file.
func WishKeys() []WishKey {
	keys := make([]WishKey, len(wishFields))
	for i, f := range wishFields {
		keys[i] = WishKey{f.Path, f.About, f.Allowed()}
	}
	return keys
}

// FileError says what is wrong in a file of wishes.
type FileError struct {
	Name    string
	Line    int // 0: the file as a whole
	Path    string
	Message string
}

func (e *FileError) Error() string {
	text := e.Name
	if e.Line > 0 {
		text += ":" + strconv.Itoa(e.Line)
	}
	if e.Path != "" {
		text += ": " + echo.Plain(e.Path)
	}
	return text + ": " + e.Message
}

// DecodeAsk reads a file of wishes for the design d, whose ingredients stand in
// lib and whose kitchen is in. The error is a *FileError.
func DecodeAsk(name string, data []byte, d design.Design, lib *ingredient.Library, in cold.Profile) (Ask, error) {
	brief := map[string]bool{}
	fail := func(line int, path, message string) (Ask, error) {
		if brief[path] {
			path = strings.TrimSuffix(path, ".is")
		}
		return Ask{}, &FileError{name, line, path, message}
	}
	n, err := yamltext.Parse(data)
	var fault *yamltext.Fault
	switch {
	case errors.As(err, &fault):
		return fail(fault.Line, "", fault.Message)
	case n == nil:
		return fail(0, "", "the file holds no wishes")
	}
	w := wishes{version: wishesVersion, swaps: true}
	lines, err := setting.Read(wishFields, spelledOut(n, "", brief), &w)
	var tree *setting.TreeError
	if errors.As(err, &tree) {
		return fail(tree.Line, tree.Path, tree.Message)
	}
	for _, f := range wishFields {
		if line, given := lines[f.Path]; given {
			if wrong := f.Check(&w); wrong != "" {
				return fail(line, f.Path, wrong)
			}
		}
	}
	ask, path, wrong := w.ask(d, lib, in)
	if wrong != "" {
		return fail(lines[path], path, wrong)
	}
	return ask, nil
}

// ask turns what the file says into an Ask; wrong says what is at fault at path.
func (w *wishes) ask(d design.Design, lib *ingredient.Library, in cold.Profile) (ask Ask, path, wrong string) {
	for i, q := range Quantities {
		b := w.band(i)
		if !b.from.known && !b.to.known && !b.is.known {
			if b.weight.known || b.at.known {
				return ask, q.Key, "needs from, to or is"
			}
			continue
		}
		x := Wish{Of: q, Low: b.from.or(math.Inf(-1)), High: b.to.or(math.Inf(1)), Weight: b.weight.or(1), AtC: b.at.or(math.NaN())}
		if b.is.known {
			if b.from.known || b.to.known {
				return ask, q.Key + ".is", "stands alone, without from and to"
			}
			x.Low, x.High = b.is.n, b.is.n
		}
		if x.Low > x.High {
			return ask, q.Key + ".from", fmt.Sprintf("%g is more than to, %g", x.Low, x.High)
		}
		ask.Wishes = append(ask.Wishes, x)
	}
	if path, wrong = w.inWords(&ask, in.Freezer.AirC); wrong != "" {
		return ask, path, wrong
	}
	ask.Kitchen = &in
	ask.WholeEggs, ask.NoSwaps, ask.MayServeAt = w.whole, !w.swaps, w.serving
	if ask.Packs, wrong = packsOf(w.packs, lib, d); wrong != "" {
		return ask, "packs", wrong
	}
	for _, code := range w.none {
		if _, known := slotOf[code]; !known {
			return ask, "no_cautions", setting.OneOf(code, codes[:len(codes)-1])
		}
	}
	ask.Cautions = w.none
	for _, id := range w.adds {
		if _, ok := lib.With(d.Own).Find(id); !ok {
			return ask, "levers.add", lib.Unknown(id).Error()
		}
	}
	ask.Adds = w.adds
	if ask.Locks, wrong = locksOf(w.keep, lib, d); wrong != "" {
		return ask, "levers.keep", wrong
	}
	if ask.Ranges, wrong = rangesOf(w.ranges, lib, d); wrong != "" {
		return ask, "levers.between", wrong
	}
	return ask, "", ""
}

// inWords adds to ask what the file wishes in words, for a freezer at c °C.
func (w *wishes) inWords(ask *Ask, c float64) (path, wrong string) {
	for i, q := range [...]*Quantity{CustardHardness, FoamHardness} {
		t, path := &w.texture[i], [...]string{"custard", "foam"}[i]+".texture"
		switch {
		case t.is != "" && (t.from != "" || t.to != ""):
			return path + ".is", "stands alone, without from and to"
		case t.is != "":
			t.from, t.to = t.is, t.is
		case t.from == "" && t.to == "":
			if t.weight.known || t.at.known {
				return path, "needs from, to or is"
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
			return path + ".from", echo.Quoted(t.from) + " is harder than to, " + echo.Quoted(t.to)
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
	return "", ""
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

func packsOf(items []string, lib *ingredient.Library, d design.Design) (map[string]float64, string) {
	packs := map[string]float64{}
	for _, item := range items {
		id, rest, _ := strings.Cut(item, " ")
		if wrong := inDesign(id, lib, d); wrong != "" {
			return nil, wrong
		}
		g, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(rest, "g")), 64)
		if err != nil || !(g >= 1 && g <= design.MaxGrams) {
			return nil, echo.Quoted(item) + " is no ingredient with the g of its pack, as cream_heavy 250"
		}
		packs[id] = g
	}
	return packs, ""
}

func rangesOf(items []string, lib *ingredient.Library, d design.Design) ([]Range, string) {
	var out []Range
	for _, item := range items {
		r := Range{}
		if n, err := fmt.Sscanf(item, "%s %f to %f", &r.Ingredient, &r.Low, &r.High); n != 3 || err != nil || !(0 <= r.Low && r.Low <= r.High && r.High <= design.MaxGrams) {
			return nil, echo.Quoted(item) + " is no ingredient with the g between which it may go, as milk_whole 300 to 500"
		}
		if wrong := inDesign(r.Ingredient, lib, d); wrong != "" {
			return nil, wrong
		}
		out = append(out, r)
	}
	return out, ""
}

// inDesign says that no line of d is of id.
func inDesign(id string, lib *ingredient.Library, d design.Design) string {
	for _, p := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
		if slices.ContainsFunc(d.Lines(p), func(l design.Line) bool { return l.Ingredient == id }) {
			return ""
		}
	}
	if _, ok := lib.With(d.Own).Find(id); !ok {
		return lib.Unknown(id).Error()
	}
	return "the design has no line of " + echo.Quoted(id)
}

// groups are the words by which a file locks settings.
var groups = map[string][]string{
	"air":   {"dense.overrun_percent", "foam.overrun_percent"},
	"ratio": {"blend.foam_volume_percent"},
	"syrup": {"foam.syrup.cook_temperature_c"},
	"fill":  {"tubs.fill_percent"},
}

func locksOf(items []string, lib *ingredient.Library, d design.Design) (Locks, string) {
	l := Locks{Lines: map[LineAt]bool{}, Settings: map[string]bool{}}
	for _, item := range items {
		if paths, ok := groups[item]; ok {
			for _, p := range paths {
				l.Settings[p] = true
			}
			continue
		}
		if wrong := inDesign(item, lib, d); wrong != "" {
			return l, wrong
		}
		for _, p := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
			for i, line := range d.Lines(p) {
				if line.Ingredient == item {
					l.Lines[LineAt{p, i}] = true
				}
			}
		}
	}
	return l, ""
}
