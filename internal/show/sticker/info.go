package sticker

import (
	"strings"

	"ripplewright/internal/food/onpack"
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
	blockGap    = 0.72 // between two of its paragraphs, of the type's size
)

// block is an element to be set at a size and width.
type block struct {
	key  onpack.Key
	rule string
	set  func(w, pt float64) *draw.List
}

// information lays out everything but name and quantity on areas, the panel in a
// form, and reports whether all is there.
func (c *Content) information(on []area, form Form) ([]Face, bool) {
	least, rule := c.least()
	blocks := c.blocks(rule)
	faces := make([]Face, len(on))
	for i, a := range on {
		faces[i] = Face{Name: a.name, WidthMM: a.w, HeightMM: a.h, LeastMM: least}
		if i > 0 && a.name == faces[0].Name {
			faces[i].Name = "more information"
		}
	}
	set := c.panels(form, on[0])
	type try struct {
		panel
		pt float64
	}
	var even, crowded []try
	for _, pt := range sizes(least) {
		for _, p := range set(pt) {
			if p.crowded {
				crowded = append(crowded, try{p, pt})
			} else {
				even = append(even, try{p, pt})
			}
		}
	}
	for _, t := range append(even, crowded...) {
		if c.place(faces, blocks, t.panel, t.pt, least, rule) {
			return faces, true
		}
	}
	faces[0].Why = "ingredients, nutrition and what goes with them have no room at letters of the height asked for"
	return faces, false
}

// sizes are those that are tried for text, pt, down to the least that the rule
// allows.
func sizes(least float64) []float64 {
	var out []float64
	for pt := max(largestText, size(least)); pt > size(least); pt -= textStep {
		out = append(out, pt)
	}
	return append(out, size(least))
}

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
	left, top := marginMM, marginMM
	if p.list != nil {
		left = min(left, (first.WidthMM-p.list.W)/2)
		top = min(top, (first.HeightMM-p.list.H)/2)
		if min(left, top) < panelMarginMM-1e-9 {
			return false
		}
		beside := slot{0, left + p.list.W + gapMM, marginMM, first.WidthMM - left - p.list.W - gapMM - marginMM, h}
		below := slot{0, marginMM, marginMM + p.list.H + gapMM, w, h - p.list.H - gapMM}
		ways = nil
		if p.aside {
			ways = append(ways, []slot{beside})
		}
		if p.alone {
			ways = append(ways, []slot{below})
		}
		if len(next) > 0 && p.alone {
			ways = append(ways, next, with(below))
		}
		if len(next) > 0 && p.aside {
			ways = append(ways, with(beside))
		}
	}
	for _, way := range ways {
		on, boxes, ok := flow(way, blocks, pt, least, rule)
		if !ok {
			continue
		}
		if p.list != nil {
			first.put(Box{Key: onpack.Nutrition, LetterMM: p.letter, LeastMM: p.least, Rule: p.rule, Form: p.form, list: p.list}, left, top)
		}
		for i, b := range boxes {
			faces[on[i]].Boxes = append(faces[on[i]].Boxes, b)
		}
		return true
	}
	return false
}

// panelMarginMM is the least around a panel, which has a frame of its own, where it
// needs a whole face.
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
			if head := usHeads[e.Key]; c.Place == onpack.US && head != "" && strings.HasPrefix(r.Text, head) {
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
	return typeset.Stack(languageGap*pt*point, parts...)
}

// languageGap is between two languages of an element, of the type's size.
const languageGap = 0.6

// usHeads are set bold in the US; elsewhere bold is for the allergens.
var usHeads = map[onpack.Key]string{onpack.Ingredients: "Ingredients:", onpack.Allergens: "Contains:"}

// hanging adds what hangs below the last line.
func hanging(l *draw.List, pt float64) *draw.List {
	l.H += 0.24 * pt * point
	return l
}
