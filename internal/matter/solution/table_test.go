package solution

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/water"
)

// binary is p mass % of s in water.
func binary(s mix.Species, p float64) mix.Mix {
	return of(map[mix.Species]float64{s: p, mix.Water: 100 - p})
}

// The CRC Handbook's depressions, in the files that each solute names. A bar is
// how well one constant a solute fits; outside from..to the table's own misfit
// is known (README.md).
func TestSolutesFreezeAsTheHandbookMeasured(t *testing.T) {
	for s, c := range map[mix.Species]struct{ bar, from, to float64 }{
		mix.Sucrose: {0.015, 0, 40}, mix.Glucose: {0.02, 0, 28}, mix.Fructose: {0.035, 0, 28}, mix.Lactose: {0.0152, 0, 8},
		mix.Maltose: {0.035, 0, 44}, mix.Mannitol: {0.01, 0, 15}, mix.Glycerol: {0.03, 5, 40}, mix.Ethanol: {0.03, 0, 28},
		mix.SodiumChloride: {0.015, 0, 22}, mix.PotassiumChloride: {0.04, 0, 13},
	} {
		so, ok := SoluteOf(s)
		require.True(t, ok)
		met := 0
		for _, r := range check.Table(t, so.Table) {
			p, want := r.Num("mass_pct"), -r.Num("fpd_C")
			m := binary(s, p)
			if p < c.from || p > c.to || len(Outside(m, want)) > 0 {
				continue
			}
			met++
			assert.InDelta(t, want, freezes(m, Bound{}), c.bar, "%s %g %%", s, p)
		}
		assert.Greater(t, met, 3, s.String())
	}
}

// Elements of each formula, with the IUPAC abridged standard atomic masses of
// 2021 (from memory): C 12.011, H 1.008, O 15.999, Na 22.990, Cl 35.45, K 39.098.
func TestMolarMassesAreThoseOfTheFormulas(t *testing.T) {
	carbohydrate := func(c, h, o float64) float64 { return 12.011*c + 1.008*h + 15.999*o }
	want := map[mix.Species]float64{
		mix.Sucrose: carbohydrate(12, 22, 11), mix.Lactose: carbohydrate(12, 22, 11), mix.Maltose: carbohydrate(12, 22, 11), mix.Trehalose: carbohydrate(12, 22, 11),
		mix.Glucose: carbohydrate(6, 12, 6), mix.Fructose: carbohydrate(6, 12, 6), mix.Galactose: carbohydrate(6, 12, 6), mix.Allulose: carbohydrate(6, 12, 6),
		mix.Mannitol: carbohydrate(6, 14, 6), mix.Sorbitol: carbohydrate(6, 14, 6), mix.Xylitol: carbohydrate(5, 12, 5), mix.Erythritol: carbohydrate(4, 10, 4),
		mix.Maltitol: carbohydrate(12, 24, 11), mix.Lactitol: carbohydrate(12, 24, 11), mix.Isomalt: carbohydrate(12, 24, 11), mix.Glycerol: carbohydrate(3, 8, 3),
		mix.Ethanol: carbohydrate(2, 6, 1), mix.CitricAcid: carbohydrate(6, 8, 7), mix.TartaricAcid: carbohydrate(4, 6, 6),
		mix.SodiumChloride: 22.990 + 35.45, mix.PotassiumChloride: 39.098 + 35.45,
	}
	for _, so := range Solutes {
		assert.InDelta(t, want[so.Species], so.GPerMol, 0.02, so.Species.String())
	}
}

