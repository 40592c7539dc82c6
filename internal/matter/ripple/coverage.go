package ripple

import (
	"math"
	"slices"
	"sync"

	"ripplewright/internal/matter/num"
)

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

// plane reports whether the height in a pixel, whose corners rise by rise, is a plane
// although its fluid lay spread over span mm: whether its middle lies between them.
func (f *Origins) plane(nw int, span, rise float64) bool {
	if span > 2.5*flatMM {
		return false
	}
	ne, sw, se := nw+1, nw+f.Width+1, nw+f.Width+2
	x, y := (f.x[nw]+f.x[ne]+f.x[sw]+f.x[se])/4, (f.y[nw]+f.y[ne]+f.y[sw]+f.y[se])/4
	mean := (f.h[nw] + f.h[ne] + f.h[sw] + f.h[se]) / 4
	return math.Abs(f.of.start.at(float64(x), float64(y))-float64(mean)) < 0.02*rise
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

// part is a pixel's heights at its subpixels, each as so many 255ths of the way from low
// to high, and how far about a level a subpixel is neither phase wholly.
type part struct {
	low, step float32
	per       float32 // one over that distance
	at        [subpixels * subpixels]uint8
}

// part follows a pixel's subpixels back. Within the pixel the map is taken as bilinear,
// so a filament thinner than the pixel still counts.
func (f *Origins) part(nw int) part {
	ne, sw, se := nw+1, nw+f.Width+1, nw+f.Width+2
	var h [subpixels][subpixels]float32
	for b := range h {
		t := (float32(b) + 0.5) / subpixels
		x0, x1 := f.x[nw]+t*(f.x[sw]-f.x[nw]), f.x[ne]+t*(f.x[se]-f.x[ne])
		y0, y1 := f.y[nw]+t*(f.y[sw]-f.y[nw]), f.y[ne]+t*(f.y[se]-f.y[ne])
		dx, dy := (x1-x0)/subpixels, (y1-y0)/subpixels
		x, y := x0+dx/2, y0+dy/2
		for a := range h[b] {
			h[b][a] = float32(f.of.start.at(float64(x), float64(y)))
			x, y = x+dx, y+dy
		}
	}
	// Soften each sample by the change of height over its own subpixel.
	change, low, high := float32(1e-6), h[0][0], h[0][0]
	for b := range h {
		for a := range h[b] {
			low, high = min(low, h[b][a]), max(high, h[b][a])
			if a > 0 {
				change += absolute(h[b][a]-h[b][a-1]) + absolute(h[a][b]-h[a-1][b])
			}
		}
	}
	p := part{low: low, step: (high - low) / 255, per: subpixels * (subpixels - 1) / change}
	for b := range h {
		for a := range h[b] {
			if p.step > 0 {
				p.at[b*subpixels+a] = uint8((h[b][a]-low)/p.step + 0.5)
			}
		}
	}
	return p
}

// bounds returns between which levels the pixel is neither phase wholly.
func (p *part) bounds() (low, high float32) {
	soft := 0.5 / p.per
	return p.low - soft, p.low + 255*p.step + soft
}

// above returns the share of the pixel above the level.
func (p *part) above(level float32) float32 {
	first, step := 0.5+(p.low-level)*p.per, p.step*p.per
	sum := float32(0)
	for _, n := range p.at {
		sum += clamp(first+float32(n)*step, 0, 1)
	}
	return sum / (subpixels * subpixels)
}

// refine follows the subpixels of all pixels that are no planes, so that the field can be
// cut at one level after another without going back to the layout.
func (f *Origins) refine() {
	f.amid = amid(f.uneven, f.Width)
	f.fine = make([]int32, f.Width*f.Height)
	found := make([]*[]part, (f.Height+stretch-1)/stretch)
	num.Parallel(len(found), func(k int) {
		found[k] = partPool.Get().(*[]part)
		parts := slices.Grow((*found[k])[:0], stretch*f.Width/2) // about as many as there are
		for j := k * stretch; j < min((k+1)*stretch, f.Height); j++ {
			parts = f.refineRow(j, parts)
		}
		*found[k] = parts
	})
	all := 0
	for _, parts := range found {
		all += len(*parts)
	}
	f.parts = make([]part, 0, all)
	for k, parts := range found {
		from, to := k*stretch*f.Width, min((k+1)*stretch, f.Height)*f.Width
		for at := from; at < to; at++ {
			if f.fine[at] >= 0 {
				f.fine[at] += int32(len(f.parts))
			}
		}
		f.parts = append(f.parts, *parts...)
		partPool.Put(parts)
	}
}

// partPool has what parts are gathered in until their number is known.
var partPool = sync.Pool{New: func() any { return new([]part) }}

// refineRow adds the parts of row j to parts, and sets fine to where they are in it.
func (f *Origins) refineRow(j int, parts []part) []part {
	for i := 0; i < f.Width; i++ {
		at, nw := j*f.Width+i, j*(f.Width+1)+i
		f.fine[at] = -1
		if f.isUneven(j, i) {
			f.fine[at] = sampled
			continue
		}
		if f.inside[at] == 0 {
			continue
		}
		if flat, _ := f.flat(nw, 0); !flat {
			p := f.part(nw)
			f.low[at], f.high[at] = p.bounds()
			f.fine[at] = int32(len(parts))
			parts = append(parts, p)
		}
	}
	return parts
}

// sampled marks a pixel whose share its own samples tell.
const sampled = -2

// isUneven reports whether pixel i of row j is sampled for itself.
func (f *Origins) isUneven(j, i int) bool {
	_, found := slices.BinarySearch(f.columns[f.starts[j]:f.starts[j+1]], int32(i))
	return found
}
