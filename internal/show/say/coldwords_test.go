package say

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
)

var nowhere = cold.Range{Value: math.NaN(), Low: math.NaN(), High: math.NaN()}

func minutes(v float64) cold.Range { return cold.Range{Value: v, Low: 0.9 * v, High: 1.2 * v} }

// A brief and its sentence are answers to one question: neither names a time that
// the other has not.
func TestLeavingOutIsToldAlikeInBriefAndInFull(t *testing.T) {
	for _, c := range []struct {
		of          cold.Softening
		brief, more string
		full        string
	}{
		{cold.Softening{OK: true, FromMinutes: minutes(3), WholeMinutes: minutes(7), ToMinutes: minutes(20)}, "3 to 7 min", "the ring is too soft by 20 min",
			"Leave it out 3 to 7 min: first the edge scoops, then the whole tub. After 20 min the edge is too soft."},
		{cold.Softening{OK: true, FromMinutes: minutes(3), WholeMinutes: minutes(30), ToMinutes: minutes(20)}, "3 min", "the ring is too soft by 20 min",
			"Leave it out 3 min: the edge scoops then. After 20 min the edge is too soft."},
		{cold.Softening{OK: true, FromMinutes: minutes(0.2), WholeMinutes: minutes(7), ToMinutes: minutes(20)}, "at once", "the ring is too soft by 20 min",
			"It scoops straight from the freezer, for 20 min on the counter."},
		{cold.Softening{OK: true, FromMinutes: nowhere, ToMinutes: nowhere}, "never", "it does not soften that far", "It does not soften enough to scoop on the counter in the time computed."},
		{cold.Softening{Why: cold.TooSoft, StartC: -8, FromMinutes: nowhere, ToMinutes: nowhere}, "no time", "too soft straight from the freezer", "It is too soft straight from the freezer, at −8 °C."},
		{cold.Softening{Why: cold.NeverScoops, FromMinutes: nowhere, ToMinutes: nowhere}, "no time", "it never scoops well", "No time out of the freezer is right: it never scoops well."},
		{cold.Softening{Why: cold.NeverTogether, FromMinutes: nowhere, ToMinutes: nowhere}, "no time", "never right for both phases",
			"No time out of the freezer is right: there is no temperature at which both phases eat well."},
		{cold.Softening{Why: cold.NobodyKnows, FromMinutes: nowhere, ToMinutes: nowhere}, "not known", "the model does not know how hard it is",
			"How long to leave it out is not known: the model does not know how hard it is."},
	} {
		assert.Equal(t, Brief{c.brief, c.more}, LeaveOutBrief(metric, &c.of))
		assert.Equal(t, c.full, LeaveOut(metric, &c.of))
	}
}