// A borrowed constant says whose it is; at equal mol the two freeze alike.
func TestWhatIsTakenAsItsKinFreezesAsItsKin(t *testing.T) {
	kin := map[string]mix.Species{}
	for _, so := range Solutes {
		kin[so.Species.String()] = so.Species
	}
	borrowed := 0
	for _, so := range Solutes {
		name, ok := strings.CutPrefix(so.Origin, "as ")
		if !ok {
			continue
		}
		if i := strings.IndexAny(name, ",;"); i >= 0 {
			name = name[:i]
		}
		lender, ok := SoluteOf(kin[name])
		require.True(t, ok, "%s: %s", so.Species, name)
		borrowed++
		for _, mol := range []float64{0.3, 2} {
			own := of(map[mix.Species]float64{mix.Water: 1000, so.Species: mol * so.GPerMol})
			its := of(map[mix.Species]float64{mix.Water: 1000, lender.Species: mol * lender.GPerMol})
			assert.InDelta(t, freezes(its, Bound{}), freezes(own, Bound{}), 1e-9, so.Species.String())
		}
	}
	assert.Greater(t, borrowed, 6)
}

// CRC Handbook: the cryoscopic constant of water is 1.86 K kg/mol. What stays
// whole counts once; of what does not, the salts come apart in two and an acid
// of pKa 3 by a tenth.
func TestADiluteSoluteLowersTheFreezingPointByItsParticles(t *testing.T) {
	for _, so := range Solutes {
		got := -freezes(of(map[mix.Species]float64{mix.Water: 1000, so.Species: 0.01 * so.GPerMol}), Bound{}) / 0.0186
		switch so.Species {
		case mix.SodiumChloride, mix.PotassiumChloride:
			assert.InDelta(t, 1.85, got, 0.1, so.Species.String())
		case mix.CitricAcid, mix.TartaricAcid:
			assert.InDelta(t, 1.1, got, 0.05, so.Species.String())
		default:
			assert.InDelta(t, 1, got, 0.01, so.Species.String())
		}
	}
}

// Choi & Okos 1986, evaluated apart from this program at four temperatures.
func TestComponentsAreThoseOfChoiAndOkos(t *testing.T) {
	c := &Components
	byName := map[string]*Component{"protein": &c.Protein, "fat": &c.Fat, "carbohydrate": &c.Carbohydrate, "fibre": &c.Fibre, "ash": &c.Ash}
	met := 0
	for _, r := range check.Table(t, "choi_okos_components") {
		x := byName[r.Text("component")]
		if x == nil {
			continue // water and ice have their own package
		}
		met++
		p := map[string]*[3]float64{"k": &x.WPerMK, "rho": &x.KGPerM3, "cp": &x.JPerGK}[r.Text("property")]
		for i, column := range []string{"A", "B", "C"} {
			assert.InDelta(t, r.Num(column), p[i], 1e-12, "%s of %s, %s", r.Text("property"), r.Text("component"), column)
		}
		for column, at := range map[string]float64{"at_-18": -18, "at_0": 0, "at_20": 20, "at_60": 60} {
			assert.InDelta(t, r.Num(column), At(*p, at), 0.5e-5, "%s of %s at %g °C", r.Text("property"), r.Text("component"), at)
		}
	}
	assert.Equal(t, 15, met)
}

// CRC Handbook (from memory): ethanol 0.8063 g/mL at 0 °C, 0.7893 at 20 and
// 0.7722 at 40; 0.17 W/(m K) and 2.3 kJ/(kg K) at about 0 °C.
func TestEthanolIsTheHandbooks(t *testing.T) {
	e := &Components.Ethanol
	for at, want := range map[float64]float64{0: 806.3, 20: 789.3, 40: 772.2} {
		assert.InDelta(t, want, At(e.KGPerM3, at), 1, "%g °C", at)
	}
	assert.InDelta(t, 0.17, At(e.WPerMK, 0), 0.01)
	assert.InDelta(t, 2.3, At(e.JPerGK, 0), 0.1)
}

