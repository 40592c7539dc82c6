package ingredient_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
)

// The packs in this file are invented, for the stall Saltmarsh Quay.

var minerals = []ingredient.Column{ingredient.CalciumMG, ingredient.IronMG, ingredient.PotassiumMG,
	ingredient.MagnesiumMG, ingredient.PhosphorusMG}

func TestAPackWithoutSaltSaysNothingOfItsMinerals(t *testing.T) {
	for name, text := range map[string]string{
		"salt 0":          "id: a\nname: A\npack: {fat: 0.2, carbohydrate: 60, sugars: 55, fibre: 1, protein: 1, salt: 0}\n",
		"salt not stated": "id: a\nname: A\npack: {fat: 0.2, carbohydrate: 60, sugars: 55, fibre: 1, protein: 1}\n",
		"words replaced":  "id: a\nname: A\npack: {fat: 0.2, carbohydrate: 60, sugars: 55, fibre: 1, protein: 1, salt: 0}\nderived: by hand\n",
	} {
		in, err := fromYAML(text)
		require.NoError(t, err)
		for _, c := range minerals {
			assert.False(t, in.Cell(c).Known, "%s: %s", name, c)
			assert.True(t, math.IsInf(in.Most(c), 1), "%s: %s", name, c)
			a := ingredient.Tally{}.Add(in, 50).Columns[c]
			assert.False(t, a.Complete(), "%s: %s", name, c)
			assert.True(t, a.Nothing(), "%s: %s", name, c)
		}
	}
}

// An ash that a table made up from other figures bounds nothing either.
func TestAnAshOfNoAnalysisBoundsNoMineral(t *testing.T) {
	lib := market.Library(t)
	for _, id := range []string{"glucose_syrup_de42", "maltodextrin"} {
		in, ok := lib.Find(id)
		require.True(t, ok)
		require.Equal(t, ingredient.Known(0), in.Cell(ingredient.Ash))
		assert.True(t, math.IsInf(in.Most(ingredient.CalciumMG), 1), id)
	}
	analysed := &ingredient.Ingredient{}
	analysed.Cells[ingredient.Ash] = ingredient.Known(0.4)
	assert.Equal(t, 400.0, analysed.Most(ingredient.CalciumMG))
}

// 1 g of salt is 0.4 g of sodium by the law's factor 2.5 (Regulation (EU) No
// 1169/2011, Annex I); 0.4 g over 22.99 g/mol with its anion, times 0.93.
func TestThePacksSaltWeighsAndFreezes(t *testing.T) {
	in, err := fromYAML("id: a\nname: A\npack: {fat: 10, carbohydrate: 50, sugars: 50, fibre: 0, protein: 3, salt: 1}\n")
	require.NoError(t, err)
	assert.InDelta(t, 36, in.Cell(ingredient.Water).Value, 1e-12)
	m := in.Resolve().Nominal
	assert.InDelta(t, 100, m.TotalG(), 1e-9)
	assert.InDelta(t, 1, m.Grams[mix.Ash], 1e-12)
	assert.InDelta(t, 2*0.93*0.4/22.99, m.IonMol, 1e-9)
}

func TestFibreThatAPackKeepsToItselfIsUnknownNotPartOfTheRest(t *testing.T) {
	in, err := fromYAML("id: a\nname: A\npack: {fat: 10, carbohydrate: 50, sugars: 40, protein: 5, salt: 0}\n")
	require.NoError(t, err)
	assert.True(t, in.WithoutFibre)
	assert.Equal(t, 35.0, in.Most(ingredient.Fibre))
	assert.Equal(t, 85.0, in.Most(ingredient.Carbohydrate))
	assert.Equal(t, 50.0, in.Most(ingredient.Starch))
	for name, text := range map[string]string{
		"stated":  "id: a\nname: A\npack: {fat: 10, carbohydrate: 50, fibre: 3, protein: 5}\n",
		"US pack": "id: a\nname: A\npack: {carbohydrate_with_fibre: true, fat: 10, carbohydrate: 50, protein: 5}\n",
	} {
		in, err := fromYAML(text)
		require.NoError(t, err)
		assert.False(t, in.WithoutFibre, name)
		assert.Equal(t, in.Cell(ingredient.Carbohydrate).Value, in.Most(ingredient.Carbohydrate), name)
	}
}

func TestEveryReadingOfEveryRowWeighsWhatWentIn(t *testing.T) {
	var cut []string
	for _, in := range market.Library(t).All() {
		r := in.Resolve()
		for _, m := range [...]mix.Mix{r.Nominal, r.Soft, r.Firm} {
			assert.InDelta(t, 100, m.TotalG(), 1e-9, in.ID)
		}
		for _, a := range r.Assumed {
			if a.Code == ingredient.MassOver {
				cut = append(cut, fmt.Sprintf("%s: %.1f g", in.ID, a.G))
			}
		}
	}
	// The starch and sugars of both were analysed, their carbohydrate is by difference.
	assert.Equal(t, []string{
		"cashew: 102.5 g",
		"oats_rolled: 101.3 g",
	}, cut)
}

func TestHowReadsTheEntriesOfDerived(t *testing.T) {
	in := &ingredient.Ingredient{Derived: "protein, fat: traces, taken as 0; trans_fat: estimate: fat x 0.04; odd words"}
	assert.Equal(t, "traces, taken as 0", in.How(ingredient.Fat))
	assert.Equal(t, "estimate: fat x 0.04", in.How(ingredient.TransFat))
	assert.Empty(t, in.How(ingredient.Ash))
	in.Derived += "; all: the pack's"
	assert.Equal(t, "the pack's", in.How(ingredient.Ash))
	assert.Equal(t, "traces, taken as 0", in.How(ingredient.Fat))
}

