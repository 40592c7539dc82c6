package sticker

import (
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
)

func fields(s string) []string { return strings.Fields(typeset.Plain(s)) }

// The type of the information, pt: the largest that is tried, and the step down to
// the least that the rule allows.
const (
	largestText = 9.0
	textStep    = 0.25
	textLead    = 1.28
	blockGap    = 0.62 // between two of its paragraphs, of the type's size
)

// block is an element to be set at a size and width.
type block struct {
	key  onpack.Key
	rule string
	set  func(w, pt float64) *draw.List
}

// information lays out everything but name and quantity on an area, and reports
// whether all is there.
func (c *Content) information(on []area) ([]Face, bool) {
	a := on[0]
	least, rule := c.least()
	blocks := c.blocks(rule)
	faces := make([]Face, len(on))
	for i, a := range on {
		faces[i] = Face{Name: a.name, WidthMM: a.w, HeightMM: a.h, LeastMM: least}
		if i > 0 && a.name == faces[0].Name {
			faces[i].Name = "more information"
		}
	}
	_, due := c.element(onpack.Nutrition)
	for _, draw := range c.panels(due && c.Panel != nil, a) { // the full form first: a smaller one only where that has no room
		for _, pt := range sizes(least) {
			if p := draw(pt); (!due || p.list != nil) && c.place(faces, blocks, p, pt, least, rule) {
				return faces, true
			}
		}
	}
	faces[0].Why = "ingredients, nutrition and what goes with them have no room at letters of the height asked for"
	return faces, false
}

// panel is a nutrition panel in one of its forms.
type panel struct {
	list   *draw.List
	letter float64 // mm, as the rule measures
	least  float64
	rule   string
	form   Form
}

// Form is the form in which nutrition stands on a tub.
type Form string

// TooSmall stands for the panel on a package too small for one: where to ask for it.
// The other forms of the US are those of package card; elsewhere it is a table or a
// line.
const (
	TooSmall Form = "too_small"
	Table    Form = "table"
	InALine  Form = "line"
)

// sizes are those that are tried for text, pt, down to the least that the rule
// allows.
func sizes(least float64) []float64 {
	var out []float64
	for pt := max(largestText, size(least)); pt > size(least); pt -= textStep {
		out = append(out, pt)
	}
	return append(out, size(least))
}

// panels returns how nutrition may be drawn on an area beside text of a size, the
// full form first; one that draws nothing where it is not due.
func (c *Content) panels(due bool, a area) []func(pt float64) panel {
	if !due {
		return []func(float64) panel{func(float64) panel { return panel{} }}
	}
	w := a.w - 2*marginMM
	var out []func(float64) panel
	if c.Place == onpack.US {
		for _, form := range card.OnTub(c.Panel, a.h, c.Tub.LabelAreaIn2()) {
			noted := *c.Panel
			if c.bounded() {
				noted.Footnote += " " + atLeast[true]
			}
			list, smallest := card.DrawOnTub(&noted, form, w)
			if form == card.SmallTabular || form == card.Linear { // which have no footnote
				list = c.noted(list, smallestUSType)
			}
			p := panel{list, smallest * point, smallestUSType * point, "21 CFR 101.9(d)(1)(iii): type of 6 points", Form(form)}
			out = append(out, func(float64) panel { return p })
		}
		if c.mayAsk() {
			out = append(out, func(pt float64) panel {
				list := hanging(typeset.Text(w, textLead*pt, typeset.Type(draw.Sans, pt, black), c.AskFor()), pt)
				return panel{list, pt * point * xHeight, usLetterMM, "21 CFR 101.9(j)(13)(i); letters by 101.2(c)", TooSmall}
			})
		}
		return out
	}
	least, rule := c.least()
	for _, share := range []float64{0.4, 0.5, 0.6, 0.75, 1} {
		out = append(out, func(pt float64) panel { return panel{c.table(share*w, pt), pt * point * xHeight, least, rule, Table} })
	}
	return append(out, func(pt float64) panel { return panel{c.line(w, pt), pt * point * xHeight, least, rule, InALine} }) // Article 34(2)
}

// smallestUSType is the least type of a panel, pt.
const smallestUSType = 6

// slot is where text may stand on a face.
type slot struct {
	face       int
	x, y, w, h float64
}

// place tries to set the panel and the blocks at a size: the text beside the panel or
// below it, or on the next face; what has no room below the panel goes on there.
func (c *Content) place(faces []Face, blocks []block, p panel, pt, least float64, rule string) bool {
	first := &faces[0]
	w, h := first.WidthMM-2*marginMM, first.HeightMM-2*marginMM
	whole := slot{0, marginMM, marginMM, w, h}
	next := []slot{}
	for i, f := range faces[1:] {
		next = append(next, slot{i + 1, marginMM, marginMM, f.WidthMM - 2*marginMM, f.HeightMM - 2*marginMM})
	}
	with := func(first ...slot) []slot { return append(first, next...) }
	ways := [][]slot{with(whole)}
	top := marginMM
	if p.list != nil {
		if p.list.H > h && p.list.H <= first.HeightMM-2*panelMarginMM {
			top = (first.HeightMM - p.list.H) / 2
		}
		if p.list.W > w+1e-9 || top+p.list.H > first.HeightMM-panelMarginMM+1e-9 {
			return false
		}
		beside := slot{0, marginMM + p.list.W + gapMM, marginMM, w - p.list.W - gapMM, h}
		below := slot{0, marginMM, marginMM + p.list.H + gapMM, w, h - p.list.H - gapMM}
		ways = [][]slot{{beside}, {below}}
		if len(next) > 0 {
			ways = append(ways, next, with(beside), with(below))
		}
	}
	for _, way := range ways {
		on, boxes, ok := flow(way, blocks, pt, least, rule)
		if !ok {
			continue
		}
		if p.list != nil {
			first.put(Box{Key: onpack.Nutrition, LetterMM: p.letter, LeastMM: p.least, Rule: p.rule, Form: p.form, list: p.list}, marginMM, top)
		}
		for i, b := range boxes {
			faces[on[i]].Boxes = append(faces[on[i]].Boxes, b)
		}
		return true
	}
	return false
}

