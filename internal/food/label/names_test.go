package label_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
)

// share is a made-up ingredient as % of a food of which the rest is sugar.
type share struct {
	pct      float64
	standing ingredient.Standing
	cells    map[ingredient.Column]float64
}

func dairy(fat, msnf float64) share {
	return share{100, ingredient.Dairy, map[ingredient.Column]float64{ingredient.Fat: fat, ingredient.MilkFat: fat, ingredient.MSNF: msnf}}
}

func yolkSolids(pct float64) share {
	return share{pct, "", map[ingredient.Column]float64{ingredient.EggYolkSolids: 100}}
}

func cocoa(pct float64) share {
	return share{pct, ingredient.Cocoa, map[ingredient.Column]float64{ingredient.CocoaSolidsFatFree: 100}}
}

// standard reports whether 100 g of a food meets a name. Dairy comes first and
// gives way to what follows it, keeping its figures per 100 g of the food.
func standard(t *testing.T, name string, gPerML, waterPct float64, of ...share) bool {
	t.Helper()
	food := label.Food{DensityGPerML: gPerML, TubML: 1000}
	rest := 100.0
	for i := len(of) - 1; i >= 0; i-- {
		s := of[i]
		if i == 0 {
			s.pct = rest
		}
		rest -= s.pct
		in := &ingredient.Ingredient{ID: "made", Name: "made up", Standing: s.standing}
		for c := range in.Cells {
			in.Cells[c] = ingredient.Known(0)
		}
		for c, v := range s.cells {
			if i == 0 { // figures of the food, so more of them in the ingredient
				v *= 100 / s.pct
			}
			in.Cells[c] = ingredient.Known(v)
		}
		if i == 0 {
			in.Cells[ingredient.Water] = ingredient.Known(waterPct * 100 / s.pct)
		}
		food.Lines = append(food.Lines, label.Used{Ingredient: in, Grams: s.pct, Phase: label.DensePhase})
	}
	for _, n := range labelOf(t, food, label.US).Names {
		if n.Name == name {
			return n.Met
		}
	}
	t.Fatalf("no name %q", name)
	return false
}

const custard = "frozen custard (also french ice cream)"

// 21 CFR 135.110(a)(2): the pairs of milkfat and nonfat milk solids, each kept
// and just missed.
func TestEveryPairOfTheIceCreamStandard(t *testing.T) {
	const off = 1e-6
	for _, p := range [][2]float64{{10, 10}, {11, 9}, {12, 8}, {13, 7}, {14, 6}, {16, 6}, {11.5, 9}} {
		assert.True(t, standard(t, "ice cream", 0.6, 60, dairy(p[0], p[1])), p)
		assert.False(t, standard(t, "ice cream", 0.6, 60, dairy(p[0], p[1]-off)), p)
	}
	for _, p := range [][2]float64{{10, 11}, {11, 9}, {12, 8}, {13, 7}, {14, 6}} {
		assert.False(t, standard(t, "ice cream", 0.6, 60, dairy(p[0]-off, p[1])), p)
	}
}

// 4.5 and 1.6 lb/gal are 0.5392189 and 0.1917223 g/mL, by 453.59237 g and
// 3785.411784 mL.
func TestAGallonWeighsWhatTheStandardSays(t *testing.T) {
	mix := dairy(10, 10)
	assert.True(t, standard(t, "ice cream", 0.539219, 60, mix))
	assert.False(t, standard(t, "ice cream", 0.539218, 60, mix))
	assert.True(t, standard(t, "ice cream", 0.6, 100-31.9538, mix)) // 0.6 × 31.9538 % = 0.1917228
	assert.False(t, standard(t, "ice cream", 0.6, 100-31.9536, mix))
}

