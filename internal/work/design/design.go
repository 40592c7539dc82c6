// Package design is the document: the choices a maker makes, and nothing that
// can be computed from them.
//
// A Design is a plain value. Every With method returns a changed copy that
// shares no memory with the original, so keeping old values is undo.
package design

import (
	"slices"

	"ripplewright/internal/food/ingredient"
)

// Basis says what the batch is scaled to.
type Basis string

// The bases of a batch.
const (
	BasisTubs      Basis = "tubs"       // scale each phase so that the tubs are full at the chosen ratio
	BasisAsWritten Basis = "as_written" // keep the lines' grams
)

// Design is one dessert. The zero Design is empty and does not validate;
// start from New.
type Design struct {
	Name  string
	Notes string

	Serving Serving
	Tubs    Tubs
	Blend   Blend
	Batch   Batch
	Eggs    EggSize
	Kitchen Kitchen
	Model   ModelSettings
	Label   Label

	Dense Dense
	Foam  Foam

	// Own holds the maker's own ingredients that the lines name, so that the
	// file opens on another machine.
	Own []*ingredient.Ingredient
}

// Serving is how the dessert is eaten.
type Serving struct {
	TemperatureC float64 // °C, −24 to −4
}

// Tubs is what the dessert is frozen in.
type Tubs struct {
	Count       int     // 1 to 500
	VolumeML    float64 // mL to the brim of one tub, 30 to 20000
	FillPercent float64 // % of that volume, 10 to 100
	Shape       Shape
	SellsFor    float64 // one tub, in the maker's own money, without VAT; 0: not said
}

// Shape is a tub's form. The height follows from the volume.
type Shape string

// The tub shapes.
const (
	ShapeRound     Shape = "round"     // a cylinder about as high as it is wide
	ShapeShallow   Shape = "shallow"   // a cylinder three times as wide as it is high
	ShapeRectangle Shape = "rectangle" // a box, 1.5 times as long as it is wide
)

// Blend is how the phases meet.
type Blend struct {
	FoamVolumePercent float64 // % of the tub's volume that is foam, 0 to 100
	Strokes           int     // of the spoon, 0 to 24
	DepthPercent      float64 // how deep the spoon's handle goes, % of the filling, 10 to 100
	HandleMM          float64 // how wide that handle is, mm, 5 to 40
	Layout            string  // how the phases are filled in before stirring: "dollops", "layers", "halves", "spiral"
	Motion            string  // "plunge", "fold", "eight", "drag", or "mixed"
	Seed              int64   // which of the many possible tubs is drawn
	DenseColour       string  // "#rrggbb"
	FoamColour        string  // "#rrggbb"
}

// Batch says what the written grams mean.
type Batch struct {
	Basis Basis
}

// EggSize is the size class of all eggs counted in the lines.
type EggSize struct {
	System string // "US" or "EU"
	Size   string // a size of package egg's table
}

// Kitchen is where it is made.
type Kitchen struct {
	AltitudeM float64 // m above sea level, −400 to 4500
	Profile   string  // name of the kitchen profile whose calibration applies, or ""
}

// ModelSettings are the model's named freedoms.
type ModelSettings struct {
	ProteinGPerG float64 // g water per g protein that never freezes, 0 to 0.8
	FibreGPerG   float64 // g per g starch and fibre, 0 to 0.6
}

// Label is what the label needs to know.
type Label struct {
	EnergyMethod string // "general" (4-4-9) or "specific" (the records' Atwater factors)
	Portion      string // free words, "" for the rule's own
	Durability   string // for how long it keeps, as its maker has found out: "90d", "6m"; "": not said
	Storage      string // words about how to keep it, "" for the language's own

	Words [len(labelLanguages)]LabelWords // beside English
}

// LabelWords are what a label cannot say of itself in another language.
type LabelWords struct {
	Name        string // of the food
	Ingredients string // the list, without its heading
}

// labelLanguages are the languages beside English in which a label can be set.
var labelLanguages = [...]string{"cs", "da", "de", "el", "es", "et", "fi", "fr", "hr", "hu", "it", "lt", "lv", "nl", "pl", "pt", "ro", "sk", "sl", "sv"}

