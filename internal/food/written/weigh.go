package written

import (
	"math"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/customary"
)

// How far two amounts of one line, or a record's density and its own household
// measures, may be apart before the reader asks. common practice, no source: a
// cup of a powder varies by a quarter with how it is filled, a liquid's does not.
const (
	apartLiquid = 0.10
	apartBulk   = 0.25
	apartBeside = 0.19 // what is weighed beside a cup: sugar of 150 g a cup is another cup, or another weight
	apartEggs   = 0.30
	apartShell  = 0.15 // of whole eggs: their shells are a tenth and more
	apartCount  = 0.40 // of a weight in eggs, whose size nobody said
	apartScale  = 0.15 // two weights, of which one is rounded: 1 oz is 28.35 g, and 25 or 30 on many a page
	apartRecord = 0.15
	apartPieces = 0.60 // of pieces, of which the record has the smallest
	apartOunce  = 0.02 // what a can's ounces may differ, of weight and of volume
)

// apart is how far two measures of in may differ, of one.
func apart(in *ingredient.Ingredient) float64 {
	if in.DensityKind == "liquid" {
		return apartLiquid
	}
	return apartBeside
}

// besideBar is how far a second measure may be from the first.
func besideBar(in *ingredient.Ingredient, first, second Said) float64 {
	if first.Basis == Weighed && second.Basis == Weighed {
		return apartScale
	}
	return apart(in)
}

// eggParts are the ids that are counted.
var eggParts = map[string]string{"egg_whole": "eggs", "egg_yolk": "yolks", "egg_white": "whites"}

// weigh gives l its grams, or the doubt that keeps them open.
func (r *Reader) weigh(l *Said, p parts, size string, loose, american bool) {
	if len(p.sum) == 0 && len(p.beside) > 0 {
		p.sum, p.beside = p.beside[:1], p.beside[1:]
	}
	if len(p.sum) == 0 {
		l.ask(NoAmount)
		return
	}
	w := weighing{r: r, l: l, p: p, size: size, american: american}
	w.total, w.how = r.sum(l, p.sum, size, american)
	if w.byScale() {
		loose = false
	}
	w.byAnother()
	if w.how.Doubt != 0 {
		l.ask(w.how.Doubt)
	}
	if p.packs && w.p.times != 1 && w.how.Basis == Weighed && !w.total.Known {
		l.ask(NoMeasure)
	}
	if p.pieces > 0 && w.how.Basis == Weighed {
		if v, _ := r.sum(l, []amount{{n: p.pieces}}, size, american); v.Known && math.Abs(v.Value-w.total.Value) > apartCount*w.total.Value {
			l.ask(Apart)
		}
	}
	if loose && w.how.Basis == Measured {
		l.ask(HowFull)
	}
	w.take()
}

// ask gives l a doubt, unless it has one.
func (l *Said) ask(d Doubt) {
	if l.Doubt == 0 {
		l.Doubt = d
	}
}

// weighing is a line on its way to grams: what the amounts came to so far, and how.
type weighing struct {
	r        *Reader
	l        *Said
	p        parts
	size     string
	american bool

	total ingredient.Cell
	how   Said
}

// byScale takes a weight that stands beside a volume or a count: it is what the writer
// weighed. It reports whether there was one.
func (w *weighing) byScale() (weighed bool) {
	for _, b := range w.p.beside {
		if b.in.kind != mass && b.in.kind != ounce || w.how.Basis == Weighed && w.how.Doubt == 0 {
			continue
		}
		if b.in.kind == ounce && w.how.Basis == Measured && w.how.Doubt == 0 && w.l.Ingredient.DensityKind == "liquid" && math.Abs(b.n*customary.FluidOunceML-w.how.ML) <= apartOunce*w.how.ML {
			continue // "1 cup (8 oz)" of milk are fluid
		}
		g, bar := b.n*b.in.size, apart(w.l.Ingredient)
		if w.how.Basis == Counted || w.how.CountOf == Pieces {
			if bar = apartEggs; w.how.CountOf == "eggs" {
				bar = apartShell
			} else if w.how.CountOf == Pieces {
				bar = apartCount
			}
			if w.p.each {
				g *= w.p.sum[0].n
			}
		}
		all := g
		if w.how.Basis == Packed && w.how.CountOf != Pieces {
			all *= packs(w.l, w.p, g) // "2 envelopes (7 g each)"
		}
		if w.total.Known && math.Abs(all-w.total.Value) > bar*w.total.Value {
			w.l.ask(Apart)
		}
		if w.how.Doubt == Range || w.how.Doubt == Vague && w.p.sum[0].n != 1 {
			break
		}
		if b.in.kind == ounce && w.l.Ingredient.DensityKind == "liquid" && !(w.l.Ingredient.ID == condensed && b.n == condensedOz) && !byWeight.in(w.l.Text) && !w.eitherOunce() {
			w.l.ask(OunceOrFluid)
		}
		w.total, w.how = ingredient.Known(g*w.ofEach(g)), Said{Basis: Weighed}
		w.containers(g)
		weighed = true
	}
	return weighed
}

