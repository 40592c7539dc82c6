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
	Mass [NumSpecies]float64 // g of each species

	// IonMol is the mol of osmotically active particles that minerals of
	// milk, egg, cocoa and fruit bring, salt added as such excluded.
	IonMol float64
	// HigherMol is the mol of HigherSaccharides, whose molar mass differs
	// from syrup to syrup.
	HigherMol float64
	// HigherSweet is the g of sucrose that taste as sweet as the
	// HigherSaccharides.
	HigherSweet float64
}

// Plus returns m + o.
func (m Mix) Plus(o Mix) Mix { return m.PlusScaled(o, 1) }

// PlusScaled returns m + k·o.
func (m Mix) PlusScaled(o Mix, k float64) Mix {
	for i := range m.Mass {
		m.Mass[i] += k * o.Mass[i]
	}
	m.IonMol += k * o.IonMol
	m.HigherMol += k * o.HigherMol
	m.HigherSweet += k * o.HigherSweet
	return m
}

// Times returns k·m.
func (m Mix) Times(k float64) Mix { return Mix{}.PlusScaled(m, k) }

// WithWater returns m with its water set to g grams.
func (m Mix) WithWater(g float64) Mix {
	m.Mass[Water] = g
	return m
}

// Total returns the mass of everything, in g.
func (m Mix) Total() float64 {
	var t float64
	for _, g := range m.Mass {
		t += g
	}
	return t
}

// Solids returns the mass of everything but water and ethanol, in g.
func (m Mix) Solids() float64 { return m.Total() - m.Mass[Water] - m.Mass[Ethanol] }

// TotalSugars returns the mass of the mono- and disaccharides, in g.
func (m Mix) TotalSugars() float64 { return m.sum(Sugars[:]) }

// TotalPolyols returns the mass of the sugar alcohols, in g.
func (m Mix) TotalPolyols() float64 { return m.sum(Polyols[:]) }

// FruitAcid returns the mass of the fruit acids, in g.
func (m Mix) FruitAcid() float64 { return m.sum(Acids[:]) }

// Saccharides returns the mass of sugars, polyols and higher saccharides: the
// body of the syrup around the ice, in g.
func (m Mix) Saccharides() float64 {
	return m.TotalSugars() + m.TotalPolyols() + m.Mass[HigherSaccharides]
}

func (m Mix) sum(of []Species) float64 {
	var t float64
	for _, s := range of {
		t += m.Mass[s]
	}
	return t
}
