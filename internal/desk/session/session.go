// Package session holds one open design: its value now, the values it had, its
// result, and the file it lives in.
//
// A Session lives on one goroutine, the window's, and has no lock. It knows no
// toolkit: whoever shows it asks Revision and reads.
package session

import (
	"errors"
	"os"
	"path/filepath"
	"time"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/backups"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

// Session is one open design.
type Session struct {
	model    *model.Model
	now      func() time.Time
	revision uint64

	current design.Design
	rested  design.Design // the value of the last step; current differs while a hand moves something
	past    []step
	future  []step
	keys    any // the widget whose keys made the last step, nil if no keys did
	keysAt  time.Time

	result    model.Result
	err       error // of the value that result is behind by
	evaluated bool

	file    *designfile.File // nil: never saved
	backups *backups.Folder
	schemas schemaline.Schemas // see NameSchemas
	notKept error              // why the last save has no backup
	saved   design.Design
	told    news
}

// news is a change on disk.
type news struct {
	path     string
	modified time.Time
	size     int64
}

// step is a value that was left, and the name of what left it.
type step struct {
	before design.Design
	name   string
	act    *Act // what was done beside the design, which then stayed; nil: nothing
}

// An Act is a change of something beside the design, as of a kitchen, that is a step of
// undo all the same. Back and Again report whether they could do it, and tell whoever
// works here why not.
type Act struct{ Back, Again func() bool }

// Did makes what was just done beside the design a step of undo with that name.
func (s *Session) Did(name string, a Act) {
	if s.moved() { // what a hand holds stays a step of its own
		s.Commit(s.current, name)
	}
	s.past = append(s.past, step{s.rested, name, &a})
	if len(s.past) > most {
		s.past = s.past[1:]
	}
	s.future, s.keys = nil, nil
	s.touch()
}

// merge is how close keys on one widget follow each other to count as one step.
const merge = 600 * time.Millisecond

// most is how many steps are kept.
const most = 500

// New returns a session of d, which has no file and nothing to save.
func New(m *model.Model, d design.Design) *Session {
	s := &Session{model: m, now: time.Now, backups: backups.At("")}
	s.start(d, nil)
	return s
}

// SetClock replaces the clock that tells keys in a row from others, for tests.
func (s *Session) SetClock(now func() time.Time) { s.now = now }

func (s *Session) start(d design.Design, f *designfile.File) {
	s.current, s.rested, s.saved, s.file = d, d, d, f
	s.past, s.future, s.keys = nil, nil, nil
	s.touch()
}

func (s *Session) touch() {
	s.revision++
	s.evaluated = false
}

// Revision changes whenever anything that is shown may have.
func (s *Session) Revision() uint64 { return s.revision }

// Model returns the model in use.
func (s *Session) Model() *model.Model { return s.model }

// Use replaces the model, as when the library has changed. The design stays.
func (s *Session) Use(m *model.Model) {
	s.model = m
	s.touch()
}

// Design returns the value now.
func (s *Session) Design() design.Design { return s.current }

// Result returns the latest good result, and what is wrong with the value now
// if it is not that value's.
func (s *Session) Result() (*model.Result, error) {
	if !s.evaluated {
		r, err := s.model.Evaluate(s.current)
		if s.err = err; err == nil {
			s.result = r
		}
		s.evaluated = true
	}
	return &s.result, s.err
}

// Preview replaces the value while a hand still moves something: no step yet.
func (s *Session) Preview(d design.Design) {
	s.current = d
	s.touch()
}

// Commit replaces the value as one step of undo with that name. The maker's
// own ingredients come and go with the lines that name them.
func (s *Session) Commit(d design.Design, name string) { s.CommitKeys(d, name, nil) }

// CommitKeys is Commit for a key pressed in a widget: keys that follow each
// other closely in one widget, and with nothing between, are one step. The
// widget is any comparable value; nil is none.
func (s *Session) CommitKeys(d design.Design, name string, widget any) {
	d = d.WithOwn(s.model.Library(), s.rested)
	s.current = d
	s.touch()
	if d.Equal(s.rested) {
		return
	}
	at := s.now()
	n := len(s.past)
	switch goesOn := widget != nil && widget == s.keys && at.Sub(s.keysAt) < merge; {
	case !goesOn:
		s.past = append(s.past, step{s.rested, name, nil})
		if len(s.past) > most {
			s.past = s.past[1:]
		}
	case d.Equal(s.past[n-1].before): // the keys went there and back
		s.past = s.past[:n-1]
		widget = nil
	}
	s.keys, s.keysAt = widget, at
	s.future = nil
	s.rested = d
}

// Dirty reports whether there is something to save.
func (s *Session) Dirty() bool { return !s.current.Equal(s.saved) }

// Path returns where the design lives, "" if nowhere.
func (s *Session) Path() string {
	if s.file == nil {
		return ""
	}
	return s.file.Path()
}

// File returns the file that the design lives in as it was last read or written, nil if
// it lives nowhere. Any goroutine may keep it.
func (s *Session) File() *designfile.File { return s.file }

// Title returns the design's name with its file.
func (s *Session) Title() string {
	t := s.current.Name
	if p := s.Path(); p != "" {
		t += " (" + filepath.Base(p) + ")"
	}
	return t
}

// Start replaces everything by a design that has no file.
func (s *Session) Start(d design.Design) { s.start(d, nil) }

// Open replaces everything by the design in the file at path. On an error,
// which names the file, line and key, nothing changes.
func (s *Session) Open(path string) error {
	f, err := designfile.LoadWith(path, s.model.Library())
	if err != nil {
		return err
	}
	atomicfile.Sweep(path)
	s.start(f.Design, f)
	return nil
}

// ChangedOnDisk reports whether the file is no longer what was opened or saved.
func (s *Session) ChangedOnDisk() bool {
	if s.file == nil {
		return false
	}
	changed, err := s.file.ChangedOnDisk()
	return err == nil && changed
}

// NewsOnDisk is ChangedOnDisk, but true only once for each change.
func (s *Session) NewsOnDisk() bool {
	if !s.ChangedOnDisk() {
		return false
	}
	info, err := os.Stat(s.Path())
	if err != nil {
		return false
	}
	now := news{s.Path(), info.ModTime(), info.Size()}
	told := now == s.told
	s.told = now
	return !told
}

// Save writes the value now to path, "" for the file it has. Unless forced, it
// refuses with a *designfile.ChangedOnDiskError or *designfile.ExistsError
// rather than replace what it has not read. The file carries the maker's own
// ingredients that it uses, also if it came without them.
func (s *Session) Save(path string, force bool) error {
	if path == "" {
		path = s.Path()
	}
	d := s.current.WithOwn(s.model.Library(), s.current)
	keep := func(text []byte) error { // a save without a backup is better than none
		if err := s.backups.Keep(path, text, s.now()); err != nil && !errors.Is(err, backups.ErrNowhere) {
			s.notKept = err
		}
		return nil
	}
	s.notKept = nil
	f, err := designfile.Save(path, s.file, d, designfile.SaveOptions{Force: force, KeepOld: keep, Schemas: s.schemas})
	if err != nil {
		return err
	}
	_ = keep(f.Bytes())
	s.file, s.saved, s.current = f, d, d
	s.rested = s.rested.WithOwn(s.model.Library(), s.rested)
	s.touch()
	s.keys = nil // what was saved stays a place to come back to
	return nil
}

// NameSchemas has every saved file name its JSON Schema for editors of text. Its address
// is asked for when a design is saved.
func (s *Session) NameSchemas(schemas schemaline.Schemas) { s.schemas = schemas }

// Schemas tells where the schemas are, nil where nobody has named any.
func (s *Session) Schemas() schemaline.Schemas { return s.schemas }

// BackUp has every save kept in f from now on, and what a save replaces.
func (s *Session) BackUp(f *backups.Folder) { s.backups = f }

// NoBackup returns why the last save has no backup, nil if it has one.
func (s *Session) NoBackup() error { return s.notKept }

// EarlierSaves returns the backups of the design's file, the latest first.
func (s *Session) EarlierSaves() []backups.Save {
	if s.file == nil {
		return nil
	}
	return s.backups.Of(s.Path())
}
