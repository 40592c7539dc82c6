package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	base "fyne.io/fyne/v2/theme"

	"ripplewright/internal/desk/differing"
	"ripplewright/internal/desk/keeping"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// keepWork has unsaved work kept from now on.
func (w *Window) keepWork() {
	w.keeper = keeping.Open(w.Journal, func(err error) {
		w.Post(func() {
			if err != nil {
				w.event("unkept %v", err)
				w.Say(say.NotKept(err))
				return
			}
			w.Say(say.KeptAgain.String())
		})
	}, func() { w.Post(w.lookAtDisk) }, func() { w.Post(w.openElsewhere) }, func() { w.Post(w.joined) })
}

// joined says that another window has opened the open design too. It takes nobody's hands
// off their work: nothing has happened to it.
func (w *Window) joined() {
	path := w.Session.Path()
	if path == "" {
		return
	}
	w.event("joined %s", path)
	w.Say(say.Joined(path))
}

// openElsewhere says, once for each design that is opened, that another window has it open
// too. While a dialog is open it waits for the next look.
func (w *Window) openElsewhere() {
	path := w.Session.Path()
	if path == "" || path == w.elsewhere || w.asking() {
		return
	}
	w.elsewhere = path
	w.event("elsewhere %s", path)
	var dg *dialog.CustomDialog
	dg = kit.Ask(w.win, say.TwoWindows.String(), page.Prose(say.OpenElsewhere(path)),
		kit.Answer{Name: say.CarryOn.String(), Role: kit.ByEscape},
		kit.Answer{Name: say.SaveAsItem.String(), Role: kit.ByReturn, Do: func() { dg.Hide(); w.saveAs(nil) }})
	w.broad(dg, 0)
}

// listed are texts in a list that scrolls, in a dialog.
func listed(texts []string) *container.Scroll {
	var lines []fyne.CanvasObject
	for _, t := range texts {
		lines = append(lines, tightly(page.Prose(say.Harmless(t, say.Terminal))))
	}
	return container.NewVScroll(container.NewVBox(lines...))
}

// enough is the height of a list in a question: it need not all be seen at once.
func enough(list *container.Scroll) *container.Scroll {
	most := 9 * base.TextSize() * 1.6
	list.SetMinSize(fyne.NewSize(0, min(most, list.Content.MinSize().Height)))
	return list
}

// broad makes a dialog as wide as its texts read well.
func (w *Window) broad(dg *dialog.CustomDialog, height float32) {
	room := w.win.Canvas().Size()
	dg.Resize(fyne.NewSize(min(46*base.TextSize(), room.Width-4*base.Padding()), min(height, room.Height-4*base.Padding())))
}

// offerUnsaved offers the work that windows before this one have left, one after the
// other; nothing is applied unasked.
func (w *Window) offerUnsaved() { w.offer(keeping.Waiting(w.Journal, w.Model().Library())) }

func (w *Window) offer(left []keeping.Offer) {
	if len(left) == 0 {
		return
	}
	o := left[0]
	w.event("offered %s", o.Where())
	parts := []fyne.CanvasObject{page.Prose(say.LeftOn(o.Work.Name, o.Path, o.At))}
	switch o.File {
	case keeping.NoFile:
		parts = append(parts, page.Prose(say.NeverSaved.String()))
	case keeping.FileGone:
		parts = append(parts, page.Prose(say.FileIsGone.String()))
	case keeping.FileBroken:
		parts = append(parts, page.Prose(say.FileIsBroken.String()))
	case keeping.FileChanged:
		parts = append(parts, page.Prose(say.FileSaysOther.String()))
	}
	if o.File == keeping.FileAsRead || o.File == keeping.FileChanged {
		texts := differing.Choices(w.Model(), page.Reads, o.Says, o.Work)
		if len(texts) == 0 {
			texts = []string{say.NothingDiffers.String()}
		}
		parts = append(parts, page.Small(say.OtherThanFile.String()), enough(listed(texts)))
	}
	var dg *dialog.CustomDialog
	next := func() { dg.Hide(); w.offer(left[1:]) }
	dg = kit.Ask(w.win, say.UnsavedWork.String(), container.NewVBox(parts...),
		kit.Answer{Name: say.Later.String(), Role: kit.ByEscape, Do: next},
		kit.Answer{Name: say.DeleteIt.String(), Role: kit.ByHand, Do: func() {
			if err := w.Journal.Forget(o.Left); err != nil {
				w.problem(err)
			}
			next()
		}},
		kit.Answer{Name: say.OpenIt.String(), Role: kit.ByReturn, Do: func() {
			dg.Hide()
			w.unlessUnsaved(func() { w.recover(o) })
		}})
	w.broad(dg, 0)
}

