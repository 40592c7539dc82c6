package ripplepage

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/rippleview"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// ribbonReport shows findings.
type ribbonReport struct {
	title     *widget.Label
	table     *kit.Figures
	thickness *kit.Plot
	chords    *widget.Label
	hand      *widget.Label // the mean as this hand stirs
	advice    *widget.RichText
	spoon     *widget.Label
	spoonful  *kit.Figures
	foam      *kit.Plot
	sweet     *kit.Plot
	body      *fyne.Container
	object    fyne.CanvasObject

	stirred func(*rippleview.Findings) string
}

func newRibbonReport(h page.Host) *ribbonReport {
	p := &ribbonReport{
		title: page.Heading(say.T("Ribbons")), table: kit.NewFigures(figure.Phases.Heads()[:figure.Tub]...), advice: widget.NewRichText(), chords: page.Prose(""), hand: page.Prose(""), spoon: page.Prose(""),
		spoonful:  kit.NewFigures(say.T("foam"), say.T("sweetness")),
		thickness: kit.NewPlot(), foam: kit.NewPlot(), sweet: kit.NewPlot(),
	}
	for _, x := range []*kit.Plot{p.thickness, p.foam, p.sweet} {
		x.OnRead = h.Say
	}
	p.thickness.Colours = []fyne.ThemeColorName{kit.ColorNameDense, kit.ColorNameFoam}
	p.foam.Colours = []fyne.ThemeColorName{kit.ColorNameFoam}
	p.sweet.Colours = []fyne.ThemeColorName{kit.ColorNameBoth}
	p.body = container.NewVBox(p.title, inset(p.table), p.hand, p.advice, tall(p.thickness), p.chords, page.Prose(say.RibbonWords(page.Reads)),
		page.Heading(say.ASpoonful(page.Reads)), p.spoon, inset(p.spoonful), tall(p.foam), tall(p.sweet),
		page.Prose(say.AboutSpoonful.String()))
	p.object = p.body
	p.stirred = func(*rippleview.Findings) string { return "" }
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

// wait says that the figures are still those of another picture.
func (p *ribbonReport) wait() { kit.SetText(p.title, say.Measuring.String()) }

// clear takes figures away that belong to no picture.
func (p *ribbonReport) clear() { p.body.Hide() }

// follow has s scroll to whatever the keyboard reaches.
func (p *ribbonReport) follow(s *container.Scroll) {
	for _, x := range []*kit.Plot{p.thickness, p.foam, p.sweet} {
		x.OnFocus = func() { page.ScrollTo(s, x) }
	}
}

func (p *ribbonReport) show(f *rippleview.Findings) {
	p.title.SetText(say.RibbonsTitle(f.View))
	p.table.ShowFigures(f.Ribbons(page.Reads))
	showNote(p.hand, p.stirred(f))
	p.thickness.ShowPlot(f.Thickness(page.Reads))
	p.chords.SetText(f.Chords(page.Reads))
	p.advice.Segments = nil
	for _, c := range f.Counsels(page.Reads) {
		style := widget.RichTextStyleParagraph
		style.TextStyle.Bold = c.Act
		p.advice.Segments = append(p.advice.Segments, &widget.TextSegment{Style: style, Text: c.Text})
	}
	p.advice.Refresh()
	p.spoon.SetText(f.Spoonfuls(page.Reads))
	p.spoonful.ShowFigures(f.Spoons(page.Reads))
	for _, x := range []struct {
		plot *kit.Plot
		of   func(say.Style) (chart.Plot, bool)
	}{{p.foam, f.FoamOfSpoons}, {p.sweet, f.SweetnessOfSpoons}} {
		plot, differ := x.of(page.Reads)
		x.plot.Hidden = !differ
		x.plot.ShowPlot(plot)
	}
	p.body.Show()
	p.body.Refresh()
}
