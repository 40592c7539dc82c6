package written

import (
	"fmt"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/fold"
)

// German reads lines of recipes in German. Its grammar is small and strict: each word
// is an amount, a measure, a name, or one that changes neither; a line with any other
// word is a doubt. What it understands it has the English reader weigh, so that
// measures, eggs and doubts are the same.
type German struct {
	english *Reader
	sized   map[string]*Reader // of eggs of an EU size
	lib     *ingredient.Library
	names   map[string][]string // ids by folded German name
}

// NewGerman returns a reader of lines that name what lib has as called says it, or as
// the English reader knows it; eggs without a size are of the class eggs.
func NewGerman(lib *ingredient.Library, eggs Eggs, called func(*ingredient.Ingredient) string) *German {
	g := &German{english: New(lib, eggs), sized: map[string]*Reader{}, lib: lib, names: map[string][]string{}}
	for _, size := range []string{"S", "M", "L", "XL"} {
		if own := (Eggs{"EU", size}); own == eggs {
			g.sized[size] = g.english
		} else {
			g.sized[size] = New(lib, own)
		}
	}
	for _, in := range lib.All() {
		key := fold.Text(called(in))
		g.names[key] = append(g.names[key], in.ID)
	}
	for name, ids := range germanNames {
		key := fold.Text(name)
		if _, has := g.names[key]; !has {
			g.names[key] = ids
		}
	}
	return g
}

// Read returns the lines of text that say something.
func (g *German) Read(text string) []Said {
	var all []Said
	for _, raw := range strings.FieldsFunc(text, func(c rune) bool { return c == '\n' || c == '\r' || c == '\u2028' }) {
		if l, ok := g.Line(raw); ok {
			all = append(all, l)
		}
	}
	return all
}

var (
	germanHedge  = find(`(?i)^(?:ca\.?|circa|etwa|ungefähr|rund)\s*`)
	germanLoose  = find(`(?i)^(?:knapp|gut|reichlich|gehäuft|gestrichen|mindestens|höchstens|mehr als|weniger als)\w{0,2}\s+`)
	germanNumber = find(`(?i)^(\d+\s+\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)*|anderthalb|eineinhalb|(?:ein(?:e[nrs]?)?\s+)?halbe[nrs]?|eine[nrs]?|ein|zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn|zwölf)(?:\s+|$|(-|\pL))`)
	germanRange  = find(`(?i)^(?:-|bis|oder)\s*(?:\d+(?:[.,]\d+)?(?:/\d+)?)\s*`)
	germanUnit   = find(`^(\pL+)\.?(?:\s+|$)`)
	germanShare  = find(`(?i)(?:mit\s+)?(\d+(?:[.,]\d+)?)\s*%(?:\s*(?:fettgehalt|fett|kakao))?`)
	germanSize   = find(`(?:^|\s)(?:(?:Größe|größe|Gr\.?)\s*)?(XL|S|M|L)(?:\s|$)`)
	germanHead   = find(`(?i)^(?:für|zutaten|zubereitung|ergibt|portionen|creme|schaum|sirup)\b[^\d]*$`)
)

// Line reads one line; false for a heading or nothing.
func (g *German) Line(text string) (Said, bool) {
	l := Said{Text: strings.TrimSpace(text)}
	s := tidy(text)
	switch {
	case s == "" || strings.HasSuffix(s, ":") || germanHead.in(s):
		return l, false
	case len(text) > mostLine:
		l.Doubt = Unknown
		return l, true
	case minus.in(text) || dashed.in(text):
		l.Doubt = NoAmount
		return l, true
	}
	amount, measure, rest, doubt := germanAmount(s)
	name, notes, share, size := germanName(rest)
	l.Name, l.Note = name, strings.Join(notes, ", ")
	english, ids := g.meaning(name, share, measure.unit == "")
	if english == "" && len(ids) == 0 {
		return g.asEnglish(l, text, amount, measure, name, doubt)
	}
	if doubt == 0 {
		doubt = measure.doubt
	}
	for _, note := range notes {
		if doubt == 0 && !germanHarmless(note) {
			doubt = Other
		}
	}
	if len(ids) > 1 {
		l.Meanings = ids
		if doubt == 0 {
			doubt = Several
		}
	}
	if len(ids) > 0 {
		l.Ingredient, _ = g.lib.Find(ids[0])
	}
	if amount == "" && doubt == 0 {
		doubt = NoAmount
	}
	if doubt != 0 {
		if id, ok := germanCounted[english]; ok {
			l.Ingredient, _ = g.lib.Find(id)
		}
		l.Doubt = doubt
		return l, true
	}
	return g.weigh(l, amount, measure, english, size), true
}

