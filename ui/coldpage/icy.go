package coldpage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/desk/planning"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// fillIce is how icy the custard eats, over the weeks.
func (p *Page) fillIce(v *view) {
	p.lever(v, say.T("Freezer"), "freezer.air_c", 0.5)
	p.lever(v, say.T("Swings by"), "freezer.swing_k", 0.5)
	p.lever(v, say.T("Opened"), "freezer.openings_per_day", 1)
	beating, show := selectOf(coldview.Beatings(), func(value string) {
		p.change(func(k *cold.Profile) { coldview.UseBeating(k, value) })
		p.keep(say.T("what beats the custard"))
	})
	v.levers = append(v.levers, func() { show(coldview.BeatingOf(&p.kitchen)) })
	v.add(beating)
	told := func(words func(*planning.Ice) string) func(*cold.Answer) string {
		return func(*cold.Answer) string {
			if p.ice == nil {
				return ""
			}
			return words(p.ice)
		}
	}
	v.bold(told(func(i *planning.Ice) string { return say.IceOf(page.Reads, "custard", &i.Custard) }))
	v.prose(told(func(i *planning.Ice) string { return say.IceKeeps(page.Reads, &i.Answer) }))
	v.prose(told(func(i *planning.Ice) string { return say.IceOf(page.Reads, "foam", &i.Foam) }))
	v.add(page.Small(say.IceFrom.String()))
	shares := kit.NewPlot()
	v.add(container.New(barsHigh{}, shares))
	v.show = append(v.show, func(*cold.Answer) {
		if p.ice != nil {
			shares.ShowPlot(coldview.IceShares(&p.ice.Answer, inks()))
		} else {
			shares.ShowPlot(chart.Nothing())
		}
	})
	v.prose(told(func(i *planning.Ice) string { return say.IceHelp(page.Reads, i.Remedies) }))
	v.prose(told(func(i *planning.Ice) string { return say.IcePutBack(page.Reads, &i.Answer) }))
	v.prose(told(func(i *planning.Ice) string { return say.IceLearnt(page.Reads, &i.Answer) }))
	v.prose(told(func(i *planning.Ice) string { return say.IceNotModelled(page.Reads, &i.Answer) }))
}

// iced takes how icy the plan eats, which comes after it.
func (p *Page) iced(job planning.Job, ice planning.Ice) {
	if p.answer == nil || job.Result != p.of.Result || job.Kitchen != p.of.Kitchen {
		return // of a plan that was not shown
	}
	p.ice = &ice
	p.showAnswer()
}

// brief is what the tile of q says.
func (p *Page) brief(q coldview.Question) say.Brief {
	switch {
	case p.answer == nil || q == coldview.Ice && p.ice == nil:
		return say.Brief{Answer: say.Unknown}
	case q == coldview.Ice:
		return say.IceBrief(page.Reads, &p.ice.Answer)
	}
	return q.Brief(page.Reads, p.answer)
}

// scene is what q is shown by.
func (p *Page) scene(q coldview.Question) coldview.Scene {
	if q != coldview.Ice {
		return q.Scene(p.answer, p.of.Result)
	}
	if p.ice == nil {
		return coldview.Scene{}
	}
	return coldview.IceScene(&p.ice.Answer)
}

// barsHigh gives the small picture of the shares its height.
type barsHigh struct{}

func (barsHigh) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

func (barsHigh) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(0, 13*theme.TextSize()) }
