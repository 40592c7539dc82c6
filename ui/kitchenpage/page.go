// Package kitchenpage is the page for wet hands: one step at a time, in letters
// to be read from the stove, with its timer.
package kitchenpage

import (
	"context"
	"math"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/making"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/desk/stove"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page shows one step of the making.
type Page struct {
	host     page.Host
	kitchens *kitchens.Book
	told     func(event string, args ...any)
	ring     func()
	work     *newest.Answers[making.Job, made]

	job       making.Job // shown
	asked     bool       // for its times in the cold
	now       say.Making
	trial     *stove.Trial                                         // a reading that is not kept; nil: none
	bowlReadC float64                                              // what a thermometer showed in the foam of the design shown; 0: nobody looked
	keeping   func(of process.Reading, v float64, d design.Design) // nil: nobody
	walk      stove.Walk
	timers    *stove.Timers
	still     context.CancelFunc // ends what looks at the timers; nil: nothing does
	inView    bool

	back, next *kit.Pad
	place      *widget.Label
	title      *widget.Label
	things     *widget.Label
	text       *widget.Label
	scroll     *container.Scroll
	clock      *timerRow
	reading    *readingRow
	object     fyne.CanvasObject
}

// made is a making, and why it has no times in the cold.
type made struct {
	say.Making
	untimed error
}

// Keeping has keep told of each reading that is kept, with the design that it was read
// of: before the reading changed it.
func (p *Page) Keeping(keep func(of process.Reading, v float64, d design.Design)) { p.keeping = keep }

// Setup is what the page needs beside a Host.
type Setup struct {
	Now  func() time.Time                // the clock of the timers
	Told func(event string, args ...any) // gets what a test of the window waits for
	Ring func()                          // sounds when a timer ends, on a goroutine of its own; nil: nothing sounds
}

// New returns the page.
func New(h page.Host, k *kitchens.Book, s Setup) *Page {
	p := &Page{host: h, kitchens: k, told: s.Told, ring: s.Ring, timers: stove.NewTimers(s.Now)}
	p.work = newest.NewAnswers(h.Post, func(ctx context.Context, j making.Job) (made, error) {
		m, untimed := making.Of(ctx, j)
		return made{m, untimed}, ctx.Err()
	}, p.done)

	p.back, p.next = kit.NewPad(say.T("Back"), func() { p.turn(-1) }), kit.NewPad(say.T("Next"), func() { p.turn(1) })
	p.next.Strong = true
	p.place, p.title = widget.NewLabel(""), page.Bold("")
	p.place.Alignment, p.title.Alignment = fyne.TextAlignCenter, fyne.TextAlignCenter
	p.place.SizeName, p.title.SizeName = theme.SizeNameSubHeadingText, kit.SizeNameTimer
	p.things, p.text = page.Bold(""), page.Prose("")
	p.things.SizeName, p.text.SizeName = kit.SizeNameStep, kit.SizeNameStep
	p.scroll = container.NewVScroll(container.New(beside{}, p.things, p.text))
	p.clock = newTimerRow(p)
	p.reading = newReadingRow(p)
	for _, pad := range []*kit.Pad{p.back, p.next, p.clock.main, p.clock.clear, p.clock.alarm, p.reading.keep, p.reading.drop} {
		pad.OnKey = p.TypedKey
	}
	head := container.NewBorder(nil, nil, p.back, p.next, container.NewVBox(p.place, p.title))
	foot := container.NewVBox(p.reading.object, widget.NewSeparator(), p.clock.object)
	p.object = container.NewPadded(container.NewBorder(head, foot, nil, nil, p.scroll))
	return p
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// ReadAnew shows what is typed as the maker reads it now. The timers go on.
func (p *Page) ReadAnew() { p.reading.readAnew() }

// Leave implements page.Page. The timers go on.
func (p *Page) Leave() {
	p.inView = false
	p.work.Stop()
	p.asked = false
}

// Show implements page.Page.
func (p *Page) Show() {
	d := p.host.Design()
	k := p.kitchens.Made(d) // of one that is not there the page of the cold tells
	r := *p.host.Result()   // the session's is overwritten by the next
	if p.job.Result != nil && p.trial == nil && !p.job.Design.Equal(d) {
		p.bowlReadC = 0 // was of another foam
	}
	job := making.Job{Design: d, Result: &r, Kitchen: k, BowlReadC: p.bowlReadC}
	if p.job.Result == nil || !p.job.Same(job) {
		if p.trial != nil && p.trial.Same(job) { // it was kept
			p.now = p.trial.Making
		} else {
			p.now = making.At(job, p.now.Cold) // until its own times are there
		}
		p.job, p.trial, p.asked = job, nil, false
		p.reading.fill()
	}
	if !p.asked {
		p.asked = true
		p.work.Ask(p.job)
	}
	if !p.inView {
		p.inView = true
		p.focus()
	}
	p.show()
}

// done takes a making with its times.
func (p *Page) done(_ making.Job, m made, err error) {
	if err != nil {
		return // the net says that
	}
	p.now = m.Making
	if p.trial != nil {
		p.reading.try()
		return
	}
	p.reading.fill()
	p.show()
}

// making is what is shown: with the reading that is tried, if one is.
func (p *Page) making() say.Making {
	if p.trial != nil {
		return p.trial.Making
	}
	return p.now
}

// steps are those of the making shown.
func (p *Page) steps() []process.Step {
	if m := p.making(); m.Process != nil {
		return m.Process.Steps
	}
	return nil
}

// step is the one shown, nil where there is none.
func (p *Page) step() *process.Step {
	steps := p.steps()
	if i := p.walk.At(steps); i >= 0 {
		return &steps[i]
	}
	return nil
}

// turn goes on or back.
func (p *Page) turn(by int) {
	if !p.walk.Go(p.steps(), by) {
		return
	}
	p.scroll.ScrollToTop()
	p.show()
	p.focus()
	p.told("kitchen step=%d of=%d code=%s", p.walk.At(p.steps())+1, len(p.steps()), p.step().Code)
}

// goTo turns to a step, if there is one.
func (p *Page) goTo(code process.StepCode) {
	if i := slices.IndexFunc(p.steps(), func(s process.Step) bool { return s.Code == code }); i >= 0 {
		p.turn(i - p.walk.At(p.steps()))
	}
}

// focus gives the keyboard to the pad that leads on, so that Space does.
func (p *Page) focus() { p.host.Window().Canvas().Focus(p.next) }

// TypedKey is told of the keys that no widget knows, as after a click beside
// everything.
func (p *Page) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeySpace, fyne.KeyRight, fyne.KeyDown, fyne.KeyPageDown:
		p.turn(1)
	case fyne.KeyLeft, fyne.KeyUp, fyne.KeyPageUp, fyne.KeyBackspace:
		p.turn(-1)
	case fyne.KeyT:
		if !p.clock.own.Hidden {
			p.clock.press()
		}
	}
}

