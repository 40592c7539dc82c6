package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
)

// Colours that the widgets ask the theme for, beside Fyne's own. A theme that
// does not know them is answered for by the light palette below.
const (
	ColorNameDense     fyne.ThemeColorName = "ripple.dense"     // curves and names of the dense phase
	ColorNameFoam      fyne.ThemeColorName = "ripple.foam"      // curves and names of the foam
	ColorNameBoth      fyne.ThemeColorName = "ripple.both"      // where both phases are right
	ColorNameGrid      fyne.ThemeColorName = "ripple.grid"      // lines behind a plot
	ColorNameCustard   fyne.ThemeColorName = "ripple.custard"   // the dense phase as food
	ColorNameMeringue  fyne.ThemeColorName = "ripple.meringue"  // the foam as food
	ColorNameCardboard fyne.ThemeColorName = "ripple.cardboard" // the tub
)

var fallback = map[fyne.ThemeColorName]draw.Colour{
	ColorNameDense:     draw.RGB(0x964B0B),
	ColorNameFoam:      draw.RGB(0x0B626E),
	ColorNameBoth:      draw.RGB(0x3F7D4A),
	ColorNameGrid:      draw.RGB(0xE3DAC6),
	ColorNameCustard:   draw.RGB(0xECB65A),
	ColorNameMeringue:  draw.RGB(0xFBF4E4),
	ColorNameCardboard: draw.RGB(0xC9B08A),
}

// colour asks the theme for a colour in the form that charts use.
func colour(name fyne.ThemeColorName) draw.Colour {
	c := color.NRGBAModel.Convert(theme.Color(name)).(draw.Colour)
	if f, ours := fallback[name]; ours && c.A == 0 {
		return f
	}
	return c
}

// plotStyle is the theme's way to draw a plot, with texts at the caption size.
func plotStyle() chart.Look {
	return chart.Look{
		Ink:     colour(theme.ColorNameForeground),
		Muted:   colour(theme.ColorNamePlaceHolder),
		Grid:    colour(ColorNameGrid),
		Text:    float64(theme.Size(theme.SizeNameCaptionText)),
		Measure: measure,
	}
}

func measure(s string, size float64) float64 {
	return float64(fyne.MeasureText(s, float32(size), fyne.TextStyle{}).Width)
}
