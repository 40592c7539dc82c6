package ui

import (
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/planning"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// coldRest is how long a design must rest before its times are computed.
const coldRest = 250 * time.Millisecond

// coldLine says on the bench what the serving temperature means in practice:
// for how long to leave the tub out, and how its ice eats.
type coldLine struct {
	w       *Window
	planner *planning.Planner
	asked   planning.Job
	doubt   string       // about the kitchen
	answer  *cold.Answer // of the design as it is now; nil until computed
	out     string       // how long to leave it out
	ice     string       // how its ice eats; "" until computed
	label   *kit.Lines
}

// newColdLine returns the line; known is told when there is a new answer.
func newColdLine(w *Window, known func()) *coldLine {
	l := &coldLine{w: w, planner: planning.NewPlanner(w.Post),
		label: kit.NewLines(1, fyne.TextAlignCenter, theme.SizeNameCaptionText, fyne.TextStyle{})}
	l.planner.Done = func(job planning.Job, a *cold.Answer, _ time.Duration, err error) {
		text := ""
		if err == nil {
			if job.Result == l.asked.Result { // an older plan may still come in
				l.answer = a
			}
			text = strings.TrimSpace(leaveOut(a) + " " + l.doubt)
		}
		l.out, l.ice = text, ""
		l.label.ShowText(text)
		known()
		w.event("cold line %s", text)
	}
	l.planner.Iced = func(_ planning.Job, ice planning.Ice) {
		if l.ice = say.IceLine(page.Reads, &ice.Answer); l.ice != "" {
			l.ice = say.IceSentence(l.ice)
		}
		l.label.ShowText(strings.TrimSpace(l.out + " " + l.ice))
		w.event("ice line %s", l.ice)
	}
	w.kitchens.Tell(func() { l.show(w.Design(), w.Result()) })
	return l
}

// show asks for the times of d, unless they are those asked for last.
func (l *coldLine) show(d design.Design, r *model.Result) {
	kitchen, said := l.w.kitchens.For(d.Kitchen.Profile)
	kitchen = l.w.kitchens.Taught(d, kitchen)
	l.doubt = said
	if l.asked.Result != nil && l.asked.Design.Equal(d) && l.asked.Kitchen == kitchen {
		return
	}
	l.answer = nil
	own := *r // the session's is overwritten by the next
	l.asked = planning.Job{Design: d, Result: &own, Kitchen: kitchen, NoPictures: true, Wait: coldRest}
	l.planner.Ask(l.asked)
}

// leaveOut is the line, with the kitchen that it is computed for.
func leaveOut(a *cold.Answer) string {
	return say.LeaveOut(page.Reads, &a.Counter) + " (" + say.KitchenName(a.Profile.Name) + ")"
}
