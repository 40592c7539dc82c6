package say

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
)

// rosehip is invented: what the stall Saltmarsh Quay buys in.
var rosehip = &ingredient.Ingredient{ID: "rosehip", Name: "Rosehip purée"}

// spoken has the facts of every code and the sentence that they make.
var spoken = []struct {
	code  string
	facts any
	want  string
}{
	{"sugar_crystallises", model.Crystallises{Phase: phase.Dense, Solutes: []phase.Dissolved{{Solute: mix.Erythritol, GPer100G: 75, MostGPer100G: 17, AtC: -18}}},
		"At −18 °C there are 75 g erythritol to 100 g of the custard's unfrozen water, where at most 17 g dissolve: it may crystallise, hard and sandy. Replace part of it with sugar or glucose syrup."},
	{"sugar_crystallises", model.Crystallises{Phase: phase.Dense, Solutes: []phase.Dissolved{
		{Solute: mix.Trehalose, GPer100G: 41.9, MostGPer100G: 41.2, AtC: -18}, {Solute: mix.Lactose, Water: phase.Trade, GPer100G: 9.14, MostGPer100G: 100. / 12, UsualGPer100G: 10.5}}},
		"At −18 °C there are 41.9 g trehalose to 100 g of the custard's unfrozen water, where at most 41.2 g dissolve: it may crystallise, hard and sandy. Replace part of it with sugar or glucose syrup. " +
			"There are 9.1 g lactose to 100 g of the custard's water: above 8.3 g it may turn sandy in storage (a rule of the trade, which usual mixes break)."},
	{"sugar_crystallises", model.Crystallises{Phase: phase.Dense, Solutes: []phase.Dissolved{{Solute: mix.Lactose, Water: phase.Trade, GPer100G: 16.02, MostGPer100G: 100. / 12, UsualGPer100G: 10.5}}},
		"There are 16.0 g lactose to 100 g of the custard's water, where usual mixes end at 10.5 g: it is likely to turn sandy. Use less milk powder or milk."},
	{"sugar_crystallises", model.Crystallises{Phase: phase.Foam, Solutes: []phase.Dissolved{{Solute: mix.Sucrose, Water: phase.Syrup, GPer100G: 240, MostGPer100G: 203.9, AtC: 20}}},
		"There are 240 g sucrose to 100 g of the foam's water, where 204 g dissolve at 20 °C: it may turn grainy. Replace part of it with glucose syrup or honey."},
	{"sugar_crystallises", model.Crystallises{Phase: phase.Foam, Solutes: []phase.Dissolved{{Solute: mix.Glucose, Water: phase.Syrup, GPer100G: 140, MostGPer100G: 83.1, AtC: 20}}},
		"There are 140 g glucose to 100 g of the foam's water, where 83 g dissolve at 20 °C: it may turn grainy. Replace part of it with sugar."},
	{"crystals_unchecked", model.CrystalsUnchecked{Phase: phase.Dense, Solutes: []mix.Species{mix.Sorbitol, mix.Maltitol}},
		"Whether the custard's sorbitol and maltitol may crystallise in the freezer is not checked: no published figure for the cold was found. Keep a small tub for some weeks and look."},
	{"outside_hardness_law", model.OutsideHardnessLaw{Phase: phase.Dense, Law: phase.LawRange{FatTooHigh: true, SyrupTooThick: true}, FatPercent: 81},
		"The custard is 81 % fat. So much fat decides by itself how hard it is, and the model does not know how: it gives no word. Use more milk and less fat."},
	{"outside_hardness_law", model.OutsideHardnessLaw{Phase: phase.Foam, Law: phase.LawRange{SyrupTooThick: true, TooCold: true}, AtC: -14, SugarPercent: 82, MostPercent: 75},
		"At −14 °C the liquid of the foam is 82 % sugar. The model knows the thickness of such a liquid up to 75 % and gives no word beyond. Use less sugar or more water."},
	{"outside_hardness_law", model.OutsideHardnessLaw{Phase: phase.Foam, Law: phase.LawRange{TooCold: true}, LeastC: -25},
		"The foam is colder than −25 °C, below which nobody measured how thick its liquid is: the model gives no word."},
	{"carbohydrate_unnamed", model.CarbohydrateUnnamed{Ingredients: []*ingredient.Ingredient{rosehip}, Per100G: 8.2, FreezesAtC: model.Span{Low: -5, High: -3}},
		"Rosehip purée: 8.2 g carbohydrate in 100 g of the mix has no name. It may lie inert or act like a simple sugar, so the mix freezes anywhere from −5.0 to −3.0 °C. Fill in the sugars, polyols or fibre of the pack."},
	{"weighed_too_heavy", model.WeighedTooHeavy{PanG: 900, WentInG: 240},
		"The syrup cannot weigh 900 g: only 240 g went in. Take off the weight of the empty pan. Until then the thermometer counts."},
	{"phase_empty", model.PhaseEmpty{Empty: phase.Dense}, "The custard has no lines: the tub holds foam alone."},
	{"phase_empty", model.PhaseEmpty{Empty: phase.Foam}, "The foam has no lines: the tub holds custard alone."},
	{"stove_loss_exceeds_water", nil, "The stove is set to drive off more water than the custard holds: it takes all there is."},
	{"syrup_weighed_too_light", nil, "The pan weighs less than the solids that went in: weigh it again, without the pan."},
	{"syrup_no_boil_off", model.SyrupNoBoilOff{BoilsAtC: math.NaN(), CookToC: 118}, "The syrup has too little water to boil down. Add water to dissolve the sugar."},
	{"syrup_no_boil_off", model.SyrupNoBoilOff{BoilsAtC: 124.6, CookToC: 118},
		"The syrup boils only at 124.6 °C: it is already thicker than 118 °C makes it. Add water to dissolve the sugar."},
	{"syrup_band", model.SyrupBand{Percent: 3, CookToC: 118},
		"Published tables of boiling syrup differ by about 3 points of solids at 118 °C: weigh the pan to be exact."},
	{"outside_model_range", model.OutsideModelRange{AtC: -20, Solutes: []mix.Species{mix.Ethanol, mix.Glycerol}},
		"At −20 °C the freezing curve of ethanol and glycerol goes beyond the tables it rests on."},
	{"salt_rule_unsettled", model.SaltRuleUnsettled{SaltG: 1.25},
		"1.2 g added salt per 100 g water: two published rules for sugar with salt differ here by 1 to 2 points of frozen water."},
	{"end_of_freezing", model.EndOfFreezing{BelowC: -34.3}, "Below −34 °C no more ice grows: the figures stay at the ice of that temperature."},
	{"brittle", model.Brittle{AtC: -18, AboveGlassK: 14.6}, "At −18 °C the liquid is only 15 °C above its glass: brittle, not chewy."},
	{"tub_overfull", model.TubOverfull{FrozenPercent: 100.3, FillPercent: 95}, "Frozen, the filling swells to 100.3 % of the tub: fill it to 95 % or less."},
	{"tub_overfull", model.TubOverfull{FrozenPercent: 104, FillPercent: 95}, "Frozen, the filling swells to 104 % of the tub: fill it to 95 % or less."},
	{"eggs_unpaired", model.EggsUnpaired{Whites: 2, System: "EU", Size: "M"}, "Cracking whole eggs leaves about 2 whites over (EU M eggs)."},
	{"eggs_unpaired", model.EggsUnpaired{Yolks: 1, System: "US", Size: "large"}, "Cracking whole eggs leaves about 1 yolk over (US large eggs)."},
	{"left_over", model.LeftOver{FoamPercent: 40, FoamML: 407, FoamG: 121, AllPercent: 51.6},
		"At 40 % foam, 407 mL (121 g) foam is left over. 52 % foam uses up both; or spread it over the tubs, or bake it as meringues."},
	{"left_over", model.LeftOver{FoamPercent: 40, DenseML: 120, DenseG: 110, AllPercent: 37},
		"At 40 % foam, 120 mL (110 g) custard is left over. 37 % foam uses up both; or freeze it by itself."},
	{"left_over", model.LeftOver{FoamPercent: 40, DenseML: 12, FoamML: 30, DenseG: 11, FoamG: 9}, "At 40 % foam, 12 mL (11 g) custard and 30 mL (9.0 g) foam are left over."},
	{"foam_draws_water", model.FoamDrawsWater{FreezesAtC: -21.4, FreezerC: -18},
		"The foam freezes only at −21.4 °C, so in an ordinary freezer (−18 °C) it holds no ice and draws water from the custard. Use less sugar or more egg white."},
	{"own_figures_differ", model.OwnFiguresDiffer{Ingredient: rosehip}, "Rosehip purée: this design brings its own figures, which differ from the library's; its own are used."},
	{"own_figures_differ", model.OwnFiguresDiffer{Ingredient: rosehip, Shelf: true}, "Rosehip purée: this design brings its own figures, which differ from those on your own shelf; its own are used."},
	{"composition_assumed", model.CompositionAssumed{Ingredient: rosehip, Assumed: ingredient.Assumption{Code: ingredient.FruitAcid}}, "Rosehip purée: some of its carbohydrate has no name in any source; it counts as fruit acid, and may do nothing."},
	{"nutrition_incomplete", model.NutritionIncomplete{Ingredient: rosehip, Lacks: []ingredient.Column{ingredient.SaturatedFat}},
		"Rosehip purée: no source gives its saturated fat, so the label's figure is a lower bound."},
	{"nutrition_incomplete", model.NutritionIncomplete{Ingredient: rosehip, Lacks: []ingredient.Column{ingredient.SaturatedFat, ingredient.Fibre}},
		"Rosehip purée: no source gives its saturated fat and fibre, so the label's figures are lower bounds."},

	{"box_as_round", cold.BoxAsRound{}, "The box is computed as a round tub of its volume and height."},
	{"box_as_round", cold.BoxAsRound{Dish: true}, "The box is computed as a round dish of its area and depth."},
	{"never_hardens", cold.NeverHardens{CoreC: -15, WithinMinutes: 96 * 60}, "The core does not reach −15 °C within 96 h."},
	{"never_half_frozen", cold.NeverHalfFrozen{AirC: -6}, "In air of −6 °C half of the custard's water never turns to ice: it stays too thin to swirl. Use less sugar or alcohol."},
	{"longer_than_practice", cold.LongBeating{DepthMM: 50, TakesMinutes: 250},
		"Cooks beat about five times over about two hours; this layer of 50 mm takes 4.2 h. Two hours need 15 mm or less, a fan, or a cold metal shelf."},
	{"longer_than_practice", cold.LongHardening{TakesMinutes: 900}, "Cooks harden a tub of this size overnight; this one needs 15 h."},
	{"unlike_practice", cold.UnlikePractice{FromMinutes: 22, ToMinutes: 40, PracticeFromMinutes: 5, PracticeToMinutes: 15}, "Cooks leave a tub of this size out for 5 to 15 min; this one scoops from 22 to 40 min."},
	{"unlike_practice", cold.UnlikePractice{FromMinutes: 22, ToMinutes: math.NaN(), PracticeFromMinutes: 5, PracticeToMinutes: 15}, "Cooks leave a tub of this size out for 5 to 15 min; this one scoops after 22 min."},
	{"wall_before_core", cold.WallBeforeCore{MeltsMinutes: 25}, "The wall begins to melt after 25 min, before the core scoops: take from the outside, or soften the tub in the refrigerator."},
	{"wall_before_core", cold.WallBeforeCore{}, "The wall begins to melt at once, before the core scoops: take from the outside, or soften the tub in the refrigerator."},
	{"swing_thaws_phase", cold.SwingThaws{SwingK: 2, KeepBelowC: -19.2}, "When the freezer swings 2 °C up, one phase loses its ice and draws water from the other: keep the tub at −20 °C or colder."},
	{"water_drawn_in_storage", cold.WaterDrawn{Storage: weeping}, "At −7 °C the foam holds no ice, so it draws water from the other phase, up to 12 g per 100 g of it: it weeps and shrinks. " +
		"The foam freezes at −9.0 °C: give it less sugar, or about 16 g more water per 100 g, and it freezes at −5 °C. Or keep the tub at −11 °C or colder."},
}