func TestTheColdInBrief(t *testing.T) {
	custard := cold.Cooling{Present: true, ReadyMinutes: minutes(200), Stirs: []cold.Stir{{AtMinutes: 30}, {AtMinutes: 60}, {AtMinutes: 240}}}
	assert.Equal(t, Brief{"3.3 h", "to swirl; stir twice"}, CustardBrief(metric, &custard), "a stir after it is ready does not count")
	custard.Stirs = nil
	assert.Equal(t, "to swirl; stir never", CustardBrief(metric, &custard).More)
	custard.Stirs = make([]cold.Stir, 5)
	assert.Equal(t, "to swirl; stir 5 times", CustardBrief(metric, &custard).More)
	assert.Equal(t, Brief{"–", "the tub has none"}, CustardBrief(metric, &cold.Cooling{}))
	assert.Equal(t, Brief{"never", "not stiff enough to swirl"}, CustardBrief(metric, &cold.Cooling{Present: true, ReadyMinutes: nowhere}))

	both := cold.StillFreeze{Dense: custard, Foam: cold.Cooling{Present: true, ReadyMinutes: minutes(45)}, StartFirst: "custard", HeadStartMinutes: 155, ReadyMinutes: 200}
	assert.Equal(t, Brief{"45 min", "to swirl; put it in 2.6 h after the custard"}, FoamBrief(metric, &both))
	assert.Equal(t, "To have both ready together, put the custard in 2.6 h before the foam. Both can be swirled 3.3 h after the first goes in.", Together(metric, &both))
	both.HeadStartMinutes = 0
	assert.Equal(t, "to swirl; leave it alone", FoamBrief(metric, &both).More)
	both.StartFirst = ""
	assert.Contains(t, Together(metric, &both), "cannot be swirled together")
	both.Foam.Present = false
	assert.Equal(t, "Only one phase has to freeze.", Together(metric, &both))

	h := cold.Harden{Hours: cold.Range{Value: 5, Low: 4, High: 6}, MoveHours: cold.Range{Value: 3, Low: 2, High: 4}, MoveC: -10, CoreToC: -15}
	assert.Equal(t, Brief{"5.0 h", "to store; 3.0 h until it can be moved"}, HardenBrief(metric, &h))
	h.MoveC = h.CoreToC
	assert.Equal(t, "until its core is at −15 °C, as cold as this freezer makes it", HardenBrief(metric, &h).More)
	h.Hours = nowhere
	assert.Equal(t, Brief{"never", "the core stays above −15 °C"}, HardenBrief(metric, &h))

	st := cold.Storage{Dense: cold.Stored{Present: true}, Foam: cold.Stored{Present: true}, AgeingIndex: 2.14, Swing: cold.SwingPart}
	assert.Equal(t, Brief{"no water moves", "ice coarsens 2.1 times as fast as at −18 °C"}, StorageBrief(metric, &st))
	st.AgeingIndex = 1.02
	assert.Equal(t, "ice coarsens as fast as at −18 °C", StorageBrief(metric, &st).More)
	st.Swing, st.AgeingIndex = cold.SwingAll, math.NaN()
	assert.Equal(t, Brief{"water moves", "at each swing; no ice to coarsen"}, StorageBrief(metric, &st))
	st.WaterDrawn, st.Drawer = true, "foam"
	assert.Equal(t, Brief{"water moves", "the foam draws it; no ice to coarsen"}, StorageBrief(metric, &st))
}

func TestHowAPhaseStandsInTheFreezer(t *testing.T) {
	c := cold.Cooling{Present: true, VolumeML: 600, Vessel: cold.Vessel{HeightMM: 30}, ReadyMinutes: minutes(200)}
	assert.Equal(t, "600 mL, 30 mm deep. Ready when half of its water is ice: thick and hard to stir.", InDish(metric, &c))
	c.Means, c.ReadyC = cold.AsCustard, -4.2
	assert.Equal(t, "600 mL, 30 mm deep. Ready when it is as cold as the custard when that is swirled (−4.2 °C).", InDish(metric, &c))
	c.ReadyMinutes, c.Means, c.AirC, c.Vessel.Box = nowhere, cold.NeverHalf, -6, true
	assert.Equal(t, "600 mL, 30 mm deep. It is never ready: at −6 °C half of its water never turns to ice. The box is computed as a round dish of its area and depth.", InDish(metric, &c))
	assert.Equal(t, "Mean and ice just after the stir; the edge, the coldest spot, just before it.", StirColumns(4, 4))
	assert.Equal(t, "More stirs follow. "+StirColumns(4, 4), StirColumns(12, 40))
	assert.Equal(t, "It needs no stir before it is ready.", StirColumns(0, 0))
	assert.Equal(t, "Caution: "+Warning(metric, model.Warning{Code: "box_as_round", Facts: cold.BoxAsRound{}}),
		Remark(metric, model.Warning{Code: "box_as_round", Severity: model.Caution, Facts: cold.BoxAsRound{}}))
}

func TestACalibrationIsToldInWords(t *testing.T) {
	p := cold.Default().Counter
	assert.Contains(t, Measured(metric, p), "Nothing is measured")
	assert.Regexp(t, `known to ±\d+ %\.$`, FromAndTo(metric, p))
	p.Factor, p.Measured = 1.234, cold.Measurement{Kind: cold.CoreAt, CoreC: -12.5, StartC: -4, Minutes: 90}.String()
	assert.Equal(t, "Measured: core at −12.5 °C after 90 min from −4 °C. Heat goes 1.23 times as fast as first assumed.", Measured(metric, p))
	assert.Contains(t, FromAndTo(metric, p), "as measured here")
	assert.Equal(t, "calibration, core at −12.5 °C after 90 min from −4 °C", CalibrationStep(metric, p.Measured))
	none := &cold.CalibrationError{Measured: cold.Measurement{Minutes: 2}, ShortestMinutes: 40, LongestMinutes: 300}
	assert.Equal(t, "No freezer in reason takes 2 min for that, but 0.7 to 5.0 h. Look again at what was measured.", NotCalibrated(metric, cold.CoreAt, none))
	assert.Equal(t, "It was stopped.", NotCalibrated(metric, cold.CoreAt, errors.New("it was stopped")))
	assert.Equal(t, "45 min (40 to 54 min)", TimeBand(metric, cold.Range{Value: 45, Low: 40, High: 54}, 1))
	assert.Equal(t, "not reached", TimeBand(metric, nowhere, 60))
}

