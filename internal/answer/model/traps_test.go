package model_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// What a cook of the quay makes where nothing else is said.
const (
	vanilla = "milk_whole 500, cream_heavy 150, egg_yolk 90, sugar 90, dextrose_monohydrate 50"
	oats    = "oat_drink 400, coconut_milk 250, egg_yolk 80, sugar 70, dextrose_monohydrate 80, salt 1"
	cacao   = "milk_whole 500, cream_heavy 100, egg_yolk 70, sugar 60, dextrose_monohydrate 55, chocolate_dark_70_85 70, cocoa_dutch 10"
	whites  = "egg_white 160"
	caramel = "sugar 95, glucose_liquid_bp 50, water 50"
)

// recipe is a design as a cook writes it down: lines as "milk_whole 500, yolks 5".
type recipe struct {
	name, codes string // codes: all of kitchenCodes that it carries
	dense       string
	foam, syrup string // "" for whites, caramel
	raw         bool   // without syrup
	change      func(*design.Design)
	own         string // a pack: "id, Name, fat 0, carbohydrate 8"
	us          bool   // whose carbohydrate counts the fibre
}

// kitchenCodes are the codes of what no kitchen can make and nobody would eat.
var kitchenCodes = append([]string{"sugar_crystallises", "carbohydrate_unnamed"}, limitCodes...)

// Sorbitol and maltitol have no figure to be held against: the maker is told so, and
// the verdict does not hang on it.
func TestASolubilityThatNobodyPublishedIsSaid(t *testing.T) {
	for _, c := range []struct {
		line string
		want int
	}{{"sorbitol", 60}, {"maltitol", 60}, {"sorbitol", 5}, {"dextrose_monohydrate", 60}} {
		d := market.Plain().WithLineAdded(design.DensePart, market.Line(c.line, float64(c.want)))
		r, err := model.New(market.Library(t)).Evaluate(d)
		require.NoError(t, err)
		i := slices.IndexFunc(r.Warnings, func(w model.Warning) bool { return w.Code == "crystals_unchecked" })
		told := c.want > 5 && c.line != "dextrose_monohydrate"
		require.Equal(t, told, i >= 0, "%+v", c)
		if told {
			assert.Equal(t, model.Note, r.Warnings[i].Severity)
			assert.Equal(t, "dense", r.Warnings[i].Where)
			assert.Contains(t, say.Warning(say.Style{}, r.Warnings[i]), "custard's "+c.line+" may crystallise in the freezer is not checked")
		}
	}
}

