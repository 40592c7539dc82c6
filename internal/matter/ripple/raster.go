package ripple

import (
	"context"
	"fmt"
	"math"
	"slices"
	"sync/atomic"
)

// Raster is a cut on square pixels, row 0 at the top of the picture. Numbers and
// pictures are made from it.
type Raster struct {
	Width, Height   int       // pixels
	PixelMM         float64   // mm
	FoamFractions   []float32 // share of each pixel that is foam, 0 to 1, row by row
	InsideFractions []float32 // share of each pixel that lies in the tub, 0 to 1

	cut     *Cut
	out     outline
	view    View
	seed    uint64
	fillMM  float64
	samples int // along each side of an uneven pixel
	maps    []puller
	uneven  []bool    // pixels whose fluid comes from too many places to tell apart
	spare   []float32 // for settle
}

// MinPixels and MaxPixels bound the longer side of a raster.
const (
	MinPixels = 16
	MaxPixels = 1600 // 0.2 GB while it is drawn, measured; it goes with the square
)

// Raster samples the cut at px pixels along its longer side, MinPixels to
// MaxPixels. progress, if not nil, is told the share done, from several goroutines
// and in no strict order. The error is ctx's, or a *FieldError for px.
func (c *Cut) Raster(ctx context.Context, px int, progress func(done float64)) (*Raster, error) {
	r := &Raster{}
	if err := c.sample(ctx, r, px, unevenSamples, progress); err != nil {
		return nil, err
	}
	return r, nil
}

