package ingredient_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
)

func fromYAML(s string) (*ingredient.Ingredient, error) {
	var n yaml.Node
	if err := yaml.Unmarshal([]byte(s), &n); err != nil {
		return nil, err
	}
	if n.Kind == 0 {
		return nil, assert.AnError
	}
	return ingredient.FromYAML(&n)
}

func TestEveryRowOfTheLibrarySurvivesYAML(t *testing.T) {
	for _, in := range market.Library(t).All() {
		node, err := ingredient.ToYAML(in)
		require.NoError(t, err)
		text, err := yaml.Marshal(node)
		require.NoError(t, err)
		got, err := fromYAML(string(text))
		require.NoError(t, err, "%s", text)
		want := *in
		want.Own = true
		require.Equal(t, &want, got)
	}
}

// The pack is invented: a fig paste for the stall Saltmarsh Quay.
func TestPackFiguresBecomeKnownAndTheRestStaysUnknown(t *testing.T) {
	in, err := fromYAML(`
id: fig_paste
name: Fig paste
pack: {per: 100 g, energy_kcal: 250, fat: 0.5, saturates: 0.1, carbohydrate: 55, sugars: 50, fibre: 7, protein: 2, salt: 0.05}
allergens_eu: [sulphites]
`)
	require.NoError(t, err)
	assert.Equal(t, ingredient.Known(62), in.Cell(ingredient.Carbohydrate))
	assert.Equal(t, ingredient.Known(20), in.Cell(ingredient.SodiumMG))
	assert.InDelta(t, 100-0.5-62-2-0.05, in.Cell(ingredient.Water).Value, 1e-12)
	assert.False(t, in.Cell(ingredient.CalciumMG).Known)
	assert.False(t, in.Cell(ingredient.Sucrose).Known)
	assert.Equal(t, []string{"sulphites"}, in.AllergensEU)
	assert.Contains(t, in.Derived, "water: estimate by difference")
	assert.True(t, in.Own)
}

func TestPackPerServingIsScaledTo100Grams(t *testing.T) {
	in, err := fromYAML(`
id: oat_crunch
name: Oat crunch
pack: {per: 30 g, carbohydrate_with_fibre: true, fat: 6, carbohydrate: 20, fibre: 2, protein: 3, sodium_mg: 60}
`)
	require.NoError(t, err)
	assert.InDelta(t, 20, in.Cell(ingredient.Fat).Value, 1e-12)
	assert.InDelta(t, 200.0/3, in.Cell(ingredient.Carbohydrate).Value, 1e-12)
	assert.InDelta(t, 200, in.Cell(ingredient.SodiumMG).Value, 1e-12)
	assert.False(t, in.Cell(ingredient.Ash).Known)
}

func TestFromYAMLNamesLineAndField(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"typing slip", "id: a\nname: A\nproteins: 3", `line 3: ingredient "a": proteins: is no field of an ingredient`},
		{"word for a figure", "id: a\nname: A\nfat: some", `line 3: ingredient "a": fat: "some" is not a number`},
		{"twice", "id: a\nname: A\nfat: 1\nfat: 2", `line 4: ingredient "a": fat: is given twice`},
		{"pack slip", "id: a\nname: A\npack:\n  sodium: 3", `line 4: pack: sodium: is no figure of a pack`},
		{"too much", "id: a\nname: A\npack: {fat: 60, carbohydrate: 50}", `line 3: pack: fat, carbohydrate and protein sum to 110 g in 100 g`},
		{"too much of one", "id: a\nfat: 101\nname: A", `line 2: ingredient "a": fat: 101 g is outside 0 to 100 g`},
		{"name of a novel", "id: a\nname: " + strings.Repeat("x", 201), `line 2: ingredient "a": name: 201 letters are more than the 200 that it may have`},
		{"no word of the list", "id: a\nname: A\npolyol: sugar", `line 3: ingredient "a": polyol: "sugar" is not one of sorbitol, mannitol, xylitol, erythritol, maltitol, lactitol, isomalt, glycerol`},
		{"two packs", "id: a\npack: {}\nname: A\npack: {}", `line 4: pack: is given twice`},
		{"no name", "id: a", `line 1: ingredient "a": name: is missing`},
		{"list", "- a", `line 1: an ingredient is a mapping of names to figures`},
		{"map for a figure", "id: a\nname: A\nfat: {a: b}", `line 3: ingredient "a": fat: must be a single value`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := fromYAML(c.in)
			require.EqualError(t, err, c.want)
		})
	}
}

func FuzzFromYAML(f *testing.F) {
	f.Add("id: a\nname: A\nfat: 3\nallergens_us: [milk, egg]\n")
	f.Add("id: a\nname: A\npack: {per: 30 g, fat: 1, carbohydrate: 2, protein: 3, salt: 0.1}\nfat: ~\n")
	f.Fuzz(func(t *testing.T, text string) {
		in, err := fromYAML(text)
		if err != nil {
			return
		}
		node, err := ingredient.ToYAML(in)
		require.NoError(t, err)
		out, err := yaml.Marshal(node)
		require.NoError(t, err)
		again, err := fromYAML(string(out))
		require.NoError(t, err, "%s", out)
		require.Equal(t, in, again)
	})
}
