package ripple

import (
	"math"
	"math/bits"
	"slices"
	"sync"

	"ripplewright/internal/matter/num"
)

// Ribbons are measured along straight lines through the map, not on pixels: each
// line is followed back to where its fluid lay, and looked at the more closely the
// further apart neighbours on it lay there, so a ribbon far thinner than any pixel
// is crossed twice like every other.

// The lines: level and upright ones every chordMM, whose chords are kept; and
// slanted ones every slantMM, so that all directions together have lineDirections.
const (
	lineDirections = 16
	chordMM        = 1.0
	slantMM        = 3.0
)

// Points of a line begin lineStepMM apart and are halved until the fluid between
// two of them lay within lineFlatMM, on a slope of the layout at least, or until
// they are finestMM apart.
const (
	lineStepMM = 0.2
	lineFlatMM = 0.3
	finestMM   = 1e-4
)

// evenly is how much longer than its neighbour a step may be: where the fluid folds
// between two points it need not lie far apart at them, but beside the fold it does.
const evenly = 4.1

// The lines are followed in sets spread over the cut, until they have met the
// interface so often that more would not move its length by a percent.
const (
	lineSetBits     = 5
	lineSets        = 1 << lineSetBits
	enoughCrossings = 12000
)

// FinestMM is the thinnest ribbon that Measure can tell from its neighbours, mm.
const FinestMM = 2 * finestMM

// traced is what the lines of a cut found.
type traced struct {
	foam, dense []float64 // chords of level and upright lines, mm
	interfaceMM float64
	lines       int
	crossings   int
}

// trace follows all lines of the cut, past what is thinner than leastMM.
func (c *Cut) trace(leastMM float64) traced {
	maps := c.forPictures()
	return c.out.trace(func(l line) (bool, []float64) {
		foam, crossings := c.cross(l, maps)
		return thicker(foam, crossings, l.length, leastMM)
	})
}

// trace follows lines, of each of which cross says whether it begins in foam, and where
// it crosses the interface. The length of the interface is Crofton's: half the
// integral, over all lines, of how often each crosses it.
//
// Source: Santaló L.A. 1976, Integral Geometry and Geometric Probability, ch. 3
// (from memory).
func (o outline) trace(cross func(line) (foam bool, crossings []float64)) (t traced) {
	var all []line
	for k := range lineDirections {
		chords := 2*k%lineDirections == 0
		spacing := slantMM
		if chords {
			spacing = chordMM
		}
		for _, l := range o.lines(math.Pi*float64(k)/lineDirections, spacing, k) {
			l.chords = chords
			all = append(all, l)
		}
	}
	found, starts := make([][]float64, len(all)), make([]bool, len(all))
	sets := 0 // followed, of lineSets
	for crossed := 0; sets < lineSets && crossed < enoughCrossings; sets++ {
		var set []int
		for i := int(bits.Reverse8(uint8(sets)) >> (8 - lineSetBits)); i < len(all); i += lineSets {
			set = append(set, i)
		}
		num.Parallel(len(set), func(k int) { starts[set[k]], found[set[k]] = cross(all[set[k]]) })
		for _, i := range set {
			crossed += len(found[i])
			t.lines++
		}
	}
	for i, l := range all {
		if l.length == 0 || int(bits.Reverse8(uint8(i%lineSets))>>(8-lineSetBits)) >= sets {
			continue
		}
		t.crossings += len(found[i])
		t.interfaceMM += math.Pi / 2 / lineDirections * l.spacing * float64(len(found[i])*lineSets) / float64(sets)
		if l.chords {
			t.chords(l, starts[i], found[i])
		}
	}
	return t
}

// thicker returns what a line of a length finds without the chords shorter than least,
// mm, the shortest first; one that a wall ends takes its one crossing with it.
func thicker(foam bool, crossings []float64, length, least float64) (bool, []float64) {
	for least > 0 && len(crossings) > 0 {
		at, shortest := -1, least
		for i := 0; i <= len(crossings); i++ {
			from, to := 0.0, length
			if i > 0 {
				from = crossings[i-1]
			}
			if i < len(crossings) {
				to = crossings[i]
			}
			if to-from < shortest {
				at, shortest = i, to-from
			}
		}
		if at < 0 {
			break
		}
		if at == 0 {
			foam = !foam
		}
		crossings = slices.Delete(crossings, max(at-1, 0), min(at+1, len(crossings)))
	}
	return foam, crossings
}

// chords takes the chords of a line.
func (t *traced) chords(l line, foam bool, crossings []float64) {
	from := 0.0
	for _, at := range append(crossings, l.length) {
		if foam {
			t.foam = append(t.foam, at-from)
		} else {
			t.dense = append(t.dense, at-from)
		}
		from, foam = at, !foam
	}
}

// line is the part of a straight line inside the cut, and how far it lies from its
// neighbours of the same direction; mm.
type line struct {
	x, y, dx, dy, length, spacing float64

	chords bool // it is level or upright
}