// Densities at 20 °C: each file names its source and volumes says how near the
// fit comes.
func TestSolutionsAreAsDenseAsMeasured(t *testing.T) {
	bars := map[mix.Species]float64{
		mix.Sucrose: 1e-3, mix.Glucose: 0.3e-3, mix.Fructose: 0.1e-3,
		mix.Ethanol: 1.5e-3, mix.Glycerol: 1.5e-3, mix.SodiumChloride: 1.5e-3, mix.PotassiumChloride: 1.5e-3,
	}
	near := func(s mix.Species, r check.Row, column string) {
		p, want := r.Num("mass_pct"), r.Num(column)
		assert.InEpsilon(t, want, GPerML(binary(s, p), 20), bars[s], "%s %g %%", s, p)
	}
	for s := range map[mix.Species]bool{mix.Sucrose: true, mix.Glucose: true, mix.Fructose: true} {
		for _, r := range check.Table(t, s.String()+"_density_20C") {
			near(s, r, "density_g_ml")
		}
	}
	byName := map[string]mix.Species{"ethanol": mix.Ethanol, "glycerol": mix.Glycerol, "sodium chloride": mix.SodiumChloride, "potassium chloride": mix.PotassiumChloride}
	for _, r := range check.Table(t, "dissolved_density_20C") {
		s, ok := byName[r.Text("solute")]
		require.True(t, ok, r.Text("solute"))
		near(s, r, "density_g_ml")
	}
}

// Partial molar volumes at infinite dilution and 25 °C, cm³/mol: Høiland &
// Holvik 1978, J. Solution Chem. 7:587 (from memory); at 20 °C about half a
// percent less. Citric acid: CRC Handbook, 20 °C (from memory).
func TestDissolvedPolyolsAndAcidTakeThePublishedRoom(t *testing.T) {
	for s, v := range map[mix.Species]float64{mix.Galactose: 110.5, mix.Mannitol: 119.5, mix.Sorbitol: 119.6, mix.Xylitol: 102.3, mix.Erythritol: 87.0} {
		so, _ := SoluteOf(s)
		dilute := of(map[mix.Species]float64{mix.Water: 1000, s: 1})
		got := VolumeML(dilute, 20) - VolumeML(of(map[mix.Species]float64{mix.Water: 1000}), 20)
		assert.InEpsilon(t, v/so.GPerMol, got, 0.012, s.String())
	}
	for p, want := range map[float64]float64{10: 1.0392, 20: 1.0805, 30: 1.1244} {
		assert.InDelta(t, want, GPerML(binary(mix.CitricAcid, p), 20), 1e-3, "%g %%", p)
	}
	for s, kin := range map[mix.Species]mix.Species{mix.TartaricAcid: mix.CitricAcid, mix.Allulose: mix.Fructose, mix.Trehalose: mix.Sucrose, mix.HigherSaccharides: mix.Sucrose} {
		assert.Equal(t, GPerML(binary(kin, 35), 20), GPerML(binary(s, 35), 20), s.String())
	}
}

// A gram of any sugar takes more room the stronger the syrup, by as much as
// the measured sugars do: glucose the least, sucrose the most.
func TestAllSugarsCrowdAsTheMeasuredOnesDo(t *testing.T) {
	grows := func(s mix.Species) float64 {
		room := func(p float64) float64 {
			return VolumeML(binary(s, p), 20) - VolumeML(of(map[mix.Species]float64{mix.Water: 100 - p}), 20)
		}
		return room(60)/60 - room(0.01)/0.01
	}
	for _, s := range saccharides {
		if s == mix.Glycerol {
			continue // measured itself
		}
		assert.GreaterOrEqual(t, grows(s), grows(mix.Glucose)-1e-9, s.String())
		assert.LessOrEqual(t, grows(s), grows(mix.Sucrose)+1e-9, s.String())
	}
}

// What is not dissolved adds its own volume, by the densities of Choi & Okos
// 1986 at 20 °C.
func TestSolidsAddTheirOwnVolume(t *testing.T) {
	names := map[string][]mix.Species{"protein": {mix.Protein}, "fat": {mix.Fat}, "carbohydrate": {mix.Starch, mix.OtherSolids}, "fibre": {mix.Fibre}, "ash": {mix.Ash}}
	for _, r := range check.Table(t, "choi_okos_components") {
		if r.Text("property") != "rho" {
			continue
		}
		for _, s := range names[r.Text("component")] {
			m := of(map[mix.Species]float64{mix.Water: 60, mix.Sucrose: 20})
			with := m
			with.Grams[s] = 10
			assert.InDelta(t, 10/r.Num("at_20")*1000, VolumeML(with, 20)-VolumeML(m, 20), 1e-4, s.String())
		}
	}
}

