package raster

import (
	"encoding/binary"
	"image"
	"math"

	"ripplewright/internal/show/draw"
)

// showPicture lays img, stretched over frame, through the mask, and clears the mask.
// Where the picture is finer than the pixels, each pixel is a mean of samples.
func (p *Painter) showPicture(img image.Image, frame draw.Rect, scale float64) {
	src, ok := img.(*image.RGBA)
	if !ok {
		src = toRGBA(img)
	}
	fx, fy := float64(src.Rect.Dx())/(frame.Dx()*scale), float64(src.Rect.Dy())/(frame.Dy()*scale)
	nx, ny := samples(fx), samples(fy)
	box := p.dirty
	// Where the samples of the columns lie, and those of a row.
	p.across = spots(p.across[:0], box.Min.X, box.Max.X, nx, frame.X0*scale, fx, src.Rect.Dx())
	share := uint32(nx * ny)
	for y := box.Min.Y; y < box.Max.Y; y++ {
		p.down = spots(p.down[:0], y, y+1, ny, frame.Y0*scale, fy, src.Rect.Dy())
		mask := p.mask.Pix[y*p.mask.Stride+box.Min.X : y*p.mask.Stride+box.Max.X]
		out := p.img.Pix[y*p.img.Stride+4*box.Min.X:]
		for i, m := range mask {
			if m == 0 {
				continue
			}
			mask[i] = 0
			var sum uint64
			for _, v := range p.down {
				for _, u := range p.across[i*nx : i*nx+nx] {
					sum += sample(src, u, v)
				}
			}
			lay(out[4*i:4*i+4:4*i+4], sum, share, uint32(m))
		}
	}
	p.dirty = image.Rectangle{}
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

// sample is the colour of src at a place of a row and one of a column, between the four
// pixels around it: its four parts, of 255, in 16 bits each, which are reckoned with at once.
func sample(src *image.RGBA, u, v spot) uint64 {
	at := int(v.at)*src.Stride + 4*int(u.at)
	right, down := 4*int(u.next), src.Stride*int(v.next)
	top := between(wide(src.Pix[at:]), wide(src.Pix[at+right:]), u.share)
	foot := between(wide(src.Pix[at+down:]), wide(src.Pix[at+down+right:]), u.share)
	return between(top, foot, v.share)
}

// wide is a pixel with 16 bits to each part.
func wide(pix []uint8) uint64 {
	v := uint64(binary.LittleEndian.Uint32(pix))
	v = (v | v<<16) & 0x0000ffff0000ffff
	return (v | v<<8) & 0x00ff00ff00ff00ff
}

// between is the share of 256 of b, and the rest of a.
func between(a, b, share uint64) uint64 {
	return (a*(256-share) + b*share + 0x0080008000800080) >> 8 & 0x00ff00ff00ff00ff
}

// lay lays the sum of so many samples over a pixel, through a mask of 255.
func lay(q []uint8, sum uint64, samples, mask uint32) {
	part := func(k int) uint32 {
		s := uint32(sum>>(16*k)) & 0xffff
		if samples == 1 {
			return s
		}
		return (s + samples/2) / samples
	}
	cover := part(3) * mask
	rest := 255*255 - cover
	for k := range q {
		if v := part(k); rest == 0 {
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