// grown returns a slice of n elements of any values, s if it is long enough.
func grown[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

// sample fills r, whose slices it takes over.
func (c *Cut) sample(ctx context.Context, r *Raster, px, samples int, progress func(done float64)) error {
	if px < MinPixels || px > MaxPixels {
		return &FieldError{"px", float64(px), fmt.Sprintf("%d to %d pixels", MinPixels, MaxPixels)}
	}
	mm := math.Max(c.out.w, c.out.h) / float64(px)
	*r = Raster{
		Width:           int(math.Ceil(c.out.w/mm - 1e-9)),
		Height:          int(math.Ceil(c.out.h/mm - 1e-9)),
		PixelMM:         mm,
		cut:             c,
		out:             c.out,
		view:            c.set.View,
		seed:            c.set.Seed,
		fillMM:          c.set.Tub.HeightMM,
		samples:         samples,
		maps:            c.forPictures(),
		FoamFractions:   r.FoamFractions,
		InsideFractions: r.InsideFractions,
		uneven:          r.uneven,
		spare:           r.spare,
	}
	r.uneven = grown(r.uneven, r.Width*r.Height)
	r.FoamFractions = grown(r.FoamFractions, r.Width*r.Height)
	r.InsideFractions = grown(r.InsideFractions, r.Width*r.Height)

	const band = 50 // rows; neighbours share rows of corners, which both compute
	bands := (r.Height + band - 1) / band
	var done atomic.Int64
	parallel(bands, func(i int) {
		if ctx.Err() != nil {
			return
		}
		c.rasterRows(r, i*band, min((i+1)*band, r.Height))
		if n := done.Add(1); progress != nil {
			progress(float64(n) / float64(bands))
		}
	})
	if err := ctx.Err(); err != nil {
		return err
	}
	r.settle()
	return nil
}

// settle evens out the luck of the samples in uneven pixels, where a filament finer
// than a pixel would look dotted: each gives and takes a share of what differs from
// its uneven neighbours, so the sum stays.
func (r *Raster) settle() {
	if !slices.Contains(r.uneven, true) {
		return
	}
	r.spare = grown(r.spare, len(r.FoamFractions))
	parallel(r.Height, func(j int) {
		row := j * r.Width
		copy(r.spare[row:row+r.Width], r.FoamFractions[row:row+r.Width])
		if j == 0 || j == r.Height-1 {
			return
		}
		for at := row + 1; at < row+r.Width-1; at++ {
			if !r.uneven[at] {
				continue
			}
			for b := -1; b <= 1; b++ {
				for a := -1; a <= 1; a++ {
					if to := at + b*r.Width + a; r.uneven[to] && to%r.Width > 0 && to%r.Width < r.Width-1 && to/r.Width > 0 && to/r.Width < r.Height-1 {
						r.spare[at] += settling[b+1][a+1] * (r.FoamFractions[to] - r.FoamFractions[at])
					}
				}
			}
		}
	})
	r.FoamFractions, r.spare = r.spare, r.FoamFractions
}

// settling is the binomial filter over a pixel and its neighbours.
var settling = [3][3]float32{{1. / 16, 2. / 16, 1. / 16}, {2. / 16, 4. / 16, 2. / 16}, {1. / 16, 2. / 16, 1. / 16}}

// corners is a row of pixel corners: where their fluid came from, in mm, and how
// far that is from evenly spaced.
type corners struct {
	x, y []float64
	bend []float64 // second differences, along the row and across
	f    []float64 // height above the level

	uneven []int     // pixels below the row that need samples of their own…
	sx, sy []float64 // …and the samples
}

func (r *Raster) pull(xs, ys []float64) {
	for _, m := range r.maps {
		m.pull(xs, ys)
	}
}

func (c *Cut) rasterRows(r *Raster, from, to int) {
	n := r.Width + 1
	rows := [3]corners{}
	for k := range rows {
		all := make([]float64, 4*n)
		rows[k] = corners{x: all[:n], y: all[n : 2*n], bend: all[2*n : 3*n], f: all[3*n:]}
	}
	before, above, below := &rows[0], &rows[1], &rows[2]
	c.cornerRow(r, max(from-1, 0), before)
	c.cornerRow(r, from, above)
	for j := from; j < to; j++ {
		c.cornerRow(r, j+1, below)
		for i := range above.bend {
			p, q := max(i-1, 0), min(i+1, n-1)
			x, y := 2*above.x[i], 2*above.y[i]
			bend := math.Abs(above.x[p]-x+above.x[q]) + math.Abs(above.y[p]-y+above.y[q])
			if across := math.Abs(before.x[i]-x+below.x[i]) + math.Abs(before.y[i]-y+below.y[i]); across > bend {
				bend = across
			}
			above.bend[i] = bend
		}
		c.pixelRow(r, j, above, below)
		before, above, below = above, below, before
	}
}

func (c *Cut) cornerRow(r *Raster, j int, k *corners) {
	y := math.Max(c.out.h-float64(j)*r.PixelMM, 0)
	for i := range k.x {
		k.x[i], k.y[i] = math.Min(float64(i)*r.PixelMM, c.out.w), y
	}
	from, to := r.neededCorners(j)
	r.pull(k.x[from:to], k.y[from:to])
	for i := from; i < to; i++ {
		k.f[i] = c.start.at(k.x[i], k.y[i]) - c.level
	}
}

// neededCorners returns from and up to which corner row j belongs to pixels of the
// tub: those within two pixels of it.
func (r *Raster) neededCorners(j int) (from, to int) {
	far := 2 * r.PixelMM
	wide := outline{r.out.w + 2*far, r.out.h + 2*far, r.out.corner + far}
	if r.out.corner == 0 {
		wide.corner = 0
	}
	lo, hi := wide.span(wide.h - far - float64(j)*r.PixelMM)
	if hi <= lo {
		return 0, 0
	}
	return max(int((lo-far)/r.PixelMM), 0), min(int((hi-far)/r.PixelMM)+2, r.Width+1)
}

func (c *Cut) pixelRow(r *Raster, j int, above, below *corners) {
	f0, f1 := above.f, below.f
	yMid := c.out.h - (float64(j)+0.5)*r.PixelMM
	steep := 0.5 * c.start.slope * r.PixelMM
	from, to := r.wholePixels(j)
	uneven := above.uneven[:0]
	for i := 0; i < r.Width; i++ {
		at := j*r.Width + i
		r.InsideFractions[at], r.uneven[at] = 1, false
		if i < from || i >= to {
			r.InsideFractions[at] = c.inside((float64(i)+0.5)*r.PixelMM, yMid, r.PixelMM)
		}
		if r.InsideFractions[at] == 0 {
			r.FoamFractions[at] = 0
			continue
		}
		if above.bend[i] > unevenMM || above.bend[i+1] > unevenMM {
			uneven, r.uneven[at] = append(uneven, i), r.InsideFractions[at] == 1
			continue
		}
		// How far the fluid of this pixel lay spread bounds how much its height
		// can differ from the corners'.
		span := math.Abs(above.x[i]-below.x[i+1]) + math.Abs(above.y[i]-below.y[i+1])
		if other := math.Abs(above.x[i+1]-below.x[i]) + math.Abs(above.y[i+1]-below.y[i]); other > span {
			span = other
		}
		reach := 0.6 * span * c.start.slope
		nw, ne, sw, se := f0[i], f0[i+1], f1[i], f1[i+1]
		switch {
		case nw > reach && ne > reach && sw > reach && se > reach:
			r.FoamFractions[at] = 1
		case nw < -reach && ne < -reach && sw < -reach && se < -reach:
			r.FoamFractions[at] = 0
		default:
			share, rise := planeShare(nw, ne, sw, se)
			if rise < steep || span > flatMM && !c.plane(above, below, i, span, rise) {
				share = c.coverage(above, below, i)
			}
			r.FoamFractions[at] = share
		}
	}
	above.uneven = uneven
	c.sampleUneven(r, j, above)
}

// wholePixels returns the pixels from and up to which row j lies wholly in the tub.
func (r *Raster) wholePixels(j int) (from, to int) {
	lo1, hi1 := r.out.span(r.out.h - float64(j)*r.PixelMM)
	lo2, hi2 := r.out.span(r.out.h - float64(j+1)*r.PixelMM)
	return int(math.Ceil(max(lo1, lo2) / r.PixelMM)), int(min(hi1, hi2) / r.PixelMM)
}

// unevenMM is the second difference of the corners' origins above which what lies
// between them cannot be told from them.
const unevenMM = 3.0

// So many samples along each side of such a pixel are followed back one by one.
const (
	unevenSamples = 2
	plainSamples  = 1 // for a picture that follows a slider
)

// sampleUneven sets the uneven pixels of row j from samples of their own. Each votes
// foam or dense: interpolating would favour the phase that is thicker.
func (c *Cut) sampleUneven(r *Raster, j int, above *corners) {
	m := r.samples
	n := m * m
	xs, ys := grown(above.sx, n*len(above.uneven)), grown(above.sy, n*len(above.uneven))
	above.sx, above.sy = xs, ys
	for k, i := range above.uneven {
		for s := 0; s < n; s++ {
			xs[k*n+s] = math.Min((float64(i)+(float64(s%m)+0.5)/float64(m))*r.PixelMM, c.out.w)
			ys[k*n+s] = math.Max(c.out.h-(float64(j)+(float64(s/m)+0.5)/float64(m))*r.PixelMM, 0)
		}
	}
	r.pull(xs, ys)
	for k, i := range above.uneven {
		const soft = 0.25 // mm of origin
		sum := 0.0
		for s := k * n; s < (k+1)*n; s++ {
			sum += clamp(0.5+(c.start.at(xs[s], ys[s])-c.level)/soft, 0, 1)
		}
		r.FoamFractions[j*r.Width+i] = float32(sum / float64(n))
	}
}

// FoamFraction returns the foam's share of the area of the cut, 0 to 1.
func (r *Raster) FoamFraction() float64 {
	foam, all := 0.0, 0.0
	for i, in := range r.InsideFractions {
		foam += float64(r.FoamFractions[i]) * float64(in)
		all += float64(in)
	}
	return foam / all
}
