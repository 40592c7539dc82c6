package card

import (
	"ripplewright/internal/show/draw"
)

// flow places blocks in columns over as many pages as they need.
type flow struct {
	w, h   float64 // of the paper
	margin float64
	pages  []*draw.List
	bottom float64 // lowest edge of a block
	top    float64 // of a page that carries on
	begin  func(*draw.List)
}

// slot is a place for a column.
type slot struct {
	page int
	x, y float64
}

// column runs blocks down through slots, gap mm apart: the first slot, then
// what next gives. It returns where it ended.
func (f *flow) column(at slot, gap float64, next func(slot) slot, blocks []*draw.List) (end slot) {
	fresh := true // nothing placed in this slot yet
	for _, b := range blocks {
		if b == nil || b.H == 0 {
			continue
		}
		for at.y+b.H > f.bottom && !(fresh && at.y <= f.top) { // a block that no page holds is left to run over
			at, fresh = next(at), true
		}
		f.page(at.page).Place(b, at.x, at.y, 1)
		at.y += b.H + gap
		fresh = false
	}
	if !fresh {
		at.y -= gap
	}
	return at
}

// same carries a column on at the same place of the next page.
func (f *flow) same(s slot) slot { return slot{s.page + 1, s.x, f.top} }

// page returns page number p, from 0, added if need be.
func (f *flow) page(p int) *draw.List {
	for len(f.pages) <= p {
		s := &draw.List{W: f.w, H: f.h}
		if len(f.pages) > 0 && f.begin != nil {
			f.begin(s)
		}
		f.pages = append(f.pages, s)
	}
	return f.pages[p]
}

// feet draws the last line of every page.
func (f *flow) feet() {
	for i, s := range f.pages {
		foot(s, f.margin, i+1, len(f.pages))
	}
}

// height returns that of blocks placed gap mm apart.
func height(blocks []*draw.List, gap float64) float64 {
	h := -gap
	for _, b := range blocks {
		if b != nil {
			h += b.H + gap
		}
	}
	return h
}

// spaced returns b with room above it.
func spaced(above float64, b *draw.List) *draw.List {
	s := &draw.List{W: b.W, H: above + b.H}
	s.Place(b, 0, above, 1)
	return s
}
