package chart

import (
	"math"

	"ripplewright/internal/show/draw"
)

// Contour adds to the open path of d the line where grid has the value level, as
// short segments with lifts between; nothing if there is no such line.
//
// grid is rows of equal length, at least 2 by 2, whose first value is at the top
// left corner of box and last at the bottom right. A cell with an unknown corner
// has no line. Saddles are joined by the mean of their corners.
func Contour(d *draw.List, grid [][]float64, level float64, box draw.Rect) {
	rows := len(grid)
	if rows < 2 || len(grid[0]) < 2 {
		return
	}
	cols := len(grid[0])
	sx, sy := box.Dx()/float64(cols-1), box.Dy()/float64(rows-1)
	for j := 0; j+1 < rows; j++ {
		for i := 0; i+1 < cols; i++ {
			// Corners clockwise from the top left, above or below the level.
			v := [4]float64{grid[j][i] - level, grid[j][i+1] - level, grid[j+1][i+1] - level, grid[j+1][i] - level}
			if math.IsNaN(v[0] + v[1] + v[2] + v[3]) {
				continue
			}
			x, y := box.X0+float64(i)*sx, box.Y0+float64(j)*sy
			corner := [4]draw.Point{{X: x, Y: y}, {X: x + sx, Y: y}, {X: x + sx, Y: y + sy}, {X: x, Y: y + sy}}
			var cut [4]draw.Point
			n := 0
			for k := range v {
				a, b := v[k], v[(k+1)%4]
				if (a < 0) == (b < 0) {
					continue
				}
				f := a / (a - b)
				p, q := corner[k], corner[(k+1)%4]
				cut[n] = draw.Point{X: p.X + (q.X-p.X)*f, Y: p.Y + (q.Y-p.Y)*f}
				n++
			}
			// Top with right and foot with left cut off corners 1 and 3; a saddle
			// whose middle goes with those has corners 0 and 2 cut off instead.
			if n == 4 && (v[0]+v[1]+v[2]+v[3] < 0) != (v[0] < 0) {
				cut[0], cut[1], cut[2], cut[3] = cut[1], cut[2], cut[3], cut[0]
			}
			for k := 0; k+1 < n; k += 2 {
				d.To(cut[k].X, cut[k].Y)
				d.To(cut[k+1].X, cut[k+1].Y)
				d.Lift()
			}
		}
	}
}
