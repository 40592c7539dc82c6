package ui

import (
	"strings"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/rescue"
	"ripplewright/internal/form/flaw"
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
	kit.Tell(n.w.win, say.Unsettled.String(), say.CarriesOn(n.keep(m)))
}

// keep keeps the design and a report, and says where.
func (n *net) keep(m mishap.Mishap) string {
	var said []string
	var path string
	var err error
	if caught := mishap.Try(func() {
		n.w.keeper.Look(n.w.Session)
		path, err = n.w.keeper.Flush()
	}); caught != nil {
		err = caught
	}
	switch {
	case err != nil:
		said = append(said, say.KeptNot(err))
	case path == "":
		said = append(said, say.NothingUnsaved.String())
	default:
		said = append(said, say.KeptIn(path))
	}
	if path, err := n.rescue.Report(m.At, m.Report(n.w.Version)); err == nil {
		said = append(said, say.ReportIn(path))
	}
	return strings.Join(said, " ")
}

// lost does what can still be done after a panic that the toolkit's own loop did
// not survive, and says it where the program was started from.
func (n *net) lost(m mishap.Mishap) error {
	return flaw.New("ripplewright stopped: %v\n%s", m.Value, n.keep(m))
}
