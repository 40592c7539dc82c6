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
	return [...]string{model.Note: T("Note"), model.Caution: T("Caution"), model.Serious: T("Serious")}[s]
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
func fixed(text Message) sentence { return func(Style, any) string { return text.String() } }

// sentences has one entry for each code of a warning of the design.
var sentences = map[string]sentence{
	"phase_empty": of(func(s Style, f model.PhaseEmpty) string {
		return T("The %s has no lines: the tub holds %s alone.", Of(f.Empty.String()), Of(otherRole(f.Empty).String()))
	}),
	"stove_loss_exceeds_water": fixed("The stove is set to drive off more water than the custard holds: it takes all there is."),
	"syrup_weighed_too_light":  fixed("The pan weighs less than the solids that went in: weigh it again, without the pan."),
	"syrup_no_boil_off": of(func(s Style, f model.SyrupNoBoilOff) string {
		if math.IsNaN(f.BoilsAtC) {
			return T("The syrup has too little water to boil down. Add water to dissolve the sugar.")
		}
		return T("The syrup boils only at %s: it is already thicker than %s makes it. Add water to dissolve the sugar.", s.TemperatureTo(f.BoilsAtC, 1), s.Temperature(f.CookToC))
	}),
	"syrup_band": of(func(s Style, f model.SyrupBand) string {
		return T("Published tables of boiling syrup differ by about %s points of solids at %s: weigh the pan to be exact.", s.Short(f.Percent, 1), s.Temperature(f.CookToC))
	}),
	"outside_model_range": of(func(s Style, f model.OutsideModelRange) string {
		names := make([]string, len(f.Solutes))
		for i, x := range f.Solutes {
			names[i] = Of(x.String())
		}
		return T("At %s the freezing curve of %s goes beyond the tables it rests on.", s.Temperature(f.AtC), List(names))
	}),
	"salt_rule_unsettled": of(func(s Style, f model.SaltRuleUnsettled) string {
		return T("%s g added salt per 100 g water: two published rules for sugar with salt differ here by 1 to 2 points of frozen water.", s.Number(f.SaltG, 1))
	}),
	"sugar_crystallises":   of(crystals),
	"crystals_unchecked":   of(func(_ Style, f model.CrystalsUnchecked) string { return unchecked(f) }),
	"outside_hardness_law": of(outsideLaw),
	"carbohydrate_unnamed": of(func(s Style, f model.CarbohydrateUnnamed) string {
		names := make([]string, len(f.Ingredients))
		for i, in := range f.Ingredients {
			names[i] = Kitchen(in)
		}
		return T("%s: %s g carbohydrate in 100 g of the mix has no name. It may lie inert or act like a simple sugar, so the mix freezes anywhere from %s. Fill in the sugars, polyols or fibre of the pack.", List(names), s.Number(f.Per100G, 1), s.TemperatureBand(f.FreezesAtC.Low, f.FreezesAtC.High, 1))
	}),
	"end_of_freezing": of(func(s Style, f model.EndOfFreezing) string {
		return T("Below %s no more ice grows: the figures stay at the ice of that temperature.", s.TemperatureTo(f.BelowC, 0))
	}),
	"brittle": of(func(s Style, f model.Brittle) string {
		return T("At %s the liquid is only %s above its glass: brittle, not chewy.", s.Temperature(f.AtC), s.TemperatureStep(math.Round(f.AboveGlassK)))
	}),
	"tub_overfull": of(func(s Style, f model.TubOverfull) string {
		places := 0
		if f.FrozenPercent < 100.5 { // which is more than full, and must read so
			places = 1
		}
		return T("Frozen, the filling swells to %s of the tub: fill it to %s or less.", s.Percent(f.FrozenPercent, places), s.Percent(f.FillPercent, 0))
	}),
	"eggs_unpaired": of(func(s Style, f model.EggsUnpaired) string {
		n, one, many := f.Yolks, T("yolk"), T("yolks")
		if f.Whites > f.Yolks {
			n, one, many = f.Whites, T("white"), T("whites")
		}
		count := s.Short(n, 1)
		if count == "1" {
			many = one
		}
		return T("Cracking whole eggs leaves about %s %s over (%s %s eggs).", count, many, f.System, Of(f.Size))
	}),
	"left_over": of(func(s Style, f model.LeftOver) string {
		var over []string
		for _, p := range [...]struct {
			ml, g float64
			role  phase.Role
		}{{f.DenseML, f.DenseG, phase.Dense}, {f.FoamML, f.FoamG, phase.Foam}} {
			if p.ml >= 0.5 {
				over = append(over, s.Volume(p.ml)+" ("+s.Mass(p.g)+") "+Of(p.role.String()))
			}
		}
		share, all, what := s.Percent(f.FoamPercent, 0), s.Percent(f.AllPercent, 0), List(over)
		if len(over) > 1 {
			return T("At %s foam, %s are left over.", share, what)
		}
		if f.FoamML > f.DenseML {
			return T("At %s foam, %s is left over. %s foam uses up both; or spread it over the tubs, or bake it as meringues.", share, what, all)
		}
		return T("At %s foam, %s is left over. %s foam uses up both; or freeze it by itself.", share, what, all)
	}),
	"foam_draws_water": of(func(s Style, f model.FoamDrawsWater) string {
		return T("The foam freezes only at %s, so in an ordinary freezer (%s) it holds no ice and draws water from the custard. Use less sugar or more egg white.", s.TemperatureTo(f.FreezesAtC, 1), s.Temperature(f.FreezerC))
	}),
	"own_figures_differ": of(func(s Style, f model.OwnFiguresDiffer) string {
		whose := T("the library's")
		if f.Shelf {
			whose = T("those on your own shelf")
		}
		return T("%s: this design brings its own figures, which differ from %s; its own are used.", Kitchen(f.Ingredient), whose)
	}),
	"composition_assumed": of(func(s Style, f model.CompositionAssumed) string {
		return Kitchen(f.Ingredient) + ": " + Assumption(s, f.Assumed) + "."
	}),
	"nutrition_incomplete": of(func(s Style, f model.NutritionIncomplete) string {
		names := make([]string, len(f.Lacks))
		for i, c := range f.Lacks {
			names[i] = Of(c.Words())
		}
		return T(either(float64(len(names)), "%s: no source gives its %s, so the label's figure is a lower bound.", "%s: no source gives its %s, so the label's figures are lower bounds."),
			Kitchen(f.Ingredient), List(names))
	}),
}