var weeping = cold.Storage{AtC: -7, WaterDrawn: true, Drawer: "foam", DrawnG: 12.3, KeepBelowC: -11,
	Change: cold.Change{FreezesAtC: -9.04, WaterG: 16, ThenC: -5}}

func TestEveryCodeHasItsSentence(t *testing.T) {
	for _, c := range spoken {
		assert.Equal(t, c.want, Warning(metric, model.Warning{Code: c.code, Facts: c.facts}), c.code)
	}
}

// The codes and the types of their facts are read out of the packages that warn.
func TestEveryWarningThatIsRaisedIsSpoken(t *testing.T) {
	known := map[string]map[string]bool{}
	for _, c := range spoken {
		if known[c.code] == nil {
			known[c.code] = map[string]bool{}
		}
		name := "nil"
		if c.facts != nil {
			name = reflect.TypeOf(c.facts).Name()
		}
		known[c.code][name] = true
	}
	raised := 0
	for _, dir := range []string{"../../answer/model", "../../answer/cold"} {
		packages, err := parser.ParseDir(token.NewFileSet(), dir, nil, 0)
		require.NoError(t, err)
		for _, p := range packages {
			ast.Inspect(p, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok || len(call.Args) != 4 {
					return true
				}
				f, ok := call.Fun.(*ast.SelectorExpr)
				if !ok || f.Sel.Name != "warn" && f.Sel.Name != "note" {
					return true
				}
				literal, ok := call.Args[1].(*ast.BasicLit)
				if !ok { // a limit's own code: TestALimitsSentenceSaysWhatIsWrongAndTheWayOut has it
					return true
				}
				code, err := strconv.Unquote(literal.Value)
				require.NoError(t, err)
				facts := "nil"
				if x, ok := call.Args[3].(*ast.CompositeLit); ok {
					facts = x.Type.(*ast.Ident).Name
				}
				raised++
				assert.True(t, known[code][facts], "%s with %s has no sentence in the table of this test", code, facts)
				return true
			})
		}
	}
	assert.Greater(t, raised, 25)
}

