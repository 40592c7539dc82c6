package card

import (
	"context"
	"fmt"
	"image/color"
	"math"
	"strings"

	"ripplewright/internal/design"
	"ripplewright/internal/label"
	"ripplewright/internal/model"
)

// Measures of the page, mm.
const (
	margin    = 15.0
	gutter    = 9.0
	narrow    = 72.0 // the column of lists and panels
	broad     = 84.0 // that column where the panel has two columns of its own
	footSpace = 15.0 // below the columns
)

// cardPages composes the card: the front to make it from, the back on what it
// is.
func cardPages(ctx context.Context, d design.Design, r *model.Result, c content, o Options) []*sheet {
	w, h := o.Paper.Size()
	f := &flow{w: w, h: h, bottom: h - footSpace, top: margin + 14}
	f.begin = func(s *sheet) {
		s.write(margin, margin+3.4, style{serifBold, 11, ink}, shortened(style{serifBold, 11, ink}, c.name, w-2*margin))
		ripples(s, margin, margin+7, w-2*margin)
	}
	wide := w - 2*margin - gutter - narrow
	left, right := margin, margin+narrow+gutter

	y := header(ctx, f.page(0), d, r, c, o.DPI)
	steps, gap := fittingSteps(c, wide, f.bottom-y)
	end := f.column(slot{0, right, y}, gap, f.same, steps)
	over := end.page > 0 // then the second page's right side is taken
	last := f.column(slot{0, left, y}, 0, func(s slot) slot {
		if s.page > 0 && s.x == left && !over {
			return slot{s.page, right, f.top}
		}
		return slot{s.page + 1, left, f.top}
	}, fittingLists(c, narrow, f.bottom-y))
	backPages(f, max(last.page, end.page)+1, d, r, c)

	for i, s := range f.pages {
		foot(s, c, i+1, len(f.pages))
	}
	return f.pages
}

// backPages sets figures beside panel, and the cautions where they fit.
func backPages(f *flow, page int, d design.Design, r *model.Result, c content) {
	panel := narrow
	if c.label != nil && c.label.Region == label.US && c.label.Columns == "dual" {
		panel = broad
	}
	wide := f.w - 2*margin - gutter - panel
	left, right := margin, margin+wide+gutter
	l := f.column(slot{page, left, f.top}, 4.5, f.same, figureBlocks(d, r, c, wide))
	p := f.column(slot{page, right, f.top}, 4.5, f.same, panelBlocks(c, panel))
	l.y, p.y = l.y+6, p.y+6
	full := f.w - 2*margin
	below := slot{p.page, margin, max(l.y, p.y)}
	if l.page != p.page {
		below = slot{max(l.page, p.page) + 1, margin, f.top}
	}
	for _, try := range [...]struct {
		slot
		w float64
	}{{p, panel}, {l, wide}, {below, full}} {
		if b := cautionBox(c, try.w); try.y+b.h <= f.bottom {
			f.page(try.page).place(b, try.x, try.y)
			return
		}
	}
	f.page(below.page+1).place(cautionBox(c, full), margin, f.top)
}

// fittingLists sets the lists as airily as one page allows.
func fittingLists(c content, w, room float64) []*sheet {
	for _, air := range [...]float64{1.9, 1.55, 1.2, 0.95} {
		lists, h := listBlocks(c, w, air), 0.0
		for _, b := range lists {
			if b != nil {
				h += b.h
			}
		}
		if h <= room {
			return lists
		}
	}
	return listBlocks(c, w, 1.55)
}

// fittingSteps sets the steps as large as one page allows, in full size where
// none does.
func fittingSteps(c content, w, room float64) (steps []*sheet, gap float64) {
	for _, try := range [...]struct{ size, gap float64 }{{9.5, 4.6}, {9, 3.8}, {8.7, 3.2}, {8.4, 2.8}, {8, 2.4}} {
		steps, h := stepBlocks(c, w, try.size), 0.0
		for _, s := range steps {
			h += s.h + try.gap
		}
		if h-try.gap <= room {
			return steps, try.gap
		}
	}
	return stepBlocks(c, w, 9), 3.6
}

