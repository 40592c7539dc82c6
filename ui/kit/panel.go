package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// A Panel is a ground with round corners for what belongs together. Where it has the
// colour of the window, as in high contrast, it has an edge.
//
// Most of it is a plain rectangle, with round ones at head and foot alone: a processor
// that paints takes several times as long for each pixel of a round one.
type Panel struct{ widget.BaseWidget }

// NewPanel returns a ground.
func NewPanel() *Panel {
	p := &Panel{}
	p.ExtendBaseWidget(p)
	return p
}

const (
	panelRadius = 8
	panelCap    = panelRadius + 4 // the height of head and foot
	panelLap    = 2               // so far the rest lies under their soft edges
)

// CreateRenderer implements fyne.Widget.
func (p *Panel) CreateRenderer() fyne.WidgetRenderer {
	p.ExtendBaseWidget(p)
	r := &panelRenderer{p: p}
	for i := range r.parts {
		r.parts[i] = canvas.NewRectangle(nil)
	}
	head, foot, edge := r.parts[1], r.parts[2], r.parts[3]
	head.TopLeftCornerRadius, head.TopRightCornerRadius = panelRadius, panelRadius
	foot.BottomLeftCornerRadius, foot.BottomRightCornerRadius = panelRadius, panelRadius
	edge.CornerRadius = panelRadius
	r.look()
	return r
}

type panelRenderer struct {
	p     *Panel
	parts [4]*canvas.Rectangle // the rest, head, foot, edge
}

func (r *panelRenderer) look() {
	ground := theme.ColorForWidget(theme.ColorNameInputBackground, r.p)
	for _, part := range r.parts[:3] {
		part.FillColor = ground
	}
	edge := r.parts[3]
	edge.StrokeColor, edge.StrokeWidth = theme.ColorForWidget(theme.ColorNameSeparator, r.p), 2
	edge.Hidden = ground != theme.ColorForWidget(theme.ColorNameBackground, r.p)
}

func (r *panelRenderer) Layout(size fyne.Size) {
	place := func(i int, y, height float32) {
		r.parts[i].Move(fyne.NewPos(0, y))
		r.parts[i].Resize(fyne.NewSize(size.Width, height))
	}
	end := min(panelCap, size.Height/2)
	place(0, end-panelLap, size.Height-2*(end-panelLap))
	place(1, 0, end)
	place(2, size.Height-end, end)
	place(3, 0, size.Height)
}

func (r *panelRenderer) MinSize() fyne.Size { return fyne.Size{} }

func (r *panelRenderer) Refresh() {
	r.look()
	for _, part := range r.parts {
		part.Refresh()
	}
}

func (r *panelRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.parts[0], r.parts[1], r.parts[2], r.parts[3]}
}

func (r *panelRenderer) Destroy() {}
