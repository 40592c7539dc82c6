package model_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
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
	m := model.New(library(t))
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	dense, foam := r.Dense.Portion.Factor, r.Foam.Portion.Factor
	assert.InDelta(t, dense*(0.5*1.1+0.1*1.2)+foam*0.18*1.2, r.Cost.Known, 1e-12, "the sugar's price holds for both its lines")
	assert.InDelta(t, r.Cost.Known/3, r.Cost.PerTub, 1e-12)
	require.Len(t, r.Cost.Missing, 2)
	assert.Contains(t, r.Cost.Missing[0].Name, "yolk")
	assert.Contains(t, r.Cost.Missing[1].Name, "Water")
	assert.True(t, r.Cost.Priced)

	r, err = m.Evaluate(design.New().WithLineAdded(design.DensePart, line("sugar", 1, none)))
	require.NoError(t, err)
	assert.False(t, r.Cost.Priced)
}