func TestAPackIsWrittenAsItWasTyped(t *testing.T) {
	in, err := fromYAML(`
id: rye_crumb
name: Rye crumb
pack: {per: 30 g, carbohydrate_with_fibre: true, fat: 6, carbohydrate: 20, sugars: 4, sucrose: 3, fibre: 2, protein: 3, sodium_mg: 60, calcium_mg: 12}
fat: ~
density: 0.4
allergens_us: [wheat]
`)
	require.NoError(t, err)
	assert.False(t, in.Cell(ingredient.Fat).Known, "a figure beside the pack wins, also one taken away")
	node, err := ingredient.ToYAML(in)
	require.NoError(t, err)
	text, err := yaml.Marshal(node)
	require.NoError(t, err)
	assert.Equal(t, `id: rye_crumb
name: Rye crumb
group: own
source: own
pack:
    per: 30 g
    carbohydrate_with_fibre: true
    fat: 6
    carbohydrate: 20
    sugars: 4
    sucrose: 3
    fibre: 2
    protein: 3
    sodium_mg: 60
    calcium_mg: 12
fat: ~
density: 0.4
allergens_us: [wheat]
`, string(text))
}

func TestAPackThatContradictsItselfIsRefusedByField(t *testing.T) {
	for _, c := range []struct{ pack, want string }{
		{"fat: 10\n  saturates: 14", `line 4: pack: saturates: the fatty acids sum to 14 g in 10 g`},
		{"carbohydrate: 30\n  sugars: 45", `line 4: pack: sugars: sugars, polyols and starch sum to 45 g in 30 g`},
		{"sugars: 10\n  glucose: 8\n  fructose: 8", `line 3: pack: sugars: the kinds of sugar sum to 16 g in 10 g`},
		{"per: 0.5 g", `line 3: pack: per: 0.5 g is outside 1 to 1000 g`},
		{"per: 30 g\n  fat: 40", `line 4: pack: fat: 40 g in 30 g is more than there can be`},
		{"fat: -1", `line 3: pack: fat: −1 g is outside 0 to 100 g`},
		{"energy_kj: 9000", `line 3: pack: energy_kj: 9000 kJ in 100 g is more than there can be`},
	} {
		_, err := fromYAML("id: a\npack:\n  " + c.pack + "\n")
		assert.EqualError(t, err, c.want)
	}
}

func TestKilojoulesAloneGiveTheEnergy(t *testing.T) {
	in, err := fromYAML("id: a\nname: A\npack: {energy_kj: 1046}\n")
	require.NoError(t, err)
	assert.InDelta(t, 250, in.Cell(ingredient.Energy).Value, 1e-9)
	assert.Contains(t, in.How(ingredient.Energy), "kJ")
}

// Regulation (EU) No 1169/2011, Annex XIV: 4 kcal/g carbohydrate and protein, 9 fat, 2 fibre.
func TestAnEnergyThatTheFiguresDoNotMakeIsDoubted(t *testing.T) {
	k := ingredient.Known
	p := ingredient.Pack{PerG: 100, EnergyKcal: k(251), Fat: k(1), Carbohydrate: k(55), Fibre: k(7), Protein: k(2), AvailableCarbohydrate: true}
	_, _, doubted := p.Doubt()
	assert.False(t, doubted)
	p.EnergyKcal, p.EnergyKJ = ingredient.Cell{}, k(1050)
	_, _, doubted = p.Doubt()
	assert.False(t, doubted)
	p.EnergyKcal = k(1050) // kJ typed as kcal would be refused as too much; this is a plain slip
	p.Fat = k(10)
	makes, says, doubted := p.Doubt()
	assert.True(t, doubted)
	assert.InDelta(t, 9*10+4*55+4*2+2*7, makes, 1e-9)
	assert.Equal(t, 1050., says)
}

func TestAFigureEnteredByHandIsNoLongerCalledDerived(t *testing.T) {
	in := &ingredient.Ingredient{Derived: "protein, fat: traces, taken as 0; water: by difference"}
	out := in.With(ingredient.Fat, ingredient.Known(2)).With(ingredient.Water, ingredient.Known(40))
	assert.Equal(t, "protein: traces, taken as 0; fat, water: entered by hand", out.Derived)
	assert.Equal(t, "protein: traces, taken as 0; water: entered by hand", out.With(ingredient.Fat, ingredient.Cell{}).Derived)
	assert.Equal(t, ingredient.Known(2), out.Cell(ingredient.Fat))
	assert.False(t, in.Cell(ingredient.Fat).Known)
	assert.Contains(t, in.Derived, "fat")
}

// A flag about a figure that nobody gives bounds nothing.
func TestWithoutItsCarbohydrateARecordBoundsNoSugar(t *testing.T) {
	in, err := ingredient.FromPack("fig_paste", "Fig paste", ingredient.Pack{PerG: 100, Carbohydrate: ingredient.Known(55), AvailableCarbohydrate: true})
	require.NoError(t, err)
	require.True(t, in.WithoutFibre)
	assert.Equal(t, 55., in.Most(ingredient.TotalSugars))

	bare := in.With(ingredient.Carbohydrate, ingredient.Cell{})
	assert.False(t, bare.WithoutFibre)
	assert.Greater(t, bare.Most(ingredient.TotalSugars), 55.)
	again, err := ingredient.Checked(bare)
	require.NoError(t, err)
	assert.True(t, bare.Equal(again))

	in.Pack, in.Cells[ingredient.Carbohydrate] = nil, ingredient.Cell{}
	read, err := ingredient.Checked(in)
	require.NoError(t, err)
	assert.False(t, read.WithoutFibre)
}