func TestTheVerdictSaysHowASpoonGoes(t *testing.T) {
	eats := func(dense, foam model.Eating) string {
		return Verdict(metric, model.Verdict{AtC: -14, Dense: dense, Foam: foam})
	}
	well := func(kPa float64) model.Eating { return model.Eating{KPa: kPa} }
	for _, c := range []struct{ want, got string }{
		{"At −14 °C the custard scoops well and the foam spoons very easily.", eats(well(4), well(0.3))},
		{"At −14 °C the custard scoops easily and the foam spoons easily.", eats(well(1), well(1))},
		{"At −14 °C the custard needs force and the foam slumps.", eats(model.Eating{How: model.NeedsForce, KPa: 9}, model.Eating{How: model.TooSoft, KPa: 0.05})},
		{"At −14 °C the custard is too hard and the foam spoons well.", eats(model.Eating{How: model.TooHard, KPa: 19}, well(5))},
		{"At −14 °C the custard is too soft to scoop and the foam needs force.", eats(model.Eating{How: model.TooSoft, KPa: 0.3}, model.Eating{How: model.NeedsForce, KPa: 8})},
		{"Give both phases their ingredients to see how they eat together.", Verdict(metric, model.Verdict{Empty: true})},
	} {
		assert.Equal(t, c.want, c.got)
	}
}

