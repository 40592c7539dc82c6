package kit

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
)

// A Sheet is a picture of a page of paper.
type Sheet struct {
	Image             image.Image
	WidthMM, HeightMM float64
}

// A SheetFit is how large sheets are shown.
type SheetFit int

// FitWidth makes a sheet as wide as the view, FitPage shows it whole. Any
// other Fit is a percentage of a screen of 96 dots per inch.
const (
	FitWidth SheetFit = 0
	FitPage  SheetFit = -1
)

// A SheetView shows sheets as they lie on a desk, scrolled by wheel, bars and,
// with the focus, by the arrow and page keys.
type SheetView struct {
	widget.BaseWidget
	// OnFit is called when a sheet has come to stand larger or smaller, so that
	// a picture of the right fineness can be made; see DPI.
	OnFit func()

	fit     SheetFit
	sheets  []Sheet
	images  []*canvas.Image
	edges   []*canvas.Rectangle
	desk    *canvas.Rectangle
	ring    *canvas.Rectangle
	scroll  *container.Scroll
	content *fyne.Container
	total   fyne.Size
	tops    []float32 // of the rows of sheets
	width   float32   // of the first sheet
	focused bool
}

var (
	_ fyne.Focusable = (*SheetView)(nil)
	_ fyne.Tappable  = (*SheetView)(nil)
)

// NewSheetView returns an empty view.
func NewSheetView() *SheetView {
	s := &SheetView{desk: canvas.NewRectangle(nil), ring: canvas.NewRectangle(nil)}
	s.content = container.New(deskTop{s})
	s.scroll = container.NewScroll(s.content)
	s.ExtendBaseWidget(s)
	return s
}

// ShowSheets puts sheets on the desk. What was in sight stays.
func (s *SheetView) ShowSheets(sheets []Sheet) {
	s.sheets = sheets
	for len(s.images) < len(sheets) {
		img := &canvas.Image{FillMode: canvas.ImageFillStretch, ScaleMode: canvas.ImageScaleFastest}
		edge := canvas.NewRectangle(nil)
		s.images, s.edges = append(s.images, img), append(s.edges, edge)
		s.content.Objects = append(s.content.Objects, edge, img)
	}
	for i := range s.images {
		shown := i < len(sheets)
		s.images[i].Hidden, s.edges[i].Hidden = !shown, !shown
		if shown {
			s.images[i].Image = sheets[i].Image
		}
	}
	s.arrange()
	s.Refresh()
}

// Sheets returns what is on the desk.
func (s *SheetView) Sheets() []Sheet { return s.sheets }

// ShowFit changes how large the sheets are shown.
func (s *SheetView) ShowFit(f SheetFit) {
	if f == s.fit {
		return
	}
	s.fit = f
	s.arrange()
	s.Refresh()
}

// DPI returns at how many device pixels per inch paper of a width and height,
// in mm, is shown; 0 before the view has a size.
func (s *SheetView) DPI(widthMM, heightMM float64) float64 {
	return s.devicePixels() * float64(s.fitted(widthMM, heightMM)) / widthMM * mmPerInch
}

const (
	mmPerInch = 25.4
	screenDPI = 96
	deskGap   = 12 // between sheets and around them
)

// devicePixels returns the device pixels to a unit of the layout.
func (s *SheetView) devicePixels() float64 {
	if c := fyne.CurrentApp().Driver().CanvasForObject(s); c != nil {
		const many = 1000
		x, _ := c.PixelCoordinateForPosition(fyne.NewPos(many, 0))
		return float64(x) / many
	}
	return 1
}

// fitted returns how wide a sheet is shown.
func (s *SheetView) fitted(widthMM, heightMM float64) float32 {
	room := s.scroll.Size().SubtractWidthHeight(2*deskGap, 2*deskGap)
	if room.Width <= 0 || room.Height <= 0 {
		return 0
	}
	switch s.fit {
	case FitWidth:
		return room.Width
	case FitPage:
		w := fyne.Min(room.Width, room.Height*float32(widthMM/heightMM))
		// Two beside each other are worth being a little smaller.
		if two := float32(math.Floor(float64(room.Width-deskGap)/2)) - 1; len(s.sheets) > 1 && two < w && two > 0.8*w {
			return two
		}
		return w
	}
	return float32(float64(s.fit) / 100 * widthMM / mmPerInch * screenDPI)
}