// header draws the head of the front and returns where the columns begin.
func header(ctx context.Context, s *sheet, d design.Design, r *model.Result, c content, dpi float64) float64 {
	const tubW, tubH = 54.0, 54.0
	room := s.w - 2*margin - tubW - 10
	drawing := tubPicture(ctx, d, r, tubW, tubH, dpi)
	s.place(drawing, s.w-margin-tubW+(tubW-drawing.w)/2, margin)

	title := titleOf(c.name, room)
	tag := style{sansBold, 13, white}
	serve := &sheet{h: 9.5}
	serveText := "Serve at " + c.serve
	serve.w = tag.width(serveText) + 9
	serve.roundBox(0, 0, serve.w, serve.h, 1.6, glass)
	serve.write(4.5, 6.4, tag, serveText)
	verdict := []run{{c.verdict, strong}}
	if c.advice != "" {
		verdict = append(verdict, run{" " + c.advice, body})
	}
	left := stack(4.2,
		text(room, 11, eyebrow, c.makes),
		title,
		text(room, 16, style{serifItalic, 13, muted}, c.strap),
		serve,
		paragraph(room, bodyLead, verdict...),
	)
	s.place(left, margin, margin+1)
	y := margin + max(left.h+1, drawing.h)
	ripples(s, margin, y+6.5, s.w-2*margin)
	return y + 15
}

// titleOf sets a name as large as three lines of it allow.
func titleOf(name string, width float64) *sheet {
	st := style{serifBold, 32, ink}
	for st.size > 15 && len(wrapped([]run{{name, st}}, width)) > 2+int(20/st.size) {
		st.size--
	}
	for n := len([]rune(name)); len(wrapped([]run{{name, st}}, width)) > 5; n -= 8 {
		name = strings.TrimSpace(string([]rune(name)[:max(n-8, 1)])) + "…"
	}
	return text(width, 1.12*st.size, st, name)
}

// shortened cuts s to a width, with an ellipsis.
func shortened(st style, s string, width float64) string {
	if st.width(s) <= width {
		return s
	}
	letters := []rune(s)
	for len(letters) > 1 && st.width(string(letters)+"…") > width {
		letters = letters[:len(letters)-1]
	}
	return strings.TrimSpace(string(letters)) + "…"
}

// ripples draws the card's rule: two waves across.
func ripples(s *sheet, x, y, w float64) {
	for i, c := range [...]color.NRGBA{glass, coral} {
		var line []at
		waves := math.Round(w / 12)
		for k := 0; k <= 400; k++ {
			t := float64(k) / 400
			line = append(line, at{x + t*w, y + 0.75*math.Sin(2*math.Pi*waves*t+float64(i)*math.Pi/1.6)})
		}
		s.draw(c, 0.4, line...)
	}
}

func rule(w float64) *sheet {
	s := &sheet{w: w, h: 0.15}
	s.box(0, 0, w, 0.15, dune)
	return s
}

// foot draws the page's last line.
func foot(s *sheet, c content, n, of int) {
	y := s.h - 9.5
	page := fmt.Sprintf("%d / %d", n, of)
	s.writeRight(s.w-margin, y, small, page)
	room := s.w - 2*margin - small.width(page) - 6
	s.write(margin, y, small, shortened(small, "Ripplewright. Computed figures; local code and licensed practice decide.", room))
}

