// Package shoppage is the page of shopping: what to buy for some designs and batches.
package shoppage

import (
	"bytes"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/shop"
	"ripplewright/internal/desk/basket"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Setup is what the page needs beside a Host.
type Setup struct {
	// Pick asks for a design's file.
	Pick func(then func(path string))
	// Told gets what a test of the window waits for; nil: nobody listens.
	Told func(event string, args ...any)
	// File names the file of the open design, "" without one.
	File func() string
}

// Page is the page of shopping.
type Page struct {
	host   page.Host
	setup  Setup
	basket basket.Basket

	batches *kit.NumberField
	others  *fyne.Container
	list    *kit.Figures
	said    *widget.Label
	bought  report.Shopping
	exports []*kit.Button
	object  fyne.CanvasObject
}

// New returns the page.
func New(h page.Host, s Setup) *Page {
	p := &Page{host: h, setup: s, others: container.NewVBox(), said: page.Prose("")}
	heads := say.BoughtHeads()
	p.said.TextStyle.Bold = true
	p.list = kit.NewFigures(heads.Need, heads.Buy, heads.Pays, heads.Left)
	p.batches = page.NumberField("", 1, shop.MostBatches, 0)
	p.batches.ShowValue(1)
	p.batches.OnChanged = func(v float64) { p.basket.SetBatches(int(v)); p.Show() }
	add := kit.NewButtonWithIcon(say.T("Add a design…"), theme.ContentAddIcon(), func() { s.Pick(p.add) })
	for _, x := range []struct{ name, ending string }{{say.T("Export list…"), ".md"}, {say.T("Export text…"), ".txt"}} {
		p.exports = append(p.exports, kit.NewButton(x.name, func() { p.export(x.ending) }))
	}
	p.object = page.ScrolledBothWays(page.Heading(say.T("Shopping list")),
		container.NewHBox(widget.NewLabel(say.T("Batches of the open design")), p.batches), p.others,
		container.NewHBox(add, p.exports[0], p.exports[1]), p.list, p.said)
	return p
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {}

// Show implements page.Page.
func (p *Page) Show() {
	p.showList()
}

// showList adds up what to buy.
func (p *Page) showList() {
	l, bought, err := p.basket.List(p.host.Model(), p.setup.File(), p.host.Design(), p.host.Result())
	for _, b := range p.exports {
		if err != nil {
			b.Disable()
		} else {
			b.Enable()
		}
	}
	if err != nil {
		p.list.ShowFigures(nil)
		kit.SetText(p.said, say.Sentence(say.Flaw(err)))
		return
	}
	p.bought = bought
	s := page.Reads.In(l.Currency)
	rows := make([]say.TableRow, len(l.Items))
	for i := range l.Items {
		b := say.Buy(s, &l.Items[i])
		rows[i] = say.TableRow{Name: page.Brief(b.What, 30), Cells: []string{b.Need, b.Buy, b.Pays, b.Left}}
	}
	p.list.ShowFigures(rows)
	text := say.ShopTotal(page.Reads, &l)
	if eggs := say.ShopEggs(page.Reads, &l); eggs != "" {
		text += " " + eggs
	}
	kit.SetText(p.said, text)
	p.told("shop items=%d designs=%d", len(l.Items), 1+len(p.basket.Others()))
}

func (p *Page) told(event string, args ...any) {
	if p.setup.Told != nil {
		p.setup.Told(event, args...)
	}
}

// add puts the design in a file into the basket.
func (p *Page) add(path string) {
	if err := p.basket.Add(path, p.host.Model()); err != nil {
		kit.Tell(p.host.Window(), say.T("This did not work"), say.Sentence(say.Flaw(err)))
		return
	}
	p.showOthers()
	p.Show()
}

// showOthers lists the other designs of the basket.
func (p *Page) showOthers() {
	p.others.Objects = nil
	for i, o := range p.basket.Others() {
		n := page.NumberField("", 1, shop.MostBatches, 0)
		n.ShowValue(float64(o.Batches))
		n.OnChanged = func(v float64) { p.basket.SetOther(i, int(v)); p.Show() }
		away := kit.NewButtonWithIcon(say.T("Take out"), theme.ContentRemoveIcon(), func() {
			p.basket.Remove(i)
			p.showOthers()
			p.Show()
		})
		name := page.Brief(o.Design.Name, 30) + " (" + page.Brief(filepath.Base(o.Path), 24) + ")"
		p.others.Add(container.NewHBox(widget.NewLabel(name), n, away))
	}
	p.others.Refresh()
}

func (p *Page) export(ending string) {
	bought := p.bought
	p.host.Export(say.T("%s, shopping%s", page.FileTitle(p.host.Design()), ending), func(path string) error {
		var text bytes.Buffer
		write := bought.WriteMarkdown
		if ending == ".txt" {
			write = bought.WriteText
		}
		if err := write(&text); err != nil {
			return err
		}
		return atomicfile.Write(path, text.Bytes())
	})
}
