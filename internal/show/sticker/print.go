package sticker

import (
	"math"

	"ripplewright/internal/food/onpack"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/typeset"
)

// Print is how labels go to paper.
type Print struct {
	Sheet     onpack.Sheet // its label size is that of the label; WidthMM 0: each label is a page of its size
	FirstFree int          // the first place of a sheet to be used, from 0
	Copies    int          // how many labels, 1 or more
}

// Sizes of what is printed beside a label, mm.
const (
	edgeMM  = 6.0
	checkMM = 50.0 // a bar to check the scale of the print by
)

var hair = draw.Stroke{Width: 0.1, Colour: draw.RGB(0x9a9a9a)}

// Piece returns the label as one piece: a wrap with its overlap, on a cone a sector
// of a ring, else patches side by side; hairlines show where to cut.
func Piece(c Content, faces []Face) *draw.List {
	switch {
	case !faces[0].Wrap:
		return patches(faces)
	case c.Tub.TopMM != c.Tub.BottomMM:
		return sector(c.Tub, faces)
	}
	p := &draw.List{}
	for _, f := range faces {
		if f.Wrap {
			p.Place(f.list(true), p.W, 0, 1)
			p.W, p.H = p.W+f.WidthMM, f.HeightMM
		}
	}
	outline(p, draw.Rect{X0: p.W, Y0: 0, X1: p.W + overlapMM, Y1: p.H})
	p.W += overlapMM
	return withLid(p, faces)
}

// withLid puts the lid's label, where there is one, at the right of a wrap.
func withLid(p *draw.List, faces []Face) *draw.List {
	if lid := faces[len(faces)-1]; !lid.Wrap {
		p.Place(lid.list(true), p.W+apartMM, 0, 1)
		p.W, p.H = p.W+apartMM+lid.WidthMM, max(p.H, lid.HeightMM)
	}
	return p
}

// apartMM is how far pieces stand apart.
const apartMM = 4.0

// list is a face, with its edge where it is cut there.
func (f Face) list(cut bool) *draw.List {
	p := &draw.List{W: f.WidthMM, H: f.HeightMM}
	switch {
	case !cut:
	case f.Round:
		p.Marker(draw.Disc, f.WidthMM/2, f.HeightMM/2, f.WidthMM/2, hair)
		p.Marker(draw.Disc, f.WidthMM/2, f.HeightMM/2, f.WidthMM/2-hair.Width, draw.Stroke{Colour: draw.RGB(0xffffff)})
	default:
		outline(p, draw.Rect{X1: f.WidthMM, Y1: f.HeightMM})
	}
	for _, b := range f.Boxes {
		p.Place(b.list, b.At.X0, b.At.Y0, 1)
	}
	return p
}

func patches(faces []Face) *draw.List {
	p := &draw.List{W: -apartMM}
	for _, f := range faces {
		p.W += apartMM
		p.Place(f.list(true), p.W, 0, 1)
		p.W, p.H = p.W+f.WidthMM, max(p.H, f.HeightMM)
	}
	return p
}