// Less than 1.4 % egg yolk solids is ice cream, 1.4 % is frozen custard; bulky
// flavours lower the need in proportion, to 1.12 % at the least. Cocoa counts
// at 2.5 times its solids, and 10 and 20 % hold for the remainder, never under
// 8 and 16 % of the food.
func TestYolkAndBulkyFlavoursMoveTheLimits(t *testing.T) {
	const off = 1e-6
	mix := dairy(10, 10)
	assert.False(t, standard(t, "ice cream", 0.6, 60, mix, yolkSolids(1.4)))
	assert.True(t, standard(t, "ice cream", 0.6, 60, mix, yolkSolids(1.4-off)))
	assert.True(t, standard(t, custard, 0.6, 60, mix, yolkSolids(1.4)))
	assert.False(t, standard(t, custard, 0.6, 60, mix, yolkSolids(1.4-off)))

	for _, c := range []struct{ cocoa, fat, solids, yolk float64 }{
		{4, 9, 18, 1.26},   // bulky 10 %, remainder 90 %
		{8, 8, 16, 1.12},   // remainder 80 %: all three floors
		{10, 8, 16, 1.12},  // remainder 75 % would ask 7.5, 15 and 1.05 %
		{2, 9.5, 19, 1.33}, // remainder 95 %
	} {
		at := func(fat, solids, yolk float64, name string) bool {
			return standard(t, name, 0.6, 50, dairy(fat, solids-fat), cocoa(c.cocoa), yolkSolids(yolk))
		}
		assert.True(t, at(c.fat+off, c.solids+off, c.yolk+off, custard), "%v %% cocoa", c.cocoa)
		assert.False(t, at(c.fat-off, c.solids+off, c.yolk+off, custard), "%v %% cocoa, milkfat", c.cocoa)
		assert.False(t, at(c.fat+off, c.solids-off, c.yolk+off, custard), "%v %% cocoa, milk solids", c.cocoa)
		assert.False(t, at(c.fat+off, c.solids+off, c.yolk-off, custard), "%v %% cocoa, yolk", c.cocoa)
		// Without the bulky weight the yolk of ice cream stays below 1.4 %.
		ceiling := 1.4 * (100 - 2.5*c.cocoa) / 100
		assert.True(t, at(c.fat+off, c.solids+off, ceiling-off, "ice cream"), "%v %% cocoa", c.cocoa)
		assert.False(t, at(c.fat+off, c.solids+off, ceiling+off, "ice cream"), "%v %% cocoa", c.cocoa)
	}
}

// 21 CFR 135.140: milkfat 1 to 2 %, nonfat milk-derived solids from 1 %, both
// together 2 to 5 %, 6 lb/gal (0.7189586 g/mL). 135.130: fat 6 and protein 2.7 %.
func TestSherbetAndMellorineHaveTheirLimits(t *testing.T) {
	const off = 1e-6
	for _, c := range []struct {
		fat, msnf, density float64
		met                bool
	}{
		{1, 1, 0.8, true}, {2, 3, 0.8, true}, {1 - off, 2, 0.8, false}, {2 + off, 2, 0.8, false}, {1.5, 1 - off, 0.8, false},
		{2, 3 + off, 0.8, false}, {1, 1, 0.718959, true}, {1, 1, 0.718958, false},
	} {
		assert.Equal(t, c.met, standard(t, "sherbet", c.density, 70, dairy(c.fat, c.msnf)), "%+v", c)
	}
	oil := func(fat, protein float64) bool {
		return standard(t, "mellorine", 0.6, 60, proteinOf(protein), oilOf(fat))
	}
	assert.True(t, oil(6, 2.7))
	assert.False(t, oil(6-off, 2.7))
	assert.False(t, oil(6, 2.7-off))

	// Berries are no fat to make a mellorine of, however rich in oil: 0.6 g here.
	berries := share{10, "", map[ingredient.Column]float64{ingredient.Fat: 6, ingredient.Water: 80}}
	milk := dairy(10, 10)
	milk.cells[ingredient.Protein] = 3
	assert.False(t, standard(t, "mellorine", 0.6, 60, milk, berries))
	assert.True(t, standard(t, "mellorine", 0.6, 60, milk, oilOf(0.6)), "as much oil is")
}

func proteinOf(pct float64) share {
	return share{100, "", map[ingredient.Column]float64{ingredient.Protein: pct}}
}

func oilOf(pct float64) share {
	return share{pct, "", map[ingredient.Column]float64{ingredient.Fat: 100}}
}

// 21 CFR 135.130: with bulky flavours 6 and 2.7 % without their weight, and
// never under 4.8 and 2.2 %.
func TestMellorineWithBulkyFlavours(t *testing.T) {
	const off = 1e-6
	for _, c := range []struct{ cocoa, fat, protein float64 }{{4, 5.4, 2.43}, {10, 4.8, 2.2}} { // remainders 90 and 75 %
		at := func(fat, protein float64) bool {
			return standard(t, "mellorine", 0.6, 50, proteinOf(protein), oilOf(fat), cocoa(c.cocoa))
		}
		assert.True(t, at(c.fat+off, c.protein+off), c.cocoa)
		assert.False(t, at(c.fat-off, c.protein+off), c.cocoa)
		assert.False(t, at(c.fat+off, c.protein-off), c.cocoa)
	}
}