// listBlocks are the weights, one block a line so that they may flow, with air
// mm above and below each.
func listBlocks(c content, w, air float64) []*sheet {
	const gram, name = 14.0, 18.5 // right edge of the grams, left of the names
	var out []*sheet
	for i, p := range c.parts {
		head := &sheet{w: w, h: 4.2}
		if i > 0 {
			head.h += 3 * air
		}
		end := head.write(0, head.h, heading, p.title)
		total := p.total + " g"
		head.writeRight(w, head.h, style{sansBold, 9, muted}, total)
		if room := w - end - 4 - strong.width(total); p.note != "" {
			if small.width(p.note) <= room {
				head.write(end+2.5, head.h, small, p.note)
			} else {
				head = stack(2, head, text(w, smallLead, small, p.note))
			}
		}
		head.box(0, head.h+1.9, w, 0.5, ink)
		head.h += 2.6
		for _, l := range p.rows {
			row := &sheet{w: w}
			room := w - name
			one := l.measure == "" || body.width(l.name)+3+small.width(l.measure) <= room
			words := text(room, 11.4, body, l.name)
			if !one {
				words = stack(1.5, words, text(room, smallLead, small, l.measure))
			}
			if l.note != "" {
				words = stack(1.5, words, text(room, smallLead, style{sansItalic, 7.5, muted}, l.note))
			}
			base := air + capHeight*body.size*point
			row.place(words, name, air)
			row.writeRight(gram, base, style{sansBold, 10.5, ink}, l.grams)
			row.write(gram+0.8, base, small, "g")
			if one {
				row.writeRight(w, base, small, l.measure)
			}
			row.h = words.h + 2*air
			row.box(0, row.h-0.15, w, 0.15, dune)
			if head != nil {
				row, head = stack(0, head, row), nil
			}
			out = append(out, row)
		}
	}
	out = append(out, checkBox(c, w, 4*air))
	if c.notes != "" {
		head := &sheet{w: w, h: 6 + 4.2}
		head.write(0, head.h, heading, "Notes")
		for i, line := range wrapped([]run{{c.notes, body}}, w) {
			l := paragraph(w, bodyLead, line...)
			if i == 0 {
				l = stack(3, head, l)
			} else {
				l.h += bodyLead*point - capHeight*body.size*point
				m := &sheet{w: w, h: l.h}
				m.place(l, 0, bodyLead*point-capHeight*body.size*point)
				l = m
			}
			out = append(out, l)
		}
	}
	return out
}

// checkBox lists what the scale should show, nil if nothing.
func checkBox(c content, w, above float64) *sheet {
	if len(c.checks) == 0 {
		return nil
	}
	const pad = 3.5
	rows := &sheet{w: w - 2*pad, h: 3.6}
	rows.write(0, rows.h, style{serifBold, 12, ink}, "Check on the scale")
	rows.h += 1.2
	for _, k := range c.checks {
		t := text(rows.w-20, 10.4, style{sans, 8, ink}, k.title)
		rows.place(t, 0, rows.h+1.6)
		rows.writeRight(rows.w, rows.h+1.6+capHeight*8*point, style{sansBold, 9, ink}, k.text)
		rows.h += t.h + 2.4
	}
	b := &sheet{w: w, h: above + rows.h + 2*pad}
	b.box(0, above, w, rows.h+2*pad, sand)
	b.place(rows, pad, above+pad)
	return b
}

// stepBlocks are the numbered steps.
func stepBlocks(c content, w, size float64) []*sheet {
	const indent = 9.5
	st := style{sans, size, ink}
	lead := size * bodyLead / 9
	var out []*sheet
	for i, k := range c.steps {
		s := stack(2.1,
			text(w-indent, 13, style{sansBold, size + 1.5, ink}, k.title),
			text(w-indent, lead, st, k.text))
		block := &sheet{w: w, h: s.h}
		number := style{serifBold, 17, coral}
		block.write(0, capHeight*17*point*0.93, number, fmt.Sprint(i+1))
		block.place(s, indent, 0)
		if i == 0 {
			head := &sheet{w: w, h: 4.2}
			head.write(0, head.h, heading, "How it is made")
			head.box(0, head.h+1.9, w, 0.5, ink)
			head.h += 2.6
			block = stack(3.2, head, block)
		}
		out = append(out, block)
	}
	return out
}

func headed(title string, w float64, parts ...*sheet) *sheet {
	head := &sheet{w: w, h: 3.8}
	head.write(0, head.h, style{serifBold, 13, ink}, title)
	return stack(2.6, append([]*sheet{head}, parts...)...)
}

