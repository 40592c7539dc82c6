package beside_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/beside"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

func sides(t *testing.T, all ...design.Design) []beside.Side {
	m := model.New(market.Library(t))
	var out []beside.Side
	for _, d := range all {
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		out = append(out, beside.Side{Name: d.Name, Design: d, Result: &r})
	}
	return out
}

func row(t *testing.T, rows []beside.Row, key string) beside.Row {
	t.Helper()
	for _, r := range rows {
		if r.Key == key {
			return r
		}
	}
	t.Fatalf("no row %s", key)
	return beside.Row{}
}

func TestADesignBesideItselfDiffersNowhere(t *testing.T) {
	table := beside.Of(say.Usual, sides(t, market.Honey(), market.Honey(), market.Honey()))
	assert.True(t, table.Same())
	assert.Empty(t, table.Settings)
	assert.Len(t, table.Lines, 8)
	assert.NotEmpty(t, table.Figures)
}

func TestWhatOneOfThreeHasAloneIsMarked(t *testing.T) {
	plain, honey := market.Plain(), market.Honey()
	warm := plain
	warm.Serving.TemperatureC = -10
	table := beside.Of(say.Usual, sides(t, plain, honey, warm))
	x := row(t, table.Lines, "dense.honey")
	assert.True(t, x.Differs)
	assert.Nil(t, x.Values[0])
	assert.NotNil(t, x.Values[1])
	assert.Equal(t, []string{"", x.Cells[1], ""}, x.Cells)
	assert.False(t, row(t, table.Lines, "foam.syrup.water").Differs)
	assert.Equal(t, []any{-13.0, -13.0, -10.0}, row(t, table.Settings, "serving.temperature_c").Values)
	hard := row(t, table.Figures, "dense.hardness")
	assert.True(t, hard.Differs)
	assert.Greater(t, hard.Values[0], hard.Values[2], "warmer is softer")
	parts := table.Parts(true)
	require.Len(t, parts, 3)
	for _, part := range parts {
		for _, laid := range beside.Laid(part.Rows) {
			if laid.Name != figure.Between() {
				assert.Contains(t, laid.Name, say.DiffersMark, "a shape, not a colour")
			}
		}
	}
}

// A band stands under its value, and what batches have narrowed differs by it alone.
func TestBandsStandUnderTheirValues(t *testing.T) {
	m, d := model.New(market.Library(t)), market.Honey()
	before, err := m.Evaluate(d)
	require.NoError(t, err)
	taught := model.Taught{}
	taught.Recipe[model.FoamAir] = model.Lesson{Readings: 5, Half: 0.02, Before: model.Unlearnt[model.FoamAir]}
	after, err := m.Taught(taught).Evaluate(d)
	require.NoError(t, err)
	table := beside.Of(say.Usual, []beside.Side{{Name: "before", Design: d, Result: &before}, {Name: "after", Design: d, Result: &after}})
	x := row(t, table.Figures, "foam.overrun_percent")
	assert.Equal(t, x.Cells[0], x.Cells[1])
	assert.NotEqual(t, x.Bands[0], x.Bands[1])
	assert.Greater(t, x.Ends[0][1]-x.Ends[0][0], 5*(x.Ends[1][1]-x.Ends[1][0]))
	assert.True(t, x.Differs)
	assert.False(t, table.Same())
	laid := beside.Laid([]beside.Row{x})
	require.Len(t, laid, 2)
	assert.Equal(t, say.TableRow{Name: figure.Between(), Cells: x.Bands}, laid[1])
	assert.Nil(t, row(t, table.Figures, "eggs.crack").Bands, "what is as written has none")
}

// A second line of an ingredient stands beside a second line.
func TestTwoLinesOfOneIngredientArePairedInTurn(t *testing.T) {
	a := market.Plain()
	b := a.WithLineAdded(design.DensePart, market.Line("sugar", 20))
	var found []beside.Row
	for _, r := range beside.Of(say.Usual, sides(t, a, b)).Lines {
		if r.Key == "dense.sugar" {
			found = append(found, r)
		}
	}
	require.Len(t, found, 2)
	assert.Empty(t, found[1].Cells[0])
	assert.NotEmpty(t, found[1].Cells[1])
}
