package card

// flow places blocks in columns over as many pages as they need.
type flow struct {
	w, h   float64 // of the paper
	pages  []*sheet
	bottom float64 // lowest edge of a block
	top    float64 // of a page that carries on
	begin  func(*sheet)
}

// column runs blocks down from y on page number p, gap mm apart, and returns
// where it ended.
func (f *flow) column(p int, x, y, gap float64, blocks []*sheet) (page int, end float64) {
	fresh := true // nothing placed on this page yet
	for _, b := range blocks {
		if b == nil || b.h == 0 {
			continue
		}
		if y+b.h > f.bottom && !(fresh && y <= f.top) {
			p, y = p+1, f.top
		}
		f.page(p).place(b, x, y)
		y += b.h + gap
		fresh = false
	}
	return p, y - gap
}

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