// sector lays the faces on the wall of a cone rolled out, each upright where it
// stands, the wide end up; the overlap is at the right.
func sector(t onpack.Tub, faces []Face) *draw.List {
	inner, outer, degrees := t.Sector()
	whole := degrees * math.Pi / 180
	over := overlapMM / outer
	from, to := -whole/2, whole/2+over
	wide := outer
	if whole < math.Pi {
		wide = outer * math.Sin(to)
	}
	low := inner * math.Cos(min(to, math.Pi))
	p := &draw.List{W: 2 * wide, H: outer - low}
	at := func(r, angle float64) draw.Point {
		return draw.Point{X: wide + r*math.Sin(angle), Y: outer - r*math.Cos(angle)}
	}
	const steps = 90
	for i := 0; i <= steps; i++ {
		q := at(outer, from+(to-from)*float64(i)/steps)
		p.To(q.X, q.Y)
	}
	for i := steps; i >= 0; i-- {
		q := at(inner, from+(to-from)*float64(i)/steps)
		p.To(q.X, q.Y)
	}
	first := at(outer, from)
	p.To(first.X, first.Y)
	p.EndStroke(hair)
	a, b := at(inner, whole/2), at(outer, whole/2) // where the overlap begins
	p.To(a.X, a.Y)
	p.To(b.X, b.Y)
	p.EndStroke(hair)
	angle := from
	for _, f := range faces {
		if !f.Wrap {
			continue
		}
		share := f.share
		middle := angle + share*whole/2
		foot := at(inner+edgeOf(t), middle)
		list := f.list(false)
		p.PlaceTurned(list, foot.X, foot.Y, f.WidthMM/2, f.HeightMM, middle)
		angle += share * whole
	}
	return withLid(p, faces)
}

func outline(p *draw.List, r draw.Rect) {
	for _, q := range [][2]float64{{r.X0, r.Y0}, {r.X1, r.Y0}, {r.X1, r.Y1}, {r.X0, r.Y1}, {r.X0, r.Y0}} {
		p.To(q[0], q[1])
	}
	p.EndStroke(hair)
}

// checkBar draws a bar of 50 mm with its words.
func checkBar(p *draw.List, x, y float64) {
	typeset.Fill(p, x, y, checkMM, 0.3, black)
	typeset.Fill(p, x, y-1.2, 0.3, 2.7, black)
	typeset.Fill(p, x+checkMM-0.3, y-1.2, 0.3, 2.7, black)
	typeset.Write(p, x+checkMM+2, y+0.9, typeset.Type(draw.Sans, 6.5, black), "50 mm: print at 100 %")
}

// Draw lays out labels, one a copy, and puts them on paper. Errors: ErrRoom,
// ErrSheet.
func Draw(copies []Content, o Print) ([]*draw.List, error) {
	var pieces []*draw.List
	for _, c := range copies {
		faces, err := Faces(c)
		if err != nil {
			return nil, err
		}
		pieces = append(pieces, Piece(c, faces))
	}
	return Pages(pieces, o)
}

// Pages lays the pieces on paper, one for each copy.
func Pages(pieces []*draw.List, o Print) ([]*draw.List, error) {
	if o.Sheet.WidthMM == 0 {
		var pages []*draw.List
		for _, piece := range pieces {
			p := &draw.List{W: max(piece.W, checkMM+38) + 2*edgeMM, H: piece.H + 2*edgeMM + 6}
			p.Place(piece, edgeMM, edgeMM, 1)
			checkBar(p, edgeMM, piece.H+edgeMM+6)
			pages = append(pages, p)
		}
		return pages, nil
	}
	s := o.Sheet
	s.LabelWidthMM, s.LabelHeightMM = pieces[0].W, pieces[0].H
	columns, rows, _, _ := s.Grid()
	if columns*rows == 0 {
		return nil, flaw.New("%v: a label of %.0f × %.0f mm on a sheet of %.0f × %.0f mm with margins of %.0f mm", ErrSheet, s.LabelWidthMM, s.LabelHeightMM, s.WidthMM, s.HeightMM, s.MarginMM)
	}
	if o.FirstFree < 0 || o.FirstFree >= columns*rows {
		return nil, flaw.New("%v: a sheet has places 1 to %d", ErrSheet, columns*rows)
	}
	var pages []*draw.List
	for i, piece := range pieces {
		page, x, y := s.Place(i, o.FirstFree)
		for len(pages) <= page {
			p := &draw.List{W: s.WidthMM, H: s.HeightMM}
			checkBar(p, max(s.MarginMM, 5), s.HeightMM-max(3, s.MarginMM/2))
			pages = append(pages, p)
		}
		pages[page].Place(piece, x, y, 1)
	}
	return pages, nil
}
