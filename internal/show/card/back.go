package card

import (
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// backPages composes the plots over figures and panel, and sets the cautions
// and whatever the front has left over where they fit.
func backPages(f *flow, d design.Design, r *model.Result, c content, left []filler) {
	cautions := kept(func(w float64) *draw.List { return cautionBox(c, w) })
	boxes := append(left, cautions)
	if len(c.day) > 0 {
		boxes = append(append(left, kept(func(w float64) *draw.List { return dayBox(c, w) })), cautions)
	}
	b := newBack(f, c)
	from := len(f.pages)
	// The plots give way before a page is begun for a few lines.
	for _, high := range [...]float64{54, 46, 40, 36} {
		f.pages = f.pages[:from]
		if f.settle(b.compose(f, c.reads, d, r, high), boxes) && len(f.pages) == from+1 {
			return
		}
	}
	for _, try := range [...][]filler{boxes, boxes[len(left):], nil} {
		f.pages = f.pages[:from]
		if !f.settle(b.compose(f, c.reads, d, r, 54), try) {
			continue
		}
		full := f.w - 2*margin
		var blocks []*draw.List
		if len(try) < len(boxes) && len(left) > 0 { // long notes flow on
			blocks = append(noteBlocks(c, full), &draw.List{W: full, H: 7})
		}
		if try == nil {
			blocks = append(blocks, cautions(full))
		}
		f.column(slot{len(f.pages), margin, f.top}, 0, f.same, blocks)
		return
	}
}

// back is what stands under the plots, in two columns.
type back struct {
	figures, panel []*draw.List
	wide, narrow   float64 // the columns' widths
}

func newBack(f *flow, c content) back {
	b := back{narrow: narrow}
	if c.label != nil && c.label.Region == label.US && c.label.Columns == "dual" {
		b.narrow = broad
	}
	b.wide = f.w - 2*margin - gutter - b.narrow
	b.figures, b.panel = figureBlocks(c, b.wide), panelBlocks(c, b.narrow)
	return b
}

// compose fills a new page, with plots high mm high over the columns, and
// returns the gaps under them.
func (b back) compose(f *flow, reads say.Style, d design.Design, r *model.Result, high float64) []gap {
	page, y := len(f.pages), f.top
	if p := plots(reads, d, r, f.w-2*margin, high); p != nil {
		f.page(page).Place(p, margin, y, 1)
		y += p.H + 6
	}
	l := f.column(slot{page, margin, y}, 0, f.same, b.figures)
	p := f.column(slot{page, margin + b.wide + gutter, y}, 4.5, f.same, b.panel)
	return []gap{{p, b.narrow}, {l, b.wide}}
}

// figureBlocks are the table of figures, what the verdict rests on and the cost.
func figureBlocks(c content, w float64) []*draw.List {
	out := []*draw.List{headed(say.T("The figures"), w, figureTable(c, w))}
	for i, b := range restBlocks(c, w) {
		if i == 0 {
			b = spaced(6, b)
		}
		out = append(out, b)
	}
	return out
}

// restBlocks are what the verdict rests on and the cost.
func restBlocks(c content, w float64) []*draw.List {
	var out []*draw.List
	for _, list := range [...]struct {
		texts  []string
		colour draw.Colour
	}{{c.rests, glass}, {c.warnings, coral}} {
		for _, t := range list.texts {
			b := bullet(w, small.In(ink), smallLead, list.colour, t)
			if len(out) == 0 {
				b = headed(say.T("What the verdict rests on"), w, b)
			} else {
				b = spaced(1.9, b)
			}
			out = append(out, b)
		}
	}
	if c.cost != "" {
		b := headed(say.T("What it costs"), w, typeset.Text(w, smallLead, small.In(ink), c.cost))
		if len(out) > 0 {
			b = spaced(4, b)
		}
		out = append(out, b)
	}
	return out
}

// bullet sets a text behind a drop of colour.
func bullet(w float64, st typeset.Style, lead float64, c draw.Colour, s string) *draw.List {
	p := typeset.Text(w-4.2, lead, st, s)
	b := &draw.List{W: w, H: p.H}
	typeset.Disc(b, 0.9, st.Cap()/2, 0.8, c)
	b.Place(p, 4.2, 0, 1)
	return b
}

// figureTable sets the figures in three columns.
func figureTable(c content, w float64) *draw.List {
	t := &draw.List{W: w}
	st := typeset.Type(draw.Sans, 8, ink)
	cols := [3]float64{0.62 * w, 0.81 * w, w}
	pitch := 4.2
	head := typeset.Type(draw.SansBold, 8, muted)
	t.H = 2.4
	for i, s := range [...]string{say.T("Custard"), say.T("Foam"), say.T("Tub")} {
		typeset.WriteRight(t, cols[i], t.H, head, s)
	}
	t.H += 1.5
	typeset.Fill(t, 0, t.H, w, 0.35, ink)
	for _, f := range c.figures {
		base := t.H + pitch - 1.5
		// A range such as "−12 to −5 °C" is wide: it is set smaller, never over
		// its neighbour.
		// Ounces stand below their grams.
		name := typeset.Write(t, 0, base, st, f.name)
		from, below := name+2, 0.0
		for i, s := range [...]string{f.dense, f.foam, f.tub} {
			if grams, ounces, both := strings.Cut(s, " ("); both {
				typeset.WriteRight(t, cols[i], base+3.3, typeset.Type(draw.Sans, 7, muted), strings.TrimSuffix(ounces, ")"))
				s, below = grams, 3.3
			}
			use := st
			for use.Size > 5.5 && cols[i]-use.Width(s) < from {
				use.Size -= 0.25
			}
			typeset.WriteRight(t, cols[i], base, use, s)
			from = cols[i] + 1.5
		}
		t.H += pitch + below
		typeset.Fill(t, 0, t.H, w, 0.15, dune)
	}
	return t
}

// panelBlocks are the label's panel and statement.
func panelBlocks(c content, w float64) []*draw.List {
	if c.label == nil {
		return []*draw.List{typeset.Text(w, bodyLead, body, c.labelNote)}
	}
	return []*draw.List{withNotes(panelOf(c.label, w), c.label), statementOf(c.label, w, typeset.Type(draw.Sans, 8, ink))}
}

// cautionBox sets the cautions on a ground of sand.
func cautionBox(c content, w float64) *draw.List {
	const pad, bar = 3.6, 1.0
	st := typeset.Type(draw.Sans, 7.5, ink)
	parts := []*draw.List{{W: w, H: 3.4}}
	typeset.Write(parts[0], 0, 3.4, typeset.Type(draw.SerifBold, 12, ink), say.T("Cautions"))
	for _, k := range c.cautions {
		parts = append(parts, typeset.Paragraph(w-bar-2*pad, 9.6, typeset.Run{Text: k.Title + ". ", Style: st.Bold()}, typeset.Run{Text: k.Text, Style: st}))
	}
	all := typeset.Stack(1.9, parts...)
	b := &draw.List{W: w, H: all.H + 2*pad}
	typeset.Fill(b, 0, 0, w, b.H, sand)
	typeset.Fill(b, 0, 0, bar, b.H, coral)
	b.Place(all, bar+pad, pad, 1)
	return b
}

// statementOf sets the list of ingredients with its allergens emphasised.
func statementOf(l *label.Label, w float64, st typeset.Style) *draw.List {
	var runs []typeset.Run
	for _, r := range l.Ingredients {
		s := st
		if r.Emphasis {
			s = st.Bold()
		}
		runs = append(runs, typeset.Run{Text: r.Text, Style: s})
	}
	parts := []*draw.List{typeset.Paragraph(w, 10.4, runs...)}
	if l.Contains != "" && l.Region == label.US { // the EU lets the emphasised list alone tell, Article 21
		parts = append(parts, typeset.Text(w, 10.4, st.Bold(), l.Contains))
	}
	return typeset.Stack(2.2, parts...)
}
