package onpack

import "math"

// Sheet is a sheet of labels on paper, mm.
type Sheet struct {
	WidthMM, HeightMM           float64
	MarginMM, GapMM             float64
	LabelWidthMM, LabelHeightMM float64 // of a round one its diameter both ways
}

// PaperMM are the sizes of paper by name, mm: ISO 216 and US Letter, from memory.
var PaperMM = map[string][2]float64{"a4": {210, 297}, "a5": {148, 210}, "letter": {215.9, 279.4}}

// Grid returns how many labels stand beside and above each other, and the upper
// left corner of the first: the grid is centred. One that does not fit at all
// leaves 0.
func (s Sheet) Grid() (columns, rows int, x0MM, y0MM float64) {
	n := func(paper, size float64) int {
		return max(0, int(math.Floor((paper-2*s.MarginMM+s.GapMM)/(size+s.GapMM)+1e-9)))
	}
	columns, rows = n(s.WidthMM, s.LabelWidthMM), n(s.HeightMM, s.LabelHeightMM)
	first := func(paper, size float64, n int) float64 {
		return (paper - float64(n)*size - float64(n-1)*s.GapMM) / 2
	}
	return columns, rows, first(s.WidthMM, s.LabelWidthMM, columns), first(s.HeightMM, s.LabelHeightMM, rows)
}

// Place returns the upper left corner of label i, from 0, counted along the
// rows from the first free place, and the page it stands on, from 0.
func (s Sheet) Place(i, firstFree int) (page int, xMM, yMM float64) {
	columns, rows, x0, y0 := s.Grid()
	i += firstFree
	each := columns * rows
	page, i = i/each, i%each
	return page, x0 + float64(i%columns)*(s.LabelWidthMM+s.GapMM), y0 + float64(i/columns)*(s.LabelHeightMM+s.GapMM)
}
