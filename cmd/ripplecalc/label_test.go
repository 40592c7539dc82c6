package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Labels of designs that we invented to be hard: spirits in both phases, nuts
// with sesame, sugar alcohols, ingredients of which next to nothing is known,
// goat's milk in tiny tubs, no milk at all. What must be said was worked out by
// hand from the sections that package label names.
func TestHardDesignsSayWhatTheLawWants(t *testing.T) {
	for _, c := range []struct {
		design, region string
		says, never    []string
	}{
		{"nightcap", "us", []string{
			"Contains: milk, egg.\n", "dessert wine (sulfites)", "2/3 cup (114g)", "about 3 servings per container",
			"Proposed name: Frozen dairy dessert: frozen custard with raisins, rum, coffee liqueur and dessert wine rippled with egg-white foam",
			"Alcohol: 1.9 % by weight", "Sulfites are declared from 10 ppm", "Honey: not for infants",
			"Coffee liqueur is made of several ingredients", `Say "per serving" with the claim`, "alcohol 7 kcal/g"},
			[]string{"ice cream (US, whole food): met\n"}},
		{"nightcap", "eu", []string{"rum (3.6 %)", "coffee liqueur (2.3 %)", "dessert wine (SULPHITES)", "over 10 mg/kg as total SO2",
			"Allergens, emphasised in the list: milk, eggs, sulphites."}, nil},
		{"bazaar", "us", []string{"Contains: milk, egg, peanut, soy, tree nuts (pistachio), sesame.\n",
			"pistachio halva (sesame paste, sugar, pistachios, soapwort extract)", "specific Atwater factors", "Calories is incomplete: no figure for Pistachio halva", "at most 17g"},
			[]string{"at most Includes"}},
		{"bazaar", "eu", []string{"PISTACHIO halva (SESAME paste, sugar, PISTACHIOS, soapwort extract) (6 %)", "roasted PEANUTS", "emulsifier: SOYA lecithin"}, nil},
		{"lean-tide", "us", []string{"1 container (181g)", "Sugar Alcohol", "21 CFR 101.9(c)(1)(i)(C), sugar alcohols by (F)", "Includes 0g Added Sugars",
			"may have a laxative effect", "sugar free: not met\n", "no added sugar: not met; it depends on an unknown figure"}, []string{"Say so in the name"}},
		{"lean-tide", "eu", []string{"1 portion per pack", "of which polyols", "sweetener: sorbitol", "“with sweetener(s)”", "produce laxative effects", "stabiliser: guar gum"}, nil},
		{"jar", "us", []string{"Contains: milk, egg. Allergens are not stated for walnut paste from the jar.\n", "Walnut paste from the jar has walnut in its name",
			"no figure for Thick cream from the farm, Walnut paste from the jar and Rum syrup", "Rum syrup sounds like alcohol", "milkfat: at least 10; here at least"},
			[]string{"safe", "ice cream (US, whole food): met\n", "low sodium: met\n"}},
		{"jar", "eu", []string{"thick cream from the farm (MILK)", "The portion “one ladle” gives no grams", "follow the US list", "Energy, Fibre and Salt are incomplete"},
			[]string{"Energy, Energy"}},
		{"thimble", "us", []string{"1 container (69g)", "Contains: goat milk, egg, wheat.\n", "raspberries, but there is only 3.3 % of it: under 6 %", "40 square inches"},
			[]string{"servings per container", "with raspberries"}},
		{"thimble", "eu", []string{"1 thimble (65 g)", "about 1 portion per pack", "goat's MILK", "raspberries (3.3 %)", "WHEAT starch"}, nil},
		{"no-cow", "us", []string{"Contains: egg.\n", "Proposed name: Frozen dessert with coconut cream and lemon juice rippled with egg-white foam",
			"about 2.5 servings per container"}, []string{"dairy dessert", "tree nuts", "custard with"}},
		{"no-cow", "eu", []string{"OAT drink", "BARLEY malt extract", "coconut cream (33 %)", "cereals containing gluten (barley, oats)", "Organic acids"}, nil},
	} {
		k := newKitchen(t)
		data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "designs", c.design+".yaml"))
		require.NoError(t, err)
		k.file("hard.yaml", string(data))
		code, out, problem := k.run("", "label", "hard.yaml", "--all", "--region", c.region)
		require.Equal(t, exitFine, code, problem)
		for _, s := range c.says {
			assert.True(t, strings.Contains(out, s), "%s %s does not say %q", c.design, c.region, s)
		}
		for _, s := range c.never {
			assert.False(t, strings.Contains(out, s), "%s %s says %q", c.design, c.region, s)
		}
	}
}

// The keys are promises.
func TestLabelHasItsKeys(t *testing.T) {
	k := newKitchen(t)
	for _, region := range []string{"us", "eu"} {
		_, out, err := k.run("", "label", "quay.yaml", "--json", "--region", region)
		var l map[string]any
		require.NoError(t, json.Unmarshal([]byte(out), &l), err)
		for _, key := range []string{"serving_g", "serving_measure", "servings_per_container", "lines", "ingredients_text", "contains", "energy_method", "names", "claims"} {
			assert.Contains(t, l, key)
		}
		for list, keys := range map[string][]string{"lines": {"key", "amount", "text", "dv_percent", "dv_text", "incomplete"}, "names": {"name", "region", "met", "limits"}} {
			require.NotEmpty(t, l[list])
			for _, x := range l[list].([]any) {
				for _, key := range keys {
					assert.Contains(t, x, key)
				}
			}
		}
	}
}

func TestAReferenceFoodSettlesWhatIsReduced(t *testing.T) {
	k := newKitchen(t)
	k.file("leaner.yaml", strings.Replace(quay, "cream_heavy", "milk_skim", 1))
	_, out, err := k.run("", "label", "leaner.yaml", "--all", "--reference", "quay.yaml")
	require.Empty(t, err)
	assert.Contains(t, out, "reduced fat: met\n")
	_, out, _ = k.run("", "label", "quay.yaml", "--all", "--reference", "leaner.yaml")
	assert.Contains(t, out, "reduced fat: not met\n")
	code, _, err := k.run("", "label", "quay.yaml", "--reference", "nowhere.yaml")
	assert.NotEqual(t, exitFine, code)
	assert.Contains(t, err, "nowhere.yaml")
}
