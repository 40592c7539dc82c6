package photodialog

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/photo"
	"ripplewright/internal/desk/cutphoto"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
)

// marks shows a picture with the places that a maker marks in it: dragged, tapped to, or
// moved by the arrow keys. The wheel, + and − magnify it about the pointer or the chosen
// place, up to the picture's own pixels and beyond.
type marks struct {
	widget.BaseWidget

	// moved is told when a place has changed, chose when another is chosen.
	moved, chose func()

	places  cutphoto.Places // pixels of the picture
	chosen  int
	size    image.Point
	whole   *image.RGBA // what is shown unmagnified
	part    func(at photo.Point, size image.Point, magnified float64) *image.RGBA
	times   float32 // magnified; 1: the whole picture
	middle  photo.Point
	shown   view // in image
	image   *canvas.Image
	lines   [4]*canvas.Line
	discs   [len(cutphoto.Places{})]*canvas.Circle
	names   [len(cutphoto.Places{})]*canvas.Text
	ring    *canvas.Rectangle
	drags   bool
	focused bool
}

var (
	_ fyne.Focusable = (*marks)(nil)
	_ fyne.Draggable = (*marks)(nil)
	_ fyne.Tappable  = (*marks)(nil)
)

func newMarks(moved, chose func()) *marks {
	m := &marks{moved: moved, chose: chose, times: 1, image: canvas.NewImageFromImage(nil), ring: canvas.NewRectangle(nil)}
	m.image.FillMode, m.image.ScaleMode = canvas.ImageFillStretch, canvas.ImageScaleFastest
	for i := range m.lines {
		m.lines[i] = canvas.NewLine(nil)
	}
	for i := range m.discs {
		m.discs[i], m.names[i] = canvas.NewCircle(nil), canvas.NewText(signs[i], nil)
	}
	m.ExtendBaseWidget(m)
	return m
}

// signs stand in the marks.
var signs = [len(cutphoto.Places{})]string{"1", "2", "3", "4", "C", "F"}

// showPicture puts a picture on screen; another one of the same size leaves the places.
func (m *marks) showPicture(im *image.RGBA) {
	m.whole, m.size, m.shown = im, im.Rect.Size(), view{}
	m.Refresh()
}

// choose makes one of the places that which is moved.
func (m *marks) choose(i int) {
	if i != m.chosen {
		m.chosen = i
		m.follow()
		m.Refresh()
		m.chose()
	}
}

// frame is where the picture lies, with room for marks about it, and units to a pixel.
// Magnified it reaches beyond the widget, whose middle shows the picture's at middle.
func (m *marks) frame() (at fyne.Position, k float32) {
	edge := m.radius()
	room := m.Size().SubtractWidthHeight(2*edge, 2*edge)
	if m.size.X == 0 || room.Width <= 0 || room.Height <= 0 {
		return at, 0
	}
	k = m.times * min(room.Width/float32(m.size.X), room.Height/float32(m.size.Y))
	along := func(room float32, pixels int, middle float64) float32 {
		spare := room - k*float32(pixels)
		if spare >= 0 {
			return edge + spare/2
		}
		return edge + min(0, max(spare, room/2-k*float32(middle)))
	}
	return fyne.NewPos(along(room.Width, m.size.X, m.middle.X), along(room.Height, m.size.Y, m.middle.Y)), k
}

func (m *marks) onScreen(p photo.Point) fyne.Position {
	at, k := m.frame()
	return at.AddXY(k*float32(p.X), k*float32(p.Y))
}

// put moves the chosen place to a position.
func (m *marks) put(p fyne.Position) {
	at, k := m.frame()
	if k == 0 {
		return
	}
	m.move(photo.Point{X: float64((p.X - at.X) / k), Y: float64((p.Y - at.Y) / k)})
}

func (m *marks) move(to photo.Point) {
	to.X = math.Min(math.Max(to.X, 0), float64(m.size.X))
	to.Y = math.Min(math.Max(to.Y, 0), float64(m.size.Y))
	if m.places[m.chosen] == to {
		return
	}
	m.places[m.chosen] = to
	m.Refresh()
	m.moved()
}

// nearest returns the place next to a position, and how far it is.
func (m *marks) nearest(p fyne.Position) (best int, far float32) {
	far = float32(math.Inf(1))
	for i, q := range m.places {
		s := m.onScreen(q)
		if d := float32(math.Hypot(float64(s.X-p.X), float64(s.Y-p.Y))); d < far {
			best, far = i, d
		}
	}
	return best, far
}

// Tapped chooses the mark under the pointer; else the chosen one goes there.
func (m *marks) Tapped(e *fyne.PointEvent) {
	mishap.Do(func() {
		m.take()
		if i, far := m.nearest(e.Position); far <= m.radius() {
			m.choose(i)
		} else {
			m.put(e.Position)
		}
	})
}

