package draw

import "math"

// HSL returns hue in degrees from 0 to 360, saturation and lightness in percent. A
// grey has the hue 0.
//
// Source: A. R. Smith, Color Gamut Transform Pairs, SIGGRAPH 1978, as CSS Color
// Module Level 3 (W3C 2011), section 4.2.4, has it (from memory).
func HSL(c Colour) (hue, saturation, lightness float64) {
	r, g, b := float64(c.R)/255, float64(c.G)/255, float64(c.B)/255
	most, least := max(r, g, b), min(r, g, b)
	lightness = (most + least) / 2
	spread := most - least
	if spread == 0 {
		return 0, 0, 100 * lightness
	}
	switch most {
	case r:
		hue = math.Mod((g-b)/spread+6, 6)
	case g:
		hue = (b-r)/spread + 2
	default:
		hue = (r-g)/spread + 4
	}
	return 60 * hue, 100 * spread / (1 - math.Abs(2*lightness-1)), 100 * lightness
}

// OfHSL returns the opaque colour of a hue in degrees, and of a saturation and a
// lightness from 0 to 100 %.
func OfHSL(hue, saturation, lightness float64) Colour {
	l := lightness / 100
	a := saturation / 100 * min(l, 1-l)
	at := func(n float64) uint8 {
		k := math.Mod(n+hue/30, 12)
		return uint8(math.Round(255 * (l - a*max(-1, min(k-3, 9-k, 1)))))
	}
	return Colour{R: at(0), G: at(8), B: at(4), A: 255}
}
