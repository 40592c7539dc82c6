package process

import (
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

func eggsOf(d design.Design, r *model.Result) Eggs {
	size, err := egg.Find(d.Eggs.System, d.Eggs.Size)
	if err != nil || !r.Eggs.Known {
		return Eggs{}
	}
	x := r.Eggs
	e := Eggs{Crack: int(x.Crack), YolksUsed: x.Yolks, WhitesUsed: x.Whites, YolksLeft: x.YolksLeft, WhitesLeft: x.WhitesLeft, System: size.System, Size: size.Name}
	e.YolksLeftG, e.WhitesLeftG = e.YolksLeft*size.Yolk, e.WhitesLeft*size.White
	return e
}
