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
	"ripplewright/internal/work/design"
)

// Each warning comes of what the design was changed by: its last line of custard, unless
// said otherwise.
var caused = []struct {
	code, lines string // to the custard of the market's stall
	change      func(*design.Design)
	where       string
}{
	{"yolk_heavy", "egg_yolk 400", nil, ""},
	{"too_sweet", "sugar 400", nil, ""},
	{"too_salty", "salt 20", nil, ""},
	{"salt_rule_unsettled", "salt 20", nil, ""},
	{"alcohol_boils_off", "rum_40 80", nil, ""},
	{"sugar_crystallises", "nfdm_regular 300", nil, ""},
	{"outside_hardness_law", "cream_heavy 3000", nil, ""},
	{"air_beyond_process", "", func(d *design.Design) { d.Dense.OverrunPercent = 120 }, "dense.overrun_percent"},
	{"freezer_overloaded", "", func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 60, 1000 }, "tubs"},
	{"syrup_too_little", "", func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 1, 80 }, "tubs"},
	{"tub_overfull", "", func(d *design.Design) { d.Tubs.FillPercent = 100 }, "tubs.fill_percent"},
	{"altitude_syrup", "", func(d *design.Design) { d.Kitchen.AltitudeM = 2500 }, "foam.syrup.cook_temperature_c"},
	{"syrup_band", "", nil, "foam.syrup.cook_temperature_c"},
	{"syrup_weighed_too_light", "", func(d *design.Design) { d.Foam.Syrup.WeighedG = 20 }, "foam.syrup.weighed_g"},
	{"weighed_too_heavy", "", func(d *design.Design) { d.Foam.Syrup.WeighedG = 4000 }, "foam.syrup.weighed_g"},
	{"stove_loss_exceeds_water", "", func(d *design.Design) { d.Dense.StoveLossPercent = 60; d.Dense.Lines = d.Dense.Lines[2:] }, "dense.stove_loss_percent"},
	{"phase_empty", "", func(d *design.Design) { d.Dense.Lines = nil }, "dense"},
}

func TestEachWarningNamesWhatCausesIt(t *testing.T) {
	m := model.New(market.Library(t))
	for _, c := range caused {
		d := market.Plain()
		where := c.where
		if id, g, ok := strings.Cut(c.lines, " "); ok {
			grams, err := strconv.ParseFloat(g, 64)
			require.NoError(t, err)
			d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: id, Grams: grams})
			where = "dense.lines[" + strconv.Itoa(len(d.Dense.Lines)-1) + "]"
		}
		if c.change != nil {
			c.change(&d)
		}
		r, err := m.Evaluate(d)
		if !assert.NoError(t, err, c.code) {
			continue
		}
		found := false
		for _, w := range r.Warnings {
			if w.Code == c.code {
				assert.Equal(t, where, m.Cause(&r, w), c.code)
				found = true
				break
			}
		}
		assert.True(t, found, "%s is not raised", c.code)
	}
}

// settled are the codes whose place is a line, a setting or a list of the file already, and
// those that no design of the market's raises.
var settled = map[string]bool{"end_of_freezing": true, "composition_assumed": true, "own_figures_differ": true, "nutrition_incomplete": true,
	"eggs_unpaired": true, "left_over": true, "foam_draws_water": true, "syrup_no_boil_off": true,
	"brittle": true, "crystals_unchecked": true, "outside_model_range": true}

// The codes are read out of the package.
func TestEveryCodeHasACauseThatIsTried(t *testing.T) {
	tried := map[string]bool{}
	for _, c := range caused {
		tried[c.code] = true
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
			assert.True(t, tried[code] || settled[code], "%s has no cause in the table of this test", code)
		}
		return true
	})
	assert.Greater(t, raised, 15)
}
