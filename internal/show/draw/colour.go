package draw

import (
	"image/color"
	"math"
)

// A Colour is red, green, blue and opacity, the opacity not multiplied in.
type Colour = color.NRGBA

// RGB returns the opaque colour written 0xRRGGBB.
func RGB(hex uint32) Colour {
	return Colour{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 255}
}

// Fade returns c with its opacity multiplied by a, 0 to 1.
func Fade(c Colour, a float64) Colour {
	c.A = uint8(math.Round(float64(c.A) * math.Max(0, math.Min(1, a))))
	return c
}

// Blend returns the colour a fraction f of the way from a to b, channel by channel.
func Blend(a, b Colour, f float64) Colour {
	m := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + (float64(y)-float64(x))*f)) }
	return Colour{R: m(a.R, b.R), G: m(a.G, b.G), B: m(a.B, b.B), A: m(a.A, b.A)}
}
