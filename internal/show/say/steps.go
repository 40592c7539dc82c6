package say

import (
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

// Titled is a step, a caution or a check: a few words and what they stand for.
type Titled struct{ Title, Text string }

// Temperatures of the steps, °C. Agency: US consumer advice on egg dishes,
// 160 °F (read in secondary pages). Cooling: FDA Food Code, key temperatures,
// 135 °F to 70 °F within 2 h and to 41 °F within 4 h more. The others are
// common practice, no source.
const (
	eggMixtureC              = 71
	custardFrom, custardTo   = 80, 83
	steamingC                = 70
	coolFrom, coolBy, coldBy = 57, 21, 5
	foamCoolC                = 30
	microwavedEggC           = 74
)

// altitudeM is the height above the sea from which the steps tell it, m.
const altitudeM = 300

// Steps says how the design is made, in order; with the times of the cold where
// they are computed.
func Steps(s Style, d design.Design, r *model.Result, times *cold.Answer) []Titled {
	var steps []Titled
	dense, foam := r.Dense.InTub(), r.Foam.InTub()
	if dense {
		steps = append(steps, custardSteps(s, r, times)...)
	}
	if foam {
		steps = append(steps, foamSteps(s, d, r)...)
	}
	switch {
	case dense && foam:
		steps = append(steps, Titled{"Fill and swirl", filled(d.Blend.Layout) + " " + swirled(s, d.Blend)})
	case dense:
		steps = append(steps, Titled{"Fill", "Fill the tubs with the custard."})
	case foam:
		steps = append(steps, Titled{"Fill", "Fill the tubs with the foam."})
	default:
		return nil
	}
	return append(steps, Titled{"Harden", hardenStep(s, times)}, Titled{"Serve", serveStep(s, d, times)})
}

func custardSteps(s Style, r *model.Result, times *cold.Answer) []Titled {
	has := func(such func(*ingredient.Ingredient) bool) bool { return uses(r, design.DensePart, such) }
	strain := " Strain."
	if r.Dense.WaterOff > 0 {
		strain += " Weigh it, less the pan."
	}
	melt := ""
	if has(func(in *ingredient.Ingredient) bool { return in.Group == "cocoa_chocolate" }) {
		melt = " Whisk in cocoa with the sugar; melt chocolate in the hot custard."
	}
	until := "Stir over low heat, scraping the bottom, until a thermometer shows " + s.TemperatureSpan(custardFrom, custardTo)
	var steps []Titled
	if IsCustard(r) {
		steps = append(steps,
			Titled{"Temper", "Beat the yolks with a third of the sugar. Heat the rest of the custard's list until it steams, about " + s.Temperature(steamingC) +
				", and pour half of it onto the yolks in a thin stream, beating. Return everything to the pan." + melt},
			Titled{"Cook", until + " and the custard coats the spoon. The published figure for egg mixtures is " + s.Temperature(eggMixtureC) + " throughout." + strain})
	} else {
		starch := ""
		if has(isStarchy) {
			starch = "; starch must boil up once to thicken"
		}
		steps = append(steps, Titled{"Cook", "Whisk the dry things together, then into the liquids. " + until + starch + "." + melt + strain})
	}
	chill := "Cool in an ice bath: from " + s.Temperature(coolFrom) + " to " + s.Temperature(coolBy) + " within 2 hours, to " + s.Temperature(coldBy) +
		" within 4 more (FDA Food Code). "
	if has(addedCold) {
		chill += "Alcohol and extracts go in cold. "
	}
	return append(steps, Titled{"Chill", chill + "Cover and rest overnight in the refrigerator."}, Titled{"Freeze soft", freezeSoft(s, times)})
}

func addedCold(in *ingredient.Ingredient) bool {
	return in.Cell(ingredient.Alcohol).Or(0) > 0 || strings.HasPrefix(in.ID, "vanilla")
}

func isStarchy(in *ingredient.Ingredient) bool {
	return strings.Contains(in.ID, "flour") || strings.HasSuffix(in.ID, "starch")
}

func foamSteps(s Style, d design.Design, r *model.Result) []Titled {
	base := "foam base"
	whites := uses(r, design.FoamPart, isWhite)
	if whites {
		base = "whites"
	}
	if !r.Syrup.Present {
		return []Titled{{"Whip", "Beat the " + base + " until the foam stands."}}
	}
	boil := "Boil the syrup without stirring to " + s.Temperature(d.Foam.Syrup.CookTemperatureC) + "."
	if d.Kitchen.AltitudeM > altitudeM {
		boil += " (Figured for " + s.Altitude(d.Kitchen.AltitudeM) + " above the sea.)"
	}
	boil += " Meanwhile beat the " + base + " with anything else for the bowl to soft peaks."
	pour := "Keep beating and pour the boiling syrup down the side of the bowl in a thin stream. Beat until the bowl is below " + s.Temperature(foamCoolC) + " and the foam stands."
	if whites {
		pour += " Take the foam's own temperature after pouring: if it stays below " + s.Temperature(eggMixtureC) + ", use pasteurised whites, " +
			"or heat whites and sugar over water first (published for eggs by microwave: " + s.Temperature(microwavedEggC) + ", then covered 2 minutes)."
	}
	return []Titled{{"Boil the syrup", boil}, {"Pour and whip", pour}}
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
func swirled(s Style, b design.Blend) string {
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
		wide = " " + s.Length(b.HandleMM) + " wide"
	}
	if b.DepthPercent < 100 {
		deep = "down to " + s.Percent(b.DepthPercent, 0) + " of the depth"
	}
	return "With a spoon's handle" + wide + " " + deep + ", " + s.Count(b.Strokes, "stroke", "") + ", " + how + ". Then stop: more would blend them."
}
