package larder

import (
	"errors"
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/show/say"
)

// A Form is one own ingredient as it is being typed. Nothing is kept before what
// it makes is put on the shelf.
type Form struct {
	Title string
	Old   string // id of the own record it replaces, "" for a new one

	Name, ID       string
	Group          string
	NameUS, NameEU string // on labels
	Compound       bool
	Parts          string
	Standing       ingredient.Standing
	Polyol         mix.Species // 0: not known which
	Ticks          Ticks
	WithFibre      bool // of a pack: its carbohydrate includes the fibre

	Per     *Entry   // nil: it is no pack's
	Pack    []*Entry // as ingredient.PackFigures
	Columns []*Entry // figures of the record that the pack does not cover
	Spoons  []*Entry

	from     ingredient.Ingredient // what it began with
	autoID   string                // the id last made; it follows the name as long as nobody typed another
	lastName string
}

// FromPack is the form of a new ingredient from the pack it is bought in.
func FromPack() *Form {
	return newForm(ingredient.Ingredient{Group: ingredient.OwnSource, Source: ingredient.OwnSource, Own: true,
		Compound: true, Pack: &ingredient.Pack{PerG: 100, AvailableCarbohydrate: true}}, "", say.T("New ingredient from a pack"))
}

// FormOf is the form of an own ingredient that is kept.
func FormOf(in *ingredient.Ingredient) *Form { return newForm(*in, in.ID, say.EditTitle(in)) }

// FormLike is the form of a new ingredient that begins as another is.
func FormLike(in *ingredient.Ingredient, s Shelves) *Form {
	copied := *in
	copied.Own = true
	if !in.Own {
		copied.Source, copied.SourceID = ingredient.OwnSource, ingredient.CopyOf+in.Source+" "+in.SourceID
	}
	copied.ID, copied.Name = s.FreeID(in.ID+"_mine"), say.T("%s, mine", in.Name)
	return newForm(copied, "", say.CopyTitle(in))
}

func newForm(in ingredient.Ingredient, old, title string) *Form {
	f := &Form{Title: title, Old: old, Name: in.Name, ID: in.ID, Group: in.Group, NameUS: in.CommonName, NameEU: in.CommonNameEU,
		Compound: in.Compound, Parts: in.Parts, Standing: in.Standing, Polyol: in.Polyol, Ticks: ticksOf(&in),
		from: in, autoID: in.ID, lastName: in.Name}
	if p := in.Pack; p != nil {
		f.WithFibre = !p.AvailableCarbohydrate
		f.Per = newEntry(ingredient.PerField.Path, say.T("Figures are per"), ingredient.PerField.Unit, ingredient.Known(p.PerG))
		for _, x := range ingredient.PackFigures() {
			f.Pack = append(f.Pack, newEntry(x.Path, packName(x), x.Unit, *x.At(p)))
		}
	}
	f.Columns = columnEntries(&in)
	for _, m := range spoons {
		f.Spoons = append(f.Spoons, newEntry(m.path, m.name.String(), fieldAt(m.path).Unit, *cellAt(&in, m.path)))
	}
	return f
}

// packName names a figure of a pack.
func packName(x ingredient.PackFigure) string {
	switch x.Path {
	case "energy_kj":
		return say.T("Energy")
	case "salt":
		return say.T("Salt")
	}
	return columnName(x.Column)
}

// spoons are the weights of measures.
var spoons = [...]struct {
	path string
	name say.Message
}{
	{"density", "Density"}, {"g_per_cup", "1 US cup"}, {"g_per_tbsp", "1 tablespoon"}, {"g_per_tsp", "1 teaspoon"},
}

// columnEntries hold the figures of the record itself: all, or for a pack those
// that it has not or that somebody has set beside it.
func columnEntries(in *ingredient.Ingredient) []*Entry {
	made := &ingredient.Ingredient{}
	if in.Pack != nil {
		if x, err := ingredient.FromPack("own", "own", *in.Pack); err == nil {
			made = x
		}
	}
	var entries []*Entry
	for _, r := range columnRows {
		c, cell := r.column, in.Cell(r.column)
		beside := in.Pack != nil && cell != made.Cell(c)
		if in.Pack != nil && !beside {
			if slices.ContainsFunc(ingredient.PackFigures(), func(x ingredient.PackFigure) bool { return x.Column == c }) {
				continue
			}
			cell = ingredient.Cell{} // what the pack gives here is an estimate, in the preview
		}
		e := newEntry(c.String(), columnName(c), c.Unit(), cell)
		e.column, e.beside = c, beside
		entries = append(entries, e)
	}
	return entries
}

// usualPack are the figures that most packs give.
var usualPack = []string{"energy_kcal", "energy_kj", "fat", "saturates", "carbohydrate", "sugars", "fibre", "protein", "salt", "sodium_mg"}

// PackEntries are the fields of a pack: those that most packs fill, and the others.
func (f *Form) PackEntries() (usual, rest []*Entry) {
	usual = []*Entry{f.Per}
	for _, e := range f.Pack {
		if slices.Contains(usualPack, e.Key) {
			usual = append(usual, e)
		} else {
			rest = append(rest, e)
		}
	}
	return usual, rest
}

// entries are all fields for figures.
func (f *Form) entries() []*Entry {
	all := slices.Concat(f.Pack, f.Columns, f.Spoons)
	if f.Per != nil {
		all = append(all, f.Per)
	}
	return all
}

// StandingChoices are the classes of 21 CFR part 135 for people.
func StandingChoices() []Choice {
	all := []Choice{{say.Standing(""), ""}}
	for _, st := range fieldAt("standing").Choices {
		all = append(all, Choice{say.Standing(ingredient.Standing(st)), st})
	}
	return all
}

// PolyolChoices are the sugar alcohols; the value is that of PolyolNamed.
func PolyolChoices() []Choice {
	all := []Choice{{say.T("not known which"), ""}}
	for _, s := range mix.Polyols {
		all = append(all, Choice{say.Of(s.String()), s.String()})
	}
	return all
}

// PolyolNamed is the sugar alcohol of that name, 0 for "".
func PolyolNamed(name string) mix.Species {
	for _, s := range mix.Polyols {
		if s.String() == name {
			return s
		}
	}
	return 0
}

// PolyolName is the value of a form's sugar alcohol among PolyolChoices.
func (f *Form) PolyolName() string {
	if f.Polyol == 0 {
		return ""
	}
	return f.Polyol.String()
}

// FollowName makes the id of a new ingredient from its name, until somebody types
// another, and reports whether it did.
func (f *Form) FollowName(s Shelves) bool {
	if f.Old != "" || f.ID != f.autoID || f.Name == f.lastName {
		return false
	}
	f.lastName = f.Name
	f.autoID = s.FreeID(f.Name)
	f.ID = f.autoID
	return true
}

// Fault says what is wrong with a form, and in which entry, nil for one that is
// none.
func (f *Form) Fault(err error) (text string, at *Entry) {
	var field *ingredient.FieldError
	if !errors.As(err, &field) || field.Line > 0 { // of the file, not of the form
		return say.TrueMinus(say.Sentence(say.Flaw(err))), nil
	}
	key := field.Field[strings.LastIndex(field.Field, " ")+1:] // that of a pack stands behind it
	for _, e := range f.entries() {
		if e.Key == key {
			return say.FieldFault(e.Name, field.Err), e
		}
	}
	return say.FieldFault(strings.ReplaceAll(key, "_", " "), field.Err), nil
}
