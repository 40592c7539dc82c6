package card

import (
	"fmt"
	"strings"

	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
)

// frontPages composes the head, the weights and the steps. It returns the notes
// if no room was left for them.
func frontPages(f *flow, tub *draw.List, c content) []filler {
	y := header(f.page(0), tub, 1, c, margin)
	if intro := noteIntro(c, f.w-2*margin); intro != nil {
		below := y + intro.H + 6
		_, _, steps := fittingSteps(c, f.steps(), f.bottom-below)
		if _, lists := fittingLists(c, narrow, f.bottom-below); steps && lists {
			f.page(0).Place(intro, margin, y-3, 1)
			c.notes, y = nil, below
		}
	}
	left, right := margin, margin+narrow+gutter
	steps, apart, _ := fittingSteps(c, f.steps(), f.bottom-y)
	end := f.column(slot{0, right, y}, apart, f.same, steps)
	over := end.page > 0 // then the second page's right side is taken
	lists, _ := fittingLists(c, narrow, f.bottom-y)
	last := f.column(slot{0, left, y}, 0, func(s slot) slot {
		if s.page > 0 && s.x == left && !over {
			return slot{s.page, right, f.top}
		}
		return slot{s.page + 1, left, f.top}
	}, lists)
	if len(c.notes) == 0 {
		return nil
	}
	notes := []filler{kept(func(w float64) *draw.List { return typeset.Stack(0, noteBlocks(c, w)...) })}
	if f.settle([]gap{{last, narrow}, {end, f.steps()}}, notes) {
		return nil
	}
	return notes
}

// steps is the width of the steps.
func (f *flow) steps() float64 { return f.w - 2*margin - gutter - narrow }

// noteIntro sets short notes as words of introduction, nil if there are none or
// many.
func noteIntro(c content, w float64) *draw.List {
	const most = 26 // mm
	var parts []*draw.List
	for _, n := range c.notes {
		parts = append(parts, typeset.Text(w, 13.5, typeset.Type(draw.SerifItalic, 10.5, muted), n))
	}
	if all := typeset.Stack(2.5, parts...); len(parts) > 0 && all.H <= most {
		return all
	}
	return nil
}

// fittingLists sets the lists as airily as one page allows. Where none holds
// them they flow on.
func fittingLists(c content, w, room float64) (lists []*draw.List, fits bool) {
	tight := listBlocks(c, w, 0.95)
	if height(tight, 0) > room {
		return listBlocks(c, w, 1.55), false
	}
	for _, air := range [...]float64{1.9, 1.55, 1.2} {
		if lists := listBlocks(c, w, air); height(lists, 0) <= room {
			return lists, true
		}
	}
	return tight, true
}

// fittingSteps sets the steps as large as one page allows, in full size where
// none does.
func fittingSteps(c content, w, room float64) (steps []*draw.List, gap float64, fits bool) {
	tries := [...]struct{ size, gap float64 }{{9.5, 4.6}, {9, 3.8}, {8.7, 3.2}, {8.4, 2.8}, {8, 2.4}}
	least := tries[len(tries)-1]
	tight := stepBlocks(c, w, least.size)
	if height(tight, least.gap) > room {
		return stepBlocks(c, w, 9), 3.6, false
	}
	for _, try := range tries[:len(tries)-1] {
		if steps := stepBlocks(c, w, try.size); height(steps, try.gap) <= room {
			return steps, try.gap, true
		}
	}
	return tight, least.gap, true
}

// tubMM is the size of the tub's picture.
const tubMM = 48.0

