package chart

import "math"

// outline puts the coverage of the closed outline into the mask. It adds up,
// along each row, the signed area to the right of every edge; the running sum is
// then how much of each pixel is inside, exactly, for an outline that does not
// cross itself.
func (p *Painter) outline(points []Point, scale float64) {
	if len(points) < 3 {
		return
	}
	w, h := p.img.Rect.Dx(), p.img.Rect.Dy()
	top, foot := math.Inf(1), math.Inf(-1)
	left, right := math.Inf(1), math.Inf(-1)
	for i, a := range points {
		b := points[(i+1)%len(points)]
		if a.Lifts() || b.Lifts() {
			continue
		}
		ax, ay := a.X*scale, a.Y*scale
		top, foot = math.Min(top, ay), math.Max(foot, ay)
		left, right = math.Min(left, ax), math.Max(right, ax)
		p.edge(ax, ay, b.X*scale, b.Y*scale)
	}
	y0, y1 := clampInt(math.Floor(top), 0, h), clampInt(math.Ceil(foot), 0, h)
	x0, x1 := clampInt(math.Floor(left), 0, w), clampInt(math.Ceil(right), 0, w)
	for y := y0; y < y1; y++ {
		acc := p.acc[y*p.stride : y*p.stride+p.stride]
		row := p.mask[y*w : y*w+w]
		sum := float32(0)
		for x := x0; x < x1; x++ {
			sum += acc[x]
			acc[x] = 0
			cover := sum
			if cover < 0 {
				cover = -cover
			}
			row[x] = uint8(255*min(cover, 1) + .5)
		}
		acc[x1] = 0
		if x1+1 < p.stride {
			acc[x1+1] = 0
		}
	}
	if x0 < x1 && y0 < y1 {
		p.touch(x0, y0, x1, y1)
	}
}

// edge adds the area between one edge and the right border to the rows it passes.
func (p *Painter) edge(x0, y0, x1, y1 float64) {
	if y0 == y1 {
		return
	}
	sign := 1.0
	if y0 > y1 {
		x0, y0, x1, y1, sign = x1, y1, x0, y0, -1
	}
	w, h := float64(p.img.Rect.Dx()), p.img.Rect.Dy()
	slope := (x1 - x0) / (y1 - y0)
	for y := clampInt(math.Floor(y0), 0, h); y < h && float64(y) < y1; y++ {
		t, b := math.Max(float64(y), y0), math.Min(float64(y+1), y1)
		xa, xb := x0+(t-y0)*slope, x0+(b-y0)*slope
		if xa > xb {
			xa, xb = xb, xa
		}
		xa, xb = math.Max(0, math.Min(xa, w)), math.Max(0, math.Min(xb, w))
		p.spread(p.acc[y*p.stride:y*p.stride+p.stride], xa, xb, sign*(b-t))
	}
}

// spread adds height d over the pixels xa..xb of one row, such that the running
// sum of acc is the area to the right of the edge.
func (p *Painter) spread(acc []float32, xa, xb, d float64) {
	i, j := int(xa), int(math.Ceil(xb))
	if j <= i+1 { // within one pixel
		mean := (xa+xb)/2 - float64(i)
		acc[i] += float32(d * (1 - mean))
		acc[i+1] += float32(d * mean)
		return
	}
	// The share of d that has been crossed at the right side of pixel x is
	// (x+1-xa)/(xb-xa); its mean over the pixel is the coverage.
	per := 1 / (xb - xa)
	done := 0.0
	for x := i; x <= j; x++ {
		l, r := math.Max(float64(x), xa), math.Min(float64(x+1), xb)
		cover := 1.0
		if r > l {
			cover = per*((l-xa)+(r-xa))/2*(r-l) + (float64(x+1) - r)
		}
		acc[x] += float32(d * (cover - done))
		done = cover
		if x+1 >= len(acc) {
			break
		}
	}
}

func clampInt(v float64, lo, hi int) int {
	if !(v > float64(lo)) {
		return lo
	}
	if v > float64(hi) {
		return hi
	}
	return int(v)
}

// fillBox fills an opaque upright rectangle whose sides lie on pixels, such as a
// background, and reports whether points were one.
func (p *Painter) fillBox(points []Point, c Colour, scale float64) bool {
	if len(points) != 4 || c.A != 255 {
		return false
	}
	a, b := points[0], points[2]
	if points[1] != (Point{b.X, a.Y}) || points[3] != (Point{a.X, b.Y}) {
		return false
	}
	for _, v := range [...]float64{a.X, a.Y, b.X, b.Y} {
		if v*scale != math.Trunc(v*scale) {
			return false
		}
	}
	w, h := p.img.Rect.Dx(), p.img.Rect.Dy()
	x0, x1 := clampInt(math.Min(a.X, b.X)*scale, 0, w), clampInt(math.Max(a.X, b.X)*scale, 0, w)
	y0, y1 := clampInt(math.Min(a.Y, b.Y)*scale, 0, h), clampInt(math.Max(a.Y, b.Y)*scale, 0, h)
	if x0 >= x1 || y0 >= y1 {
		return true
	}
	first := p.img.Pix[y0*p.img.Stride+4*x0 : y0*p.img.Stride+4*x1]
	first[0], first[1], first[2], first[3] = c.R, c.G, c.B, 255
	for n := 4; n < len(first); n *= 2 {
		copy(first[n:], first[:n])
	}
	for y := y0 + 1; y < y1; y++ {
		copy(p.img.Pix[y*p.img.Stride+4*x0:], first)
	}
	return true
}
