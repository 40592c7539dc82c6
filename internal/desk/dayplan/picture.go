package dayplan

import (
	"math"
	"strings"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// Ink is which colour the bars of a row have.
type Ink uint8

// The inks.
const (
	OfCook Ink = iota
	OfStove
	OfBowls
	OfCold
	NumInks
)

// Look is how the bars of a row are filled: a kind of thing has its colour and
// its own hatch.
type Look struct {
	Ink   Ink
	Hatch draw.Hatch
}

// Looks has a look of its own for each thing of the kitchen.
var Looks = map[process.Resource]Look{
	process.Hands: {OfCook, draw.Plain}, process.Mixer: {OfCook, draw.Rising},
	process.Pan: {OfStove, draw.Falling}, process.SyrupPan: {OfStove, draw.Crossed},
	process.EggBowl: {OfBowls, draw.Dots}, process.MixBowl: {OfBowls, draw.Rising},
	process.Dish: {OfBowls, draw.Level}, process.Turning: {OfBowls, draw.Crossed}, process.WaterBath: {OfCold, draw.Dots},
	process.Freezer: {OfCold, draw.Crossed}, process.Fridge: {OfCold, draw.Falling},
}

// Palette is the colours of a picture.
type Palette struct {
	Inks [NumInks]draw.Colour
	Grid draw.Colour
}

// marksWanted is how many times of day stand under the chart.
const marksWanted = 7

// thin is a line's width, of the chart's; filled and worded are how dense a bar
// is, worded under a word.
const (
	thin   = 0.0015
	filled = 0.35
	worded = 0.25
)

// Picture draws what is taken over the stretch s of a's plan, a row under the
// other. fits reports whether a name has room in a share of the stretch.
func Picture(a *Answer, rows []Row, s plan.Span, look Palette, fits func(name string, share float64) bool) chart.Plot {
	width := s.ToMinutes - s.FromMinutes
	edge := 0.02 * width
	n := float64(len(rows))
	v := chart.Plot{NoLegend: true,
		X: chart.Axis{Min: s.FromMinutes - edge, Max: s.ToMinutes + edge, NoGrid: true},
		Y: chart.Axis{Min: 0, Max: n, NoGrid: true}}
	day := -1
	for _, at := range Marks(s, marksWanted) {
		t := a.Clock(at)
		label := say.TimeOfDay(t)
		if t.YearDay() != day {
			day, label = t.YearDay(), say.Clock(t)
		}
		v.X.Ticks = append(v.X.Ticks, chart.Tick{Value: at, Label: label})
		line := chart.Upright(at, at+thin*width) // under the bars, where a grid would lie over them
		line.Fill = look.Grid
		v.Bands = append(v.Bands, line)
	}
	for i, r := range rows {
		top := n - float64(i)
		v.Y.Ticks = append(v.Y.Ticks, chart.Tick{Value: top - 0.5, Label: say.Resource(r.What)})
		v.Bands = append(v.Bands, r.bars(top, width, look, fits)...)
		if i > 0 {
			v.Rules = append(v.Rules, chart.Rule{At: top, Level: true, Line: draw.Stroke{Width: 1, Colour: look.Grid}})
		}
	}
	return v
}

// bars draws the row under top, of a stretch of width minutes.
func (r *Row) bars(top, width float64, look Palette, fits func(name string, share float64) bool) []chart.Patch {
	of := Looks[r.What]
	ink := look.Inks[of.Ink]
	lane := 0.8 / float64(r.Lanes)
	var out []chart.Patch
	for _, b := range r.Bars {
		y1 := top - 0.1 - float64(b.Lane)*lane
		to := math.Max((b.FromMinutes+b.ToMinutes)/2, b.ToMinutes-thin*width) // a gap parts it from the next
		bar := chart.Patch{X0: b.FromMinutes, X1: to, Y0: y1 - 0.92*lane, Y1: y1, Fill: draw.Fade(ink, filled), Hatch: of.Hatch, Line: draw.Stroke{Width: 1.2, Colour: ink}}
		if of.Hatch == draw.Plain { // a word fits where no lines are
			bar.Fill = ink
			if name := say.StepTitle(b.Step); fits(name, (b.ToMinutes-b.FromMinutes)/width) {
				bar.Label, bar.Fill = name, draw.Fade(ink, worded)
			}
		}
		out = append(out, bar)
	}
	return out
}

// Words says who has what at a minute.
func Words(a *Answer, rows []Row, minute float64) string {
	parts := []string{say.Clock(a.Clock(minute))}
	for _, t := range At(rows, minute) {
		parts = append(parts, say.Taking(t.What, t.Step))
	}
	return strings.Join(parts, " · ")
}
