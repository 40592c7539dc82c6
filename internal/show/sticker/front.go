package sticker

import (
	"cmp"
	"math"
	"slices"

	"ripplewright/internal/food/onpack"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/draw/typeset"
)

const (
	point   = typeset.Point
	xHeight = face.XHeight
)

var black = draw.RGB(0)

// bottomShare of a US principal display panel holds the net quantity: 21 CFR
// 101.7(f).
const bottomShare = 0.3

// The name's largest type, and by how much the maker's own name for the flavour
// may be larger: twice, so that the food's name is half the height of the largest
// print (21 CFR 101.3(d) by practice, from memory).
const (
	largestName = 20.0
	namePerMM   = 0.125 // the largest on a face of so many mm
	brandOver   = 1.9
	nameStep    = 0.25
	frontAir    = 0.08 // kept free on each side of the names, of their room
	dashMM      = 12.0 // the rule between the two names
)

// names are the sizes that are tried for a name on a face w mm wide, pt.
func names(w, least float64) []float64 {
	var out []float64
	for pt := max(min(largestName, namePerMM*w), size(least)); pt > size(least); pt -= nameStep {
		out = append(out, pt)
	}
	return append(out, size(least))
}

// front lays out the front: name and net quantity in one field of vision, the
// quantity within the bottom 30 %.
func (c *Content) front(on area) Face {
	f := c.frontOf(on)
	slices.SortStableFunc(f.Boxes, func(a, b Box) int { return cmp.Compare(a.At.Y0, b.At.Y0) }) // in the order of reading
	return f
}

// lid lays out the lid: the name, and the date where there is one.
func (c *Content) lid() Face {
	least, rule := c.least()
	across, along := c.Tub.TopMM-2*lidEdgeMM, c.Tub.TopMM-2*lidEdgeMM
	w, h := across/math.Sqrt2, along/math.Sqrt2 // the square in a circle
	if c.Tub.Box() {
		across, along = c.Tub.LengthMM-2*lidEdgeMM, c.Tub.BreadthMM-2*lidEdgeMM
		w, h = across-2*marginMM, along-2*marginMM
	}
	f := Face{Name: "lid", WidthMM: across, HeightMM: along, LeastMM: least, Round: !c.Tub.Box()}
	left, bottom := (across-w)/2, (along+h)/2
	if e, ok := c.element(onpack.Date); ok {
		for _, pt := range sizes(least) {
			if list := c.words(e, w, pt); list.H <= h/2 && !slices.ContainsFunc(e.Parts, func(p onpack.Part) bool { return wider(p.Runs[0].Text, typeset.Type(draw.Sans, pt, black), w) }) {
				list = centred(typeset.Wrapped([]typeset.Run{{Text: e.Text, Style: typeset.Type(draw.Sans, pt, black)}}, w), w, textLead*pt)
				bottom -= list.H
				f.put(Box{Key: onpack.Date, LetterMM: pt * point * xHeight, LeastMM: least, Rule: rule, list: list}, left, bottom)
				break
			}
		}
	}
	e, ok := c.element(onpack.Name)
	if !ok {
		return f
	}
	top := (along - h) / 2
	for _, brand := range []bool{c.Brand != "", false} {
		for _, pt := range names(across, least) {
			if list, wide := c.title(e, pt, w, brand); list.H <= bottom-gapMM-top && !wide {
				f.put(Box{Key: onpack.Name, LetterMM: pt * point * xHeight, LeastMM: least, Rule: rule, list: list}, left, top+(bottom-gapMM-top-list.H)/2)
				return f
			}
		}
	}
	f.Why = "the name has no room at letters of the height asked for"
	return f
}

func (c *Content) frontOf(on area) Face {
	least, rule := c.least()
	f := Face{Name: on.name, WidthMM: on.w, HeightMM: on.h, LeastMM: least}
	w := on.w - 2*marginMM
	bottom := on.h - marginMM
	if e, ok := c.element(onpack.Quantity); ok {
		b := c.quantity(e, w)
		top := bottom - b.list.H
		if b.list.W > w+1e-9 || b.list.H > bottomShare*on.h-marginMM && c.bottomOnly() || top < marginMM {
			f.Why = "the net quantity has no room at figures of the height asked for"
			return f
		}
		f.put(b, marginMM+(w-b.list.W)/2, top)
		bottom = top - gapMM
		if c.Place == onpack.US { // clear space of the letters' height, the uniform rule § 29
			bottom -= max(0, b.LetterMM-gapMM)
		}
	}
	if list := c.traffic(w, least); list != nil && bottom-list.H > marginMM {
		f.put(Box{Key: onpack.Nutrition, LetterMM: least, LeastMM: least, Rule: rule, list: list}, marginMM+(w-list.W)/2, bottom-list.H)
		bottom -= list.H + gapMM
	}
	e, ok := c.element(onpack.Name)
	if !ok {
		return f
	}
	list, pt, side := c.fitTitle(e, on.w, bottom-marginMM, least)
	if list == nil {
		f.Why = "the name has no room at letters of the height asked for"
		return f
	}
	f.put(Box{Key: onpack.Name, LetterMM: pt * point * xHeight, LeastMM: least, Rule: rule, list: list}, side, marginMM+(bottom-marginMM-list.H)*nameHigh)
	return f
}

