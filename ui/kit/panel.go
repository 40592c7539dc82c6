package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// A Panel is an edge with round corners around what belongs together.
//
// It has no ground of its own: where the processor paints, those of the two columns of the
// bench were a sixth of each frame. For the same reason the edge is four thin rectangles
// and four small arcs, not one round rectangle as large as what it is around.
type Panel struct{ widget.BaseWidget }

// NewPanel returns an edge.
func NewPanel() *Panel {
	p := &Panel{}
	p.ExtendBaseWidget(p)
	return p
}

const panelRadius = 8

// CreateRenderer implements fyne.Widget.
func (p *Panel) CreateRenderer() fyne.WidgetRenderer {
	p.ExtendBaseWidget(p)
	r := &panelRenderer{p: p}
	for i := range r.sides {
		r.sides[i], r.corners[i] = canvas.NewRectangle(nil), &canvas.Arc{StartAngle: float32(i-1) * 90, EndAngle: float32(i) * 90}
	}
	r.look()
	return r
}

type panelRenderer struct {
	p       *Panel
	sides   [4]*canvas.Rectangle // top, right, foot, left
	corners [4]*canvas.Arc       // from the top left, clockwise
	size    fyne.Size
}

// thickness of the edge: in high contrast, where grounds are alike, it is a bold one.
func (r *panelRenderer) thickness() float32 {
	if theme.ColorForWidget(theme.ColorNameInputBackground, r.p) == theme.ColorForWidget(theme.ColorNameBackground, r.p) {
		return 2
	}
	return 1
}

func (r *panelRenderer) look() {
	edge := theme.ColorForWidget(theme.ColorNameSeparator, r.p)
	for i, c := range r.corners {
		r.sides[i].FillColor, c.FillColor = edge, edge
		c.CutoutRatio = 1 - r.thickness()/panelRadius
	}
}

func (r *panelRenderer) Layout(size fyne.Size) {
	r.size = size
	w, h, thick, far := size.Width, size.Height, r.thickness(), float32(panelRadius)
	place := func(o fyne.CanvasObject, x, y, width, height float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(max(0, width), max(0, height)))
	}
	place(r.sides[0], far, 0, w-2*far, thick)
	place(r.sides[1], w-thick, far, thick, h-2*far)
	place(r.sides[2], far, h-thick, w-2*far, thick)
	place(r.sides[3], 0, far, thick, h-2*far)
	place(r.corners[0], 0, 0, 2*far, 2*far)
	place(r.corners[1], w-2*far, 0, 2*far, 2*far)
	place(r.corners[2], w-2*far, h-2*far, 2*far, 2*far)
	place(r.corners[3], 0, h-2*far, 2*far, 2*far)
}

func (r *panelRenderer) MinSize() fyne.Size { return fyne.Size{} }

func (r *panelRenderer) Refresh() {
	r.look()
	r.Layout(r.size)
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *panelRenderer) Objects() (all []fyne.CanvasObject) {
	for i := range r.sides {
		all = append(all, r.sides[i], r.corners[i])
	}
	return all
}

func (r *panelRenderer) Destroy() {}
