package card

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

// Temperatures of the steps, °C. Agency: US consumer advice on egg dishes,
// 160 °F (read in secondary pages). Cooling: FDA Food Code, key temperatures,
// 135 °F to 70 °F within 2 h and to 41 °F within 4 h more. The others are
// common practice, no source.
const (
	eggMixtureC              = 71
	custardFrom, custardTo   = 80, 83
	coolFrom, coolBy, coldBy = 57, 21, 5
	foamCoolC                = 30
)

// checkCupML is the cup that the steps weigh overrun with.
const checkCupML = 250

// stepsOf words the making, in order.
func stepsOf(d design.Design, r *model.Result, times *cold.Answer) []titled {
	var s []titled
	if r.Dense.Portion.MassG > 0 {
		s = append(s, custardSteps(r, times)...)
	}
	if r.Foam.Portion.MassG > 0 {
		s = append(s, foamSteps(d, r)...)
	}
	return append(s, tubSteps(d, r, times)...)
}

func custardSteps(r *model.Result, times *cold.Answer) []titled {
	var s []titled
	down := ""
	if r.Dense.WaterOff > 0 {
		down = " Weigh it, less the pan."
	}
	cold := "alcohol and extracts, if the list has them, "
	if !uses(r, design.DensePart, func(in *ingredient.Ingredient) bool {
		return in.Cell(ingredient.Alcohol).Or(0) > 0 || strings.HasPrefix(in.ID, "vanilla")
	}) {
		cold = ""
	}
	melt := ""
	if uses(r, design.DensePart, func(in *ingredient.Ingredient) bool { return in.Group == "cocoa_chocolate" }) {
		melt = " Whisk in cocoa with the sugar; melt chocolate in the hot custard."
	}
	if uses(r, design.DensePart, isYolky) {
		s = append(s,
			titled{"Temper", "Beat the yolks with a third of the sugar. Bring the rest of the custard's list to steaming, about 70 °C, and pour half of it on the yolks in a thin stream, beating. Return all to the pan." + melt},
			titled{"Cook", fmt.Sprintf("Stir over low heat, scraping the bottom, until a thermometer shows %d to %d °C and the custard coats the spoon. "+
				"The published figure for egg mixtures is %d °C throughout. Strain.%s", custardFrom, custardTo, eggMixtureC, down)})
	} else {
		s = append(s, titled{"Cook", fmt.Sprintf("Whisk the dry things together, then into the liquids. Stir over low heat until a thermometer shows %d to %d °C; starch must boil up once to thicken. Strain.%s%s", custardFrom, custardTo, melt, down)})
	}
	chill := fmt.Sprintf("Cool in an ice bath: from %d to %d °C within 2 hours, to %d °C within 4 more (FDA Food Code). ", coolFrom, coolBy, coldBy)
	if cold != "" {
		chill += strings.ToUpper(cold[:1]) + cold[1:] + "go in cold. "
	}
	chill += "Cover and rest overnight in the refrigerator."
	s = append(s, titled{"Chill", chill})
	return append(s, titled{"Freeze soft", freezeText(times)})
}

func foamSteps(d design.Design, r *model.Result) []titled {
	var s []titled
	whites := uses(r, design.FoamPart, func(in *ingredient.Ingredient) bool { return strings.HasPrefix(in.ID, "egg_white") })
	base := "foam base"
	if whites {
		base = "whites"
	}
	if r.Syrup.Present {
		end := fmt.Sprintf("Boil the syrup without stirring to %s.", printed.Temperature(d.Foam.Syrup.CookTemperatureC))
		if d.Kitchen.AltitudeM > 300 {
			end += fmt.Sprintf(" (Figured for %.0f m above the sea.)", d.Kitchen.AltitudeM)
		}
		s = append(s, titled{"Boil the syrup", end + fmt.Sprintf(" Meanwhile beat the %s with anything else for the bowl to soft peaks.", base)})
		pour := fmt.Sprintf("Beating on, pour the boiling syrup down the side of the bowl in a thin stream. Beat until the bowl is below %d °C and the foam stands.", foamCoolC)
		if whites {
			pour += fmt.Sprintf(" Take the foam's own temperature after pouring: if it stays below %d °C, use pasteurised whites, "+
				"or heat whites and sugar over water first (published for eggs by microwave: 74 °C, then covered 2 minutes).", eggMixtureC)
		}
		return append(s, titled{"Pour and whip", pour})
	}
	return append(s, titled{"Whip", fmt.Sprintf("Beat the %s until the foam stands.", base)})
}

