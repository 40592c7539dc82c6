package ingredient_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
)

// listed are the inconsistencies that the sources themselves have; the
// notes of each row explain its own.
var listed = map[string]ingredient.DisagreementCode{
	"evap_milk_light_uk": ingredient.PartsOf100,
	"half_and_half":      ingredient.PartsOfFat,
	"cream_light":        ingredient.SugarsAbove,
	"golden_syrup":       ingredient.PartsOf100,
	"treacle_black":      ingredient.PartsOf100,
	"baking_soda":        ingredient.PartsOf100,
	"vinegar":            ingredient.PartsOf100,
	"matcha":             ingredient.PartsOf100,
	"pepper_black":       ingredient.PartsOf100,
}

func TestEveryRowIsConsistentOrSaysWhyNot(t *testing.T) {
	for _, in := range market.Library(t).All() {
		t.Run(in.ID, func(t *testing.T) {
			found := in.Disagreements()
			accepted, ok := listed[in.ID]
			if !ok {
				assert.Empty(t, found)
				return
			}
			require.Len(t, found, 1)
			assert.Equal(t, accepted, found[0].Code)
			assert.Contains(t, in.Notes, fmt.Sprintf("%.2f g", found[0].FoundG), "the notes name the exception")
		})
	}
}

func TestEveryRowNamesItsSource(t *testing.T) {
	known := []string{"USDA SR28", "CoFID 2021", "Frida 2019", "STFCJ 2015", "definition", "calculated"}
	for _, in := range market.Library(t).All() {
		assert.Contains(t, known, in.Source, in.ID)
		assert.NotEmpty(t, in.SourceID, in.ID)
		assert.NotEmpty(t, in.Group, in.ID)
		assert.NotEmpty(t, in.CommonName, in.ID)
		for _, c := range []ingredient.Column{ingredient.Water, ingredient.Protein, ingredient.Fat, ingredient.Carbohydrate} {
			assert.True(t, in.Cell(c).Known, "%s: %s", in.ID, c)
		}
	}
}

func TestEveryAllergenIsOneOfTheLaw(t *testing.T) {
	us := []string{"milk", "egg", "wheat", "soy", "peanut", "sesame", "fish", "crustacean", "tree_nut"}
	eu := []string{"milk", "eggs", "gluten_cereals", "soybeans", "peanuts", "sesame", "nuts", "sulphites",
		"fish", "crustaceans", "celery", "mustard", "lupin", "molluscs"}
	for _, in := range market.Library(t).All() {
		for _, a := range in.AllergensUS {
			word, _, _ := strings.Cut(a, ":")
			assert.Contains(t, us, word, in.ID)
		}
		for _, a := range in.AllergensEU {
			word, _, _ := strings.Cut(a, ":")
			assert.Contains(t, eu, word, in.ID)
		}
	}
}

func TestEveryDensityIsOfItsKind(t *testing.T) {
	for _, in := range market.Library(t).All() {
		switch in.DensityKind {
		case "":
			assert.False(t, in.Density.Known, in.ID)
		case "liquid":
			assert.InDelta(t, 1.1, in.Density.Or(math.NaN()), 0.4, in.ID)
		case "bulk":
			assert.InDelta(t, 0.9, in.Density.Or(math.NaN()), 0.85, in.ID)
		default:
			t.Errorf("%s: density kind %q", in.ID, in.DensityKind)
		}
	}
}

// The rows that are one substance which no column names: what the physics makes
// of them is that substance and its water, by the molar masses of the CRC
// Handbook (trehalose 342.30 in 378.33 of its dihydrate, lactose in 360.31 of its
// monohydrate).
func TestAPureRowIsItsSubstance(t *testing.T) {
	for id, want := range map[string]struct {
		is  mix.Species
		dry float64
	}{
		"isomalt": {mix.Isomalt, 100}, "allulose": {mix.Allulose, 100}, "trehalose": {mix.Trehalose, 100 * 342.30 / 378.33}, "lactose": {mix.Lactose, 100 * 342.30 / 360.31},
		"inulin": {mix.HigherSaccharides, 100}, "polydextrose": {mix.HigherSaccharides, 100},
		"citric_acid": {mix.CitricAcid, 100}, "tartaric_acid": {mix.TartaricAcid, 100},
	} {
		in, ok := market.Library(t).Find(id)
		require.True(t, ok, id)
		r := in.Resolve()
		assert.True(t, r.Exact(), id)
		assert.Empty(t, r.Assumed, id)
		assert.InDelta(t, want.dry, r.Nominal.Grams[want.is], 0.1, id)
		assert.InDelta(t, 100, r.Nominal.Grams[want.is]+r.Nominal.Grams[mix.Water], 1e-9, id)
		assert.Equal(t, want.is == mix.HigherSaccharides, r.Nominal.HigherMol > 0, id)
		if want.is == mix.Allulose || want.is == mix.HigherSaccharides {
			assert.Contains(t, in.Derived, "from memory", id)
			assert.Contains(t, in.Notes, "table read", id)
		}
	}
	// A label counts neither allulose as sugar nor inulin as anything but fibre.
	for id, fibre := range map[string]float64{"allulose": 0, "inulin": 100, "polydextrose": 100} {
		in, _ := market.Library(t).Find(id)
		assert.Equal(t, ingredient.Known(0), in.Cell(ingredient.TotalSugars), id)
		assert.Equal(t, ingredient.Known(fibre), in.Cell(ingredient.Fibre), id)
	}
}

