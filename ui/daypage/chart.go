package daypage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/desk/dayplan"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// palette is the picture's colours as the theme has them now.
func palette() dayplan.Palette {
	return dayplan.Palette{Grid: page.Ink(kit.ColorNameGrid), Inks: [dayplan.NumInks]draw.Colour{
		dayplan.OfCook: page.Ink(theme.ColorNamePrimary), dayplan.OfStove: page.Ink(kit.ColorNameDense),
		dayplan.OfBowls: page.Ink(kit.ColorNameBoth), dayplan.OfCold: page.Ink(kit.ColorNameFoam),
	}}
}

// stretch is the part of the plan that is looked at.
func (p *Page) stretch() plan.Span {
	all := dayplan.Stretches(&p.answer.Plan)
	return all[min(max(0, p.part.SelectedIndex()), len(all)-1)]
}

// fits reports whether a name has room in a bar of that share of the stretch.
func (p *Page) fits(name string, share float64) bool {
	room := float64(p.plot.Size().Width) * 0.8 * share
	return float64(fyne.MeasureText(name, theme.CaptionTextSize(), fyne.TextStyle{}).Width) <= room-4
}

// draw draws what is taken over the stretch chosen.
func (p *Page) draw() {
	p.plot.ShowPlot(p.picture())
	p.tell()
}

func (p *Page) picture() chart.Plot {
	if p.answer == nil || len(p.rows) == 0 {
		return chart.Nothing()
	}
	return dayplan.Picture(p.answer, p.rows, p.stretch(), palette(), p.fits)
}

// words says who has what at a minute.
func (p *Page) words(minute float64) string {
	if p.answer == nil {
		return ""
	}
	return dayplan.Words(p.answer, p.rows, minute)
}

// tell says what is at the reading line, or how to move it.
func (p *Page) tell() {
	text := p.plot.Reading()
	if text == "" && p.answer != nil {
		text = say.PointAtTime.String()
	}
	p.read.ShowText(text)
}
