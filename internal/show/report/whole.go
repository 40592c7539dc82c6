package report

import (
	"io"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/answer/whole"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// WholeEggs is the ledger of a design's eggs and the designs that would use whole
// ones.
type WholeEggs struct {
	file   string
	design design.Design
	eggs   process.Eggs
	ways   whole.Ways
}

// WholeEggsOf returns the report of the ways of d, read from file, whose ledger
// is e.
func WholeEggsOf(file string, d design.Design, e process.Eggs, w whole.Ways) WholeEggs {
	return WholeEggs{file, d, e, w}
}

// MarshalJSON returns one object; "ripplecalc help eggs" tells its keys.
func (x WholeEggs) MarshalJSON() ([]byte, error) {
	ways, unable := []object{}, []object{}
	for i := range x.ways.List {
		w := &x.ways.List[i]
		before, after := x.figures(w)
		ways = append(ways, object{{"way", w.Kind.String()}, {"eggs", w.Eggs}, {"sentence", say.Whole(Reads, x.design, w)},
			{"before", before}, {"after", after}, {"lines", x.lines(w)}})
	}
	for _, u := range x.ways.Unable {
		unable = append(unable, object{{"way", u.Kind.String()}, {"sentence", say.WholeUnable(Reads, x.ways.Before.Eggs, u)}})
	}
	return object{{"file", x.file}, {"name", x.design.Name}, {"ledger", eggLedger(x.eggs)}, {"ways", ways}, {"unable", unable}}.MarshalJSON()
}

// figures are those by which a way is judged, with what the design itself says of
// the tubs.
func (x WholeEggs) figures(w *whole.Way) (before, after object) {
	tubs := func(d design.Design) object {
		return object{{"tubs", d.Tubs.Count}, {"fill_percent", Number(d.Tubs.FillPercent)}}
	}
	before, after = tubs(x.design), tubs(w.Design)
	for _, c := range figure.Changes(&x.ways.Before, &w.After) {
		before.put(c.Key, jsonOf(c.Row, c.Before))
		after.put(c.Key, jsonOf(c.Row, c.After))
	}
	return before, after
}

func (x WholeEggs) lines(w *whole.Way) []object {
	out := []object{}
	for i := range w.After.Lines {
		l, was := &w.After.Lines[i], &x.ways.Before.Lines[i]
		out = append(out, object{{"part", l.Part.String()}, {"index", l.Index}, {"ingredient", l.Ingredient.ID},
			{"before_g", Number(was.Grams)}, {"after_g", Number(l.Grams)}})
	}
	return out
}

// WriteText writes the ledger and each way as a table of before and after.
func (x WholeEggs) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("%s (%s)", x.design.Name, x.file)
	p.line("%s", say.EggLedger(Reads, x.eggs))
	for i := range x.ways.List {
		way := &x.ways.List[i]
		p.line("")
		p.line("%s. %s", say.WholeName(way.Kind), say.Whole(Reads, x.design, way))
		p.line("")
		p.lines(figure.ComparedHeads(), figure.Compared(Reads, &x.ways.Before, &way.After))
	}
	said := map[string]bool{}
	for _, u := range x.ways.Unable {
		if why := say.WholeUnable(Reads, x.ways.Before.Eggs, u); !said[why] {
			said[why] = true
			p.line("")
			p.line("%s: %s", say.WholeName(u.Kind), why)
		}
	}
	return p.err
}
