// Package entering reads lines as a maker types or pastes them on the bench: what
// a line says, what it may mean, and the design's line that comes of it. It guesses
// nothing: what is not said is a choice that a hand makes.
package entering

import (
	"math"
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/written"
	"ripplewright/internal/form/fold"
	"ripplewright/internal/work/design"
)

// A Choice is a line that a text may mean.
type Choice struct {
	Line design.Line // with 0 g where the text has no amount
	Of   *ingredient.Ingredient
}

// An Entry is what a text says.
type Entry struct {
	Said    written.Said
	Choices []Choice // best first; of a text that is taken the first is what it says
}

// Taken reports whether the text says one thing.
func (e *Entry) Taken() bool { return e.Said.Taken() && len(e.Choices) > 0 }

// Unweighed reports whether all that is open is the amount.
func (e *Entry) Unweighed() bool { return e.Said.Doubt == written.NoAmount && e.Said.Ingredient != nil }

// Reader reads for one library and one size of eggs.
type Reader struct {
	lib    *ingredient.Library
	eggs   design.EggSize
	reader interface {
		Line(text string) (written.Said, bool)
		Read(text string) []written.Said
	}
	language string
	keys     []string // folded names, in the library's order
}

// New returns a reader of what a design with these eggs may use, in English or, as
// "de", in German; called is what an ingredient is called in that language.
func New(lib *ingredient.Library, eggs design.EggSize, language string, called func(*ingredient.Ingredient) string) *Reader {
	size := written.Eggs{System: eggs.System, Size: eggs.Size}
	r := &Reader{lib: lib, eggs: eggs, language: language, reader: written.New(lib, size)}
	if language == "de" {
		r.reader = written.NewGerman(lib, size, called)
	}
	for _, in := range lib.All() {
		r.keys = append(r.keys, fold.Text(called(in)+"\n"+in.Kitchen()+"\n"+in.Name))
	}
	return r
}

// For reports whether the reader is for these.
func (r *Reader) For(lib *ingredient.Library, eggs design.EggSize, language string) bool {
	return r != nil && r.lib == lib && r.eggs == eggs && r.language == language
}

// MostChoices is how many a text is given.
const MostChoices = 5

// Line reads one line; false for a heading or nothing.
func (r *Reader) Line(text string) (Entry, bool) {
	said, ok := r.reader.Line(text)
	return r.entry(said), ok
}

// Text reads the lines of a pasted recipe.
func (r *Reader) Text(text string) []Entry {
	var all []Entry
	for _, said := range r.reader.Read(text) {
		all = append(all, r.entry(said))
	}
	return all
}

func (r *Reader) entry(said written.Said) Entry {
	e := Entry{Said: said}
	if said.Taken() && said.Ingredient != nil {
		e.add(Choice{lineOf(&said), said.Ingredient})
	}
	for _, id := range said.Meanings {
		r.offer(&e, id)
	}
	if said.Ingredient != nil && !said.Taken() {
		r.offer(&e, said.Ingredient.ID)
	}
	if said.Ingredient == nil {
		for _, id := range r.begun(said.Name) {
			r.offer(&e, id)
		}
	}
	return e
}

func (e *Entry) add(c Choice) {
	has := func(x Choice) bool { return x.Of == c.Of }
	if len(e.Choices) < MostChoices && !slices.ContainsFunc(e.Choices, has) {
		e.Choices = append(e.Choices, c)
	}
}

// offer adds what the text would say if its words meant the ingredient id: what
// amount it has then, and 0 g where that stays open.
func (r *Reader) offer(e *Entry, id string) {
	in, ok := r.lib.Find(id)
	if !ok {
		return
	}
	c := Choice{design.Line{Ingredient: id}, in}
	if name := e.Said.Name; name != "" {
		for _, as := range []string{in.Kitchen(), in.Name, strings.ReplaceAll(id, "_", " ")} {
			said, ok := r.reader.Line(strings.Replace(e.Said.Text, name, as, 1))
			if ok && said.Taken() && said.Ingredient != nil && said.Ingredient.ID == id {
				c.Line = lineOf(&said)
				break
			}
		}
	}
	e.add(c)
}

// lineOf is the line of a design that a line of text says: eggs of the design's
// own size stay counted.
func lineOf(l *written.Said) design.Line {
	if l.Basis == written.Counted && l.DesignSize {
		for _, p := range [...]design.EggPart{design.WholeEggs, design.Yolks, design.Whites} {
			if string(p) == l.CountOf && p.IngredientID() == l.Ingredient.ID {
				return design.Line{Ingredient: l.Ingredient.ID, Count: l.Count, CountOf: p}
			}
		}
	}
	return design.Line{Ingredient: l.Ingredient.ID, Grams: weighable(l)}
}

// weighable are a line's grams: as written, or as finely as a scale weighs what a
// measure was turned into.
func weighable(l *written.Said) float64 {
	g := l.Grams.Or(0)
	switch {
	case l.Basis == written.Weighed:
		return g
	case g < 10:
		return math.Round(100*g) / 100
	}
	return math.Round(10*g) / 10
}

// begun returns the ids of the ingredients whose names have a word that begins
// with each word typed, those that begin with the first one first.
func (r *Reader) begun(name string) []string {
	typed := strings.Fields(fold.Text(name))
	if len(typed) == 0 {
		return nil
	}
	var first, second []string
	for i, in := range r.lib.All() {
		begins := func(w string) bool {
			return strings.HasPrefix(r.keys[i], w) || strings.Contains(r.keys[i], " "+w) || strings.Contains(r.keys[i], "\n"+w)
		}
		switch {
		case slices.ContainsFunc(typed, func(w string) bool { return !begins(w) }):
		case strings.HasPrefix(r.keys[i], typed[0]):
			first = append(first, in.ID)
		default:
			second = append(second, in.ID)
		}
	}
	return append(first, second...)
}
