package model_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/work/design"
)

// Each warning comes of what the design was changed by: the last line of its custard,
// unless said otherwise.
var caused = []struct {
	code, lines string // to the custard of the market's stall, or "PART: " and to another part
	change      func(*testing.T, *design.Design)
	where       string
}{
	{"yolk_heavy", "egg_yolk 400", nil, ""},
	{"too_sweet", "sugar 400", nil, ""},
	{"too_sweet", "", func(_ *testing.T, d *design.Design) { // the whole tub, of which the foam is the sweeter phase
		d.Blend.FoamVolumePercent = 95
		*d = d.WithGrams(design.SyrupPart, 0, 420)
	}, "blend.foam_volume_percent"},
	{"not_sweet_enough", "", func(_ *testing.T, d *design.Design) { *d = d.WithGrams(design.DensePart, 3, 12) }, "dense.lines[3]"}, // the sugar
	{"too_salty", "salt 20", nil, ""},
	{"too_salty", "foam: salt 30", nil, "foam.lines[1]"},
	{"salt_rule_unsettled", "salt 20", nil, ""},
	{"alcohol_boils_off", "rum_40 80", nil, ""},
	{"alcohol_boils_off", "syrup: rum_40 30", nil, "foam.syrup.lines[2]"},
	{"acid_with_milk", "lemon_juice 30", nil, ""},
	{"acid_with_milk", "lemon_juice 120", nil, ""},
	{"starch_with_yolk", "cornstarch 15", nil, ""},
	{"yolk_in_whites", "foam: egg_yolk 10", nil, "foam.lines[1]"},
	{"carbohydrate_unnamed", "blend 70", own("blend, Sweet blend of the pier, fat 0, carbohydrate 99, sugars 1, fibre 0, protein 0, salt 0"), ""},
	{"sugar_crystallises", "nfdm_regular 300", nil, ""},
	{"crystals_unchecked", "sorbitol 60", nil, ""},
	{"outside_model_range", "dextrose_monohydrate 2500", nil, ""},
	{"outside_hardness_law", "cream_heavy 3000", nil, ""},
	{"outside_hardness_law", "sugar 2500", nil, ""},
	{"outside_hardness_law", "inulin 2500", nil, ""},
	{"brittle", "foam: fructose 2500", func(_ *testing.T, d *design.Design) { d.Serving.TemperatureC = -24 }, "serving.temperature_c"},
	{"air_beyond_process", "", func(_ *testing.T, d *design.Design) { d.Dense.OverrunPercent = 120 }, "dense.overrun_percent"},
	{"air_beyond_process", "", func(_ *testing.T, d *design.Design) { d.Foam.OverrunPercent = 800 }, "foam.overrun_percent"},
	{"foam_draws_water", "", func(_ *testing.T, d *design.Design) { *d = d.WithGrams(design.SyrupPart, 0, 600) }, "foam.syrup.lines[0]"},
	{"freezer_overloaded", "", func(_ *testing.T, d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 60, 1000 }, "tubs"},
	{"syrup_too_little", "", func(_ *testing.T, d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 1, 80 }, "tubs"},
	{"tub_overfull", "", func(_ *testing.T, d *design.Design) { d.Tubs.FillPercent = 100 }, "tubs.fill_percent"},
	{"left_over", "", func(_ *testing.T, d *design.Design) { d.Batch.Basis = design.BasisAsWritten }, "blend.foam_volume_percent"},
	{"eggs_unpaired", "", nil, "eggs"}, // whose question is for whole eggs
	{"altitude_syrup", "", func(_ *testing.T, d *design.Design) { d.Kitchen.AltitudeM = 2500 }, "foam.syrup.cook_temperature_c"},
	{"syrup_band", "", nil, "foam.syrup.cook_temperature_c"},
	{"syrup_no_boil_off", "", func(_ *testing.T, d *design.Design) { *d = d.WithGrams(design.SyrupPart, 1, 0.5) }, "foam.syrup.cook_temperature_c"},
	{"syrup_weighed_too_light", "", func(_ *testing.T, d *design.Design) { d.Foam.Syrup.WeighedG = 20 }, "foam.syrup.weighed_g"},
	{"weighed_too_heavy", "", func(_ *testing.T, d *design.Design) { d.Foam.Syrup.WeighedG = 4000 }, "foam.syrup.weighed_g"},
	{"stove_loss_exceeds_water", "", func(_ *testing.T, d *design.Design) { d.Dense.StoveLossPercent = 60; d.Dense.Lines = d.Dense.Lines[2:] }, "dense.stove_loss_percent"},
	{"phase_empty", "", func(_ *testing.T, d *design.Design) { d.Dense.Lines = nil }, "dense"}, // no line is there to lead to
	{"composition_assumed", "vanilla_extract 5", nil, ""},
	{"nutrition_incomplete", "blend 70", own("blend, Sweet blend of the pier, fat 0, carbohydrate 99, sugars 99, protein 0, salt 0"), ""},
	{"own_figures_differ", "honey 40", own("honey, Honey of the pier, fat 0, carbohydrate 80, sugars 80, fibre 0, protein 0, salt 0"), ""},
}

