package say

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/phase"
)

// Warning is the sentence of a warning, of the design or of the cold. A code
// that has none is shown as it is.
func Warning(s Style, w model.Warning) string {
	for _, list := range [...]map[string]sentence{sentences, limitSentences, coldSentences} {
		if sentence, ok := list[w.Code]; ok {
			return sentence(s, w.Facts)
		}
	}
	return w.Code
}

// Severity is how a warning's sentence is introduced: "Caution".
func Severity(s model.Severity) string {
	return [...]string{model.Note: "Note", model.Caution: "Caution", model.Serious: "Serious"}[s]
}

type sentence func(s Style, facts any) string

// of is the sentence of a code whose facts are of type F.
func of[F any](say func(s Style, f F) string) sentence {
	return func(s Style, facts any) string {
		f, _ := facts.(F)
		return say(s, f)
	}
}

// fixed is a sentence without facts.
func fixed(text string) sentence { return func(Style, any) string { return text } }

// sentences has one entry for each code of a warning of the design.
var sentences = map[string]sentence{
	"phase_empty": of(func(s Style, f model.PhaseEmpty) string {
		return "The " + f.Empty.String() + " has no lines: the tub holds " + otherRole(f.Empty).String() + " alone."
	}),
	"stove_loss_exceeds_water": fixed("The stove is set to drive off more water than the custard holds: it takes all there is."),
	"syrup_weighed_too_light":  fixed("The pan weighs less than the solids that went in: weigh it again, without the pan."),
	"syrup_no_boil_off": of(func(s Style, f model.SyrupNoBoilOff) string {
		if math.IsNaN(f.BoilsAtC) {
			return "The syrup has too little water to boil down. Add water to dissolve the sugar."
		}
		return "The syrup boils only at " + s.TemperatureTo(f.BoilsAtC, 1) + ": it is already thicker than " + s.Temperature(f.CookToC) +
			" makes it. Add water to dissolve the sugar."
	}),
	"syrup_band": of(func(s Style, f model.SyrupBand) string {
		return "Published tables of boiling syrup differ by about " + s.Short(f.Percent, 1) + " points of solids at " + s.Temperature(f.CookToC) +
			": weigh the pan to be exact."
	}),
	"outside_model_range": of(func(s Style, f model.OutsideModelRange) string {
		names := make([]string, len(f.Solutes))
		for i, x := range f.Solutes {
			names[i] = x.String()
		}
		return "At " + s.Temperature(f.AtC) + " the freezing curve of " + List(names) + " goes beyond the tables it rests on."
	}),
	"salt_rule_unsettled": of(func(s Style, f model.SaltRuleUnsettled) string {
		return s.Number(f.SaltG, 1) + " g added salt per 100 g water: two published rules for sugar with salt differ here by 1 to 2 points of frozen water."
	}),
	"sugar_crystallises":   of(crystals),
	"crystals_unchecked":   of(func(_ Style, f model.CrystalsUnchecked) string { return unchecked(f) }),
	"outside_hardness_law": of(outsideLaw),
	"carbohydrate_unnamed": of(func(s Style, f model.CarbohydrateUnnamed) string {
		names := make([]string, len(f.Ingredients))
		for i, in := range f.Ingredients {
			names[i] = Kitchen(in)
		}
		return List(names) + ": " + s.Number(f.Per100G, 1) + " g carbohydrate in 100 g of the mix has no name. It may lie inert or act like a simple sugar, so the mix freezes anywhere from " +
			s.TemperatureBand(f.FreezesAtC.Low, f.FreezesAtC.High, 1) + ". Fill in the sugars, polyols or fibre of the pack."
	}),
	"end_of_freezing": of(func(s Style, f model.EndOfFreezing) string {
		return "Below " + s.TemperatureTo(f.BelowC, 0) + " no more ice grows: the figures stay at the ice of that temperature."
	}),
	"brittle": of(func(s Style, f model.Brittle) string {
		return "At " + s.Temperature(f.AtC) + " the liquid is only " + s.TemperatureStep(math.Round(f.AboveGlassK)) + " above its glass: brittle, not chewy."
	}),
	"tub_overfull": of(func(s Style, f model.TubOverfull) string {
		places := 0
		if f.FrozenPercent < 100.5 { // which is more than full, and must read so
			places = 1
		}
		return "Frozen, the filling swells to " + s.Percent(f.FrozenPercent, places) + " of the tub: fill it to " + s.Percent(f.FillPercent, 0) + " or less."
	}),
	"eggs_unpaired": of(func(s Style, f model.EggsUnpaired) string {
		n, one, many := f.Yolks, "yolk", "yolks"
		if f.Whites > f.Yolks {
			n, one, many = f.Whites, "white", "whites"
		}
		count := s.Short(n, 1)
		if count == "1" {
			many = one
		}
		return "Cracking whole eggs leaves about " + count + " " + many + " over (" + f.System + " " + f.Size + " eggs)."
	}),
	"left_over": of(func(s Style, f model.LeftOver) string {
		var over []string
		for _, p := range [...]struct {
			ml, g float64
			role  phase.Role
		}{{f.DenseML, f.DenseG, phase.Dense}, {f.FoamML, f.FoamG, phase.Foam}} {
			if p.ml >= 0.5 {
				over = append(over, s.Volume(p.ml)+" ("+s.Mass(p.g)+") "+p.role.String())
			}
		}
		at := "At " + s.Percent(f.FoamPercent, 0) + " foam, " + List(over)
		if len(over) > 1 {
			return at + " are left over."
		}
		text := at + " is left over. " + s.Percent(f.AllPercent, 0) + " foam uses up both; or "
		if f.FoamML > f.DenseML {
			return text + "spread it over the tubs, or bake it as meringues."
		}
		return text + "freeze it by itself."
	}),
	"foam_draws_water": of(func(s Style, f model.FoamDrawsWater) string {
		return "The foam freezes only at " + s.TemperatureTo(f.FreezesAtC, 1) + ", so in an ordinary freezer (" + s.Temperature(f.FreezerC) +
			") it holds no ice and draws water from the custard. Use less sugar or more egg white."
	}),
	"own_figures_differ": of(func(s Style, f model.OwnFiguresDiffer) string {
		whose := "the library's"
		if f.Shelf {
			whose = "those on your own shelf"
		}
		return Kitchen(f.Ingredient) + ": this design brings its own figures, which differ from " + whose + "; its own are used."
	}),
	"composition_assumed": of(func(s Style, f model.CompositionAssumed) string {
		return Kitchen(f.Ingredient) + ": " + Assumption(s, f.Assumed) + "."
	}),
	"nutrition_incomplete": of(func(s Style, f model.NutritionIncomplete) string {
		names := make([]string, len(f.Lacks))
		for i, c := range f.Lacks {
			names[i] = c.Words()
		}
		bound := ", so the label's figure is a lower bound."
		if len(names) > 1 {
			bound = ", so the label's figures are lower bounds."
		}
		return Kitchen(f.Ingredient) + ": no source gives its " + List(names) + bound
	}),
}

// Kitchen is what an ingredient is called where one cooks.
func Kitchen(in *ingredient.Ingredient) string {
	if in == nil {
		return Unknown
	}
	return in.Kitchen()
}

func otherRole(r phase.Role) phase.Role {
	if r == phase.Dense {
		return phase.Foam
	}
	return phase.Dense
}

// outsideLaw says why nobody knows how hard a phase is, the weightiest first.
func outsideLaw(s Style, f model.OutsideHardnessLaw) string {
	the := "The " + f.Phase.String()
	switch {
	case f.Law.FatTooHigh:
		return the + " is " + s.Percent(f.FatPercent, 0) + " fat. So much fat decides by itself how hard it is, and the model does not know how: it gives no word. Use more milk and less fat."
	case f.Law.SyrupTooThick:
		return "At " + s.Temperature(f.AtC) + " the liquid of the " + f.Phase.String() + " is " + s.Percent(f.SugarPercent, 0) + " sugar. The model knows the thickness of such a liquid up to " + s.Percent(f.MostPercent, 0) +
			" and gives no word beyond. Use less sugar or more water."
	}
	return the + " is colder than " + s.Temperature(f.LeastC) + ", below which nobody measured how thick its liquid is: the model gives no word."
}
