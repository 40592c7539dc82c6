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
			return T("%s air is more than a cooked-sugar foam takes: %s. Set what your cup weighs.", s.Percent(f.Value, legible(s, f)), upTo(s, f, legible(s, f)))
		}
		if f.Step.Level == limits.Stop {
			return T("%s air in the custard needs a factory machine: %s. By hand set 15 to 20 %%.", s.Percent(f.Value, legible(s, f)), upTo(s, f, legible(s, f)))
		}
		return T("%s air is more than a custard takes by hand: %s. Without a machine set 15 to 20 %%.", s.Percent(f.Value, legible(s, f)), upTo(s, f, legible(s, f)))
	}),
	"yolk_heavy": of(func(s Style, f model.OverLimit) string {
		return T("A kilogram of the custard holds %s g yolk: above %s g it tastes of egg. Use fewer yolks.", s.Number(f.Value, legible(s, f)), s.Number(f.Step.At, legible(s, f)))
	}),
	"too_sweet": of(func(s Style, f model.OverLimit) string {
		what := T("The custard")
		if f.Limit == &limits.SweetTub {
			what = T("A spoonful of the tub")
		}
		return T("%s is as sweet as %s sugar: above %s it is too sweet for most. Use less sugar, or swap part of it for glucose syrup or dextrose.", what, s.Percent(f.Value, legible(s, f)), s.Percent(f.Step.At, legible(s, f)))
	}),
	"not_sweet_enough": of(func(s Style, f model.OverLimit) string {
		return T("The custard is at most as sweet as %s sugar: under %s it tastes flat. Add sugar.", s.Percent(f.Value, legible(s, f)), s.Percent(f.Step.At, legible(s, f)))
	}),
	"too_salty": of(func(s Style, f model.OverLimit) string {
		return T("A kilogram holds %s g added salt: above %s g it tastes too salty. Salted caramel takes 4 to 8 g.", s.Number(f.Value, legible(s, f)), s.Number(f.Step.At, legible(s, f)))
	}),
	"freezer_overloaded": of(func(s Style, f model.OverLimit) string {
		return T("%s at once is %s times what an ordinary freezer of %s is rated to freeze in a day. Freeze it in parts, or in more than one freezer.", s.Mass(1000*f.Extra), s.Number(f.Value, 1), s.Text("{100 L}"))
	}),
	"syrup_too_little": of(func(s Style, f model.OverLimit) string {
		return T("Only %s of syrup: it stands %s deep in a small pan, too shallow for any thermometer. Weigh the pan, or make a larger batch.", s.Mass(f.Extra), s.Gauge("mm").Text(f.Value, 1))
	}),
	"yolk_in_whites": of(func(s Style, f model.OverLimit) string {
		return T("There is yolk in the foam's lines: whites with yolk in them rise little. Move it to the custard.")
	}),
	"alcohol_boils_off": of(func(s Style, f model.OverLimit) string {
		if f.Limit == &limits.AlcoholInSyrup {
			return T("The alcohol in the syrup (%s) boils away, so the figures leave it out. Stir the spirit or extract into the cold custard instead.", s.MassWithin(f.Extra))
		}
		return T("A hot pan drives off about half of the custard's alcohol: stir it in cold, after cooking. The figures count all of it.")
	}),
	"acid_with_milk": of(func(s Style, f model.OverLimit) string {
		if f.Limit == &limits.AcidCold {
			return T("There are %s g acid to a kilogram of milk: even stirred in cold it thickens the custard and may turn it grainy. Use less of what is sour, or more cream.", s.Number(f.Value, 1))
		}
		curdles := T("may curdle")
		if f.Step.Level == limits.Stop {
			curdles = T("curdles")
		}
		return T("There are %s g acid to a kilogram of milk: heated with it, the milk %s. Cook the custard without what is sour, chill it, then whisk that in.", s.Number(f.Value, 1), curdles)
	}),
	"starch_with_yolk": of(func(s Style, f model.OverLimit) string {
		return T("Starch and yolk are together in the custard: bring it to a full boil, at least %s, or the yolk thins it again.", s.Temperature(limits.StarchPeak.Steps[0].At))
	}),
	"weighed_too_heavy": of(func(s Style, f model.WeighedTooHeavy) string {
		return T("The syrup cannot weigh %s: only %s went in. Take off the weight of the empty pan. Until then the thermometer counts.", s.Mass(f.PanG), s.Mass(f.WentInG))
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
	return T("%s at most", s.Percent(f.Step.At, places))
}

func altitudeSyrup(s Style, f model.AltitudeSyrup) string {
	text := T("At %s water boils at %s.", s.Altitude(f.AltitudeM), s.TemperatureTo(f.WaterBoilsC, 1)) + " "
	if math.IsNaN(f.AtSeaC) {
		text += T("A syrup cooked to %s there is drier than the model goes.", s.Temperature(f.AskedC)) + " "
	} else {
		text += T("%s there is the syrup of %s at sea level.", s.Temperature(f.AskedC), s.TemperatureTo(f.AtSeaC, 0)) + " "
	}
	return text + T("If the recipe means %s at sea level, cook to %s.", s.Temperature(f.AskedC), s.TemperatureTo(f.HereC, 0))
}