// Designs of the stall, most with one trap each: they carry its code and no
// other, on both sides of a bound where one is near.
func TestEachTrapCarriesItsCodeAndNoOther(t *testing.T) {
	carry(t, []recipe{
		{name: "a custard at 120 %", codes: "air_beyond_process", dense: vanilla, change: func(d *design.Design) { d.Dense.OverrunPercent = 120 }},
		{name: "oats, a hair over what a crank gives", codes: "air_beyond_process", dense: oats, change: func(d *design.Design) { d.Dense.OverrunPercent = 41 }},
		{name: "a foam at 850 %", codes: "air_beyond_process syrup_too_little", dense: vanilla, change: func(d *design.Design) { d.Foam.OverrunPercent = 850 }},
		{name: "a foam at 520 %, whites of EU eggs", codes: "air_beyond_process", dense: "milk_whole 500, cream_whipping_38 120, yolks 5, sugar 90, dextrose_monohydrate 50", foam: "whites 5", change: func(d *design.Design) { d.Foam.OverrunPercent = 520; d.Eggs.System, d.Eggs.Size = "EU", "L" }},
		{name: "chocolate at 65 %", codes: "air_beyond_process", dense: cacao, change: func(d *design.Design) { d.Dense.OverrunPercent = 65 }},
		{name: "a third yolk", codes: "yolk_heavy", dense: "milk_whole 350, cream_heavy 120, egg_yolk 300, sugar 90, dextrose_monohydrate 50"},
		{name: "fourteen yolks", codes: "yolk_heavy", dense: "milk_whole 520, cream_heavy 100, yolks 14, sugar 110, dextrose_monohydrate 60", foam: "whites 6", change: func(d *design.Design) { d.Eggs.System, d.Eggs.Size = "EU", "M" }},
		{name: "dried yolk", codes: "yolk_heavy", dense: "milk_whole 600, cream_heavy 100, egg_yolk_dried 120, sugar 110, dextrose_monohydrate 50"},
		{name: "whole eggs and yolks", codes: "yolk_heavy", dense: "milk_whole 300, eggs 8, egg_yolk 90, sugar 120, dextrose_monohydrate 50"},
		{name: "pasteurised yolk in oats", codes: "yolk_heavy", dense: "oat_drink 350, coconut_milk 200, egg_yolk_past 190, sugar 70, dextrose_monohydrate 80"},
		{name: "sugared yolk", codes: "yolk_heavy", dense: "milk_whole 350, cream_heavy 100, egg_yolk_sugared 260, sugar 40, dextrose_monohydrate 40"},
		{name: "sweet, both custard and tub", codes: "too_sweet too_sweet", dense: "milk_whole 450, cream_heavy 120, egg_yolk 80, sugar 190, dextrose_monohydrate 60", change: func(d *design.Design) { d.Serving.TemperatureC = -16 }},
		{name: "condensed milk and honey", codes: "too_sweet too_sweet sugar_crystallises", dense: "milk_whole 300, condensed_milk_sweet 380, egg_yolk 60, honey 90"},
		{name: "oats with fructose", codes: "too_sweet too_sweet", dense: "oat_drink 500, coconut_milk 150, egg_yolk 80, fructose 160"},
		{name: "a tub of sweet foam", codes: "too_sweet too_sweet", dense: "milk_whole 450, cream_heavy 120, egg_yolk 80, sugar 155, dextrose_monohydrate 20", foam: "egg_white 100", syrup: "sugar 190, water 60", change: func(d *design.Design) { d.Foam.OverrunPercent = 150; d.Blend.FoamVolumePercent = 70 }},
		{name: "dulce de leche and sugar", codes: "too_sweet", dense: "milk_whole 450, cream_heavy 120, egg_yolk 80, sugar 120, dulce_de_leche 250"},
		{name: "hardly sugared", codes: "not_sweet_enough", dense: "milk_whole 560, cream_heavy 150, egg_yolk 80, sugar 40"},
		{name: "maltodextrin for sugar", codes: "not_sweet_enough", dense: "milk_whole 500, cream_heavy 150, egg_yolk 80, sugar 30, maltodextrin 80"},
		{name: "oats with a little dextrose", codes: "not_sweet_enough", dense: "oat_drink 450, coconut_milk 250, egg_yolk 80, dextrose_monohydrate 60"},
		{name: "2 % salt", codes: "too_salty", dense: vanilla + ", salt 17"},
		{name: "miso", codes: "too_salty", dense: vanilla + ", miso 130"},
		{name: "salt in the whites", codes: "too_salty", dense: vanilla, foam: "egg_white 160, salt 5"},
		{name: "salt in the syrup", codes: "too_salty", dense: vanilla, syrup: caramel + ", salt 5"},
		{name: "an own salt caramel", codes: "too_salty too_sweet", dense: vanilla + ", quay_car 200", own: "quay_car, Salt caramel of the quay, fat 10, saturates 6, carbohydrate 60, sugars 58, fibre 0, protein 2, salt 6"},
		{name: "salted butter and salt", codes: "too_salty", dense: "milk_whole 450, egg_yolk 80, butter_salted 60, sugar 100, dextrose_monohydrate 50, salt 8"},
		{name: "forty shallow tubs", codes: "freezer_overloaded", dense: vanilla, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 40, 600 }},
		{name: "one tub of 18 L", codes: "freezer_overloaded", dense: vanilla, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 1, 18000 }},
		{name: "16 kg as written", codes: "freezer_overloaded", dense: "milk_whole 8000, cream_heavy 2000, egg_yolk 1300, sugar 1400, dextrose_monohydrate 700", foam: "egg_white 1600", syrup: "sugar 950, glucose_liquid_bp 500, water 500", change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 30, 500; d.Batch.Basis = design.BasisAsWritten }},
		{name: "10 g of syrup", codes: "syrup_too_little", dense: "milk_whole 50, cream_heavy 15, egg_yolk 9, sugar 9, dextrose_monohydrate 5", foam: "egg_white 8", syrup: "sugar 8, water 3", change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 1, 100; d.Batch.Basis = design.BasisAsWritten }},
		{name: "one tub of 120 mL", codes: "syrup_too_little", dense: vanilla, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 1, 120 }},
		{name: "one white", codes: "syrup_too_little", dense: "milk_whole 250, cream_heavy 70, yolks 2, sugar 45, dextrose_monohydrate 25", foam: "whites 1", syrup: "sugar 25, water 10", change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 1, 500; d.Batch.Basis = design.BasisAsWritten }},
		{name: "2 g of yolk in the whites", codes: "yolk_in_whites", dense: vanilla, foam: "egg_white 158, egg_yolk 2"},
		{name: "an egg among the whites", codes: "yolk_in_whites", dense: vanilla, foam: "whites 4, eggs 1"},
		{name: "whole egg from the carton", codes: "yolk_in_whites", dense: vanilla, foam: "egg_white_past 130, egg_whole_past 20"},
		{name: "a yolk among the whites, oats", codes: "yolk_in_whites", dense: oats, foam: "whites 5, yolks 1", change: func(d *design.Design) { d.Eggs.System, d.Eggs.Size = "EU", "M" }},
		{name: "yolk in the syrup", codes: "yolk_in_whites", dense: vanilla, syrup: caramel + ", egg_yolk 10"},
		{name: "erythritol", codes: "sugar_crystallises", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, erythritol 110, sugar 40"},
		{name: "erythritol in the foam", codes: "sugar_crystallises", dense: vanilla, syrup: "erythritol 120, sugar 40, water 60"},
		{name: "a foam of much sugar", codes: "sugar_crystallises", dense: vanilla, foam: "egg_white 80", syrup: "sugar 200, water 60"},
		{name: "much milk powder", codes: "sugar_crystallises", dense: "milk_whole 500, cream_heavy 120, nfdm_regular 95, egg_yolk 80, sugar 110, dextrose_monohydrate 20"},
		{name: "whey powder", codes: "sugar_crystallises", dense: "milk_whole 500, cream_heavy 150, whey_sweet_dried 70, egg_yolk 80, sugar 100"},
		{name: "lactose", codes: "sugar_crystallises", dense: "oat_drink 400, coconut_milk 250, egg_yolk 80, sugar 80, lactose 70"},
		{name: "xylitol", codes: "sugar_crystallises", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, xylitol 130"},
		{name: "trehalose", codes: "sugar_crystallises", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, trehalose 200, sugar 60"},
		{name: "isomalt", codes: "sugar_crystallises", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, isomalt 130, sugar 60"},
		{name: "a foam of dextrose", codes: "sugar_crystallises", dense: vanilla, foam: "egg_white 90", syrup: "dextrose_anhydrous 190, water 60"},
		{name: "an own pack of erythritol", codes: "sugar_crystallises", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, quay_ery 110, sugar 40", own: "quay_ery, Erythritol of the quay, fat 0, saturates 0, carbohydrate 100, sugars 0, polyols 100, fibre 0, protein 0, salt 0"},
		{name: "evaporated milk", codes: "sugar_crystallises", dense: "evap_milk_skim 600, cream_heavy 150, egg_yolk 80, sugar 90"},
		{name: "an own pack of allulose", codes: "carbohydrate_unnamed", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, sugar 90, quay_allu 60", own: "quay_allu, Allulose of the quay, fat 0, saturates 0, carbohydrate 100, sugars 0, fibre 0, protein 0, salt 0"},
		{name: "a pack without its sugars", codes: "carbohydrate_unnamed", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, sugar 60, quay_syr 90", own: "quay_syr, Rice syrup of the quay, fat 0, carbohydrate 78, protein 0.3, salt 0.02"},
		{name: "a pack that names a third", codes: "carbohydrate_unnamed", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, sugar 100, quay_mix 60", own: "quay_mix, Sweetener mix, fat 0, carbohydrate 95, sugars 30, polyols 0, fibre 0, protein 0, salt 0"},
		{name: "such a pack in the syrup", codes: "carbohydrate_unnamed", dense: vanilla, syrup: "sugar 70, quay_syr 70, water 50", own: "quay_syr, Date syrup, fat 0, carbohydrate 80, sugars 40, protein 1, salt 0.02"},
		{name: "a US pack", codes: "carbohydrate_unnamed", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, sugar 90, quay_fib 60", own: "quay_fib, Sweet fibre, fat 0, carbohydrate 96, fibre 20, sugars 4, protein 0, salt 0", us: true},
		{name: "rum in the syrup", codes: "alcohol_boils_off", dense: vanilla, syrup: caramel + ", rum_40 40"},
		{name: "liqueur in the syrup", codes: "alcohol_boils_off", dense: vanilla, syrup: caramel + ", coffee_liqueur 30"},
		{name: "wine for the syrup's water", codes: "alcohol_boils_off", dense: vanilla, syrup: "sugar 95, glucose_liquid_bp 50, wine_table 60"},
		{name: "whisky in the custard", codes: "alcohol_boils_off", dense: vanilla + ", whisky_43 40", change: func(d *design.Design) { d.Serving.TemperatureC = -15 }},
		{name: "wine in the custard", codes: "alcohol_boils_off", dense: vanilla + ", wine_dessert 60", change: func(d *design.Design) { d.Serving.TemperatureC = -15 }},
		{name: "15 g of rum in the custard", codes: "alcohol_boils_off", dense: vanilla + ", rum_40 15", change: func(d *design.Design) { d.Serving.TemperatureC = -15 }},
		{name: "vanilla in the syrup", codes: "alcohol_boils_off", dense: vanilla, syrup: caramel + ", vanilla_extract 6"},
		{name: "lemon", codes: "acid_with_milk", dense: "milk_whole 500, cream_heavy 120, egg_yolk 90, sugar 110, dextrose_monohydrate 60, lemon_juice 60"},
		{name: "citric acid", codes: "acid_with_milk", dense: vanilla + ", citric_acid 5"},
		{name: "passion fruit", codes: "acid_with_milk", dense: "milk_whole 450, cream_heavy 120, egg_yolk 90, sugar 100, dextrose_monohydrate 60, passion_fruit 120"},
		{name: "vinegar", codes: "acid_with_milk", dense: vanilla + ", vinegar 40"},
		{name: "raspberries", codes: "acid_with_milk", dense: "milk_whole 450, cream_heavy 120, egg_yolk 90, sugar 100, dextrose_monohydrate 60, raspberry 160"},
		{name: "tartaric acid", codes: "acid_with_milk", dense: vanilla + ", tartaric_acid 3"},
		{name: "an own sour purée", codes: "acid_with_milk", dense: vanilla + ", quay_red 120", own: "quay_red, Redcurrant purée, fat 0, carbohydrate 8, sugars 8, fibre 3, protein 1, salt 0"},
		{name: "orange juice", codes: "acid_with_milk", dense: "milk_whole 450, cream_heavy 120, egg_yolk 90, sugar 90, dextrose_monohydrate 60, orange_juice 150"},
		{name: "goat's milk and yuzu", codes: "acid_with_milk", dense: "milk_goat 500, cream_light 120, egg_yolk 90, sugar 110, dextrose_monohydrate 60, yuzu_juice 30"},
		{name: "lime with cream alone", codes: "acid_with_milk", dense: "cream_light 500, water 100, egg_yolk 90, sugar 110, dextrose_monohydrate 60, lime_juice 60"},
		{name: "cream of tartar in the custard", codes: "acid_with_milk", dense: vanilla + ", cream_of_tartar 6"},
		{name: "cornstarch", codes: "starch_with_yolk", dense: vanilla + ", cornstarch 15"},
		{name: "flour", codes: "starch_with_yolk", dense: vanilla + ", wheat_flour 25"},
		{name: "tapioca in oats", codes: "starch_with_yolk", dense: oats + ", tapioca_starch 12"},
		{name: "potato starch and whole eggs", codes: "starch_with_yolk", dense: "milk_whole 500, cream_heavy 150, eggs 3, sugar 90, dextrose_monohydrate 50, potato_starch 10", change: func(d *design.Design) { d.Eggs.System, d.Eggs.Size = "EU", "L" }},
		{name: "an own custard powder", codes: "starch_with_yolk", dense: vanilla + ", quay_cp 30", own: "quay_cp, Custard powder, fat 0, carbohydrate 87, sugars 0, starch 87, fibre 1, protein 0.5, salt 0"},
		{name: "an own cornflour", codes: "starch_with_yolk", dense: vanilla + ", quay_cf 15", own: "quay_cf, Cornflour of the quay, fat 0.1, carbohydrate 88, sugars 0, fibre 0.1, protein 0.4, salt 0"},
		{name: "2 g of arrowroot", codes: "starch_with_yolk", dense: vanilla + ", arrowroot 2"},
		{name: "the pan weighed along", codes: "weighed_too_heavy", dense: vanilla, change: func(d *design.Design) { d.Foam.Syrup.WeighedG = 900 }},
		{name: "3 g heavier than what went in", codes: "weighed_too_heavy", dense: vanilla, change: func(d *design.Design) { d.Foam.Syrup.WeighedG = 198 }},
		{name: "118 °C at 3000 m", codes: "altitude_syrup", dense: vanilla, change: func(d *design.Design) { d.Kitchen.AltitudeM = 3000 }},
		{name: "117 °C at 1500 m", codes: "altitude_syrup", dense: vanilla, change: func(d *design.Design) { d.Kitchen.AltitudeM = 1500; d.Foam.Syrup.CookTemperatureC = 117 }},
		{name: "118 °C at 320 m", codes: "altitude_syrup", dense: vanilla, change: func(d *design.Design) { d.Kitchen.AltitudeM = 320 }},
		{name: "118 °C at 300 m", codes: "altitude_syrup", dense: vanilla, change: func(d *design.Design) { d.Kitchen.AltitudeM = 300 }},
		{name: "102 °C at 4500 m", codes: "altitude_syrup", dense: vanilla, change: func(d *design.Design) { d.Kitchen.AltitudeM = 4500; d.Foam.Syrup.CookTemperatureC = 102 }},
	})
}

// What a home cook makes carries none of them.
func TestWhatAHomeCookMakesStaysQuiet(t *testing.T) {
	carry(t, []recipe{
		{name: "vanilla", dense: vanilla + ", vanilla_extract 6"},
		{name: "sugar alone", dense: "milk_whole 500, cream_heavy 200, egg_yolk 100, sugar 130", syrup: "sugar 180, water 60"},
		{name: "counted eggs of the EU", dense: "milk_whole 500, cream_whipping_38 200, yolks 6, sugar 130, salt 1", foam: "whites 5", syrup: "sugar 170, water 60", change: func(d *design.Design) { d.Eggs.System, d.Eggs.Size = "EU", "M" }},
		{name: "chocolate", dense: cacao},
		{name: "coffee", dense: vanilla + ", coffee_espresso 40"},
		{name: "nut", dense: "milk_whole 500, cream_heavy 100, egg_yolk 80, sugar 90, dextrose_monohydrate 40, hazelnut_roasted 60, salt 1"},
		{name: "honey", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, sugar 70, honey 60", syrup: "sugar 90, honey 40, water 50"},
		{name: "dairy free", dense: oats},
		{name: "banana", dense: "milk_whole 450, cream_heavy 150, egg_yolk 80, sugar 90, dextrose_monohydrate 30, banana 100"},
		{name: "salted caramel", dense: "milk_whole 500, cream_heavy 200, egg_yolk 90, sugar 120, dextrose_monohydrate 40, salt 5"},
		{name: "tartar foam", dense: vanilla, foam: "egg_white 160, cream_of_tartar 1"},
		{name: "two tubs", dense: vanilla, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 2, 500 }},
		{name: "ten tubs", dense: vanilla, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 10, 500 }},
		{name: "250 m", dense: vanilla, change: func(d *design.Design) { d.Kitchen.AltitudeM = 250 }},
		{name: "nfdm", dense: "milk_whole 500, cream_heavy 150, nfdm_regular 25, egg_yolk 80, sugar 100, dextrose_monohydrate 30"},
		{name: "cornstarch without yolk", dense: "milk_whole 500, cream_heavy 200, sugar 110, dextrose_monohydrate 30, cornstarch 12"},
		{name: "whites whipped with sugar", dense: vanilla, foam: "egg_white 160, sugar 160", raw: true},
		{name: "pumpkin", dense: "milk_whole 420, cream_heavy 150, egg_yolk 80, sugar 100, dextrose_monohydrate 30, pumpkin_canned 120, cinnamon 2"},
		{name: "mint", dense: vanilla + ", mint_peppermint 10"},
		{name: "pistachio", dense: "milk_whole 500, cream_heavy 100, egg_yolk 80, sugar 110, dextrose_monohydrate 30, pistachio_roasted 60"},
		{name: "maple", dense: "milk_whole 500, cream_heavy 150, egg_yolk 90, maple_syrup 120, sugar 30", syrup: "maple_syrup 60, sugar 90, water 30"},
		{name: "coconut", dense: "coconut_milk 400, milk_whole 250, egg_yolk 80, sugar 110, dextrose_monohydrate 40"},
		{name: "seven yolks", dense: "milk_whole 400, cream_heavy 200, yolks 7, sugar 120", foam: "whites 5", syrup: "sugar 165, water 55"},
		{name: "as written", dense: "milk_whole 500, cream_heavy 150, yolks 5, sugar 120", foam: "whites 4", syrup: "sugar 160, water 55", change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 3, 500; d.Batch.Basis = design.BasisAsWritten }},
		{name: "brown sugar", dense: "milk_whole 500, cream_heavy 150, egg_yolk 80, sugar_brown 120", syrup: "sugar_brown 90, glucose_syrup_de42 50, water 50"},
		{name: "milk choc", dense: "milk_whole 500, cream_heavy 80, egg_yolk 70, sugar 60, dextrose_monohydrate 40, chocolate_milk 100"},
		{name: "weighed", dense: vanilla, change: func(d *design.Design) { d.Foam.Syrup.WeighedG = 165 }},
		{name: "own hazelnut paste", dense: "milk_whole 500, cream_heavy 80, egg_yolk 80, sugar 100, dextrose_monohydrate 40, hz 70", own: "hz, Hazelnut paste, fat 61, saturates 5, carbohydrate 7, sugars 4, fibre 10, protein 15, salt 0"},
		{name: "own fig jam", dense: "milk_whole 500, cream_heavy 150, egg_yolk 80, sugar 100, fig 80", own: "fig, Fig jam, fat 0.2, saturates 0, carbohydrate 60, sugars 58, fibre 1, protein 0.5, salt 0"},
		{name: "tea", dense: vanilla + ", tea_leaves 10"},
		{name: "mascarpone", dense: "milk_whole 500, mascarpone 120, egg_yolk 60, sugar 120"},
		{name: "ricotta", dense: "milk_whole 350, ricotta_whole 200, egg_yolk 60, sugar 120, lemon_peel 3"},
		{name: "yogurt", dense: "yogurt_greek_whole 400, cream_heavy 100, egg_yolk 60, sugar 120"},
		{name: "sour cream", dense: "sour_cream 200, milk_whole 350, egg_yolk 60, sugar 120"},
		{name: "peanut", dense: "milk_whole 500, cream_heavy 80, egg_yolk 70, sugar 100, dextrose_monohydrate 40, peanut_butter 70"},
		{name: "dates", dense: "milk_whole 500, cream_heavy 100, egg_yolk 80, sugar 50, dates_deglet 90"},
		{name: "raisins", dense: "milk_whole 500, cream_heavy 100, egg_yolk 80, sugar 90, raisins 60"},
		{name: "dried whites", dense: vanilla, foam: "egg_white_dried_powder 14, water 120"},
		{name: "golden", dense: "milk_whole 500, cream_heavy 150, egg_yolk 80, golden_syrup 70, sugar 60", syrup: "golden_syrup 60, sugar 90, water 30"},
		{name: "biscuits", dense: "milk_whole 500, cream_heavy 150, egg_yolk 80, sugar 120, graham_crackers 40"},
	})
}

func carry(t *testing.T, recipes []recipe) {
	t.Helper()
	m := model.New(market.Library(t))
	for _, x := range recipes {
		r, err := m.Evaluate(x.design(t))
		require.NoError(t, err, x.name)
		var got []string
		for _, w := range r.Warnings {
			if slices.Contains(kitchenCodes, w.Code) {
				got = append(got, w.Code)
				assert.False(t, r.Verdict.Good && w.Severity > model.Note && !w.Handled, "%s: good in spite of %s", x.name, w.Code)
			}
		}
		assert.ElementsMatch(t, strings.Fields(x.codes), got, x.name)
	}
}

func (x *recipe) design(t *testing.T) design.Design {
	t.Helper()
	d := design.New()
	d.Tubs.FillPercent = 92
	d.Dense.OverrunPercent, d.Dense.StoveLossPercent, d.Foam.OverrunPercent = 20, 5, 300
	d.Dense.Lines = written(t, x.dense)
	d.Foam.Lines = written(t, or(x.foam, whites))
	if !x.raw {
		d.Foam.Syrup.Lines = written(t, or(x.syrup, caramel))
	}
	if x.own != "" {
		d.Own = []*ingredient.Ingredient{packed(t, x.own, x.us)}
	}
	if x.change != nil {
		x.change(&d)
	}
	return d
}

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

func written(t *testing.T, text string) []design.Line {
	t.Helper()
	var lines []design.Line
	for _, x := range strings.Split(text, ", ") {
		what, n := amount(t, x)
		if part := design.EggPart(what); part.IngredientID() != "" {
			lines = append(lines, design.Line{Ingredient: part.IngredientID(), Count: n, CountOf: part})
		} else {
			lines = append(lines, market.Line(what, n))
		}
	}
	return lines
}

func amount(t *testing.T, text string) (what string, n float64) {
	t.Helper()
	what, number, _ := strings.Cut(text, " ")
	n, err := strconv.ParseFloat(number, 64)
	require.NoError(t, err, text)
	return what, n
}

func packed(t *testing.T, text string, withFibre bool) *ingredient.Ingredient {
	t.Helper()
	words := strings.Split(text, ", ")
	p := ingredient.Pack{PerG: 100, AvailableCarbohydrate: !withFibre}
	for _, x := range words[2:] {
		what, n := amount(t, x)
		i := slices.IndexFunc(ingredient.PackFigures(), func(f ingredient.PackFigure) bool { return f.Path == what })
		require.GreaterOrEqual(t, i, 0, what)
		*ingredient.PackFigures()[i].At(&p) = ingredient.Known(n)
	}
	in, err := ingredient.FromPack(words[0], words[1], p)
	require.NoError(t, err)
	return in
}