// show puts the step on screen.
func (p *Page) show() {
	step := p.step()
	if step == nil {
		kit.SetText(p.place, "")
		kit.SetText(p.title, say.NothingHere.String())
		kit.SetText(p.things, "")
		kit.SetText(p.text, say.PutSomethingIn.String())
		p.back.ShowPad(say.T("Back"), false)
		p.next.ShowPad(say.T("Next"), false)
		p.clock.show(nil)
		p.reading.show(nil)
		return
	}
	m, i, n := p.making(), p.walk.At(p.steps()), len(p.steps())
	words := say.Step(page.Reads, m, step)
	place := say.StepPlace(i, n)
	if p.trial != nil && slices.Contains(p.trial.Steps, step.Code) {
		place = say.T(say.ChangedByTrial, place)
	}
	kit.SetText(p.place, place)
	kit.SetText(p.title, words.Title)
	var things []string
	for _, q := range say.Quantities(page.Reads, m, step) {
		thing := q.Amount + "  " + q.Name
		if q.Measure != "" {
			thing += " (" + q.Measure + ")"
		}
		things = append(things, thing)
	}
	kit.SetText(p.things, strings.Join(things, "\n"))
	kit.SetText(p.text, words.Text)
	p.back.ShowPad(say.T("Back"), i > 0)
	p.next.ShowPad(say.T("Next"), i+1 < n)
	p.clock.show(step)
	p.reading.show(step)
	p.object.Refresh() // texts take more lines, or fewer
}

// beside lays quantities beside what is done with them; a step without any has
// the whole width. Its height is that of the text at its width.
type beside struct{}

const thingsShare = 0.34

// Layout implements fyne.Layout.
func (beside) Layout(o []fyne.CanvasObject, size fyne.Size) {
	things, text := o[0], o[1]
	w := float32(0)
	if things.(*widget.Label).Text != "" {
		w = float32(math.Round(float64(thingsShare * size.Width)))
	}
	things.Resize(fyne.NewSize(w, size.Height))
	things.Move(fyne.NewPos(0, 0))
	text.Resize(fyne.NewSize(size.Width-w, size.Height))
	text.Move(fyne.NewPos(w, 0))
}

// MinSize implements fyne.Layout.
func (beside) MinSize(o []fyne.CanvasObject) fyne.Size {
	things, text := o[0].(*widget.Label), o[1]
	s := text.MinSize()
	if things.Text != "" {
		s = s.Max(things.MinSize())
	}
	return s
}
