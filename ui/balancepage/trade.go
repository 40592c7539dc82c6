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

// tradePlots are what one wish costs each of those that it pulls against: a curve for
// each pair, and under them the design of the point that is pressed, to be taken like any
// other.
func (p *Page) tradePlots(c *balance.Conflict, all []balance.Outcome) fyne.CanvasObject {
	if len(c.Trade) < 2 || len(c.Against) == 0 {
		return container.NewVBox()
	}
	box, reading, picked := container.NewVBox(), page.Prose(say.TradeAbout.String()), container.NewVBox()
	tell := func(text string) {
		if text == "" {
			text = say.TradeAbout.String()
		}
		kit.SetText(reading, text)
	}
	along := say.TradeGauge(page.Reads, &c.Wish)
	pick := func(x, _ float64) {
		t := nearestTrade(c, along.Kept(x))
		p.texts = p.texts[:min(p.own, len(p.texts))] // the one picked before is gone
		picked.Objects = []fyne.CanvasObject{page.Prose(say.TradePoint(page.Reads, c, all, t)), p.proposal(&t.Proposal)}
		picked.Refresh()
	}
	for n := range c.Against {
		plot := kit.NewPlot()
		plot.ShowPlot(tradeCurve(c, &all[c.Against[n]].Wish, n))
		plot.Words = func(x float64) string { return say.TradePoint(page.Reads, c, all, nearestTrade(c, along.Kept(x))) }
		plot.OnRead, plot.OnPick = tell, pick
		box.Add(plot)
	}
	return container.NewVBox(box, reading, picked)
}

// tradeCurve is what the wish of c costs the n-th of those against it.
func tradeCurve(c *balance.Conflict, other *balance.Wish, n int) chart.Plot {
	curve := chart.Series{Marker: draw.Disc, Every: 1}
	x, y := say.TradeGauge(page.Reads, &c.Wish), say.TradeGauge(page.Reads, other)
	for i := range c.Trade {
		curve.X, curve.Y = append(curve.X, x.Shown(c.Trade[i].Value)), append(curve.Y, y.Shown(c.Trade[i].Against[n]))
	}
	v := chart.Plot{X: airy(say.TradeAxis(page.Reads, &c.Wish), curve.X), Y: airy(say.TradeAxis(page.Reads, other), curve.Y), Series: []chart.Series{curve}, NoLegend: true}
	v.Style.Reads = page.Reads
	return v
}

// airy is an axis that leaves room around its points.
func airy(title string, of []float64) chart.Axis {
	low, high := math.Inf(1), math.Inf(-1)
	for _, v := range of {
		low, high = math.Min(low, v), math.Max(high, v)
	}
	air := 0.08 * (high - low)
	if air == 0 {
		air = 0.05 * math.Max(math.Abs(high), 0.1)
	}
	return chart.Axis{Title: title, Min: low - air, Max: high + air}
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
