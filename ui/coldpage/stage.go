package coldpage

import (
	"math"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// scene is what the stage shows: a run in pictures and curves, or curves only.
type scene struct {
	name  string // of the view, so that its time is found again
	run   *cold.Run
	stirs []cold.Stir
	start float64 // the minute shown first
	// warmest ends the colours, °C; what is warmer has the last one.
	warmest float64
	plot    func() chart.Plot
}

// stage is the tub in time: its picture, its curves, and the time to move.
type stage struct {
	host    page.Host
	picture *fyne.Container
	field   *kit.FieldView
	plot    *kit.Plot
	time    *kit.Slide
	play    *kit.Button
	caption *widget.Label
	reading string // of the plot, under the mouse or the keys
	foot    *fyne.Container
	layout  stageLayout
	object  fyne.CanvasObject

	scene   scene
	minutes map[string]float64 // the time last shown, by scene
	lo, hi  float64            // of the colours
	rows    [][]float64
	curves  chart.Plot
	wanted  float64 // the minute a hand asks for; NaN: none
	latch   *fyne.Animation
	awake   bool
	stopped chan struct{} // closed to stop playing; nil: not playing
}

// How long a run takes to play, and how often the picture changes.
const (
	playTime  = 8 * time.Second
	playEvery = 50 * time.Millisecond
)

func newStage(h page.Host) *stage {
	s := &stage{host: h, field: kit.NewFieldView(), plot: kit.NewPlot(), minutes: map[string]float64{}}
	s.plot.XDecimals = 1
	s.caption = page.Prose("")
	s.plot.OnRead = func(text string) { s.reading = text; s.describe() }
	s.time = kit.NewSlide("Time", "min", 0, 1, 1, 0)
	s.wanted = math.NaN()
	s.time.OnChanged = func(v float64) { s.stop(); s.wanted = v }
	// Once a frame, so that no hand can outrun the screen.
	s.latch = &fyne.Animation{Duration: time.Hour, RepeatCount: fyne.AnimationRepeatForever, Tick: mishap.With(func(float32) { s.tick() })}
	s.play = kit.NewButton("Play", s.playOrStop)
	s.picture = container.NewStack(s.field)
	s.foot = container.NewVBox(container.NewBorder(nil, nil, s.play, nil, s.time), s.caption)
	s.object = container.NewPadded(container.NewBorder(nil, s.foot, nil, nil, container.New(&s.layout, s.picture, s.plot)))
	fyne.CurrentApp().Settings().AddListener(mishap.With(func(fyne.Settings) { s.redraw() }))
	s.clear()
	return s
}

func (s *stage) clear() {
	s.scene = scene{}
	s.field.ShowField(kit.Field{})
	s.plot.ShowPlot(chart.Plot{})
	s.caption.SetText("")
	s.hide()
}

// hide leaves the curves alone on the stage.
func (s *stage) hide() {
	s.picture.Hide()
	s.foot.Hide()
	s.object.Refresh()
}

// put shows v, at the time at which it was last looked at.
func (s *stage) put(v scene) {
	s.scene = v
	if v.run == nil || len(v.run.Frames) == 0 || len(v.run.Track) == 0 {
		s.hide()
		s.redraw()
		return
	}
	shape := float32(v.run.HeightMM / (2 * v.run.RadiusMM))
	if shape != s.layout.shape || s.foot.Hidden {
		s.layout.shape = shape
		s.picture.Show()
		s.foot.Show()
		s.object.Refresh()
	}
	last := v.run.Frames[len(v.run.Frames)-1].Minute
	s.time.SetRange(0, math.Max(1, last))
	s.lo, s.hi = math.Inf(1), math.Inf(-1)
	for _, f := range v.run.Frames {
		s.lo, s.hi = math.Min(s.lo, slices.Min(f.C)), math.Max(s.hi, slices.Max(f.C))
	}
	s.lo, s.hi = math.Floor(s.lo), math.Min(math.Ceil(s.hi), v.warmest)
	minute, known := s.minutes[v.name]
	if !known {
		minute = v.start
	}
	if !(minute >= 0) {
		minute = last / 2
	}
	s.curves = v.plot()
	s.at(math.Min(math.Round(minute), last))
}

// redraw draws the curves anew, in the theme's colours of now.
func (s *stage) redraw() {
	if s.scene.plot == nil {
		s.plot.ShowPlot(chart.Plot{})
		return
	}
	s.curves = s.scene.plot()
	if s.scene.run == nil {
		s.plot.ShowPlot(s.curves)
		return
	}
	s.at(s.time.Value())
}

// at shows the time of so many minutes.
func (s *stage) at(minute float64) {
	v := s.scene
	if v.run == nil {
		return
	}
	s.minutes[v.name] = minute
	s.time.ShowValue(minute)
	s.rows = section(v.run, v.stirs, minute, s.rows)
	s.field.ShowField(kit.Field{Values: s.rows, RadiusMM: v.run.RadiusMM, HeightMM: v.run.HeightMM, Min: s.lo, Max: s.hi, Levels: isotherms(s.rows), Reads: page.Reads})
	plot := s.curves
	scale, _ := axisOf(v.run)
	plot.Rules = append(slices.Clone(plot.Rules), chart.Rule{At: minute / scale, Line: draw.Line{Width: 2}})
	s.plot.ShowPlot(plot)
	s.describe()
}

// describe writes the time shown in figures, or what the plot reads.
func (s *stage) describe() {
	if s.reading != "" || s.scene.run == nil {
		s.caption.SetText(s.reading)
		return
	}
	minute := s.time.Value()
	m := s.scene.run.At(minute)
	s.caption.SetText(say.Moment(page.Reads, minute, m))
}

// axisOf returns the minutes in one unit of a run's time axis, and its title.
func axisOf(r *cold.Run) (scale float64, title string) {
	if n := len(r.Track); n > 0 && r.Track[n-1].Minute > 180 {
		return 60, "hours"
	}
	return 1, "minutes"
}

// section is the run at one minute as rows from the top of the tub down, its
// values on the corners of the cells: the axis, the wall, floor and top are
// seen. Between pictures it goes by line, but never across a stir, after which
// the picture is another.
func section(r *cold.Run, stirs []cold.Stir, minute float64, dst [][]float64) [][]float64 {
	k := 0
	for k+1 < len(r.Frames) && r.Frames[k+1].Minute <= minute {
		k++
	}
	a, b, f := r.Frames[k], r.Frames[k], 0.0
	if k+1 < len(r.Frames) {
		b = r.Frames[k+1]
		f = math.Max(0, (minute-a.Minute)/(b.Minute-a.Minute))
		for _, s := range stirs {
			// A picture at the minute of a stir is the one before it.
			if s.Minute >= a.Minute && s.Minute < b.Minute {
				if f = 1; minute <= s.Minute {
					f = 0
				}
			}
		}
	}
	nr, nz := r.Outward, r.Upward
	cell := func(i, j int) float64 {
		at := j*nr + i
		return a.C[at] + f*(b.C[at]-a.C[at])
	}
	if len(dst) != nz+1 || len(dst[0]) != nr+1 {
		dst = make([][]float64, nz+1)
		for j := range dst {
			dst[j] = make([]float64, nr+1)
		}
	}
	for j := range dst {
		up := nz - j
		for i := range dst[j] {
			at := func(row int) float64 {
				if i == 0 {
					return cell(0, row) // level across the axis
				}
				return edge(i, nr, func(c int) float64 { return cell(c, row) })
			}
			dst[j][i] = edge(up, nz, at)
		}
	}
	return dst
}

// isotherms are round temperatures within the rows: few, so that each can be
// labelled, however little the tub still differs from itself.
func isotherms(rows [][]float64) []float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, row := range rows {
		lo, hi = math.Min(lo, slices.Min(row)), math.Max(hi, slices.Max(row))
	}
	levels := []float64{} // not nil, which would draw those of the colours
	if hi-lo > evenK {
		for _, t := range chart.Ticks(page.Reads, lo, hi, 6) {
			levels = append(levels, t.Value)
		}
	}
	return levels
}

