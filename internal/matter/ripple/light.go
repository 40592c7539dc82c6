package ripple

import (
	"image/color"
	"math"
)

// linearOf returns red, green and blue in linear light, 0 to 1.
func linearOf(c color.NRGBA) [3]float64 {
	var v [3]float64
	for i, b := range [3]uint8{c.R, c.G, c.B} {
		// IEC 61966-2-1:1999 (sRGB).
		if s := float64(b) / 255; s <= 0.04045 {
			v[i] = s / 12.92
		} else {
			v[i] = math.Pow((s+0.055)/1.055, 2.4)
		}
	}
	return v
}

// displayed is the inverse of linearOf for one channel, not negative, by table.
func displayed(v float32) uint8 {
	i := int(v*(displaySteps-1) + 0.5)
	if i >= displaySteps {
		i = displaySteps - 1
	}
	return displayTable[i]
}

const displaySteps = 1 << 14

var displayTable = func() (t [displaySteps]uint8) {
	for i := range t {
		v := float64(i) / (displaySteps - 1)
		if v <= 0.0031308 {
			v *= 12.92
		} else {
			v = 1.055*math.Pow(v, 1/2.4) - 0.055
		}
		t[i] = uint8(v*255 + 0.5)
	}
	return t
}()
