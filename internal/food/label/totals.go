package label

import (
	"math"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
)

// figure is an amount that a label, a name or a claim needs.
type figure uint8

const (
	energyUS figure = iota // kcal, by the food's method
	energyEU               // kcal
	energyKJ               // kJ
	fat                    // g, likewise all that say no other
	saturated
	trans
	cholesterolMG
	sodiumMG
	carbohydrate // with fibre
	available    // without
	fibre
	fibreUS // without gums outside the US list
	sugars
	addedSugars
	polyols
	protein    // by the records' own factors
	protein625 // nitrogen × 6.25
	vitaminD   // µg
	calcium    // mg, likewise iron and potassium
	iron
	potassium
	salt
	numFigures
)

// amounts holds every figure of some mass of food, and which ingredients leave
// one unknown.
type amounts struct {
	of      [numFigures]ingredient.Amount
	missing [numFigures][]string // ids
}

// totals sums the figures of food.
func totals(f *Food) *amounts {
	var t amounts
	polyolsUsed := f.hasNamedPolyols()
	for _, u := range f.Lines {
		if u.Grams == 0 {
			continue
		}
		per100 := figuresOf(u.Ingredient, f.EnergyMethod, polyolsUsed)
		for i, a := range per100 {
			t.of[i] = t.of[i].Plus(a, u.Grams/100)
			if a.Most-a.Known > 1e-12 {
				t.missing[i] = appendOnce(t.missing[i], u.Ingredient.ID)
			}
		}
	}
	return &t
}

// hasNamedPolyols reports whether a sugar alcohol with an energy of its own
// was used.
func (f *Food) hasNamedPolyols() bool {
	for _, u := range f.Lines {
		if u.Grams > 0 && u.Ingredient.Cell(ingredient.Polyols).Least() > 0 && u.Ingredient.Polyol != 0 {
			return true
		}
	}
	return false
}

// alcoholG returns the g of alcohol that the lines are known to hold.
func (f *Food) alcoholG() float64 {
	g := 0.0
	for _, u := range f.Lines {
		g += u.Grams * u.Ingredient.Cell(ingredient.Alcohol).Least() / 100
	}
	return g
}

// per returns the amounts of g grams of a food that weighs mass.
func (t *amounts) per(g, mass float64) *amounts {
	out := &amounts{missing: t.missing}
	for i, a := range t.of {
		out.of[i] = ingredient.Amount{}.Plus(a, g/mass)
	}
	return out
}

// figuresOf returns the figures of 100 g of an ingredient.
func figuresOf(in *ingredient.Ingredient, method string, polyolsUsed bool) [numFigures]ingredient.Amount {
	var f [numFigures]ingredient.Amount
	column := func(c ingredient.Column) ingredient.Amount {
		return ingredient.Amount{Known: in.Cell(c).Least(), Most: in.Most(c)}
	}
	for _, n := range Nutrients {
		f[n.line] = column(n.Column) // the energy is set below
	}
	f[fibreUS] = f[fibre]
	if in.Standing == ingredient.NotUSFibre {
		f[fibreUS] = ingredient.Amount{}
	}
	// Few tables report natural sugar alcohols; an unknown one is declared
	// nowhere and counts as the carbohydrate it is part of.
	known := in.Cell(ingredient.Polyols).Least()
	f[polyols] = ingredient.Amount{Known: known, Most: known}
	f[protein625] = times(f[protein], 6.25/in.NitrogenFactor.Or(6.25))
	f[salt] = times(f[sodiumMG], ingredient.SaltPerSodium/1000)
	// Unknown fibre may be all of the carbohydrate or none.
	f[available] = ingredient.Amount{
		Known: max(0, f[carbohydrate].Known-f[fibre].Most),
		Most:  max(0, f[carbohydrate].Most-f[fibre].Known),
	}
	if in.WithoutFibre { // as the pack states it
		known := in.Cell(ingredient.Carbohydrate).Least()
		f[available] = ingredient.Amount{Known: known, Most: known}
	}
	setEnergy(&f, in, method, polyolsUsed)
	return f
}

var (
	// usPolyol: 21 CFR 101.9(c)(1)(i)(F), kcal/g.
	usPolyol = map[mix.Species]float64{
		mix.Isomalt: 2.0, mix.Lactitol: 2.0, mix.Xylitol: 2.4, mix.Maltitol: 2.1,
		mix.Sorbitol: 2.6, mix.Mannitol: 1.6, mix.Erythritol: 0,
	}
	// Regulation (EU) No 1169/2011, Annex XIV, kcal and kJ per g. Each unit
	// is summed from grams; neither is converted into the other.
	euKcal = factors{carbohydrate: 4, polyol: 2.4, protein: 4, fat: 9, alcohol: 7, fibre: 2}
	euKJ   = factors{carbohydrate: 17, polyol: 10, protein: 17, fat: 37, alcohol: 29, fibre: 8}
)

