package raster

import (
	"encoding/binary"
	"image"
	"math"
	"slices"

	"ripplewright/internal/matter/num"
	"ripplewright/internal/show/draw"
)

// aBand is how many pixels of a picture are worth another processor's while.
const aBand = 16000

// A band is what a run of rows of a picture needs while it is shown.
type band struct {
	down []spot
	row  []uint64
}

// showPicture lays img, stretched over frame, through the mask, and clears the mask.
// Where the picture is finer than the pixels, each pixel is a mean of samples.
func (p *Painter) showPicture(img image.Image, frame draw.Rect, scale float64) {
	src, ok := img.(*image.RGBA)
	if !ok {
		src = toRGBA(img)
	}
	box := p.dirty
	p.dirty = image.Rectangle{}
	if box.Empty() {
		return
	}
	fx, fy := float64(src.Rect.Dx())/(frame.Dx()*scale), float64(src.Rect.Dy())/(frame.Dy()*scale)
	nx, ny := samples(fx), samples(fy)
	// Where the samples of the columns lie, and those of a row.
	p.across = spots(p.across[:0], box.Min.X, box.Max.X, nx, frame.X0*scale, fx, src.Rect.Dx())
	from, last := p.across[0].at, p.across[len(p.across)-1]
	bands := clampInt(float64(box.Dx()*box.Dy()/aBand), 1, len(p.bands))
	num.Parallel(bands, func(k int) {
		b := &p.bands[k]
		b.row = slices.Grow(b.row[:0], int(last.at+last.next+1-from))[:last.at+last.next+1-from]
		for y := box.Min.Y + box.Dy()*k/bands; y < box.Min.Y+box.Dy()*(k+1)/bands; y++ {
			b.down = spots(b.down[:0], y, y+1, ny, frame.Y0*scale, fy, src.Rect.Dy())
			b.gather(src, from)
			mask := p.mask.Pix[y*p.mask.Stride+box.Min.X : y*p.mask.Stride+box.Max.X]
			p.showRow(p.img.Pix[y*p.img.Stride+4*box.Min.X:], mask, b.row, from, nx)
		}
	})
}

// gather makes the row the mean of a row of samples of src, from a column on.
func (b *band) gather(src *image.RGBA, from uint32) {
	for i, v := range b.down {
		top := src.Pix[int(v.at)*src.Stride+4*int(from):]
		foot := top[int(v.next)*src.Stride:]
		for k := range b.row {
			at := between(wide(top[4*k:]), wide(foot[4*k:]), v.share)
			if i > 0 {
				at += b.row[k]
			}
			b.row[k] = at
		}
	}
	if n := uint32(len(b.down)); n > 1 {
		for k, sum := range b.row {
			b.row[k] = uint64(mean(sum, 0, n)) | uint64(mean(sum, 1, n))<<16 | uint64(mean(sum, 2, n))<<32 | uint64(mean(sum, 3, n))<<48
		}
	}
}

// showRow lays a row of a picture, gathered from a column on, through a mask that it clears.
func (p *Painter) showRow(out, mask []uint8, row []uint64, from uint32, nx int) {
	for i, m := range mask {
		if m == 0 {
			continue
		}
		mask[i] = 0
		var sum uint64
		for _, u := range p.across[i*nx : i*nx+nx] {
			k := u.at - from
			sum += between(row[k], row[k+u.next], u.share)
		}
		if q := out[4*i : 4*i+4 : 4*i+4]; nx == 1 && m == 255 && sum>>48 == 255 {
			binary.LittleEndian.PutUint32(q, narrow(sum))
		} else {
			lay(q, sum, uint32(nx), uint32(m))
		}
	}
}

// samples is how many of them a pixel has along one side, of a picture f times as fine as
// the pixels: not more than 16, so that a sum of 16² fits 16 bits.
func samples(f float64) int { return max(1, min(16, int(f+.5))) }

// A spot is a place along a row or a column of a picture: a pixel, how far the next one
// is from it, 0 or 1, and its share of 256.
type spot struct {
	at, next uint32
	share    uint64
}

// spots are the n places for each pixel from..to, which the picture, n of its pixels to
// the screen's, begins at start, f of its pixels to one of the screen's.
func spots(out []spot, from, to, n int, start, f float64, size int) []spot {
	last := float64(size - 1)
	for x := from; x < to; x++ {
		for i := 0; i < n; i++ {
			u := math.Max(0, math.Min(last, (float64(x)+(float64(i)+.5)/float64(n)-start)*f-.5))
			s := spot{at: uint32(u), next: 1}
			s.share = uint64((u-float64(s.at))*256 + .5)
			if int(s.at) == size-1 {
				s.next = 0
			}
			out = append(out, s)
		}
	}
	return out
}

// wide is a pixel with 16 bits to each part.
func wide(pix []uint8) uint64 {
	v := uint64(binary.LittleEndian.Uint32(pix))
	v = (v | v<<16) & 0x0000ffff0000ffff
	return (v | v<<8) & 0x00ff00ff00ff00ff
}

// narrow is what wide is of.
func narrow(v uint64) uint32 {
	v = (v | v>>8) & 0x0000ffff0000ffff
	return uint32(v | v>>16)
}

// mean is part k of a sum of n samples over n.
func mean(sum uint64, k int, n uint32) uint32 {
	s := uint32(sum>>(16*k)) & 0xffff
	if n == 1 {
		return s
	}
	return (s + n/2) / n
}

// between is the share of 256 of b, and the rest of a.
func between(a, b, share uint64) uint64 {
	return (a*(256-share) + b*share + 0x0080008000800080) >> 8 & 0x00ff00ff00ff00ff
}

// lay lays the sum of so many samples over a pixel, through a mask of 255.
func lay(q []uint8, sum uint64, samples, mask uint32) {
	cover := mean(sum, 3, samples) * mask
	rest := 255*255 - cover
	for k := range q {
		if v := mean(sum, k, samples); rest == 0 {
			q[k] = uint8(v)
		} else {
			q[k] = uint8((v*mask*255 + uint32(q[k])*rest + 32512) / 65025)
		}
	}
}

// Lay lays img, as large as the painter's picture, over it.
func (p *Painter) Lay(img *image.RGBA) {
	src, dst := img.Pix, p.img.Pix
	for i := 0; i+4 <= len(src) && i+4 <= len(dst); i += 4 {
		if src[i+3] == 0 {
			for i+20 <= len(src) && binary.LittleEndian.Uint64(src[i+4:]) == 0 && binary.LittleEndian.Uint64(src[i+12:]) == 0 {
				i += 16 // most of what lies over a picture is clear
			}
			continue
		}
		rest := 255 - uint32(src[i+3])
		for k := i; k < i+4; k++ {
			dst[k] = src[k] + uint8((uint32(dst[k])*rest+127)/255)
		}
	}
}
