package coldpage

import (
	"fyne.io/fyne/v2/container"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// newViews makes a view of each question, in their order.
func (p *Page) newViews() []*view {
	var views []*view
	for _, q := range coldview.Questions() {
		v := newView(q, p.leadTo)
		switch q {
		case coldview.Custard:
			p.fillCustard(v)
		case coldview.Foam:
			p.fillFoam(v)
		case coldview.Harden:
			p.fillHarden(v)
		case coldview.Storage:
			p.fillStorage(v)
		case coldview.Ice:
			p.fillIce(v)
		default:
			p.fillServing(v)
		}
		views = append(views, v)
	}
	return views
}

// fillCustard is the custard freezing in its dish.
func (p *Page) fillCustard(v *view) {
	p.freezing(v)
	p.stirring(v)
	p.inDish(v)
	v.add(page.Small(say.T("Stir at")))
	v.table(coldview.StirHeads(page.Reads), func(a *cold.Answer) []say.TableRow { return coldview.StirRows(page.Reads, v.Freezes(a)) })
	v.prose(func(a *cold.Answer) string {
		c := v.Freezes(a)
		return say.StirColumns(len(coldview.FirstStirs(c)), len(c.Stirs))
	})
	v.fromAndTo()
}

// fillFoam is the foam cooling in its dish.
func (p *Page) fillFoam(v *view) {
	p.freezing(v)
	p.inDish(v)
	v.add(page.Prose(say.LeaveFoam.String()))
	v.fromAndTo()
}

// inDish adds when a phase is ready and how it stands.
func (p *Page) inDish(v *view) {
	v.bold(func(a *cold.Answer) string { return say.Together(page.Reads, &a.StillFreeze) })
	v.times(func(a *cold.Answer) []say.TableRow { return coldview.FreezingRows(page.Reads, v.Freezes(a)) })
	v.prose(func(a *cold.Answer) string { return say.InDish(page.Reads, v.Freezes(a)) })
}

// fillHarden is the filled tub in the freezer.
func (p *Page) fillHarden(v *view) {
	p.lever(v, say.T("Freezer"), "freezer.air_c", 0.5)
	p.tubShape(v)
	v.times(func(a *cold.Answer) []say.TableRow { return coldview.HardenRows(page.Reads, &a.Harden) })
	v.prose(func(a *cold.Answer) string { return say.IntoTheFreezer(page.Reads, a) })
	v.fromAndTo()
	p.calibration(v, cold.CoreAt)
}

// fillServing is the tub on the counter, or in the refrigerator.
func (p *Page) fillServing(v *view) {
	place, name := "counter", say.T("Counter")
	if v.Question == coldview.Fridge {
		place, name = "refrigerator", say.T("Refrigerator")
	}
	p.lever(v, name, place+".air_c", 0.5)
	p.lever(v, say.T("Freezer"), "freezer.air_c", 0.5)
	p.tubShape(v)
	v.bold(func(a *cold.Answer) string { return say.Softening(page.Reads, v.Softens(a)) })
	v.times(func(a *cold.Answer) []say.TableRow {
		return coldview.SofteningRows(page.Reads, v.Softens(a), p.of.Design.Serving.TemperatureC)
	})
	v.add(page.Small(say.T("The outer ring is right for")))
	v.table(coldview.BandHeads(page.Reads), func(a *cold.Answer) []say.TableRow { return coldview.BandRows(page.Reads, v.Softens(a)) })
	v.add(page.Small(say.T("Inside the tub")))
	v.table(coldview.InsideHeads(page.Reads), func(a *cold.Answer) []say.TableRow { return coldview.InsideRows(page.Reads, v.Softens(a)) })
	v.fromAndTo()
	if v.Question == coldview.Counter {
		p.calibration(v, cold.ScoopedWell)
	}
}

// fillStorage is the tub in the freezer for good.
func (p *Page) fillStorage(v *view) {
	p.lever(v, say.T("Freezer"), "freezer.air_c", 0.5)
	p.lever(v, say.T("Swings by"), "freezer.swing_k", 0.5)
	v.bold(func(a *cold.Answer) string { return say.Storage(page.Reads, &a.Storage) })
	v.prose(func(a *cold.Answer) string { return say.StorageChange(page.Reads, &a.Storage) })
	cause := container.NewHBox(kit.NewButton(say.ShowCause.String(), func() {
		if p.lead != nil {
			p.lead(coldview.WaterCause(p.answer))
		}
	}))
	v.show = append(v.show, func(a *cold.Answer) { cause.Hidden = !a.Storage.WaterDrawn })
	v.add(cause)
	v.table([]string{say.T("custard"), say.T("foam")}, func(a *cold.Answer) []say.TableRow { return coldview.StoredRows(page.Reads, &a.Storage) })
	v.add(page.Small(say.AgeingHead(page.Reads)))
	v.table([]string{"index"}, func(a *cold.Answer) []say.TableRow { return coldview.AgeingRows(page.Reads, &a.Storage) })
	v.prose(func(a *cold.Answer) string { return say.Ageing(page.Reads, &a.Storage) })
}
