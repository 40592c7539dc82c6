package sticker

import (
	"cmp"
	"math"
	"slices"

	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
)

// Form is the form in which nutrition stands on a tub.
type Form string

// TooSmall stands for the panel on a package too small for one: where to ask for it.
// The other forms of the US are those of package card; elsewhere it is a table or,
// where that has no room, a line. None is for a label without a panel.
const (
	None     Form = ""
	TooSmall Form = "too_small"
	Table    Form = "table"
	InALine  Form = "line"
)

// panel is a nutrition panel in one of its forms.
type panel struct {
	list         *draw.List // nil where none is due
	letter       float64    // mm, as the rule measures
	least        float64
	rule         string
	form         Form
	aside, alone bool // whether text may stand beside it; below it or on other faces
	crowded      bool // its names break into many lines: tried last
}

// forms are those that a panel may take on the tub, in the order in which the law
// lets them be tried: a smaller one only where no layout has room for those before.
func (c *Content) forms() []Form {
	_, due := c.element(onpack.Nutrition)
	switch {
	case !due || c.Panel == nil:
		return []Form{None}
	case c.Place != onpack.US:
		return []Form{Table, InALine} // Article 34(2)
	}
	var out []Form
	for _, f := range card.OnTub(c.Panel, 0, c.Tub.LabelAreaIn2()) {
		out = append(out, Form(f))
	}
	if c.mayAsk() {
		out = append(out, TooSmall)
	}
	return out
}

// panels returns how a panel of a form may stand on an area beside text of a size,
// the most wanted first; none where the rules do not let it.
func (c *Content) panels(form Form, a area) func(pt float64) []panel {
	w := a.w - 2*marginMM
	least, rule := c.least()
	small := panel{least: least, rule: rule, form: form, aside: true, alone: true}
	switch form {
	case None:
		return func(float64) []panel { return []panel{{}} }
	case Table:
		return func(pt float64) []panel { return c.tables(small, w, pt) }
	case InALine:
		return func(pt float64) []panel { return small.with(c.line(w, pt), pt) }
	case TooSmall:
		small.rule = "21 CFR 101.9(j)(13)(i); letters by 101.2(c)"
		return func(pt float64) []panel {
			return small.with(hanging(typeset.Text(w, textLead*pt, typeset.Type(draw.Sans, pt, black), c.AskFor()), pt), pt)
		}
	}
	if !slices.Contains(card.OnTub(c.Panel, a.h, c.Tub.LabelAreaIn2()), card.Form(form)) {
		return func(float64) []panel { return nil }
	}
	noted := *c.Panel
	if c.bounded() {
		noted.Footnote += " " + atLeast[true]
	}
	list, smallest := card.DrawOnTub(&noted, card.Form(form), w)
	if form == Form(card.SmallTabular) || form == Form(card.Linear) { // which have no footnote
		list = c.noted(list, smallestUSType)
	}
	facts := []panel{{list, smallest * point, smallestUSType * point, "21 CFR 101.9(d)(1)(iii): type of 6 points", form, true, true, false}}
	return func(float64) []panel { return facts }
}

// smallestUSType is the least type of a panel, pt.
const smallestUSType = 6

// with is the panel drawn so, its letters of pt; none where it could not be drawn.
func (p panel) with(list *draw.List, pt float64) []panel {
	if list == nil {
		return nil
	}
	p.list, p.letter = list, pt*point*xHeight
	return []panel{p}
}

// tableShares are the shares of a face that a table with text beside it may take.
var tableShares = []float64{0.4, 0.5, 0.6, 0.7}

// tables draws the table on an area w mm wide: the lowest that leaves room beside it,
// and of those as low the narrowest; then one as broad as the area.
func (c *Content) tables(p panel, w, pt float64) []panel {
	var out []panel
	beside := p
	beside.alone = false
	for _, share := range tableShares {
		out = append(out, beside.with(c.table(share*w, pt), pt)...)
	}
	slices.SortStableFunc(out, func(a, b panel) int { return cmp.Compare(math.Round(a.list.H), math.Round(b.list.H)) })
	p.aside = false
	broad := p.with(c.table(w, pt), pt)
	for i := range out {
		out[i].crowded = len(broad) > 0 && out[i].list.H > crowdedOver*broad[0].list.H
	}
	return append(out, broad...)
}

// crowdedOver is how much higher than the broadest a table is that looks crowded.
const crowdedOver = 1.5

// atLeast explains the mark of a figure that is a lower bound, by whether the
// panel is the US one.
var atLeast = map[bool]string{true: "‡ at least this much", false: "* at least this much"}

// noted sets under a panel, in type of pt, what the mark at its figures means.
func (c *Content) noted(p *draw.List, pt float64) *draw.List {
	if p == nil || !c.bounded() {
		return p
	}
	return typeset.Stack(0.8, p, hanging(typeset.Text(p.W, textLead*pt, typeset.Type(draw.Sans, pt, black), atLeast[c.Place == onpack.US]), pt))
}

// tooSmallIn2 is the surface to bear a label under which a package may bear an
// address or a telephone number instead of a panel, as long as it makes no claim about
// nutrition: 21 CFR 101.9(j)(13)(i), from memory.
const tooSmallIn2 = 12

// mayAsk reports whether that may stand on the tub.
func (c *Content) mayAsk() bool {
	return c.Place == onpack.US && c.Tub.LabelAreaIn2() < tooSmallIn2 && c.Inquiries != ""
}

// AskFor are the words that stand for a panel on a package too small for one.
func (c *Content) AskFor() string {
	return "For nutrition information, call or write: " + c.Inquiries
}

// bounded reports whether a figure of the panel is a lower bound only.
func (c *Content) bounded() bool {
	for _, lines := range [][]label.PanelLine{c.Panel.Lines, c.Panel.Second} {
		for _, n := range lines {
			if n.Incomplete && (c.Place == onpack.US || terms[n.Key] != "") {
				return true
			}
		}
	}
	return false
}
