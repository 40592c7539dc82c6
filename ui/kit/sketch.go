package kit

import (
	"image"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/raster"
)

// A sketch shows a draw.List: the marks in one raster, the texts as canvas
// texts over it, so that they stay sharp at every scale. It is the renderer of
// every widget that draws itself.
type sketch struct {
	// layOut fills the drawing, which has been reset to the size of the widget.
	layOut func(d *draw.List, w, h float64)
	min    func() fyne.Size

	drawing draw.List
	before  draw.List       // the drawing before
	scale   float32         // of the window, when it was drawn
	marked  image.Rectangle // the part of it with marks, in pixels of the screen
	layers  *layers         // nil: painted whole every time
	raster  *canvas.Raster
	letters bool        // its texts are set in the raster, too
	set     []lettering // those that can be
	setLast []lettering // those of the drawing before
	texts   []*canvas.Text
	size    fyne.Size
	objects []fyne.CanvasObject
}

var _ fyne.WidgetRenderer = (*sketch)(nil)

// pen paints all sketches into the same memory: the toolkit asks for one picture at a
// time, on the window's thread, and hands it to the screen before it asks for the next.
var pen raster.Painter

func newSketch(min func() fyne.Size, layOut func(d *draw.List, w, h float64)) *sketch {
	s := &sketch{layOut: layOut, min: min}
	s.raster = canvas.NewRaster(s.paint)
	s.raster.ScaleMode = canvas.ImageScalePixels // a pixel of the picture is one of the screen's, see fit
	s.objects = []fyne.CanvasObject{s.raster}
	return s
}

// layered has what is the same from frame to frame of a drag painted once, for a drawing so
// large that this is worth its memory.
func (s *sketch) layered() *sketch {
	s.layers = &layers{}
	return s
}

// lettered has the texts set in the raster, for those that change from frame to frame of a
// drag.
func (s *sketch) lettered() *sketch {
	s.letters = true
	return s
}

// paint is asked for the part of the drawing that has marks, w by h pixels of the screen.
func (s *sketch) paint(w, h int) image.Image {
	scale := float64(w) / float64(s.raster.Size().Width)
	pixels := func(v float32) int { return int(math.Ceil(float64(v)*scale - 1e-3)) }
	img := pen.Resize(pixels(s.size.Width), pixels(s.size.Height))
	switch {
	case s.layers != nil:
		s.layers.paint(&pen, &s.drawing, img, scale)
	default:
		pen.Clear(draw.Colour{})
		pen.Paint(&s.drawing, scale)
	}
	for _, l := range s.set {
		l.on(img, float32(scale))
	}
	at := s.raster.Position()
	return part(img, image.Rect(0, 0, w, h).Add(image.Pt(pixels(at.X), pixels(at.Y))))
}

// part is a part of img, in the memory of img, of whose pixels nothing else is left.
func part(img *image.RGBA, of image.Rectangle) *image.RGBA {
	of = of.Intersect(img.Rect)
	w := 4 * of.Dx()
	for y := of.Min.Y; y < of.Max.Y; y++ {
		at := img.PixOffset(of.Min.X, y)
		copy(img.Pix[(y-of.Min.Y)*w:], img.Pix[at:at+w])
	}
	return &image.RGBA{Pix: img.Pix[:of.Dy()*w], Stride: w, Rect: image.Rectangle{Max: of.Size()}}
}

func (s *sketch) Layout(size fyne.Size) {
	if size == s.size {
		return
	}
	s.size, s.marked = size, image.Rectangle{}
	s.Refresh()
}

// fit makes the raster as large as the marks need: a processor that paints takes its time
// for each clear pixel, too. It is whole pixels of the screen, since the toolkit rounds
// where it begins and where it ends. While one drags it does not become smaller.
func (s *sketch) fit(scale float32) {
	if scale != s.scale {
		s.scale, s.marked = scale, image.Rectangle{}
	}
	if scale <= 0 {
		scale = 1 // in no window
	}
	whole := image.Rect(0, 0, int(math.Ceil(float64(s.size.Width*scale)-1e-3)), int(math.Ceil(float64(s.size.Height*scale)-1e-3)))
	box := marked(&s.drawing, float64(scale))
	for _, l := range s.set {
		box = box.Union(l.box(scale))
	}
	s.marked = s.marked.Union(box.Intersect(whole))
	s.raster.Hidden = s.marked.Empty()
	s.raster.Move(fyne.NewPos(float32(s.marked.Min.X)/scale, float32(s.marked.Min.Y)/scale))
	s.raster.Resize(fyne.NewSize(float32(s.marked.Dx())/scale, float32(s.marked.Dy())/scale))
}

