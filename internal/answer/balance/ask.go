package balance

import (
	"math"
	"slices"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/work/design"
)

// Ask is what a maker wishes of a design. The zero Ask wishes nothing but that
// it has no caution.
type Ask struct {
	Wishes []Wish
	Locks  Locks
	Ranges []Range // of lines, in place of the usual ones

	WholeEggs  bool               // eggs, yolks and whites of the batch as made are whole
	Packs      map[string]float64 // g of a pack, by ingredient, of which whole ones are used up
	NoSwaps    bool               // no sugar comes in that is not there
	Adds       []string           // what else may come in: ids of ingredients, sugars into the syrup too
	MayServeAt bool               // the serving temperature may move
	Cautions   []string           // codes of those that must not be; nil: of all

	// What whole pieces and cautions weigh beside the wishes. 0 of pieces: they are
	// whole, whatever that costs; 0 of cautions: 1.
	EggsWeight, PacksWeight, CautionsWeight float64

	Kitchen *cold.Profile // of the minutes from the freezer; nil: the ordinary one
}

// Range is how far the lines of an ingredient may go, g as written.
type Range struct {
	Ingredient string
	Low, High  float64
}

// iceMarginK is by how much a foam that is to keep its ice freezes above the
// freezer's temperature.
const iceMarginK = 0.2

func (a *Ask) whole() bool { return a.WholeEggs || len(a.Packs) > 0 }

// wishes are those asked for, and the pieces that are weighed beside them, of ingredients in lib.
func (a *Ask) wishes(lib *ingredient.Library) []Wish {
	out := slices.Clone(a.Wishes)
	if a.WholeEggs && a.EggsWeight > 0 {
		out = append(out, WholeEggs(a.EggsWeight))
	}
	if a.PacksWeight > 0 {
		var ids []string
		for id := range a.Packs {
			ids = append(ids, id)
		}
		slices.Sort(ids)
		for _, id := range ids {
			if in, ok := lib.Find(id); ok {
				out = append(out, WholePacks(in, a.Packs[id], a.PacksWeight))
			}
		}
	}
	return out
}

// KeepsIce is the wish that the foam has ice in a freezer at c °C.
func KeepsIce(c float64) Wish {
	return Wish{Of: FoamFreezes, Low: c + iceMarginK, High: math.Inf(1), Weight: 1, AtC: math.NaN()}
}

// problemOf returns the problem that ask sets of d. Where eggs or packs are
// whole it is of the batch as made, whose grams are not scaled any more. Wide, it is with
// what few kitchens keep, unless no sugar comes in.
func problemOf(m *model.Model, d design.Design, ask *Ask, wide bool) (*problem, error) {
	s, err := m.Sketch(d)
	if err != nil {
		return nil, err
	}
	if ask.whole() {
		d = scaleRounded(asMade(d, &s, ask.WholeEggs))
		if s, err = m.Sketch(d); err != nil {
			return nil, err
		}
	}
	k := newMaker(m.Holding(d.Own), &d, &s, ask.Locks)
	if ask.MayServeAt {
		k.serving()
	}
	k.lines()
	k.packs(ask.Packs)
	k.ranges(ask.Ranges)
	k.sugars(ask)
	if wide && !ask.NoSwaps {
		k.seldomKept()
	}
	k.air()
	k.syrup()
	k.ratio()
	k.batch(ask)
	k.asTheyStand()
	p := newProblem(m, d, k.levers)
	p.wishes = ask.wishes(m.Library().With(d.Own))
	if p.guard = ask.CautionsWeight; p.guard == 0 {
		p.guard = 1
	}
	p.made = ask.whole() && d.Batch.Basis == design.BasisTubs
	p.cautions = func(code string) bool { return ask.Cautions == nil || slices.Contains(ask.Cautions, code) }
	return p, nil
}

