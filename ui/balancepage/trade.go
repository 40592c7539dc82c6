package balancepage

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// tradePlot is what one wish costs another: the curve, and under it the design of the
// point that is pressed, to be taken like any other.
func (p *Page) tradePlot(c *balance.Conflict, all []balance.Outcome) fyne.CanvasObject {
	if len(c.Trade) < 2 || len(c.Against) == 0 {
		return container.NewVBox()
	}
	other := &all[c.Against[0]].Wish
	curve := chart.Series{Marker: draw.Disc, Every: 1}
	for i := range c.Trade {
		curve.X, curve.Y = append(curve.X, c.Trade[i].Value), append(curve.Y, c.Trade[i].Against)
	}
	plot, picked := kit.NewPlot(), container.NewVBox()
	v := chart.Plot{X: chart.Axis{Title: say.TradeAxis(&c.Wish)}, Y: chart.Axis{Title: say.TradeAxis(other)}, Series: []chart.Series{curve}, NoLegend: true}
	v.Style.Reads = page.Reads
	plot.ShowPlot(v)
	reading := page.Prose(say.TradeAbout)
	plot.Words = func(x float64) string { return say.TradePoint(page.Reads, c, other, nearestTrade(c, x)) }
	plot.OnRead = func(text string) {
		if text == "" {
			text = say.TradeAbout
		}
		kit.SetText(reading, text)
	}
	plot.OnPick = func(x, _ float64) {
		t := nearestTrade(c, x)
		picked.Objects = []fyne.CanvasObject{page.Prose(say.TradePoint(page.Reads, c, other, t)), p.proposal(&t.Proposal)}
		picked.Refresh()
	}
	return container.NewVBox(plot, reading, picked)
}

// nearestTrade is the point of the curve nearest to a value of the wish.
func nearestTrade(c *balance.Conflict, x float64) *balance.Trade {
	best := &c.Trade[0]
	for i := range c.Trade {
		if math.Abs(c.Trade[i].Value-x) < math.Abs(best.Value-x) {
			best = &c.Trade[i]
		}
	}
	return best
}
