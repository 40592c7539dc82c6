package ingredient

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/matter/mix"
)

func TestSugarsKnownOnlyInTotalAreThoseThatTheRecordLeavesOpen(t *testing.T) {
	for _, c := range []struct {
		name                string
		known               []Column // at zero
		nominal, soft, firm map[mix.Species]float64
	}{
		{"none is named", nil,
			map[mix.Species]float64{mix.Sucrose: 30}, map[mix.Species]float64{mix.Glucose: 30}, map[mix.Species]float64{mix.Maltose: 30}},
		{"a starch syrup without its split", []Column{Sucrose, Fructose, Lactose, Galactose},
			map[mix.Species]float64{mix.Glucose: 15, mix.Maltose: 15}, map[mix.Species]float64{mix.Glucose: 30}, map[mix.Species]float64{mix.Maltose: 30}},
		{"only lactose is open", []Column{Sucrose, Glucose, Fructose, Maltose, Galactose},
			map[mix.Species]float64{mix.Lactose: 30}, map[mix.Species]float64{mix.Lactose: 30}, map[mix.Species]float64{mix.Lactose: 30}},
	} {
		in := Ingredient{ID: "x"}
		in.Cells[Water], in.Cells[Carbohydrate], in.Cells[TotalSugars] = Known(70), Known(30), Known(30)
		for _, col := range c.known {
			in.Cells[col] = Known(0)
		}
		r := in.Resolve()
		for _, s := range sugarColumns {
			assert.InDelta(t, c.nominal[s.species], r.Nominal.Grams[s.species], 1e-12, "%s, nominal %s", c.name, s.species)
			assert.InDelta(t, c.soft[s.species], r.Soft.Grams[s.species], 1e-12, "%s, soft %s", c.name, s.species)
			assert.InDelta(t, c.firm[s.species], r.Firm.Grams[s.species], 1e-12, "%s, firm %s", c.name, s.species)
		}
	}
}

// A pack of allulose: carbohydrate 100 g, sugars and fibre 0.
func TestAPacksUnnamedCarbohydrateIsUnknown(t *testing.T) {
	in := &Ingredient{ID: "allulose", Name: "Allulose", Own: true}
	for c := range in.Cells {
		in.Cells[c] = Known(0)
	}
	in.Cells[Carbohydrate] = Known(100)
	in.Cells[Starch] = Cell{}
	r := in.Resolve()
	assert.InDelta(t, 100, r.UnnamedG, 1e-9)
	assert.False(t, r.Exact())
	assert.InDelta(t, 100, r.Soft.Grams[mix.Glucose], 1e-9)
	assert.InDelta(t, 100, r.Firm.Grams[mix.OtherSolids], 1e-9)
	assert.InDelta(t, 100, r.Nominal.TotalG(), 1e-9)
	in.Cells[Starch] = Known(100)
	assert.Zero(t, in.Resolve().UnnamedG, "named, it is no question")
}

// A pack that leaves its sugars out names none of its carbohydrate, but for
// milk's, which is lactose.
func TestAPackWithoutItsSugarsNamesNoCarbohydrate(t *testing.T) {
	in, err := FromPack("syrup", "Date syrup", Pack{PerG: 100, Fat: Known(0), Carbohydrate: Known(78), Protein: Known(0)})
	require.NoError(t, err)
	assert.InDelta(t, 78, in.Resolve().UnnamedG, 1e-9)
	in.Standing = Dairy
	assert.Zero(t, in.Resolve().UnnamedG)
}

func TestAPacksPolyolsAreThoseOfItsName(t *testing.T) {
	in, err := FromPack("cool", "Erythritol of the quay", Pack{PerG: 100, Carbohydrate: Known(100), Polyols: Known(100)})
	require.NoError(t, err)
	assert.InDelta(t, 100, in.Resolve().Nominal.Grams[mix.Erythritol], 1e-9)
	in.Polyol = mix.Maltitol
	assert.InDelta(t, 100, in.Resolve().Nominal.Grams[mix.Maltitol], 1e-9, "what the record says comes before its name")
	in.Name, in.Polyol = "Sweetener", 0
	assert.InDelta(t, 100, in.Resolve().Nominal.Grams[mix.Sorbitol], 1e-9)
}
