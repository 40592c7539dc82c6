package kitchenpage

import (
	"context"
	"image/color"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"

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
	alarm       *kit.Pad // leads to a step whose time is up while another is shown
	rung        process.StepCode
	frame       *canvas.Rectangle // about it all while a time is up: seen from afar, whatever its colour
	own         *fyne.Container
	object      fyne.CanvasObject
}

func newTimerRow(p *Page) *timerRow {
	r := &timerRow{p: p}
	r.face = kit.NewLines(1, fyne.TextAlignLeading, kit.SizeNameTimer, fyne.TextStyle{Bold: true})
	r.others = kit.NewLines(1, fyne.TextAlignTrailing, kit.SizeNameStep, fyne.TextStyle{})
	r.main, r.clear = kit.NewPad(say.T("Start"), r.press), kit.NewPad(say.T("Clear"), r.drop)
	r.own = container.NewHBox(r.face, r.main, r.clear)
	r.alarm = kit.NewPad("", func() { p.goTo(r.rung) })
	r.alarm.Strong = true
	r.frame = canvas.NewRectangle(color.Transparent)
	r.frame.StrokeWidth = 6
	r.frame.Hide()
	row := container.NewBorder(nil, nil, r.own, r.alarm, container.NewVBox(layout.NewSpacer(), r.others, layout.NewSpacer()))
	r.object = container.NewStack(r.frame, container.NewPadded(row))
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
		r.main.ShowPad(say.T("Start"), true)
	case stove.Running:
		r.main.ShowPad(say.T("Pause"), true)
	case stove.Paused:
		r.main.ShowPad(say.T("Go on"), true)
	case stove.Over:
		r.main.ShowPad(say.T("Time is up"), true)
	}
	r.main.Strong = state == stove.Over
	r.face.ShowText(say.Timer(left))
	r.clear.Hidden = state == stove.Idle || state == stove.Over
	r.rung = ""
	var others []string
	for _, code := range r.p.timers.Going() {
		if code != r.code {
			s, left := r.p.timers.Look(code)
			if s == stove.Over && r.rung == "" {
				r.rung = code
				continue
			}
			others = append(others, say.TimerOf(say.StepTitle(code), left, s == stove.Paused))
		}
	}
	r.others.ShowText(strings.Join(others, " · "))
	r.alarm.Hidden = r.rung == ""
	r.alarm.ShowPad(say.TimeUp(say.StepTitle(r.rung)), true)
	if over := state == stove.Over || r.rung != ""; over != r.frame.Visible() {
		r.frame.StrokeColor = theme.Color(theme.ColorNameForeground)
		r.frame.Hidden = !over
		r.object.Refresh()
	}
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
		text := say.TimeUp(say.StepTitle(code))
		p.host.Say(text)
		fyne.CurrentApp().SendNotification(fyne.NewNotification(p.job.Design.Name, text))
		if p.ring != nil {
			mishap.Go(p.ring)
		}
		p.told("kitchen timer over code=%s", code)
	}
	p.clock.tell()
	if len(p.timers.Going()) == 0 && p.still != nil {
		p.still()
		p.still = nil
	}
}