// checksOf lists what the scale should show: the pan after cooking, a cup of
// each phase with its air, and what goes into a tub.
func checksOf(d design.Design, r *model.Result) []titled {
	var c []titled
	add := func(what, figure string) { c = append(c, titled{what, figure}) }
	n := r.Blend.TubsFilled
	dense, foam := r.Dense.Portion.MassG > 0, r.Foam.Portion.MassG > 0
	cup := func(p *model.Phase) {
		if p.Body.Overrun > 0 {
			add(fmt.Sprintf("A level %d mL cup of %s, %s %% overrun", checkCupML, p.Body.Role, number(100*p.Body.Overrun, 0)),
				gramsUnit(checkCupML*p.Body.Density()))
		}
	}
	each := func(p *model.Phase) {
		if n > 0 {
			add(fmt.Sprintf("Into each tub: %s, %s mL", p.Body.Role, grouped(p.Portion.VolumeML/n)),
				gramsUnit(p.Portion.MassG/n))
		}
	}
	if dense {
		if r.Dense.WaterOff > 0 {
			add("Custard in the pan, cooked", gramsUnit(r.Dense.Portion.MadeG))
		}
		cup(&r.Dense)
	}
	if foam {
		if r.Syrup.Present && r.Syrup.WaterOffG > 0 {
			add("Syrup in the pan at "+printed.Temperature(d.Foam.Syrup.CookTemperatureC), gramsUnit(r.Syrup.MassG))
		}
		cup(&r.Foam)
	}
	if dense {
		each(&r.Dense)
	}
	if foam {
		each(&r.Foam)
	}
	return c
}

func tubSteps(d design.Design, r *model.Result, times *cold.Answer) []titled {
	var s []titled
	dense, foam := r.Dense.Portion.MassG > 0, r.Foam.Portion.MassG > 0
	switch {
	case dense && foam:
		s = append(s, titled{"Fill and swirl", filled(d.Blend.Layout) + " " + swirled(d.Blend)})
	case dense:
		s = append(s, titled{"Fill", "Fill the tubs with the custard."})
	case foam:
		s = append(s, titled{"Fill", "Fill the tubs with the foam."})
	default:
		return nil
	}
	return append(s, titled{"Harden", hardenText(times)}, titled{"Serve", serveText(d, times)})
}

// filled says how the phases go into the tub.
func filled(layout string) string {
	switch layout {
	case ripple.Layers.String():
		return "Fill them in turn, in layers, denting each with the spoon."
	case ripple.Halves.String():
		return "Fill them side by side, one half each."
	case ripple.Spiral.String():
		return "Pipe the foam as a coil into the custard."
	}
	return "Set the foam into the custard in spoonfuls."
}

// swirled says how to stir.
func swirled(b design.Blend) string {
	if b.Strokes == 0 {
		return "Leave it as it is: no stroke."
	}
	how := "going round plunge, drag, plunge and fold"
	switch b.Motion {
	case ripple.Plunge.String():
		how = "each straight down and up"
	case ripple.Fold.String():
		how = "each turning the bottom over the top"
	case ripple.FigureEight.String():
		how = "each a figure of eight"
	case ripple.Drag.String():
		how = "each a straight pull"
	}
	wide, deep := "", "down to the bottom"
	if b.HandleMM != design.Default().Blend.HandleMM {
		wide = fmt.Sprintf(" %s mm wide", number(b.HandleMM, 0))
	}
	if b.DepthPercent < 100 {
		deep = fmt.Sprintf("down to %s %% of the depth", number(b.DepthPercent, 0))
	}
	return fmt.Sprintf("With a spoon's handle%s %s, %s, %s. Then stop: more would blend them.", wide, deep, counted(b.Strokes, "stroke"), how)
}

