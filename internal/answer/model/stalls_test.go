package model_test

import (
	"testing"

	"ripplewright/internal/work/design"
)

// Bases of other cooks of the quay.
const (
	gelato   = "milk_whole 600, cream_light 120, nfdm_regular 20, yolks 3, sugar 110, glucose_syrup_dried 35"
	coconut  = "coconut_milk 450, almond_drink 200, egg_yolk_past 70, sugar 90, glucose_syrup_de42 60, salt 1"
	goat     = "milk_goat 560, creme_fraiche 140, egg_yolk 85, honey 80, sugar 50"
	darkest  = "milk_whole 520, cream_whipping_38 120, yolks 4, chocolate_dark_60_69 90, cocoa_natural 12, sugar 80, dextrose_anhydrous 30"
	almonds  = "almond_drink 450, oil_coconut 60, almond_butter 40, egg_yolk 80, sugar 80, dextrose_monohydrate 70"
	soy      = "soy_drink_unsweetened 480, coconut_cream 160, egg_yolk 80, sugar 95, dextrose_monohydrate 55"
	honeyed  = "sugar 70, honey 60, water 45"
	mapled   = "maple_syrup 90, sugar 80, water 20"
	doubled  = "sugar 190, glucose_syrup_de63 100, water 100"
	tartared = "egg_white_past 165, cream_of_tartar 1"
)

func euM(d *design.Design) { d.Eggs.System, d.Eggs.Size = "EU", "M" }

