// Package notebookpage is the page of the batches: one is written down with few, large
// fields, and what all of them teach stands beside.
package notebookpage

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/desk/notebook"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/batch"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page is the page of the batches.
type Page struct {
	host     page.Host
	book     *notebook.Book
	kitchens *kitchens.Book
	clock    func() time.Time
	told     func(event string, args ...any)

	expect   *newest.Answers[notebook.Job, batch.Forecast]
	writing  *newest.Answers[notebook.Job, notebook.Written]
	expected batch.Forecast // of the next batch; the zero one while it is not known
	asked    *notebook.Job  // nil: nothing is

	at      string // the notebook whose draft the form shows
	picture func(then func(path string))
	form    *form
	taught  *teaching
	past    *history
	wrong   *widget.Label
	object  fyne.CanvasObject
}

// New returns the page. clock is the time of the maker's day; picture asks for the
// path of a picture; told gets what a test of
// the window waits for.
func New(h page.Host, b *notebook.Book, k *kitchens.Book, clock func() time.Time, picture func(then func(path string)), told func(event string, args ...any)) *Page {
	p := &Page{picture: picture, host: h, book: b, kitchens: k, clock: clock, told: told, wrong: page.Bold("")}
	p.wrong.Importance = widget.DangerImportance
	p.expect = newest.NewAnswers(h.Post, notebook.Expected, p.known)
	p.writing = newest.NewAnswers(h.Post, notebook.Write, p.written)
	p.form, p.taught, p.past = newForm(p), newTeaching(p), newHistory(p)
	var left *container.Scroll
	above := container.NewVBox(p.wrong, page.Heading(say.NotebookLog.String()), page.Prose(say.NotebookAbout.String()), p.form.object)
	// The words below are of many lines and scroll by themselves.
	left = container.NewScroll(container.NewPadded(container.NewVBox(kit.Rolled(above, func() *container.Scroll { return left }), p.form.words, p.form.write)))
	right := page.Scrolled(p.taught.object, p.past.object)
	split := container.NewHSplit(left, right)
	split.Offset = 0.42
	p.object = split
	b.Tell(func() { p.form.choices() })
	return p
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {
	p.expect.Stop()
	p.asked = nil
}

// Show implements page.Page.
func (p *Page) Show() {
	p.book.Follow()
	if at := p.book.Path(); at != p.at {
		p.at = at
		p.form.put()
	}
	d := p.host.Design()
	k, _ := p.kitchens.For(d.Kitchen.Profile)
	j := p.book.Job(p.host.Model(), d, k, p.clock())
	if a := p.asked; a == nil || !a.Design.Equal(j.Design) || a.Kitchen != j.Kitchen || a.Model != j.Model {
		p.asked, p.expected = &j, batch.Forecast{}
		j.Batch = batch.Batch{}
		p.expect.Ask(j)
	}
	p.show()
}

func (p *Page) show() {
	text := ""
	if p.book.Err != nil {
		text = say.NotebookWrong(p.book.Err)
	}
	kit.SetText(p.wrong, text)
	p.wrong.Hidden = text == ""
	d := p.host.Design()
	taught := p.book.Taught(&d)
	p.form.show()
	p.taught.show(&taught)
	p.past.show(&taught)
}

// known takes the forecast of the next batch.
func (p *Page) known(_ notebook.Job, f batch.Forecast, err error) {
	if err != nil {
		return // a design that cannot be made says so on the bench
	}
	p.expected = f
	p.show()
}

// planned is the batch as the design expects it.
func (p *Page) planned() batch.Batch {
	d := p.host.Design()
	k, _ := p.kitchens.For(d.Kitchen.Profile)
	return notebook.Planned(&p.expected, &d, k, &p.book.Draft)
}

// write has the draft written down.
func (p *Page) write() {
	d := p.host.Design()
	k, _ := p.kitchens.For(d.Kitchen.Profile)
	p.form.take()
	p.writing.Ask(p.book.Job(p.host.Model(), d, k, p.clock()))
}

// written takes what came of it.
func (p *Page) written(_ notebook.Job, l notebook.Written, err error) {
	if err != nil {
		p.host.Say(say.Sentence(say.Flaw(err)))
		p.told("notebook refused %v", err)
		return
	}
	p.book.Done()
	p.form.put()
	p.host.Say(say.BatchSaid(l.Entry.ID, l.NoVersion))
	p.told("notebook wrote %s", l.Entry.ID)
	p.Show()
}

// export writes the table of all batches.
func (p *Page) export() {
	notes := p.book.Notes
	p.host.Export(say.NotebookFile, func(path string) error {
		text, err := notebook.Table(&notes)
		if err != nil {
			return err
		}
		return atomicfile.Write(path, text)
	})
}
