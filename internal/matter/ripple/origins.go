package ripple

import (
	"context"
	"fmt"
	"math"
	"sync/atomic"

	"ripplewright/internal/matter/num"
)

// Origins are a stirred tub on square pixels before anyone says how much of it is foam:
// at the corners of each pixel the height that the layout had where the fluid there
// came from. All that the strokes do is in them, and all that costs time; a share of
// foam is a level at which it is cut. They do not change and may be shared.
type Origins struct {
	Width, Height int     // pixels
	PixelMM       float64 // mm

	of      *Cut // one cut of these strokes, whose level does not count
	samples int  // along each side of an uneven pixel

	// Corners of pixels, row by row, Width+1 a row: where their fluid came from, in
	// mm, which is not kept once all pixels are refined, and its height there. Those far
	// outside the tub are not set.
	x, y, h []float32

	// Below low a pixel is all foam at that level, above high it has none.
	low, high []float32
	inside    []float32 // share of each pixel that lies in the tub

	// Row j's pixels whose fluid comes from too many places to tell apart are
	// columns[starts[j]:starts[j+1]], with the heights of their samples. Uneven are
	// those of them that lie wholly in the tub, and not at the picture's edge.
	uneven  []bool
	starts  []int
	columns []int32
	heights []float32

	// fine, if not nil, says of each pixel where in parts its heights are, or sampled where
	// they are its samples': see refine.
	fine  []int32
	parts []part
	amid  []bool // uneven, as are the eight pixels about it; nil: not known
}

// Origins follows the fluid back through the strokes at px pixels along the cut's
// longer side, MinPixels to MaxPixels. progress, if not nil, is told the share done,
// from several goroutines and in no strict order. The error is ctx's, or a
// *FieldError for px.
func (c *Cut) Origins(ctx context.Context, px int, progress func(done float64)) (*Origins, error) {
	// Where the fluid came from is of use only until the heights are known.
	b := benches.Get().(*bench)
	defer benches.Put(b)
	f := &Origins{x: b.field.x, y: b.field.y}
	err := c.follow(ctx, f, px, unevenSamples, progress)
	b.field.x, b.field.y = f.x, f.y
	if err != nil {
		return nil, err
	}
	f.refine()
	f.x, f.y = nil, nil
	// The tables of the strokes are of no use to it any more.
	f.of = &Cut{stirred: &stirred{out: c.out, maps: c.maps, start: c.start}, set: c.set, level: c.level}
	return f, nil
}

// Raster cuts the field so that fraction of the tub, 0 to 1, is foam. The error wraps
// a *FieldError.
func (f *Origins) Raster(fraction float64) (*Raster, error) {
	c, err := f.of.WithFoam(fraction)
	if err != nil {
		return nil, err
	}
	return f.at(c), nil
}

// at cuts the field as c is.
func (f *Origins) at(c *Cut) *Raster {
	r := &Raster{}
	f.cut(c, r)
	r.spare = nil
	return r
}

