package icy

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// littleIce is the share of a phase's volume without air up to which crystals
// between the bubbles have no room to be felt: our own.
const littleIce = 0.2

// leastGum is the share of the custard's mass from which gums and gelatine count.
// The published factor is of some 0.2 %; half of that is our own line.
const leastGum = 0.001

// Tell says how icy the design is whose evaluation is r and whose plan of the
// cold is a, with the frames of its hardening, and with what a's kitchen has learnt of
// its ice. It takes a few milliseconds and runs no heat. Options, or a factor, outside
// their ranges are an error.
func Tell(r *model.Result, a *cold.Answer, o Options) (Answer, error) {
	if o.Weeks == 0 {
		o.Weeks = DefaultWeeks
	}
	switch {
	case o.Weeks < 1 || o.Weeks > MostWeeks:
		return Answer{}, flaw.New("the ice: %d weeks are outside 1 to %d", o.Weeks, MostWeeks)
	}
	t := told(r, a)
	if !(t.factor >= LeastFactor-1e-9 && t.factor <= MostFactor+1e-9) {
		return Answer{}, flaw.New("the ice: a factor of %g is outside %.2f to %.2f", t.factor, LeastFactor, MostFactor)
	}
	if !(t.left > 0 && t.left <= 1) {
		return Answer{}, flaw.New("the ice: %g of a band is outside 0 to 1", t.left)
	}
	t.weeks = o.Weeks
	return t.all(), nil
}

// teller holds what the parts of an answer share.
type teller struct {
	r       *model.Result
	a       *cold.Answer
	gums    bool
	toEnd   bool    // beaten once more as it goes into the tub
	factor  float64 // on every diameter, learnt
	left    float64 // of the logarithm of a band
	weeks   int
	tub     tubHistory
	storedC float64
}

func told(r *model.Result, a *cold.Answer) *teller {
	t := &teller{r: r, a: a, gums: gummed(r), factor: 1, left: 1, weeks: DefaultWeeks, tub: historyOf(&a.Harden), storedC: a.Storage.AtC}
	if l := &a.Profile.Learnt; l.IceFactor != 0 {
		t.factor, t.left = l.IceFactor, l.IceLeftFraction
	}
	return t
}

func (t *teller) all() Answer {
	p := &t.a.Profile
	out := Answer{AtC: t.storedC, SwingK: p.SwingK, Openings: p.Openings, Beating: p.Layer.Beating, Churned: p.Churn.Turns(), Weeks: t.weeks, Gums: t.gums, Learnt: p.Learnt}
	if t.r.Dense.InTub() {
		slow := 1.0
		if t.gums {
			slow = ice.GumSlows
		}
		law := ice.Of(&t.r.Dense.Body, slow)
		out.BeginsC = law.FreezingPointC()
		from := t.custard(law)
		places := t.phase(&out.Custard, law, &t.r.Dense.Body, from)
		if out.Custard.Frozen {
			out.Steps, out.Keeps = t.steps(&out.Custard, from, places), t.keeps(&out.Custard, places)
			out.PutBack = t.putBack(&out.Custard, law)
		}
	}
	if t.r.Foam.InTub() {
		law := ice.Of(&t.r.Foam.Body, 1)
		t.phase(&out.Foam, law, &t.r.Foam.Body, t.foam(law))
	}
	return out
}

// gummed reports whether the custard has gums or gelatine to speak of. Lecithin
// stands with them in the kitchen and is none.
func gummed(r *model.Result) bool {
	g := 0.0
	for i := range r.Lines {
		l := &r.Lines[i]
		if k := kind.Of(l.Ingredient); l.Part == design.DensePart && (k == kind.Gum || k == kind.Gelatine) && l.Ingredient.ID != "soy_lecithin" {
			g += l.WrittenG
		}
	}
	return r.Dense.WrittenG > 0 && g >= leastGum*r.Dense.WrittenG
}

// place is one spot of the tub in storage.
type place struct {
	hardened float64 // µm³
	steady   float64 // growth a day at the freezer's temperature, µm³
	swing    float64 // what the swing adds, a day
	openings float64 // what the openings add, a day
}

func (p place) rate() float64 { return p.steady + p.swing + p.openings }

// phase fills in out from what the freezing left, and returns wall and core.
func (t *teller) phase(out *Phase, law *ice.Law, b *phase.Body, from frozen) [2]place {
	stored := b.At(t.storedC)
	out.Present = true
	out.Frozen = stored.IceG > 0 && law.Freezes()
	out.Little = stored.IceVolumeFraction < littleIce
	out.Unbeaten = from.unbeaten
	if !out.Frozen {
		none := ice.Size{ValueUM: math.NaN(), LowUM: math.NaN(), HighUM: math.NaN()}
		out.AfterFreezing, out.Wall, out.Core, out.Mean = none, none, none, none
		return [2]place{}
	}
	wall, core, mean := t.tub.harden(law, from.y, t.storedC)
	places := [2]place{t.stored(law, t.tub.wall, wall), t.stored(law, core.cell, core.y)}
	size := func(made, stored float64) ice.Size { return t.scaled(ice.Banded(made, stored, from.doubt)) }
	out.AfterFreezing, out.Mean = size(from.y, 0), size(mean, 0)
	for w := 0; w <= t.weeks; w++ {
		days := 7 * float64(w)
		out.Weeks = append(out.Weeks, Week{float64(w), size(places[0].hardened, days*places[0].rate()), size(places[1].hardened, days*places[1].rate())})
	}
	out.Wall, out.Core = out.Weeks[0].Wall, out.Weeks[0].Core
	swing := t.tub.swing(t.tub.wall, t.a.Profile.SwingK)
	out.Melts = law.IceFraction(t.storedC+swing) == 0
	airy := b.AirFraction() > Airy
	out.Hardened = word(out.Weeks[0].Coarser(), from.unbeaten, airy, out.Little)
	out.Word = word(out.Weeks[t.weeks].Coarser(), from.unbeaten, airy, out.Little)
	if out.Melts { // what freezes back each time is a new, unbeaten freezing
		out.Word.Step, out.Word.High = len(ice.Words)-1, len(ice.Words)-1
	}
	return places
}