// word is where a language's name ("name") or list ("ingredients") stands, nil for a
// language that no label can be set in.
func (l *Label) word(lang, what string) *string {
	i := slices.Index(labelLanguages[:], lang)
	switch {
	case i < 0:
		return nil
	case what == "name":
		return &l.Words[i].Name
	}
	return &l.Words[i].Ingredients
}

// Word returns what the maker typed as the name ("name") or list ("ingredients") in
// a language, "" for nothing.
func (l *Label) Word(lang, what string) string {
	if w := l.word(lang, what); w != nil {
		return *w
	}
	return ""
}

// SetWord keeps what the maker typed; a language that no label can be set in is left
// alone.
func (l *Label) SetWord(lang, what, s string) {
	if w := l.word(lang, what); w != nil {
		*w = s
	}
}

// Translated returns the name and the list of ingredients by language, of what the
// maker has typed.
func (l *Label) Translated() (names, lists map[string]string) {
	names, lists = map[string]string{}, map[string]string{}
	for i, lang := range labelLanguages {
		if s := l.Words[i].Name; s != "" {
			names[lang] = s
		}
		if s := l.Words[i].Ingredients; s != "" {
			lists[lang] = s
		}
	}
	return names, lists
}

// Line is one ingredient of a phase: grams, or a count of eggs.
type Line struct {
	Ingredient string  // id in the library
	Grams      float64 // g, used when Count is 0
	Count      float64 // eggs, yolks or whites, whose grams follow from EggSize
	CountOf    EggPart
	Note       string // free words, printed on the card

	// Price is what a kilogram costs, in the maker's own money; unknown where
	// nobody said, which is not free.
	Price ingredient.Cell
}

// EggPart is what a counted line counts.
type EggPart string

// The parts of an egg that a line may count.
const (
	WholeEggs EggPart = "eggs"
	Yolks     EggPart = "yolks"
	Whites    EggPart = "whites"
)

// IngredientID returns the library id of a counted part.
func (p EggPart) IngredientID() string {
	switch p {
	case WholeEggs:
		return "egg_whole"
	case Yolks:
		return "egg_yolk"
	case Whites:
		return "egg_white"
	}
	return ""
}

// Dense is the cooked custard.
type Dense struct {
	Lines            []Line
	StoveLossPercent float64 // % of the phase's mass, water driven off while cooking, 0 to 60
	OverrunPercent   float64 // %, 0 to 150
}

// Foam is the cooked-sugar egg-white foam.
type Foam struct {
	Lines          []Line // what the syrup is beaten into
	Syrup          Syrup
	OverrunPercent float64 // %, 0 to 900
}

// Syrup is boiled and poured into the foam.
type Syrup struct {
	CookTemperatureC float64 // °C the thermometer shows at the end, 100 to 150
	Lines            []Line
	WeighedG         float64 // g of syrup found by weighing the pan, which beats the thermometer; 0: not weighed
	InvertedPercent  float64 // % of the sucrose that acid splits while boiling, 0 to 60
}

// Part names one of the three lists of lines.
type Part uint8

// The lists of lines.
const (
	DensePart Part = iota
	FoamPart
	SyrupPart
)

// String returns the list's place in a file.
func (p Part) String() string { return [...]string{"dense", "foam", "foam.syrup"}[p] }

// New returns an empty design with ordinary settings, to begin with.
func New() Design {
	d := Default()
	d.Dense.StoveLossPercent, d.Dense.OverrunPercent, d.Foam.OverrunPercent = 6, 20, 300
	return d
}

// Default returns what a design file means that leaves everything out: ordinary
// settings, but no loss on the stove and no air, since nobody spoke of any.
func Default() Design {
	return Design{
		Name:    "Untitled",
		Serving: Serving{TemperatureC: -13},
		Tubs:    Tubs{Count: 4, VolumeML: 500, FillPercent: 96, Shape: ShapeRound},
		Blend: Blend{FoamVolumePercent: 40, Strokes: 6, DepthPercent: 100, HandleMM: 10, Layout: "dollops", Motion: "mixed", Seed: 1,
			DenseColour: "#d9a441", FoamColour: "#fbf6ea"},
		Batch: Batch{Basis: BasisTubs},
		Eggs:  EggSize{System: "US", Size: "large"},
		Model: ModelSettings{ProteinGPerG: 0.4, FibreGPerG: 0.3},
		Label: Label{EnergyMethod: "general"},
		Foam:  Foam{Syrup: Syrup{CookTemperatureC: 118}},
	}
}
