package process

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/work/design"
)

// Eggs is the ledger in whole eggs: what to crack, what of it each phase uses,
// what is over. Used + left = cracked, of yolks and of whites; a little below 0
// is left where eggs slightly larger make up the last of them.
type Eggs struct {
	Crack                   int
	Dense, Foam             model.EggParts // used, in pieces of the size
	YolksUsed, WhitesUsed   float64        // by both
	Whole                   float64        // of both, used together
	YolksLeft, WhitesLeft   float64
	YolksLeftG, WhitesLeftG float64
	System, Size            string
}

// EggsOf returns the ledger of d, which comes to r.
func EggsOf(d design.Design, r *model.Result) Eggs {
	size, err := egg.Find(d.Eggs.System, d.Eggs.Size)
	if err != nil || !r.Eggs.Known {
		return Eggs{}
	}
	x := r.Eggs
	e := Eggs{Crack: int(x.Crack), Dense: x.Dense, Foam: x.Foam, YolksUsed: x.Yolks, WhitesUsed: x.Whites,
		YolksLeft: x.Left.Yolks, WhitesLeft: x.Left.Whites, YolksLeftG: x.Left.Yolks * size.YolkG, WhitesLeftG: x.Left.Whites * size.WhiteG,
		System: size.System, Size: size.Name}
	for _, l := range r.Lines {
		if l.Ingredient.ID == "egg_whole" {
			e.Whole += l.Grams / size.EdibleG
		}
	}
	return e
}
