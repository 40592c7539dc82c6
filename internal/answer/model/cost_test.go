package model_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/work/design"
)

func TestABatchCostsWhatItsLinesDoAndNothingUnpricedIsFree(t *testing.T) {
	d := design.New()
	d.Tubs.Count = 3
	line := func(id string, g float64, price ingredient.Cell) design.Line {
		return design.Line{Ingredient: id, Grams: g, Price: price}
	}
	known, none := ingredient.Known, ingredient.Cell{}
	d = d.WithLines(design.DensePart, []design.Line{line("milk_whole", 500, known(1.1)), line("sugar", 100, none), line("egg_yolk", 90, none)})
	d = d.WithLines(design.FoamPart, []design.Line{line("egg_white", 150, known(0))})
	d = d.WithLines(design.SyrupPart, []design.Line{line("sugar", 180, known(1.2)), line("water", 60, none)})
	m := model.New(market.Library(t))
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	dense, foam := r.Dense.Portion.Factor, r.Foam.Portion.Factor
	assert.InDelta(t, dense*(0.5*1.1+0.1*1.2)+foam*0.18*1.2, r.Cost.Known, 1e-12, "the sugar's price holds for both its lines")
	assert.InDelta(t, r.Cost.Known/3, r.Cost.PerTub, 1e-12)
	require.Len(t, r.Cost.Missing, 1, "water runs from the tap")
	assert.Contains(t, r.Cost.Missing[0].Name, "yolk")
	assert.True(t, r.Cost.Priced)
	assert.True(t, r.Cost.Tap)

	r, err = m.Evaluate(design.New().WithLineAdded(design.DensePart, line("sugar", 1, none)))
	require.NoError(t, err)
	assert.False(t, r.Cost.Priced)
	r, err = m.Evaluate(design.New().WithLineAdded(design.DensePart, line("water", 100, none)))
	require.NoError(t, err)
	assert.False(t, r.Cost.Priced, "water for nothing is no price")
	assert.True(t, r.Cost.Tap)
}

// A litre of milk for 1.20 and a dozen eggs for 3.00, invented.
func TestPacksOfTheBookCountBeforeALinesPriceAndTheTubsCostWhatIsInThem(t *testing.T) {
	lib := market.Library(t)
	book := price.NewBook("€", []price.Pack{
		{Ingredient: "milk_whole", Price: 1.2, ML: 1000}, {Ingredient: price.Eggs, Price: 3, Pieces: 12},
		{Ingredient: "sugar", Price: 1.5, Grams: 1000}, {Ingredient: "glucose_liquid_bp", Price: 4, ML: 500}})
	d := market.Honey()
	d.Batch.Basis = design.BasisAsWritten
	for i := range d.Dense.Lines {
		d.Dense.Lines[i].Price = ingredient.Known(100) // an older file's, of which the book knows better
	}
	m := model.New(lib)
	before, err := m.Evaluate(d)
	require.NoError(t, err)
	r, err := m.Priced(book).Evaluate(d)
	require.NoError(t, err)
	assert.Empty(t, before.Cost.Currency, "the model without prices is as it was")
	assert.Equal(t, "€", r.Cost.Currency)
	milk, ok := lib.Find("milk_whole")
	require.True(t, ok)
	seen := 0
	for _, l := range r.Lines {
		want, here := map[string]float64{
			"milk_whole": 1.2 / (1000 * milk.Density.Value), "sugar": 0.0015, "egg_yolk": 3. / 12 / 50, "egg_white": 3. / 12 / 50,
		}[l.Ingredient.ID]
		if here {
			seen++
			assert.InDelta(t, want, l.PerGram.Value, 1e-12, l.Ingredient.ID)
		} else if l.Part == design.DensePart {
			assert.InDelta(t, 0.1, l.PerGram.Value, 1e-12, "%s: the line's own", l.Ingredient.ID)
		}
	}
	assert.GreaterOrEqual(t, seen, 4)
	c := r.Cost
	assert.InDelta(t, c.PerTub*r.Blend.TubsFilled, c.Per100G*r.Blend.MassG/100, 1e-9, "both of what is in the tubs")
	assert.InDelta(t, c.PerServing*r.Nutrition.ServingsTotal, c.PerTub*r.Blend.TubsFilled, 1e-9)
	assert.LessOrEqual(t, c.PerTub*r.Blend.TubsFilled, c.Known+1e-9, "what is over is paid for, but by no tub")
}

func TestAPackThatNobodyCanWeighIsUnknownAndNamed(t *testing.T) {
	lib := market.Library(t)
	syrup := *mustFind(t, lib, "honey")
	syrup.ID, syrup.Density = "quay_syrup", ingredient.Cell{}
	m := model.New(lib.With([]*ingredient.Ingredient{&syrup})).Priced(price.NewBook("", []price.Pack{{Ingredient: "quay_syrup", Price: 4, ML: 500}}))
	r, err := m.Evaluate(design.New().WithLineAdded(design.DensePart, design.Line{Ingredient: "quay_syrup", Grams: 100}))
	require.NoError(t, err)
	assert.False(t, r.Cost.Priced)
	require.Len(t, r.Cost.Unweighed, 1)
	assert.Equal(t, r.Cost.Missing, r.Cost.Unweighed)
}

func mustFind(t *testing.T, lib *ingredient.Library, id string) *ingredient.Ingredient {
	t.Helper()
	in, ok := lib.Find(id)
	require.True(t, ok, id)
	return in
}
