// Package mix says what is in the bowl: grams of each substance that the
// physics tells apart.
//
// A Mix is an array and three linear tallies, so it copies, compares with ==,
// and its zero is an empty bowl. Everything in it is extensive and adds up;
// nothing here knows a temperature.
package mix

// Species is one substance, or one class of substances that the physics
// treats alike.
type Species uint8

// The species. Starch, fibre and protein bind water but lower no freezing
// point; OtherSolids take up room and do nothing else.
const (
	Water Species = iota
	Protein
	Fat
	Sucrose
	Glucose
	Fructose
	Galactose
	Lactose
	Maltose
	HigherSaccharides // DP3 and above of starch syrups; moles in Mix.HigherMol
	Sorbitol
	Mannitol
	Xylitol
	Erythritol
	Maltitol
	Lactitol
	Isomalt
	Trehalose
	Allulose
	Glycerol
	Ethanol
	CitricAcid
	TartaricAcid
	SodiumChloride // salt added as such; minerals of foods are Mix.IonMol
	PotassiumChloride
	Starch
	Fibre
	Ash         // minerals of foods, by mass
	OtherSolids // carbohydrate that no source splits any further
	NumSpecies
)

var names = [NumSpecies]string{
	"water", "protein", "fat", "sucrose", "glucose", "fructose", "galactose", "lactose", "maltose",
	"higher saccharides", "sorbitol", "mannitol", "xylitol", "erythritol", "maltitol", "lactitol",
	"isomalt", "trehalose", "allulose", "glycerol", "ethanol", "citric acid", "tartaric acid", "sodium chloride",
	"potassium chloride", "starch", "fibre", "ash", "other solids",
}

// String returns the species' plain name.
func (s Species) String() string {
	if s >= NumSpecies {
		return "unknown species"
	}
	return names[s]
}

// Sugars lists the mono- and disaccharides. What a label counts as sugars, which
// allulose need not be, is in the ingredients' records.
var Sugars = [...]Species{Sucrose, Glucose, Fructose, Galactose, Lactose, Maltose, Trehalose, Allulose}

// Acids lists the fruit acids.
var Acids = [...]Species{CitricAcid, TartaricAcid}

// Polyols lists the sugar alcohols of a label. Glycerol is among them.
var Polyols = [...]Species{Sorbitol, Mannitol, Xylitol, Erythritol, Maltitol, Lactitol, Isomalt, Glycerol}

// Mix is an amount of food. Masses are grams and never negative in a mix that
// came from a valid design.
type Mix struct {
	Grams [NumSpecies]float64 // g of each species

	// IonMol is the mol of osmotically active particles that minerals of
	// milk, egg, cocoa and fruit bring, salt added as such excluded.
	IonMol float64
	// HigherMol is the mol of HigherSaccharides, whose molar mass differs
	// from syrup to syrup.
	HigherMol float64
	// HigherSweetG is the g of sucrose that taste as sweet as the
	// HigherSaccharides.
	HigherSweetG float64
}

// Plus returns m + o.
func (m Mix) Plus(o Mix) Mix { return m.PlusScaled(o, 1) }

// PlusScaled returns m + k·o.
func (m Mix) PlusScaled(o Mix, k float64) Mix {
	for i := range m.Grams {
		m.Grams[i] += k * o.Grams[i]
	}
	m.IonMol += k * o.IonMol
	m.HigherMol += k * o.HigherMol
	m.HigherSweetG += k * o.HigherSweetG
	return m
}

// Times returns k·m.
func (m Mix) Times(k float64) Mix { return Mix{}.PlusScaled(m, k) }

// WithWater returns m with its water set to g grams.
func (m Mix) WithWater(g float64) Mix {
	m.Grams[Water] = g
	return m
}

// TotalG returns the mass of everything, in g.
func (m Mix) TotalG() float64 {
	var t float64
	for _, g := range m.Grams {
		t += g
	}
	return t
}

// SolidsG returns the mass of everything but water and ethanol, in g.
func (m Mix) SolidsG() float64 { return m.TotalG() - m.Grams[Water] - m.Grams[Ethanol] }

// SugarsG returns the mass of the mono- and disaccharides, in g.
func (m Mix) SugarsG() float64 { return m.sum(Sugars[:]) }

// PolyolsG returns the mass of the sugar alcohols, in g.
func (m Mix) PolyolsG() float64 { return m.sum(Polyols[:]) }

// FruitAcidG returns the mass of the fruit acids, in g.
func (m Mix) FruitAcidG() float64 { return m.sum(Acids[:]) }

// SaccharidesG returns the mass of sugars, polyols and higher saccharides: the
// body of the syrup around the ice, in g.
func (m Mix) SaccharidesG() float64 {
	return m.SugarsG() + m.PolyolsG() + m.Grams[HigherSaccharides]
}

func (m Mix) sum(of []Species) float64 {
	var t float64
	for _, s := range of {
		t += m.Grams[s]
	}
	return t
}