// marked is the smallest box of pixels around the marks of d.
func marked(d *draw.List, scale float64) (box image.Rectangle) {
	for i := range d.Marks {
		m := &d.Marks[i]
		x0, y0, x1, y1 := raster.Bounds(m.Points, scale)
		edge := m.Line.Width/2*scale + 1 // a stroke's edge is a pixel soft
		if x0 <= x1 {
			box = box.Union(image.Rect(int(math.Floor(x0-edge)), int(math.Floor(y0-edge)), int(math.Ceil(x1+edge)), int(math.Ceil(y1+edge))))
		}
	}
	return box
}

func (s *sketch) MinSize() fyne.Size { return s.min() }

func (s *sketch) Refresh() {
	if s.size.Width < 2 || s.size.Height < 2 {
		return
	}
	w, h := float64(s.size.Width), float64(s.size.Height)
	s.drawing, s.before = s.before, s.drawing
	s.drawing.Reset(w, h)
	s.layOut(&s.drawing, w, h)
	s.write()
	below, above := alike(&s.drawing, &s.before)
	same := s.drawing.W == s.before.W && s.drawing.H == s.before.H && // letters alone stand where they did in a larger one, but were cut
		below == len(s.drawing.Marks) && below == len(s.before.Marks) && slices.Equal(s.set, s.setLast)
	scale := s.windowScale()
	if same && scale == s.scale {
		return
	}
	s.fit(scale)
	if s.layers != nil {
		s.layers.follow(below, above)
	}
	s.raster.Refresh()
}

// windowScale is how many pixels of the screen a unit takes, 0 in no window.
func (s *sketch) windowScale() float32 {
	if c := fyne.CurrentApp().Driver().CanvasForObject(s.raster); c != nil {
		return c.Scale()
	}
	return 0
}

// write makes the canvas texts follow the drawing, and touches only those that differ.
func (s *sketch) write() {
	s.set, s.setLast = s.setLast[:0], s.set
	i := 0
	for _, t := range s.drawing.Texts {
		if s.letters {
			if l, ok := letteringOf(t); ok {
				s.set = append(s.set, l)
				continue
			}
		}
		if i == len(s.texts) {
			s.texts = append(s.texts, canvas.NewText("", t.Colour))
			s.objects = append(s.objects, s.texts[i])
		}
		o := s.texts[i]
		i++
		style := fyne.TextStyle{Bold: t.Face == draw.SansBold}
		changed := o.Text != t.S || o.Color != t.Colour || o.TextSize != float32(t.Size) || o.TextStyle != style || !o.Visible()
		o.Text, o.Color, o.TextSize, o.TextStyle = t.S, t.Colour, float32(t.Size), style
		size := o.Size()
		if changed {
			size = fyne.MeasureText(t.S, o.TextSize, style)
		}
		if at := corner(t, size); at != o.Position() {
			o.Move(at)
		}
		if size != o.Size() {
			o.Resize(size)
		}
		if changed {
			o.Show()
			o.Refresh()
		}
	}
	for _, o := range s.texts[i:] {
		if o.Visible() {
			o.Hide()
		}
	}
}

// corner is where a text of a size begins.
func corner(t draw.Text, size fyne.Size) fyne.Position {
	x, y := float32(t.At.X), float32(t.At.Y)
	switch t.Align {
	case draw.Centre:
		x -= size.Width / 2
	case draw.Right:
		x -= size.Width
	}
	switch t.Rise {
	case draw.Middle:
		y -= size.Height / 2
	case draw.Above:
		y -= size.Height
	}
	return fyne.NewPos(float32(math.Round(float64(x))), float32(math.Round(float64(y))))
}

func (s *sketch) Objects() []fyne.CanvasObject { return s.objects }

// Texts are those that no object of the toolkit has, for who reads the window.
func (s *sketch) Texts() (all []string) {
	for _, l := range s.set {
		all = append(all, l.text.S)
	}
	return all
}

func (s *sketch) Destroy() {}
