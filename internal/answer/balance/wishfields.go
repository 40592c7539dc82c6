package balance

import (
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/matter/phase"
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
	names [2]words
	adds  []string
	whole struct {
		on     bool
		weight maybe
	}
	packs, none weighed
	keep        []string
	ranges      []string
	swaps       bool
	serving     bool
}

// words are a wish in words.
type words struct {
	from, to, is string
	weight, at   maybe
}

// weighed is a list with a weight.
type weighed struct {
	of     []string
	weight maybe
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
		end("from", q.About+endFrom, func(b *band) *maybe { return &b.from })
		end("to", q.About+endTo, func(b *band) *maybe { return &b.to })
		end("is", q.About+endIs, func(b *band) *maybe { return &b.is })
		f = append(f, weightField(q.Key+".weight", beside, func(w *wishes) *maybe { return &w.band(i).weight }))
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
			weightField(of+".name.weight", beside, func(w *wishes) *maybe { return &w.names[i].weight }))
	}
	return append(f,
		wishField{Path: "foam.keeps_ice.is", About: "it has ice in the kitchen's freezer", Of: func(w *wishes) any { return &w.keeps.on }},
		wishField{Path: "foam.keeps_ice.at_c", About: "in a freezer as cold as that instead", Unit: "°C", Min: -40, Max: 0, Of: func(w *wishes) any { return &w.keeps.at }},
		weightField("foam.keeps_ice.weight", beside, func(w *wishes) *maybe { return &w.keeps.weight }),
		wishField{Path: "eggs.whole.is", About: "eggs, yolks and whites are whole in the batch as made", Of: func(w *wishes) any { return &w.whole.on }},
		weightField("eggs.whole.weight", held, func(w *wishes) *maybe { return &w.whole.weight }),
		wishField{Path: "packs.of", About: "ingredients of which whole packs are used up, each with the g of a pack", Of: func(w *wishes) any { return &w.packs.of }},
		weightField("packs.weight", held, func(w *wishes) *maybe { return &w.packs.weight }),
		wishField{Path: "no_cautions.of", About: "codes of the cautions that must not be; all if left out", Of: func(w *wishes) any { return &w.none.of }},
		weightField("no_cautions.weight", beside, func(w *wishes) *maybe { return &w.none.weight }),
		wishField{Path: "levers.keep", About: "what must not move: ids of ingredients, and air, ratio, syrup, fill", Of: func(w *wishes) any { return &w.keep }},
		wishField{Path: "levers.between", About: "grams between which an ingredient may go, as milk_whole 300 to 500", Of: func(w *wishes) any { return &w.ranges }},
		wishField{Path: "levers.swaps", About: "whether dextrose and glucose syrup may come in and, where these do not do, invert syrup, fructose, trehalose and lactose-free milk; they may if left out", Of: func(w *wishes) any { return &w.swaps }},
		wishField{Path: "levers.add", About: "what else may come in: ids of ingredients, sugars into the syrup too", Of: func(w *wishes) any { return &w.adds }},
		wishField{Path: "levers.serving", About: "whether the serving temperature may move", Of: func(w *wishes) any { return &w.serving }},
	)
}()

// What a weight counts beside, and what holds without one.
const (
	beside = "beside other wishes, 1 if left out"
	held   = "beside other wishes; left out, it holds whatever it costs"
)

func weightField(path, about string, of func(w *wishes) *maybe) wishField {
	return wishField{Path: path, About: about, Min: 0.01, Max: 100, Of: func(w *wishes) any { return of(w) }}
}

// brief are the keys that may be said without a section, and the key of the section that
// they then are.
var brief = map[string]string{
	"custard.texture": "is", "foam.texture": "is", "custard.name": "is", "tub.name": "is", "foam.keeps_ice": "is", "eggs.whole": "is",
	"packs": "of", "no_cautions": "of",
}

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
		weightField(of+".texture.weight", beside, func(w *wishes) *maybe { return &at(w).weight }),
		{Path: of + ".texture.at_c", About: "at which temperature; the design's own if left out", Unit: "°C", Min: -40, Max: 0, Of: func(w *wishes) any { return &at(w).at }},
	}
}

func (w *wishes) band(i int) *band {
	if w.bands == nil {
		w.bands = make([]band, len(Quantities))
	}
	return &w.bands[i]
}

// WishKey is a key of a file of wishes, for help.
type WishKey struct {
	Path           string
	About, Allowed *flaw.Remark // what it is; the values that it takes, nil where that is all
}

// How a band's ends are told, in a schema and, by told, in help.
const (
	endFrom = ", at least"
	endTo   = ", at most"
	endIs   = ", exactly"
)

func told(about string) *flaw.Remark {
	if of, ok := strings.CutSuffix(about, endFrom); ok {
		return flaw.Say("%s, at least", flaw.Word(of))
	}
	if of, ok := strings.CutSuffix(about, endTo); ok {
		return flaw.Say("%s, at most", flaw.Word(of))
	}
	if of, ok := strings.CutSuffix(about, endIs); ok {
		return flaw.Say("%s, exactly", flaw.Word(of))
	}
	return flaw.Say(flaw.Message(about))
}

// WishKeys returns the keys in the order of the file.
func WishKeys() []WishKey {
	keys := make([]WishKey, len(wishFields))
	for i, f := range wishFields {
		keys[i] = WishKey{f.Path, told(f.About), f.Allowed()}
	}
	return keys
}
