package say

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/limits"
)

// limitSentences has one entry for each code of a limit of the kitchen: what
// the design has, what the limit is, and what to do.
var limitSentences = map[string]sentence{
	"air_beyond_process": of(func(s Style, f model.OverLimit) string {
		if f.Limit == &limits.FoamAir {
			return s.Percent(f.Value, legible(s, f)) + " air is more than a cooked-sugar foam takes: " + upTo(s, f, legible(s, f)) + ". Set what your cup weighs."
		}
		if f.Step.Level == limits.Stop {
			return s.Percent(f.Value, legible(s, f)) + " air in the custard needs a factory machine: " + upTo(s, f, legible(s, f)) + ". By hand set 15 to 20 %."
		}
		return s.Percent(f.Value, legible(s, f)) + " air is more than a custard takes by hand: " + upTo(s, f, legible(s, f)) + ". Without a machine set 15 to 20 %."
	}),
	"yolk_heavy": of(func(s Style, f model.OverLimit) string {
		return "A kilogram of the custard holds " + s.Number(f.Value, legible(s, f)) + " g yolk: above " + s.Number(f.Step.At, legible(s, f)) + " g it tastes of egg. Use fewer yolks."
	}),
	"too_sweet": of(func(s Style, f model.OverLimit) string {
		what := "The custard"
		if f.Limit == &limits.SweetTub {
			what = "A spoonful of the tub"
		}
		return what + " is as sweet as " + s.Percent(f.Value, legible(s, f)) + " sugar: above " + s.Percent(f.Step.At, legible(s, f)) + " it is too sweet for most. Use less sugar, or swap part of it for glucose syrup or dextrose."
	}),
	"not_sweet_enough": of(func(s Style, f model.OverLimit) string {
		return "The custard is at most as sweet as " + s.Percent(f.Value, legible(s, f)) + " sugar: under " + s.Percent(f.Step.At, legible(s, f)) + " it tastes flat. Add sugar."
	}),
	"too_salty": of(func(s Style, f model.OverLimit) string {
		return "A kilogram holds " + s.Number(f.Value, legible(s, f)) + " g added salt: above " + s.Number(f.Step.At, legible(s, f)) + " g it tastes too salty. Salted caramel takes 4 to 8 g."
	}),
	"freezer_overloaded": of(func(s Style, f model.OverLimit) string {
		return s.Mass(1000*f.Extra) + " at once is " + s.Number(f.Value, 1) + " times what an ordinary freezer of " + s.Text("{100 L}") + " is rated to freeze in a day. Freeze it in parts, or in more than one freezer."
	}),
	"syrup_too_little": of(func(s Style, f model.OverLimit) string {
		return "Only " + s.Mass(f.Extra) + " of syrup: it stands " + s.Gauge("mm").Text(f.Value, 1) + " deep in a small pan, too shallow for any thermometer. Weigh the pan, or make a larger batch."
	}),
	"yolk_in_whites": of(func(s Style, f model.OverLimit) string {
		return "There is yolk in the foam's lines: whites with yolk in them rise little. Move it to the custard."
	}),
	"alcohol_boils_off": of(func(s Style, f model.OverLimit) string {
		if f.Limit == &limits.AlcoholInSyrup {
			return "The alcohol in the syrup (" + s.Mass(f.Extra) + ") boils away, so the figures leave it out. Stir the spirit or extract into the cold custard instead."
		}
		return "A hot pan drives off about half of the custard's alcohol: stir it in cold, after cooking. The figures count all of it."
	}),
	"acid_with_milk": of(func(s Style, f model.OverLimit) string {
		if f.Limit == &limits.AcidCold {
			return "There are " + s.Number(f.Value, 1) + " g acid to a kilogram of milk: even stirred in cold it thickens the custard and may turn it grainy. Use less of what is sour, or more cream."
		}
		curdles := "may curdle"
		if f.Step.Level == limits.Stop {
			curdles = "curdles"
		}
		return "There are " + s.Number(f.Value, 1) + " g acid to a kilogram of milk: heated with it, the milk " + curdles + ". Cook the custard without what is sour, chill it, then whisk that in."
	}),
	"starch_with_yolk": of(func(s Style, f model.OverLimit) string {
		return "Starch and yolk are together in the custard: bring it to a full boil, at least " + s.Temperature(limits.StarchPeak.Steps[0].At) + ", or the yolk thins it again."
	}),
	"weighed_too_heavy": of(func(s Style, f model.WeighedTooHeavy) string {
		return "The syrup cannot weigh " + s.Mass(f.PanG) + ": only " + s.Mass(f.WentInG) + " went in. Take off the weight of the empty pan. Until then the thermometer counts."
	}),
	"altitude_syrup": of(altitudeSyrup),
}

// legible is how many places a figure and its limit need to read unlike each other.
func legible(s Style, f model.OverLimit) int {
	if s.Number(f.Value, 0) == s.Number(f.Step.At, 0) {
		return 1
	}
	return 0
}

func upTo(s Style, f model.OverLimit, places int) string {
	return s.Percent(f.Step.At, places) + " at most"
}

func altitudeSyrup(s Style, f model.AltitudeSyrup) string {
	text := "At " + s.Altitude(f.AltitudeM) + " water boils at " + s.TemperatureTo(f.WaterBoilsC, 1) + ". "
	if math.IsNaN(f.AtSeaC) {
		text += "A syrup cooked to " + s.Temperature(f.AskedC) + " there is drier than the model goes. "
	} else {
		text += s.Temperature(f.AskedC) + " there is the syrup of " + s.TemperatureTo(f.AtSeaC, 0) + " at sea level. "
	}
	return text + "If the recipe means " + s.Temperature(f.AskedC) + " at sea level, cook to " + s.TemperatureTo(f.HereC, 0) + "."
}
