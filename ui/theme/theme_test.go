package theme

import (
	"fmt"
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	base "fyne.io/fyne/v2/theme"
	"github.com/stretchr/testify/assert"

	"ripplewright/ui/kit"
)

// luminance and contrast are WCAG 2.1 (W3C, 2018), "relative luminance" and
// "contrast ratio".
func luminance(c color.NRGBA) float64 {
	f := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*f(c.R) + 0.7152*f(c.G) + 0.0722*f(c.B)
}

func contrast(a, b color.NRGBA) float64 {
	x, y := luminance(a), luminance(b)
	if x < y {
		x, y = y, x
	}
	return (x + 0.05) / (y + 0.05)
}

// over lays c, with its opacity, on an opaque ground.
func over(c, ground color.NRGBA) color.NRGBA {
	f := float64(c.A) / 255
	m := func(x, y uint8) uint8 { return uint8(math.Round(float64(x)*f + float64(y)*(1-f))) }
	return color.NRGBA{R: m(c.R, ground.R), G: m(c.G, ground.G), B: m(c.B, ground.B), A: 255}
}

func TestContrastOfBlackOnWhiteIsTheGuidelines21(t *testing.T) {
	// WCAG 2.1, "contrast ratio": ratios range from 1 to 21.
	assert.InDelta(t, 21, contrast(rgb(0), rgb(0xFFFFFF)), 1e-9)
	assert.InDelta(t, 1, contrast(rgb(0x777777), rgb(0x777777)), 1e-9)
}

func TestEveryTextCanBeReadOnItsBackground(t *testing.T) {
	// WCAG 2.1 success criteria 1.4.3 (4.5), 1.4.6 (7), and for borders and
	// curves 1.4.11 (3).
	grounds := []fyne.ThemeColorName{base.ColorNameBackground, base.ColorNameInputBackground, base.ColorNameMenuBackground,
		base.ColorNameOverlayBackground, base.ColorNameHeaderBackground}
	texts := []fyne.ThemeColorName{base.ColorNameForeground, base.ColorNamePlaceHolder, base.ColorNameHyperlink, base.ColorNamePrimary,
		base.ColorNameError, base.ColorNameSuccess, base.ColorNameWarning, kit.ColorNameDense, kit.ColorNameFoam, kit.ColorNameBoth}
	type pair struct {
		text, ground fyne.ThemeColorName
		film         fyne.ThemeColorName // laid over the ground
		least        float64
	}
	var pairs []pair
	for _, g := range grounds {
		for _, x := range texts {
			pairs = append(pairs, pair{text: x, ground: g, least: 4.5})
		}
		pairs = append(pairs, pair{text: base.ColorNameDisabled, ground: g, least: 3})
	}
	for _, g := range []fyne.ThemeColorName{base.ColorNameBackground, base.ColorNameButton, base.ColorNameInputBackground, base.ColorNameMenuBackground} {
		for _, film := range []fyne.ThemeColorName{"", base.ColorNameFocus, base.ColorNameHover, base.ColorNamePressed, base.ColorNameSelection} {
			pairs = append(pairs, pair{base.ColorNameForeground, g, film, 4.5})
		}
	}
	pairs = append(pairs,
		pair{text: base.ColorNameForegroundOnPrimary, ground: base.ColorNamePrimary, least: 4.5},
		pair{base.ColorNameForegroundOnPrimary, base.ColorNamePrimary, base.ColorNameHover, 4.5},
		pair{text: base.ColorNameForegroundOnError, ground: base.ColorNameError, least: 4.5},
		pair{text: base.ColorNameForegroundOnSuccess, ground: base.ColorNameSuccess, least: 4.5},
		pair{text: base.ColorNameForegroundOnWarning, ground: base.ColorNameWarning, least: 4.5},
		pair{text: base.ColorNameInputBorder, ground: base.ColorNameBackground, least: 3},
		pair{text: base.ColorNameInputBorder, ground: base.ColorNameInputBackground, least: 3},
	)
	for _, v := range []Variant{Light, Dark} {
		for _, strong := range []bool{false, true} {
			th := New(Options{Variant: v, HighContrast: strong})
			get := func(n fyne.ThemeColorName) color.NRGBA { return th.Color(n, base.VariantLight).(color.NRGBA) }
			for _, p := range pairs {
				least := p.least
				if strong && p.film == "" && least == 4.5 {
					least = 7
				}
				ground := get(p.ground)
				if p.film != "" {
					ground = over(get(p.film), ground)
				}
				assert.GreaterOrEqual(t, contrast(get(p.text), ground), least,
					fmt.Sprintf("variant %d strong %v: %s on %s under %q", v, strong, p.text, p.ground, p.film))
			}
		}
	}
}

func TestTextScaleGrowsTextsAndStaysWithinItsLimits(t *testing.T) {
	for _, c := range []struct{ scale, text float32 }{{0, 14}, {1, 14}, {1.5, 21}, {2, 28}, {9, 28}, {.2, 14}} {
		assert.Equal(t, c.text, New(Options{TextScale: c.scale}).Size(base.SizeNameText), c.scale)
	}
}

func TestFollowTakesTheDesktopsVariant(t *testing.T) {
	th := New(Options{})
	assert.Equal(t, light[base.ColorNameBackground], th.Color(base.ColorNameBackground, base.VariantLight))
	assert.Equal(t, dark[base.ColorNameBackground], th.Color(base.ColorNameBackground, base.VariantDark))
	assert.Equal(t, dark[base.ColorNameBackground], New(Options{Variant: Dark}).Color(base.ColorNameBackground, base.VariantLight))
}
