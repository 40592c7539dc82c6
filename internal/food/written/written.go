// Package written reads the lines of recipes as people write them: an amount, a
// measure, an ingredient, a remark. What has two meanings it does not choose: it
// says so, as a doubt.
package written

import "ripplewright/internal/food/ingredient"

// Doubt is why a line is not taken as it stands.
type Doubt uint8

// The doubts.
const (
	NoAmount      Doubt = iota + 1 // no number
	Range                          // two numbers, "2 to 3"
	Vague                          // a pinch, a heaped spoon
	Unknown                        // no ingredient is called so
	Several                        // a word that means several ingredients
	Either                         // "rum or bourbon"
	FarPercent                     // no ingredient is near that percentage
	NoMeasure                      // a piece or a packet of unknown weight
	NoDensity                      // a volume of what has no known density
	Apart                          // two amounts that do not agree, or measures of one record that do not
	Thousands                      // "1,000 g"
	OunceOrFluid                   // ounces of a liquid
	PintOf                         // a pint, US or British
	HowFull                        // a cup that weighs more or less by how it is filled
	Separated                      // eggs for both yolk and white
	Other                          // a remark that may make another food of it
	TooMuch                        // more than a line may hold
	PiecesOrGrams                  // so many eggs that their number may be grams
	SizeOfEurope                   // eggs of size S, M or L, where those of the design are of the US
)

// Basis is what a line's grams were made of.
type Basis uint8

// The bases.
const (
	Weighed  Basis = iota + 1 // the line has a weight
	Measured                  // a volume times the ingredient's own density
	Spooned                   // a volume by the record's own household measure, where it has no density
	Counted                   // eggs of a size
	Packed                    // a piece as the record weighs it: a stick, an envelope, a large apple
)

// Said is what one line of a text says.
type Said struct {
	Text       string
	Ingredient *ingredient.Ingredient // nil where nothing was understood
	Meanings   []string               // of Several: the ids that the words may mean
	Name       string                 // the words read as the ingredient
	Grams      ingredient.Cell        // g, unknown where a doubt leaves it open
	Doubt      Doubt                  // 0: the line is taken

	Basis      Basis
	ML         float64 // mL, of Measured and Spooned
	GPerML     float64 // g/mL, likewise
	Count      float64 // of Counted and Packed
	CountOf    string  // "eggs", "yolks", "whites", Pieces, or the measure of Packed
	OfSize     string  // of Counted and of Pieces: the size, "US large"
	EachGrams  float64 // g, of Counted and Packed
	Note       string  // what else the line says
	ReadAs     string  // what its misspelt words are read as, "" where it has none
	DesignSize bool    // of Counted: the size is the one that was handed in
}

// Taken reports whether the line says one thing.
func (l *Said) Taken() bool { return l.Doubt == 0 }

// Eggs is the size class of eggs that are counted without one.
type Eggs struct{ System, Size string }

// mostGrams is what a line may hold: the limit of a design's line.
const mostGrams = 1e6

// mostEggs is how many eggs a line may count: of a kitchen's or a stall's batch, more are
// rather grams. common practice, no source.
const mostEggs = 48