// recover opens unsaved work. It stays in the journal until it is saved.
func (w *Window) recover(o keeping.Offer) {
	if err := w.keeper.Open(o, w.Session, say.UnsavedStep.String()); err != nil {
		w.problem(err)
		return
	}
	if w.Session.Path() == "" {
		w.Say(say.UnsavedNew.String())
	} else {
		w.Say(say.UnsavedOpened.String())
	}
	w.event("recovered %s", o.Where())
}

// askUnsaved offers what is waiting, from the menu.
func (w *Window) askUnsaved() {
	left := keeping.Waiting(w.Journal, w.Model().Library())
	if len(left) == 0 {
		w.Say(say.NoUnsaved.String())
		return
	}
	w.offer(left)
}

// lookAtDisk asks, once for each change, what to do about a file that another program
// or window has changed. While a dialog is open it waits for the next look.
func (w *Window) lookAtDisk() {
	if !w.asking() && w.Session.NewsOnDisk() {
		w.askWhose(nil)
	}
}

// askWhose asks whose design to keep, the window's or the file's. keep is what follows
// when it is the window's, nil for nothing before the next save.
func (w *Window) askWhose(keep func()) {
	w.event("changed %s", w.Session.Path())
	mine := w.Design()
	theirs, err := w.Session.Theirs()
	parts := []fyne.CanvasObject{page.Prose(say.ChangedByOther(w.Session.Path()))}
	if err != nil {
		parts = append(parts, page.Prose(say.T(say.ThemInVain, say.Flaw(err))))
	} else if texts := differing.Choices(w.Model(), page.Reads, mine, theirs); len(texts) > 0 {
		parts = append(parts, page.Small(say.TheyDiffer.String()), enough(listed(texts)))
	} else {
		parts = append(parts, page.Prose(say.TheySaySame.String()))
	}
	var dg *dialog.CustomDialog
	answers := []kit.Answer{{Name: say.Later.String(), Role: kit.ByEscape}}
	if err == nil {
		answers = append(answers,
			kit.Answer{Name: say.SeeBoth.String(), Role: kit.ByHand, Do: func() { w.seeBoth(say.MineToThem.String(), mine, theirs) }},
			kit.Answer{Name: say.TakeTheirs.String(), Role: kit.ByHand, Do: func() { dg.Hide(); w.takeTheirs() }})
	}
	answers = append(answers, kit.Answer{Name: say.KeepMine.String(), Role: kit.ByReturn, Do: func() { dg.Hide(); w.keepMine(keep) }})
	dg = kit.Ask(w.win, say.FileChanged.String(), container.NewVBox(parts...), answers...)
	w.broad(dg, 0)
}

func (w *Window) takeTheirs() {
	if err := w.Session.TakeTheirs(say.TheirsStep.String()); err != nil {
		w.problem(err)
		return
	}
	w.Say(say.TookTheirs.String())
	w.event("took theirs")
}

func (w *Window) keepMine(then func()) {
	if err := w.Session.KeepMine(); err != nil {
		w.problem(err)
		return
	}
	w.event("kept mine")
	if then != nil {
		then()
		return
	}
	w.Say(say.KeptMine.String())
}

// seeBoth lays two designs side by side: all that differs, and the figures that follow.
func (w *Window) seeBoth(title string, before, after design.Design) {
	var dg *dialog.CustomDialog
	dg = kit.Ask(w.win, title, listed(w.differences(before, after)), kit.Answer{Name: say.Close.String(), Role: kit.ByReturn, Do: func() { dg.Hide() }})
	w.broad(dg, 40*base.TextSize())
}

// differences are all between two designs, choices and figures, a line each.
func (w *Window) differences(before, after design.Design) []string {
	v := differing.Between(w.Model(), page.Reads, before, after)
	if v.Same() {
		return []string{say.NothingDiffers.String()}
	}
	texts := v.Choices
	if len(v.Figures) > 0 {
		texts = append(append(texts, say.T("%s:", say.FiguresDiffer.String())), v.Figures...)
	}
	return texts
}
