package ripplepage

import (
	"image/color"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
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
	celsius  float64
	hardness ripple.Serving
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
	p.body = container.NewVBox(p.title, inset(p.table), p.advice, tall(p.thickness), p.chords, page.Prose(say.RibbonWords(page.Reads)),
		page.Heading("A spoonful of "+page.Reads.Volume(ripple.SpoonML)), p.spoon, inset(p.spoonful), tall(p.foam), tall(p.sweet),
		page.Prose("A spoonful is taken as a cube with the same pattern all the way through: ribbons bend, so real spoonfuls differ less. Their mean is the tub's. Sweetness is that of so much sugar in water."))
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
	p.chords.SetText(say.Chords(page.Reads, &f.measure, longest*ripple.ChordBinMM, f.measure.Dense.Counts[longest], f.measure.Foam.Counts[longest]))
	p.advice.Segments = adviceSegments(f)
	p.advice.Refresh()
	p.spoon.SetText(say.Spoonfuls(page.Reads, f.foam, f.sweet))
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

func ribbonRows(m *ripple.Measure) []say.TableRow {
	d, f := &m.Dense, &m.Foam
	row := func(name string, of func(*ripple.Ribbons) float64) say.TableRow {
		return say.TableRow{Name: name, Unit: "mm", Cells: []string{page.Number(of(d), 1), page.Number(of(f), 1)}}
	}
	return []say.TableRow{
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
		Style: chart.Look{Reads: page.Reads},
		X:     chart.Axis{Title: "length of chords, mm", Min: 0, Max: end, NoGrid: true},
		Y:     chart.Axis{Title: "% of the phase in them"},
	}
	for _, x := range []struct {
		name    string
		ribbons *ripple.Ribbons
		line    draw.Stroke
	}{
		{"custard", &m.Dense, draw.Stroke{Width: 2}},
		{"foam", &m.Foam, draw.Stroke{Width: 2, Dash: draw.Dashed}},
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
		p.Rules = append(p.Rules, chart.Rule{At: w.FromMM, Line: draw.Stroke{Width: 1, Dash: draw.Dotted}})
	}
	return p
}

// stairs draws shares, as percent, over bins of one width.
func stairs(name string, shares []float64, from, width float64, line draw.Stroke) chart.Series {
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
		Style: chart.Look{Reads: page.Reads},
		X:     chart.Axis{Title: name, Min: unit * s.Lowest, Max: unit * s.Highest}, Y: chart.Axis{Title: "% of spoonfuls"}, NoLegend: true,
		Series: []chart.Series{stairs("% of spoonfuls", s.Counts[:], unit*s.Lowest, width, draw.Stroke{Width: 2})},
	}
}

func spoonRows(foam, sweet *ripple.Spoonful) []say.TableRow {
	row := func(name string, of func(*ripple.Spoonful) float64) say.TableRow {
		return say.TableRow{Name: name, Unit: "%", Cells: []string{page.Number(100*of(foam), 0), page.Number(of(sweet), 1)}}
	}
	return []say.TableRow{
		row("One spoonful in ten under", func(s *ripple.Spoonful) float64 { return s.P10 }),
		row("Half of them under", func(s *ripple.Spoonful) float64 { return s.P50 }),
		row("One in ten over", func(s *ripple.Spoonful) float64 { return s.P90 }),
		row("Mean", func(s *ripple.Spoonful) float64 { return s.Mean }),
		row("Standard deviation", func(s *ripple.Spoonful) float64 { return s.SD }),
	}
}

// adviceSegments combines hardness with thickness, a line for each phase, bold
// where there is something to do.
func adviceSegments(f findings) []widget.RichTextSegment {
	line := func(bold bool, text string) widget.RichTextSegment {
		style := widget.RichTextStyleParagraph
		style.TextStyle.Bold = bold
		return &widget.TextSegment{Style: style, Text: text}
	}
	lines := []widget.RichTextSegment{line(false, "Served at "+page.Reads.Temperature(f.serving.celsius)+":")}
	for _, a := range f.advice {
		kPa := f.serving.hardness.FoamKPa
		if a.Phase == "dense" {
			kPa = f.serving.hardness.DenseKPa
		}
		lines = append(lines, line(a.Exceeded, say.RibbonAdvice(page.Reads, a, kPa)))
	}
	return lines
}
