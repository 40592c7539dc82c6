// Package model evaluates a design. Each stage takes values and returns one,
// in the order that their types show:
//
//	weigh  lines            → weighed  grams of species, as written
//	cook   weighed          → cooked   water and alcohol driven off, syrup beaten in
//	settle cooked           → settled  both phases at the serving temperature
//	fill   cooked, settled  → filled   what goes into the tubs and what is over
//
// and from these the label's amounts, eggs, cost, slopes, warnings and the
// verdict.
//
// Evaluate is pure and fast: its only inputs are the design and the library and
// prices the Model holds, so it may run on any goroutine, once a frame.
package model

import (
	"maps"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/work/design"
)

// Model evaluates designs against one library. It is immutable and safe for
// concurrent use.
type Model struct {
	lib      *ingredient.Library
	resolved map[*ingredient.Ingredient]*known
	prices   price.Book
	taught   Taught
}

// known is what does not depend on how much there is of an ingredient.
type known struct {
	ingredient.Resolved
	brings brought // by one gram
}

func know(in *ingredient.Ingredient) *known {
	k := known{Resolved: in.Resolve()}
	k.brings = broughtBy(in, &k.Resolved)
	return &k
}

// New returns a model over lib.
func New(lib *ingredient.Library) *Model {
	m := &Model{lib: lib, resolved: make(map[*ingredient.Ingredient]*known, len(lib.All()))}
	for _, in := range lib.All() {
		m.resolved[in] = know(in)
	}
	return m
}

// Holding returns a model over the library with own, which wins: it sketches a
// design of those many times without looking at them again.
func (m *Model) Holding(own []*ingredient.Ingredient) *Model {
	if len(own) == 0 {
		return m
	}
	h := &Model{lib: m.lib.With(own), resolved: maps.Clone(m.resolved), prices: m.prices, taught: m.taught}
	for _, in := range own {
		h.resolved[in] = know(in)
	}
	return h
}

// Library returns the model's ingredients.
func (m *Model) Library() *ingredient.Library { return m.lib }

func (m *Model) resolve(in *ingredient.Ingredient) *known {
	if k, ok := m.resolved[in]; ok {
		return k
	}
	return know(in)
}

// InputError lists what in a design cannot be evaluated.
type InputError struct{ Problems []design.Problem }

// Words are a line for each problem: its place and what is wrong there.
func (e *InputError) Words() error {
	all := make([]error, len(e.Problems))
	for i, p := range e.Problems {
		all[i] = p.Words()
	}
	return flaw.All(all...)
}

func (e *InputError) Error() string { return e.Words().Error() }

// Evaluate returns everything d comes to at its serving temperature. The error
// is an *InputError, naming every field at fault; anything else that limits a
// figure is a warning in the result.
func (m *Model) Evaluate(d design.Design) (Result, error) {
	return m.EvaluateAt(d, d.Serving.TemperatureC)
}

// The temperatures at which a phase can be computed, °C: the freezing model's.
const (
	ColdestC = -40
	WarmestC = 0
)

// EvaluateAt is Evaluate at another temperature than the design's own: c, in
// °C, from ColdestC to WarmestC, which is more than anybody serves at.
func (m *Model) EvaluateAt(d design.Design, c float64) (Result, error) {
	problems := design.Validate(d)
	if wrong := setting.Outside(c, ColdestC, WarmestC, "°C"); wrong != nil && c != d.Serving.TemperatureC { // Validate has looked at the design's own
		problems = append(problems, design.Problem{Path: "serving.temperature_c", Err: wrong})
	}
	if len(problems) > 0 {
		_, more := m.weigh(d)
		return Result{}, &InputError{append(problems, more...)}
	}
	d.Serving.TemperatureC = c
	return m.evaluate(d)
}

// evaluate is Evaluate of a valid design.
func (m *Model) evaluate(d design.Design) (Result, error) {
	w, problems := m.weigh(d)
	if len(problems) > 0 {
		return Result{}, &InputError{problems}
	}
	c := cook(d, &w, tables)
	s := settle(d, &c, m.taught)
	s.scoop()
	f := fill(d, &c, &s)
	r := Result{
		Dense:  s.dense.with(f.tub.Dense, w.tally[design.DensePart], c.dense.off),
		Foam:   s.foam.with(f.tub.Foam, w.tally[design.FoamPart].Plus(w.tally[design.SyrupPart], 1), c.syrup.off),
		Syrup:  c.syrup.result(f.tub.Foam.Factor, BoilingBand),
		Blend:  f.blend(&s),
		Lines:  portioned(d, &w, &c, &s, &f),
		Taught: m.taught,
	}
	k := &maker{m: m, d: d, w: w, was: f.tub}
	if m.taught.Recipe == ([NumMakings]Lesson{}) {
		r.untaught = &untaught{of: k}
	} else {
		r = k.asMade().bands(r)
	}
	r.Nutrition = nutrition(d, &r)
	r.Allergens = r.allergens()
	r.Eggs = countEggs(d, r.Lines)
	r.Cost = costOf(d, &r, m.prices)
	r.warnAll(m, d, &w, &c)
	r.Verdict = judged(d, &r)
	return r, nil
}
