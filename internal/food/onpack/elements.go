package onpack

import (
	"time"

	"ripplewright/internal/form/flaw"
)

// Key names an element of a tub's label.
type Key string

// The elements, in the order in which they are listed.
const (
	Name        Key = "name"
	Quantity    Key = "net_quantity"
	Ingredients Key = "ingredients"
	Allergens   Key = "allergens"
	Nutrition   Key = "nutrition"
	Maker       Key = "maker"
	Date        Key = "date"
	Storage     Key = "storage"
	Lot         Key = "lot"
	Origin      Key = "origin"
	Warnings    Key = "warnings"
)

// Keys are all of them.
func Keys() []Key {
	return []Key{Name, Quantity, Ingredients, Allergens, Nutrition, Maker, Date, Storage, Lot, Origin, Warnings}
}

// State is whether an element is there.
type State string

// The states.
const (
	Filled    State = "filled"     // it stands on the label
	Add       State = "add"        // it is due, and the maker must add it
	NotNeeded State = "not_needed" // the rules do not ask for it, and say why
)

// Element is one element of the label of a tub.
type Element struct {
	Key     Key         `json:"key"`
	State   State       `json:"state"`
	Text    string      `json:"text"` // as it stands; what to add; or why it is not needed
	Section string      `json:"section"`
	Class   SourceClass `json:"source_class"`

	// WordsClass is how the weakest of its words was read, "" where the maker or
	// the models wrote them all.
	WordsClass SourceClass `json:"words_source_class,omitempty"`

	Parts []Part       `json:"-"` // what stands on the label, by language
	Told  *flaw.Remark `json:"-"` // Text where it is ours, nil where it stands on the label
}

// Part is what stands on the label of an element in a language.
type Part struct {
	Lang  string
	Runs  []Run
	Class SourceClass // of the words of ours in it
}

// Run is text of one weight.
type Run struct {
	Text   string
	Strong bool
}

// Food is what package label and the models know of the tub.
type Food struct {
	Name            string   // in English
	Ingredients     []Run    // the list in English, with its heading
	IngredientsText string   // in plain text
	Contains        string   // the US statement of allergens
	Allergens       []string // codes as label.Allergens writes them, of the place's region
	Unstated        []string // ingredients whose allergens nobody stated
	HoldsML         float64  // volume of the frozen food in a tub
	HoldsG          float64
	Statements      []string // warnings that what is in the food calls for, in words of the label
}

// Pack is what the maker says of a tub, beside its design.
type Pack struct {
	Place     Place
	Sale      Sale
	Languages []string // one to three; none: the place's own
	Tub       Tub

	NominalML float64 // the quantity declared; 0: what the tub holds
	WithGrams bool    // grams beside the volume

	Maker      string // name and address, lines parted by line breaks
	Made       time.Time
	Durability Durability
	Form       DateForm // "": the full date
	Storage    string   // words of the maker's own
	Exempt     bool     // the maker sells so little that no nutrition is asked for
	Lot        string   // another lot than that of the day

	Names map[string]string // the food's name by language, beside English
	Lists map[string]string // its ingredients by language, beside English
}

// languages are those of the label.
func (p *Pack) languages() []string {
	if len(p.Languages) == 0 {
		return []string{p.Place.Language()}
	}
	return p.Languages
}

// nominalML is the quantity declared.
func (p *Pack) nominalML(f *Food) float64 {
	if p.NominalML > 0 {
		return p.NominalML
	}
	return f.HoldsML
}

// Elements returns every element of the tub's label with its state. Nothing is
// invented: what is due and not known is Add.
func Elements(f Food, p Pack, w Words) []Element {
	m := maker{&p, &f, w}
	out := make([]Element, 0, len(Keys()))
	for _, key := range Keys() {
		r := ruleOf(p, f, key)
		e := Element{Key: key, State: NotNeeded, Told: flaw.Say(r.why), Section: string(r.section), Class: r.class}
		if r.due || r.voluntary {
			parts, told := m.fill(key)
			switch {
			case len(parts) > 0:
				e.State, e.Parts, e.Told, e.Text, e.WordsClass = Filled, parts, told, plain(parts), weakest(parts)
			case r.due:
				e.State, e.Told = Add, told
			}
		}
		if e.Told != nil {
			e.Text = e.Told.String()
		}
		out = append(out, e)
	}
	return out
}

// Missing are the elements that are due and not there.
func Missing(all []Element) []Element {
	var out []Element
	for _, e := range all {
		if e.State == Add {
			out = append(out, e)
		}
	}
	return out
}

// of is the part with words of ours from a source.
func (p Part) of(w Word) Part {
	p.Class = w.Class()
	return p
}