// cautionsOf lists the usual cautions, those about what this design holds
// first.
func cautionsOf(d design.Design, r *model.Result, allergens string) []titled {
	var c []titled
	any := func(such func(*ingredient.Ingredient) bool) *ingredient.Ingredient {
		return first(r, such, allParts...)
	}
	if r.Syrup.Present {
		c = append(c, titled{"Hot sugar", fmt.Sprintf("Syrup at %s sticks and burns deeply. Long handles, dry tools, cold water at hand, no children near.", printed.Temperature(d.Foam.Syrup.CookTemperatureC))})
	}
	if any(func(in *ingredient.Ingredient) bool { return in.Group == "egg" }) != nil {
		c = append(c, titled{"Eggs", fmt.Sprintf("Published figure for cooked custard bases: %d °C (160 °F) throughout, US consumer advice. Freezing kills neither Salmonella nor Listeria. "+
			"For the pregnant, infants, the old and the ill: cooked base and pasteurised egg only.", eggMixtureC)})
	}
	unstated := ""
	if names := namesOf(r, label.UnstatedAllergens); len(names) > 0 {
		unstated = " Not stated, which is not the same as none: those of " + strings.Join(names, ", ") + ". Look on the pack."
	}
	if allergens != "" {
		c = append(c, titled{"Allergens", "Contains " + allergens + ", as the generic ingredients have them; the packs in your hand may name more, and they win." + unstated + " One spoon between tubs spreads them."})
	} else {
		c = append(c, titled{"Allergens", "The records name none. The packs in your hand may, and they win." + unstated})
	}
	if any(isHoney) != nil {
		c = append(c, titled{"Honey", "Never for infants under 12 months, not even cooked in."})
	}
	if a := share(r, mix.Ethanol); a >= 0.05 {
		c = append(c, titled{"Alcohol", fmt.Sprintf("The tub holds %s %% alcohol by weight. Say so in its name; not for children or in pregnancy. Selling it may need a licence.", number(a, 1))})
	}
	if any(isNut) != nil {
		c = append(c, titled{"Nuts", "Whole nuts and hard pieces can choke small children. Nuts added after cooking are unheated: use ready-to-eat ones."})
	}
	if any(func(in *ingredient.Ingredient) bool {
		return strings.HasPrefix(in.ID, "coffee") || strings.HasPrefix(in.ID, "tea") || in.ID == "matcha" || strings.HasPrefix(in.ID, "cocoa_") && in.ID != "cocoa_butter"
	}) != nil {
		c = append(c, titled{"Caffeine", "Coffee, tea and cocoa carry it: say so where it matters."})
	}
	if any(func(in *ingredient.Ingredient) bool {
		return strings.Contains(in.ID, "flour") || strings.HasSuffix(in.ID, "starch")
	}) != nil {
		c = append(c, titled{"Flour and starch", "Raw they are not ready to eat: cook them in the base."})
	}
	return append(c, titled{"Law", "Computed figures, not a licence. Local code and licensed practice decide what may be made, called and sold, and how."})
}

// namesOf returns the names of all such ingredients, each once.
func namesOf(r *model.Result, such func(*ingredient.Ingredient) bool) []string {
	var names []string
	for _, l := range r.Lines {
		if l.Grams > 0 && such(l.Ingredient) && !slices.Contains(names, l.Ingredient.Name) {
			names = append(names, l.Ingredient.Name)
		}
	}
	return names
}

func isNut(in *ingredient.Ingredient) bool {
	return slices.ContainsFunc(label.Allergens(in, label.US), func(a string) bool {
		return strings.HasPrefix(a, "tree_nut") || a == "peanut"
	})
}

// isHoney tells honey, a maker's own too, from a honeydew melon.
func isHoney(in *ingredient.Ingredient) bool {
	words := strings.FieldsFunc(strings.ToLower(in.Name), func(r rune) bool { return !unicode.IsLetter(r) })
	return slices.Contains(words, "honey")
}
