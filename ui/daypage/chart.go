package daypage

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/desk/dayplan"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// look is how the bars of a row are filled: a kind of thing has its colour and
// its own hatch.
type look struct {
	colour fyne.ThemeColorName
	hatch  draw.Hatch
}

var looks = map[process.Resource]look{
	process.Hands: {theme.ColorNamePrimary, draw.Plain}, process.Mixer: {theme.ColorNamePrimary, draw.Rising},
	process.Pan: {kit.ColorNameDense, draw.Falling}, process.SyrupPan: {kit.ColorNameDense, draw.Crossed},
	process.EggBowl: {kit.ColorNameBoth, draw.Dots}, process.MixBowl: {kit.ColorNameBoth, draw.Rising},
	process.Dish: {kit.ColorNameBoth, draw.Level}, process.Turning: {kit.ColorNameBoth, draw.Crossed}, process.WaterBath: {kit.ColorNameFoam, draw.Dots},
	process.Freezer: {kit.ColorNameFoam, draw.Crossed}, process.Fridge: {kit.ColorNameFoam, draw.Falling},
}

// stretch is the part of the plan that is looked at.
func (p *Page) stretch() plan.Span {
	all := dayplan.Stretches(&p.answer.Plan)
	return all[min(max(0, p.part.SelectedIndex()), len(all)-1)]
}

// marksWanted is how many times of day stand under the chart.
const marksWanted = 7

// thin is a line's width, of the chart's; filled and worded are how dense a bar is.
const (
	thin   = 0.0015
	filled = 0.35
	worded = 0.25 // under a word
)

// named is the step of a bar, "" where the bar is too short for its name.
func (p *Page) named(b dayplan.Bar, s plan.Span) string {
	name := say.StepTitle(b.Step)
	room := float64(p.plot.Size().Width) * 0.8 * (b.ToMinutes - b.FromMinutes) / (s.ToMinutes - s.FromMinutes)
	if float64(fyne.MeasureText(name, theme.CaptionTextSize(), fyne.TextStyle{}).Width) > room-4 {
		return ""
	}
	return name
}

// draw draws what is taken over the stretch chosen.
func (p *Page) draw() {
	p.plot.ShowPlot(p.picture())
	p.tell()
}

func (p *Page) picture() chart.Plot {
	if p.answer == nil || len(p.rows) == 0 {
		return chart.Plot{NoLegend: true, X: chart.Axis{Ticks: []chart.Tick{}}, Y: chart.Axis{Ticks: []chart.Tick{}}}
	}
	s := p.stretch()
	edge := 0.02 * (s.ToMinutes - s.FromMinutes)
	n := float64(len(p.rows))
	v := chart.Plot{NoLegend: true,
		X: chart.Axis{Min: s.FromMinutes - edge, Max: s.ToMinutes + edge, NoGrid: true},
		Y: chart.Axis{Min: 0, Max: n, NoGrid: true}}
	day := -1
	for _, at := range dayplan.Marks(s, marksWanted) {
		t := p.answer.Clock(at)
		label := say.TimeOfDay(t)
		if t.YearDay() != day {
			day, label = t.YearDay(), say.Clock(t)
		}
		v.X.Ticks = append(v.X.Ticks, chart.Tick{Value: at, Label: label})
		line := chart.Upright(at, at+thin*(s.ToMinutes-s.FromMinutes)) // under the bars, where a grid would lie over them
		line.Fill = page.Ink(kit.ColorNameGrid)
		v.Bands = append(v.Bands, line)
	}
	for i, r := range p.rows {
		top := n - float64(i)
		v.Y.Ticks = append(v.Y.Ticks, chart.Tick{Value: top - 0.5, Label: say.Resource(r.What)})
		l := looks[r.What]
		ink := page.Ink(l.colour)
		lane := 0.8 / float64(r.Lanes)
		for _, b := range r.Bars {
			y1 := top - 0.1 - float64(b.Lane)*lane
			to := math.Max((b.FromMinutes+b.ToMinutes)/2, b.ToMinutes-thin*(s.ToMinutes-s.FromMinutes)) // a gap parts it from the next
			bar := chart.Patch{X0: b.FromMinutes, X1: to, Y0: y1 - 0.92*lane, Y1: y1, Fill: draw.Fade(ink, filled), Hatch: l.hatch, Line: draw.Stroke{Width: 1.2, Colour: ink}}
			if l.hatch == draw.Plain { // a word fits where no lines are
				if bar.Label, bar.Fill = p.named(b, s), ink; bar.Label != "" {
					bar.Fill = draw.Fade(ink, worded)
				}
			}
			v.Bands = append(v.Bands, bar)
		}
		if i > 0 {
			v.Rules = append(v.Rules, chart.Rule{At: top, Level: true, Line: draw.Stroke{Width: 1, Colour: page.Ink(kit.ColorNameGrid)}})
		}
	}
	return v
}

// words says who has what at a minute.
func (p *Page) words(minute float64) string {
	if p.answer == nil {
		return ""
	}
	parts := []string{say.Clock(p.answer.Clock(minute))}
	for _, t := range dayplan.At(p.rows, minute) {
		parts = append(parts, say.Taking(t.What, t.Step))
	}
	return strings.Join(parts, " · ")
}

// tell says what is at the reading line, or how to move it.
func (p *Page) tell() {
	text := p.plot.Reading()
	if text == "" && p.answer != nil {
		text = say.PointAtTime
	}
	p.read.ShowText(text)
}