// evenK is a difference that is none, K: such a tub has no isotherms.
const evenK = 0.2

// edge is the value at the lower edge of cell i of n, from the cells on both
// sides of it; the first and the last go on by line.
func edge(i, n int, cell func(int) float64) float64 {
	switch i {
	case 0:
		return cell(0) + (cell(0)-cell(1))/2
	case n:
		return cell(n-1) + (cell(n-1)-cell(n-2))/2
	}
	return (cell(i-1) + cell(i)) / 2
}

// wake and sleep begin and end looking at the hand.
func (s *stage) wake() {
	if !s.awake {
		s.awake = true
		s.latch.Start()
	}
}

func (s *stage) sleep() {
	s.stop()
	if s.awake {
		s.awake = false
		s.latch.Stop()
	}
}

// tick shows the minute that a hand asks for.
func (s *stage) tick() {
	if v := s.wanted; !math.IsNaN(v) {
		s.wanted = math.NaN()
		s.at(v)
	}
}

// playOrStop lets the time run by itself, away from the window's thread.
func (s *stage) playOrStop() {
	if s.stopped != nil {
		s.stop()
		return
	}
	if s.scene.run == nil {
		return
	}
	last := s.scene.run.Frames[len(s.scene.run.Frames)-1].Minute
	if s.time.Value() >= last {
		s.at(0)
	}
	s.play.SetText("Stop")
	stopped := make(chan struct{})
	s.stopped = stopped
	mishap.Go(func() {
		tick := time.NewTicker(playEvery)
		defer tick.Stop()
		for {
			select {
			case <-stopped:
				return
			case <-tick.C:
				s.host.Post(func() { s.step(stopped) })
			}
		}
	})
}

