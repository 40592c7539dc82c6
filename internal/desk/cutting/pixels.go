package cutting

import (
	"image"
	"math"
	"time"

	"golang.org/x/image/draw"

	"ripplewright/internal/matter/ripple"
)

// coarseTime is how long coarse pictures should take: a slider that moves 20 times
// a second is followed.
const coarseTime = 40 * time.Millisecond

// coarsePixels is how many along the longer side this machine draws in coarseTime,
// by the last time.
func (c *Cutter) coarsePixels(q Job) int {
	if c.pace == 0 {
		return q.Coarse
	}
	px := math.Sqrt(coarseTime.Seconds() / c.pace / float64(len(q.Cuts)))
	return max(q.Coarse, min(int(px), q.Sharp/2))
}

// screenPixels is the longer side of picture i on the screen, Sharp if not known.
func (q Job) screenPixels(i int) int {
	if i >= len(q.Fit) {
		return q.Sharp
	}
	return max(q.Fit[i].X, q.Fit[i].Y, ripple.MinPixels)
}

// sharpPixels is the longer side of the sharp picture i: of one that nobody measures as much
// as the screen needs, in steps, so that a window which changes a little finds it drawn.
func (q Job) sharpPixels(i int) int {
	const step = 100
	if i == 0 {
		return q.Sharp
	}
	return min(q.Sharp, (q.screenPixels(i)*3/2+step-1)/step*step)
}

// fit brings picture i to its size on the screen, so that showing it is no work.
func (q Job) fit(im *image.RGBA, i int) *image.RGBA {
	if i >= len(q.Fit) || im.Bounds().Size() == q.Fit[i] {
		return im
	}
	by := draw.CatmullRom
	if im.Bounds().Dx() < q.Fit[i].X {
		by = &softly
	}
	out := image.NewRGBA(image.Rectangle{Max: q.Fit[i]})
	by.Scale(out, out.Bounds(), im, im.Bounds(), draw.Src, nil)
	return out
}

// softly enlarges by the cubic B-spline: a coarse picture looks out of focus, not
// like crumbs.
var softly = draw.Kernel{Support: 2, At: func(t float64) float64 {
	if t < 1 {
		return (4 + t*t*(3*t-6)) / 6
	}
	return (2 - t) * (2 - t) * (2 - t) / 6
}}
