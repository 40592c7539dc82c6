// Package daypage is the page of the day on which a design is made: when to
// begin, what is taken when, and what gives way to what.
package daypage

import (
	"errors"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/plan"
	"ripplewright/internal/desk/dayplan"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/making"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page is the page of the day.
type Page struct {
	host     page.Host
	kitchens *kitchens.Book
	clock    func() time.Time
	told     func(event string, args ...any)
	work     *newest.Answers[dayplan.Question, dayplan.Answer]

	asked  dayplan.Question
	waits  bool            // for the answer to it
	answer *dayplan.Answer // nil: none yet, or none to be had
	rows   []dayplan.Row

	ask          *widget.RadioGroup
	day          *kit.Select
	days         []time.Time // of the choices, midnights
	hour, minute *kit.NumberField
	when         *fyne.Container
	head, moved  *widget.Label
	part         *kit.Select
	plot         *kit.Plot
	read         *kit.Lines
	list         *fyne.Container
	from, to     *kit.NumberField // the hours in which the cook works
	kitchen      cold.Profile
	split        *container.Split
	exports      []*kit.Button
	object       fyne.CanvasObject
}

// The questions.
const (
	serveAt  say.Message = "I serve at"
	startNow say.Message = "I start now"
)

// ahead is how many days one can choose among.
const ahead = 21

// New returns the page. clock is the time of the maker's day; told gets what a
// test of the window waits for.
func New(h page.Host, k *kitchens.Book, clock func() time.Time, told func(event string, args ...any)) *Page {
	p := &Page{host: h, kitchens: k, clock: clock, told: told, head: page.Bold(""), moved: page.Prose(""), list: container.NewVBox()}
	p.work = newest.NewAnswers(h.Post, dayplan.Of, p.done)

	p.ask = page.Choice(func() { p.showWhen(); p.Show() }, serveAt.String(), startNow.String())
	p.ask.Horizontal = true
	p.day = kit.NewSelect(nil, func(string) { p.Show() })
	p.day.PlaceHolder = say.DayName(time.Date(2026, 9, 30, 0, 0, 0, 0, time.UTC)) // it is as wide as the longest
	p.hour, p.minute = page.NumberField("h", 0, 23, 0), page.NumberField("min", 0, 59, 0)
	p.minute.Step = 5
	p.hour.Digits, p.minute.Digits = 2, 2
	p.hour.ShowValue(15)
	p.minute.ShowValue(0)
	p.hour.OnChanged, p.minute.OnChanged = func(float64) { p.Show() }, func(float64) { p.Show() }
	p.offerDays()
	p.when = container.NewHBox(p.day, p.hour, p.minute)
	for _, x := range []struct{ name, ending string }{{say.T("Export calendar…"), ".ics"}, {say.T("Export table…"), ".md"}} {
		p.exports = append(p.exports, kit.NewButton(x.name, func() { p.export(x.ending) }))
	}
	p.part = kit.NewSelect(nil, func(string) { p.draw() })
	p.plot = kit.NewPlot()
	p.plot.Words = p.words
	p.read = kit.NewLines(1, fyne.TextAlignLeading, "text", fyne.TextStyle{})
	p.plot.OnRead = func(string) { p.tell() }

	question := container.NewHBox(p.ask, p.when)
	out := container.NewHBox(p.exports[0], p.exports[1])
	top := container.NewVBox(container.NewBorder(nil, nil, question, out), p.head, p.moved)
	drawn := container.NewBorder(container.NewBorder(nil, nil, widget.NewLabel(say.T("Show")), nil, p.part), p.read, nil, nil, p.plot)
	p.from, p.to = page.NumberField("h", 0, 23, 1), page.NumberField("h", 1, 30, 1)
	p.from.Step, p.to.Step = 0.5, 0.5
	p.from.OnChanged, p.to.OnChanged = func(float64) { p.keepHours() }, func(float64) { p.keepHours() }
	hours := container.NewHBox(widget.NewLabel(say.T("You work from")), p.from, widget.NewLabel(say.T("to")), p.to)
	p.split = container.NewHSplit(drawn, container.NewBorder(hours, nil, nil, nil, container.NewVScroll(p.list)))
	p.split.Offset = 0.66
	p.object = container.NewBorder(top, nil, nil, nil, p.split)
	return p
}

// offerDays names the days to choose among, tomorrow but one to begin with.
func (p *Page) offerDays() {
	y, m, d := p.clock().Date()
	today := time.Date(y, m, d, 0, 0, 0, 0, p.clock().Location())
	if len(p.days) > 0 && p.days[0].Equal(today) {
		return
	}
	chosen := today.AddDate(0, 0, 2)
	if i := p.day.SelectedIndex(); i >= 0 {
		chosen = p.days[i]
	}
	p.days, p.day.Options = nil, nil
	at := 0
	for i := range ahead {
		day := today.AddDate(0, 0, i)
		p.days = append(p.days, day)
		p.day.Options = append(p.day.Options, say.DayName(day))
		if day.Equal(chosen) {
			at = i
		}
	}
	page.ShowSelected(p.day, p.day.Options[at])
}

func (p *Page) showWhen() {
	if p.ask.Selected == serveAt.String() {
		p.when.Show()
	} else {
		p.when.Hide()
	}
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() {
	p.work.Stop()
	if p.waits {
		p.asked, p.waits = dayplan.Question{}, false
	}
}

// Show implements page.Page.
func (p *Page) Show() {
	p.offerDays()
	d := p.host.Design()
	k, err := p.kitchens.Find(d.Kitchen.Profile)
	if err != nil {
		k, _ = p.kitchens.Find("") // the page of the cold says so
	}
	p.kitchen = k
	p.from.ShowValue(k.Cook.FromHours)
	p.to.ShowValue(k.Cook.ToHours)
	r := *p.host.Result() // the session's is overwritten by the next
	q := dayplan.Question{Job: making.Job{Design: d, Result: &r, Kitchen: p.kitchens.Taught(d, k)}, Serve: p.ask.Selected == serveAt.String(), At: p.clock().Truncate(time.Minute), Reads: page.Reads}
	if q.Serve {
		day := p.days[p.day.SelectedIndex()]
		q.At = time.Date(day.Year(), day.Month(), day.Day(), int(p.hour.Value()), int(p.minute.Value()), 0, 0, day.Location())
	}
	if p.asked.Result != nil && p.asked.Same(q) {
		return
	}
	p.asked, p.waits = q, true
	p.work.Ask(q)
	if p.answer == nil {
		kit.SetText(p.head, say.T("Computing…"))
	}
}

// done takes an answer.
func (p *Page) done(q dayplan.Question, a dayplan.Answer, err error) {
	p.answer, p.waits = nil, false
	switch {
	case errors.Is(err, plan.ErrNoTime):
		p.none(say.NoTime.String())
	case errors.Is(err, dayplan.ErrNothing):
		p.none(say.NothingToMake.String())
	case err != nil:
		p.none(say.Sentence(say.Flaw(err)))
	default:
		p.answer = &a
		p.show(q)
		p.told("plan computed tasks=%d moved=%d", len(a.Plan.Tasks), len(a.Plan.Moved))
	}
}

// none says why there is no plan.
func (p *Page) none(why string) {
	p.rows = nil
	kit.SetText(p.head, why)
	kit.SetText(p.moved, "")
	p.object.Refresh()
	p.list.Objects = nil
	p.list.Refresh()
	p.part.Options = nil
	p.part.ClearSelected()
	p.draw()
	for _, b := range p.exports {
		b.Disable()
	}
}

// show puts the answer on screen.
func (p *Page) show(q dayplan.Question) {
	a := p.answer
	head := say.DayHead(page.Reads, &a.Plan, a.Day.Begins, a.Day.Serves)
	if q.Serve && a.Day.Begins.Before(p.clock()) {
		head = say.TooLate(a.Day.Begins)
	}
	kit.SetText(p.head, head)
	var moved []string
	for _, m := range a.Plan.Moved {
		moved = append(moved, say.Moved(page.Reads, m))
	}
	if moved == nil {
		moved = []string{say.Undivided.String()}
	}
	if a.Untimed != nil {
		moved = append(moved, say.Untimed(a.Untimed))
	}
	kit.SetText(p.moved, strings.Join(moved, " "))
	p.object.Refresh() // more lines, or fewer
	p.rows = dayplan.RowsOf(&a.Plan)
	p.offerParts()
	p.showList()
	p.draw()
	for _, b := range p.exports {
		b.Enable()
	}
}

// offerParts lets one look at the whole plan or at one stretch of work.
func (p *Page) offerParts() {
	at := max(0, p.part.SelectedIndex())
	p.part.Options = nil
	for i, s := range dayplan.Stretches(&p.answer.Plan) {
		name := say.TimeSpan(p.answer.Clock(s.FromMinutes), p.answer.Clock(s.ToMinutes))
		if i == 0 {
			name = say.AllOf(name)
		}
		p.part.Options = append(p.part.Options, name)
	}
	if at >= len(p.part.Options) {
		at = 0
	}
	page.ShowSelected(p.part, p.part.Options[at])
}

// keepHours keeps the hours in which the cook works, with the kitchen.
func (p *Page) keepHours() {
	k := p.kitchen
	k.Cook.FromHours, k.Cook.ToHours = p.from.Value(), p.to.Value()
	if k == p.kitchen {
		return
	}
	if err := p.kitchens.Keep(k, k.Name); err != nil {
		p.host.Say(say.Sentence(say.Flaw(err)))
		return
	}
	p.Show()
}

// showList lists the steps by the clock, each day under its name.
func (p *Page) showList() {
	p.list.Objects = nil
	day := ""
	for _, t := range p.answer.Day.Tasks {
		if name := say.DayName(t.Begins); name != day {
			day = name
			p.list.Add(page.Small(day))
		}
		p.list.Add(page.Bold(say.TimeOfStep(t.Begins, t.Ends) + "   " + t.Title))
		p.list.Add(page.Prose(t.Text))
	}
	p.list.Refresh()
}
