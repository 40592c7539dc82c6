// Package chart turns numbers into a draw.List: axes with round ticks, curves, bands
// and markers.
//
// Nothing here is told by colour alone: every line has a dash pattern, every
// band a hatch, every series may have a marker. An unknown value is NaN and
// leaves a gap; it is never drawn as zero.
package chart

import (
	"math"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// An Axis is one scale of a plot. The zero Axis is linear and takes its limits
// from the data.
type Axis struct {
	Title    string // with the unit; written level, since not every device turns text
	Min, Max float64
	Log      bool
	Ticks    []Tick // nil: round values
	NoGrid   bool
}

// A Series is one curve. X and Y have the same length; a NaN in either leaves a gap.
type Series struct {
	Name   string // in the legend; empty keeps it out
	X, Y   []float64
	Line   draw.Stroke
	Marker draw.Marker
	Every  int  // points from one marker to the next; 0 sets about eight along the curve
	Right  bool // measured on the right axis
}

// A Patch is a filled rectangle in data coordinates, behind the curves. An
// infinite limit reaches to the edge of the plot.
type Patch struct {
	Label          string // written inside, at the top
	X0, X1, Y0, Y1 float64
	Fill           draw.Colour
	Hatch          draw.Hatch
	Line           draw.Stroke // of the hatch
}

// Upright returns a band over x0..x1, from the bottom of the plot to the top.
func Upright(x0, x1 float64) Patch {
	return Patch{X0: x0, X1: x1, Y0: math.Inf(-1), Y1: math.Inf(1)}
}

// An Area is what lies between two curves over the same X, such as a range of
// uncertainty. Points with a NaN are left out.
type Area struct {
	X, Lo, Hi []float64
	Fill      draw.Colour
	Hatch     draw.Hatch
	Line      draw.Stroke
}

// A Rule is a line right across the plot at one value.
type Rule struct {
	At    float64
	Level bool // at a Y value; otherwise upright, at an X value
	Label string
	Line  draw.Stroke
}

// A Look is what the device, the theme and the reader decide.
type Look struct {
	Ink, Muted, Grid draw.Colour
	Back             draw.Colour // behind the plot; transparent leaves it out
	Text             float64     // height of the font; 0 means 11
	Reads            say.Style   // how numbers are told
	// Measure returns the width of s in a font of the given height. Nil
	// estimates it, for devices without fonts.
	Measure func(s string, size float64) float64
}

func (s Look) size() float64 {
	if s.Text == 0 {
		return 11
	}
	return s.Text
}

func (s Look) width(t string) float64 {
	if s.Measure != nil {
		return s.Measure(t, s.size())
	}
	n := 0
	for range t {
		n++
	}
	return .55 * s.size() * float64(n)
}

// Nothing is a plot that shows nothing yet: axes without a tick, which would tell
// what nobody knows.
func Nothing() Plot { return Plot{NoLegend: true, X: Axis{Ticks: []Tick{}}, Y: Axis{Ticks: []Tick{}}} }

// A Plot is a picture of series over one x axis, and one or two y axes.
type Plot struct {
	X, Y     Axis
	Right    *Axis // nil: no second y axis
	Areas    []Area
	Bands    []Patch
	Series   []Series
	Rules    []Rule
	Style    Look
	NoLegend bool
}

// A Frame is where a plot's data ended up on its drawing.
type Frame struct {
	X, Y, Right Scale
	Box         draw.Rect
}

// Draw lays the plot out on d, w by h drawing units, after resetting d, and
// returns the frame for reading values back from positions. Room is made for
// tick labels and the legend as Style.Measure finds them; a plot too small for
// them has an empty frame.
func (p *Plot) Draw(d *draw.List, w, h float64) Frame {
	d.Reset(w, h)
	if p.Style.Back.A > 0 {
		d.Box(draw.Rect{X0: 0, Y0: 0, X1: w, Y1: h}, p.Style.Back)
	}
	s := p.Style
	line := s.size() * 1.45

	var f Frame
	f.X, f.Y = p.scaleX(), p.scaleY(p.Y, false)
	left, right := s.size()*.8, s.size()*1.2
	top := line * .55

	rows := 0
	if !p.NoLegend {
		rows = p.legend(nil, w)
	}
	top += float64(rows) * line
	if p.Y.Title != "" || p.Right != nil && p.Right.Title != "" {
		top += line
	}
	bottom := line * 1.25
	if p.X.Title != "" {
		bottom += line
	}
	plotHeight := h - top - bottom
	ticksY := axisTicks(s.Reads, p.Y, f.Y, int(plotHeight/(2.6*s.size())))
	left += s.widest(ticksY) + 4
	var ticksRight []Tick
	if p.Right != nil {
		f.Right = p.scaleY(*p.Right, true)
		ticksRight = axisTicks(s.Reads, *p.Right, f.Right, int(plotHeight/(2.6*s.size())))
		right = s.size()*.8 + s.widest(ticksRight) + 4
	}
	f.Box = draw.Rect{X0: left, Y0: top, X1: math.Max(left+1, w-right), Y1: math.Max(top+1, h-bottom)}
	f.X.Lo, f.X.Hi = f.Box.X0, f.Box.X1
	f.Y.Lo, f.Y.Hi = f.Box.Y1, f.Box.Y0
	f.Right.Lo, f.Right.Hi = f.Box.Y1, f.Box.Y0
	ticksX := axisTicks(s.Reads, p.X, f.X, int(f.Box.Dx()/(5*s.size())))

	for _, a := range p.Areas {
		p.area(d, f, a)
	}
	p.bands(d, f)
	p.axisX(d, f, ticksX)
	p.axisY(d, f, p.Y, f.Y, ticksY, false)
	if p.Right != nil {
		p.axisY(d, f, *p.Right, f.Right, ticksRight, true)
	}
	for _, r := range p.Rules {
		p.rule(d, f, r)
	}
	for i := range p.Series {
		p.curve(d, f, &p.Series[i])
	}
	if !p.NoLegend {
		p.legend(d, w)
	}
	return f
}

func (p *Plot) scaleX() Scale {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, s := range p.Series {
		lo, hi = extent(lo, hi, p.X.Log, s.X)
	}
	return limits(p.X, lo, hi, false)
}

func (p *Plot) scaleY(a Axis, right bool) Scale {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, s := range p.Series {
		if s.Right == right {
			lo, hi = extent(lo, hi, a.Log, s.Y)
		}
	}
	if !right {
		for _, r := range p.Areas {
			lo, hi = extent(lo, hi, a.Log, r.Lo)
			lo, hi = extent(lo, hi, a.Log, r.Hi)
		}
	}
	return limits(a, lo, hi, true)
}

// limits settles an axis: its own limits if set, otherwise the data's, with a
// little air above and below a linear y axis.
func limits(a Axis, lo, hi float64, air bool) Scale {
	if a.Min != 0 || a.Max != 0 {
		lo, hi = a.Min, a.Max
	} else if air && !a.Log && hi > lo {
		pad := .05 * (hi - lo)
		if lo >= 0 && lo < 6*pad {
			lo = pad // starts at zero after the padding below
		}
		lo, hi = lo-pad, hi+pad
	}
	if a.Log && !(lo > 0) {
		lo = math.Max(hi, 1) / 10
	}
	if !(hi > lo) { // no data, or one value
		switch {
		case math.IsInf(lo, 0):
			lo, hi = 0, 1
			if a.Log {
				lo, hi = .1, 1
			}
		case a.Log:
			lo, hi = lo/2, lo*2
		default:
			lo, hi = lo-1, lo+1
		}
	}
	return Scale{Min: lo, Max: hi, Log: a.Log}
}

func axisTicks(reads say.Style, a Axis, s Scale, n int) []Tick {
	switch {
	case a.Ticks != nil:
		return a.Ticks
	case a.Log:
		return LogTicks(reads, s.Min, s.Max)
	}
	return Ticks(reads, s.Min, s.Max, max(2, min(n, 10)))
}

func (s Look) widest(ticks []Tick) float64 {
	w := 0.0
	for _, t := range ticks {
		w = math.Max(w, s.width(t.Label))
	}
	return w
}
