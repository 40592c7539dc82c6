package balancepage

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// blendMap is where the blends of a phase's sugars lie: each phase has its own, since
// the one is ten times as hard as the other and half as sweet.
type blendMap struct {
	role phase.Role
	plot *kit.Plot
}

// tall gives a plot the height that its points need.
type tall struct{}

func (tall) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(o[0].MinSize().Width, 19*theme.TextSize())
}

func (tall) Layout(o []fyne.CanvasObject, size fyne.Size) { o[0].Resize(size) }

// newMaps returns the maps of both phases, one below the other.
func (p *Page) newMaps() fyne.CanvasObject {
	box := container.NewVBox()
	for i := range p.maps {
		m := &p.maps[i]
		m.role, m.plot = phase.Role(i), kit.NewPlot()
		m.plot.OnPick = func(x, y float64) { p.pick(m.role, x, y) }
		m.plot.Words = func(x float64) string { return p.read(m.role, x) }
		m.plot.OnRead = func(text string) { kit.SetText(p.reading, text) }
		box.Add(container.New(tall{}, m.plot))
	}
	return box
}

// blended shows what blends of the sugars come to.
func (p *Page) blended(spots []balance.Spot, err error) {
	if err != nil {
		kit.SetText(p.reading, say.Flaw(err))
		return
	}
	p.spots = spots
	p.draw()
}

// draw puts the blends, the open design and the alternatives on the maps.
func (p *Page) draw() {
	r := p.host.Result()
	for i, ph := range [...]struct {
		name         string
		mark         draw.Marker
		sweet, yield float64
	}{{say.MapCustard.String(), draw.Square, r.Dense.SweetnessPercent, r.Dense.State.YieldKPa}, {say.MapFoam.String(), draw.Triangle, r.Foam.SweetnessPercent, r.Foam.State.YieldKPa}} {
		role := p.maps[i].role
		all := []chart.Series{
			spotSeries(ph.name, ph.mark, p.spots, role),
			spotSeries(say.MapNow.String(), draw.Disc, []balance.Spot{{Role: role, Sweetness: ph.sweet, KPa: ph.yield}}, role),
		}
		all[1].Line.Width = 3 // a larger mark
		if len(p.others) > 0 {
			all = append(all, spotSeries(say.MapOthers.String(), draw.Diamond, p.others, role))
		}
		v := chart.Plot{X: chart.Axis{Title: say.MapSweet.String()}, Y: chart.Axis{Title: say.MapHard.String(), Log: true}, Series: all}
		var sweet, hard []float64
		for _, s := range all {
			sweet, hard = append(sweet, s.X...), append(hard, s.Y...)
		}
		if low, high, ok := ends(hard); ok {
			v.Y.Min, v.Y.Max = low/1.3, high*1.3
			v.X = airy(say.MapSweet.String(), sweet)
		}
		v.Style.Reads = page.Reads
		p.maps[i].plot.ShowPlot(v)
	}
}

func spotSeries(name string, m draw.Marker, of []balance.Spot, role phase.Role) chart.Series {
	s := chart.Series{Name: name, Marker: m, Every: 1}
	for _, x := range of {
		if x.Role == role && x.KPa > 0 && !math.IsInf(x.KPa, 0) {
			s.X, s.Y = append(s.X, x.Sweetness), append(s.Y, x.KPa)
		}
	}
	return s
}

// ends are the least and the most of what is known; ok is false of nothing.
func ends(of []float64) (low, high float64, ok bool) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, v := range of {
		if !math.IsNaN(v) {
			low, high, ok = math.Min(low, v), math.Max(high, v), true
		}
	}
	return low, high, ok
}

// nearest returns the spot of a phase nearest to a place of its map, nil without any; y
// is NaN where only the sweetness counts.
func (p *Page) nearest(role phase.Role, x, y float64) *balance.Spot {
	var best *balance.Spot
	far := math.Inf(1)
	for _, of := range [...][]balance.Spot{p.spots, p.others} {
		for i := range of {
			if of[i].Role != role {
				continue
			}
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
func (p *Page) read(role phase.Role, x float64) string {
	if s := p.nearest(role, x, math.NaN()); s != nil {
		return say.Spot(page.Reads, s)
	}
	return ""
}

// pick takes the spot nearest to where the map is pressed, as one step of undo.
func (p *Page) pick(role phase.Role, x, y float64) {
	if s := p.nearest(role, x, y); s != nil {
		p.host.Say(say.Spot(page.Reads, s))
		p.host.Commit(s.Design, say.BlendStep.String())
	}
}
