package balance

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

const full = `version: 1
custard:
  texture: scoopable
  sweetness_percent: {from: 15, to: 17, weight: 2}
  hardness_kpa: {to: 5, at_c: -16}
foam:
  keeps_ice: true
tub:
  energy_kcal: {is: 200}
eggs: {whole: {is: true, weight: 2}, crack: {is: 6}}
packs: {of: [cream_heavy 250], weight: 0.5}
no_cautions: {of: [too_sweet], weight: 3}
levers:
  keep: [honey, air]
  between: [milk_whole 300 to 500]
  swaps: false
  serving: true
`

func TestAFileOfWishesIsRead(t *testing.T) {
	lib, d := market.Library(t), market.Honey()
	a, err := DecodeAsk("wishes.yaml", []byte(full), d, lib, cold.Default())
	require.NoError(t, err)
	by := map[*Quantity][]Wish{}
	for _, w := range a.Wishes {
		by[w.Of] = append(by[w.Of], w)
	}
	require.Len(t, by[CustardHardness], 2, "a word and a number")
	assert.Equal(t, -16.0, by[CustardHardness][0].AtC)
	assert.True(t, math.IsInf(by[CustardHardness][0].Low, -1))
	assert.Equal(t, [2]float64{2.5, 6}, [2]float64{by[CustardHardness][1].Low, by[CustardHardness][1].High})
	assert.Equal(t, Wish{Of: CustardSweetness, Low: 15, High: 17, Weight: 2}, noNaN(by[CustardSweetness][0]))
	assert.Equal(t, [2]float64{200, 200}, [2]float64{by[TubEnergy][0].Low, by[TubEnergy][0].High})
	assert.Len(t, by[FoamFreezes], 1)
	assert.Len(t, by[EggsCracked], 1)
	assert.True(t, a.WholeEggs && a.NoSwaps && a.MayServeAt)
	assert.Equal(t, map[string]float64{"cream_heavy": 250}, a.Packs)
	assert.Equal(t, []string{"too_sweet"}, a.Cautions)
	assert.Equal(t, [3]float64{2, 0.5, 3}, [3]float64{a.EggsWeight, a.PacksWeight, a.CautionsWeight})
	a, err = DecodeAsk("wishes.yaml", []byte("eggs: {whole: true}\npacks: [cream_heavy 250]\nno_cautions: [too_sweet]\n"), d, lib, cold.Default())
	require.NoError(t, err, "in brief")
	assert.True(t, a.WholeEggs && a.Packs["cream_heavy"] == 250 && a.Cautions[0] == "too_sweet" && a.EggsWeight == 0)
	a, err = DecodeAsk("wishes.yaml", []byte(full), d, lib, cold.Default())
	require.NoError(t, err)
	assert.Equal(t, []Range{{"milk_whole", 300, 500}}, a.Ranges)
	assert.True(t, a.Locks.Settings["dense.overrun_percent"])
	assert.True(t, a.Locks.Lines[LineAt{design.DensePart, 4}], "the honey")
}

func TestWordsHaveABandATemperatureAndAWeight(t *testing.T) {
	lib, d := market.Library(t), market.Honey()
	text := `custard: {texture: {from: soft, to: scoopable, at_c: -16, weight: 2}, name: frozen_custard}
foam: {keeps_ice: {is: true, weight: 3}, texture: soft}
tub: {minutes: {to: 8}, name: {is: eu_ice_cream, weight: 4}}
levers: {add: [invert_syrup]}
`
	cellar := cold.Default()
	cellar.Freezer.AirC = -22
	a, err := DecodeAsk("w.yaml", []byte(text), d, lib, cellar)
	require.NoError(t, err)
	require.Len(t, a.Wishes, 6)
	assert.Equal(t, Wish{Of: TubMinutes, Low: math.Inf(-1), High: 8, Weight: 1}, noNaN(a.Wishes[0]))
	assert.Equal(t, Wish{Of: CustardHardness, Low: 0.6, High: 6, Weight: 2, AtC: -16, word: true}, a.Wishes[1])
	assert.Equal(t, Texture(FoamHardness, "soft").Low, a.Wishes[2].Low)
	assert.Equal(t, Wish{Of: FoamFreezes, Low: -21.8, High: math.Inf(1), Weight: 3}, noNaN(a.Wishes[3]), "this kitchen's freezer")
	assert.Equal(t, "frozen_custard", a.Wishes[4].Of.Standard.ID)
	assert.Equal(t, 4.0, a.Wishes[5].Weight)
	assert.Nil(t, a.Wishes[5].Of.Named)
	assert.Equal(t, []string{"invert_syrup"}, a.Adds)
	assert.Equal(t, -22.0, a.Kitchen.Freezer.AirC)
}

func noNaN(w Wish) Wish {
	if math.IsNaN(w.AtC) {
		w.AtC = 0
	}
	return w
}

