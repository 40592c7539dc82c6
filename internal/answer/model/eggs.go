package model

import (
	"math"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/work/design"
)

// eggSlack is what of an egg is made up by the next being larger: a yolk's own
// scatter is 1.5 g of 17 (from memory).
const eggSlack = 0.05

// Eggs is the ledger of what the batch as made takes, in eggs of the design's
// size. Whites and yolks that come without the other, dried or from a carton,
// are no eggs.
type Eggs struct {
	Dense, Foam EggParts // used by each phase
	EggParts             // used by both
	Crack       float64  // eggs to crack, a whole number
	Left        EggParts // over once these are cracked: Crack less what is used
	Known       bool
}

// EggParts is a number of yolks and whites; whole eggs count in both. What is
// left over may be below 0, to −eggSlack: eggs a little larger make it up.
type EggParts struct{ Yolks, Whites float64 }

// Plus returns p and k times o.
func (p EggParts) Plus(o EggParts, k float64) EggParts {
	return EggParts{p.Yolks + k*o.Yolks, p.Whites + k*o.Whites}
}

// EggsIn returns the yolks and whites in g of an ingredient, none of what is no
// shell egg.
func EggsIn(id string, g float64, size egg.Size) EggParts {
	switch id {
	case design.Yolks.IngredientID():
		return EggParts{Yolks: g / size.YolkG}
	case design.Whites.IngredientID():
		return EggParts{Whites: g / size.WhiteG}
	case design.WholeEggs.IngredientID():
		return EggParts{g / size.EdibleG, g / size.EdibleG}
	}
	return EggParts{}
}

// ToCrack returns how many eggs give that many yolks and whites: of six yolks
// and four whites, six.
func (p EggParts) ToCrack() float64 {
	return math.Max(0, math.Ceil(math.Max(p.Yolks, p.Whites)-eggSlack))
}

// countEggs counts the eggs that the lines use up, by mass, in eggs of the
// design's size, and what cracking whole eggs for them leaves over: of six yolks
// and four whites, two whites.
func countEggs(d design.Design, lines []BatchLine) Eggs {
	size, err := egg.Find(d.Eggs.System, d.Eggs.Size)
	if err != nil {
		return Eggs{}
	}
	e := Eggs{Known: true}
	for _, l := range lines {
		in := &e.Foam
		if l.Part == design.DensePart {
			in = &e.Dense
		}
		*in = in.Plus(EggsIn(l.Ingredient.ID, l.Grams, size), 1)
	}
	e.EggParts = e.Dense.Plus(e.Foam, 1)
	e.Crack = e.ToCrack()
	e.Left = EggParts{e.Crack - e.Yolks, e.Crack - e.Whites}
	return e
}
