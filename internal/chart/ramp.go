package chart

import "image/color"

// A Ramp is a scale of colours, from low to high, evenly spaced.
type Ramp []color.NRGBA

// Cold runs from deep water to warm sand. Its lightness only ever rises, so it
// reads the same in grey and to any eye.
var Cold = Ramp{
	{0x0B, 0x1D, 0x33, 255}, {0x12, 0x3C, 0x55, 255}, {0x17, 0x5F, 0x6E, 255}, {0x2B, 0x84, 0x82, 255},
	{0x62, 0xA6, 0x91, 255}, {0xA6, 0xC2, 0x9E, 255}, {0xE2, 0xD8, 0xAE, 255}, {0xFB, 0xF1, 0xD8, 255},
}

// At returns the colour at f; below 0 and above 1 it is that of the end.
func (r Ramp) At(f float64) color.NRGBA {
	f = clamp(f, 0, 1) * float64(len(r)-1)
	i := min(int(f), len(r)-2)
	return Blend(r[i], r[i+1], f-float64(i))
}
