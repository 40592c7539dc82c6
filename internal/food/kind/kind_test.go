package kind_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
)

// Packs as a stall's shelf has them, by name and by what they say of themselves:
// where a cook puts them is common practice.
func TestAnOwnPackGoesInAsACookWouldPutIt(t *testing.T) {
	for _, c := range []struct {
		name              string
		carbohydrate, fat float64
		starch            float64
		want              kind.Kind
		sour              bool
	}{
		{"Vanilla pudding powder", 88, 0, 86, kind.Starch, false},
		{"Vanilla paste", 60, 0, 0, kind.Spirit, false},
		{"Vanilla extract of the quay", 2, 0, 0, kind.Spirit, false},
		{"Vanilla sugar", 98, 0, 0, kind.Sugar, false},
		{"Malt extract", 75, 0, 0, kind.Sugar, false},
		{"Harbour rum", 0, 0, 0, kind.Spirit, false},
		{"Biscuit crumbs", 68, 18, 40, kind.Sugar, false},
		{"Fruit sugar", 100, 0, 0, kind.Sugar, false},
		{"Orange blossom water", 0, 0, 0, kind.Infusion, false},
		{"Candied orange peel", 80, 0, 0, kind.Infusion, false},
		{"Orange chocolate", 50, 30, 0, kind.Chocolate, false},
		{"Blackcurrant purée", 8, 0, 0, kind.Sour, true},
		{"Sea buckthorn", 7, 4, 0, kind.Sour, true},
		{"Sour cherries", 12, 0, 0, kind.Sour, true},
		{"Lime juice", 7, 0, 0, kind.Sour, true},
		{"Sheep's yoghurt", 5, 6, 0, kind.Cultured, false},
		{"Oat drink", 7, 1, 2, kind.Liquid, false},
		{"Pistachio paste", 12, 52, 2, kind.Paste, false},
		{"Coconut fat", 0, 99, 0, kind.Fat, false},
		{"Hazelnut oil", 0, 100, 0, kind.Fat, false},
		{"Egg yolk from the carton", 1, 27, 0, kind.Yolk, false},
		{"Liquid egg white", 1, 0, 0, kind.WhitePast, false},
	} {
		p := ingredient.Pack{PerG: 100, AvailableCarbohydrate: true,
			Carbohydrate: ingredient.Known(c.carbohydrate), Fat: ingredient.Known(c.fat), Starch: ingredient.Known(c.starch)}
		in, err := ingredient.FromPack("quay", c.name, p)
		require.NoError(t, err, c.name)
		assert.Equal(t, c.want, kind.Of(in), c.name)
		assert.Equal(t, c.sour, kind.AcidPercent(in, 0) > 0, c.name)
	}
}

func TestWhatAnOwnPackBringsOfMilkAndEgg(t *testing.T) {
	for _, c := range []struct {
		name        string
		fat         float64
		cholesterol float64 // −1: not on the pack
		milk        float64
		whole       bool
	}{
		{"Farm milk", 4, -1, 100, false},
		{"Double cream", 48, -1, 25, false},
		{"Quark", 0.3, -1, 100, false},
		{"Coconut cream", 20, -1, 0, false},
		{"Oat drink", 1, -1, 0, false},
		{"Soy milk", 2, -1, 0, false},
		{"Whole egg from the carton", 10, -1, 0, true},
		{"Egg yolk from the carton", 27, -1, 0, false},
		{"Liquid egg", 10, 370, 0, true},
		{"Liquid egg, more yolk", 25, 950, 0, false},
	} {
		p := ingredient.Pack{PerG: 100, AvailableCarbohydrate: true, Fat: ingredient.Known(c.fat)}
		if c.cholesterol >= 0 {
			p.CholesterolMG = ingredient.Known(c.cholesterol)
		}
		in, err := ingredient.FromPack("quay", c.name, p)
		require.NoError(t, err, c.name)
		assert.InDelta(t, c.milk, kind.MilkPercent(in), 1e-9, c.name)
		assert.Equal(t, c.whole, kind.WholeEgg(in), c.name)
	}
}
