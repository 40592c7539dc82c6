package ripplepage

import (
	"fmt"
	"image/color"
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/chart"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// findings are the figures of one sharp cut.
type findings struct {
	view    ripple.View
	measure ripple.Measure
	foam    ripple.Spoonful
	sweet   ripple.Spoonful
	advice  []ripple.Advice
	serving serving
}

// serving is how the phases are when the dessert is eaten.
type serving struct {
	celsius     float64
	hardness    ripple.Serving
	dense, foam string // the words for their hardness
}

// study measures a cut. It runs away from the window's thread.
func (q request) study(r *ripple.Raster) findings {
	m := r.Measure()
	return findings{
		view: q.cutting.Cuts[0].View, measure: m,
		foam:   r.Spoon(ripple.SpoonML, ripple.FoamShare),
		sweet:  r.Spoon(ripple.SpoonML, q.sweet),
		advice: m.Advise(q.serving.hardness), serving: q.serving,
	}
}

// ribbonReport shows findings.
type ribbonReport struct {
	title     *widget.Label
	table     *kit.Figures
	thickness *kit.Plot
	chords    *widget.Label
	advice    *widget.RichText
	spoon     *widget.Label
	spoonful  *kit.Figures
	foam      *kit.Plot
	sweet     *kit.Plot
	body      *fyne.Container
	object    fyne.CanvasObject
}

func newRibbonReport(h page.Host) *ribbonReport {
	p := &ribbonReport{
		title: page.Heading("Ribbons"), table: kit.NewFigures("custard", "foam"), advice: widget.NewRichText(), chords: page.Prose(""), spoon: page.Prose(""),
		spoonful:  kit.NewFigures("foam", "sweetness"),
		thickness: kit.NewPlot(), foam: kit.NewPlot(), sweet: kit.NewPlot(),
	}
	for _, x := range []*kit.Plot{p.thickness, p.foam, p.sweet} {
		x.OnRead = h.Say
	}
	p.thickness.Colours = []fyne.ThemeColorName{kit.ColorNameDense, kit.ColorNameFoam}
	p.foam.Colours = []fyne.ThemeColorName{kit.ColorNameFoam}
	p.sweet.Colours = []fyne.ThemeColorName{kit.ColorNameBoth}
	p.body = container.NewVBox(p.title, inset(p.table), p.advice, tall(p.thickness), p.chords, page.Prose(wordsSentence()),
		page.Heading(fmt.Sprintf("A spoonful of %s mL", page.Number(ripple.SpoonML, 0))), p.spoon, inset(p.spoonful), tall(p.foam), tall(p.sweet),
		page.Prose("Spoonfuls are taken as cubes whose pattern runs straight through: ribbons bend, so real ones differ less. A spoon at a wall takes what is there and counts for as much, so their mean is the tub's. Sweetness is that of a sucrose solution of so many per cent."))
	p.object = p.body
	p.advice.Wrapping = fyne.TextWrapWord
	p.clear()
	return p
}

// inset moves o in to where labels have their text.
func inset(o fyne.CanvasObject) fyne.CanvasObject {
	in := theme.InnerPadding()
	return container.New(layout.NewCustomPaddedLayout(0, 0, in, in), o)
}

// tall gives a plot the height in which its steps can be told apart.
func tall(p *kit.Plot) fyne.CanvasObject {
	height := canvas.NewRectangle(color.Transparent)
	height.SetMinSize(fyne.NewSize(0, 190))
	return container.NewStack(height, p)
}

// wordsSentence says what the words for a thickness stand for.
func wordsSentence() string {
	var parts []string
	for _, w := range ripple.Words() {
		switch {
		case w.FromMM == 0:
			parts = append(parts, fmt.Sprintf("%s under %s mm", w.Word, page.Number(w.ToMM, 0)))
		case math.IsInf(w.ToMM, 1):
			parts = append(parts, fmt.Sprintf("%s over %s mm", w.Word, page.Number(w.FromMM, 0)))
		default:
			parts = append(parts, fmt.Sprintf("%s %s to %s mm", w.Word, page.Number(w.FromMM, 0), page.Number(w.ToMM, 0)))
		}
	}
	return "On the spoon: " + strings.Join(parts, ", ") + " (" + ripple.WordsBasis + "; so are the limits for firm and hard ribbons)."
}

const measuring = "Ribbons: measuring…"

// wait says that the figures are still those of another picture.
func (p *ribbonReport) wait() { kit.SetText(p.title, measuring) }

// clear takes figures away that belong to no picture.
func (p *ribbonReport) clear() { p.body.Hide() }

// follow has s scroll to whatever the keyboard reaches.
func (p *ribbonReport) follow(s *container.Scroll) {
	for _, x := range []*kit.Plot{p.thickness, p.foam, p.sweet} {
		x.OnFocus = func() { page.ScrollTo(s, x) }
	}
}

func (p *ribbonReport) show(f findings) {
	p.title.SetText("Ribbons, in the " + map[ripple.View]string{ripple.Side: "side cut", ripple.Top: "cut seen from above"}[f.view])
	p.table.ShowFigures(ribbonRows(&f.measure))
	p.thickness.ShowPlot(thicknessPlot(&f.measure))
	p.chords.SetText(chordsSentence(&f.measure))
	p.advice.Segments = adviceSegments(f)
	p.advice.Refresh()
	p.spoon.SetText(spoonSentence(f))
	p.spoonful.ShowFigures(spoonRows(&f.foam, &f.sweet))
	for _, x := range []struct {
		plot *kit.Plot
		s    ripple.Spoonful
		unit float64
		name string
	}{{p.foam, f.foam, 100, "foam in a spoonful, % of volume"}, {p.sweet, f.sweet, 1, "sweetness of a spoonful, % sucrose"}} {
		x.plot.Hidden = x.s.Samples == 0 || !(x.s.Highest > x.s.Lowest)
		x.plot.ShowPlot(spoonPlot(x.s, x.unit, x.name))
	}
	p.body.Show()
	p.body.Refresh()
}

func ribbonRows(m *ripple.Measure) []kit.Figure {
	d, f := &m.Dense, &m.Foam
	row := func(name string, of func(*ripple.Ribbons) float64) kit.Figure {
		return kit.Figure{Name: name, Unit: "mm", Cells: []string{page.Number(of(d), 1), page.Number(of(f), 1)}}
	}
	return []kit.Figure{
		{Name: "Share of the cut", Unit: "%", Cells: []string{page.Number(100*(1-m.FoamShare), 1), page.Number(100*m.FoamShare, 1)}},
		row("Mean thickness", func(r *ripple.Ribbons) float64 { return r.MeanMM }),
		{Name: "    eats as", Cells: []string{ripple.WordFor(d.MeanMM).String(), ripple.WordFor(f.MeanMM).String()}},
		row("Nine chords in ten under", func(r *ripple.Ribbons) float64 { return r.P90 }),
		row("Thickest tenth of them, mean", func(r *ripple.Ribbons) float64 { return r.ThickestTenthMM }),
	}
}

// longest is where the plot ends: Counts hold all longer chords in their last bin.
const longest = ripple.ChordBins - 1

// thicknessPlot shows how much of each phase lies in chords of each length.
func thicknessPlot(m *ripple.Measure) chart.Plot {
	last := 12
	for i := range m.Foam.Counts[:longest] {
		if m.Foam.Counts[i]+m.Dense.Counts[i] > 0.002 {
			last = max(last, i+1)
		}
	}
	end := float64(last) * ripple.ChordBinMM
	p := chart.Plot{
		X: chart.Axis{Title: "length of chords, mm", Min: 0, Max: end, NoGrid: true},
		Y: chart.Axis{Title: "% of the phase in them"},
	}
	for _, x := range []struct {
		name    string
		ribbons *ripple.Ribbons
		line    chart.Line
	}{
		{"custard", &m.Dense, chart.Line{Width: 2}},
		{"foam", &m.Foam, chart.Line{Width: 2, Dash: chart.Dashed}},
	} {
		if math.IsNaN(x.ribbons.P50) {
			x.name = "" // no such phase: none in the legend
		}
		p.Series = append(p.Series, stairs(x.name, x.ribbons.Counts[:last], 0, ripple.ChordBinMM, x.line))
	}
	top := 1.0
	for i := range p.Series {
		top = max(top, slices.Max(p.Series[i].Y))
	}
	p.Y.Max = 1.25 * top // the words stand over the curves
	for _, w := range ripple.Words()[1:] {
		band := chart.Upright(w.FromMM, min(w.ToMM, end))
		band.Label = w.Word.String()
		p.Bands = append(p.Bands, band)
		p.Rules = append(p.Rules, chart.Rule{At: w.FromMM, Line: chart.Line{Width: 1, Dash: chart.Dotted}})
	}
	return p
}

// chordsSentence explains the figures of the table and of the plot.
func chordsSentence(m *ripple.Measure) string {
	text := "Chords are the lengths that level and upright lines have within a phase; most cross a ribbon at a slant."
	if m.InterfaceMM > 0 {
		text = fmt.Sprintf("Mean thickness is twice a phase's area over the interface, here %s mm long. ", page.Number(m.InterfaceMM, 0)) + text
	}
	over := func(r *ripple.Ribbons) string { return page.Number(100*r.Counts[longest], 0) }
	if m.Dense.Counts[longest]+m.Foam.Counts[longest] > 0.005 {
		text += fmt.Sprintf(" Not in the plot: chords over %s mm, %s %% of the custard and %s %% of the foam.",
			page.Number(longest*ripple.ChordBinMM, 0), over(&m.Dense), over(&m.Foam))
	}
	return text
}

// stairs draws shares, as percent, over bins of one width.
func stairs(name string, shares []float64, from, width float64, line chart.Line) chart.Series {
	s := chart.Series{Name: name, Line: line}
	for i, v := range shares {
		x := from + float64(i)*width
		s.X, s.Y = append(s.X, x, x+width), append(s.Y, 100*v, 100*v)
	}
	return s
}

func spoonPlot(s ripple.Spoonful, unit float64, name string) chart.Plot {
	width := unit * (s.Highest - s.Lowest) / ripple.SpoonBins
	return chart.Plot{
		X: chart.Axis{Title: name, Min: unit * s.Lowest, Max: unit * s.Highest}, Y: chart.Axis{Title: "% of spoonfuls"}, NoLegend: true,
		Series: []chart.Series{stairs("% of spoonfuls", s.Counts[:], unit*s.Lowest, width, chart.Line{Width: 2})},
	}
}

func spoonRows(foam, sweet *ripple.Spoonful) []kit.Figure {
	row := func(name string, of func(*ripple.Spoonful) float64) kit.Figure {
		return kit.Figure{Name: name, Unit: "%", Cells: []string{page.Number(100*of(foam), 0), page.Number(of(sweet), 1)}}
	}
	return []kit.Figure{
		row("One spoonful in ten under", func(s *ripple.Spoonful) float64 { return s.P10 }),
		row("Half of them under", func(s *ripple.Spoonful) float64 { return s.P50 }),
		row("One in ten over", func(s *ripple.Spoonful) float64 { return s.P90 }),
		row("Mean", func(s *ripple.Spoonful) float64 { return s.Mean }),
		row("Standard deviation", func(s *ripple.Spoonful) float64 { return s.SD }),
	}
}

func spoonSentence(f findings) string {
	switch {
	case f.foam.Samples == 0:
		return "This cut is smaller than a spoonful."
	case f.foam.P90-f.foam.P10 < 0.02:
		return "Every spoonful is alike: there is no contrast from bite to bite."
	}
	text := fmt.Sprintf("Eight spoonfuls in ten hold %s to %s %% foam", page.Number(100*f.foam.P10, 0), page.Number(100*f.foam.P90, 0))
	if !math.IsNaN(f.sweet.P10) {
		text += fmt.Sprintf(" and taste of %s to %s %% sucrose", page.Number(f.sweet.P10, 1), page.Number(f.sweet.P90, 1))
	}
	return text + "."
}

// adviceSegments combines hardness with thickness, a line for each phase, bold
// where there is something to do.
func adviceSegments(f findings) []widget.RichTextSegment {
	line := func(bold bool, text string) widget.RichTextSegment {
		style := widget.RichTextStyleParagraph
		style.TextStyle.Bold = bold
		return &widget.TextSegment{Style: style, Text: text}
	}
	lines := []widget.RichTextSegment{line(false, "Served at "+chart.Number(f.serving.celsius, 1)+" °C:")}
	for _, a := range f.advice {
		name, word, kPa := "Foam", f.serving.foam, f.serving.hardness.FoamKPa
		if a.Phase == "dense" {
			name, word, kPa = "Custard", f.serving.dense, f.serving.hardness.DenseKPa
		}
		says := "ribbons of any thickness bite easily."
		switch {
		case a.Firmness == ripple.FirmnessUnknown:
			lines = append(lines, line(false, name+": its hardness is not known."))
			continue
		case a.Exceeded:
			says = fmt.Sprintf("keep its ribbons under %s mm (the thickest tenth has %s) or serve warmer.", page.Number(a.LimitMM, 0), page.Number(a.ThickestMM, 0))
		case a.Firmness != ripple.Soft:
			says = fmt.Sprintf("its ribbons are thin enough, under %s mm.", page.Number(a.LimitMM, 0))
		}
		lines = append(lines, line(a.Exceeded, fmt.Sprintf("%s: %s, about %s kPa; %s", name, word, page.Number(kPa, 1), says)))
	}
	return lines
}
