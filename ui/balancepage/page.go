// Package balancepage is the page on which a maker asks for a tub and gets the
// weights, and sees how sure the open design is.
package balancepage

import (
	"reflect"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/mending"
	"ripplewright/internal/desk/wishing"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page is the page of wishes.
type Page struct {
	host   page.Host
	locks  *mending.Mender // knows which lines are locked on the bench
	in     *kitchens.Book
	finder *wishing.Finder
	taught func(d design.Design) *sure.Learnt // of its batches; nil: nobody knows
	wishes wishing.Wishes

	find   *kit.Button
	answer *fyne.Container
	from   design.Design // of which the weights were looked for last, and
	was    model.Result  // what it comes to
	texts  []func()      // of the answer: each says again what is known by now
	own    int           // how many of them are not of a picked point
	likely *widget.Label
	of     *sampledOf // last; nil: nothing

	likelies *sure.Answer // nil until known
	figure   *kit.Select  // whose bars are shown
	bars     *kit.Plot
	barless  *widget.Label // in their place, where nobody knows

	spots   []balance.Spot // of the map
	others  []balance.Spot // the alternatives found
	maps    [2]blendMap    // by phase.Role
	reading *widget.Label

	left   *container.Scroll
	object fyne.CanvasObject
}

// sampledOf is a design in a kitchen of which batches have taught so much.
type sampledOf struct {
	d      design.Design
	in     cold.Profile // with nothing learnt
	learnt *sure.Learnt
}

// New returns the page; locks tells which lines of the bench must not move.
func New(h page.Host, locks *mending.Mender, in *kitchens.Book) *Page {
	p := &Page{host: h, locks: locks, in: in, answer: container.NewVBox(), likely: page.Prose("")}
	p.finder = wishing.New(h.Post, p.found, p.sampled, p.blended, p.told)
	p.reading = page.Prose("")
	p.bars, p.barless = kit.NewPlot(), page.Prose(say.SureUnknown.String())
	p.bars.Words = func(float64) string { return "" }
	p.barless.Hide()
	p.figure = kit.NewSelect(say.SureFigures(), func(string) { p.drawBars() })
	page.ShowSelected(p.figure, p.figure.Options[0])
	p.find = kit.NewButton(say.FindWeights.String(), p.look)
	p.find.Importance = widget.HighImportance
	p.wishes.KeepsIce = true
	p.left = page.ScrolledBothWays(page.Heading(say.WishesTitle.String()), page.Prose(say.WishesAbout.String()), p.form(), container.NewHBox(p.find),
		page.Heading(say.SureTitle.String()), p.likely,
		container.NewBorder(nil, nil, widget.NewLabel(say.SureShows.String()), nil, p.figure), p.bars, p.barless,
		page.Prose(say.WishCounts.String()), p.counts())
	fyne.CurrentApp().Settings().AddListener(func(fyne.Settings) { h.Post(func() { p.drawBars(); p.draw() }) })
	right := page.ScrolledBothWays(page.Heading(say.AnswerTitle.String()), p.answer,
		page.Heading(say.MapTitle.String()), page.Prose(say.MapAbout.String()), p.newMaps(), p.reading)
	p.answer.Add(page.Prose(say.NothingAsked.String()))
	split := container.NewHSplit(p.left, right)
	split.Offset = 0.5
	p.object = split
	return p
}

// form is the wishes, one below the other.
func (p *Page) form() fyne.CanvasObject {
	words := []string{say.AnyTexture.String()}
	for _, w := range phase.Words {
		words = append(words, say.Of(w.Name))
	}
	texture := func(of *string) fyne.CanvasObject {
		s := kit.NewSelect(words, func(word string) {
			*of = ""
			for _, w := range phase.Words {
				if say.Of(w.Name) == word {
					*of = w.Name
				}
			}
		})
		page.ShowSelected(s, words[0])
		return s
	}
	end := func(unit string, most float64, decimals int, of *wishing.End) fyne.CanvasObject {
		return ended(page.NumberField(unit, 0, most, decimals), of)
	}
	tick := func(text string, of *bool) fyne.CanvasObject {
		c := kit.NewCheck(text, func(on bool) { *of = on })
		c.Checked = *of
		return c
	}
	w := &p.wishes
	return container.NewVBox(
		widget.NewForm(
			widget.NewFormItem(say.WishCustard.String(), texture(&w.Custard)),
			widget.NewFormItem(say.WishFoam.String(), texture(&w.Foam)),
			widget.NewFormItem(say.WishName.String(), p.named()),
			widget.NewFormItem(say.WishSweet.String(), container.NewHBox(end("%", 60, 1, &w.SweetFrom), widget.NewLabel(say.WishTo.String()), end("%", 60, 1, &w.SweetTo)))),
		tick(say.WishIce.String(), &w.KeepsIce),
		container.NewHBox(tick(say.WishEggs.String(), &w.WholeEggs), end(say.T("eggs"), 1000, 0, &w.Eggs)),
		tick(say.WishServe.String(), &w.MayServeAt),
		widget.NewLabel(say.WishMore.String()), p.more(), p.packs(), p.cautions(), p.adds())
}

// ended lets a field hold an end of a wish, which is open where the field is empty.
func ended(n *kit.NumberField, of *wishing.End) *kit.NumberField {
	n.Empties = true
	n.ShowValue(of.Value())
	n.OnChanged = func(v float64) { *of = wishing.At(v) }
	return n
}

// more are wishes for any figure, with both ends open until something is typed.
func (p *Page) more() fyne.CanvasObject {
	names := []string{say.AnyTexture.String()}
	for _, q := range balance.Quantities {
		names = append(names, say.WishFigure(page.Reads, q))
	}
	box := container.NewVBox()
	for i := range p.wishes.More {
		of := &p.wishes.More[i]
		from, to := ended(kit.NewNumberField("", -40, 1e6, 2), &of.From), ended(kit.NewNumberField("", -40, 1e6, 2), &of.To)
		which := kit.NewSelect(names, nil)
		which.OnChanged = func(string) {
			of.Of = nil
			reads := page.Reads.Gauge("")
			if k := which.SelectedIndex(); k > 0 {
				of.Of = balance.Quantities[k-1]
				reads = page.Reads.Gauge(of.Of.Unit)
			}
			reads.Unit = "" // the name tells it
			from.ReadAs(reads)
			to.ReadAs(reads)
			of.From, of.To = wishing.At(from.Value()), wishing.At(to.Value())
		}
		page.ShowSelected(which, names[0])
		box.Add(container.NewBorder(nil, nil, nil, container.NewHBox(from, widget.NewLabel(say.WishTo.String()), to), which))
	}
	return box
}

// named is the name of food whose limits the custard keeps.
func (p *Page) named() fyne.CanvasObject {
	names := []string{say.AnyTexture.String()}
	for _, s := range label.Standards {
		names = append(names, say.StandardName(s.ID))
	}
	which := kit.NewSelect(names, nil)
	which.OnChanged = func(string) {
		p.wishes.Name = ""
		if k := which.SelectedIndex(); k > 0 {
			p.wishes.Name = label.Standards[k-1].ID
		}
	}
	page.ShowSelected(which, names[0])
	return which
}

// kitchen is that of the open design, as its batches have shown it.
func (p *Page) kitchen() cold.Profile { return p.in.Made(p.host.Design()) }

// published is that kitchen with nothing learnt: what is learnt moves the samples.
func (p *Page) published() cold.Profile {
	k, _ := p.in.For(p.host.Design().Kitchen.Profile)
	return k
}

// Teach has the page ask f what the batches of a design teach of its kitchen.
func (p *Page) Teach(f func(d design.Design) *sure.Learnt) { p.taught = f }

func (p *Page) learnt(d design.Design) *sure.Learnt {
	if p.taught == nil {
		return nil
	}
	return p.taught(d)
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() { p.finder.Stop() }

// Show implements page.Page.
func (p *Page) Show() {
	d := p.host.Design()
	now := sampledOf{d, p.published(), p.learnt(d)}
	if p.of == nil || !p.of.d.Equal(d) {
		p.finder.Blend(p.host.Model(), d, p.locks.Locks(d))
	} else if p.of.in == now.in && reflect.DeepEqual(p.of.learnt, now.learnt) {
		return
	}
	p.of = &now
	p.finder.Sample(p.host.Model(), d, p.host.Result(), now.in, now.learnt)
}

// look asks for the weights.
func (p *Page) look() {
	p.put(page.Prose(say.Looking.String()))
	p.from, p.was = p.host.Design(), *p.host.Result()
	p.finder.Find(p.host.Model(), p.host.Design(), p.wishes.Ask(p.locks.Locks(p.host.Design()), p.kitchen()))
}

// put makes o the answer.
func (p *Page) put(o ...fyne.CanvasObject) {
	p.answer.Objects = o
	p.answer.Refresh()
}

// found shows the answer: what is met, what pulls apart, and the designs.
func (p *Page) found(a balance.Answer, err error) {
	if err != nil {
		p.put(page.Prose(say.Flaw(err)))
		return
	}
	var all []fyne.CanvasObject
	p.texts = nil
	for i := range a.Outcomes {
		all = append(all, page.Prose(say.Outcome(page.Reads, &a.Outcomes[i])))
	}
	for i := range a.Conflicts {
		all = append(all, page.Bold(say.Conflict(page.Reads, &a.Conflicts[i], a.Outcomes)), p.tradePlots(&a.Conflicts[i], a.Outcomes))
	}
	title := say.NearestTitle.String()
	if a.Met {
		title = say.MetTitle.String()
	}
	all = append(all, page.Heading(title), p.proposal(&a.Nearest))
	for i := range a.Alternatives {
		x := &a.Alternatives[i]
		all = append(all, widget.NewSeparator(), page.Bold(say.GivesWay(page.Reads, a.Outcomes, x.Outcomes)), p.proposal(&x.Proposal))
	}
	p.own = len(p.texts)
	p.put(all...)
	p.others = nil
	for _, of := range append([]balance.Alternative{{Proposal: a.Nearest}}, a.Alternatives...) {
		for i, ph := range [...]*model.Phase{&of.Result.Dense, &of.Result.Foam} {
			p.others = append(p.others, balance.Spot{Role: phase.Role(i), Sweetness: ph.SweetnessPercent, KPa: ph.State.YieldKPa, Design: of.Design})
		}
	}
	p.draw()
	p.finder.Compare(&a, p.from, &p.was, p.kitchen())
}

// told says again of every design of the answer what it brings.
func (p *Page) told() {
	for _, tell := range p.texts {
		tell()
	}
}

// proposal is a design with what it changes, and a button that takes it as one
// step of undo.
func (p *Page) proposal(of *balance.Proposal) fyne.CanvasObject {
	if len(of.Changes) == 0 {
		return page.Prose(say.NothingMoves.String())
	}
	table := kit.NewFigures(say.ChangeHeads()...)
	var rows []say.TableRow
	for i := range of.Changes {
		before, after := say.ChangeValues(page.Reads, &of.Changes[i])
		rows = append(rows, say.TableRow{Name: page.Brief(say.ChangeName(&of.Changes[i]), 34), Cells: []string{before, after}})
	}
	table.ShowFigures(rows)
	text := page.Prose("")
	tell := func() {
		said := say.Capital(say.Gives(page.Reads, of)) + "."
		if elsewhere := say.Elsewhere(page.Reads, &p.was, of); len(elsewhere) > 0 {
			said += " " + say.Capital(strings.Join(elsewhere, "; ")) + "."
		}
		kit.SetText(text, said)
	}
	tell()
	p.texts = append(p.texts, tell)
	take := kit.NewButtonWithIcon(say.Apply.String(), theme.ConfirmIcon(), func() { p.host.Commit(of.Design, say.RemedyStep.String()) })
	return container.NewVBox(text, table, container.NewHBox(take))
}

// sampled shows how sure the open design is.
func (p *Page) sampled(a sure.Answer, err error) {
	if err != nil {
		kit.SetText(p.likely, say.Flaw(err))
		return
	}
	kit.SetText(p.likely, say.HowOften(&a)+" "+say.SureHow(page.Reads, &a))
	p.likelies = &a
	p.drawBars()
}