// own has the design bring an ingredient of its own, as a pack states it.
func own(pack string) func(*testing.T, *design.Design) {
	return func(t *testing.T, d *design.Design) { d.Own = append(d.Own, packed(t, pack, true)) }
}

func TestEachWarningNamesWhatCausesIt(t *testing.T) {
	m := model.New(market.Library(t))
	for _, c := range caused {
		d := market.Plain()
		where := c.where
		part, line := design.DensePart, c.lines
		if of, l, ok := strings.Cut(c.lines, ": "); ok {
			part, line = map[string]design.Part{"foam": design.FoamPart, "syrup": design.SyrupPart}[of], l
		}
		if id, g, ok := strings.Cut(line, " "); ok {
			grams, err := strconv.ParseFloat(g, 64)
			require.NoError(t, err)
			d = d.WithLineAdded(part, design.Line{Ingredient: id, Grams: grams})
			if where == "" {
				where = "dense.lines[" + strconv.Itoa(len(d.Dense.Lines)-1) + "]"
			}
		}
		if c.change != nil {
			c.change(t, &d)
		}
		r, err := m.Evaluate(d)
		if !assert.NoError(t, err, c.code) {
			continue
		}
		var led []string
		for _, w := range r.Warnings {
			if w.Code == c.code {
				led = append(led, m.Cause(&r, w))
			}
		}
		assert.Contains(t, led, where, c.code)
	}
}

// Two warnings are of colder than a tub may be served at (−24 °C): nothing raises them, but
// where the figures are asked for at another temperature they lead to the one served at.
func TestTheColdLeadsToTheServingTemperature(t *testing.T) {
	m := model.New(market.Library(t))
	r, err := m.Evaluate(market.Plain())
	require.NoError(t, err)
	for _, w := range []model.Warning{
		{Code: "end_of_freezing", Where: "dense", Facts: model.EndOfFreezing{BelowC: -34}},
		{Code: "outside_hardness_law", Where: "foam", Facts: model.OutsideHardnessLaw{AtC: -26, MostPercent: 75, LeastC: -25}},
	} {
		assert.Equal(t, "serving.temperature_c", m.Cause(&r, w), w.Code)
	}
}

// The codes are read out of the package and the table of limits.
func TestEveryCodeHasACauseThatIsTried(t *testing.T) {
	tried := map[string]bool{limits.AlcoholTold.Code: true, // label and card tell of it, no warning does
		"end_of_freezing": true} // in the test above
	for _, c := range caused {
		tried[c.code] = true
	}
	for _, l := range limits.All {
		assert.True(t, tried[l.Code], "%s has no cause in the table of this test", l.Code)
	}
	packages, err := parser.ParseDir(token.NewFileSet(), ".", nil, parser.SkipObjectResolution)
	require.NoError(t, err)
	raised := 0
	ast.Inspect(packages["model"], func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) != 4 {
			return true
		}
		f, ok := call.Fun.(*ast.SelectorExpr)
		if !ok || f.Sel.Name != "warn" {
			return true
		}
		if literal, ok := call.Args[1].(*ast.BasicLit); ok {
			code, err := strconv.Unquote(literal.Value)
			require.NoError(t, err)
			raised++
			assert.True(t, tried[code], "%s has no cause in the table of this test", code)
		}
		return true
	})
	assert.Greater(t, raised, 15)
}