// at is a time with its band, never one that is not reached.
func at(v, low, high float64) cold.Range { return cold.Range{Value: v, Low: low, High: high} }

var never = at(math.NaN(), math.NaN(), math.NaN())

func TestLeaveOutSaysOneThing(t *testing.T) {
	for _, c := range []struct {
		want, look string
		of         cold.Softening
	}{
		{"Leave it out 3 to 7 min: first the edge scoops, then the whole tub. After 25 min the edge is too soft.", "Kitchens vary: start looking at 2 min.",
			cold.Softening{Place: "counter", OK: true, FromMinutes: at(3, 2, 4), WholeMinutes: at(7, 5, 9), ToMinutes: at(25, 20, 33)}},
		{"Leave it in the refrigerator 30 to 50 min: first the edge scoops, then the whole tub. After 1.8 h the edge is too soft.", "Kitchens vary: start looking at 22 min.",
			cold.Softening{Place: "refrigerator", OK: true, FromMinutes: at(30, 22, 41), WholeMinutes: at(50, 40, 70), ToMinutes: at(110, 80, 150)}},
		{"Leave it out 14 min: the edge scoops then. After 31 min the edge is too soft.", "Kitchens vary: start looking at 10 min.",
			cold.Softening{Place: "counter", OK: true, FromMinutes: at(14, 10, 20), WholeMinutes: at(40, 30, 52), ToMinutes: at(31, 22, 44)}},
		{"It scoops straight from the freezer, for 31 min on the counter.", "",
			cold.Softening{Place: "counter", OK: true, FromMinutes: at(0, 0, 0), WholeMinutes: at(0, 0, 0), ToMinutes: at(31, 22, 44)}},
		{"It scoops straight from the freezer, and stays so in the refrigerator.", "",
			cold.Softening{Place: "refrigerator", OK: true, FromMinutes: at(0, 0, 0), ToMinutes: never}},
		{"It is too soft straight from the freezer, at −6 °C.", "", cold.Softening{Why: cold.TooSoft, StartC: -6, FromMinutes: never, ToMinutes: never}},
		{"No time out of the freezer is right: there is no temperature at which both phases eat well.", "", cold.Softening{Why: cold.NeverTogether, FromMinutes: never, ToMinutes: never}},
		{"No time out of the freezer is right: it never scoops well.", "", cold.Softening{Why: cold.NeverScoops, FromMinutes: never, ToMinutes: never}},
		{"How long to leave it out is not known: the model does not know how hard it is.", "", cold.Softening{Why: cold.NobodyKnows, FromMinutes: never, ToMinutes: never}},
		{"It does not soften enough to scoop in the refrigerator in the time computed.", "", cold.Softening{Place: "refrigerator", OK: true, FromMinutes: never, ToMinutes: never}},
	} {
		got := LeaveOut(metric, &c.of)
		assert.Equal(t, c.want, got)
		assert.Equal(t, c.look, LookFrom(metric, &c.of))
		assert.False(t, strings.Contains(got, "straight from the freezer") && strings.Contains(got, "Leave"), "%s: it says two things", got)
	}
}