// Kitchen is what an ingredient is called where one cooks.
func Kitchen(in *ingredient.Ingredient) string {
	if in == nil {
		return Unknown
	}
	if in.Own {
		return in.Kitchen()
	}
	return Of(in.Kitchen())
}

func otherRole(r phase.Role) phase.Role {
	if r == phase.Dense {
		return phase.Foam
	}
	return phase.Dense
}

// outsideLaw says why nobody knows how hard a phase is, the weightiest first.
func outsideLaw(s Style, f model.OutsideHardnessLaw) string {
	the := T("The %s", Of(f.Phase.String()))
	switch {
	case f.Law.FatTooHigh:
		return T("%s is %s fat. So much fat decides by itself how hard it is, and the model does not know how: it gives no word. Use more milk and less fat.", the, s.Percent(f.FatPercent, 0))
	case f.Law.SyrupTooThick:
		return T("At %s the liquid of the %s is %s sugar. The model knows the thickness of such a liquid up to %s and gives no word beyond. Use less sugar or more water.", s.Temperature(f.AtC), Of(f.Phase.String()), s.Percent(f.SugarPercent, 0), s.Percent(f.MostPercent, 0))
	}
	return T("%s is colder than %s, below which nobody measured how thick its liquid is: the model gives no word.", the, s.Temperature(f.LeastC))
}
