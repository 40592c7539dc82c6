package say

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

var (
	sugar    = &ingredient.Ingredient{ID: "sugar", KitchenName: "sugar"}
	dextrose = &ingredient.Ingredient{ID: "dextrose", KitchenName: "dextrose"}
)

func TestAChangeSaysWhatToDoNowAndBefore(t *testing.T) {
	for _, c := range []struct {
		want string
		of   []balance.Change
	}{
		{"Weigh 57 g sugar for the custard, not 31 g", []balance.Change{{Ingredient: sugar, Before: 31, After: 57}}},
		{"Add 24 g Rosehip purée to the syrup", []balance.Change{{Part: design.SyrupPart, Line: -1, Ingredient: rosehip, After: 24}}},
		{"Leave the sugar out of the foam", []balance.Change{{Part: design.FoamPart, Ingredient: sugar, Before: 31}}},
		{"Swap 30 g sugar in the custard for dextrose", []balance.Change{{Ingredient: sugar, Before: 90, After: 60}, {Line: -1, Ingredient: dextrose, After: 30}}},
		{"Swap 30 g sugar in the custard for dextrose and let the tub warm to −12 °C", []balance.Change{{Ingredient: sugar, Before: 90, After: 60}, {Line: 2, Ingredient: dextrose, Before: 10, After: 40}, {Path: "serving.temperature_c", Before: -14, After: -12}}},
		{"Weigh 57 g sugar for the custard, not 31 g; serve it at −16 °C", []balance.Change{{Ingredient: sugar, Before: 31, After: 57}, {Ingredient: dextrose, Before: 70.2, After: 70.4}, {Path: "serving.temperature_c", Before: -14, After: -16}}},
		{"Weigh 60 g sugar for the custard, not 90 g; add 31 g dextrose to the syrup", []balance.Change{{Ingredient: sugar, Before: 90, After: 60}, {Part: design.SyrupPart, Line: -1, Ingredient: dextrose, After: 31}}},
		{"Use 6 yolks for the custard, not 8", []balance.Change{{Ingredient: sugar, Pieces: true, CountOf: design.Yolks, Before: 8, After: 6}}},
		{"Whip 20 % air into the custard, not 98 %", []balance.Change{{Path: "dense.overrun_percent", Before: 98, After: 20}}},
		{"Make 24 tubs at a time, not 59", []balance.Change{{Path: "tubs.count", Before: 59, After: 24}}},
	} {
		assert.Equal(t, c.want, Changes(metric, &balance.Proposal{Changes: c.of}))
	}
}

// A tub that changes and is served warmer is told the minutes of the changed tub,
// which are those of the cold page once it is taken.
func TestARemedyOfSeveralChangesTellsTheMinutesOut(t *testing.T) {
	m, kitchen := model.New(market.Library(t)), cold.Default()
	d := market.Plain()
	d = d.WithGrams(design.DensePart, 3, 110)
	d.Serving.TemperatureC = -9
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	found := balance.Remedies{List: []balance.Proposal{{Design: d, Result: r, Changes: []balance.Change{
		{Ingredient: sugar, Before: 95, After: 110}, {Path: "serving.temperature_c", Before: -14, After: -9}}}}}
	p := &found.List[0]
	assert.Equal(t, "Weigh 110 g sugar for the custard, not 95 g, and let the tub warm to −9 °C", strings.ReplaceAll(Changes(metric, p), "; ", ", and "))
	require.NoError(t, found.TimeOut(context.Background(), kitchen))
	page, err := cold.Plan(context.Background(), d, &r, kitchen, cold.Options{NoPictures: true})
	require.NoError(t, err)
	require.Positive(t, Out(&page.Counter))
	assert.Equal(t, "Weigh 110 g sugar for the custard, not 95 g; leave the tub out "+OutFor(metric, &page.Counter)+", to serve it at −9 °C", Changes(metric, p))
}

func TestAdviceTellsWarmerFromColder(t *testing.T) {
	well := model.Verdict{Good: true, AtC: -14, Dense: model.Eating{KPa: 4}, Foam: model.Eating{KPa: 1}}
	serve := func(now, to float64) *balance.Remedies {
		p := balance.Proposal{Changes: []balance.Change{{Path: "serving.temperature_c", Before: now, After: to}}}
		p.Result.Verdict = well
		return &balance.Remedies{List: []balance.Proposal{p}}
	}
	const then = " The custard then scoops well and the foam spoons easily."
	bad := model.Verdict{}
	for _, c := range []struct {
		want    string
		now, to float64
	}{
		{"Serve it warmer: leave the tub out until it is at −14 °C." + then, -18, -14},
		{"Serve it colder, at −9.5 °C." + then, -6, -9.5},
		{"Serve it warmer, at −19 °C." + then, -22, -19},
	} {
		assert.Equal(t, c.want, Advice(metric, bad, serve(c.now, c.to), nil))
	}
	out := cold.Answer{Counter: cold.Softening{Place: "counter", StartC: -18, OK: true, FromMinutes: at(3, 2, 4), WholeMinutes: at(7, 5, 9), ToMinutes: at(25, 20, 33)}}
	assert.Equal(t, "Serve it warmer, at −14 °C: leave the tub out 3 to 7 min."+then, Advice(metric, bad, serve(-20, -14), &out))
	assert.Contains(t, LeaveOut(metric, &out.Counter), "3 to 7 min", "the same answer")
	out.Counter.FromMinutes = at(0, 0, 0)
	assert.Equal(t, "Serve it warmer, at −14 °C, straight from a freezer at −18 °C."+then, Advice(metric, bad, serve(-20, -14), &out))
	assert.Empty(t, Advice(metric, well, serve(-18, -14), nil), "a good tub needs none")
	assert.Empty(t, Advice(metric, bad, nil, nil), "nothing is known yet")
	assert.NotEmpty(t, Advice(metric, model.Verdict{Empty: true}, nil, nil))
}

func TestAdviceNamesWhatStaysOutOfReach(t *testing.T) {
	soft := model.Eating{How: model.TooSoft, KPa: 0.2}
	found := balance.Remedies{Unmet: []balance.Unmet{{Phase: &soft, Role: phase.Dense}, {Code: "too_salty"}},
		Nearest: &balance.Proposal{Changes: []balance.Change{{Ingredient: sugar, Before: 90, After: 60}}}}
	assert.Equal(t, "No change within reach mends this at −14 °C: the custard is too soft to scoop; too much salt. Nearest: weigh 60 g sugar for the custard, not 90 g.",
		Advice(metric, model.Verdict{AtC: -14}, &found, nil))
}

func TestACauseIsAWarningWithoutItsCounsel(t *testing.T) {
	w := model.Warning{Code: "foam_draws_water", Facts: model.FoamDrawsWater{FreezesAtC: -19.5, FreezerC: -18}}
	assert.Equal(t, "The foam freezes only at −19.5 °C, so in an ordinary freezer (−18 °C) it holds no ice and draws water from the custard.", Cause(metric, w))
}
