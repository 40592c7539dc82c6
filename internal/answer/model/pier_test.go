package model_test

import (
	"testing"

	"ripplewright/internal/work/design"
)

// Bases of the stalls on the pier: nuts, tea, pumpkin, no dairy, high up.
const (
	pistachio = "milk_whole 540, cream_whipping_38 110, egg_yolk 75, pistachio_roasted 60, sugar 85, dextrose_monohydrate 45"
	cashews   = "almond_drink 380, coconut_cream 180, cashew 60, egg_yolk_past 75, sugar 80, dextrose_monohydrate 60, salt 1"
	teas      = "milk_2pct 480, cream_whipping_40 180, matcha 8, egg_yolk 85, sugar 80, glucose_syrup_dried 40, dextrose_anhydrous 25"
	pumpkin   = "half_and_half 520, cream_heavy 80, pumpkin_canned 90, yolks 5, sugar_brown 70, maple_syrup 50, dextrose_monohydrate 25, cinnamon 1"
	tahini    = "oat_drink 420, tahini 60, oil_coconut 40, egg_yolk 75, agave_syrup 50, sugar 45, dextrose_monohydrate 40, salt 1"
	cheese    = "milk_whole 480, mascarpone 120, egg_yolk 80, sugar 85, glucose_syrup_de63 50, dextrose_monohydrate 25"
)

func at(m float64, cook float64) func(*design.Design) {
	return func(d *design.Design) { d.Kitchen.AltitudeM, d.Foam.Syrup.CookTemperatureC = m, cook }
}

func TestTrapsOfThePierCarryTheirCodeAndNoOther(t *testing.T) {
	carry(t, []recipe{
		{name: "pistachio whipped to 95 %", codes: "air_beyond_process", dense: pistachio, change: func(d *design.Design) { d.Dense.OverrunPercent = 95 }},
		{name: "cashews under a foam of 580 %", codes: "air_beyond_process", dense: cashews, change: func(d *design.Design) { d.Foam.OverrunPercent = 580 }},
		{name: "tea of a dozen yolks", codes: "yolk_heavy", dense: "milk_2pct 420, cream_whipping_40 150, matcha 8, yolks 13, sugar 100, dextrose_anhydrous 40"},
		{name: "tahini and 240 g sugar", codes: "too_sweet too_sweet", dense: "oat_drink 400, tahini 50, egg_yolk 75, sugar 180, agave_syrup 60"},
		{name: "mascarpone without sugar", codes: "not_sweet_enough", dense: "milk_whole 520, mascarpone 160, egg_yolk 80, sugar 25, glucose_syrup_de42 30"},
		{name: "tahini with 14 g salt", codes: "too_salty", dense: "oat_drink 420, tahini 60, oil_coconut 40, egg_yolk 75, agave_syrup 60, sugar 60, dextrose_monohydrate 40, salt 14"},
		{name: "22 L of pistachio at once", codes: "freezer_overloaded", dense: pistachio, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML, d.Tubs.Shape = 22, 1000, "shallow" }},
		{name: "a tasting of 80 mL", codes: "syrup_too_little", dense: cheese, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 1, 80 }},
		{name: "a yolk slipped in, EU S", codes: "yolk_in_whites", dense: cheese, foam: "whites 6, egg_yolk 4", change: func(d *design.Design) { d.Eggs.System, d.Eggs.Size = "EU", "S" }},
		{name: "cashews on erythritol", codes: "sugar_crystallises", dense: "almond_drink 380, coconut_cream 180, cashew 60, egg_yolk_past 75, erythritol 120, dextrose_monohydrate 40"},
		{name: "dried skim in pumpkin", codes: "sugar_crystallises", dense: pumpkin + ", nfdm_instant 95"},
		{name: "an own monk-fruit blend", codes: "carbohydrate_unnamed", dense: "milk_2pct 480, cream_whipping_40 180, matcha 8, egg_yolk 85, sugar 80, blend 70", own: "blend, Sweet blend of the pier, fat 0, saturates 0, carbohydrate 99, sugars 1, fibre 0, protein 0, salt 0"},
		{name: "bourbon boiled into the syrup", codes: "alcohol_boils_off", dense: pumpkin, syrup: "sugar 95, glucose_liquid_bp 50, water 20, whisky_bourbon_40 45"},
		{name: "a sweet wine custard", codes: "alcohol_boils_off", dense: cheese + ", wine_dessert 90", change: func(d *design.Design) { d.Serving.TemperatureC = -16 }},
		{name: "lime and mascarpone", codes: "acid_with_milk", dense: cheese + ", lime_juice 60"},
		{name: "cranberry in half and half", codes: "acid_with_milk", dense: "half_and_half 500, cream_heavy 90, cranberry 170, yolks 5, sugar 120, dextrose_monohydrate 40"},
		{name: "rice starch in tea", codes: "starch_with_yolk", dense: teas + ", rice_starch 12"},
		{name: "the pan on the scale, cashews", codes: "weighed_too_heavy", dense: cashews, change: func(d *design.Design) { d.Foam.Syrup.WeighedG = 640 }},
		{name: "119 °C at 1900 m", codes: "altitude_syrup", dense: pistachio, change: at(1900, 119)},
	})
}

func TestPlainDesignsOfThePierCarryNoCode(t *testing.T) {
	carry(t, []recipe{
		{name: "pistachio", dense: pistachio},
		{name: "cashews without dairy", dense: cashews, syrup: "sugar 90, agave_syrup 40, water 40"},
		{name: "green tea", dense: teas, syrup: "sugar 90, glucose_syrup_de42 60, water 45"},
		{name: "pumpkin", dense: pumpkin, foam: "whites 5", syrup: "sugar 90, maple_syrup 50, water 30"},
		{name: "tahini and oats", dense: tahini, foam: "egg_white_past 160, cream_of_tartar 0.5"},
		{name: "mascarpone at 250 m", dense: cheese, change: at(250, 117)},
		{name: "rum stirred in, a little", dense: cheese + ", vanilla_extract 4"},
		{name: "an own jam", dense: pistachio + ", jamq 40", own: "jamq, Plum jam of the pier, fat 0, saturates 0, carbohydrate 60, sugars 58, fibre 1, protein 0.4, salt 0.02"},
		{name: "as written, foam over", dense: cheese, foam: "egg_white 210", syrup: "sugar 125, glucose_liquid_bp 65, water 65", change: func(d *design.Design) { d.Batch.Basis = design.BasisAsWritten }},
	})
}