func TestTrapsOfOtherStallsCarryTheirCodeAndNoOther(t *testing.T) {
	carry(t, []recipe{
		// air_beyond_process
		{name: "gelato at 75 %", codes: "air_beyond_process", dense: gelato, change: func(d *design.Design) { d.Dense.OverrunPercent = 75; euM(d) }},
		{name: "coconut at 100 %", codes: "air_beyond_process", dense: coconut, syrup: mapled, change: func(d *design.Design) { d.Dense.OverrunPercent = 100 }},
		{name: "goat at 45 %", codes: "air_beyond_process", dense: goat, syrup: honeyed, change: func(d *design.Design) { d.Dense.OverrunPercent = 45 }},
		{name: "foam at 600 %, pasteurised white", codes: "air_beyond_process", dense: darkest, foam: tartared, change: func(d *design.Design) { d.Foam.OverrunPercent = 600 }},
		{name: "foam at 900 %, soy", codes: "air_beyond_process syrup_too_little", dense: soy, change: func(d *design.Design) { d.Foam.OverrunPercent = 900 }},
		{name: "foam at 550 %, sugar whipped in", codes: "air_beyond_process", dense: gelato, foam: "egg_white 160, sugar 170", raw: true, change: func(d *design.Design) { d.Foam.OverrunPercent = 550 }},
		{name: "foam alone beyond", codes: "air_beyond_process", dense: vanilla, change: func(d *design.Design) { d.Foam.OverrunPercent, d.Blend.FoamVolumePercent = 700, 100 }},
		// yolk_heavy
		{name: "16 yolks, US jumbo", codes: "yolk_heavy", dense: "milk_whole 500, cream_heavy 150, yolks 16, sugar 140, dextrose_monohydrate 50", change: func(d *design.Design) { d.Eggs.Size = "jumbo" }},
		{name: "coconut and a third yolk", codes: "yolk_heavy", dense: "coconut_milk 350, almond_drink 100, egg_yolk 250, sugar 100, dextrose_monohydrate 50"},
		{name: "chocolate, dried yolk and fresh", codes: "yolk_heavy", dense: darkest + ", egg_yolk_dried 40, egg_yolk 60"},
		{name: "whole eggs by the dozen", codes: "yolk_heavy", dense: "milk_whole 250, cream_heavy 120, eggs 12, sugar 160, dextrose_monohydrate 60", change: euM},
		{name: "own yolk from the carton", codes: "yolk_heavy", dense: "milk_whole 450, cream_heavy 100, carton 190, sugar 110, dextrose_monohydrate 40", own: "carton, Egg yolk from the carton, fat 26, saturates 9, carbohydrate 1, sugars 1, protein 15, salt 0.2"},
		// too_sweet
		{name: "chocolate with 260 g sugar", codes: "too_sweet too_sweet", dense: "milk_whole 450, cream_heavy 120, egg_yolk 70, chocolate_milk 80, sugar 200, dextrose_monohydrate 30", change: func(d *design.Design) { d.Serving.TemperatureC = -18 }},
		{name: "agave and dates", codes: "too_sweet", dense: "oat_drink 400, coconut_milk 150, egg_yolk 80, agave_syrup 160, dates_deglet 60"},
		{name: "honey alone, much", codes: "too_sweet", dense: "milk_goat 450, cream_heavy 150, egg_yolk 90, honey 240"},
		{name: "white chocolate", codes: "too_sweet too_sweet", dense: "oat_drink 450, cream_heavy 80, egg_yolk 70, chocolate_white 120, sugar 150"},
		// not_sweet_enough
		{name: "dark chocolate unsweetened", codes: "not_sweet_enough", dense: "milk_whole 600, cream_heavy 120, egg_yolk 80, chocolate_unsweetened 60, sugar 45"},
		{name: "trehalose beside sugar", codes: "not_sweet_enough", dense: "milk_whole 560, cream_heavy 150, egg_yolk 90, trehalose 20, sugar 40"},
		{name: "oats and inulin", codes: "not_sweet_enough", dense: "oat_drink 450, coconut_milk 200, egg_yolk 80, inulin 60, sugar 40"},
		{name: "peanut butter, salted, hardly sugared", codes: "not_sweet_enough", dense: "milk_whole 560, peanut_butter 80, egg_yolk 70, sugar 50"},
		{name: "polydextrose for sugar", codes: "not_sweet_enough", dense: "milk_whole 520, cream_heavy 150, egg_yolk 80, polydextrose 110, sugar 20"},
		// too_salty
		{name: "12 g salt in chocolate", codes: "too_salty", dense: darkest + ", salt 12"},
		{name: "salt in coconut", codes: "too_salty", dense: coconut + ", salt 10"},
		{name: "salt in the whites beside tartar", codes: "too_salty", dense: gelato, foam: tartared + ", salt 4"},
		{name: "own salted liquorice", codes: "too_salty", dense: vanilla + ", liq 60", own: "liq, Salted liquorice paste, fat 0, saturates 0, carbohydrate 60, sugars 55, fibre 2, protein 3, salt 20"},
		{name: "baking soda", codes: "too_salty", dense: vanilla + ", baking_soda 16"},
		// freezer_overloaded
		{name: "60 tubs of 250", codes: "freezer_overloaded", dense: gelato, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 60, 250 }},
		{name: "3 tubs of 5 L, chocolate", codes: "freezer_overloaded", dense: darkest, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 3, 5000 }},
		{name: "500 tubs", codes: "freezer_overloaded", dense: coconut, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 500, 120; euM(d) }},
		{name: "24 tubs of 500 at 10 % foam", codes: "freezer_overloaded", dense: goat, change: func(d *design.Design) { d.Tubs.Count, d.Blend.FoamVolumePercent = 24, 10 }},
		// syrup_too_little
		{name: "one cup of 100 mL", codes: "syrup_too_little", dense: soy, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 1, 100 }},
		{name: "a tub with a thread of foam", codes: "syrup_too_little", dense: gelato, change: func(d *design.Design) { d.Tubs.Count, d.Blend.FoamVolumePercent = 1, 15 }},
		{name: "12 g of syrup", codes: "syrup_too_little", dense: goat, syrup: "sugar 10, water 4"},
		{name: "half a white as written", codes: "syrup_too_little", dense: "milk_whole 120, cream_heavy 40, yolks 1, sugar 25, dextrose_monohydrate 10", foam: "egg_white 16", syrup: "sugar 18, water 6", change: func(d *design.Design) {
			d.Tubs.Count, d.Tubs.VolumeML, d.Batch.Basis = 1, 250, design.BasisAsWritten
		}},
		// yolk_in_whites
		{name: "dried whole egg in whites", codes: "yolk_in_whites", dense: vanilla, foam: "egg_white 160, egg_whole_dried 3"},
		{name: "half a gram of yolk", codes: "yolk_in_whites", dense: coconut, foam: tartared + ", egg_yolk_past 0.5"},
		{name: "dried whites and an egg", codes: "yolk_in_whites", dense: gelato, foam: "egg_white_dried_powder 14, water 110, eggs 1"},
		{name: "only whole eggs whipped", codes: "yolk_in_whites", dense: gelato, foam: "eggs 3"},
		{name: "own liquid egg in the whites", codes: "yolk_in_whites", dense: gelato, foam: "egg_white 120, liq 40", own: "liq, Liquid egg, fat 10, saturates 3, carbohydrate 1, sugars 1, protein 12, salt 0.3"},
		// sugar_crystallises
		{name: "erythritol in coconut", codes: "sugar_crystallises", dense: "coconut_milk 450, almond_drink 200, egg_yolk 70, erythritol 80, sugar 70"},
		{name: "erythritol for the syrup", codes: "sugar_crystallises", dense: goat, syrup: "erythritol 150, water 60"},
		{name: "dry sugar foam at 132 °C", codes: "sugar_crystallises", dense: vanilla, foam: "egg_white 60", syrup: "sugar 170, water 60", change: func(d *design.Design) { d.Foam.Syrup.CookTemperatureC = 132 }},
		{name: "skim milk powder in gelato", codes: "sugar_crystallises", dense: "milk_whole 560, cream_light 100, nfdm_instant 100, yolks 4, sugar 110, glucose_syrup_dried 40"},
		{name: "condensed and evaporated milk", codes: "sugar_crystallises", dense: "evap_milk_whole 400, condensed_milk_sweet 180, cream_heavy 100, egg_yolk 60"},
		{name: "sugar whipped in, 3 to 1", codes: "sugar_crystallises", dense: gelato, foam: "egg_white 100, sugar 300", raw: true},
		// carbohydrate_unnamed
		{name: "own monk sweetener", codes: "carbohydrate_unnamed", dense: "milk_whole 520, cream_heavy 150, egg_yolk 80, sugar 100, monk 40", own: "monk, Monk blend, fat 0, carbohydrate 99, sugars 0, fibre 0, protein 0, salt 0"},
		{name: "own powder in the syrup", codes: "carbohydrate_unnamed", dense: vanilla, syrup: "sugar 90, allu 60, water 50", own: "allu, Rare sugar, fat 0, saturates 0, carbohydrate 98, sugars 0, polyols 0, fibre 0, protein 0, salt 0"},
		{name: "own malt extract, sugars unknown", codes: "carbohydrate_unnamed", dense: "oat_drink 450, coconut_milk 200, egg_yolk 80, sugar 70, malt 90", own: "malt, Malt extract, fat 0.1, carbohydrate 75, protein 5, salt 0.1"},
		// alcohol_boils_off
		{name: "rum in a maple syrup", codes: "alcohol_boils_off", dense: gelato, syrup: mapled + ", rum_40 30"},
		{name: "malt whisky in the syrup", codes: "alcohol_boils_off", dense: goat, syrup: caramel + ", whisky_43 35"},
		{name: "bourbon in chocolate", codes: "alcohol_boils_off", dense: darkest + ", whisky_bourbon_40 25", change: func(d *design.Design) { d.Serving.TemperatureC = -15 }},
		{name: "half a cup of table wine in the syrup", codes: "alcohol_boils_off", dense: coconut, syrup: "sugar 120, glucose_liquid_bp 40, wine_table 80"},
		// acid_with_milk
		{name: "rhubarb pack", codes: "acid_with_milk", dense: vanilla + ", rhu 150", own: "rhu, Rhubarb purée, fat 0, carbohydrate 4, sugars 3, fibre 2, protein 0.8, salt 0"},
		{name: "lime in goat's milk", codes: "acid_with_milk", dense: goat + ", lime_juice 50"},
		{name: "cranberries", codes: "acid_with_milk", dense: "milk_whole 450, cream_heavy 120, egg_yolk 90, sugar 120, dextrose_monohydrate 50, cranberry 90"},
		{name: "citric acid, 2 g", codes: "acid_with_milk", dense: gelato + ", citric_acid 2"},
		{name: "sour cherries", codes: "acid_with_milk", dense: "milk_2pct 480, cream_heavy 140, yolks 5, sugar 110, dextrose_monohydrate 40, cherry_sour_frozen 130"},
		{name: "own farm milk and lemon", codes: "acid_with_milk", dense: "farm 620, egg_yolk 80, sugar 110, dextrose_monohydrate 40, lemon_juice 40", own: "farm, Farm milk, fat 5, saturates 3, carbohydrate 5, sugars 5, protein 3.4, salt 0.1"},
		// starch_with_yolk
		{name: "rice flour in gelato", codes: "starch_with_yolk", dense: gelato + ", rice_flour 18"},
		{name: "own pudding powder", codes: "starch_with_yolk", dense: vanilla + ", pud 25", own: "pud, Vanilla pudding powder, fat 0, carbohydrate 88, sugars 1, starch 86, fibre 0, protein 0.4, salt 0.5"},
		{name: "arrowroot in coconut", codes: "starch_with_yolk", dense: coconut + ", arrowroot 10"},
		{name: "cornstarch and whole eggs in soy", codes: "starch_with_yolk", dense: "soy_drink_unsweetened 480, coconut_cream 160, eggs 2, sugar 95, dextrose_monohydrate 55, cornstarch 20", change: euM},
		// weighed_too_heavy
		{name: "a steel pan", codes: "weighed_too_heavy", dense: gelato, syrup: mapled, change: func(d *design.Design) { d.Foam.Syrup.WeighedG = 1150 }},
		{name: "2 % over", codes: "weighed_too_heavy", dense: goat, syrup: honeyed, change: func(d *design.Design) { d.Foam.Syrup.WeighedG = 179 }},
		{name: "big pan", codes: "weighed_too_heavy", dense: vanilla, syrup: doubled, change: func(d *design.Design) { d.Foam.Syrup.WeighedG = 430 }},
		// altitude_syrup
		{name: "121 °C at 2240 m", codes: "altitude_syrup", dense: coconut, syrup: mapled, change: func(d *design.Design) { d.Kitchen.AltitudeM = 2240; d.Foam.Syrup.CookTemperatureC = 121 }},
		{name: "112 °C at 1600 m", codes: "altitude_syrup", dense: gelato, change: func(d *design.Design) { d.Kitchen.AltitudeM = 1600; d.Foam.Syrup.CookTemperatureC = 112 }},
		{name: "118 °C at 4300 m, weak pan", codes: "altitude_syrup", dense: goat, syrup: doubled, change: func(d *design.Design) { d.Kitchen.AltitudeM = 4300; d.Foam.Syrup.CookTemperatureC = 104 }},
	})
}

