package session

import (
	"crypto/sha256"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

// Unsaved is what would be lost if the session ended now. It is a value that any
// goroutine may keep.
type Unsaved struct {
	Dirty bool // false: nothing would be

	file    *designfile.File
	library *ingredient.Library
	designs [2]design.Design // now, and when the last step rested
}

// Unsaved returns what would be lost now.
func (s *Session) Unsaved() Unsaved {
	return Unsaved{s.Dirty(), s.file, s.model.Library(), [2]design.Design{s.current, s.rested}}
}

// File is where the design lives, nil if nowhere.
func (u Unsaved) File() *designfile.File { return u.file }

// Text returns the design as its file would say it. A value that no file could hold,
// as may be halfway through a step, is given as it was when the last step rested.
func (u Unsaved) Text() (text []byte, err error) {
	f := u.file
	if f == nil {
		f = &designfile.File{}
	}
	for _, d := range u.designs {
		if text, err = f.Encode(d.WithOwn(u.library, d)); err == nil {
			return text, nil
		}
	}
	return nil, err
}

// Recover replaces everything by unsaved work: the design that text says, of the file
// at path, "" for none, whose content had the hash read. Undo goes back to what the
// file says now. The error is about text, and nothing has changed; a file that cannot
// be read any more is as none.
func (s *Session) Recover(name string, text []byte, path string, read [sha256.Size]byte, step string) error {
	work, err := designfile.DecodeWith(name, text, s.model.Library())
	if err != nil {
		return err
	}
	var f *designfile.File
	if path != "" {
		f, _ = designfile.LoadWith(path, s.model.Library())
	}
	if f == nil {
		s.start(work.Design, nil)
		s.saved = design.Design{}
		return nil
	}
	s.start(f.Design, f.LastRead(read))
	s.Commit(work.Design, step)
	return nil
}

// Theirs returns what the file says now, which another program may have changed.
func (s *Session) Theirs() (design.Design, error) {
	f, err := designfile.LoadWith(s.Path(), s.model.Library())
	if err != nil {
		return design.Design{}, err
	}
	return f.Design, nil
}

// KeepMine takes note of the file as another program has left it: the design on screen
// is to replace it at the next Save, which asks no more.
func (s *Session) KeepMine() error {
	f, err := s.file.Seen()
	if err != nil {
		return err
	}
	s.file, s.saved = f, design.Design{} // whatever the file says, it is not this
	s.touch()
	return nil
}

// TakeTheirs replaces the design by what the file says now, as one step of undo, which
// goes back to the design on screen. After an error nothing has changed.
func (s *Session) TakeTheirs(step string) error {
	f, err := designfile.LoadWith(s.Path(), s.model.Library())
	if err != nil {
		return err
	}
	s.file, s.saved = f, f.Design
	s.Commit(f.Design, step)
	return nil
}