// sugars adds what may come in. What is swapped is a line that goes and one that
// comes, each within its grams.
func (k *maker) sugars(ask *Ask) {
	var ids []string
	if !ask.NoSwaps {
		ids = append(ids, dextrose, glucoseSyrup)
	}
	for _, id := range ask.Adds {
		if !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	for _, id := range ids {
		in, ok := k.m.Library().Find(id)
		if !ok {
			continue
		}
		most, sugar := 1.0, kind.Of(in) == kind.Sugar
		if sugar {
			most = 0.2
		}
		k.adds(design.DensePart, most, id)
		if sugar && len(k.d.Foam.Syrup.Lines) > 0 {
			k.adds(design.SyrupPart, 0.3, id)
		}
	}
}

// moreOfTheSame is the price of making twice as much: next to nothing, beside weighing
// otherwise.
const moreOfTheSame = 0.05

// batch adds how much is made, where that is wished for: of a batch as written all
// lines together, else the tubs.
func (k *maker) batch(ask *Ask) {
	of := func(q *Quantity) bool { return slices.ContainsFunc(ask.Wishes, func(w Wish) bool { return w.Of == q }) }
	counted := func(l design.Line) bool { return l.Count > 0 }
	if !of(TubsFilled) && !of(EggsCracked) {
		return
	}
	switch {
	case k.d.Batch.Basis == design.BasisTubs && !ask.whole():
		n := float64(k.d.Tubs.Count)
		k.setting("tubs.count", 1, math.Min(500, 4*n+4), n, moreOfTheSame, 1)
	case k.d.Batch.Basis == design.BasisAsWritten && !ask.whole() && len(k.locks.Lines) == 0 &&
		!slices.ContainsFunc(k.d.Dense.Lines, counted) && !slices.ContainsFunc(k.d.Foam.Lines, counted):
		k.add(Lever{Kind: Batch, Low: 0.1, High: 10, Unit: 1, Price: moreOfTheSame})
	}
}

// asTheyStand lets settings that stand outside the usual ranges stay there.
func (k *maker) asTheyStand() {
	for i := range k.levers {
		if l := &k.levers[i]; l.Kind == Setting {
			at := l.value(k.d)
			l.Low, l.High = math.Min(l.Low, at), math.Max(l.High, at)
		}
	}
}

// asMade returns d with the lines of the batch as made. With eggs, lines of
// fresh egg are counted, in whole pieces.
func asMade(d design.Design, s *model.Sketch, eggs bool) design.Design {
	for _, l := range s.Lines() {
		line := d.Lines(l.Part)[l.Index]
		f := 1.0
		if l.WrittenG > 0 {
			f = l.Grams / l.WrittenG
		}
		line.Grams *= f
		line.Count *= f
		if part := pieceOf(line); eggs && part != "" {
			if line.Count == 0 {
				each, err := egg.Grams(d.Eggs.System, d.Eggs.Size, string(part), 1)
				if err != nil {
					continue
				}
				line.Count = line.Grams / each
			}
			line.CountOf, line.Grams = part, 0
			line.Count = math.Max(1, math.Round(line.Count))
		}
		d = d.WithLine(l.Part, l.Index, line)
	}
	return d
}

// scaleRounded returns d with each line as finely as a kitchen scale shows it.
func scaleRounded(d design.Design) design.Design {
	for _, p := range design.Parts {
		lines := slices.Clone(d.Lines(p))
		for i, l := range lines {
			fine := 10.0
			if l.Grams < 10 {
				fine = 100
			}
			lines[i].Grams = math.Round(l.Grams*fine) / fine
		}
		d = d.WithLines(p, lines)
	}
	return d
}

// pieceOf returns what a line of fresh egg counts, "" of any other.
func pieceOf(l design.Line) design.EggPart {
	if l.Count > 0 {
		return l.CountOf
	}
	for _, p := range [...]design.EggPart{design.WholeEggs, design.Yolks, design.Whites} {
		if l.Ingredient == p.IngredientID() {
			return p
		}
	}
	return ""
}

// packs makes the lines of what comes in packs move by whole ones.
func (k *maker) packs(of map[string]float64) {
	for i := range k.levers {
		l := &k.levers[i]
		if l.Kind != Grams || l.Line < 0 {
			continue
		}
		if g := of[k.d.Lines(l.Part)[l.Line].Ingredient]; g > 0 {
			l.Whole, l.Unit = g, g
			l.Low, l.High = 0, g*math.Ceil(l.High/g)
		}
	}
}

func (k *maker) ranges(of []Range) {
	for i := range k.levers {
		l := &k.levers[i]
		if l.Kind != Grams {
			continue
		}
		id := l.With
		if l.Line >= 0 {
			id = k.d.Lines(l.Part)[l.Line].Ingredient
		}
		for _, r := range of {
			if r.Ingredient == id {
				l.Low, l.High = r.Low, r.High
			}
		}
	}
	k.levers = slices.DeleteFunc(k.levers, func(l Lever) bool { return l.High < l.Low })
}
