package card

// flow places blocks in columns over as many pages as they need.
type flow struct {
	w, h   float64 // of the paper
	pages  []*sheet
	bottom float64 // lowest edge of a block
	top    float64 // of a page that carries on
	begin  func(*sheet)
}

// slot is a place for a column.
type slot struct {
	page int
	x, y float64
}

// column runs blocks down through slots, gap mm apart: the first slot, then
// what next gives. It returns where it ended.
func (f *flow) column(at slot, gap float64, next func(slot) slot, blocks []*sheet) (end slot) {
	fresh := true // nothing placed in this slot yet
	for _, b := range blocks {
		if b == nil || b.h == 0 {
			continue
		}
		for at.y+b.h > f.bottom && !(fresh && at.y <= f.top) { // a block that no page holds is left to run over
			at, fresh = next(at), true
		}
		f.page(at.page).place(b, at.x, at.y)
		at.y += b.h + gap
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
func (f *flow) page(p int) *sheet {
	for len(f.pages) <= p {
		s := &sheet{w: f.w, h: f.h}
		if len(f.pages) > 0 && f.begin != nil {
			f.begin(s)
		}
		f.pages = append(f.pages, s)
	}
	return f.pages[p]
}

// height returns that of blocks placed gap mm apart.
func height(blocks []*sheet, gap float64) float64 {
	h := -gap
	for _, b := range blocks {
		if b != nil {
			h += b.h + gap
		}
	}
	return h
}

// spaced returns b with room above it.
func spaced(above float64, b *sheet) *sheet {
	s := &sheet{w: b.w, h: above + b.h}
	s.place(b, 0, above)
	return s
}
