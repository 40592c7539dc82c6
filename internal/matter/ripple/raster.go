package ripple

import (
	"context"

	"ripplewright/internal/matter/num"
)

// Raster is a cut on square pixels, row 0 at the top of the picture. Numbers and
// pictures are made from it.
type Raster struct {
	Width, Height   int       // pixels
	PixelMM         float64   // mm
	FoamFractions   []float32 // share of each pixel that is foam, 0 to 1, row by row
	InsideFractions []float32 // share of each pixel that lies in the tub, 0 to 1

	cut    *Cut
	out    outline
	view   View
	seed   uint64
	fillMM float64
	uneven []bool    // the field's
	amid   []bool    // likewise; nil: not known
	spare  []float32 // for settle
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
	f, err := c.Origins(ctx, px, progress)
	if err != nil {
		return nil, err
	}
	return f.at(c), nil
}

// settle evens out the luck of the samples in uneven pixels, where a filament finer
// than a pixel would look dotted: each gives and takes a share of what differs from
// its uneven neighbours, so the sum stays. No pixel at the picture's edge is uneven.
func (r *Raster) settle() {
	r.spare = grown(r.spare, len(r.FoamFractions))
	num.Parallel(r.Height, func(j int) {
		row := j * r.Width
		copy(r.spare[row:row+r.Width], r.FoamFractions[row:row+r.Width])
		for at := row; at < row+r.Width; at++ {
			if !r.uneven[at] {
				continue
			}
			if r.amid != nil && r.amid[at] {
				above, row, below := r.FoamFractions[at-r.Width-1:at-r.Width+2], r.FoamFractions[at-1:at+2], r.FoamFractions[at+r.Width-1:at+r.Width+2]
				r.spare[at] = (above[0] + above[2] + below[0] + below[2] + 2*(above[1]+row[0]+row[2]+below[1]) + 4*row[1]) / 16
				continue
			}
			own, sum := r.FoamFractions[at], float32(0)
			for b := range settling {
				to := at + (b-1)*r.Width - 1
				foam, uneven := r.FoamFractions[to:to+3], r.uneven[to:to+3]
				for a, weight := range settling[b] {
					if uneven[a] {
						sum += weight * (foam[a] - own)
					}
				}
			}
			r.spare[at] = own + sum
		}
	})
	r.FoamFractions, r.spare = r.spare, r.FoamFractions
}

// amid tells which uneven pixels of rows of a width have eight uneven neighbours.
func amid(uneven []bool, width int) []bool {
	all := make([]bool, len(uneven))
	for at, u := range uneven {
		if !u { // none at the edge is
			continue
		}
		all[at] = true
		for _, to := range [...]int{at - width, at, at + width} {
			all[at] = all[at] && uneven[to-1] && uneven[to] && uneven[to+1]
		}
	}
	return all
}

// settling is the binomial filter over a pixel and its neighbours.
var settling = [3][3]float32{{1. / 16, 2. / 16, 1. / 16}, {2. / 16, 4. / 16, 2. / 16}, {1. / 16, 2. / 16, 1. / 16}}

// FoamFraction returns the foam's share of the area of the cut, 0 to 1.
func (r *Raster) FoamFraction() float64 {
	foam, all := 0.0, 0.0
	for i, in := range r.InsideFractions {
		foam += float64(r.FoamFractions[i]) * float64(in)
		all += float64(in)
	}
	return foam / all
}
