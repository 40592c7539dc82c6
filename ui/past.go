package ui

import (
	"strings"
	"time"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	base "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/past"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// askEarlier shows the last saves of the design's file.
func (w *Window) askEarlier() {
	list := past.Saves(w.Session)
	if len(list) == 0 {
		w.Say(say.NoEarlier.String())
		return
	}
	w.askPast(say.EarlierHead.String(), list)
}

// askVersions shows the versions of the design.
func (w *Window) askVersions() {
	list, err := past.Versions(w.Session)
	switch {
	case err != nil:
		w.problem(err)
	case len(list) == 0:
		w.Say(say.NoVersions.String())
	default:
		w.askPast(say.VersionsHead.String(), list)
	}
}

// mostTitle is how many letters of a moment's title a choice shows.
const mostTitle = 60

// askPast shows what the design said at some moments, compares any of them with another
// or with the design as it is now, and goes back to one as a step of undo.
func (w *Window) askPast(title string, list []past.Moment) {
	now := w.Design()
	names, others := []string{}, []string{say.AsItIsNow.String()}
	for _, m := range list {
		names = append(names, page.Brief(m.Title, mostTitle))
	}
	others = append(others, names...)
	chosen, other := 0, 0
	differences := container.NewVScroll(container.NewVBox())
	show := func() {
		with := now
		if other > 0 {
			with = list[other-1].Design
		}
		differences.Content = listed(w.differences(with, list[chosen].Design)).Content
		differences.ScrollToTop()
		differences.Refresh()
	}
	form := widget.NewForm(
		widget.NewFormItem(say.GoBackTo.String(), selectOf(names, 0, func(i int) { chosen = i; show() })),
		widget.NewFormItem(say.ComparedWith.String(), selectOf(others, 0, func(i int) { other = i; show() })))
	show()
	var dg *dialog.CustomDialog
	dg = kit.Ask(w.win, title, container.NewBorder(form, nil, nil, nil, differences),
		kit.Answer{Name: say.Close.String(), Role: kit.ByEscape},
		kit.Answer{Name: say.GoBack.String(), Role: kit.ByReturn, Do: func() {
			dg.Hide()
			w.Commit(list[chosen].Design, say.T(say.BackTo, names[chosen]))
			w.Say(say.WentBack.String())
			w.event("went back")
		}})
	w.broad(dg, 40*base.TextSize())
}

// keepVersion asks for a note and keeps the design as it is now as a version.
func (w *Window) keepVersion() {
	if w.Session.Path() == "" {
		w.Say(say.SaveFirst.String())
		return
	}
	note := kit.NewTextField()
	note.SetPlaceHolder(say.VersionHint.String())
	var dg *dialog.CustomDialog
	do := func() {
		dg.Hide()
		if err := past.Keep(w.Session, note.Text, time.Now()); err != nil {
			w.problem(err)
			return
		}
		w.Say(say.VersionKept.String())
		w.event("version kept")
	}
	note.OnSubmitted = mishap.With(func(string) { do() })
	dg = kit.Ask(w.win, strings.TrimSuffix(say.KeepVersion.String(), "…"), widget.NewForm(widget.NewFormItem(say.VersionNote.String(), note)),
		kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape}, kit.Answer{Name: say.KeepVersionAct.String(), Role: kit.ByReturn, Do: do})
	w.broad(dg, 0)
	w.win.Canvas().Focus(note)
}
