// Package ingredient knows named materials: what they are made of, where each
// figure comes from, which allergens they carry.
//
// A figure that no source gives is unknown, which is not zero: Cell carries
// the difference, Tally keeps it through sums, and Resolve turns it into a
// band for the physics.
package ingredient

import (
	"math"
	"reflect"
	"slices"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/mix"
)

// Cell is one figure that may be unknown. The zero Cell is unknown.
type Cell struct {
	Value float64
	Known bool
}

// Known returns a known cell.
func Known(v float64) Cell { return Cell{Value: v, Known: true} }

// Or returns the value, or d where it is unknown.
func (c Cell) Or(d float64) float64 {
	if c.Known {
		return c.Value
	}
	return d
}

// Least returns the value of c, and 0 if it is unknown: what there is for
// certain. See Ingredient.Most.
func (c Cell) Least() float64 { return c.Or(0) }

// Ingredient is one material of the library. It is immutable once built.
type Ingredient struct {
	ID    string // lower case, digits and _, unique in a library
	Name  string // for people
	Group string

	KitchenName  string   // what a cook calls it, "whole milk"; "": Name
	CommonName   string   // as a US list of ingredients names it; "": Name
	CommonNameEU string   // likewise for the EU and UK; "": CommonName
	Compound     bool     // has ingredients of its own that the source does not list
	Parts        string   // those ingredients, as the pack lists them
	Standing     Standing // under the US frozen-dessert standards

	Source   string // dataset, or "own" for a maker's own
	SourceID string // record in it

	Cells [NumColumns]Cell // per 100 g

	// WithoutFibre tells that the carbohydrate, which is then known, is the
	// available one of an EU pack that keeps its fibre to itself: in all there
	// may be more.
	WithoutFibre bool

	Density     Cell   // g/mL
	DensityKind string // "liquid" (true) or "bulk" (as spooned)
	GramsPerCup Cell   // g per US cup of 236.588 mL; likewise the next three
	GramsPerTbsp,
	GramsPerTsp,
	GramsPerFlOz Cell
	Measures string // the source's own household measures, in words

	NitrogenFactor  Cell // g protein per g nitrogen behind the protein figure
	AtwaterProtein, // kcal/g, specific factors of the record
	AtwaterFat,
	AtwaterCarbohydrate Cell

	AllergensUS []string // "milk", "tree_nut:hazelnut"; empty: none of its own
	AllergensEU []string

	Derived string // "column: how; …" for each figure that is not the source's own
	Notes   string

	// What the freezing model must know beyond the columns.
	Polyol          mix.Species // which one the polyols column is; 0: not one in particular
	PureSalt        mix.Species // SodiumChloride or PotassiumChloride for the salts themselves, else 0
	Pure            mix.Species // the one substance that all but its water is, of those that no column names; 0: none
	HigherGPerMol   float64     // g/mol of the higher saccharides; 0: 774, a DE 42 syrup's
	HigherSweetness float64     // relative to sucrose = 1 of the higher saccharides

	Own  bool  // from the maker's own file or the design
	Pack *Pack // that the figures come from; nil: none
}

// Kitchen returns what a cook calls the ingredient: its kitchen name, else its
// full one.
func (in *Ingredient) Kitchen() string {
	if in.KitchenName != "" {
		return in.KitchenName
	}
	return in.Name
}

// Cell returns the figure in column c.
func (in *Ingredient) Cell(c Column) Cell { return in.Cells[c] }

// Unknown returns the columns whose figure is unknown.
func (in *Ingredient) Unknown() []Column {
	var out []Column
	for c := Column(0); c < NumColumns; c++ {
		if !in.Cells[c].Known {
			out = append(out, c)
		}
	}
	return out
}

// How says how the figure in column c was made if it is not the source's own,
// "" if it is: the entry of Derived that names it, or the one for all.
func (in *Ingredient) How(c Column) string {
	all, entry, name := "", "", ""
	for rest := in.Derived; rest != ""; { // once a frame for some rows, so no slices
		entry, rest, _ = strings.Cut(rest, "; ")
		names, how, _ := strings.Cut(entry, ": ")
		for how != "" && names != "" {
			switch name, names, _ = strings.Cut(names, ", "); name {
			case c.String():
				return how
			case "all":
				all = how
			}
		}
	}
	return all
}