// Dragged moves the mark that the drag began at, or the one next to it.
func (m *marks) Dragged(e *fyne.DragEvent) {
	mishap.Do(func() {
		if !m.drags {
			m.drags = true
			m.take()
			i, _ := m.nearest(e.Position.Subtract(e.Dragged))
			m.choose(i)
		}
		m.put(e.Position)
	})
}

// DragEnd implements fyne.Draggable.
func (m *marks) DragEnd() { m.drags = false }

func (m *marks) take() {
	if c := fyne.CurrentApp().Driver().CanvasForObject(m); c != nil {
		c.Focus(m)
	}
}

// FocusGained implements fyne.Focusable.
func (m *marks) FocusGained() { m.focused = true; m.Refresh() }

// FocusLost implements fyne.Focusable.
func (m *marks) FocusLost() { m.focused = false; m.Refresh() }

// TypedRune chooses a mark by its sign, or magnifies.
func (m *marks) TypedRune(r rune) {
	switch r {
	case '+', '=':
		mishap.Do(func() { m.magnify(zoomStep, m.onScreen(m.places[m.chosen])) })
	case '-', '\u2212':
		mishap.Do(func() { m.magnify(1/zoomStep, m.onScreen(m.places[m.chosen])) })
	}
	for i, s := range signs {
		if s == string(r) || s == string(r-'a'+'A') {
			mishap.Do(func() { m.choose(i) })
		}
	}
}

// TypedKey moves the chosen mark by a pixel, or by as little as the magnified picture
// shows.
func (m *marks) TypedKey(e *fyne.KeyEvent) {
	to, by := m.places[m.chosen], 1/float64(m.times)
	switch e.Name {
	case fyne.KeyLeft:
		to.X -= by
	case fyne.KeyRight:
		to.X += by
	case fyne.KeyUp:
		to.Y -= by
	case fyne.KeyDown:
		to.Y += by
	case fyne.KeyEscape:
		if c := fyne.CurrentApp().Driver().CanvasForObject(m); c != nil {
			kit.Dismiss(c)
		}
		return
	default:
		return
	}
	mishap.Do(func() { m.move(to); m.follow(); m.Refresh() })
}

func (m *marks) radius() float32 { return 0.75 * theme.TextSize() }

// CreateRenderer implements fyne.Widget.
func (m *marks) CreateRenderer() fyne.WidgetRenderer {
	m.ExtendBaseWidget(m)
	r := &marksRenderer{m}
	r.Refresh()
	return r
}

type marksRenderer struct{ m *marks }

func (r *marksRenderer) Layout(size fyne.Size) { r.place() }

func (r *marksRenderer) MinSize() fyne.Size { return fyne.NewSquareSize(14 * theme.TextSize()) }

func (r *marksRenderer) place() {
	m := r.m
	m.draw()
	m.ring.Resize(m.Size())
	radius := m.radius()
	for i := range m.discs {
		p := m.onScreen(m.places[i])
		m.discs[i].Move(p.SubtractXY(radius, radius))
		m.discs[i].Resize(fyne.NewSquareSize(2 * radius))
		text := m.names[i].MinSize()
		m.names[i].Move(p.SubtractXY(text.Width/2, text.Height/2))
		m.names[i].Resize(text)
	}
	for i := range m.lines {
		m.lines[i].Position1, m.lines[i].Position2 = m.onScreen(m.places[i]), m.onScreen(m.places[(i+1)%len(m.lines)])
	}
}

// Refresh implements fyne.WidgetRenderer. A mark is a disc of the window's ground with its
// sign, so that it can be seen on any picture; the chosen one is filled.
func (r *marksRenderer) Refresh() {
	m := r.m
	for i, d := range m.discs {
		fill, sign := theme.ColorNameBackground, theme.ColorNameForeground
		if i == m.chosen {
			fill, sign = theme.ColorNamePrimary, theme.ColorNameForegroundOnPrimary
		}
		d.FillColor, d.StrokeColor, d.StrokeWidth = theme.Color(fill), theme.Color(theme.ColorNameForeground), 1.5
		m.names[i].Color, m.names[i].TextSize = theme.Color(sign), theme.CaptionTextSize()
		m.names[i].TextStyle.Bold = true
	}
	for _, l := range m.lines {
		l.StrokeColor, l.StrokeWidth = theme.Color(theme.ColorNamePrimary), 2
	}
	m.ring.StrokeColor, m.ring.StrokeWidth, m.ring.Hidden = theme.Color(theme.ColorNameFocus), 3, !m.focused
	r.place()
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *marksRenderer) Objects() []fyne.CanvasObject {
	all := []fyne.CanvasObject{r.m.image}
	for _, l := range r.m.lines {
		all = append(all, l)
	}
	for i := range r.m.discs {
		all = append(all, r.m.discs[i], r.m.names[i])
	}
	return append(all, r.m.ring)
}

func (r *marksRenderer) Destroy() {}

// markNames are the names of the places.
func markNames(rim bool) []string {
	names := say.PhotoMarks()
	if rim {
		names = say.PhotoRimMarks()
	}
	var out []string
	for i, n := range names {
		out = append(out, signs[i]+" "+n)
	}
	return out
}
