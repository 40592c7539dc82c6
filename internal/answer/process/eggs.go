package process

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/work/design"
)

// Eggs is the ledger in whole eggs: what to crack, what of it is used, what is
// over. Used + left = cracked, of yolks and of whites.
type Eggs struct {
	Crack                   int
	YolksUsed, WhitesUsed   float64 // in pieces of the size
	YolksLeft, WhitesLeft   float64
	YolksLeftG, WhitesLeftG float64
	System, Size            string
}

// slack is what of an egg is made up by the next one being larger: a yolk's
// own scatter (1.5 g of 17, from memory).
const slack = 0.05

func eggsOf(d design.Design, r *model.Result) Eggs {
	size, err := egg.Find(d.Eggs.System, d.Eggs.Size)
	if err != nil || !r.Eggs.Known {
		return Eggs{}
	}
	e := Eggs{Crack: int(math.Ceil(r.Eggs.Crack - slack)), YolksUsed: r.Eggs.Yolks, WhitesUsed: r.Eggs.Whites, System: size.System, Size: size.Name}
	e.YolksLeft = math.Max(0, float64(e.Crack)-e.YolksUsed)
	e.WhitesLeft = math.Max(0, float64(e.Crack)-e.WhitesUsed)
	e.YolksLeftG, e.WhitesLeftG = e.YolksLeft*size.Yolk, e.WhitesLeft*size.White
	return e
}
