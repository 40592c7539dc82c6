// Package theme dresses the program: deep teal water, warm cream paper and
// toasted amber, in a light and a dark variant and each again in high contrast,
// with texts from 100 to 200 %.
//
// Every pair of text and background that the widgets use has a contrast ratio of
// at least 4.5, in high contrast 7, by the formula of the W3C's Web Content
// Accessibility Guidelines 2.1; the tests compute it.
package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	base "fyne.io/fyne/v2/theme"

	"ripplewright/ui/kit"
)

// A Variant says which palette is used.
type Variant int

// The variants.
const (
	Follow Variant = iota // light or dark as the desktop is
	Light
	Dark
)

// Options adjusts a theme. The zero Options follows the desktop at normal size.
type Options struct {
	Variant      Variant
	HighContrast bool
	TextScale    float32 // 1 to 2; 0 means 1, others are brought within
}

type theme struct {
	options Options
}

// New returns the program's theme.
func New(o Options) fyne.Theme {
	if o.TextScale == 0 {
		o.TextScale = 1
	}
	o.TextScale = fyne.Max(1, fyne.Min(2, o.TextScale))
	return &theme{o}
}

func (t *theme) dark(v fyne.ThemeVariant) bool {
	switch t.options.Variant {
	case Light:
		return false
	case Dark:
		return true
	}
	return v == base.VariantDark
}

// Color implements fyne.Theme.
func (t *theme) Color(name fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	p, variant := light, base.VariantLight
	if t.dark(v) {
		p, variant = dark, base.VariantDark
	}
	if t.options.HighContrast {
		strong := lightStrong
		if variant == base.VariantDark {
			strong = darkStrong
		}
		if c, ok := strong[name]; ok {
			return c
		}
	}
	if c, ok := p[name]; ok {
		return c
	}
	return base.DefaultTheme().Color(name, variant)
}

// Font implements fyne.Theme.
func (t *theme) Font(s fyne.TextStyle) fyne.Resource {
	switch {
	case s.Monospace || s.Symbol:
		return base.DefaultTheme().Font(s)
	case s.Bold:
		return bold
	}
	return regular
}

// Icon implements fyne.Theme.
func (t *theme) Icon(n fyne.ThemeIconName) fyne.Resource { return base.DefaultTheme().Icon(n) }

// Size implements fyne.Theme. Texts and what stands in line with them grow with
// the text scale; paddings and borders stay.
func (t *theme) Size(name fyne.ThemeSizeName) float32 {
	k := t.options.TextScale
	switch name {
	case base.SizeNameText:
		return 14 * k
	case base.SizeNameCaptionText:
		return 11.5 * k
	case base.SizeNameSubHeadingText:
		return 17 * k
	case base.SizeNameHeadingText:
		return 22 * k
	case kit.SizeNameStep:
		return 25 * k
	case kit.SizeNameTimer:
		return 34 * k
	case base.SizeNameInlineIcon:
		return 18 * k
	case base.SizeNameInnerPadding:
		return 6
	case base.SizeNamePadding:
		return 4
	case base.SizeNameInputRadius, base.SizeNameSelectionRadius:
		return 4
	case base.SizeNameInputBorder:
		if t.options.HighContrast {
			return 2
		}
		return 1
	}
	return base.DefaultTheme().Size(name)
}