// lines returns the lines of one direction, rad, laid so that no direction begins
// as another does.
func (o outline) lines(angle, spacing float64, k int) []line {
	sin, cos := math.Sincos(angle)
	half := (math.Abs(o.w*sin) + math.Abs(o.h*cos)) / 2
	n := max(int(math.Round(2*half/spacing)), 1)
	spacing = 2 * half / float64(n)
	_, shift := math.Modf(0.5 + float64(k)*0.6180339887498949)
	var all []line
	for i := range n {
		off := -half + (float64(i)+shift)*spacing
		if shift == 0 {
			off += spacing / 2
		}
		if l, ok := o.within(o.w/2-off*sin, o.h/2+off*cos, cos, sin); ok {
			l.spacing = spacing
			all = append(all, l)
		}
	}
	return all
}

// within returns the part of the line through x, y that lies inside.
func (o outline) within(x, y, dx, dy float64) (line, bool) {
	reach := math.Hypot(o.w, o.h)
	depth := func(s float64) float64 { return o.depth(x+s*dx, y+s*dy) }
	// The cut is convex: its depth along a line rises to one height and falls.
	lo, hi := -reach, reach
	for range 60 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if depth(a) < depth(b) {
			lo = a
		} else {
			hi = b
		}
	}
	mid := (lo + hi) / 2
	if depth(mid) <= 0 {
		return line{}, false
	}
	from, to := num.RootOrEnd(depth, -reach, mid, 0), num.RootOrEnd(depth, mid, reach, 0)
	return line{x: x + from*dx, y: y + from*dy, dx: dx, dy: dy, length: to - from}, true
}

// beads are points of a line in order: how far along it, where their fluid lay, and
// its height above the level there.
type beads struct{ at, x, y, f []float64 }

func (b *beads) add(from *beads, i int) {
	b.at, b.x, b.y, b.f = append(b.at, from.at[i]), append(b.x, from.x[i]), append(b.y, from.y[i]), append(b.f, from.f[i])
}

func (b *beads) clear() { b.at, b.x, b.y, b.f = b.at[:0], b.x[:0], b.y[:0], b.f[:0] }

// tracings holds the points of a line from one line to the next.
var tracings = sync.Pool{New: func() any { return new([3]beads) }}

// place finds the fluid of points that have only their place on l.
func (c *Cut) place(b *beads, l line, maps []puller) {
	n := len(b.at)
	b.x, b.y, b.f = grown(b.x, n), grown(b.y, n), grown(b.f, n)
	for i, at := range b.at {
		b.x[i], b.y[i] = l.x+at*l.dx, l.y+at*l.dy
	}
	for _, m := range maps {
		m.pull(b.x, b.y)
	}
	for i := range b.f {
		b.f[i] = c.start.at(b.x[i], b.y[i]) - c.level
	}
}

// cross returns whether a line begins in foam, and where it crosses the interface,
// mm along it.
func (c *Cut) cross(l line, maps []puller) (foam bool, crossings []float64) {
	work := tracings.Get().(*[3]beads)
	defer tracings.Put(work)
	now, next, between := &work[0], &work[1], &work[2]
	now.clear()
	n := int(math.Ceil(l.length/lineStepMM)) + 1
	for i := 0; i <= n; i++ {
		now.at = append(now.at, l.length*float64(i)/float64(n))
	}
	c.place(now, l, maps)
	for more := true; more; {
		between.clear()
		for i := 1; i < len(now.at); i++ {
			if c.open(now, i) {
				between.at = append(between.at, (now.at[i-1]+now.at[i])/2)
			}
		}
		if more = len(between.at) > 0; !more {
			break
		}
		c.place(between, l, maps)
		next.clear()
		next.add(now, 0)
		k := 0
		for i := 1; i < len(now.at); i++ {
			if k < len(between.at) && between.at[k] < now.at[i] {
				next.add(between, k)
				k++
			}
			next.add(now, i)
		}
		now, next = next, now
	}
	for i := 1; i < len(now.at); i++ {
		if a, b := now.f[i-1], now.f[i]; (a > 0) != (b > 0) {
			crossings = append(crossings, now.at[i-1]+a/(a-b)*(now.at[i]-now.at[i-1]))
		}
	}
	return now.f[0] > 0, crossings
}

// open reports whether more than one crossing may lie between bead i and the one
// before, or one whose place is not plain.
func (c *Cut) open(b *beads, i int) bool {
	here := b.at[i] - b.at[i-1]
	if i > 1 && here > evenly*(b.at[i-1]-b.at[i-2]) || i+1 < len(b.at) && here > evenly*(b.at[i+1]-b.at[i]) {
		return here > finestMM
	}
	span := math.Hypot(b.x[i]-b.x[i-1], b.y[i]-b.y[i-1])
	if span <= lineFlatMM || b.at[i]-b.at[i-1] < finestMM {
		return false
	}
	// The way between the two is a little longer than straight.
	return math.Min(math.Abs(b.f[i]), math.Abs(b.f[i-1])) < 0.75*span*c.start.slope || (b.f[i] > 0) != (b.f[i-1] > 0)
}