// figureBlocks are the plot, the table of figures and what the verdict rests
// on.
func figureBlocks(d design.Design, r *model.Result, c content, w float64) []*sheet {
	var out []*sheet
	if p := temperaturePlot(d, r, w, 66); p != nil {
		out = append(out, headed("From the freezer to the spoon", w, p))
	}
	out = append(out, headed("The figures", w, figureTable(c, w)))
	var rests []*sheet
	for _, t := range c.rests {
		rests = append(rests, bullet(w, small.in(ink), smallLead, glass, t))
	}
	for _, t := range c.warnings {
		rests = append(rests, bullet(w, small.in(ink), smallLead, coral, t))
	}
	for i, b := range chunked(rests, 1.9, 50) {
		if i == 0 {
			b = headed("What the verdict rests on", w, b)
		}
		out = append(out, b)
	}
	return out
}

// chunked stacks blocks into larger ones of at most limit mm.
func chunked(blocks []*sheet, gap, limit float64) []*sheet {
	var out []*sheet
	var group []*sheet
	h := 0.0
	for _, b := range blocks {
		if h > 0 && h+gap+b.h > limit {
			out, group, h = append(out, stack(gap, group...)), nil, 0
		}
		group = append(group, b)
		h += gap + b.h
	}
	if group != nil {
		out = append(out, stack(gap, group...))
	}
	return out
}

// bullet sets a text behind a drop of colour.
func bullet(w float64, st style, lead float64, c color.NRGBA, s string) *sheet {
	p := text(w-4.2, lead, st, s)
	b := &sheet{w: w, h: p.h}
	b.disc(0.9, capHeight*st.size*point/2, 0.8, c)
	b.place(p, 4.2, 0)
	return b
}

// figureTable sets the figures in three columns.
func figureTable(c content, w float64) *sheet {
	t := &sheet{w: w}
	st := style{sans, 8, ink}
	cols := [3]float64{0.62 * w, 0.81 * w, w}
	pitch := 4.7
	head := style{sansBold, 8, muted}
	t.h = 2.4
	for i, s := range [...]string{"Custard", "Foam", "Tub"} {
		t.writeRight(cols[i], t.h, head, s)
	}
	t.h += 1.5
	t.box(0, t.h, w, 0.35, ink)
	for _, f := range c.figures {
		base := t.h + pitch - 1.5
		// A range such as "−12 to −5 °C" is wide: it is set smaller, never over
		// its neighbour.
		name := t.write(0, base, st, f.name)
		from := name + 2
		for i, s := range [...]string{f.dense, f.foam, f.tub} {
			use := st
			for use.size > 5.5 && cols[i]-use.width(s) < from {
				use.size -= 0.25
			}
			t.writeRight(cols[i], base, use, s)
			from = cols[i] + 1.5
		}
		t.h += pitch
		t.box(0, t.h, w, 0.15, dune)
	}
	return t
}

// panelBlocks are the label's panel and statement.
func panelBlocks(c content, w float64) []*sheet {
	if c.label == nil {
		return []*sheet{text(w, bodyLead, body, c.labelNote)}
	}
	return []*sheet{withNotes(panelOf(c.label, w), c.label), statementOf(c.label, w, style{sans, 8, ink})}
}

// cautionBox sets the cautions on a ground of sand.
func cautionBox(c content, w float64) *sheet {
	const pad, bar = 4.0, 1.0
	st := style{sans, 8, ink}
	parts := []*sheet{{w: w, h: 3.4}}
	parts[0].write(0, 3.4, style{serifBold, 12, ink}, "Cautions")
	for _, k := range c.cautions {
		parts = append(parts, paragraph(w-bar-2*pad, 10.4, run{k.title + ". ", st.bold()}, run{k.text, st}))
	}
	all := stack(2.5, parts...)
	b := &sheet{w: w, h: all.h + 2*pad}
	b.box(0, 0, w, b.h, sand)
	b.box(0, 0, bar, b.h, coral)
	b.place(all, bar+pad, pad)
	return b
}

// statementOf sets the list of ingredients with its allergens emphasised.
func statementOf(l *label.Label, w float64, st style) *sheet {
	var runs []run
	for _, r := range l.Ingredients {
		s := st
		if r.Emphasis {
			s = st.bold()
		}
		runs = append(runs, run{r.Text, s})
	}
	parts := []*sheet{paragraph(w, 10.4, runs...)}
	if l.Contains != "" {
		parts = append(parts, text(w, 10.4, st.bold(), l.Contains))
	}
	return stack(2.2, parts...)
}
