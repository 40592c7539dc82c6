package say_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/show/say"
)

// Each sentence names what is wrong and the way out; the opposite is not in it.
func TestALimitsSentenceSaysWhatIsWrongAndTheWayOut(t *testing.T) {
	over := func(l *limits.Limit, v, extra float64) model.OverLimit {
		step, ok := l.Passed(v)
		assert.True(t, ok, l.What)
		return model.OverLimit{Limit: l, Step: step, Value: v, Extra: extra}
	}
	told := map[string]bool{"alcohol_told": true, "carbohydrate_unnamed": true} // no warnings of their own here
	for _, c := range []struct {
		facts     any
		code      string
		says, not []string
	}{
		{over(&limits.CustardAir, 120, 0), "air_beyond_process", []string{"120 %", "factory", "60 % at most"}, []string{"more air"}},
		{over(&limits.CustardAir, 45, 0), "air_beyond_process", []string{"45 %", "40 % at most"}, []string{"factory"}},
		{over(&limits.FoamAir, 850, 0), "air_beyond_process", []string{"850 %", "700 % at most"}, []string{"custard"}},
		{over(&limits.Yolk, 333, 0), "yolk_heavy", []string{"333 g", "fewer yolks"}, []string{"more yolk"}},
		{over(&limits.SweetCustard, 29, 0), "too_sweet", []string{"The custard", "29 %", "less sugar"}, []string{"Add sugar"}},
		{over(&limits.SweetTub, 30, 0), "too_sweet", []string{"tub", "30 %"}, []string{"Add sugar"}},
		{over(&limits.FlatCustard, 8, 0), "not_sweet_enough", []string{"8 %", "Add sugar"}, []string{"less sugar"}},
		{over(&limits.Salt, 20, 0), "too_salty", []string{"20 g"}, []string{"Add"}},
		{over(&limits.FreezerLoad, 2.1, 14.7), "freezer_overloaded", []string{"14.70 kg", "2.1 times", "in parts"}, nil},
		{over(&limits.SyrupDepth, 0.6, 10), "syrup_too_little", []string{"10 g", "Weigh the pan"}, nil},
		{over(&limits.YolkInWhite, 5, 0), "yolk_in_whites", []string{"Move it to the custard"}, nil},
		{over(&limits.AlcoholInSyrup, 9, 33), "alcohol_boils_off", []string{"33 g", "boils away", "leave it out"}, []string{"count all"}},
		{over(&limits.AlcoholOnStove, 2, 20), "alcohol_boils_off", []string{"stir it in cold", "count all"}, []string{"leave it out"}},
		{over(&limits.AcidHot, 4, 0), "acid_with_milk", []string{"the milk curdles", "chill it"}, []string{"may curdle"}},
		{over(&limits.AcidHot, 0.6, 0), "acid_with_milk", []string{"the milk may curdle"}, []string{"milk curdles"}},
		{over(&limits.AcidCold, 12, 0), "acid_with_milk", []string{"even stirred in cold it thickens"}, []string{"heated"}},
		{over(&limits.StarchWithYolk, 15, 0), "starch_with_yolk", []string{"boil", "95 °C"}, []string{"80"}},
		{model.WeighedTooHeavy{PanG: 900, WentInG: 240}, "weighed_too_heavy", []string{"900 g", "240 g", "empty pan"}, nil},
		{model.AltitudeSyrup{AltitudeM: 3000, AskedC: 118, AtSeaC: 129.4, HereC: 107.12, WaterBoilsC: 89.97}, "altitude_syrup", []string{"3000 m", "cook to 107 °C", "129 °C at sea level"}, []string{"add water"}},
		{model.AltitudeSyrup{AltitudeM: 4400, AskedC: 140, AtSeaC: math.NaN(), HereC: 126, WaterBoilsC: 85}, "altitude_syrup", []string{"cook to 126 °C"}, []string{"NaN"}},
	} {
		told[c.code] = true
		text := say.Warning(say.Style{}, model.Warning{Code: c.code, Facts: c.facts})
		for _, s := range c.says {
			assert.Contains(t, text, s, c.code)
		}
		for _, s := range c.not {
			assert.NotContains(t, text, s, c.code)
		}
	}
	for _, l := range limits.All {
		assert.True(t, told[l.Code], "%s has no sentence", l.Code)
	}
}
