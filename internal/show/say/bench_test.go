package say

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/design"
)

func TestTheBenchIsWordedInTheMakersUnits(t *testing.T) {
	d := quay()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	whole, brief := PhaseLines(metric, &r, &r.Dense)
	assert.Regexp(t, `^freezes at −[\d.]+ °C \(−[\d.]+ to −[\d.]+ °C\) · sweetness [\d.]+ %\n\d+ % of the water frozen \(\d+ to \d+ %\), \d+ % ice by volume\n[\d]+ g, [\d]+ mL · [\d.]+ g/mL$`, whole)
	assert.Regexp(t, `^freezes at −[\d.]+ °C · sweetness [\d.]+ %\n\d+ % frozen, \d+ % ice by volume\n[\d]+ g, [\d]+ mL$`, brief)
	whole, brief = PhaseLines(us, &r, &r.Dense)
	assert.Contains(t, whole, "°F")
	assert.Contains(t, whole, "fl oz")
	assert.Regexp(t, `\d g \([^)]+ oz\), [\d.]+ fl oz`, whole)
	assert.Regexp(t, `\n\d+ g, [\d.]+ fl oz$`, brief, "where ounces beside grams have no room")
	d.Batch.Basis = design.BasisTubs
	whole, brief = TubLines(us, d, &r)
	assert.Regexp(t, `^[\d.]+ tubs?, \d+ g \([^)]+ oz\), sweetness`, whole)
	assert.Regexp(t, `^[\d.]+ tubs?, \d+ g, sweetness`, brief)
	d.Batch.Basis = design.BasisAsWritten
	whole, brief = WordAndHardness(metric, "firm", model.Span{Value: 7.2, Low: 3.1, High: 14})
	assert.Equal(t, "firm, 7.2 kPa (3.1 to 14 kPa)", whole)
	assert.Equal(t, "firm, 3.1 to 14 kPa", brief)
	whole, _ = TubLines(metric, d, &r)
	assert.Regexp(t, `^as written: [\d.]+ tubs?; \d+ mL (custard|foam) left over\n`, whole)
	assert.Regexp(t, `^Boiled to syrup, \d+ % solids$`, SyrupTitle(metric, &r.Syrup))
	r.Syrup.Present = false
	assert.Equal(t, "Boiled to syrup", SyrupTitle(metric, &r.Syrup))
}

// Where the long sentence has no room, a short one says the same.
func TestNoTemperatureIsSaidBrieflyToo(t *testing.T) {
	d := quay()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	r.Blend.Both.OK, r.Verdict.Empty = false, false
	whole, brief := TubLines(metric, d, &r)
	assert.Contains(t, whole, "\nthere is no temperature here at which both eat well")
	assert.Contains(t, brief, "\nno temperature suits both")
}

// A tub of foam alone has no "both", in any language.
func TestATubOfOnePhaseIsToldAlone(t *testing.T) {
	d := quay()
	d.Dense.Lines = nil
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	r.Blend.Both.OK, r.Blend.Both.FromC, r.Blend.Both.ToC = true, -14, -9
	r.Verdict.Empty = false
	for tag, want := range map[string]string{"en": "\nit eats well from −14", "de": "\ngut zu essen von −14"} {
		require.True(t, tongue.Speak(tag))
		t.Cleanup(func() { tongue.Speak(tongue.English) })
		whole, _ := TubLines(metric, d, &r)
		assert.Contains(t, whole, want)
	}
}

func TestRibbonsAreToldOneWay(t *testing.T) {
	hard := ripple.Advice{Phase: "dense", Firmness: ripple.Hard, LimitMM: 3, ThickestMM: 8, Exceeded: true}
	assert.Equal(t, "Custard: very hard, about 37 kPa; keep its ribbons under 3 mm (the thickest tenth has 8 mm) or serve it warmer.", RibbonAdvice(metric, hard, 37))
	assert.Contains(t, RibbonAdvice(us, hard, 37), "under 0.12 in")
	assert.Equal(t, "Foam: its hardness is not known.", RibbonAdvice(metric, ripple.Advice{Phase: "foam"}, nan))
	assert.Contains(t, RibbonWords(metric), "blended under 1 mm, blush 1 to 3 mm, ribbon 3 to 10 mm, lump over 10 mm")
	assert.Equal(t, "This cut is smaller than a spoonful.", Spoonfuls(metric, ripple.Spoonful{}, ripple.Spoonful{}))
	assert.Equal(t, "Eight spoonfuls in ten hold 20 to 60 % foam.",
		Spoonfuls(metric, ripple.Spoonful{Samples: 9, P10: .2, P90: .6}, ripple.Spoonful{P10: nan}))
	assert.Equal(t, "92 × 80 mm", metric.Size(92, 80))
	assert.Equal(t, "3.6 × 3.1 in", us.Size(92, 80))
}

func TestTimesOfARowAreInOneUnit(t *testing.T) {
	assert.Equal(t, "1.3 h", Reached(metric, 78, 100, 138))
	assert.Equal(t, "78 min", Reached(metric, 78, 90, nan))
	assert.Equal(t, "at once", Reached(metric, 0.2, 500))
	assert.Equal(t, "not reached", Reached(metric, nan, 500))
	assert.False(t, strings.Contains(metric.DurationLike(59, 700), "min"))
}

// A figure over its limit does not read like the limit.
func TestAFigureOverItsLimitReadsSo(t *testing.T) {
	w := model.Warning{Code: "too_sweet", Facts: model.OverLimit{Limit: &limits.SweetCustard, Step: limits.Step{At: 21}, Value: 21.2}}
	assert.Contains(t, Warning(metric, w), "as sweet as 21.2 % sugar: above 21.0 %")
	w.Facts = model.OverLimit{Limit: &limits.SweetCustard, Step: limits.Step{At: 21}, Value: 25.2}
	assert.Contains(t, Warning(metric, w), "as sweet as 25 % sugar: above 21 %")
}