// factors are energies per g.
type factors struct{ carbohydrate, polyol, protein, fat, alcohol, fibre float64 }

// US general factors, 21 CFR 101.9(c)(1)(i)(B), kcal/g. The section is silent
// on alcohol: 7 is customary (from memory). Soluble non-digestible
// carbohydrate: (C).
const (
	usProtein, usCarbohydrate, usFat, usAlcohol, usSoluble = 4, 4, 9, 7, 2
)

// setEnergy sets the three energies of 100 g.
func setEnergy(f *[numFigures]ingredient.Amount, in *ingredient.Ingredient, method string, polyolsUsed bool) {
	alcohol := ingredient.Amount{Known: in.Cell(ingredient.Alcohol).Least(), Most: in.Most(ingredient.Alcohol)}
	if math.IsInf(alcohol.Most, 1) && !soundsAlcoholic(in) { // a pack does not state what it has none of
		alcohol.Most = alcohol.Known
	}
	polyol := f[polyols].Known
	polyolKcal, kind := usPolyol[in.Polyol]

	base := weighted(f[protein], usProtein, f[fat], usFat, alcohol, usAlcohol)
	switch {
	case method == Specific && kind && !in.AtwaterCarbohydrate.Known && polyol == f[carbohydrate].Most: // the Handbook knows no sugar alcohol
		f[energyUS] = ingredient.Amount{Known: polyol * polyolKcal, Most: polyol * polyolKcal}
	case method == Specific:
		known := *in
		if alcohol.Most == alcohol.Known {
			known.Cells[ingredient.Alcohol] = ingredient.Known(alcohol.Known)
		}
		f[energyUS] = ingredient.Tally{}.Add(&known, 100).AtwaterKcal
	case !polyolsUsed: // (B)
		f[energyUS] = base.Plus(f[carbohydrate], usCarbohydrate)
	default: // (C) with (F): which fibre is soluble is not known, so all counts at 2
		if !kind {
			polyol, polyolKcal = 0, 0
		}
		f[energyUS] = base.Plus(ingredient.Amount{
			Known: max(0, f[carbohydrate].Known-f[fibre].Most-polyol)*usCarbohydrate + min(f[fibre].Most, f[carbohydrate].Known)*usSoluble + polyol*polyolKcal,
			Most:  max(0, f[carbohydrate].Most-f[fibre].Known-polyol)*usCarbohydrate + f[fibre].Known*usSoluble + polyol*polyolKcal,
		}, 1)
	}

	polyol = f[polyols].Known
	share := polyol
	if in.Polyol == mix.Erythritol { // Annex XIV: 0
		share = 0
	}
	leastFibre, mostFibre := min(f[fibre].Most, f[carbohydrate].Known), f[fibre].Known
	if in.WithoutFibre {
		leastFibre, mostFibre = f[fibre].Known, f[fibre].Most
	}
	for _, e := range [...]struct {
		to figure
		by factors
	}{{energyEU, euKcal}, {energyKJ, euKJ}} {
		a := weighted(f[protein625], e.by.protein, f[fat], e.by.fat, alcohol, e.by.alcohol)
		f[e.to] = a.Plus(ingredient.Amount{
			Known: max(0, f[available].Known-polyol)*e.by.carbohydrate + share*e.by.polyol + leastFibre*e.by.fibre,
			Most:  max(0, f[available].Most-polyol)*e.by.carbohydrate + share*e.by.polyol + mostFibre*e.by.fibre,
		}, 1)
	}
}

// soundsAlcoholic reports whether an ingredient's name or parts tell of
// alcohol, so that an unknown figure for it cannot be taken as none.
func soundsAlcoholic(in *ingredient.Ingredient) (sounds bool) {
	eachWord(in.Name+"; "+in.CommonName+"; "+in.Parts, func(w string) { sounds = sounds || alcoholWords[singular(w)] })
	return sounds
}

var alcoholWords = map[string]bool{"alcohol": true, "spirit": true, "liqueur": true, "liquor": true, "rum": true, "whisky": true,
	"whiskey": true, "bourbon": true, "brandy": true, "cognac": true, "vodka": true, "gin": true, "wine": true, "port": true,
	"sherry": true, "marsala": true, "vermouth": true, "beer": true, "stout": true, "cider": true, "mead": true, "sake": true,
	"kirsch": true, "grappa": true, "tequila": true, "amaretto": true}

func weighted(a ingredient.Amount, x float64, b ingredient.Amount, y float64, c ingredient.Amount, z float64) ingredient.Amount {
	return ingredient.Amount{}.Plus(a, x).Plus(b, y).Plus(c, z)
}

func times(a ingredient.Amount, k float64) ingredient.Amount {
	return ingredient.Amount{}.Plus(a, k)
}

func appendOnce(list []string, s string) []string {
	for _, x := range list {
		if x == s {
			return list
		}
	}
	return append(list, s)
}
