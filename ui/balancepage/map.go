package balancepage

import (
	"math"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// blended shows what blends of the sugars come to.
func (p *Page) blended(spots []balance.Spot, err error) {
	if err != nil {
		kit.SetText(p.reading, err.Error())
		return
	}
	p.spots = spots
	p.draw()
}

// draw puts the blends, the open design and the alternatives on the map.
func (p *Page) draw() {
	r := p.host.Result()
	series := func(name string, m draw.Marker, of []balance.Spot, role phase.Role) chart.Series {
		s := chart.Series{Name: name, Marker: m, Every: 1}
		for _, x := range of {
			if x.Role == role {
				s.X, s.Y = append(s.X, x.Sweetness), append(s.Y, x.KPa)
			}
		}
		return s
	}
	now := []balance.Spot{
		{Role: phase.Dense, Sweetness: r.Dense.SweetnessPercent, KPa: r.Dense.State.YieldKPa},
		{Role: phase.Foam, Sweetness: r.Foam.SweetnessPercent, KPa: r.Foam.State.YieldKPa},
	}
	all := []chart.Series{
		series(say.MapCustard, draw.Square, p.spots, phase.Dense), series(say.MapFoam, draw.Triangle, p.spots, phase.Foam),
		series(say.MapNow, draw.Disc, now, phase.Dense), series("", draw.Disc, now, phase.Foam),
	}
	if len(p.others) > 0 {
		all = append(all, series(say.MapOthers, draw.Diamond, p.others, phase.Dense), series("", draw.Diamond, p.others, phase.Foam))
	}
	v := chart.Plot{X: chart.Axis{Title: say.MapSweet}, Y: chart.Axis{Title: say.MapHard, Log: true}, Series: all}
	v.Style.Reads = page.Reads
	p.plot.ShowPlot(v)
}

// nearest returns the spot nearest to a place of the map, nil without any; y is
// NaN where only the sweetness counts.
func (p *Page) nearest(x, y float64) *balance.Spot {
	var best *balance.Spot
	far := math.Inf(1)
	for _, of := range [...][]balance.Spot{p.spots, p.others} {
		for i := range of {
			by := math.Abs(of[i].Sweetness-x) / 10
			if !math.IsNaN(y) {
				by = math.Hypot(by, math.Log(of[i].KPa/y))
			}
			if by < far {
				best, far = &of[i], by
			}
		}
	}
	return best
}

// read says what the spot nearest to a sweetness is.
func (p *Page) read(x float64) string {
	if s := p.nearest(x, math.NaN()); s != nil {
		return say.Spot(page.Reads, s)
	}
	return ""
}

// pick takes the spot nearest to where the map is pressed, as one step of undo.
func (p *Page) pick(x, y float64) {
	if s := p.nearest(x, y); s != nil {
		p.host.Say(say.Spot(page.Reads, s))
		p.host.Commit(s.Design, say.BlendStep)
	}
}
