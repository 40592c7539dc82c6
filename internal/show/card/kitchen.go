package card

import (
	"fmt"
	"strings"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"
)

// Type of the pages for the kitchen, pt: read at arm's length with wet hands. Decided
// here.
const (
	kitchenTitle = 26.0
	kitchenGrams = 19.0
	kitchenText  = 15.0
	kitchenSmall = 11.0
	kitchenBox   = 6.0 // mm, a box to tick
)

// kitchenPages sets weights and steps in big type, with boxes to tick and blanks for
// what is measured.
func kitchenPages(c content, p Paper) []*draw.List {
	f := newFlow(c, p, marginOf(p))
	first := f.page(0)
	m := f.margin
	w := f.w - 2*m
	head := typeset.Stack(3,
		typeset.Text(w, 1.12*kitchenTitle, typeset.Type(draw.SerifBold, kitchenTitle, ink), cut(c.name, 120)),
		typeset.Text(w, 1.3*kitchenText, typeset.Type(draw.Sans, kitchenText, ink), say.T("%s. Serve at %s.", c.makes, c.serve)))
	first.Place(head, m, m, 1)
	blocks := append(kitchenWeights(c, w), kitchenSteps(c, w)...)
	f.column(slot{0, m, m + head.H + 6}, 0, f.same, blocks)
	f.feet()
	return f.pages
}

func kitchenHead(w float64, title, note string) *draw.List {
	h := &draw.List{W: w, H: 12}
	end := typeset.Write(h, 0, 9, typeset.Type(draw.SerifBold, 20, ink), title)
	if st := typeset.Type(draw.Sans, kitchenSmall, muted); end+4+st.Width(note) <= w {
		typeset.WriteRight(h, w, 9, st, note)
	}
	typeset.Fill(h, 0, 11, w, 0.7, ink)
	return h
}

func kitchenWeights(c content, w float64) []*draw.List {
	const gram, name = 31.0, 39.0 // right edge of the grams, left of the names
	weighed := typeset.Type(draw.Sans, kitchenSmall, muted)
	var out []*draw.List
	for _, p := range c.parts {
		head := kitchenHead(w, p.title, p.note)
		for _, l := range p.rows {
			words := []*draw.List{typeset.Text(w-name, 1.2*kitchenText, typeset.Type(draw.Sans, kitchenText, ink), l.name)}
			measured := l.measure
			if l.ounces != "" {
				measured = strings.TrimSuffix(l.ounces+", "+l.measure, ", ")
			}
			for _, s := range []string{measured, l.note} {
				if s != "" {
					words = append(words, typeset.Text(w-name, 1.25*kitchenSmall, weighed, s))
				}
			}
			text := typeset.Stack(1.6, words...)
			row := &draw.List{W: w, H: max(text.H, kitchenBox) + 5}
			base := 2.5 + face.CapHeight*kitchenGrams*typeset.Point
			tick(row, 0, base, kitchenBox)
			typeset.WriteRight(row, gram, base, typeset.Type(draw.SansBold, kitchenGrams, ink), l.grams)
			typeset.Write(row, gram+1.2, base, weighed, l.unit)
			row.Place(text, name, base-face.CapHeight*kitchenText*typeset.Point, 1)
			typeset.Fill(row, 0, row.H-0.2, w, 0.2, dune)
			if head != nil {
				row, head = typeset.Stack(0, head, row), nil
			}
			out = append(out, row)
		}
		if len(out) > 0 {
			out = append(out, &draw.List{W: w, H: 3})
		}
	}
	return out
}

func kitchenSteps(c content, w float64) []*draw.List {
	const left = 19.0
	st := typeset.Type(draw.Sans, kitchenText, ink)
	var out []*draw.List
	for i, k := range c.steps {
		parts := []*draw.List{
			typeset.Text(w-left, 1.25*(kitchenText+2), typeset.Type(draw.SansBold, kitchenText+2, ink), k.Title),
			typeset.Text(w-left, 1.32*kitchenText, st, k.Text),
		}
		if c.blanks[i] != "" {
			parts = append(parts, typeset.Text(w-left, 1.7*kitchenText, st, c.blanks[i]))
		}
		text := typeset.Stack(2.6, parts...)
		block := &draw.List{W: w, H: text.H + 8}
		base := face.CapHeight * (kitchenText + 2) * typeset.Point
		tick(block, 0, base, kitchenBox)
		typeset.Write(block, kitchenBox+2, base, typeset.Type(draw.SerifBold, 20, coral), fmt.Sprint(i+1))
		block.Place(text, left, 0, 1)
		if i == 0 {
			block = typeset.Stack(4, kitchenHead(w, say.T("How it is made"), ""), block)
		}
		out = append(out, block)
	}
	return out
}

// tick draws a box to tick, so wide, standing on a base line.
func tick(p *draw.List, x, base, size float64) {
	typeset.Frame(p, x, base-size, size, size, size*0.06, ink)
}