// header draws the head of the front, with the tub's picture scaled, inside a
// margin, and returns where the columns begin.
func header(s, tub *draw.List, scale float64, c content, margin float64) float64 {
	size := scale * tubMM
	room := s.W - 2*margin - size - 10
	s.Place(tub, s.W-margin-size+(size-scale*tub.W)/2, margin, scale)

	title := titleOf(c.name, room)
	tag := typeset.Type(draw.SansBold, 13, white)
	serve := &draw.List{H: 9.5}
	serveText := say.T("Serve at %s", c.serve)
	serve.W = tag.Width(serveText) + 9
	serve.RoundBox(draw.Rect{X1: serve.W, Y1: serve.H}, 1.6)
	serve.EndFill(glass)
	typeset.Write(serve, 4.5, 6.4, tag, serveText)
	verdict := []typeset.Run{{Text: c.verdict, Style: strong}}
	if c.advice != "" {
		verdict = append(verdict, typeset.Run{Text: " " + c.advice, Style: body})
	}
	left := typeset.Stack(3.2,
		typeset.Text(room, 11, eyebrow, c.makes),
		title,
		typeset.Text(room, 16, typeset.Type(draw.SerifItalic, 13, muted), c.strap),
		serve,
		typeset.Paragraph(room, bodyLead, verdict...),
	)
	s.Place(left, margin, margin+1, 1)
	y := margin + max(left.H+1, scale*tub.H)
	ripples(s, margin, y+5, s.W-2*margin)
	return y + 12
}

// titleOf sets a name as large as three lines of it allow.
func titleOf(name string, width float64) *draw.List {
	name = cut(name, 200) // all that five lines hold
	st := typeset.Type(draw.SerifBold, 30, ink)
	for st.Size > 15 && len(typeset.Wrapped([]typeset.Run{{Text: name, Style: st}}, width)) > 2+int(20/st.Size) {
		st.Size--
	}
	for n := len([]rune(name)); len(typeset.Wrapped([]typeset.Run{{Text: name, Style: st}}, width)) > 5; n -= 8 {
		name = strings.TrimSpace(string([]rune(name)[:max(n-8, 1)])) + "…"
	}
	return typeset.Text(width, 1.12*st.Size, st, name)
}

// listBlocks are the weights, one block a line so that they may flow, with air
// mm above and below each.
func listBlocks(c content, w, air float64) []*draw.List {
	const gram = 13.9 // right edge of the grams
	ounces := ouncesWidth(c, small)
	name := 19.0 + ounces // left of the names
	var out []*draw.List
	for i, p := range c.parts {
		head := &draw.List{W: w, H: 4.2}
		if i > 0 {
			head.H += 3 * air
		}
		end := typeset.Write(head, 0, head.H, heading, p.title)
		total := p.total
		if bold := typeset.Type(draw.SansBold, 9, muted); end+3+bold.Width(total) <= w {
			typeset.WriteRight(head, w, head.H, bold, total)
		} else {
			head = typeset.Stack(2, head, typeset.Text(w, smallLead, bold, total))
		}
		if room := w - end - 4 - strong.Width(total); p.note != "" {
			if small.Width(p.note) <= room {
				typeset.Write(head, end+2.5, head.H, small, p.note)
			} else {
				head = typeset.Stack(2, head, typeset.Text(w, smallLead, small, p.note))
			}
		}
		typeset.Fill(head, 0, head.H+1.9, w, 0.5, ink)
		head.H += 2.6
		for _, l := range p.rows {
			row := &draw.List{W: w}
			room := w - name
			one := l.measure == "" || body.Width(l.name)+3+small.Width(l.measure) <= room
			words := typeset.Text(room, 11.4, body, l.name)
			if !one {
				words = typeset.Stack(1.5, words, typeset.Text(room, smallLead, small, l.measure))
			}
			if l.note != "" {
				words = typeset.Stack(1.5, words, typeset.Text(room, smallLead, typeset.Type(draw.SansItalic, 7.5, muted), l.note))
			}
			base := air + face.CapHeight*body.Size*typeset.Point
			row.Place(words, name, air, 1)
			grams := typeset.Type(draw.SansBold, 10.5, ink)
			if grams.Width(l.grams) < gram-tickMM-0.5 {
				tick(row, 0, base, tickMM)
			}
			typeset.WriteRight(row, gram, base, grams, l.grams)
			typeset.Write(row, gram+0.8, base, small, l.unit)
			typeset.WriteRight(row, name-2.5, base, small, l.ounces)
			if one {
				typeset.WriteRight(row, w, base, small, l.measure)
			}
			row.H = words.H + 2*air
			typeset.Fill(row, 0, row.H-0.15, w, 0.15, dune)
			if head != nil {
				row, head = typeset.Stack(0, head, row), nil
			}
			out = append(out, row)
		}
	}
	out = append(out, checkBox(c, w, 4*air))
	return out
}

