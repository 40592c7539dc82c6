package balance

import (
	"maps"
	"math"
	"slices"
	"sort"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/work/design"
)

// Locks are what must not move: lines by part and place, and settings by path.
// The zero Locks locks nothing.
type Locks struct {
	Lines    map[LineAt]bool
	Settings map[string]bool
}

// LineAt is a line's place.
type LineAt struct {
	Part design.Part
	Line int
}

// span is how far the grams of a line may go: shares of what is written, and up
// to a share of its phase where that is more.
type span struct{ from, to, ofPhase float64 }

// spans by how a cook treats an ingredient: common practice, no source. What is
// not here flavours, thickens or sets, and a search leaves it alone.
var spans = map[kind.Kind]span{
	kind.Sugar:     {0, 2.5, 0.3},
	kind.Liquid:    {0.4, 2, 0},
	kind.Yolk:      {0.3, 1.7, 0},
	kind.White:     {0.6, 2, 0},
	kind.WhitePast: {0.6, 2, 0},
	kind.Powder:    {0, 1.6, 0},
	kind.Chocolate: {0.3, 1.4, 0},
	kind.Cocoa:     {0.5, 1.3, 0},
	kind.Fat:       {0, 1.5, 0},
	kind.Paste:     {0.4, 1.4, 0},
	kind.Sour:      {0.2, 1.3, 0},
	kind.Cultured:  {0.3, 1.5, 0},
	kind.Spirit:    {0, 1, 0}, // nobody is advised to add alcohol
}

// The ingredients that a search may bring in: less sweet for what they soften,
// or less sweet and no softer.
const (
	dextrose     = "dextrose_monohydrate"
	glucoseSyrup = "glucose_syrup_de42"
	sucrose      = "sugar"
)

// What a search brings in only where it does not do without: sugars that few kitchens
// keep, sweeter and softer or less sweet and no harder, and milk whose lactose has come
// apart, which is softer and sweeter.
const (
	invertSyrup = "invert_syrup"
	fructose    = "fructose"
	trehalose   = "trehalose"
	wholeMilk   = "milk_whole"
	lactoseFree = "lactose_free_milk"
)

var seldom = [...]string{invertSyrup, fructose, trehalose}

// seldomKept adds what a search brings in only where it does not do without.
func (k *maker) seldomKept() {
	for _, id := range seldom {
		k.adds(design.DensePart, 0.2, id)
		if len(k.d.Foam.Syrup.Lines) > 0 && id == invertSyrup {
			k.adds(design.SyrupPart, 0.3, id)
		}
	}
	for i, l := range k.d.Dense.Lines {
		if l.Ingredient == wholeMilk && l.Count == 0 && l.Grams > 0 && !k.locks.Lines[LineAt{design.DensePart, i}] && !k.locked(design.DensePart, lactoseFree) && k.has(lactoseFree) {
			k.add(Lever{Kind: Swap, Part: design.DensePart, Line: i, With: lactoseFree, High: l.Grams, Unit: 0.25 * l.Grams, Price: 1.5})
		}
	}
}

// maker collects the levers of a design.
type maker struct {
	m      *model.Model
	d      *design.Design
	locks  Locks
	grams  [3]float64 // of each part, as written
	levers []Lever
}

func newMaker(m *model.Model, d *design.Design, r *model.Sketch, locks Locks) *maker {
	k := &maker{m: m, d: d, locks: locks.butHeaviest(d)}
	for _, l := range r.Lines() {
		k.grams[l.Part] += l.WrittenG
	}
	return k
}

// mostLines is how many lines of a part a search moves: the heaviest, since its
// work grows with the third power of them. No kitchen's recipe has as many.
const mostLines = 24

// butHeaviest returns l with all lines of d locked but the heaviest of each part.
func (l Locks) butHeaviest(d *design.Design) Locks {
	for _, p := range design.Parts {
		lines := d.Lines(p)
		if len(lines) <= mostLines {
			continue
		}
		order := make([]int, len(lines))
		for i := range order {
			order[i] = i
		}
		sort.SliceStable(order, func(a, b int) bool { return lines[order[a]].Grams > lines[order[b]].Grams })
		held := maps.Clone(l.Lines)
		if held == nil {
			held = map[LineAt]bool{}
		}
		for _, i := range order[mostLines:] {
			held[LineAt{p, i}] = lines[i].Count == 0 || held[LineAt{p, i}]
		}
		l.Lines = held
	}
	return l
}

func (k *maker) add(l Lever) {
	if l.High > l.Low && l.Unit > 0 {
		k.levers = append(k.levers, l)
	}
}

// phaseGrams is the weight of all lines of a part's phase.
func (k *maker) phaseGrams(p design.Part) float64 {
	if p == design.DensePart {
		return k.grams[p]
	}
	return k.grams[design.FoamPart] + k.grams[design.SyrupPart]
}

// lines adds a lever for each line that may move.
func (k *maker) lines() {
	for _, p := range design.Parts {
		for i, l := range k.d.Lines(p) {
			if k.locks.Lines[LineAt{p, i}] {
				continue
			}
			if in, ok := k.m.Library().Find(l.Ingredient); ok {
				k.line(p, i, l, in)
			}
		}
	}
}

