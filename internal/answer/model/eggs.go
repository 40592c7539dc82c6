package model

import (
	"math"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/work/design"
)

// eggSlack is what of an egg is made up by the next being larger: a yolk's own
// scatter is 1.5 g of 17 (from memory).
const eggSlack = 0.05

// countEggs counts the eggs that the lines use up, by mass, in eggs of the
// design's size, and what cracking whole eggs for them leaves over: of six yolks
// and four whites, two whites.
func countEggs(d design.Design, lines []Line) Eggs {
	size, err := egg.Find(d.Eggs.System, d.Eggs.Size)
	if err != nil {
		return Eggs{}
	}
	e := Eggs{Known: true}
	for _, l := range lines {
		switch l.Ingredient.ID {
		case "egg_yolk":
			e.Yolks += l.Grams / size.Yolk
		case "egg_white":
			e.Whites += l.Grams / size.White
		case "egg_whole":
			e.Yolks += l.Grams / size.Edible
			e.Whites += l.Grams / size.Edible
		}
	}
	e.Crack = math.Ceil(math.Max(e.Yolks, e.Whites) - eggSlack)
	e.YolksLeft, e.WhitesLeft = math.Max(0, e.Crack-e.Yolks), math.Max(0, e.Crack-e.Whites)
	return e
}