// ouncesWidth is the width of the column of ounces, 0 where there are none.
func ouncesWidth(c content, st typeset.Style) float64 {
	w := 0.0
	for _, p := range c.parts {
		for _, l := range p.rows {
			if l.ounces != "" {
				w = max(w, st.Width(l.ounces)+2.5)
			}
		}
	}
	return w
}

// noteBlocks are the maker's notes, one block a line so that they may flow.
func noteBlocks(c content, w float64) []*draw.List {
	if len(c.notes) == 0 {
		return nil
	}
	const cap = face.CapHeight * 9 * typeset.Point
	var out []*draw.List
	for i, paragraph := range c.notes {
		for k, line := range typeset.Wrapped([]typeset.Run{{Text: paragraph, Style: body}}, w) {
			above := bodyLead*typeset.Point - cap
			if k == 0 && i > 0 {
				above += 1.6
			}
			l := &draw.List{W: w, H: above + cap}
			l.Place(typeset.OneLine(line), 0, above, 1)
			if len(out) == 0 {
				head := &draw.List{W: w, H: 6 + 4.2}
				typeset.Write(head, 0, head.H, heading, say.T("Notes"))
				l = typeset.Stack(1.2, head, l)
			}
			out = append(out, l)
		}
	}
	return out
}

// checkBox lists what the scale should show, nil if nothing.
func checkBox(c content, w, above float64) *draw.List {
	if len(c.checks) == 0 {
		return nil
	}
	const pad = 3.5
	rows := &draw.List{W: w - 2*pad, H: 3.6}
	typeset.Write(rows, 0, rows.H, typeset.Type(draw.SerifBold, 12, ink), say.T("Check on the scale"))
	rows.H += 1.2
	for _, k := range c.checks {
		t := typeset.Text(rows.W-max(20, typeset.Type(draw.SansBold, 9, ink).Width(k.Text)+3), 10.4, typeset.Type(draw.Sans, 8, ink), k.Title)
		rows.Place(t, 0, rows.H+1.6, 1)
		typeset.WriteRight(rows, rows.W, rows.H+1.6+face.CapHeight*8*typeset.Point, typeset.Type(draw.SansBold, 9, ink), k.Text)
		rows.H += t.H + 2.4
	}
	b := &draw.List{W: w, H: above + rows.H + 2*pad}
	typeset.Fill(b, 0, above, w, rows.H+2*pad, sand)
	b.Place(rows, pad, above+pad, 1)
	return b
}

// tickMM is the width of a box to tick.
const tickMM = 2.3

// withBlank is a step's text with what is to be written down there.
func withBlank(text, blank string) string { return strings.TrimSpace(text + " " + blank) }

// stepBlocks are the numbered steps.
func stepBlocks(c content, w, size float64) []*draw.List {
	const indent = 9.5
	st := typeset.Type(draw.Sans, size, ink)
	lead := size * bodyLead / 9
	var out []*draw.List
	for i, k := range c.steps {
		s := typeset.Stack(2.1,
			typeset.Text(w-indent, 13, typeset.Type(draw.SansBold, size+1.5, ink), k.Title),
			typeset.Text(w-indent, lead, st, withBlank(k.Text, c.blanks[i])))
		block := &draw.List{W: w, H: s.H}
		number := typeset.Type(draw.SerifBold, 17, coral)
		typeset.Write(block, 0, face.CapHeight*17*typeset.Point*0.93, number, fmt.Sprint(i+1))
		block.Place(s, indent, 0, 1)
		if i == 0 {
			block = underHead(w, block)
		}
		out = append(out, block)
	}
	return out
}

// underHead sets the first step under the head of them all.
func underHead(w float64, first *draw.List) *draw.List {
	head := &draw.List{W: w, H: 4.2}
	typeset.Write(head, 0, head.H, heading, say.T("How it is made"))
	typeset.Fill(head, 0, head.H+1.9, w, 0.5, ink)
	head.H += 2.6
	return typeset.Stack(3.2, head, first)
}
