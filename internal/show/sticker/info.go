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
	largestText = 11.0
	textStep    = 0.25
	textLead    = 1.22
)

// block is an element to be set at a size and width.
type block struct {
	key  onpack.Key
	rule string
	set  func(w, pt float64) *draw.List
}

// information lays out everything but name and quantity on an area, and reports
// whether all is there.
func (c *Content) information(a area) ([]Face, bool) {
	least, rule := c.least()
	blocks := c.blocks(rule)
	faces := make([]Face, a.pages)
	for i := range faces {
		faces[i] = Face{Name: a.name, WidthMM: a.w, HeightMM: a.h, LeastMM: least}
		if i > 0 {
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
}

// sizes are those that are tried for text, pt, down to the least that the rule
// allows.
func sizes(least float64) []float64 {
	var out []float64
	for pt := largestText; pt > size(least); pt -= textStep {
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
			list, smallest := card.DrawOnTub(c.Panel, form, w)
			p := panel{list, smallest * point, smallestUSType * point, "21 CFR 101.9(d)(1)(iii): type of 6 points"}
			out = append(out, func(float64) panel { return p })
		}
		return out
	}
	least, rule := c.least()
	for _, share := range []float64{0.4, 0.5, 0.6, 0.75, 1} {
		out = append(out, func(pt float64) panel { return panel{c.table(share*w, pt), pt * point * xHeight, least, rule} })
	}
	return append(out, func(pt float64) panel { return panel{c.line(w, pt), pt * point * xHeight, least, rule} }) // Article 34(2)
}

// smallestUSType is the least type of a panel, pt.
const smallestUSType = 6

// place tries to set the panel and the blocks at a size: the panel beside the
// text, above it, or on a face of its own.
func (c *Content) place(faces []Face, blocks []block, p panel, pt, least float64, rule string) bool {
	first := &faces[0]
	w, h := first.WidthMM-2*marginMM, first.HeightMM-2*marginMM
	if p.list != nil && (p.list.W > w+1e-9 || p.list.H > h+1e-9) {
		return false
	}
	type slot struct {
		face       int
		x, y, w, h float64
	}
	slots := []slot{{0, marginMM, marginMM, w, h}}
	if p.list != nil {
		beside := slot{0, marginMM + p.list.W + gapMM, marginMM, w - p.list.W - gapMM, h}
		below := slot{0, marginMM, marginMM + p.list.H + gapMM, w, h - p.list.H - gapMM}
		slots = []slot{beside, below}
		if len(faces) > 1 {
			slots = append(slots, slot{1, marginMM, marginMM, w, h})
		}
	}
	for _, s := range slots {
		if s.w < 18 || s.h <= 0 {
			continue
		}
		y := s.y
		var boxes []Box
		fits := true
		for i, b := range blocks {
			list := b.set(s.w, pt)
			if i > 0 {
				y += gapMM * 0.7
			}
			if list.W > s.w+1e-9 || y+list.H > s.y+s.h+1e-9 {
				fits = false
				break
			}
			boxes = append(boxes, Box{Key: b.key, At: draw.Rect{X0: s.x, Y0: y, X1: s.x + s.w, Y1: y + list.H}, LetterMM: pt * point * xHeight, LeastMM: least, Rule: rule, list: list})
			y += list.H
		}
		if !fits {
			continue
		}
		if p.list != nil {
			first.put(Box{Key: onpack.Nutrition, LetterMM: p.letter, LeastMM: p.least, Rule: p.rule, list: p.list}, marginMM, marginMM)
		}
		faces[s.face].Boxes = append(faces[s.face].Boxes, boxes...)
		return true
	}
	return false
}

// blocks are the elements of text, in the order in which they stand.
func (c *Content) blocks(rule string) []block {
	var out []block
	if _, ok := c.element(onpack.Nutrition); ok && c.bounded() {
		note := onpack.Element{Key: onpack.Nutrition, Parts: []onpack.Part{{Lang: "en", Runs: []onpack.Run{{Text: atLeast[c.Place == onpack.US]}}}}}
		out = append(out, block{onpack.Nutrition, rule, func(w, pt float64) *draw.List { return c.words(note, w, pt) }})
	}
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
			runs = append(runs, typeset.Run{Text: r.Text, Style: s})
			plain += r.Text
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