// weigh has the English reader weigh what was understood.
func (g *German) weigh(l Said, amount string, m germanMeasure, english, size string) Said {
	r := g.english
	if sized, ok := g.sized[strings.ToUpper(size)]; ok {
		r = sized
	}
	called := []string{english}
	if l.Ingredient != nil {
		called = []string{l.Ingredient.Kitchen(), l.Ingredient.Name, strings.ReplaceAll(l.Ingredient.ID, "_", " ")}
	}
	said := Said{Doubt: Unknown}
	for _, unit := range []string{m.unit, m.spoon} {
		for _, name := range called {
			line := fmt.Sprintf("%s %s", amount, name)
			if unit != "" {
				line = fmt.Sprintf("%s %s %s", amount, unit, name)
			}
			x, ok := r.Line(line)
			if !ok || l.Ingredient != nil && (x.Ingredient == nil || x.Ingredient.ID != l.Ingredient.ID) {
				continue
			}
			if x.Taken() && unit != "" && x.Basis != Counted && m.times != 1 && unit == m.unit {
				x.Grams.Value *= m.times
				x.ML *= m.times
			}
			if said = x; x.Taken() {
				break
			}
		}
		if said.Taken() || m.spoon == "" {
			break
		}
	}
	said.Text, said.Name, said.Note = l.Text, l.Name, l.Note
	said.DesignSize = said.DesignSize && r == g.english
	return said
}

// asEnglish reads a line whose name is no German one: its amount in German, its name in
// English, or the whole line.
func (g *German) asEnglish(l Said, text, amount string, m germanMeasure, name string, doubt Doubt) (Said, bool) {
	if amount == "" || doubt != 0 || m.doubt != 0 || name == "" {
		x, ok := g.english.Line(text)
		if ok && !x.Taken() && x.Ingredient == nil {
			l.Doubt, l.Meanings = Unknown, x.Meanings
			if doubt != 0 {
				l.Doubt = doubt
			}
			return l, true
		}
		return x, ok
	}
	x := g.weigh(l, amount, m, name, "")
	if x.Ingredient == nil && x.Doubt == 0 {
		x.Doubt = Unknown
	}
	return x, true
}

// germanAmount reads the amount and the measure that s begins with.
func germanAmount(s string) (amount string, m germanMeasure, rest string, doubt Doubt) {
	s = germanHedge.swap(s, "")
	if at := germanLoose.of(s); at != "" {
		s, doubt = s[len(at):], Vague
	}
	found := germanNumber.parts(s)
	if found == nil {
		if w := germanUnit.parts(s); w != nil && germanMeasures[strings.ToLower(w[1])].doubt == Vague {
			return "1", germanMeasure{doubt: Vague}, s[len(w[0]):], Vague // "etwas Salz"
		}
		return "", germanMeasure{}, s, doubt
	}
	amount, rest = strings.ToLower(found[1]), strings.TrimLeft(s[len(found[0])-len(found[2]):], " ")
	if n, ok := germanNumbers[amount]; ok {
		amount = n
	} else if strings.Contains(amount, "halb") {
		amount = "1/2"
	}
	if at := germanRange.of(rest); at != "" {
		rest, doubt = rest[len(at):], Range
	}
	if at := germanLoose.of(rest); at != "" {
		rest, doubt = rest[len(at):], Vague
	}
	if w := germanUnit.parts(rest); w != nil {
		if known, ok := germanMeasures[strings.ToLower(w[1])]; ok {
			return amount, known, rest[len(w[0]):], doubt
		}
	}
	return amount, germanMeasure{}, rest, doubt
}

// germanName parts a name from its remarks, its percentage and its size.
func germanName(s string) (name string, notes []string, share, size string) {
	if m := germanShare.parts(s); m != nil {
		share = strings.ReplaceAll(m[1], ",", ".")
		s = strings.Replace(s, m[0], "", 1)
	}
	for _, m := range group().FindAllStringSubmatch(s, -1) {
		if note := strings.TrimSpace(m[1]); note != "" {
			notes = append(notes, note)
		}
	}
	s = group.swap(s, "")
	name, note, _ := strings.Cut(s, ",")
	if note = strings.TrimSpace(note); note != "" {
		notes = append(notes, note)
	}
	sized := func(text string) string {
		if m := germanSize.parts(text); m != nil {
			size = m[1]
			return strings.TrimSpace(strings.Replace(text, m[0], "", 1))
		}
		return text
	}
	name = sized(name)
	for i := range notes {
		notes[i] = sized(notes[i])
	}
	return strings.Join(strings.Fields(name), " "), notes, share, size
}

// meaning returns the ids that a name means, or the English name of what is counted or
// of a kind with a percentage; neither for an unknown one.
func (g *German) meaning(name, share string, counted bool) (english string, ids []string) {
	fields := strings.Fields(name)
	for i := 0; i <= len(fields) && i < 4; i++ {
		key := strings.ToLower(strings.Join(fields[i:], " "))
		if eggs, ok := germanEggs[key]; ok && counted {
			return eggs, nil
		}
		if kind, ok := germanKinds[key]; ok && share != "" {
			return kind + " " + share + "%", nil
		}
		if ids := g.names[fold.Text(key)]; key != "" && len(ids) > 0 && share == "" {
			return "", ids
		}
		if i == len(fields) || !germanPlain[strings.ToLower(fields[i])] {
			break
		}
	}
	return "", nil
}

// germanHarmless reports whether every word of a remark leaves the food what it is.
func germanHarmless(note string) bool {
	for _, w := range strings.FieldsFunc(strings.ToLower(note), func(c rune) bool { return c == ' ' || c == ',' || c == '.' || c == '-' }) {
		if !germanPlain[w] {
			return false
		}
	}
	return true
}