// panelMarginMM is the least above and below a panel that needs a whole face.
const panelMarginMM = 0.5

// narrowestMM is the narrowest column of text that is tried.
const narrowestMM = 18

// flow sets the blocks one below the other through the slots, each whole in one, and
// returns on which face each stands.
func flow(way []slot, blocks []block, pt, least float64, rule string) (on []int, boxes []Box, ok bool) {
	at, y := 0, way[0].y
	for _, b := range blocks {
		for {
			s := way[at]
			gap := 0.0
			if y > s.y {
				gap = blockGap * pt * point
			}
			if list := b.set(s.w, pt); s.w >= narrowestMM && list.W <= s.w+1e-9 && y+gap+list.H <= s.y+s.h+1e-9 {
				y += gap
				boxes = append(boxes, Box{Key: b.key, At: draw.Rect{X0: s.x, Y0: y, X1: s.x + s.w, Y1: y + list.H}, LetterMM: pt * point * xHeight, LeastMM: least, Rule: rule, list: list})
				on = append(on, s.face)
				y += list.H
				break
			}
			if at++; at == len(way) {
				return nil, nil, false
			}
			y = way[at].y
		}
	}
	return on, boxes, true
}

// blocks are the elements of text, in the order in which they stand.
func (c *Content) blocks(rule string) []block {
	var out []block
	for _, key := range []onpack.Key{onpack.Ingredients, onpack.Allergens, onpack.Date, onpack.Lot, onpack.Storage, onpack.Warnings, onpack.Maker} {
		e, ok := c.element(key)
		if !ok {
			continue
		}
		if _, listed := c.element(onpack.Ingredients); key == onpack.Allergens && listed && c.Place != onpack.US {
			continue // emphasised in the list, and not repeated: Article 21
		}
		out = append(out, block{key, rule, func(w, pt float64) *draw.List { return c.words(e, w, pt) }})
	}
	if c.Article != "" {
		out = append(out, block{codeKey, "ISO/IEC 15420, from memory", func(w, pt float64) *draw.List { return bars(c.Article) }})
	}
	return out
}

// codeKey is the key of the bars, which are no element of the law's.
const codeKey onpack.Key = "article"

// Sizes of the bars, mm: nominal, with quiet zones of 11 and 7 modules; from memory.
const moduleMM, barsMM, quietLeft, quietRight = 0.33, 22.85, 11, 7

// bars draws an article number with its digits.
func bars(number string) *draw.List {
	modules, err := onpack.Bars(number)
	if err != nil {
		panic("sticker: an unchecked article number") // Choices.Pack checks it
	}
	p := &draw.List{W: float64(len(modules)+quietLeft+quietRight) * moduleMM, H: barsMM + 3.2}
	for i := 0; i < len(modules); i++ {
		if modules[i] == '1' {
			typeset.Fill(p, float64(quietLeft+i)*moduleMM, 0, moduleMM, barsMM, black)
		}
	}
	typeset.WriteCentre(p, p.W/2, p.H-0.4, typeset.Type(draw.Sans, 8.5, black), number)
	return p
}

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

// words sets an element's text, one paragraph for each language that differs.
func (c *Content) words(e onpack.Element, w, pt float64) *draw.List {
	st := typeset.Type(draw.Sans, pt, black)
	var parts []*draw.List
	seen := map[string]bool{}
	for _, p := range e.Parts {
		var runs []typeset.Run
		plain := ""
		if e.Key == onpack.Allergens && c.Place != onpack.US {
			head, _ := c.Words.In(p.Lang, "contains")
			runs = append(runs, typeset.Run{Text: head.Text + ": ", Style: st})
		}
		for _, r := range p.Runs {
			s := st
			if r.Strong {
				s = st.Bold()
			}
			plain += r.Text
			if at := strings.Index(r.Text, " by "); e.Key == onpack.Date && at >= 0 { // a date stays in one piece
				r.Text = r.Text[:at+4] + strings.ReplaceAll(r.Text[at+4:], " ", "\u00a0")
			}
			if head := "Contains:"; e.Key == onpack.Allergens && strings.HasPrefix(r.Text, head) { // as a heading of its own
				runs = append(runs, typeset.Run{Text: head, Style: st.Bold()})
				r.Text = r.Text[len(head):]
			}
			runs = append(runs, typeset.Run{Text: r.Text, Style: s})
		}
		if !seen[plain] {
			parts = append(parts, hanging(typeset.Paragraph(w, textLead*pt, runs...), pt))
			seen[plain] = true
		}
	}
	return typeset.Stack(gapMM*0.6, parts...)
}

// hanging adds what hangs below the last line.
func hanging(l *draw.List, pt float64) *draw.List {
	l.H += 0.24 * pt * point
	return l
}
