package kit

import (
	"image"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// A CutFace is the cut face of a tub as a CutView shows it. Lengths are mm.
type CutFace struct {
	Title             string
	WidthMM, HeightMM float64
	CornerMM          float64 // radius of the corners
	Open              bool    // seen from the side: no wall on top
	HeadMM            float64 // how far the walls stand above the food, if Open
	Picture           image.Image
}

// A CutView shows cuts of one tub at one scale, each in its walls: side by side
// or under each other, whichever makes them larger.
type CutView struct {
	widget.BaseWidget

	// OnSpace is told when there is another number of pixels for the pictures.
	OnSpace func()

	Reads say.Style // how the ruler's length is told

	cuts   []CutFace
	frames []draw.Rect // of the pictures, in whole units
	images []*canvas.Image
}

// NewCutView returns an empty view.
func NewCutView() *CutView {
	v := &CutView{}
	v.ExtendBaseWidget(v)
	return v
}

// ShowCuts puts cuts on screen. A picture is stretched over its cut; it is
// sharpest at the size that Pixels says.
func (v *CutView) ShowCuts(cuts []CutFace) {
	v.cuts = cuts
	v.Refresh()
}

// Pixels returns the size of each picture on a device with so many pixels to the
// unit, nil before the view has a size.
func (v *CutView) Pixels(scale float32) []image.Point {
	px := func(l float64) int { return max(1, int(math.Round(l*float64(scale)))) }
	var all []image.Point
	for _, f := range v.frames {
		all = append(all, image.Pt(px(f.Dx()), px(f.Dy())))
	}
	return all
}

// CreateRenderer implements fyne.Widget.
func (v *CutView) CreateRenderer() fyne.WidgetRenderer {
	v.ExtendBaseWidget(v)
	r := &cutRenderer{v: v}
	r.sketch = newSketch(func() fyne.Size {
		return fyne.NewSquareSize(16 * theme.TextSize())
	}, v.layOut)
	return r
}

// cutRenderer lays the pictures over the sketch of the walls. They are images of
// their own, so that a new one costs no new sketch.
type cutRenderer struct {
	*sketch
	v *CutView
}

func (r *cutRenderer) Layout(size fyne.Size) {
	r.sketch.Layout(size)
	r.place()
}

func (r *cutRenderer) Refresh() {
	r.sketch.Refresh()
	r.place()
}

func (r *cutRenderer) Objects() []fyne.CanvasObject {
	all := slices.Clone(r.sketch.Objects())
	for _, i := range r.v.images {
		all = append(all, i)
	}
	return all
}

func (r *cutRenderer) place() {
	v := r.v
	for len(v.images) < len(v.frames) {
		i := canvas.NewImageFromImage(nil)
		i.FillMode, i.ScaleMode = canvas.ImageFillStretch, canvas.ImageScaleFastest
		v.images = append(v.images, i)
	}
	v.images = v.images[:len(v.frames)]
	for k, i := range v.images {
		f := v.frames[k]
		i.Move(fyne.NewPos(float32(f.X0), float32(f.Y0)))
		i.Resize(fyne.NewSize(float32(f.Dx()), float32(f.Dy())))
		if p := v.cuts[k].Picture; i.Image != p {
			i.Image = p
			i.Refresh()
		}
	}
}

// Measures of the view, in units of the screen.
const (
	cutWall = 6.0
	cutGap  = 28.0 // between two
	cutEdge = 6.0  // at the sides of the view
)

func (v *CutView) layOut(d *draw.List, w, h float64) {
	old := v.frames
	v.frames = nil
	s := plotStyle()
	above, below := 2*s.Text, 3.4*s.Text
	k, across := v.scale(w, h, above, below)
	if k > 0 {
		v.arrange(w, h, k, across, above, below)
		for i, f := range v.frames {
			v.walls(d, s, &v.cuts[i], f, k)
		}
		v.ruler(d, s, k)
	}
	if v.OnSpace != nil && !slices.Equal(old, v.frames) {
		mishap.Do(func() { v.OnSpace() })
	}
}

// scale returns the units per mm that fit, and whether the cuts stand side by side.
func (v *CutView) scale(w, h, above, below float64) (k float64, across bool) {
	var sumW, maxW, sumH, maxH float64
	for _, c := range v.cuts {
		tall := c.HeightMM + c.HeadMM
		sumW, maxW = sumW+c.WidthMM, math.Max(maxW, c.WidthMM)
		sumH, maxH = sumH+tall, math.Max(maxH, tall)
	}
	w -= 2 * cutEdge
	n := float64(len(v.cuts))
	if n == 0 || !(maxW > 0 && maxH > 0) {
		return 0, true
	}
	side := math.Min((w-n*2*cutWall-(n-1)*cutGap)/sumW, (h-above-2*cutWall-below)/maxH)
	stack := math.Min((w-2*cutWall)/maxW, (h-n*(above+2*cutWall)-below)/sumH)
	if side >= stack {
		return side, true
	}
	return stack, false
}

// arrange sets the frames, in the middle of the view.
func (v *CutView) arrange(w, h, k float64, across bool, above, below float64) {
	var wide, tall float64
	for _, c := range v.cuts {
		cw, ch := c.WidthMM*k+2*cutWall, above+(c.HeightMM+c.HeadMM)*k+2*cutWall
		if across {
			wide, tall = wide+cw+cutGap, math.Max(tall, ch)
		} else {
			wide, tall = math.Max(wide, cw), tall+ch
		}
	}
	if across {
		wide -= cutGap
	}
	x, y := (w-wide)/2, math.Max(0, (h-tall-below)/2)
	for _, c := range v.cuts {
		left, foot := x+cutWall, y+tall-cutWall
		if !across {
			left = (w - c.WidthMM*k) / 2
			foot = y + above + cutWall + (c.HeightMM+c.HeadMM)*k
		}
		f := draw.Rect{X0: math.Round(left), Y1: math.Round(foot)}
		f.X1, f.Y0 = f.X0+math.Round(c.WidthMM*k), f.Y1-math.Round(c.HeightMM*k)
		v.frames = append(v.frames, f)
		if across {
			x += c.WidthMM*k + 2*cutWall + cutGap
		} else {
			y += above + 2*cutWall + (c.HeightMM+c.HeadMM)*k
		}
	}
}

// walls draws the tub about a picture, and names the cut.
func (v *CutView) walls(d *draw.List, s chart.Look, c *CutFace, f draw.Rect, k float64) {
	card := colour(ColorNameCardboard)
	shade := draw.Blend(card, s.Ink, .35)
	brim := f.Y0 - c.HeadMM*k
	if c.Open {
		const t = cutWall
		if c.HeadMM > 0 { // the far wall over the food
			d.Box(draw.Rect{X0: f.X0, Y0: brim, X1: f.X1, Y1: f.Y0}, draw.Fade(card, .35))
		}
		path := func() {
			d.To(f.X0, brim)
			d.To(f.X0, f.Y1)
			d.To(f.X1, f.Y1)
			d.To(f.X1, brim)
			d.To(f.X1+t, brim)
			d.To(f.X1+t, f.Y1+t)
			d.To(f.X0-t, f.Y1+t)
			d.To(f.X0-t, brim)
		}
		path()
		d.EndFill(card)
		path()
		d.To(f.X0, brim)
		d.EndStroke(draw.Stroke{Width: 1, Colour: shade})
	} else {
		ring := func(out float64) {
			b := draw.Rect{X0: f.X0 - out, Y0: f.Y0 - out, X1: f.X1 + out, Y1: f.Y1 + out}
			d.RoundBox(b, c.CornerMM*k+out)
		}
		ring(cutWall)
		d.EndFill(card)
		ring(cutWall)
		d.To(f.X0-cutWall, f.Y0+c.CornerMM*k)
		d.EndStroke(draw.Stroke{Width: 1, Colour: shade})
		if c.Picture == nil {
			ring(0)
			d.EndFill(colour(theme.ColorNameBackground))
		}
	}
	d.Write(draw.Text{At: draw.Point{X: (f.X0 + f.X1) / 2, Y: math.Min(brim, f.Y0) - cutWall - 3},
		S: c.Title, Size: s.Text, Align: draw.Centre, Rise: draw.Above, Colour: s.Ink})
}

// ruler draws a length of whole centimetres under the first cut.
func (v *CutView) ruler(d *draw.List, s chart.Look, k float64) {
	f, foot := v.frames[0], 0.0
	for _, g := range v.frames {
		foot = math.Max(foot, g.Y1)
		if g.X0 < f.X0 {
			f = g
		}
	}
	mm := 10.0
	for _, m := range []float64{20, 50} {
		if m*k < f.Dx()/2 {
			mm = m
		}
	}
	x, y := f.X0, foot+cutWall+1.6*s.Text
	line := draw.Stroke{Width: 1.5, Colour: s.Ink}
	d.Segment(line, x, y, x+mm*k, y)
	d.Segment(line, x, y-4, x, y+4)
	d.Segment(line, x+mm*k, y-4, x+mm*k, y+4)
	d.Write(draw.Text{At: draw.Point{X: x + mm*k + 8, Y: y}, S: v.Reads.Length(mm), Size: s.Text, Colour: s.Ink})
}
