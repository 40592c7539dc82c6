package kit

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// A Tub is a tub of food as the TubView shows it. Lengths are inside ones, mm.
type Tub struct {
	TopMM, BaseMM, HeightMM float64 // 0: 92, 80 and 90, a pint-sized cup

	Fill float64 // how much of the height is filled, 0 to 1
	Foam float64 // share of the volume that is foam, 0 to 1; NaN if unknown

	DenseName, FoamName string
	Reads               say.Style   // how the shares are told
	DenseColour         draw.Colour // opacity 0: the theme's
	FoamColour          draw.Colour

	// Cut is the cut face, stretched over the filled part of it and clipped to
	// its outline. Nil draws the foam level on the custard, each with its share of
	// the volume.
	Cut image.Image
}

// A TubView is the tub cut open down its axis, seen from a little above.
type TubView struct {
	widget.BaseWidget
	tub Tub
}

// NewTubView returns an empty tub.
func NewTubView() *TubView {
	t := &TubView{}
	t.ExtendBaseWidget(t)
	return t
}

// ShowTub puts v on screen. A new Cut must be a new image, or the same one
// after its pixels have changed; both are drawn at once.
func (t *TubView) ShowTub(v Tub) {
	t.tub = v
	t.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (t *TubView) CreateRenderer() fyne.WidgetRenderer {
	t.ExtendBaseWidget(t)
	return newSketch(func() fyne.Size {
		return fyne.NewSize(11*theme.TextSize(), 8*theme.TextSize())
	}, t.layOut).layered().lettered()
}
