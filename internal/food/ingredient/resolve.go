package ingredient

import (
	"strings"

	"ripplewright/internal/matter/mix"
)

// Estimates that stand in for figures a record lacks.
const (
	// ionsPerMSNF and ionsPerAsh are mol of dissolved particles per g, used
	// only where sodium or potassium is unknown. The first follows from the
	// library's own milk (1.10 mmol per g); the second is an estimate.
	ionsPerMSNF = 1.1e-3
	ionsPerAsh  = 15e-3
	// ionsPerYolkSolids is added for yolk, whose sodium, potassium and sugars
	// alone give −0.46 °C against the published −0.59 °C
	// (testdata/tables/natural_freezing_points.csv): 0.031 mol per kg of yolk.
	ionsPerYolkSolids = 6.5e-5
	// particles is ν·φ of the sodium and potassium salts of foods, with anions
	// that balance them: 2 × 0.93, 0.93 the osmotic coefficient near 0.1 mol/kg.
	particles = 1.86
	// higherMolarMass is that of the DP3+ part of a DE 42 syrup, from
	// 1/Mn = Σ w/M with 19 % glucose and 14 % maltose (from memory).
	higherMolarMass = 774
)

// Resolved is what the physics makes of 100 g of an ingredient. Nominal is
// the best reading; Soft and Firm are the readings with the most and the
// least freezing-point depression that the unknown figures allow. All three
// are equal where nothing that matters is unknown.
type Resolved struct {
	Nominal, Soft, Firm mix.Mix
	// UnnamedG is the carbohydrate of a maker's own record, g, that none of its
	// figures names: nobody knows whether it lowers the freezing point.
	UnnamedG float64
	Assumed  []Assumption
}

// Exact reports whether the three readings agree.
func (r Resolved) Exact() bool { return r.Nominal == r.Soft && r.Nominal == r.Firm }

// Resolve turns the record into grams of species per 100 g.
//
// Sugars that a record gives only in total are read as sucrose or, where it
// says how much of that there is, as equal parts of the sugars it leaves open;
// the band is from the lightest of these (soft) to the heaviest (firm). Where
// even the total is unknown, the carbohydrate left over is read as half sucrose
// and half higher saccharides, with the band from all glucose to all starch; in
// a maker's own record, of milk apart, whose sugar is lactose, nothing names it.
//
// Carbohydrate by difference that nothing names is inert; in a maker's own
// record, which may be of any sugar that its pack does not count as one
// (allulose), the soft reading takes it for a simple sugar. In fruit it is read
// as acid, with inert as the firm reading: acids and sorbitol are what a fruit's
// record leaves unnamed, and so read, fresh fruit freezes nearer to where it was
// measured (testdata/tables/fruit_freezing_points.csv).
//
// Missing minerals follow milk solids or ash, and are no less than what is
// known of sodium and potassium; an unknown ash is read as the sodium's salt.
// Figures that sum to more than 100 g, as those of records do whose parts were
// analysed apart, are cut down in proportion.
func (in *Ingredient) Resolve() Resolved {
	if in.Pure != 0 {
		return in.pure()
	}
	m := in.named()
	assumed := in.minerals(&m)
	r := Resolved{Nominal: m, Soft: m, Firm: m, Assumed: assumed}
	in.openSugars(&r)
	in.openCarbohydrate(&r)
	r.close()
	return r
}

// named is what the record's figures name, without its minerals.
func (in *Ingredient) named() mix.Mix {
	get := func(c Column) float64 { return in.Cells[c].Or(0) }
	var m mix.Mix
	m.Grams[mix.Water] = get(Water)
	m.Grams[mix.Protein] = get(Protein)
	m.Grams[mix.Fat] = get(Fat)
	m.Grams[mix.Ethanol] = get(Alcohol)
	m.Grams[mix.Starch] = get(Starch)
	m.Grams[mix.Fibre] = get(Fibre)
	m.Grams[mix.Ash] = in.Cells[Ash].Or(get(SodiumMG) * SaltPerSodium / 1000)
	for _, s := range sugarColumns {
		m.Grams[s.species] = get(s.col)
	}
	in.addHigher(&m, get(HigherSaccharides))
	m.Grams[in.polyol()] += get(Polyols)
	return m
}

// close brings the three readings to 100 g.
func (r *Resolved) close() {
	if short := 100 - r.Nominal.TotalG(); short > 0 {
		// What no figure names has mass all the same: a batch must weigh what went in.
		r.add(mix.OtherSolids, mix.OtherSolids, mix.OtherSolids, short)
		if short > 1 {
			r.assume(Assumption{Code: MassUnnamed, G: short})
		}
	} else if short < 0 {
		k := 100 / r.Nominal.TotalG() // also the other readings' total
		r.Nominal, r.Soft, r.Firm = r.Nominal.Times(k), r.Soft.Times(k), r.Firm.Times(k)
		if short < -1 {
			r.assume(Assumption{Code: MassOver, G: 100 - short})
		}
	}
}

func (r *Resolved) assume(a Assumption) { r.Assumed = append(r.Assumed, a) }

// polyol is the one that the record's polyols are: what it says, else what its
// name says, else sorbitol.
func (in *Ingredient) polyol() mix.Species {
	if in.Polyol != 0 {
		return in.Polyol
	}
	if in.Own {
		name := strings.ToLower(in.Name)
		for _, p := range mix.Polyols {
			if strings.Contains(name, p.String()) {
				return p
			}
		}
	}
	return mix.Sorbitol
}

// pure is Resolve of a record that is one substance and its water.
func (in *Ingredient) pure() Resolved {
	var m mix.Mix
	m.Grams[mix.Water] = in.Cells[Water].Or(0)
	if dry := 100 - m.Grams[mix.Water]; in.Pure == mix.HigherSaccharides {
		in.addHigher(&m, dry)
	} else {
		m.Grams[in.Pure] = dry
	}
	return Resolved{Nominal: m, Soft: m, Firm: m}
}

// sugarColumns pairs the sugars' columns with their species.
var sugarColumns = [...]struct {
	col     Column
	species mix.Species
}{
	{Sucrose, mix.Sucrose}, {Glucose, mix.Glucose}, {Fructose, mix.Fructose},
	{Lactose, mix.Lactose}, {Maltose, mix.Maltose}, {Galactose, mix.Galactose},
}

// add puts g grams into the three readings, each as its own species.
func (r *Resolved) add(nominal, soft, firm mix.Species, g float64) {
	r.Nominal.Grams[nominal] += g
	r.Soft.Grams[soft] += g
	r.Firm.Grams[firm] += g
}

// addHigher adds g grams of the ingredient's own higher saccharides.
func (in *Ingredient) addHigher(m *mix.Mix, g float64) {
	mm := in.HigherGPerMol
	if mm == 0 {
		mm = higherMolarMass
	}
	m.Grams[mix.HigherSaccharides] += g
	m.HigherMol += g / mm
	m.HigherSweetG += g * in.HigherSweetness
}