func (t *teller) scaled(s ice.Size) ice.Size {
	v := s.ValueUM * t.factor
	return ice.Size{ValueUM: v, LowUM: v * math.Pow(s.LowUM/s.ValueUM, t.left), HighUM: v * math.Pow(s.HighUM/s.ValueUM, t.left)}
}

// stored returns the growth of one cell in storage.
func (t *teller) stored(law *ice.Law, cell int, hardened float64) place {
	p := place{hardened: hardened, steady: law.StoredUM3PerDay(t.storedC, 0)}
	p.swing = law.StoredUM3PerDay(t.storedC, t.tub.swing(cell, t.a.Profile.SwingK)) - p.steady
	if n := t.a.Profile.Openings; n > 0 {
		p.openings = n * law.ExtraUM3(t.storedC, t.tub.opening(cell, t.storedC))
	}
	return p
}

// steps shares out the volume of the crystals at the coarser place in the end.
func (t *teller) steps(c *Phase, from frozen, places [2]place) []Share {
	p := places[1]
	if last := c.Weeks[len(c.Weeks)-1]; last.Wall.ValueUM > last.Core.ValueUM {
		p = places[0]
	}
	days := 7 * float64(t.weeks)
	all := p.hardened + days*p.rate()
	var out []Share
	for _, s := range [...]Share{
		{Seed, from.seed}, {Mush, from.beaten - from.seed}, {Unparted, from.y - from.beaten}, {Hardening, p.hardened - from.y},
		{Storage, days * p.steady}, {Swing, days * p.swing}, {Openings, days * p.openings},
	} {
		out = append(out, Share{s.Step, s.Fraction / all})
	}
	return out
}

// keeps finds when the coarser place leaves the word that it has when hardened.
func (t *teller) keeps(c *Phase, places [2]place) Keeps {
	k := Keeps{Word: c.Hardened, UpToUM: ice.Words[c.Hardened.Step].BelowUM, Weeks: math.Inf(1)}
	edge := math.Pow(k.UpToUM/t.factor, 3)
	for _, p := range places {
		if p.rate() > 0 {
			k.Weeks = math.Min(k.Weeks, math.Max(0, edge-p.hardened)/p.rate()/7)
		}
	}
	k.LowWeeks, k.HighWeeks = k.Weeks/ice.Uncertain, k.Weeks*ice.Uncertain
	return k
}

// putBack is one outing to the counter, for as long as the tub takes to scoop.
func (t *teller) putBack(c *Phase, law *ice.Law) PutBack {
	counter := &t.a.Counter
	b := PutBack{Minutes: counter.FromMinutes.Value, RingC: math.NaN(), CoreC: math.NaN()}
	if len(counter.Run.Track) == 0 || math.IsNaN(b.Minutes) {
		b.Minutes = math.NaN()
		return b
	}
	at := counter.Run.At(b.Minutes)
	b.RingC, b.CoreC = at.RingC, at.CoreC
	last := c.Weeks[len(c.Weeks)-1]
	var ring bool
	b.RingFactor, _, b.HighRingFactor, ring = law.ThawedFactor(t.storedC, at.RingC)
	b.Ring = thawed(law, last.Wall, t.storedC, at.RingC)
	b.Core = thawed(law, last.Core, t.storedC, at.CoreC)
	b.Rim = !ring || at.WallC >= law.FreezingPointC()
	return b
}

func thawed(law *ice.Law, s ice.Size, stored, warmest float64) ice.Size {
	middle, least, most, _ := law.ThawedFactor(stored, warmest)
	return ice.Size{ValueUM: s.ValueUM * middle, LowUM: s.LowUM * least, HighUM: s.HighUM * most}
}

// word is the step of a size and of its band's ends. Unbeaten crystals grow into
// plates that the tongue feels as one: at least slightly coarse; with much air
// between them, one step more than the size says (assumptions). A phase with
// little ice has no room to be anything but fine.
func word(s ice.Size, unbeaten, airy, little bool) Word {
	if little {
		return Word{}
	}
	step := func(um float64) int {
		i := ice.WordFor(um)
		switch {
		case !unbeaten:
		case airy:
			i = min(i+1, len(ice.Words)-1)
		default:
			i = max(i, Coarse)
		}
		return i
	}
	return Word{step(s.ValueUM), step(s.LowUM), step(s.HighUM)}
}

// Coarse is the place in ice.Words of the first word that a maker minds.
const Coarse = 2
