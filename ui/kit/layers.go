package kit

import (
	"image"
	"slices"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/raster"
)

// layers keep what a drag does not change of a drawing, as pixels: the marks under those
// that differ from frame to frame, and the marks over them.
type layers struct {
	under, over  layer
	below, above int // how many marks are to be kept
}

// A layer is the picture of the first or of the last n marks of a drawing.
type layer struct {
	n   int
	img image.RGBA
}

// keep takes a picture of the painter's as that of n marks.
func (l *layer) keep(n int, img *image.RGBA) {
	l.n, l.img.Stride, l.img.Rect = n, img.Stride, img.Rect
	l.img.Pix = append(l.img.Pix[:0], img.Pix...)
}

// follow is told of a new drawing, of which the first below and the last above marks are
// those of the drawing before: a layer that holds others is of no use any more.
func (l *layers) follow(below, above int) {
	l.below, l.above = below, above
	if l.under.n > below {
		l.under.n = 0
	}
	if l.over.n > above {
		l.over.n = 0
	}
}

// paint paints d, to which the layers have been told to follow, on the painter's picture.
func (l *layers) paint(p *raster.Painter, d *draw.List, img *image.RGBA, scale float64) {
	for _, x := range []*layer{&l.under, &l.over} {
		if x.img.Rect != img.Rect {
			x.n = 0
		}
	}
	marks := d.Marks
	defer func() { d.Marks = marks }()
	some := func(m []draw.Mark) { d.Marks = m; p.Paint(d, scale) }
	p.Clear(draw.Colour{})
	if l.above > l.over.n {
		some(marks[len(marks)-l.above:])
		l.over.keep(l.above, img)
		p.Clear(draw.Colour{})
	}
	if l.under.n > 0 {
		copy(img.Pix, l.under.img.Pix)
	}
	if l.below > l.under.n {
		some(marks[l.under.n:l.below])
		l.under.keep(l.below, img)
	}
	some(marks[l.under.n : len(marks)-l.over.n])
	if l.over.n > 0 {
		p.Lay(&l.over.img)
	}
	l.below, l.above = l.under.n, l.over.n
}

// alike tells how many of the first and of the last marks of two drawings of one size are
// the same; no mark counts twice. A picture differs from itself: its pixels may have
// changed.
func alike(a, b *draw.List) (first, last int) {
	n := min(len(a.Marks), len(b.Marks))
	if a.W != b.W || a.H != b.H {
		return 0, 0
	}
	for first < n && sameMark(&a.Marks[first], &b.Marks[first]) {
		first++
	}
	for last < n-first && sameMark(&a.Marks[len(a.Marks)-1-last], &b.Marks[len(b.Marks)-1-last]) {
		last++
	}
	return first, last
}

func sameMark(a, b *draw.Mark) bool {
	return a.Picture == nil && b.Picture == nil && a.Line == b.Line && a.Fill == b.Fill &&
		slices.EqualFunc(a.Points, b.Points, func(p, q draw.Point) bool { return p == q || p.Lifts() && q.Lifts() })
}
