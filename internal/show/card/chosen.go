package card

import (
	"context"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"
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
	least := 0
	set := func(chosen Sections) *flow {
		for _, size := range [...]float64{9, 8.5, 8, 7.5} {
			f := inColumns(ctx, d, r, c.only(chosen), o, chosen, size)
			if least = len(f.pages); o.Pages == 0 || least <= o.Pages {
				return f
			}
		}
		return nil
	}
	f, kept := set(chosen), chosen
	for i := 0; f == nil && i < len(spare); i++ {
		if kept.has(spare[i]) {
			kept &^= spare[i]
			f = set(kept)
		}
	}
	if f == nil {
		return nil, flaw.New("%v: %d of this paper, where %d may be", ErrPages, least, o.Pages)
	}
	// What is short may have room where something long before it had none.
	for i := len(spare) - 1; i >= 0; i-- {
		if one := spare[i]; chosen.has(one) && !kept.has(one) {
			if more := set(kept | one); more != nil {
				f, kept = more, kept|one
			}
		}
	}
	f.feet()
	if text := leftOut(chosen &^ kept); text != "" {
		last := f.pages[len(f.pages)-1]
		typeset.Write(last, f.margin, last.H-footSpace+2, small, text)
	}
	return f.pages, nil
}

// inColumns sets what is chosen in columns, one on a small paper, steps at a size.
func inColumns(ctx context.Context, d design.Design, r *model.Result, c content, o Options, chosen Sections, size float64) *flow {
	f := newFlow(c, o.Paper, marginOf(o.Paper))
	m := f.margin
	w := f.w - 2*m
	var y float64
	if o.Pages > 0 || o.Paper == A5 {
		y = shortHeader(f.page(0), nil, 0, c, m)
	} else {
		y = header(f.page(0), tubPicture(ctx, d, r, tubMM, tubMM, o.DPI), 1, c, m)
	}
	next := f.same
	if o.Paper != A5 {
		w = (w - gutter) / 2
		next = func(s slot) slot {
			if s.x == m {
				if s.page == 0 {
					return slot{0, m + w + gutter, y}
				}
				return slot{s.page, m + w + gutter, f.top}
			}
			return slot{s.page + 1, m, f.top}
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
	air := map[bool]float64{true: 1.2, false: 0.95}[size >= 9]
	if beside := listsBeside(c, w, air, f.bottom-y); beside != nil && o.Paper == A5 {
		add(0, beside)
	} else {
		add(0, listBlocks(c, w, air)...)
	}
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
		add(apart, headed(say.T("What it costs"), w, typeset.Text(w, smallLead, small.In(ink), c.cost)))
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
	f.column(slot{0, m, y}, 0, next, blocks)
	return f
}

// listsBeside are the weights in two columns that fit a height, nil where they do
// not.
func listsBeside(c content, w, air, room float64) *draw.List {
	const between = 6.0
	half := (w - between) / 2
	all := listBlocks(c, half, air)
	var best *draw.List
	for i := range all {
		left, right := typeset.Stack(0, all[:i]...), typeset.Stack(0, all[i:]...)
		if h := max(left.H, right.H); h <= room && (best == nil || h < best.H) {
			best = &draw.List{W: w, H: h}
			best.Place(left, 0, 0, 1)
			best.Place(right, half+between, 0, 1)
		}
	}
	return best
}

// shortHeader draws a head of a few lines, beside the tub's picture scaled if there is
// one, and returns where the columns begin.
func shortHeader(s, tub *draw.List, scale float64, c content, m float64) float64 {
	w, low := s.W-2*m, 0.0
	if tub != nil {
		s.Place(tub, s.W-m-scale*tub.W, m, scale)
		w, low = w-scale*tub.W-6, scale*tub.H
	}
	head := typeset.Stack(2.6,
		typeset.Text(w, 22, typeset.Type(draw.SerifBold, 20, ink), cut(c.name, 120)),
		typeset.Text(w, bodyLead, strong, say.T("%s. Serve at %s.", c.makes, c.serve)),
		typeset.Text(w, bodyLead, body, c.verdict))
	s.Place(head, m, m, 1)
	low = m + max(low, head.H)
	ripples(s, m, low+4, s.W-2*m)
	return low + 10
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
			typeset.Write(head, 0, 3.4, typeset.Type(draw.SerifBold, 12, ink), say.T("Cautions"))
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