// The yardsticks of the EU trade's code and of the UK guide (secondary pages):
// dairy ice cream 5 % milk fat and no other, in the UK with 2.5 % milk protein;
// UK ice cream 5 % fat, 2.5 % milk protein; milk ice 2.5 % milk fat, 6 % MSNF.
func TestEveryEuropeanYardstick(t *testing.T) {
	const off = 1e-6
	milk := func(fat, protein, msnf float64) share {
		s := dairy(fat, msnf)
		s.cells[ingredient.Protein] = protein
		return s
	}
	for name, c := range map[string]struct {
		kept   share
		missed []share
	}{
		"dairy ice cream":            {milk(5, 0, 0), []share{milk(5-off, 3, 9)}},
		"ice cream (UK guide)":       {milk(5, 2.5, 0), []share{milk(5-off, 2.5, 0), milk(5, 2.5-off, 0)}},
		"dairy ice cream (UK guide)": {milk(5, 2.5, 0), []share{milk(5-off, 2.5, 0), milk(5, 2.5-off, 0)}},
		"milk ice (UK guide)":        {milk(2.5, 0, 6), []share{milk(2.5-off, 0, 6), milk(2.5, 0, 6-off)}},
	} {
		assert.True(t, standard(t, name, 0.6, 60, c.kept), name)
		for _, m := range c.missed {
			assert.False(t, standard(t, name, 0.6, 60, m), name)
		}
	}
	oil := share{1, "", map[ingredient.Column]float64{ingredient.Fat: 60}}
	assert.False(t, standard(t, "dairy ice cream", 0.6, 60, milk(6, 3, 9), oil), "0.6 % of another fat")
}

// Fruit and nuts count at 1.4 times their weight, dried fruit at 1.4 times the
// weight that it had fresh, at 20 % solids.
func TestBulkyFlavoursCountAtTheirMultiples(t *testing.T) {
	for id, want := range map[string]string{
		"mango": "14.0 %", "hazelnut": "14.0 %", // 10 g in 100 g
		"cocoa_butter": "25.0 %", // 2.5 times
		"raisins":      "59.2 %", // 15.43 % water (USDA SR28 NDB 09298): 10 × 84.57/20 × 1.4
	} {
		food := label.Food{DensityGPerML: 0.6, TubML: 1000, Lines: lines(t, label.DensePhase, portion{id, 10}, portion{"milk_whole", 90})}
		assert.Contains(t, labelOf(t, food, label.US).Names[0].Note.String(), want, id)
	}
}

// Alcohol is no solid.
func TestSolidsAreWithoutWaterAndAlcohol(t *testing.T) {
	food := plain(map[ingredient.Column]float64{ingredient.Water: 60, ingredient.Alcohol: 5})
	for _, l := range labelOf(t, food, label.US).Names[0].Limits {
		if l.What.String() == "total solids" { // 35 % of 0.625 g/mL, at 0.119826 g/mL to the lb/gal
			assert.InDelta(t, 0.35*0.625/0.1198264, *l.Own, 1e-5)
			return
		}
	}
	t.Fatal("no limit on solids")
}

// 7 CFR 58.2825: a quarter of the nonfat milk solids may be whey.
func TestWheyMayBeAQuarter(t *testing.T) {
	for pct, want := range map[float64]bool{2.5: true, 2.5001: false} {
		whey := &ingredient.Ingredient{ID: "w", Name: "Whey powder", Standing: ingredient.Dairy}
		milk := &ingredient.Ingredient{ID: "m", Name: "Milk", Standing: ingredient.Dairy}
		for c := range whey.Cells {
			whey.Cells[c], milk.Cells[c] = ingredient.Known(0), ingredient.Known(0)
		}
		whey.Cells[ingredient.MSNF] = ingredient.Known(100)
		milk.Cells[ingredient.MSNF] = ingredient.Known(100 * 7.5 / 90)
		food := label.Food{DensityGPerML: 0.6, TubML: 1000, Lines: []label.Used{{Ingredient: milk, Grams: 90}, {Ingredient: whey, Grams: pct}}}
		for _, l := range labelOf(t, food, label.US).Names[0].Limits {
			if l.What.String() == "whey, of the nonfat milk solids" {
				assert.Equal(t, want, l.Met, pct)
			}
		}
	}
}

func TestAFoamAloneIsNoRipple(t *testing.T) {
	food := label.Food{DensityGPerML: 0.3, TubML: 500, Lines: lines(t, "foam", portion{"egg_white", 100}, portion{"sugar", 150})}
	for _, r := range regions {
		assert.Equal(t, "Frozen dessert: egg-white foam", labelOf(t, food, r).ProposedName)
	}
}

// Whey is at most 25 % of the nonfat milk solids, 7 CFR 58.2825, whoever's whey
// it is.
func TestWheyIsCountedByItsName(t *testing.T) {
	whey := lines(t, label.DensePhase, portion{"whey_sweet_dried", 1})[0].Ingredient
	own := *whey
	own.ID, own.Own = "quay_powder", true
	food := label.Food{DensityGPerML: 0.6, TubML: 1000, Lines: append(lines(t, label.DensePhase, portion{"cream_heavy", 300}, portion{"milk_whole", 500}),
		label.Used{Ingredient: &own, Grams: 60, Phase: label.DensePhase})}
	for _, n := range labelOf(t, food, label.US).Names {
		if n.Name != "ice cream" {
			continue
		}
		for _, l := range n.Limits {
			if l.What.String() == "whey, of the nonfat milk solids" {
				assert.Greater(t, *l.Own, 40.0)
				assert.False(t, l.Met)
				return
			}
		}
	}
	t.Fatal("no limit on whey")
}