func (k *maker) line(p design.Part, i int, l design.Line, in *ingredient.Ingredient) {
	if l.Count > 0 {
		k.add(Lever{Kind: Count, Part: p, Line: i, Low: math.Ceil(l.Count / 3), High: math.Ceil(2 * l.Count), Unit: math.Max(1, l.Count/4), Whole: 1, Price: 2})
		return
	}
	if in.ID == "water" && p == design.SyrupPart { // it boils off; enough must be there to dissolve the sugar
		k.add(Lever{Part: p, Line: i, Low: 0.5 * l.Grams, High: math.Max(2*l.Grams, 0.5*k.grams[p]), Unit: 0.3*l.Grams + 5, Price: 3})
		return
	}
	of := kind.Of(in)
	s, ok := spans[of]
	if isSalt(in) {
		s, ok = span{0, 1, 0}, true
	}
	if !ok || l.Grams <= 0 {
		return
	}
	most := math.Max(s.to*l.Grams, s.ofPhase*k.phaseGrams(p))
	unit, price := 0.25*l.Grams, 2.0
	if of == kind.Sugar {
		unit, price = 0.02*k.phaseGrams(p), 1
	}
	k.add(Lever{Part: p, Line: i, Low: s.from * l.Grams, High: most, Unit: unit, Price: price})
}

func isSalt(in *ingredient.Ingredient) bool { return in.Cell(ingredient.SodiumMG).Or(0) > 20000 }

// swaps adds levers from each sugar to another.
func (k *maker) swaps() {
	for _, p := range [...]design.Part{design.DensePart, design.SyrupPart} {
		for i, l := range k.d.Lines(p) {
			in, ok := k.m.Library().Find(l.Ingredient)
			if !ok || l.Count > 0 || l.Grams <= 0 || k.locks.Lines[LineAt{p, i}] || kind.Of(in) != kind.Sugar {
				continue
			}
			for _, to := range [...]string{dextrose, glucoseSyrup, sucrose} {
				if to != l.Ingredient && !k.locked(p, to) && k.has(to) {
					k.add(Lever{Kind: Swap, Part: p, Line: i, With: to, High: l.Grams, Unit: 0.03 * k.phaseGrams(p), Price: 1.3})
				}
			}
		}
	}
}

// locked reports whether the line that weighs id may not move.
func (k *maker) locked(p design.Part, id string) bool {
	i := lineOf(k.d.Lines(p), id)
	return i >= 0 && k.locks.Lines[LineAt{p, i}]
}

func (k *maker) has(id string) bool { _, ok := k.m.Library().Find(id); return ok }

// adds adds levers for ingredients that are not there yet.
func (k *maker) adds(p design.Part, most float64, ids ...string) {
	for _, id := range ids {
		if k.has(id) && lineOf(k.d.Lines(p), id) < 0 && !slices.ContainsFunc(k.d.Lines(p), func(l design.Line) bool { return l.Ingredient == id }) {
			k.add(Lever{Part: p, Line: -1, With: id, High: most * k.phaseGrams(p), Unit: 0.03 * k.phaseGrams(p), Price: 2})
		}
	}
}

// setting adds a lever for a setting that is not locked, in the place of one
// that it has. Where the setting stands outside the range, it moves into it or
// not at all.
func (k *maker) setting(path string, low, high, unit, price, whole float64) {
	if k.locks.Settings[path] {
		return
	}
	l := Lever{Kind: Setting, Path: path, Unit: unit, Price: price, Whole: whole}
	l.Low, l.High = low, high
	k.levers = slices.DeleteFunc(k.levers, func(o Lever) bool { return o.Path == path })
	k.add(l)
}

// air adds the overruns, within what hands and a whisk reach: the first step of
// each limit is the most that a search asks for.
func (k *maker) air() {
	if k.grams[design.DensePart] > 0 {
		k.setting("dense.overrun_percent", 5, limits.CustardAir.Steps[0].At, 10, 1.5, 0)
	}
	if k.phaseGrams(design.FoamPart) > 0 {
		k.setting("foam.overrun_percent", 150, limits.FoamAir.Steps[0].At, 60, 2, 0)
	}
}

// The temperatures to which a search cooks a syrup, °C: soft ball to firm ball,
// 112 to 121 (McGee 2004, On Food and Cooking).
const softBall, firmBall = 112, 121

func (k *maker) syrup() {
	if k.grams[design.SyrupPart] > 0 && k.d.Foam.Syrup.WeighedG == 0 {
		k.setting("foam.syrup.cook_temperature_c", softBall, firmBall, 2, 1.5, 0)
	}
}

func (k *maker) ratio() {
	if f := k.d.Blend.FoamVolumePercent; f > 0 && f < 100 {
		k.setting("blend.foam_volume_percent", 10, 75, 8, 2, 0)
	}
}

// serving adds the temperature at which the tub is eaten, within six kelvin and
// what an ordinary freezer holds.
func (k *maker) serving() {
	t := k.d.Serving.TemperatureC
	k.setting("serving.temperature_c", math.Max(t-6, math.Min(t, model.HomeFreezerC)), math.Min(t+6, -6), 3, 1, 0)
}
