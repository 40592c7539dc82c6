package card

import (
	"fmt"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/draw/typeset"
	"ripplewright/internal/work/design"
)

// twoSides composes an ordinary card on the two sides of a sheet: head, weights
// and steps in front; the last steps, panel and figures behind, and what is left
// where it has room; a third side, where there may be one, takes what has none. Titles run into the text,
// and no type is smaller than elsewhere. It returns nil where that is not enough.
func twoSides(tub *draw.List, d design.Design, r *model.Result, c content, o Options, sides int) *flow {
	boxes := []filler{
		nil, // the plots, below
		func(w float64) *draw.List { return cautionBox(c, w) },
		func(w float64) *draw.List { return dayBox(c, w) },
	}
	if len(c.rests)+len(c.warnings) > 0 || c.cost != "" {
		boxes = append(boxes, func(w float64) *draw.List { return typeset.Stack(0, restBlocks(c, w)...) })
	}
	if len(c.notes) > 0 {
		boxes = append(boxes, func(w float64) *draw.List { return typeset.Stack(0, noteBlocks(c, w)...) })
	}
	for i := 1; i < len(boxes); i++ {
		boxes[i] = kept(boxes[i])
	}
	w, h := o.Paper.Size()
	front := &draw.List{W: w, H: h}
	below := header(front, tub, 1, c, margin)
	empty := newFlow(c, o.Paper, margin)
	airy, fits := fittingLists(c, narrow, empty.bottom-below)
	if !fits {
		return nil // no size of the steps helps
	}
	dense, behind := listBlocks(c, narrow, 0.95), newBack(empty, c)
	for _, size := range [...]float64{9, 8.7, 8.4, 8} {
		for _, high := range [...]float64{46, 40, 36} {
			boxes[0] = kept(func(w float64) *draw.List {
				if w < leastPlots {
					return nil
				}
				return plots(c.reads, d, r, w, high)
			})
			lists := airy
			if size < 9 {
				lists = dense
			}
			f := newFlow(c, o.Paper, margin)
			if f.sheet(front, below, c, lists, behind, size, sides, boxes) {
				return f
			}
		}
	}
	return nil
}

// leastPlots is the width that two plots side by side want, mm.
const leastPlots = 80

// sheet composes both sides under a head that ends at y, with the lists and what stands behind as set and
// steps of a size, and reports whether all boxes find room.
func (f *flow) sheet(head *draw.List, y float64, c content, lists []*draw.List, b back, size float64, sides int, boxes []filler) bool {
	f.page(0).Place(head, 0, 0, 1)
	listed := f.column(slot{0, margin, y}, 0, f.same, lists)
	steps := runSteps(c, f.steps(), size)
	front := 0
	for at := y; front < len(steps) && at+steps[front].H <= f.bottom; front++ {
		at += steps[front].H + stepGap
	}
	stepped := f.column(slot{0, margin + narrow + gutter, y}, stepGap, f.same, steps[:front])
	wide := f.column(slot{1, margin + b.narrow + gutter, f.top}, stepGap, f.same, runSteps(c, b.wide, size)[front:])
	if front < len(steps) {
		wide.y += apart
	}
	wide = f.column(wide, 0, f.same, b.figures[:1])
	panel := f.column(slot{1, margin, f.top}, 4.5, f.same, b.panel)
	if len(f.pages) > 2 {
		return false
	}
	gaps := []gap{{listed, narrow}, {stepped, f.steps()}, {panel, b.narrow}, {wide, b.wide}}
	if sides > 2 {
		gaps = append(gaps, gap{slot{2, margin, f.top}, f.w - 2*margin})
	}
	return f.share(gaps, boxes)
}

const apart = 6.0 // between boxes, mm

// share puts each box into a gap so that all have room, and reports whether they
// do.
func (f *flow) share(gaps []gap, boxes []filler) bool {
	if len(boxes) == 0 {
		return true
	}
	for i := range gaps {
		g := &gaps[i]
		b := boxes[0](g.w)
		above := apart
		if g.y == f.top {
			above = 0
		}
		if b == nil || g.y+above+b.H > f.bottom {
			continue
		}
		was := g.y
		g.y += above + b.H
		if f.share(gaps, boxes[1:]) {
			f.page(g.page).Place(b, g.x, was+above, 1)
			return true
		}
		g.y = was
	}
	return false
}

// numberHigh is the height of a step's number, mm.
const numberHigh = 3.6

// stepGap lies between steps whose titles run in, mm.
const stepGap = 1.9

// runSteps are the numbered steps, each title the first words of its text.
func runSteps(c content, w, size float64) []*draw.List {
	const indent = 8.8
	st := typeset.Type(draw.Sans, size, ink)
	lead := size * bodyLead / 9
	var out []*draw.List
	for i, k := range c.steps {
		p := typeset.Paragraph(w-indent, lead, typeset.Run{Text: k.Title + ". ", Style: st.Bold()}, typeset.Run{Text: withBlank(k.Text, c.blanks[i]), Style: st})
		block := &draw.List{W: w, H: max(p.H, numberHigh)} // a step of one line is no lower than its number
		typeset.Write(block, 0, face.CapHeight*13*typeset.Point*0.93, typeset.Type(draw.SerifBold, 13, coral), fmt.Sprint(i+1))
		tick(block, indent-tickMM-1.1, st.Cap(), tickMM)
		block.Place(p, indent, 0, 1)
		if i == 0 {
			block = underHead(w, block)
		}
		out = append(out, block)
	}
	return out
}