// grown returns a slice of n elements of any values, s if it is long enough.
func grown[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

// joined returns all parts in one slice, all if it is long enough.
func joined[T any](all []T, parts [][]T) []T {
	n := 0
	for _, p := range parts {
		n += len(p)
	}
	all = grown(all, n)[:0]
	for _, p := range parts {
		all = append(all, p...)
	}
	return all
}

// unevenMM is the second difference of the corners' origins above which what lies
// between them cannot be told from them.
const unevenMM = 3.0

// So many samples along each side of such a pixel are followed back one by one.
const (
	unevenSamples = 2
	plainSamples  = 1 // for a picture that follows a slider
)

// softMM is how far about the level a sample of an uneven pixel is neither phase
// wholly, in mm of origin.
const softMM = 0.25

// stretch is how many rows are followed at a time.
const stretch = 25

// follow fills f, whose slices it takes over.
func (c *Cut) follow(ctx context.Context, f *Origins, px, samples int, progress func(done float64)) error {
	if px < MinPixels || px > MaxPixels {
		return &FieldError{"px", float64(px), fmt.Sprintf("%d to %d pixels", MinPixels, MaxPixels)}
	}
	f.PixelMM = math.Max(c.out.w, c.out.h) / float64(px)
	f.Width = int(math.Ceil(c.out.w/f.PixelMM - 1e-9))
	f.Height = int(math.Ceil(c.out.h/f.PixelMM - 1e-9))
	f.of, f.samples = c, samples
	corners, pixels := (f.Width+1)*(f.Height+1), f.Width*f.Height
	f.x, f.y, f.h = grown(f.x, corners), grown(f.y, corners), grown(f.h, corners)
	f.low, f.high, f.inside = grown(f.low, pixels), grown(f.high, pixels), grown(f.inside, pixels)
	f.uneven, f.starts = grown(f.uneven, pixels), grown(f.starts, f.Height+1)

	maps := c.forPictures()
	pieces := (f.Height + stretch) / stretch
	var done atomic.Int64
	step := func() {
		if n := done.Add(1); progress != nil {
			progress(float64(n) / float64(2*pieces))
		}
	}
	num.Parallel(pieces, func(i int) {
		if ctx.Err() == nil {
			f.followCorners(maps, i*stretch, min((i+1)*stretch, f.Height+1))
			step()
		}
	})
	uneven := make([][]int32, pieces)
	heights := make([][]float32, pieces)
	num.Parallel(pieces, func(i int) {
		if ctx.Err() == nil {
			uneven[i], heights[i] = f.bound(maps, i*stretch, min((i+1)*stretch, f.Height))
			step()
		}
	})
	if err := ctx.Err(); err != nil {
		return err
	}
	f.columns, f.heights = joined(f.columns, uneven), joined(f.heights, heights)
	// bound has left each row's number at its place.
	n := 0
	for j, in := range f.starts[:f.Height] {
		f.starts[j] = n
		n += in
	}
	f.starts[f.Height] = n
	return nil
}

// followCorners follows the corners of rows from up to to back.
func (f *Origins) followCorners(maps []puller, from, to int) {
	c := f.of
	xs, ys := make([]float64, f.Width+1), make([]float64, f.Width+1)
	for j := from; j < to; j++ {
		y := math.Max(c.out.h-float64(j)*f.PixelMM, 0)
		lo, hi := f.neededCorners(j)
		for i := lo; i < hi; i++ {
			xs[i], ys[i] = math.Min(float64(i)*f.PixelMM, c.out.w), y
		}
		pull(maps, xs[lo:hi], ys[lo:hi])
		row := j * (f.Width + 1)
		for i := lo; i < hi; i++ {
			f.x[row+i], f.y[row+i], f.h[row+i] = float32(xs[i]), float32(ys[i]), float32(c.start.at(xs[i], ys[i]))
		}
	}
}

func pull(maps []puller, xs, ys []float64) {
	for _, m := range maps {
		m.pull(xs, ys)
	}
}

// neededCorners returns from and up to which corner row j belongs to pixels of the
// tub: those within two pixels of it.
func (f *Origins) neededCorners(j int) (from, to int) {
	out, far := f.of.out, 2*f.PixelMM
	wide := outline{out.w + 2*far, out.h + 2*far, out.corner + far}
	if out.corner == 0 {
		wide.corner = 0
	}
	lo, hi := wide.span(wide.h - far - float64(j)*f.PixelMM)
	if hi <= lo {
		return 0, 0
	}
	return max(int((lo-far)/f.PixelMM), 0), min(int((hi-far)/f.PixelMM)+2, f.Width+1)
}

// cut fills r, whose slices it takes over, with what of the field is foam in c.
func (f *Origins) cut(c *Cut, r *Raster) {
	*r = Raster{
		Width: f.Width, Height: f.Height, PixelMM: f.PixelMM,
		FoamFractions:   grown(r.FoamFractions, f.Width*f.Height),
		InsideFractions: f.inside,
		cut:             c, out: c.out, view: c.set.View, seed: c.set.Seed, fillMM: c.set.Tub.HeightMM,
		uneven: f.uneven, amid: f.amid,
		spare: r.spare,
	}
	pieces := (f.Height + stretch - 1) / stretch
	num.Parallel(pieces, func(i int) {
		for j := i * stretch; j < min((i+1)*stretch, f.Height); j++ {
			f.cutRow(r.FoamFractions[j*f.Width:(j+1)*f.Width], j, c.level)
		}
	})
	if len(f.columns) > 0 {
		r.settle()
	}
}

// cutRow sets foam to the shares of row j's pixels that are above the level.
func (f *Origins) cutRow(foam []float32, j int, level float64) {
	at, limit := j*f.Width, float32(level)
	low, high := f.low[at:at+len(foam)], f.high[at:at+len(foam)]
	for i := range foam {
		switch {
		case high[i] < limit:
			foam[i] = 0
		case low[i] > limit:
			foam[i] = 1
		case f.fine != nil && f.fine[at+i] >= 0:
			foam[i] = f.parts[f.fine[at+i]].above(limit)
		case f.fine != nil && f.fine[at+i] == sampled: // below
		case f.fine != nil:
			nw := j*(f.Width+1) + i
			sw := nw + f.Width + 1
			foam[i], _ = planeShare(float64(f.h[nw]-limit), float64(f.h[nw+1]-limit), float64(f.h[sw]-limit), float64(f.h[sw+1]-limit))
		default:
			foam[i] = f.share(j*(f.Width+1)+i, level)
		}
	}
	n := f.samples * f.samples
	for k := f.starts[j]; k < f.starts[j+1]; k++ {
		i := f.columns[k]
		if high[i] < limit || low[i] > limit {
			continue // is 0 or 1 already
		}
		// Each sample votes foam or dense: interpolating would favour the phase that is
		// thicker. Their order is any, which a branch would have to guess.
		sum := float32(0)
		for _, h := range f.heights[k*n : (k+1)*n] {
			sum += max(0, min(1, 0.5+(h-limit)/softMM))
		}
		foam[i] = sum / float32(n)
	}
}

// share returns the share of an even pixel that is above the level; nw is its corner at
// the upper left.
func (f *Origins) share(nw int, level float64) float32 {
	if flat, share := f.flat(nw, level); flat {
		return share
	}
	p := f.part(nw)
	return p.above(float32(level))
}

// flat reports whether a pixel's height is a plane, and what share of it is above the
// level if so. Only the share depends on the level.
func (f *Origins) flat(nw int, level float64) (bool, float32) {
	sw := nw + f.Width + 1
	share, rise := planeShare(float64(f.h[nw])-level, float64(f.h[nw+1])-level, float64(f.h[sw])-level, float64(f.h[sw+1])-level)
	span := float64(f.span(nw))
	return rise >= 0.5*f.of.start.slope*f.PixelMM && (span <= flatMM || f.plane(nw, span, rise)), share
}
