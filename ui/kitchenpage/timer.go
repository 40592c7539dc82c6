package kitchenpage

import (
	"context"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/stove"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
)

// timerRow is the clock of the step shown, and in a line those of the others.
type timerRow struct {
	p           *Page
	code        process.StepCode
	length      time.Duration
	face        *kit.Lines
	main, clear *kit.Pad
	others      *kit.Lines
	own         *fyne.Container
	object      fyne.CanvasObject
}

func newTimerRow(p *Page) *timerRow {
	r := &timerRow{p: p}
	r.face = kit.NewLines(1, fyne.TextAlignLeading, kit.SizeNameTimer, fyne.TextStyle{Bold: true})
	r.others = kit.NewLines(1, fyne.TextAlignTrailing, kit.SizeNameStep, fyne.TextStyle{})
	r.main, r.clear = kit.NewPad("Start", r.press), kit.NewPad("Clear", r.drop)
	r.own = container.NewHBox(r.face, r.main, r.clear)
	r.object = container.NewBorder(nil, nil, r.own, nil, container.NewVBox(layout.NewSpacer(), r.others, layout.NewSpacer()))
	return r
}

// shortest is what a timer is worth setting for.
const shortest = time.Minute

// show is about step; nil: none.
func (r *timerRow) show(step *process.Step) {
	r.code, r.length = "", 0
	if step != nil {
		r.code, r.length = step.Code, time.Duration(step.Minutes*float64(time.Minute)).Round(time.Minute)
	}
	r.tell()
}

// tell shows how the timers stand.
func (r *timerRow) tell() {
	state, left := r.p.timers.Look(r.code)
	r.own.Hidden = state == stove.Idle && r.length < shortest
	switch state {
	case stove.Idle:
		left = r.length
		r.main.ShowPad("Start", true)
	case stove.Running:
		r.main.ShowPad("Pause", true)
	case stove.Paused:
		r.main.ShowPad("Go on", true)
	case stove.Over:
		r.main.ShowPad("Time is up", true)
	}
	r.main.Strong = state == stove.Over
	r.face.ShowText(say.Timer(left))
	r.clear.Hidden = state == stove.Idle || state == stove.Over
	var others []string
	for _, code := range r.p.timers.Going() {
		if code != r.code {
			s, left := r.p.timers.Look(code)
			others = append(others, say.TimerOf(say.StepTitle(code), left, s == stove.Paused))
		}
	}
	r.others.ShowText(strings.Join(others, " · "))
}

// press is the main pad's.
func (r *timerRow) press() {
	switch state, _ := r.p.timers.Look(r.code); state {
	case stove.Running:
		r.p.timers.Pause(r.code)
	case stove.Over:
		r.p.timers.Clear(r.code)
	default:
		r.p.timers.Start(r.code, r.length)
		r.p.told("kitchen timer runs code=%s seconds=%d", r.code, int(r.length.Seconds()))
		r.p.watch()
	}
	r.p.looked()
	r.p.focus()
}

func (r *timerRow) drop() {
	r.p.timers.Clear(r.code)
	r.p.looked()
	r.p.focus()
}

// often is how often the timers are looked at while one is set.
const often = 200 * time.Millisecond

// watch looks at the timers until none is set, also while another page is in
// view.
func (p *Page) watch() {
	if p.still != nil {
		return
	}
	var ctx context.Context
	ctx, p.still = context.WithCancel(context.Background())
	mishap.Go(func() {
		tick := time.NewTicker(often)
		defer tick.Stop()
		for {
			select {
			case <-ctx.Done():
				return
			case <-tick.C:
				p.host.Post(func() {
					if ctx.Err() == nil {
						p.looked()
					}
				})
			}
		}
	})
}

// looked shows the timers as they stand, and says whose time has come.
func (p *Page) looked() {
	for _, code := range p.timers.Rung() {
		p.host.Say(say.TimeUp(say.StepTitle(code)))
		p.told("kitchen timer over code=%s", code)
	}
	p.clock.tell()
	if len(p.timers.Going()) == 0 && p.still != nil {
		p.still()
		p.still = nil
	}
}
