package ui

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/planning"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
)

// coldRest is how long a design must rest before its times are computed.
const coldRest = 250 * time.Millisecond

// coldLine says on the bench what the serving temperature means in practice:
// for how long to leave the tub out.
type coldLine struct {
	w       *Window
	planner *planning.Planner
	asked   planning.Job
	label   *kit.Lines
}

func newColdLine(w *Window) *coldLine {
	l := &coldLine{w: w, planner: planning.NewPlanner(w.Post),
		label: kit.NewLines(1, fyne.TextAlignCenter, theme.SizeNameCaptionText, fyne.TextStyle{})}
	l.planner.Done = func(job planning.Job, a *cold.Answer, _ time.Duration, err error) {
		text := ""
		if err == nil {
			text = leaveOut(job.Design.Serving.TemperatureC, a)
		}
		l.label.ShowText(text)
		w.event("cold line %s", text)
	}
	w.kitchens.Tell(func() { l.show(w.Design(), w.Result()) })
	return l
}

// show asks for the times of d, unless they are those asked for last.
func (l *coldLine) show(d design.Design, r *model.Result) {
	kitchen, err := l.w.kitchens.Find(d.Kitchen.Profile)
	if err != nil {
		kitchen = cold.Default()
	}
	if l.asked.Result != nil && l.asked.Design.Equal(d) && l.asked.Kitchen == kitchen {
		return
	}
	own := *r // the session's is overwritten by the next
	l.asked = planning.Job{Design: d, Result: &own, Kitchen: kitchen, NoPictures: true, Wait: coldRest}
	l.planner.Ask(l.asked)
}

// leaveOut is the line: how long until the tub, evened out, is at its serving
// temperature, and for how long its outer ring scoops.
func leaveOut(serving float64, a *cold.Answer) string {
	s := &a.Counter
	at := number(serving, 1) + " °C"
	text := ""
	switch r := s.MeanServing; {
	case s.StartC > serving:
		text = fmt.Sprintf("The freezer, %s °C, is warmer than %s", number(s.StartC, 0), at)
	case r.Value == 0:
		text = fmt.Sprintf("To serve at %s take it straight from the freezer", at)
	case !r.Known():
		text = fmt.Sprintf("It does not come to %s on the counter, %s °C", at, number(s.AirC, 0))
	default:
		text = fmt.Sprintf("To serve at %s leave out %s", at, cold.ClockSpan(r.Low, r.High))
	}
	switch {
	case !s.OK || !s.From.Known():
	case s.From.Value == 0 && s.To.Known():
		text += "; it scoops until " + cold.Clock(s.To.Value)
	case s.To.Known():
		text += "; it scoops from " + cold.ClockSpan(s.From.Value, s.To.Value)
	}
	return text + " (" + a.Profile.Name + ")"
}
