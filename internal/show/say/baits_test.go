package say

import (
	"testing"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// tubs fills n tubs of so many mL.
func tubs(n int, ml float64) func(design.Design) design.Design {
	return func(d design.Design) design.Design {
		d.Tubs.Count, d.Tubs.VolumeML, d.Batch.Basis = n, ml, design.BasisTubs
		return d
	}
}

func counted(p design.Part, id string, n float64, of design.EggPart) func(design.Design) design.Design {
	return func(d design.Design) design.Design {
		return d.WithLineAdded(p, design.Line{Ingredient: id, Count: n, CountOf: of})
	}
}

func noted(p design.Part, id string, g float64, note string) func(design.Design) design.Design {
	return func(d design.Design) design.Design {
		return d.WithLineAdded(p, design.Line{Ingredient: id, Grams: g, Note: note})
	}
}

func packed(id, name string) func(design.Design) design.Design {
	return func(d design.Design) design.Design {
		in := &ingredient.Ingredient{ID: id, Name: name, Source: ingredient.OwnSource, Group: ingredient.OwnSource, Own: true}
		d.Own = append(d.Own, in)
		return d.WithLineAdded(dense, design.Line{Ingredient: id, Grams: 120})
	}
}

// Two for each of twenty ways to go wrong, made up for the stall Saltmarsh Quay.
var baits = []trap{
	{name: "starch with yolk: rice flour",
		says:  map[string][]string{"Egg and sugar": {"15 g rice flour", "free of lumps"}, "Cook": {"95 °C at least, and boil for 2 minutes", "Rice flour swells from 68 to 78", "may curdle on the way"}},
		never: []string{"80 to 83 °C", "boil for 1 minute"},
		of:    with(dense, "rice_flour", 15)},
	{name: "starch with whole eggs: arrowroot",
		says:  map[string][]string{"Crack the eggs": {"keep 3 whole"}, "Egg and sugar": {"150 g whole eggs (3)", "12 g arrowroot"}, "Heat": {"2.0 g cinnamon"}, "Cook": {"the yolk thins the starch"}},
		never: []string{"80 to 83 °C", "the whole egg up"},
		of:    both(replaced(dense, "milk_2pct", 600, "sugar_brown", 110, "arrowroot", 12, "cinnamon", 2), counted(dense, "egg_whole", 3, design.WholeEggs))},
	{name: "spirit in the custard: whisky and vanilla",
		says:  map[string][]string{"Stir in cold": {"35 g whisky", "6.0 g vanilla extract", "half of the alcohol"}},
		never: []string{"curdle it", "alcohol boils away"},
		of:    with(dense, "whisky_43", 35, dense, "vanilla_extract", 6)},
	{name: "spirit in the custard: raisins, rum and chocolate",
		says:  map[string][]string{"Off the heat": {"Melt 90 g dark chocolate", "Whisk in 50 g raisins (soaked in the rum)"}, "Stir in cold": {"30 g rum"}},
		never: []string{"Rub the cocoa", "into the same"},
		of:    both(with(dense, "chocolate_dark_60_69", 90, dense, "rum_40", 30), noted(dense, "raisins", 50, "soaked in the rum"))},
	{name: "spirit in the syrup: whisky on maple sugar",
		says:  map[string][]string{"Boil the syrup": {"40 g whisky", "alcohol boils away", "Maple sugar foams up and catches: keep the heat low."}},
		never: []string{"half of the alcohol", "Honey"},
		of:    replaced(syrup, "sugar_maple", 150, "whisky_bourbon_40", 40, "water", 30)},
	{name: "spirit in the syrup: wine for its water",
		says:  map[string][]string{"Boil the syrup": {"80 g table wine", "alcohol boils away"}},
		never: []string{"half of the alcohol"},
		of:    replaced(syrup, "sugar", 150, "wine_table", 80)},
	{name: "acid with milk: passion fruit",
		says:  map[string][]string{"Stir in cold": {"90 g passion fruit juice", "acid to a kilogram of milk", "hot milk curdles"}},
		never: []string{"Purée", "egg sets early"},
		of:    with(dense, "passion_fruit_juice", 90)},
	{name: "acid with milk: lime on condensed milk, twice",
		says:  map[string][]string{"Heat": {"300 g sweetened condensed milk"}, "Stir in cold": {"60 g lime juice and 100 g whole-milk yogurt"}},
		never: []string{"onto the egg", "custard", "yolk left"},
		of:    replaced(dense, "condensed_milk_sweet", 300, "milk_whole", 200, "lime_juice", 40, "lime_juice", 20, "yogurt_whole", 100)},
	{name: "dried whites with acid",
		says:  map[string][]string{"In the mixing bowl": {"Stir 15 g dried egg whites into 100 g water and let it swell for 20 minutes. Then beat it with 1.0 g cream of tartar to soft peaks"}},
		never: []string{"Know before", "four times as long"},
		of:    replaced(foam, "egg_white_dried", 15, "water", 100, "cream_of_tartar", 1)},
	{name: "dried whites without water",
		says:  map[string][]string{"In the mixing bowl": {"Let 15 g egg white powder swell", "where 7 g make it up", "does not stand"}},
		never: []string{"into its water"},
		of:    replaced(foam, "egg_white_dried_powder", 15)},
	{name: "carton whites with acid",
		says:  map[string][]string{"In the mixing bowl": {"110 g pasteurised egg whites and 4.0 g cream of tartar", "four times as long."}, "Crack the eggs": {"for their yolks"}},
		never: []string{"Know before", "want acid", "No yolk may get"},
		of:    replaced(foam, "egg_white_past", 110, "cream_of_tartar", 4)},
	{name: "carton whites with sugar and none",
		says:  map[string][]string{"In the mixing bowl": {"then beat in 30 g sugar", "want acid: about 1 g cream of tartar to 30 g"}},
		never: []string{"Know before", "stay raw"},
		of:    replaced(foam, "egg_white_past", 110, "sugar", 30)},
	{name: "no syrup: whites over water, cocoa",
		says:  map[string][]string{"Heat the whites": {"74 °C", "stay raw"}, "Whip": {"off the water", "below 30 °C"}, "Fold in": {"Sift the cocoa in", "cup then weighs"}},
		never: []string{"boiling syrup", "Stop when", "Know before"},
		of:    both(replaced(foam, "egg_white", 120, "sugar", 200, "cocoa_dutch", 8), replaced(syrup))},
	{name: "no syrup: carton whites and icing sugar",
		says:  map[string][]string{"In the mixing bowl": {"until foamy, then 120 g icing sugar by the spoonful"}, "Whip": {"Beat the whites until the foam stands. Stop when"}},
		never: []string{"syrup", "stay raw", "off the water", "hold it there"},
		of:    both(replaced(foam, "egg_white_past", 120, "sugar_powdered", 120), replaced(syrup))},
	{name: "no yolk: starch and vanilla",
		says:  map[string][]string{"Heat": {"18 g cornstarch", "Stir the starch smooth"}, "Cook": {"boil for 1 minute"}, "Stir in cold": {"5.0 g vanilla extract"}},
		never: []string{"custard", "yolk thins", "Heat until it steams", "Egg dishes"},
		of:    replaced(dense, "milk_whole", 650, "sugar", 120, "cornstarch", 18, "vanilla_extract", 5)},
	{name: "no yolk: locust bean gum",
		says:  map[string][]string{"Heat": {"with the dry sugar", "82 °C: locust bean gum dissolves only from there"}},
		never: []string{"Heat until it steams", "onto the egg", "custard"},
		of:    replaced(dense, "milk_whole", 550, "cream_heavy", 180, "sugar", 110, "nfdm_regular", 35, "locust_bean_gum", 2)},
	{name: "cocoa on a custard with dextrose",
		says:  map[string][]string{"Heat": {"25 g natural cocoa powder", "Rub the cocoa smooth with the sugar and a little of the liquid"}, "Egg and sugar": {"15 g dextrose"}},
		never: []string{"Melt", "Sift"},
		of:    with(dense, "cocoa_natural", 25, dense, "dextrose_monohydrate", 30)},
	{name: "cocoa where no dry sugar is",
		says:  map[string][]string{"Heat": {"Rub the cocoa smooth with a little of the liquid first"}, "Egg and sugar": {"smooth. The starch"}},
		never: []string{"with the sugar", "crusts"},
		of:    replaced(dense, "milk_whole", 600, "honey", 130, "cocoa_dutch", 30, "tapioca_starch", 15, "egg_yolk", 60)},
	{name: "chocolate: white, with starch",
		says:  map[string][]string{"Off the heat": {"Melt 120 g white chocolate in the hot custard"}, "Cook": {"full boil"}},
		never: []string{"Rub the cocoa"},
		of:    replaced(dense, "milk_whole", 600, "egg_yolk", 60, "sugar", 60, "chocolate_white", 120, "potato_starch", 10)},
	{name: "chocolate: bitter in the custard, dark in the foam",
		says:  map[string][]string{"Off the heat": {"Melt 40 g unsweetened chocolate"}, "Heat": {"15 g natural cocoa powder"}, "Fold in": {"20 g dark chocolate", "barely warm"}},
		never: []string{"Sift"},
		of:    with(dense, "chocolate_unsweetened", 40, dense, "cocoa_natural", 15, foam, "chocolate_dark_70_85", 20)},
	{name: "altitude: 1500 m",
		says:  map[string][]string{"Boil the syrup": {"At 1500 m that is the syrup of 124 °C at sea level", "cook to 113 °C here"}, "Cook": {"95 °C at least"}},
		never: []string{"outlives", "to 100 °C"},
		of:    both(with(dense, "wheat_flour", 15), high(1500))},
	{name: "altitude: below the sea",
		says:  map[string][]string{"Boil the syrup": {"between soft and firm ball"}},
		never: []string{"that is the syrup of", "−350"},
		of:    high(-350)},
	{name: "honey alone in the syrup",
		says:  map[string][]string{"Boil the syrup": {"Warm 180 g honey slowly", "boils only at", "Honey foams up and catches"}},
		never: []string{"the sugar has dissolved", "mm deep in the pan"},
		of:    replaced(syrup, "honey", 180)},
	{name: "honey in the custard, maple in the syrup",
		says:  map[string][]string{"Heat": {"110 g honey"}, "Boil the syrup": {"Warm 230 g maple syrup slowly", "Maple syrup foams up"}},
		never: []string{"Honey foams", "the sugar has dissolved"},
		of:    both(replaced(dense, "milk_whole", 450, "egg_yolk", 95, "honey", 110), replaced(syrup, "maple_syrup", 230))},
	{name: "gelatine in the syrup",
		says:  map[string][]string{"Gelatine": {"4.0 g gelatine"}, "Pour and whip": {"beat it in while the foam is warm. Beat on"}},
		never: []string{"hot custard, no hotter", "and 4.0 g gelatine over"},
		of:    with(syrup, "gelatin", 4)},
	{name: "gelatine where nothing is heated",
		says:  map[string][]string{"Stir in cold": {"Melt the soaked gelatine over warm water", "Purée the fruit first"}},
		never: []string{"hot base", "ice water (", "Cover and rest", "cold base"},
		of:    both(replaced(dense, "yogurt_greek_whole", 400, "honey", 90, "raspberry", 120, "gelatin", 5), func(d design.Design) design.Design { d.Dense.StoveLossPercent = 0; return d })},
	{name: "tiny: a cup of it",
		says:  map[string][]string{"Crack the eggs": {"Crack 1 egg (US large) and part it"}, "Boil the syrup": {"about 1 min", "1 mm deep"}, "Chill the tubs": {"1 empty tub, its lid and"}, "In the mixing bowl": {"a whisk hardly catches"}},
		never: []string{"only 0 mm", "about 0 min", "part them"},
		of:    tubs(1, 120)},
	{name: "tiny: one yolk, one white",
		says: map[string][]string{"Crack the eggs": {"part it; then weigh"}, "Egg and sugar": {"17 g egg yolks (1)"}, "In the mixing bowl": {"33 g egg whites (1)", "narrow bowl"}},
		of: both(replaced(dense, "milk_whole", 100, "cream_heavy", 40, "sugar", 24), counted(dense, "egg_yolk", 1, design.Yolks),
			replaced(foam), counted(foam, "egg_white", 1, design.Whites), replaced(syrup, "sugar", 45, "water", 15))},
	{name: "huge: a hundred tubs by hand mixer",
		says:  map[string][]string{"Heat": {"160 mm wide does not hold it"}, "Chill": {"Stand each part, as it comes off the stove"}, "In the mixing bowl": {"bowls, each with its share of the syrup"}, "Boil the syrup": {"more than a third full"}},
		never: []string{"mm deep in the pan"},
		of:    tubs(100, 500)},
	{name: "huge: in a big pan, by stand mixer",
		says:  map[string][]string{"Freeze soft": {"dishes", "in turns"}},
		never: []string{"does not hold it", "bowls, each", "a third full"},
		of:    tubs(30, 500), in: func(k process.Kitchen) process.Kitchen { k.PanMM, k.Tool = 360, process.StandMixer; return k }},
	{name: "own pack: sour",
		says:  map[string][]string{"Stir in cold": {"120 g Pier rhubarb compote", "In hot milk the acid would curdle it"}},
		never: []string{"acid to a kilogram"},
		of:    packed("pier_rhubarb", "Pier rhubarb compote")},
	{name: "own pack: a drink to heat",
		says:  map[string][]string{"Heat": {"120 g Gull barista oat drink"}},
		never: []string{"Stir in cold"},
		of:    packed("gull_oat", "Gull barista oat drink")},
	{name: "butter: browned, no yolk",
		says:  map[string][]string{"Off the heat": {"Whisk 60 g unsalted butter (browned) into the hot base"}},
		never: []string{"custard", "No milk protein", "melted, barely"},
		of:    both(replaced(dense, "milk_whole", 650, "sugar", 110, "cornstarch", 12), noted(dense, "butter_unsalted", 60, "browned"))},
	{name: "butter in the foam",
		says:  map[string][]string{"Fold in": {"20 g unsalted butter by hand", "melted, barely warm", "Fat makes the foam fall", "cup then weighs"}},
		never: []string{"into the hot custard", "Stop when"},
		of:    with(foam, "butter_unsalted", 20)},
	{name: "no eggs: coconut on coconut",
		says:  map[string][]string{"Cook": {"boil for 1 minute", "No milk protein"}, "In the mixing bowl": {"Measure 220 g coconut cream"}, "Pour and whip": {"Stir the hot syrup into the foam base. Stand it in ice water"}},
		never: []string{"egg", "yolk", "white", "custard"},
		of:    both(replaced(dense, "coconut_milk", 600, "sugar", 110, "tapioca_starch", 10), replaced(foam, "coconut_cream", 220))},
	{name: "no eggs: a sorbet alone",
		says:  map[string][]string{"Heat": {"200 g water and 150 g sugar"}, "Stir in cold": {"400 g raspberries and 15 g lemon juice", "Purée the fruit first"}, "Fill and swirl": {"Fill the tubs with the base"}},
		never: []string{"egg", "foam", "milk", "custard", "stroke"},
		of:    both(replaced(dense, "raspberry", 400, "water", 200, "sugar", 150, "lemon_juice", 15), replaced(foam), replaced(syrup))},
	{name: "invert syrup in both",
		says:  map[string][]string{"Heat": {"30 g invert syrup"}, "Boil the syrup": {"Stir 110 g sugar, 40 g invert syrup and 40 g water"}},
		never: []string{"splits part", "15 g invert"},
		of:    both(with(dense, "invert_syrup", 30), replaced(syrup, "sugar", 110, "invert_syrup", 40, "water", 40))},
	{name: "invert by acid, a fifth",
		says:  map[string][]string{"Boil the syrup": {"1.0 g cream of tartar", "reckons with 20 %; 5 % is usual"}},
		never: []string{"acid to a kilogram"},
		of: both(with(syrup, "cream_of_tartar", 1), func(d design.Design) design.Design {
			d.Foam.Syrup.InvertedPercent = 20
			return d
		})},
	{name: "whole eggs: two and a half of them",
		says: map[string][]string{"Crack the eggs": {"keep 2 whole", "Make the whole egg up to its weight"}, "Egg and sugar": {"125 g whole eggs (2.5)"}},
		of:   both(replaced(dense, "milk_whole", 500, "sugar", 110), with(dense, "egg_whole", 125))},
	{name: "whole eggs: five yolks, five whites, EU M",
		says:  map[string][]string{"Crack the eggs": {"Crack 5 eggs (EU M) and part them"}, "Egg and sugar": {"(5)"}, "In the mixing bowl": {"(5)"}},
		never: []string{"left over", "whole"},
		of: both(replaced(dense, "water", 500, "cream_heavy", 150, "sugar", 110), counted(dense, "egg_yolk", 5, design.Yolks), replaced(foam), counted(foam, "egg_white", 5, design.Whites),
			func(d design.Design) design.Design { d.Eggs.System, d.Eggs.Size = "EU", "M"; return d })},
	{name: "agar under yolk",
		says:  map[string][]string{"Heat": {"boil for a minute: agar"}, "Cook": {"80 to 83 °C"}},
		never: []string{"about 70 °C"},
		of:    with(dense, "agar_powder", 3)},
}

func TestTheStepsFollowTwoOfEachTrap(t *testing.T) { follow(t, baits) }
