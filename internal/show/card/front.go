package card

import (
	"context"
	"fmt"
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// frontPages composes the head, the weights and the steps. It returns the notes
// if no room was left for them.
func frontPages(ctx context.Context, f *flow, d design.Design, r *model.Result, c content, dpi float64) []box {
	y := header(ctx, f.page(0), d, r, c, dpi)
	if intro := noteIntro(c, f.w-2*margin); intro != nil {
		below := y + intro.h + 6
		_, _, steps := fittingSteps(c, f.steps(), f.bottom-below)
		if _, lists := fittingLists(c, narrow, f.bottom-below); steps && lists {
			f.page(0).place(intro, margin, y-3)
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
	notes := []box{func(w float64) *sheet { return stack(0, noteBlocks(c, w)...) }}
	if f.settle([]gap{{last, narrow}, {end, f.steps()}}, notes) {
		return nil
	}
	return notes
}

// steps is the width of the steps.
func (f *flow) steps() float64 { return f.w - 2*margin - gutter - narrow }

// noteIntro sets short notes as words of introduction, nil if there are none or
// many.
func noteIntro(c content, w float64) *sheet {
	const most = 26 // mm
	var parts []*sheet
	for _, n := range c.notes {
		parts = append(parts, text(w, 13.5, style{serifItalic, 10.5, muted}, n))
	}
	if all := stack(2.5, parts...); len(parts) > 0 && all.h <= most {
		return all
	}
	return nil
}

// fittingLists sets the lists as airily as one page allows. Where none holds
// them they flow on.
func fittingLists(c content, w, room float64) (lists []*sheet, fits bool) {
	for _, air := range [...]float64{1.9, 1.55, 1.2, 0.95} {
		lists := listBlocks(c, w, air)
		if height(lists, 0) <= room {
			return lists, true
		}
	}
	return listBlocks(c, w, 1.55), false
}

// fittingSteps sets the steps as large as one page allows, in full size where
// none does.
func fittingSteps(c content, w, room float64) (steps []*sheet, gap float64, fits bool) {
	for _, try := range [...]struct{ size, gap float64 }{{9.5, 4.6}, {9, 3.8}, {8.7, 3.2}, {8.4, 2.8}, {8, 2.4}} {
		if steps := stepBlocks(c, w, try.size); height(steps, try.gap) <= room {
			return steps, try.gap, true
		}
	}
	return stepBlocks(c, w, 9), 3.6, false
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

// listBlocks are the weights, one block a line so that they may flow, with air
// mm above and below each.
func listBlocks(c content, w, air float64) []*sheet {
	const gram, name = 13.2, 18.5 // right edge of the grams, left of the names
	var out []*sheet
	for i, p := range c.parts {
		head := &sheet{w: w, h: 4.2}
		if i > 0 {
			head.h += 3 * air
		}
		end := head.write(0, head.h, heading, p.title)
		total := p.total
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
			row.write(gram+0.8, base, small, l.unit)
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
	return out
}

// noteBlocks are the maker's notes, one block a line so that they may flow.
func noteBlocks(c content, w float64) []*sheet {
	if len(c.notes) == 0 {
		return nil
	}
	const cap = capHeight * 9 * point
	var out []*sheet
	for i, paragraph := range c.notes {
		for k, line := range wrapped([]run{{paragraph, body}}, w) {
			above := bodyLead*point - cap
			if k == 0 && i > 0 {
				above += 1.6
			}
			l := &sheet{w: w, h: above + cap}
			l.place(oneLine(line), 0, above)
			if len(out) == 0 {
				head := &sheet{w: w, h: 6 + 4.2}
				head.write(0, head.h, heading, "Notes")
				l = stack(1.2, head, l)
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
		t := text(rows.w-20, 10.4, style{sans, 8, ink}, k.Title)
		rows.place(t, 0, rows.h+1.6)
		rows.writeRight(rows.w, rows.h+1.6+capHeight*8*point, style{sansBold, 9, ink}, k.Text)
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
			text(w-indent, 13, style{sansBold, size + 1.5, ink}, k.Title),
			text(w-indent, lead, st, k.Text))
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