// With returns in with the figure in column c entered by hand, as Derived then
// says.
func (in *Ingredient) With(c Column, cell Cell) *Ingredient {
	out := *in
	out.Cells[c] = cell
	out.WithoutFibre = in.WithoutFibre && out.Cells[Carbohydrate].Known
	var kept, byHand []string
	for _, entry := range strings.Split(in.Derived, "; ") {
		names, how, ok := strings.Cut(entry, ": ")
		if ok {
			left := slices.DeleteFunc(strings.Split(names, ", "), func(n string) bool { return n == c.String() })
			if how == byHandWords {
				byHand = left
				continue
			}
			names = strings.Join(left, ", ")
			entry = names + ": " + how
		}
		if names != "" {
			kept = append(kept, entry)
		}
	}
	if cell.Known {
		byHand = append(byHand, c.String())
	}
	if len(byHand) > 0 {
		kept = append(kept, strings.Join(byHand, ", ")+": "+byHandWords)
	}
	out.Derived = strings.Join(kept, "; ")
	return &out
}

const byHandWords = "entered by hand"

// Most returns the largest amount column c can have, by its parent figure:
// the value where it is known, +Inf where nothing bounds it. A mineral is no
// more than the ash, if the ash was analysed: one made up from other figures
// says nothing of what they leave out.
func (in *Ingredient) Most(c Column) float64 {
	if in.WithoutFibre && (c == Fibre || c == Carbohydrate) {
		// The fibre hides in what the pack does not name.
		fibre := in.Cells[Fibre].Or(max(0, 100-in.sum(Protein, Fat, Carbohydrate)))
		if c == Fibre {
			return fibre
		}
		return in.Cells[Carbohydrate].Or(0) + fibre
	}
	if in.Cells[c].Known {
		return in.Cells[c].Value
	}
	switch c {
	case SodiumMG, PotassiumMG, CalciumMG, IronMG, MagnesiumMG, PhosphorusMG:
		if in.Cells[Ash].Known && in.How(Ash) == "" {
			return in.Cells[Ash].Value * 1000
		}
		return math.Inf(1)
	}
	if p, ok := c.parent(); ok {
		if p == Carbohydrate && in.WithoutFibre {
			return in.Cells[p].Value // no fibre among them
		}
		return in.Most(p)
	}
	return math.Inf(1)
}

// Library is a set of ingredients by id. The zero Library is empty.
type Library struct {
	list []*Ingredient
	byID map[string]*Ingredient
}

// NewLibrary returns a library of list. A later ingredient with the id of an
// earlier one replaces it, so that a maker's own figures win.
func NewLibrary(list []*Ingredient) *Library {
	l := &Library{byID: make(map[string]*Ingredient, len(list))}
	for _, in := range list {
		if old, ok := l.byID[in.ID]; ok {
			for i := range l.list {
				if l.list[i] == old {
					l.list[i] = in
				}
			}
		} else {
			l.list = append(l.list, in)
		}
		l.byID[in.ID] = in
	}
	return l
}

// With returns a library that holds l's ingredients and list, list winning.
func (l *Library) With(list []*Ingredient) *Library {
	if len(list) == 0 {
		return l
	}
	all := append(append([]*Ingredient(nil), l.list...), list...)
	return NewLibrary(all)
}

// Find returns the ingredient with that id.
func (l *Library) Find(id string) (*Ingredient, bool) {
	in, ok := l.byID[id]
	return in, ok
}

// All returns the ingredients in file order. The caller must not change it.
func (l *Library) All() []*Ingredient { return l.list }

// UnknownError says that no ingredient has this id.
type UnknownError struct {
	ID      string
	Nearest string // the most similar known id, or ""
}

// Words are what is wrong.
func (e *UnknownError) Words() error {
	if e.Nearest != "" {
		return flaw.New("no ingredient is named %s; did you mean %q?", echo.Quoted(e.ID), e.Nearest)
	}
	return flaw.New("no ingredient is named %s", echo.Quoted(e.ID))
}

func (e *UnknownError) Error() string { return e.Words().Error() }

// Unknown returns the error for an id that l lacks, with the nearest id.
func (l *Library) Unknown(id string) *UnknownError {
	if len(id) > echo.Most { // no slip of the finger
		return &UnknownError{ID: id}
	}
	ids := make([]string, len(l.list))
	for i, in := range l.list {
		ids[i] = in.ID
	}
	// "dextrose" is no typo, it wants a kind of it; and of a short word, four
	// letters to change are another word.
	near := Nearest(id, ids, min(4, len(id)/2))
	if i := slices.IndexFunc(ids, func(s string) bool { return strings.HasPrefix(s, id+"_") }); near == "" && i >= 0 {
		near = ids[i]
	}
	return &UnknownError{ID: id, Nearest: near}
}

// Equal reports whether in and o are the same record.
func (in *Ingredient) Equal(o *Ingredient) bool {
	return reflect.DeepEqual(in, o)
}
