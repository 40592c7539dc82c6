package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/rescue"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
)

// net is what the window does about panics.
type net struct {
	w      *Window
	rescue *rescue.Folder
	seen   map[string]bool // by place
}

func newNet(w *Window, r *rescue.Folder) *net {
	if r == nil {
		r = rescue.At("")
	}
	return &net{w: w, rescue: r, seen: map[string]bool{}}
}

// caught is told of a mishap on the goroutine that it happened on.
func (n *net) caught(m mishap.Mishap) { n.w.Post(func() { n.tell(m) }) }

// tell keeps the work, writes a report and says so: once for a place, which may
// come again with every frame.
func (n *net) tell(m mishap.Mishap) {
	place := m.Place()
	if n.seen[place] {
		return
	}
	n.seen[place] = true
	n.w.event("mishap %s", place)
	kit.Tell(n.w.win, say.Unsettled, say.CarriesOn(n.keep(m)))
}

// keep keeps the design and a report, and says where.
func (n *net) keep(m mishap.Mishap) string {
	var said []string
	var path string
	var err error
	if caught := mishap.Try(func() { path, err = n.rescue.Keep(m.At, n.w.Session.Copy) }); caught != nil {
		err = caught
	}
	if err == nil {
		said = append(said, say.KeptIn(path))
	} else {
		said = append(said, say.KeptNot(err))
	}
	if path, err := n.rescue.Report(m.At, m.Report(n.w.Version)); err == nil {
		said = append(said, say.ReportIn(path))
	}
	return strings.Join(said, " ")
}

// lost does what can still be done after a panic that the toolkit's own loop did
// not survive, and says it where the program was started from.
func (n *net) lost(m mishap.Mishap) error {
	return fmt.Errorf("ripplewright stopped: %v\n%s", m.Value, n.keep(m))
}

// safe says that nothing of the design is lost any more.
func (n *net) safe() {
	if err := n.rescue.Safe(); err != nil {
		n.w.event("rescue %v", err)
	}
}

// offer offers the design that an earlier run has kept.
func (n *net) offer() {
	waiting := n.rescue.Waiting()
	if len(waiting) == 0 {
		return
	}
	path := waiting[0]
	when := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if info, err := os.Stat(path); err == nil {
		when = info.ModTime().Format("2 January 2006, 15:04")
	}
	var dg *dialog.CustomDialog
	dg = kit.Ask(n.w.win, say.OpenKept,
		widget.NewLabel(say.KeptOn(when)),
		kit.Answer{Name: say.Later, Role: kit.ByEscape},
		kit.Answer{Name: say.DeleteIt, Role: kit.ByHand, Do: func() {
			dg.Hide()
			if err := n.rescue.Forget(path); err != nil {
				n.w.problem(err)
			}
		}},
		kit.Answer{Name: say.OpenIt, Role: kit.ByReturn, Do: func() {
			dg.Hide()
			n.w.unlessUnsaved(func() { n.restore(path) })
		}})
}

// restore opens a design that was kept. It waits until it is saved elsewhere.
func (n *net) restore(path string) {
	if err := n.w.Session.Restore(path); err != nil {
		n.w.problem(err)
		return
	}
	n.rescue.Take(path)
	n.w.Say(say.OpenedKept)
	n.w.event("restored %s", path)
}
