package ripple

import "math"

// subpixels along each side of a pixel that the interface may cross.
const subpixels = 4

// inside returns the share of a pixel that lies in the tub.
func (c *Cut) inside(x, y, mm float64) float32 {
	d := c.out.depth(x, y)
	if d >= mm {
		return 1
	}
	if c.out.corner == 0 { // exactly
		half := mm / 2
		wide := min(x+half, c.out.w) - max(x-half, 0)
		high := min(y+half, c.out.h) - max(y-half, 0)
		return float32(max(wide, 0) * max(high, 0) / (mm * mm))
	}
	return float32(min(max(0.5+d/mm, 0), 1))
}

// flatMM is how far apart the fluid of a pixel may have lain for its height to be
// taken as a plane, on a slope at least: layouts have no details as small.
const flatMM = 0.8

// plane reports whether the height in pixel i, whose corners rise by rise, is a plane
// although its fluid lay spread over span: whether its middle lies between them.
func (c *Cut) plane(above, below *corners, i int, span, rise float64) bool {
	if span > 2.5*flatMM {
		return false
	}
	x := (above.x[i] + above.x[i+1] + below.x[i] + below.x[i+1]) / 4
	y := (above.y[i] + above.y[i+1] + below.y[i] + below.y[i+1]) / 4
	mean := (above.f[i] + above.f[i+1] + below.f[i] + below.f[i+1]) / 4
	return math.Abs(c.start.at(x, y)-c.level-mean) < 0.02*rise
}

// planeShare returns the share of a unit square where the plane through the means
// of its corners' heights a, b above c, d is positive, and the plane's rise.
func planeShare(a, b, c, d float64) (share float32, rise float64) {
	mid := (a + b + c + d) / 4
	p, q := math.Abs(b+d-a-c)/2, math.Abs(c+d-a-b)/2
	if p < q {
		p, q = q, p
	}
	m := math.Abs(mid)
	same := 1.0 // share of the sign of mid
	switch {
	case m >= (p+q)/2:
	case m <= (p-q)/2:
		same = 0.5 + m/p
	default:
		rest := (p+q)/2 - m
		same = 1 - rest*rest/(2*p*q)
	}
	if mid < 0 {
		same = 1 - same
	}
	return float32(same), p + q
}

// clamp returns v, or the nearer of lo and hi. Unlike min and max it is not made to
// pass on what is not a number, and quicker.
func clamp[T float32 | float64](v, lo, hi T) T {
	if v < lo {
		return lo
	}
	if v > hi {
		return hi
	}
	return v
}

// coverage returns the share of pixel i that is foam. Within the pixel the map is
// taken as bilinear, so a filament thinner than the pixel still counts.
func (c *Cut) coverage(above, below *corners, i int) float32 {
	var f [subpixels][subpixels]float64
	for b := 0; b < subpixels; b++ {
		t := (float64(b) + 0.5) / subpixels
		x0, x1 := above.x[i]+t*(below.x[i]-above.x[i]), above.x[i+1]+t*(below.x[i+1]-above.x[i+1])
		y0, y1 := above.y[i]+t*(below.y[i]-above.y[i]), above.y[i+1]+t*(below.y[i+1]-above.y[i+1])
		dx, dy := (x1-x0)/subpixels, (y1-y0)/subpixels
		x, y := x0+dx/2, y0+dy/2
		for a := 0; a < subpixels; a++ {
			f[b][a] = c.start.at(x, y) - c.level
			x, y = x+dx, y+dy
		}
	}
	// Soften each sample by the change of height over its own subpixel.
	change := 1e-12
	for b := 0; b < subpixels; b++ {
		for a := 1; a < subpixels; a++ {
			change += math.Abs(f[b][a]-f[b][a-1]) + math.Abs(f[a][b]-f[a-1][b])
		}
	}
	per := subpixels * (subpixels - 1) / change
	sum := 0.0
	for b := range f {
		for a := range f[b] {
			sum += clamp(0.5+f[b][a]*per, 0, 1)
		}
	}
	return float32(sum / (subpixels * subpixels))
}
