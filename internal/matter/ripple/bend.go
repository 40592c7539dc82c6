package ripple

import "math"

// bound says of each pixel of rows from up to to between which levels it is neither
// phase wholly. It returns the columns of the uneven pixels and their samples' heights,
// and leaves in starts how many each row has.
func (f *Origins) bound(maps []puller, from, to int) (uneven []int32, heights []float32) {
	c, n := f.of, f.Width+1
	slope := 0.6 * float32(c.start.slope)
	var xs, ys []float64
	bends := [2][]float32{make([]float32, n), make([]float32, n)}
	f.bend(from, bends[0])
	for j := from; j < to; j++ {
		f.bend(j+1, bends[1])
		first := len(uneven)
		whole, upto := f.wholePixels(j)
		yMid := c.out.h - (float64(j)+0.5)*f.PixelMM
		for i := 0; i < f.Width; i++ {
			at, nw := j*f.Width+i, j*n+i
			f.inside[at], f.uneven[at] = 1, false
			if i < whole || i >= upto {
				f.inside[at] = c.inside((float64(i)+0.5)*f.PixelMM, yMid, f.PixelMM)
			}
			if f.inside[at] == 0 {
				f.low[at], f.high[at] = -math.MaxFloat32, -math.MaxFloat32
				continue
			}
			if bends[0][i] > unevenMM || bends[0][i+1] > unevenMM {
				edge := i == 0 || j == 0 || i == f.Width-1 || j == f.Height-1
				uneven, f.uneven[at] = append(uneven, int32(i)), f.inside[at] == 1 && !edge
				continue
			}
			// How far the fluid of this pixel lay spread bounds how much its height
			// can differ from the corners'.
			sw := nw + n
			reach := slope * f.span(nw)
			a, b, p, q := f.h[nw], f.h[nw+1], f.h[sw], f.h[sw+1]
			f.low[at], f.high[at] = min(a, b, p, q)-reach, max(a, b, p, q)+reach
		}
		f.starts[j] = len(uneven) - first
		heights, xs, ys = f.sampleUneven(maps, j, uneven[first:], heights, xs, ys)
		bends[0], bends[1] = bends[1], bends[0]
	}
	return uneven, heights
}

// span returns how far apart the fluid of opposite corners of a pixel lay, in mm. nw is
// the pixel's corner at the upper left.
func (f *Origins) span(nw int) float32 {
	ne, sw, se := nw+1, nw+f.Width+1, nw+f.Width+2
	return max(absolute(f.x[nw]-f.x[se])+absolute(f.y[nw]-f.y[se]), absolute(f.x[ne]-f.x[sw])+absolute(f.y[ne]-f.y[sw]))
}

func absolute(v float32) float32 { return math.Float32frombits(math.Float32bits(v) &^ (1 << 31)) }

// bend sets out to how far the origins of row j's corners are from evenly spaced:
// second differences, along the row and across.
func (f *Origins) bend(j int, out []float32) {
	n := f.Width + 1
	row := func(j int) (x, y []float32) {
		j = min(max(j, 0), f.Height) * n
		return f.x[j : j+n], f.y[j : j+n]
	}
	ax, ay := row(j - 1)
	x, y := row(j)
	bx, by := row(j + 1)
	for i := range out {
		p, q := max(i-1, 0), min(i+1, n-1)
		dx, dy := 2*x[i], 2*y[i]
		out[i] = max(absolute(x[p]-dx+x[q])+absolute(y[p]-dy+y[q]), absolute(ax[i]-dx+bx[i])+absolute(ay[i]-dy+by[i]))
	}
}

// wholePixels returns the pixels from and up to which row j lies wholly in the tub.
func (f *Origins) wholePixels(j int) (from, to int) {
	out := f.of.out
	lo1, hi1 := out.span(out.h - float64(j)*f.PixelMM)
	lo2, hi2 := out.span(out.h - float64(j+1)*f.PixelMM)
	return int(math.Ceil(max(lo1, lo2) / f.PixelMM)), int(min(hi1, hi2) / f.PixelMM)
}

// sampleUneven follows samples of row j's uneven pixels back, adds their heights and
// bounds the pixels by them.
func (f *Origins) sampleUneven(maps []puller, j int, columns []int32, heights []float32, xs, ys []float64) ([]float32, []float64, []float64) {
	c, m := f.of, f.samples
	n := m * m
	xs, ys = grown(xs, n*len(columns)), grown(ys, n*len(columns))
	for k, i := range columns {
		for s := 0; s < n; s++ {
			xs[k*n+s] = math.Min((float64(i)+(float64(s%m)+0.5)/float64(m))*f.PixelMM, c.out.w)
			ys[k*n+s] = math.Max(c.out.h-(float64(j)+(float64(s/m)+0.5)/float64(m))*f.PixelMM, 0)
		}
	}
	pull(maps, xs, ys)
	for k, i := range columns {
		lowest, highest := float32(math.MaxFloat32), float32(-math.MaxFloat32)
		for s := k * n; s < (k+1)*n; s++ {
			h := float32(c.start.at(xs[s], ys[s]))
			heights = append(heights, h)
			lowest, highest = min(lowest, h), max(highest, h)
		}
		at := j*f.Width + int(i)
		f.low[at], f.high[at] = lowest-softMM/2, highest+softMM/2
	}
	return heights, xs, ys
}