func TestPlainDesignsOfOtherStallsStayQuiet(t *testing.T) {
	carry(t, []recipe{
		{name: "gelato", dense: gelato},
		{name: "gelato in EU eggs", dense: gelato, foam: "whites 4", change: euM},
		{name: "coconut", dense: coconut, syrup: mapled},
		{name: "goat and honey", dense: goat, syrup: honeyed},
		{name: "darkest", dense: darkest, foam: tartared},
		{name: "almonds", dense: almonds},
		{name: "soy", dense: soy, syrup: mapled},
		{name: "vanilla, double extract", dense: vanilla + ", vanilla_extract 8"},
		{name: "vanilla at 39 %", dense: vanilla, change: func(d *design.Design) { d.Dense.OverrunPercent = 39 }},
		{name: "foam at 480 %", dense: vanilla, change: func(d *design.Design) { d.Foam.OverrunPercent = 480 }},
		{name: "foam at 200 %", dense: vanilla, change: func(d *design.Design) { d.Foam.OverrunPercent = 200 }},
		{name: "nine yolks to the litre", dense: "milk_whole 700, cream_heavy 300, yolks 9, sugar 210", foam: "whites 6", syrup: "sugar 200, water 70"},
		{name: "saffron and rose", dense: vanilla + ", saffron 0.3, water 10"},
		{name: "cinnamon and ginger", dense: gelato + ", cinnamon 3, ginger_ground 2"},
		{name: "tahini", dense: "milk_whole 540, cream_heavy 80, egg_yolk 80, sugar 120, dextrose_monohydrate 30, tahini 60, salt 1"},
		{name: "figs", dense: "milk_whole 520, cream_heavy 120, egg_yolk 80, sugar 90, figs_dried 70"},
		{name: "avocado", dense: "milk_whole 450, cream_heavy 100, egg_yolk 60, sugar 130, avocado 120"},
		{name: "salted caramel at 7 g/kg", dense: "milk_whole 500, cream_heavy 200, egg_yolk 90, sugar 130, dextrose_monohydrate 40, salt 6.5"},
		{name: "miso, a spoonful", dense: vanilla + ", miso 20"},
		{name: "matcha", dense: vanilla + ", matcha 10"},
		{name: "instant coffee", dense: gelato + ", coffee_instant 9"},
		{name: "cornstarch, no yolk, almond", dense: "almond_drink 500, oil_coconut 60, almond_butter 40, cornstarch 18, sugar 110, dextrose_monohydrate 40"},
		{name: "dried whites and tartar", dense: gelato, foam: "egg_white_dried_powder 18, water 130, cream_of_tartar 1"},
		{name: "dulce de leche", dense: "milk_whole 500, cream_heavy 120, egg_yolk 70, dulce_de_leche 150, sugar 30"},
		{name: "six tubs of a litre", dense: gelato, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 6, 1000 }},
		{name: "one tub of a litre", dense: gelato, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 1, 1000 }},
		{name: "twelve of 300", dense: coconut, change: func(d *design.Design) { d.Tubs.Count, d.Tubs.VolumeML = 12, 300 }},
		{name: "foam sugar whipped in 1.5 to 1", dense: goat, foam: "egg_white 120, sugar 180", raw: true},
		{name: "syrup weighed uphill", dense: vanilla, change: func(d *design.Design) { d.Foam.Syrup.WeighedG = 170; d.Kitchen.AltitudeM = 1800 }},
		{name: "no syrup uphill", dense: vanilla, foam: "egg_white 150, sugar_powdered 180", raw: true, change: func(d *design.Design) { d.Kitchen.AltitudeM = 2000 }},
		{name: "below the sea", dense: vanilla, change: func(d *design.Design) { d.Kitchen.AltitudeM = -300 }},
		{name: "own oat base", dense: "base 600, egg_yolk 80, sugar 90, dextrose_monohydrate 40", own: "base, Oat base, fat 10, saturates 1, carbohydrate 8, sugars 4, starch 4, fibre 1, protein 1, salt 0.1"},
		{name: "coconut and lime", dense: coconut + ", lime_juice 15"},
		{name: "own orange blossom water", dense: vanilla + ", blossom 10", own: "blossom, Orange blossom water, fat 0, saturates 0, carbohydrate 0, sugars 0, protein 0, salt 0"},
		{name: "own fruit sugar", dense: "milk_whole 520, cream_heavy 140, egg_yolk 80, sugar 60, fru 40", own: "fru, Fruit sugar, fat 0, saturates 0, carbohydrate 100, sugars 100, fructose 100, protein 0, salt 0"},
		{name: "own white of the carton", dense: gelato, foam: "carton 150", own: "carton, Liquid egg white, fat 0, saturates 0, carbohydrate 0.7, sugars 0.7, protein 10.5, salt 0.4"},
		{name: "own vanilla paste", dense: vanilla + ", vp 10", own: "vp, Vanilla paste, fat 0, saturates 0, carbohydrate 60, sugars 58, fibre 1, protein 0.3, salt 0"},
		{name: "own praline", dense: "milk_whole 520, cream_heavy 90, egg_yolk 80, sugar 70, dextrose_monohydrate 40, pra 90", own: "pra, Praline, fat 33, saturates 3, carbohydrate 52, sugars 50, fibre 5, protein 8, salt 0.01"},
		{name: "sorbitol, a little", dense: "milk_whole 520, cream_heavy 140, egg_yolk 80, sugar 100, sorbitol 30"},
		{name: "allulose from the shelf", dense: "milk_whole 520, cream_heavy 140, egg_yolk 80, sugar 80, allulose 60"},
		{name: "inulin", dense: "milk_skim 560, cream_heavy 100, egg_yolk 70, sugar 110, inulin 25"},
		{name: "butter and milk", dense: "milk_whole 650, butter_unsalted 70, egg_yolk 80, sugar 120, dextrose_monohydrate 30"},
		{name: "salted butter", dense: "milk_whole 600, butter_salted 80, egg_yolk 80, sugar_brown 130"},
		{name: "cream cheese", dense: "milk_whole 480, cream_cheese 150, egg_yolk 60, sugar 130"},
		{name: "rum, a spoon, stirred in", dense: vanilla + ", rum_40 8"},
		{name: "milk powder, a little", dense: "milk_whole 540, cream_heavy 140, nfdm_instant 25, egg_yolk 70, sugar 120"},
		{name: "malt powder", dense: "milk_whole 520, cream_heavy 140, malted_milk_powder 35, egg_yolk 80, sugar 90"},
		{name: "peppermint foam", dense: vanilla, foam: "egg_white 160, mint_peppermint 3"},
		{name: "lemon zest", dense: vanilla + ", lemon_peel 6"},
		{name: "lemon juice in the whites", dense: vanilla, foam: "egg_white 160, lemon_juice 4"},
		{name: "chocolate and hazelnut spread", dense: "milk_whole 540, cream_heavy 80, egg_yolk 70, sugar 70, chocolate_hazelnut_spread 110"},
		{name: "walnuts and maple", dense: "milk_whole 520, cream_heavy 120, egg_yolk 80, maple_syrup 120, sugar 30, walnut 60", syrup: mapled},
		{name: "syrup at 112", dense: vanilla, change: func(d *design.Design) { d.Foam.Syrup.CookTemperatureC = 112 }},
		{name: "syrup at 121", dense: vanilla, foam: "egg_white 130", change: func(d *design.Design) { d.Foam.Syrup.CookTemperatureC = 121 }},
		{name: "brown sugar syrup, inverted", dense: vanilla, syrup: "sugar_brown 160, water 60", change: func(d *design.Design) { d.Foam.Syrup.InvertedPercent = 20 }},
		{name: "nothing but custard", dense: vanilla, change: func(d *design.Design) { d.Blend.FoamVolumePercent = 0 }},
		{name: "nothing but foam", dense: vanilla, change: func(d *design.Design) { d.Blend.FoamVolumePercent = 100 }},
	})
}
