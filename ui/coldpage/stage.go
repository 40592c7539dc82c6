package coldpage

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// stage is the tub in time: its picture, its curves, and the time to move.
type stage struct {
	host    page.Host
	picture *fyne.Container
	field   *kit.HeatMapView
	plot    *kit.Plot
	time    *kit.Slide
	play    *kit.Button
	caption *widget.Label
	reading string // of the plot, under the mouse or the keys
	foot    *fyne.Container
	layout  stageLayout
	object  fyne.CanvasObject

	of      coldview.Question
	scene   coldview.Scene
	minutes map[coldview.Question]float64 // the time last shown
	lo, hi  float64                       // of the colours
	rows    [][]float64
	curves  chart.Plot
	hand    hand
	playing player
}

func newStage(h page.Host) *stage {
	s := &stage{host: h, field: kit.NewHeatMapView(), plot: kit.NewPlot(), minutes: map[coldview.Question]float64{}}
	s.plot.XDecimals = 1
	s.caption = page.Prose("")
	s.plot.OnRead = func(text string) { s.reading = text; s.describe() }
	s.time = page.Slide(say.T("Time"), "min", 0, 1, 1, 0)
	s.hand = newHand(s.at)
	s.time.OnChanged = func(v float64) { s.stop(); s.hand.wanted = v }
	s.play = kit.NewButton(say.T("Play"), s.playOrStop)
	s.picture = container.NewStack(s.field)
	s.foot = container.NewVBox(container.NewBorder(nil, nil, s.play, nil, s.time), s.caption)
	s.object = container.NewPadded(container.NewBorder(nil, s.foot, nil, nil, container.New(&s.layout, s.picture, s.plot)))
	fyne.CurrentApp().Settings().AddListener(mishap.With(func(fyne.Settings) { s.redraw() }))
	s.clear()
	return s
}

func (s *stage) clear() {
	s.scene = coldview.Scene{}
	s.field.ShowField(kit.HeatMap{})
	s.plot.ShowPlot(chart.Nothing())
	s.caption.SetText("")
	s.hide()
}

// hide leaves the curves alone on the stage.
func (s *stage) hide() {
	s.picture.Hide()
	s.foot.Hide()
	s.object.Refresh()
}

// inks are the plots' colours in the theme of now.
func inks() coldview.Inks {
	return coldview.Inks{Reads: page.Reads, Core: page.Ink(theme.ColorNamePrimary), Ring: page.Ink(theme.ColorNameWarning),
		Dense: page.Ink(kit.ColorNameDense), Foam: page.Ink(kit.ColorNameFoam), Both: page.Ink(kit.ColorNameBoth)}
}

// put shows what of q is seen, at the time at which it was last looked at.
func (s *stage) put(q coldview.Question, v coldview.Scene) {
	s.of, s.scene = q, v
	if !coldview.Pictured(v.Run) {
		s.hide()
		s.redraw()
		return
	}
	shape := float32(v.Run.HeightMM / (2 * v.Run.RadiusMM))
	if shape != s.layout.shape || s.foot.Hidden {
		s.layout.shape = shape
		s.picture.Show()
		s.foot.Show()
		s.object.Refresh()
	}
	s.time.SetRange(0, math.Max(1, coldview.Last(v.Run)))
	s.lo, s.hi = coldview.Colours(v.Run, v.Warmest)
	s.curves = v.Plot(inks())
	if minute, known := s.minutes[q]; known {
		s.at(v.Within(minute))
		return
	}
	s.at(v.First())
}

// redraw draws the curves anew, in the theme's colours of now.
func (s *stage) redraw() {
	if s.scene.Plot == nil {
		s.plot.ShowPlot(chart.Nothing())
		return
	}
	s.curves = s.scene.Plot(inks())
	if s.scene.Run == nil {
		s.plot.ShowPlot(s.curves)
		return
	}
	s.at(s.time.Value())
}

// at shows the time of so many minutes.
func (s *stage) at(minute float64) {
	v := s.scene
	if !coldview.Pictured(v.Run) {
		return
	}
	s.minutes[s.of] = minute
	s.time.ShowValue(minute)
	s.rows = coldview.Section(v.Run, v.Stirs, minute, s.rows)
	s.field.ShowField(kit.HeatMap{Values: s.rows, RadiusMM: v.Run.RadiusMM, HeightMM: v.Run.HeightMM, Min: s.lo, Max: s.hi,
		Levels: coldview.Isotherms(page.Reads, s.rows), Reads: page.Reads})
	s.plot.ShowPlot(v.At(s.curves, minute))
	s.describe()
}

// describe writes the time shown in figures, or what the plot reads.
func (s *stage) describe() {
	if s.reading != "" || s.scene.Run == nil {
		s.caption.SetText(s.reading)
		return
	}
	minute := s.time.Value()
	s.caption.SetText(say.Moment(page.Reads, minute, s.scene.Run.At(minute)))
}

// wake and sleep begin and end looking at the hand.
func (s *stage) wake() { s.hand.wake() }

func (s *stage) sleep() {
	s.stop()
	s.hand.sleep()
}

// stageLayout lays picture and curves side by side, or a flat picture on top.
type stageLayout struct{ shape float32 } // height over width of the tub

func (l *stageLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	a, b := coldview.Rooms(size.Width, size.Height, l.shape, theme.Padding(), objects[0].Visible())
	for i, r := range [...]coldview.Room{a, b} {
		objects[i].Move(fyne.NewPos(r.X, r.Y))
		objects[i].Resize(fyne.NewSize(r.W, r.H))
	}
}

func (l *stageLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	room := func(o fyne.CanvasObject) coldview.Room {
		return coldview.Room{W: o.MinSize().Width, H: o.MinSize().Height}
	}
	return fyne.NewSize(coldview.LeastRoom(room(objects[0]), room(objects[1])))
}