// arrange places the sheets in rows, as many beside each other as have room.
func (s *SheetView) arrange() {
	view := s.scroll.Size()
	if len(s.sheets) == 0 || view.Width <= 0 {
		return
	}
	pixels := float32(s.devicePixels())
	was, old := s.width, s.total
	s.width = s.fitted(s.sheets[0].WidthMM, s.sheets[0].HeightMM)
	s.tops, s.total = nil, fyne.Size{}
	x, y, high := float32(deskGap), float32(deskGap), float32(0)
	for i, sheet := range s.sheets {
		w := s.fitted(sheet.WidthMM, sheet.HeightMM)
		size := fyne.NewSize(w, w*float32(sheet.HeightMM/sheet.WidthMM))
		// A picture made for this size keeps its own pixels.
		b := sheet.Image.Bounds()
		if own := fyne.NewSize(float32(b.Dx())/pixels, float32(b.Dy())/pixels); math.Abs(float64(own.Width-size.Width)) < 2 {
			size = own
		}
		if i > 0 && x+size.Width+deskGap > view.Width {
			x, y, high = deskGap, y+high+deskGap, 0
		}
		if x == deskGap {
			s.tops = append(s.tops, y)
		}
		s.images[i].Move(fyne.NewPos(x, y))
		s.images[i].Resize(size)
		s.edges[i].Move(fyne.NewPos(x-1, y-1))
		s.edges[i].Resize(size.AddWidthHeight(2, 2))
		x += size.Width + deskGap
		high = fyne.Max(high, size.Height)
		s.total = s.total.Max(fyne.NewSize(x, y+high+deskGap))
	}
	if free := view.Width - s.total.Width; free > 0 { // the sheets stand in the middle
		for i := range s.sheets {
			for _, o := range [...]fyne.CanvasObject{s.images[i], s.edges[i]} {
				o.Move(o.Position().AddXY(float32(math.Floor(float64(free/2))), 0))
			}
		}
	}
	if old.Width > 0 && old != s.total {
		at := s.scroll.Offset
		s.scroll.Offset = fyne.NewPos(at.X*s.total.Width/old.Width, at.Y*s.total.Height/old.Height)
	}
	s.scroll.Refresh()
	if s.width != was && s.OnFit != nil {
		mishap.Do(func() { s.OnFit() })
	}
}

// deskTop is the layout of the content: arrange has placed everything.
type deskTop struct{ s *SheetView }

func (d deskTop) Layout([]fyne.CanvasObject, fyne.Size)        {}
func (d deskTop) MinSize([]fyne.CanvasObject) (size fyne.Size) { return d.s.total }

// Tapped takes the focus, so that the keys scroll.
func (s *SheetView) Tapped(*fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(s); c != nil {
		c.Focus(s)
	}
}

// FocusGained implements fyne.Focusable.
func (s *SheetView) FocusGained() { s.focused = true; s.Refresh() }

// FocusLost implements fyne.Focusable.
func (s *SheetView) FocusLost() { s.focused = false; s.Refresh() }

// TypedRune implements fyne.Focusable.
func (s *SheetView) TypedRune(rune) {}

// TypedKey scrolls.
func (s *SheetView) TypedKey(e *fyne.KeyEvent) {
	const step = 60
	view := s.scroll.Size()
	to := s.scroll.Offset
	switch e.Name {
	case fyne.KeyUp:
		to.Y -= step
	case fyne.KeyDown:
		to.Y += step
	case fyne.KeyLeft:
		to.X -= step
	case fyne.KeyRight:
		to.X += step
	case fyne.KeyPageUp:
		to.Y -= 0.9 * view.Height
	case fyne.KeyPageDown:
		to.Y += 0.9 * view.Height
	case fyne.KeyHome:
		to.Y = 0
	case fyne.KeyEnd:
		to.Y = s.total.Height
	default:
		return
	}
	most := s.total.Subtract(view)
	within := func(v, most float32) float32 { return fyne.Max(0, fyne.Min(v, most)) }
	s.scroll.ScrollToOffset(fyne.NewPos(within(to.X, most.Width), within(to.Y, most.Height)))
}

// Offset returns how far the view is scrolled.
func (s *SheetView) Offset() fyne.Position { return s.scroll.Offset }

// CreateRenderer implements fyne.Widget.
func (s *SheetView) CreateRenderer() fyne.WidgetRenderer {
	s.ExtendBaseWidget(s)
	r := &sheetRenderer{s}
	r.Refresh()
	return r
}

type sheetRenderer struct{ s *SheetView }

func (r *sheetRenderer) Layout(size fyne.Size) {
	r.s.desk.Resize(size)
	r.s.ring.Resize(size)
	if r.s.scroll.Size() != size {
		r.s.scroll.Resize(size)
		r.s.arrange()
		if len(r.s.sheets) == 0 && r.s.OnFit != nil {
			mishap.Do(func() { r.s.OnFit() })
		}
	}
}

func (r *sheetRenderer) MinSize() fyne.Size { return fyne.NewSize(120, 120) }

func (r *sheetRenderer) Refresh() {
	s := r.s
	s.desk.FillColor = theme.Color(theme.ColorNameButton)
	s.ring.StrokeColor, s.ring.StrokeWidth = theme.Color(theme.ColorNameFocus), 3
	s.ring.Hidden = !s.focused
	for i := range s.sheets {
		s.edges[i].FillColor = theme.Color(theme.ColorNameInputBorder)
		s.edges[i].Refresh()
		s.images[i].Refresh()
	}
	s.desk.Refresh()
	s.ring.Refresh()
}

func (r *sheetRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.desk, r.s.scroll, r.s.ring}
}

func (r *sheetRenderer) Destroy() {}
