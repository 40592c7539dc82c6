package chart

import "ripplewright/internal/show/draw"

// A Ramp is a scale of colours, from low to high, evenly spaced.
type Ramp []draw.Colour

// Cold runs from deep water to warm sand. Its lightness only ever rises, so it
// reads the same in grey and to any eye.
var Cold = Ramp{
	draw.RGB(0x0B1D33), draw.RGB(0x123C55), draw.RGB(0x175F6E), draw.RGB(0x2B8482),
	draw.RGB(0x62A691), draw.RGB(0xA6C29E), draw.RGB(0xE2D8AE), draw.RGB(0xFBF1D8),
}

// At returns the colour at f; below 0 and above 1 it is that of the end.
func (r Ramp) At(f float64) draw.Colour {
	f = clamp(f, 0, 1) * float64(len(r)-1)
	i := min(int(f), len(r)-2)
	return draw.Blend(r[i], r[i+1], f-float64(i))
}