// fitTitle sets the names on a face w mm wide in a room so high: with air around
// them, else without, else without the maker's own; nil where nothing fits.
func (c *Content) fitTitle(e onpack.Element, w, room, least float64) (list *draw.List, pt, side float64) {
	for _, brand := range []bool{c.Brand != "", false} {
		for _, air := range []float64{frontAir, 0} {
			side = max(marginMM, air*w)
			for _, pt := range names(w, least) {
				if list, wide := c.title(e, pt, w-2*side, brand); list.H <= room*(1-2*air) && !wide {
					return list, pt, side
				}
			}
		}
	}
	return nil, 0, 0
}

// title sets the name in its languages at a size, over it the maker's own, and
// reports whether a word is wider than w.
func (c *Content) title(e onpack.Element, pt, w float64, brand bool) (list *draw.List, wide bool) {
	var parts []*draw.List
	if brand {
		st := typeset.Type(draw.SerifBold, brandOver*pt, black)
		parts = append(parts, centred(balanced(typeset.Plain(c.Brand), st, w), w, 1.1*st.Size))
		wide = wide || wider(c.Brand, st, w)
		dash := &draw.List{W: w, H: 0.3}
		typeset.Fill(dash, (w-dashMM)/2, 0, dashMM, 0.3, draw.RGB(0x7a7a7a))
		parts = append(parts, dash)
	}
	st := typeset.Type(draw.Sans, pt, black)
	if c.Place == onpack.US {
		st = st.Bold() // 21 CFR 101.3(d)
	}
	for _, p := range e.Parts {
		text := typeset.Plain(p.Runs[0].Text)
		parts = append(parts, centred(balanced(text, st, w), w, 1.25*pt))
		wide = wide || wider(text, st, w)
	}
	return typeset.Stack(0.5*pt*point+0.8, parts...), wide
}

// nameHigh is where the names stand in their room: a little over its middle.
const nameHigh = 0.45

// smallPanelIn2 is up to which principal display panel the quantity may stand
// anywhere on it: 21 CFR 101.7(f), from memory.
const smallPanelIn2 = 5

// bottomOnly reports whether the quantity must stand in the bottom 30 %.
func (c *Content) bottomOnly() bool {
	return c.Place == onpack.US && c.Tub.PanelIn2() > smallPanelIn2
}

// balanced breaks a text into as few lines as w asks for, all about as long.
func balanced(s string, st typeset.Style, w float64) [][]typeset.Run {
	run := []typeset.Run{{Text: s, Style: st}}
	lines := typeset.Wrapped(run, w)
	narrow, broad := w/2, w
	for range 10 {
		middle := (narrow + broad) / 2
		if l := typeset.Wrapped(run, middle); len(l) > len(lines) || wider(s, st, middle) {
			narrow = middle
		} else {
			broad, lines = middle, l
		}
	}
	return lines
}

// quantity sets the net quantity in one line, its figures as high as the rule
// asks: capitals in the US.
func (c *Content) quantity(e onpack.Element, w float64) Box {
	mm, rule := c.quantityMM()
	text := ""
	for i, p := range e.Parts {
		if i > 0 {
			text += "  "
		}
		text += p.Runs[0].Text
	}
	var list *draw.List
	height := mm
	for _, over := range []float64{1.15, 1} {
		if c.Place == onpack.US { // whose small letters make it large already
			over = 1
		}
		height = mm * over
		st := typeset.Type(draw.SansBold, height/face.CapHeight/point, black)
		if c.Place == onpack.US { // the smallest letters of "mL" are as high as the rule asks too
			st.Size = height / xHeight / point
		}
		list = typeset.OneLine([]typeset.Run{{Text: text, Style: st}})
		if list.W <= w {
			break
		}
	}
	if c.Place == onpack.US && list.W > w { // the metric beside or below: on a line of its own
		height = mm
		st := typeset.Type(draw.SansBold, height/xHeight/point, black)
		list = centred(typeset.Wrapped([]typeset.Run{{Text: text, Style: st}}, w), w, 1.25*st.Size)
	}
	return Box{Key: onpack.Quantity, LetterMM: height, LeastMM: mm, Rule: rule, list: list}
}

// centred sets lines about the middle of w, lead pt apart.
func centred(lines [][]typeset.Run, w, lead float64) *draw.List {
	out := &draw.List{W: w}
	for i, line := range lines {
		l := typeset.OneLine(line)
		if i == 0 {
			out.H = l.H
		} else {
			out.H += lead * point
		}
		out.Place(l, (w-l.W)/2, out.H-l.H, 1)
	}
	out.H += 0.22 * lead * point // what hangs below the last line
	return out
}

// put places a box on the face.
func (f *Face) put(b Box, x, y float64) {
	b.At = draw.Rect{X0: x, Y0: y, X1: x + b.list.W, Y1: y + b.list.H}
	f.Boxes = append(f.Boxes, b)
}

// wider reports whether a word of s is wider than w.
func wider(s string, st typeset.Style, w float64) bool {
	for _, word := range fields(s) {
		if st.Width(word) > w {
			return true
		}
	}
	return false
}
