package card

import (
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// packing is a look that packed tries.
type packing struct {
	margin, tub float64 // mm, of full size
	short       bool    // a head of few lines
	high        float64 // mm, of the plots
}

// packings are all of them, the airiest first.
var packings = [...]packing{{margin, 1, false, 46}, {margin, 0.75, false, 36}, {tight, 0.75, false, 36}, {tight, 0.5, true, 36}}

// packed composes a card on the two sides of a sheet where twoSides cannot: weights
// and steps run on through columns of one width, what cannot be parted stands where
// the columns after them have room, and what can be parted runs on through the rest.
// It returns nil where that is not enough.
func packed(tub *draw.List, d design.Design, r *model.Result, c content, o Options) *flow {
	if !packable(tub, d, r, c, o) {
		return nil
	}
	var boxes [len(packings)][]filler
	for i, look := range packings {
		boxes[i] = look.boxes(d, r, c)
	}
	for _, size := range [...]float64{9, 8.5, 8} {
		for i, look := range packings {
			f, w, below := look.begin(tub, c, o)
			weighed := listBlocks(c, w, map[bool]float64{true: 1.2, false: 0.95}[size >= 9])
			if f.pack(below, w, weighed, runSteps(c, w, size), boxes[i], restBlocks(c, w), noteBlocks(c, w)) {
				return f
			}
		}
	}
	return nil
}

// begin sets the head of a look, and returns the width of its columns and where they
// begin on the first side.
func (k packing) begin(tub *draw.List, c content, o Options) (f *flow, w, below float64) {
	f = newFlow(c, o.Paper, k.margin)
	w = (f.w - 2*f.margin - gutter) / 2
	if k.short {
		f.top -= 3
		f.bottom += 2
		below = shortHeader(f.page(0), tub, k.tub, c, f.margin)
	} else {
		below = header(f.page(0), tub, k.tub, c, f.margin)
	}
	return f, w, below
}

// boxes are what cannot be parted, each set once for a width.
func (k packing) boxes(d design.Design, r *model.Result, c content) []filler {
	boxes := []filler{
		func(w float64) *draw.List { return typeset.Stack(4.5, panelBlocks(c, w)...) },
		func(w float64) *draw.List { return headed(say.T("The figures"), w, figureTable(c, w)) },
		func(w float64) *draw.List { return plots(c.reads, d, r, w, k.high) },
		func(w float64) *draw.List { return cautionBox(c, w) },
	}
	if len(c.day) > 0 {
		boxes = append(boxes, func(w float64) *draw.List { return dayBox(c, w) })
	}
	for i := range boxes {
		boxes[i] = kept(boxes[i])
	}
	return boxes
}

// packable reports whether all of a card, set as close as packed may, is as much as
// four columns hold, so that long designs are not set in vain.
func packable(tub *draw.List, d design.Design, r *model.Result, c content, o Options) bool {
	closest := packings[len(packings)-1]
	f, w, below := closest.begin(tub, c, o)
	room := 2 * (2*f.bottom - below - f.top)
	for _, blocks := range [][]*draw.List{listBlocks(c, w, 0.95), runSteps(c, w, 8), restBlocks(c, w), noteBlocks(c, w)} {
		if room -= height(blocks, 0); room < 0 {
			return false
		}
	}
	for _, box := range closest.boxes(d, r, c) {
		if b := box(w); b != nil {
			room -= b.H
		}
	}
	return room >= 0
}

// pack fills four columns w wide, the first two from below on, and reports whether
// all has room.
func (f *flow) pack(below, w float64, weighed, steps []*draw.List, boxes []filler, runs ...[]*draw.List) bool {
	left, right := f.margin, f.margin+w+gutter
	columns := []slot{{0, left, below}, {0, right, below}, {1, left, f.top}, {1, right, f.top}}
	at := 0
	next := func(s slot) slot {
		if at++; at < len(columns) {
			return columns[at]
		}
		return f.same(s)
	}
	f.page(1)
	end := f.column(columns[0], 0, next, weighed)
	if len(weighed) > 0 {
		end.y += apart
	}
	if end = f.column(end, stepGap, next, steps); at >= len(columns) {
		return false
	}
	gaps := []gap{{end, w}}
	for _, s := range columns[at+1:] {
		gaps = append(gaps, gap{s, w})
	}
	whole := slices.Clone(boxes)
	for _, blocks := range runs {
		if len(blocks) > 0 {
			whole = append(whole, kept(func(float64) *draw.List { return typeset.Stack(0, blocks...) }))
		}
	}
	if f.share(slices.Clone(gaps), whole) {
		return true
	}
	if !f.share(gaps, boxes) {
		return false
	}
	for _, blocks := range runs {
		if gaps = f.run(gaps, blocks); gaps == nil {
			return false
		}
	}
	return true
}

// run lets blocks that belong together run on through gaps, and returns what is left
// of these, nil where they are too few.
func (f *flow) run(gaps []gap, blocks []*draw.List) []gap {
	first := true
	for _, b := range blocks {
		for {
			if len(gaps) == 0 {
				return nil
			}
			above := 0.0
			if first && gaps[0].y > f.top {
				above = apart
			}
			if gaps[0].y+above+b.H <= f.bottom {
				gaps[0].y += above
				break
			}
			gaps = gaps[1:]
		}
		f.page(gaps[0].page).Place(b, gaps[0].x, gaps[0].y, 1)
		gaps[0].y += b.H
		first = false
	}
	return gaps
}
