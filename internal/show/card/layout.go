package card

import (
	"context"
	"fmt"
	"math"
	"strings"

	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/work/design"
)

// Measures of the page, mm.
const (
	margin    = 15.0
	tight     = 10.0 // the margin of A5, and of what has no room otherwise
	gutter    = 9.0
	narrow    = 72.0 // the column of lists and panels
	broad     = 84.0 // that column where the panel has two columns of its own
	footSpace = 15.0 // below the columns
)

// cardPages composes the card: the front to make it from, the back on what it
// is. A cancelled context leaves the tub's picture out.
func cardPages(ctx context.Context, d design.Design, r *model.Result, c content, o Options) []*draw.List {
	tub := tubPicture(ctx, d, r, tubMM, tubMM, o.DPI)
	f := twoSides(tub, d, r, c, o, 2)
	if f == nil {
		f = packed(tub, d, r, c, o)
	}
	if f == nil {
		f = twoSides(tub, d, r, c, o, 3)
	}
	if f == nil {
		f = newFlow(c, o.Paper, margin)
		backPages(f, d, r, c, frontPages(f, tub, c))
	}
	f.feet()
	return f.pages
}

// marginOf is the margin of a paper, mm.
func marginOf(p Paper) float64 {
	if p == A5 {
		return tight
	}
	return margin
}

// newFlow returns an empty flow whose further pages begin with the name.
func newFlow(c content, p Paper, m float64) *flow {
	w, h := p.Size()
	st := typeset.Type(draw.SerifBold, 11, ink)
	return &flow{w: w, h: h, margin: m, bottom: h - footSpace, top: m + 14, begin: func(s *draw.List) {
		typeset.Write(s, m, m+3.4, st, shortened(st, c.name, w-2*m))
		ripples(s, m, m+7, w-2*m)
	}}
}

// A filler is a block that may stand in any gap of a page: it is made for the
// width of the gap.
type filler func(w float64) *draw.List

// kept returns f, made once for each width.
func kept(f filler) filler {
	made := map[float64]*draw.List{}
	return func(w float64) *draw.List {
		if made[w] == nil {
			made[w] = f(w)
		}
		return made[w]
	}
}

// gap is a place that is free down to the bottom of its page.
type gap struct {
	slot
	w float64
}

// settle puts fillers, in order, into the first gap that holds them or, where
// none does and all gaps are on one page, across the page under them. It reports
// false where that has no room either, and the flow is then half done.
func (f *flow) settle(gaps []gap, boxes []filler) bool {
	const apart = 7.0
	for _, make := range boxes {
		done := false
		lowest := 0.0
		for i := range gaps {
			g := &gaps[i]
			lowest = max(lowest, g.y)
			b := make(g.w)
			if g.y+apart+b.H > f.bottom {
				continue
			}
			f.page(g.page).Place(b, g.x, g.y+apart, 1)
			g.y += apart + b.H
			done = true
			break
		}
		if done {
			continue
		}
		b := make(f.w - 2*margin)
		if len(gaps) == 0 || gaps[0].page != gaps[len(gaps)-1].page || lowest+apart+b.H > f.bottom {
			return false
		}
		f.page(gaps[0].page).Place(b, margin, lowest+apart, 1)
		for i := range gaps {
			gaps[i].y = lowest + apart + b.H
		}
	}
	return true
}

// shortened cuts s to a width, with an ellipsis.
func shortened(st typeset.Style, s string, width float64) string {
	if st.Width(s) <= width {
		return s
	}
	room := width - st.Width("…")
	for i, c := range s {
		if room -= st.Width(string(c)); room < 0 {
			return strings.TrimSpace(s[:i]) + "…"
		}
	}
	return s
}

// ripples draws the card's rule: two waves across.
func ripples(s *draw.List, x, y, w float64) {
	for i, c := range [...]draw.Colour{glass, coral} {
		waves := math.Round(w / 12)
		for k := 0; k <= 400; k++ {
			t := float64(k) / 400
			s.To(x+t*w, y+0.75*math.Sin(2*math.Pi*waves*t+float64(i)*math.Pi/1.6))
		}
		s.EndStroke(draw.Stroke{Width: 0.4, Colour: c})
	}
}

// foot draws the page's last line.
func foot(s *draw.List, m float64, n, of int) {
	y := s.H - 9.5
	page := fmt.Sprintf("%d / %d", n, of)
	typeset.WriteRight(s, s.W-m, y, small, page)
	typeset.Write(s, m, y, small, say.T("Ripplewright. Computed figures; local code and licensed practice decide."))
}

// headed sets parts under a title.
func headed(title string, w float64, parts ...*draw.List) *draw.List {
	head := &draw.List{W: w, H: 3.8}
	typeset.Write(head, 0, head.H, typeset.Type(draw.SerifBold, 13, ink), title)
	return typeset.Stack(2.6, append([]*draw.List{head}, parts...)...)
}