// step is one tick of the playing that stopped ends.
func (s *stage) step(stopped chan struct{}) {
	if s.stopped != stopped || s.scene.run == nil {
		return
	}
	last := s.scene.run.Frames[len(s.scene.run.Frames)-1].Minute
	next := s.time.Value() + last*float64(playEvery)/float64(playTime)
	s.at(math.Min(next, last))
	if next >= last {
		s.stop()
	}
}

// stop ends the playing.
func (s *stage) stop() {
	if s.stopped != nil {
		close(s.stopped)
		s.stopped = nil
		s.play.SetText("Play")
	}
}

// stageLayout lays picture and curves side by side, or a flat picture on top.
type stageLayout struct{ shape float32 } // height over width of the tub

const (
	besideShare = 0.47 // what the picture gets of the width
	overShare   = 0.34 // or of the height, at most
	flat        = 0.33 // a shape that lies on top
	scaleRoom   = 100  // what the scale of colours takes of the width, or more
)

func (l *stageLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	picture, plot := objects[0], objects[1]
	w, h := size.Width*besideShare, float32(0)
	switch {
	case !picture.Visible():
		w = 0
	case l.shape < flat:
		w, h = 0, fyne.Min(size.Height*overShare, (size.Width-scaleRoom)*l.shape+4*theme.Padding())
		picture.Resize(fyne.NewSize(size.Width, h))
	default:
		picture.Resize(fyne.NewSize(w, size.Height))
	}
	picture.Move(fyne.NewPos(0, 0))
	plot.Move(fyne.NewPos(w, h))
	plot.Resize(fyne.NewSize(size.Width-w, size.Height-h))
}

// MinSize is that of both beside each other: the picture of a flat tub may be
// lower than the widget likes.
func (l *stageLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	a, b := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(fyne.Max(a.Width/besideShare, b.Width/(1-besideShare)), fyne.Max(a.Height, b.Height))
}
