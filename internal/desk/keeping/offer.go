package keeping

import (
	"errors"
	"io/fs"

	"ripplewright/internal/desk/session"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/journal"
)

// An Offer is work that a window has left unsaved, beside what its file says.
type Offer struct {
	journal.Left
	Work design.Design
	File FileState
	Says design.Design // what the file says, where it was read
}

// FileState is how the file of unsaved work is found.
type FileState uint8

// The states.
const (
	NoFile      FileState = iota // it was never saved
	FileAsRead                   // as the window had read or written it
	FileChanged                  // changed since
	FileGone
	FileBroken
)

// Waiting returns what is offered, the latest first. A page that cannot be read, which
// only a broken disk or a hand can have done, is left where it is.
func Waiting(f *journal.Folder, lib *ingredient.Library) []Offer {
	var all []Offer
	for _, left := range f.Waiting() {
		work, err := designfile.DecodeWith(left.Where(), left.Text, lib)
		if err != nil {
			continue
		}
		o := Offer{Left: left, Work: work.Design}
		if left.Path != "" {
			o.File, o.Says = state(left, lib)
		}
		all = append(all, o)
	}
	return all
}

func state(left journal.Left, lib *ingredient.Library) (FileState, design.Design) {
	file, err := designfile.LoadWith(left.Path, lib)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return FileGone, design.Design{}
	case err != nil:
		return FileBroken, design.Design{}
	case file.Hash() != left.Read:
		return FileChanged, file.Design
	}
	return FileAsRead, file.Design
}

// Open makes offered work what the session holds, as step, and the page this window's.
// After an error nothing has changed.
func (k *Keeper) Open(o Offer, s *session.Session, step string) error {
	if err := k.Take(o.Left); err != nil {
		return err
	}
	return s.Recover(o.Where(), o.Text, o.Path, o.Read, step)
}