// Starzak & Peacock 1997 by a separate program, to the digits printed, and
// Browne 1912, which differs by up to 5 K at 88 to 90 %.
func TestSyrupsBoilWhereThePublishedTablesSay(t *testing.T) {
	for _, r := range check.Table(t, "syrup_boiling") {
		p := r.Num("sucrose_pct")
		got := BoilingC(SucroseFraction(p), water.StandardPressure)
		assert.InDelta(t, r.Num("starzak_peacock_C"), got, 0.6e-3, "%g %%", p)
		assert.InDelta(t, r.Num("browne1912_C"), got, 5.4, "%g %%", p)
		assert.InDelta(t, p, SucrosePercent(BoilingFraction(got, water.StandardPressure)), 1e-6)
	}
}

// Viscosities of the CRC Handbook at 20 °C: within 3.5 % to 70 % sucrose.
func TestSyrupsAreAsThickAsMeasured(t *testing.T) {
	for _, r := range check.Table(t, "sucrose_density_20C") {
		if p := r.Num("mass_pct"); p <= 70 {
			assert.InEpsilon(t, r.Num("viscosity_mPa_s"), 1000*ViscosityPaS(p, 20), 0.035, "%g %%", p)
		}
	}
	glucose, galactose := binary(mix.Glucose, 40), binary(mix.Galactose, 40)
	assert.Equal(t, SucroseAsThickPercent(glucose), SucroseAsThickPercent(galactose), "taken as glucose")
}

// T_m′ and what the sugars of no table are taken as.
func TestFreezingEndsWhereTheTableSays(t *testing.T) {
	for _, r := range check.Table(t, "maximal_freeze_concentration") {
		for _, so := range Solutes {
			if so.Species.String() == r.Text("solute") {
				assert.InDelta(t, r.Num("Tm_prime_C"), EndOfFreezingC(binary(so.Species, 20)), 0.5, r.Text("solute"))
			}
		}
	}
	assert.Equal(t, EndOfFreezingC(binary(mix.Fructose, 20)), EndOfFreezingC(binary(mix.Allulose, 20)))
	assert.Equal(t, EndOfFreezingC(binary(mix.Sucrose, 1)), EndOfFreezingC(binary(mix.Fat, 1)), "as sucrose where there is no sugar")
}

// Dry glasses, °C, in the ranges of several authors: sugars as Roos 1993,
// Carbohydr. Res. 238:39, printed in whole degrees; polyols and trehalose
// between Roos 1995, Phase Transitions in Foods, and Talja & Roos 2001,
// Thermochim. Acta 380:109; isomalt, lactitol and erythritol as sold: all from
// memory.
func TestDryGlassesAreThePublishedOnes(t *testing.T) {
	for s, want := range map[mix.Species][2]float64{
		mix.Sucrose: {62, 62}, mix.Glucose: {31, 31}, mix.Fructose: {5, 5}, mix.Lactose: {101, 101}, mix.Maltose: {87, 87}, mix.Galactose: {30, 30},
		mix.Trehalose: {100, 117}, mix.Sorbitol: {-9, -3}, mix.Xylitol: {-29, -23}, mix.Mannitol: {11, 13}, mix.Maltitol: {39, 47},
		mix.Erythritol: {-53, -42}, mix.Isomalt: {55, 68}, mix.Lactitol: {45, 55}, mix.Glycerol: {-93, -83}, mix.HigherSaccharides: {134, 160},
	} {
		got, ok := GlassC(of(map[mix.Species]float64{s: 1}), 0)
		require.True(t, ok)
		assert.True(t, want[0]-0.5 <= got && got <= want[1]+0.5, "%s: %g °C", s, got)
	}
	fructose, _ := GlassC(binary(mix.Fructose, 80), 20)
	allulose, _ := GlassC(binary(mix.Allulose, 80), 20)
	assert.Equal(t, fructose, allulose)
	assert.False(t, math.IsNaN(fructose))
}