// byAnother lets another measure say what the first leaves open, and asks where two that
// are known do not agree.
func (w *weighing) byAnother() {
	open := w.how.Doubt != 0 || w.how.CountOf == Pieces // what is measured is nearer than a piece
	if !open && (w.p.each || w.how.Basis != Weighed && w.how.Basis != Measured) {
		return
	}
	for _, b := range w.p.beside {
		v, h := w.r.sum(w.l, []amount{b}, w.size, w.american)
		switch {
		case v.Known && w.inAustralia(b):
			w.total, w.how = v, h
		case v.Known && w.how.CountOf == Pieces && math.Abs(v.Value-w.total.Value) > apartCount*w.total.Value:
			w.l.ask(Apart)
		case !v.Known || h.Doubt != 0:
		case open:
			v.Value *= w.ofEach(v.Value)
			w.total, w.how = v, h
			w.containers(v.Value)
		case h.Basis != Counted && math.Abs(v.Value-w.total.Value) > besideBar(w.l.Ingredient, w.how, h)*w.total.Value:
			w.l.ask(Apart)
		}
	}
}

// australian is the tablespoon of Australia, mL: AS 1325 (1972), from memory.
const australian = 20

// inAustralia reports whether the millilitres beside tablespoons are those of Australia: they are
// what is meant, and not the spoons.
func (w *weighing) inAustralia(beside amount) bool {
	first := w.p.sum[0]
	return len(w.p.sum) == 1 && first.in.kind == volume && first.in.size == customary.TablespoonML && beside.in == measure{volume, 1} && beside.n == australian*first.n
}

// ofEach is how often a weight, g, counts that stands beside what has none of its own: of each
// bar or handful, or of all; a doubt where the line does not tell.
func (w *weighing) ofEach(g float64) float64 {
	first := w.p.sum[0]
	switch {
	case w.how.Doubt == Range && w.p.each:
		w.l.ask(Range) // "2-3 bars (100 g each)"
	case w.how.Doubt == NoMeasure && first.in.kind == pieces && w.p.each:
		return first.n // "3 bananas (100 g each)"
	case w.how.Doubt == NoMeasure && first.in.kind == pieces && first.n > 1:
		if least := lightest(w.l.Ingredient); g < apartPieces*first.n*least {
			w.l.ask(Apart) // "12 cookies (10 g)"
		}
	case w.how.Doubt != Vague || first.n == 1:
	case w.p.each:
		return first.n
	case first.n < 1 || one(strings.ToLower(first.word)) == "bar":
		w.l.ask(Apart) // "half the sugar (100 g)", "2 bars (100 g)"
	}
	return 1
}

// containers is how often g counts that stands beside cans or packets.
func (w *weighing) containers(g float64) {
	if w.p.sum[0].in.kind != container {
		return
	}
	if w.p.times = packs(w.l, w.p, g); w.p.times == 0 {
		w.l.ask(Apart)
		w.p.times = w.p.sum[0].n
	}
}

// take puts what the amounts came to into the line.
func (w *weighing) take() {
	l, how, total := w.l, w.how, w.total
	if total.Known {
		total.Value *= w.p.times
		if how.Basis == Counted || how.Basis == Packed {
			how.Count *= w.p.times
		}
		if !(total.Value > 0) || total.Value > mostGrams {
			l.ask(TooMuch)
			total = ingredient.Cell{}
		}
		if (how.Basis == Counted || how.CountOf == Pieces && w.p.sum[0].word == "") && how.Count > mostEggs {
			l.ask(PiecesOrGrams)
		}
		// Commission Regulation (EC) No 589/2008, Article 4, has the letters, AMS 56 the words.
		if how.Basis == Counted && w.p.lettered && strings.EqualFold(w.r.eggs.System, "US") {
			l.ask(SizeOfEurope)
		}
	}
	l.Grams, l.Basis, l.ML, l.GPerML = total, how.Basis, how.ML*w.p.times, how.GPerML
	l.Count, l.CountOf, l.OfSize, l.EachGrams, l.DesignSize = how.Count, how.CountOf, how.OfSize, how.EachGrams, how.DesignSize
}

// eitherOunce reports whether a can's ounces come to the same whether they are of weight or
// of volume, as those of coconut milk.
func (w *weighing) eitherOunce() bool {
	d := w.l.Ingredient.Density
	return d.Known && w.p.sum[0].in.kind == container && math.Abs(d.Value*customary.FluidOunceML/customary.OunceG-1) <= apartOunce
}