func TestEveryPolyolAndSaltHasItsSpecies(t *testing.T) {
	lib := market.Library(t)
	for id, want := range map[string]mix.Species{
		"sorbitol": mix.Sorbitol, "maltitol": mix.Maltitol, "xylitol": mix.Xylitol, "erythritol": mix.Erythritol} {
		in, ok := lib.Find(id)
		require.True(t, ok, id)
		assert.Equal(t, want, in.Polyol)
		assert.Equal(t, 100.0, in.Resolve().Nominal.Grams[want])
	}
	salt, ok := lib.Find("salt")
	require.True(t, ok)
	assert.Equal(t, mix.SodiumChloride, salt.PureSalt)
	assert.InDelta(t, 99.8, salt.Resolve().Nominal.Grams[mix.SodiumChloride], 1e-9)
}

// A syrup's dry solids taste as the trade rates its dextrose equivalent (from
// memory), and Mn = 18016/DE is the definition of DE: reducing power as a
// percentage of that of glucose, 180.16 g/mol.
func TestStarchSyrupsAgreeWithTheirDextroseEquivalent(t *testing.T) {
	lib := market.Library(t)
	for _, c := range []struct {
		id                string
		de, sweet         float64
		deTolerance, byOf float64
	}{
		{"glucose_syrup_de42", 42, 48, 0.5, 0.5},
		{"glucose_syrup_de63", 63, 68, 0.5, 0.5},
		{"maltodextrin", 10, 15, 2, 0.5}, // 1800 g/mol was meant for the whole, hence the 2
	} {
		t.Run(c.id, func(t *testing.T) {
			in, ok := lib.Find(c.id)
			require.True(t, ok)
			m := in.Resolve().Nominal
			dry := m.SaccharidesG()
			mol := m.Grams[mix.Glucose]/180.16 + m.Grams[mix.Maltose]/342.3 + m.HigherMol
			assert.InDelta(t, c.de, 18016/(dry/mol), c.deTolerance)
			sweet := 0.74*m.Grams[mix.Glucose] + 0.33*m.Grams[mix.Maltose] + m.HigherSweetG
			assert.InDelta(t, c.sweet, 100*sweet/dry, c.byOf)
		})
	}
}

func TestEnergyIsThatOfTheRecordsOwnFactors(t *testing.T) {
	n := 0
	for _, in := range market.Library(t).All() {
		if in.Source != "USDA SR28" || !(in.AtwaterProtein.Value > 0 && in.AtwaterFat.Value > 0 && in.AtwaterCarbohydrate.Value > 0) {
			continue
		}
		n++
		got := ingredient.Tally{}.Add(in, 100).AtwaterKcal.Known
		want := in.Cell(ingredient.Energy).Value
		assert.InDelta(t, want, got, max(5, 0.03*want), in.ID)
	}
	assert.GreaterOrEqual(t, n, 100)
}

func TestNoRowKeepsABrandWord(t *testing.T) {
	for _, in := range market.Library(t).All() {
		words := strings.ToLower(in.Name + " " + in.CommonName + " " + in.CommonNameEU + " " + in.Measures)
		for _, w := range []string{"®", "™", "brownulated", "nlea", "anisette", "breakfast treat"} {
			assert.NotContains(t, words, w, in.ID)
		}
	}
}

// USDA reckons the carbohydrate of lemon and lime juice at 2.70 kcal/g where
// other fruit has 3.60, because most of it is acid (Merrill & Watt 1973, USDA
// Agriculture Handbook 74, table 13; citric acid has 2.47). What a fruit's
// record leaves unnamed is read so; that it is inert stays the firm reading.
func TestAFruitsUnnamedCarbohydrateIsAcid(t *testing.T) {
	lemon, ok := market.Library(t).Find("lemon_juice")
	require.True(t, ok)
	assert.Equal(t, 2.7, lemon.AtwaterCarbohydrate.Value)
	r := lemon.Resolve()
	assert.InDelta(t, 6.90-0.30-2.52, r.Nominal.Grams[mix.CitricAcid], 0.02)
	assert.Equal(t, r.Nominal.Grams[mix.CitricAcid], r.Soft.Grams[mix.CitricAcid])
	assert.Zero(t, r.Firm.Grams[mix.CitricAcid])
	assert.InDelta(t, r.Nominal.TotalG(), r.Firm.TotalG(), 1e-9)
}

func TestEveryRowHasAKitchenNameToChooseBy(t *testing.T) {
	whose := map[string]string{}
	for _, in := range market.Library(t).All() {
		name := in.KitchenName
		assert.NotEmpty(t, name, in.ID)
		assert.Equal(t, name, in.Kitchen())
		assert.Equal(t, strings.ToLower(name), name, in.ID)
		assert.Equal(t, strings.TrimSpace(name), name, in.ID)
		assert.NotContains(t, name, ",", "%s: no comma of a database", in.ID)
		assert.LessOrEqual(t, len([]rune(name)), 32, in.ID)
		assert.Empty(t, whose[name], "%s has it too", in.ID)
		whose[name] = in.ID
	}
	own := ingredient.Ingredient{ID: "shelf", Name: "Cider vinegar, bottled"}
	assert.Equal(t, own.Name, own.Kitchen(), "without one, the full name")
}
