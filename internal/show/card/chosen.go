package card

import (
	"context"
	"fmt"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/work/design"
)

// compose lays the card out as the options ask. Errors: ErrPages; a cancelled context
// leaves pictures out.
func compose(ctx context.Context, d design.Design, r *model.Result, c content, o Options) ([]*draw.List, error) {
	if o.Big {
		return kitchenPages(c, o.Paper), nil
	}
	chosen := o.Parts
	if chosen == allSections && o.Paper != A5 {
		if pages := cardPages(ctx, d, r, c, o); o.Pages == 0 || len(pages) <= o.Pages {
			return pages, nil
		}
	}
	chosen = c.present(chosen)
	tries := append([]Sections{0}, spare[:]...)
	out, least := Sections(0), 0
	for _, next := range tries {
		if !chosen.has(next) && next != 0 {
			continue
		}
		chosen, out = chosen&^next, out|next
		for _, size := range [...]float64{9, 8.5, 8, 7.5} {
			pages := inColumns(ctx, d, r, c.only(chosen), o, chosen, size)
			if least = len(pages); o.Pages > 0 && least > o.Pages {
				continue
			}
			for i, s := range pages {
				foot(s, i+1, len(pages))
			}
			if text := leftOut(out); text != "" {
				last := pages[len(pages)-1]
				typeset.Write(last, margin, last.H-footSpace+2, small, text)
			}
			return pages, nil
		}
	}
	return nil, fmt.Errorf("%w: %d of this paper, where %d may be", ErrPages, least, o.Pages)
}

// inColumns sets what is chosen in columns, one on a small paper, steps at a size.
func inColumns(ctx context.Context, d design.Design, r *model.Result, c content, o Options, chosen Sections, size float64) []*draw.List {
	f := newFlow(c, o.Paper)
	var y float64
	if o.Pages > 0 || o.Paper == A5 {
		y = shortHeader(f.page(0), c)
	} else {
		y = header(ctx, f.page(0), d, r, c, o.DPI)
	}
	w := f.w - 2*margin
	next := f.same
	if o.Paper != A5 {
		w = (w - gutter) / 2
		next = func(s slot) slot {
			if s.x == margin {
				if s.page == 0 {
					return slot{0, margin + w + gutter, y}
				}
				return slot{s.page, margin + w + gutter, f.top}
			}
			return slot{s.page + 1, margin, f.top}
		}
	}
	var blocks []*draw.List
	add := func(gap float64, more ...*draw.List) {
		for i, b := range more {
			if b == nil || b.H == 0 {
				continue
			}
			if i == 0 && len(blocks) > 0 {
				gap = max(gap, apart)
			}
			blocks = append(blocks, spaced(gap, b))
			gap = 0
		}
	}
	add(0, listBlocks(c, w, map[bool]float64{true: 1.2, false: 0.95}[size >= 9])...)
	for i, s := range runSteps(c, w, size) {
		if i == 0 {
			add(apart, s)
			continue
		}
		blocks = append(blocks, spaced(stepGap, s))
	}
	add(apart, noteBlocks(c, w)...)
	add(apart, dayBox(c, w))
	if chosen.has(Figures) {
		add(apart, figureBlocks(c, w)...)
	} else if c.cost != "" {
		add(apart, headed("What it costs", w, typeset.Text(w, smallLead, small.In(ink), c.cost)))
	}
	if chosen.has(Plots) && w >= leastPlots {
		add(apart, plots(c.reads, d, r, w, 40))
	}
	if chosen.has(Panel) {
		for _, b := range panelBlocks(c, w) {
			add(apart, b)
		}
	}
	add(apart, cautionBlocks(c, w)...)
	f.column(slot{0, margin, y}, 0, next, blocks)
	return f.pages
}

// shortHeader draws a head without a picture and returns where the columns begin.
func shortHeader(s *draw.List, c content) float64 {
	w := s.W - 2*margin
	head := typeset.Stack(2.6,
		typeset.Text(w, 22, typeset.Type(draw.SerifBold, 20, ink), cut(c.name, 120)),
		typeset.Text(w, bodyLead, strong, c.makes+". Serve at "+c.serve+"."),
		typeset.Text(w, bodyLead, body, c.verdict))
	s.Place(head, margin, margin, 1)
	ripples(s, margin, margin+head.H+4, w)
	return margin + head.H + 10
}

// cautionBlocks are the cautions one block each, so that they may flow.
func cautionBlocks(c content, w float64) []*draw.List {
	const pad, bar = 3.6, 1.0
	st := typeset.Type(draw.Sans, 7.5, ink)
	var out []*draw.List
	for i, k := range c.cautions {
		p := typeset.Paragraph(w-bar-2*pad, 9.6, typeset.Run{Text: k.Title + ". ", Style: st.Bold()}, typeset.Run{Text: k.Text, Style: st})
		if i == 0 {
			head := &draw.List{W: w, H: 3.4}
			typeset.Write(head, 0, 3.4, typeset.Type(draw.SerifBold, 12, ink), "Cautions")
			p = typeset.Stack(1.9, head, p)
		}
		above, below := 0.95, 0.95
		if i == 0 {
			above = pad
		}
		if i == len(c.cautions)-1 {
			below = pad
		}
		b := &draw.List{W: w, H: above + p.H + below}
		typeset.Fill(b, 0, 0, w, b.H, sand)
		typeset.Fill(b, 0, 0, bar, b.H, coral)
		b.Place(p, bar+pad, above, 1)
		out = append(out, b)
	}
	return out
}
