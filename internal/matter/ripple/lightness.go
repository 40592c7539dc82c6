package ripple

import (
	"image/color"
	"math"
)

// Lightness returns how light a colour looks beside white, L*: 0 black, 100 white.
// Alpha is ignored.
//
// Source: CIE 15:2004, Colorimetry, section 8.2.1.1, of the luminance of IEC
// 61966-2-1:1999 (sRGB).
func Lightness(c color.NRGBA) float64 {
	v := linearOf(c)
	return lightnessOf(0.2126*v[0] + 0.7152*v[1] + 0.0722*v[2])
}

// lightnessOf returns L* for a luminance, white's being 1.
func lightnessOf(y float64) float64 {
	if y > 216.0/24389 {
		return 116*math.Cbrt(y) - 16
	}
	return 24389.0 / 27 * y
}