func TestAFilesHyphenBecomesAMinusBeforeANumberAlone(t *testing.T) {
	for from, to := range map[string]string{"At -18 °C (-3) over-run 5-6": "At −18 °C (−3) over-run 5-6", "-1 g": "−1 g", "a - b": "a - b", "": "", "-": "-"} {
		assert.Equal(t, to, TrueMinus(from))
	}
}

func TestATextBecomesASentenceOnce(t *testing.T) {
	for from, to := range map[string]string{"": "", "öl": "Öl.", "Is it?": "Is it?", "it is.": "It is.", "as follows:": "As follows:", "and so on…": "And so on…"} {
		assert.Equal(t, to, Sentence(from))
	}
	assert.Equal(t, `Fat: "x" is not a number.`, FieldFault("fat", errors.New(`"x" is not a number`)))
}

func TestWhatIsKnownOfARecordIsSaid(t *testing.T) {
	in := &ingredient.Ingredient{ID: "paste", Name: "Fig paste", Own: true, Compound: true, CommonName: "fig paste", CommonNameEU: "figs", Standing: ingredient.Fruit,
		Density: ingredient.Known(1.2), DensityKind: "bulk", GramsPerCup: ingredient.Known(300), AllergensUS: []string{"tree_nut:hazelnut", "milk"},
		Derived: "water: estimate by difference; fat, iron_mg: traces"}
	in.Cells[ingredient.Fat] = ingredient.Known(0.25)
	in.Cells[ingredient.Water] = ingredient.Known(30)
	assert.Equal(t, []string{"Density 1.200 g/mL, as spooned, with the air between.", "1 US cup = 300.0 g."}, RecordMeasures(metric, in))
	assert.Equal(t, []string{"United States: tree nut (hazelnut), milk.", "European Union and United Kingdom: you have named none."}, RecordAllergens(in))
	assert.Equal(t, []string{"Called fig paste in the United States, figs in the EU and UK.", "It is made of several ingredients that the source does not list; the pack does.",
		"The US frozen-dessert standards count it as fruit."}, OnLabel(metric, in))
	assert.Equal(t, []string{"Water: estimate by difference.", "Fat, iron: traces."}, MadeOtherwise(in))
	assert.Equal(t, "2 figures known, 1 of them estimated by a named rule; 34 unknown. In g where no other unit is named.", FiguresKnown(metric, in))
	assert.Equal(t, TableRow{Name: "Sugars", Cells: []string{"unknown", "no limit"}}, FigureRow(metric, in, ingredient.TotalSugars, "Sugars"))
	assert.Equal(t, TableRow{Name: "Trans fat", Cells: []string{"unknown", "0.25"}}, FigureRow(metric, in, ingredient.TransFat, "Trans fat"))
	assert.Equal(t, "None of 36 figures is known yet. In g where no other unit is named.", FiguresKnown(metric, &ingredient.Ingredient{}))
	assert.Equal(t, "224 ingredients, none of them your own", IngredientCount(metric, 224, 0))
	assert.Equal(t, "224 ingredients, 1 of them your own", IngredientCount(metric, 224, 1))
}

func TestEveryDisagreementHasASentenceWithItsFigures(t *testing.T) {
	said := map[string]bool{}
	for _, c := range ingredient.DisagreementCodes {
		text := Disagreement(metric, ingredient.Disagreement{Code: c, FoundG: 97.613, DueG: 81.5})
		assert.Regexp(t, `^[A-Z].* 97\.61 g.*\.$`, text, c)
		said[text] = true
	}
	assert.Len(t, said, len(ingredient.DisagreementCodes))
	assert.Equal(t, "Fat, carbohydrate and protein make about 332 kcal, the pack says 1050: is a figure in the wrong field?", EnergyDoubt(metric, 332, 1050))
	assert.Equal(t, "The fatty acids come to 10.91 g, the fat is 10.39 g.", Disagreement(metric, ingredient.Disagreement{Code: ingredient.PartsOfFat, FoundG: 10.91, DueG: 10.39}))
}