func TestWhatIsWrongInAFileOfWishesIsSaidWithItsPlace(t *testing.T) {
	lib, d := market.Library(t), market.Honey()
	for text, want := range map[string]string{
		"":                                    "w.yaml: the file holds no wishes",
		"- a\n":                               "w.yaml:1: must be keys and values",
		"version: 2\n":                        "w.yaml:1: version: 2 is outside 1 to 1",
		"custard:\n  colour: blue\n":          "w.yaml:2: custard.colour: is no setting",
		"custard:\n  texture: fluffy\n":       `w.yaml:2: custard.texture: "fluffy" is not one of pourable, very soft, soft, scoopable, firm, hard, very hard`,
		"custard:\n  sweetness_percent: 15\n": "w.yaml:2: custard.sweetness_percent: must be keys and values",
		"custard:\n  sweetness_percent: {from: 80}\n":            "w.yaml:2: custard.sweetness_percent.from: 80 % is outside 0 to 60 %",
		"custard:\n  sweetness_percent: {from: 17, to: 15}\n":    "w.yaml:2: custard.sweetness_percent.from: 17 is more than to, 15",
		"custard:\n  sweetness_percent: {weight: 2}\n":           "w.yaml:2: custard.sweetness_percent: needs from, to or is",
		"custard:\n  sweetness_percent: {is: 15, from: 12}\n":    "w.yaml:2: custard.sweetness_percent.is: stands alone, without from and to",
		"custard:\n  sweetness_percent: {is: much}\n":            `w.yaml:2: custard.sweetness_percent.is: "much" is not a number`,
		"eggs: {whole: perhaps}\n":                               `w.yaml:1: eggs.whole: "perhaps" is neither true nor false`,
		"packs: [cream_heavy]\n":                                 `w.yaml:1: packs: "cream_heavy" is no ingredient with the g of its pack, as cream_heavy 250`,
		"packs: [butter_unsalted 250]\n":                         `w.yaml:1: packs: the design has no line of "butter_unsalted"`,
		"levers:\n  keep: [gold]\n":                              `w.yaml:2: levers.keep: no ingredient is named "gold"`,
		"levers:\n  between: [milk_whole 500 to 300]\n":          `w.yaml:2: levers.between: "milk_whole 500 to 300" is no ingredient with the g between which it may go, as milk_whole 300 to 500`,
		"custard: {texture: {is: soft, to: firm}}\n":             "w.yaml:1: custard.texture.is: stands alone, without from and to",
		"custard:\n  texture: {from: firm, to: soft}\n":          `w.yaml:2: custard.texture.from: "firm" is harder than to, "soft"`,
		"custard: {texture: {weight: 2}}\n":                      "w.yaml:1: custard.texture: needs from, to or is",
		"custard:\n  name: ambrosia\n":                           `w.yaml:2: custard.name: "ambrosia" is not one of ice_cream, frozen_custard`,
		"foam:\n  keeps_ice: maybe\n":                            `w.yaml:2: foam.keeps_ice: "maybe" is neither true nor false`,
		"tub:\n  minutes: {to: 900}\n":                           "w.yaml:2: tub.minutes.to: 900 min is outside 0 to 600 min",
		"levers: {add: [gold]}\n":                                `w.yaml:1: levers.add: no ingredient is named "gold"`,
		"no_cautions: [boredom]\n":                               `w.yaml:1: no_cautions: "boredom" is not one of air_beyond_process`,
		"custard:\n  texture: soft\ncustard:\n  texture: soft\n": "w.yaml:3: custard: is given twice",
	} {
		_, err := DecodeAsk("w.yaml", []byte(text), d, lib, cold.Default())
		var file *FileError
		if assert.ErrorAs(t, err, &file, text) {
			assert.Contains(t, err.Error(), want)
		}
	}
}

func TestEveryKeyOfWishesIsOnceInTheTable(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range WishKeys() {
		assert.NotEmpty(t, k.About, k.Path)
		assert.False(t, seen[k.Path], k.Path)
		seen[k.Path] = true
	}
	for _, q := range Quantities {
		assert.True(t, seen[q.Key+".from"] && seen[q.Key+".to"] && seen[q.Key+".is"], q.Key)
	}
}

func FuzzDecodeAsk(f *testing.F) {
	lib, d := market.Library(f), market.Honey()
	f.Add([]byte(full))
	f.Add([]byte("custard: {texture: soft}\n"))
	f.Add([]byte("levers: {between: [milk_whole 1 to 2]}\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		a, err := DecodeAsk("w.yaml", data, d, lib, cold.Default())
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error that says nothing")
			}
			return
		}
		for _, w := range a.Wishes {
			if w.Low > w.High || !(w.Weight > 0) {
				t.Fatalf("%s: %g to %g, weight %g", w.Of.Key, w.Low, w.High, w.Weight)
			}
		}
	})
}

// The schema is of the table: every key of it is in its section, and what may be said in
// brief may.
func TestTheSchemaOfWishesHasEveryKey(t *testing.T) {
	var schema map[string]any
	require.NoError(t, json.Unmarshal(WishSchema(), &schema))
	at := func(path string) map[string]any {
		o := schema
		for _, name := range strings.Split(path, ".") {
			if ways, ok := o["anyOf"].([]any); ok {
				o = ways[1].(map[string]any)
			}
			next, ok := o["properties"].(map[string]any)[name].(map[string]any)
			require.True(t, ok, path)
			o = next
		}
		return o
	}
	for _, k := range WishKeys() {
		assert.NotEmpty(t, at(k.Path)["description"], k.Path)
	}
	assert.Equal(t, 200.0, at("custard.hardness_kpa.to")["maximum"])
	short := at("custard.texture")["anyOf"].([]any)[0].(map[string]any)
	assert.Contains(t, short["enum"], "scoopable")
}
