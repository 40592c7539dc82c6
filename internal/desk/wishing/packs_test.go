package wishing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/price"
	"ripplewright/internal/work/design"
)

func TestAPackIsWhatTheMakerPaysFor(t *testing.T) {
	d := design.Design{Eggs: design.EggSize{System: "US", Size: "large"}}
	d.Dense.Lines = []design.Line{{Ingredient: "cream_heavy", Grams: 200}, {Ingredient: "milk_whole", Grams: 300}, {Ingredient: "cream_heavy", Grams: 10}, {Ingredient: "nothing_known", Grams: 1}}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Count: 4}}
	m := model.New(market.Library(t)).Priced(price.NewBook("€", []price.Pack{
		{Ingredient: "cream_heavy", Price: 2, Grams: 250}, {Ingredient: "milk_whole", Price: 1, ML: 1000}, {Ingredient: price.Eggs, Price: 3, Pieces: 10}}))
	var ids []string
	for _, in := range Weighed(m, d) {
		ids = append(ids, in.ID)
	}
	assert.Equal(t, []string{"cream_heavy", "milk_whole", "egg_white"}, ids)
	for id, want := range map[string]float64{
		"cream_heavy": 250,
		"milk_whole":  1031, // 1.031 g/mL: a US cup of whole milk is 244 g, USDA SR28 NDB 01077, and 236.6 mL, NIST Handbook 44, Appendix C
	} {
		got, ok := PackOf(m, d, id)
		assert.True(t, ok, id)
		assert.InDelta(t, want, got, 5, id)
	}
	for _, id := range []string{"sugar", "nothing_known"} {
		_, ok := PackOf(m, d, id)
		assert.False(t, ok, id)
	}
}