func TestHardeningWithoutAMinuteIsAtOnce(t *testing.T) {
	h := cold.Harden{StartC: -6.2, MoveC: -10, CoreToC: -15, MoveHours: at(3.1, 2.4, 4), Hours: at(6, 5, 7.5)}
	assert.Equal(t, "From −6.2 °C it is hard enough to move after 3.1 h (2.4 to 4.0) (core at −10 °C), to store after 6.0 h (5.0 to 7.5) (core at −15 °C).", Harden(metric, &h))
	h.MoveHours, h.Hours = at(0, 0, 0), at(0, 0, 0)
	assert.Equal(t, "From −6.2 °C it is hard enough to move at once (core at −10 °C), to store at once (core at −15 °C).", Harden(metric, &h))
	h.Hours = never
	assert.Equal(t, "The core does not come down to −15 °C in the time computed.", Harden(metric, &h))
}

func TestTheSlowerPhaseGoesInFirst(t *testing.T) {
	f := cold.StillFreeze{StartFirst: "custard", HeadStartMinutes: 186}
	assert.Equal(t, "To have both ready together, put the custard in 3.1 h before the foam.", HeadStart(metric, &f))
	f.StartFirst = "foam"
	assert.Equal(t, "To have both ready together, put the foam in 3.1 h before the custard.", HeadStart(metric, &f))
	f.HeadStartMinutes = 0
	assert.Equal(t, "To have both ready together, put them in at the same time.", HeadStart(metric, &f))
	assert.Empty(t, HeadStart(metric, &cold.StillFreeze{}))
}

func TestStillFreezingTellsWhenToBeat(t *testing.T) {
	f := cold.StillFreeze{
		Dense: cold.Cooling{Present: true, Vessel: cold.Vessel{HeightMM: 25}, Stirs: []cold.Stir{{AtMinutes: 30}, {AtMinutes: 60}, {AtMinutes: 90}}, WhipMinutes: at(78, 60, 90), ReadyMinutes: at(115, 90, 150)},
		Foam:  cold.Cooling{Present: true, ReadyMinutes: at(40, 30, 55), ReadyC: -6.25, Means: cold.AsCustard},
	}
	assert.Equal(t, "Custard, 25 mm deep: beat it after 30, 60 and 90 min; whip air in after 78 min, swirl it after 1.9 h (1.5 to 2.5). "+
		"Foam: leave it alone; it is ready after 40 min (30 to 55), as cold as the custard when that is swirled (−6.2 °C).", StillFreeze(metric, &f))
	f.Dense.ReadyMinutes, f.Dense.Means, f.Dense.AirC = never, cold.NeverHalf, -6
	assert.Contains(t, StillFreeze(metric, &f), "Custard: at −6 °C half of its water never turns to ice.")
}

func TestStorageSaysWhoDrawsAndWhatASwingMelts(t *testing.T) {
	both := cold.Storage{AtC: -18, SwingK: 2, Dense: cold.Stored{Present: true, SwingPercent: 6}, Foam: cold.Stored{Present: true, SwingPercent: 41}}
	assert.Equal(t, "At −18 °C both phases hold ice, so no water moves between them; a swing of 2 °C melts and refreezes 6 % of the custard's ice and 41 % of the foam's.", Storage(metric, &both))
	assert.Empty(t, StorageChange(metric, &both))
	assert.Contains(t, Storage(metric, &weeping), "the foam holds no ice, so it draws water")
	assert.Equal(t, "There is one phase only, so no water moves.", Storage(metric, &cold.Storage{Foam: cold.Stored{Present: true}}))
}

// US consumer advice for egg dishes, 160 °F; FDA Food Code 2022, 3-501.14:
// cooling from 135 °F to 70 °F and to 41 °F.
func TestTheStepsKeepThePublishedTemperatures(t *testing.T) {
	f := Style{Scale: Fahrenheit}
	for want, c := range map[string]float64{"160 °F": process.EggFigureC, "135 °F": process.CoolFromC, "70 °F": process.CoolByC, "41 °F": process.ColdC} {
		assert.Equal(t, want, f.Temperature(c))
	}
}
