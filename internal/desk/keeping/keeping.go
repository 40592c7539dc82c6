// Package keeping has the unsaved work of a window kept in the journal: a moment after
// each change, away from the window's thread. It also looks whether another program has
// changed the open design's file, or another window has it open.
package keeping

import (
	"errors"
	"sync"
	"time"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/session"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/journal"
)

// pause is how long after the first change that is not kept yet it is written. A hand
// that never rests is kept as often; the disk may take the rest of the five seconds that
// may be lost. Only a test has another.
var pause = 1500 * time.Millisecond

const (
	// again is how long after a failure it is tried once more.
	again = 5 * time.Second
	// glance is how often the open design's file is looked at.
	glance = 2 * time.Second
)

// errClosed says that a keeper keeps nothing any more.
var errClosed = flaw.New("the window is closed")

// Keeper keeps the work of one window.
type Keeper struct {
	tell    func(error) // on any goroutine: the work could not be kept; nil: it can again
	changed func()      // on any goroutine: the file is not what it was
	shared  func()      // on any goroutine, again and again: another window has it open
	joined  func()      // on any goroutine: another window has opened it too

	seen uint64 // revision; for the window's thread, as Look is
	of   string // the open design's path; likewise

	mu      sync.Mutex // guards what there is to keep; never held while the disk is slow
	latest  session.Unsaved
	at      time.Time
	number  uint64 // of latest
	waiting bool   // for write to be called

	folder *journal.Folder
	disk   sync.Mutex // guards the page and what is open; taken before mu
	page   *journal.Writer
	why    error  // that there is no page
	done   uint64 // number of what the disk holds
	kept   bool   // there is a page on the disk
	failed bool
	opened *journal.Opened // nil: no design's file is, or another window has it
	openOf string          // its path
	knocks string          // likewise, of one that another window knows is open here too

	closed chan struct{}
	once   sync.Once
}

// Open begins to keep a window's work in folder. tell is called on any goroutine, with
// an error when the work cannot be kept and with nil when it can again; changed when
// the open design's file has been changed by another program; shared as long as another
// window of the same maker has it open, and joined once another opens what is open here.
func Open(folder *journal.Folder, tell func(error), changed, shared, joined func()) *Keeper {
	k := &Keeper{folder: folder, tell: tell, changed: changed, shared: shared, joined: joined, closed: make(chan struct{})}
	k.page, k.why = folder.Open()
	go k.watch()
	return k
}

// Look takes note of what the session holds. It is for the window's thread, once a
// frame, and does next to nothing when nothing has changed.
func (k *Keeper) Look(s *session.Session) {
	if s.Revision() == k.seen {
		return
	}
	k.seen = s.Revision()
	u := s.Unsaved()
	if of := s.Path(); of != k.of {
		k.of = of
		defer func() { go mishap.Do(k.lookAround) }()
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	clean := !u.Dirty && !k.latest.Dirty
	k.latest, k.at = u, time.Now()
	k.number++
	if !clean {
		k.wake(pause)
	}
}

// wake has the work written after a while; mu is held.
func (k *Keeper) wake(after time.Duration) {
	if k.waiting {
		return
	}
	k.waiting = true
	time.AfterFunc(after, func() {
		mishap.Do(func() {
			k.mu.Lock()
			k.waiting = false
			k.mu.Unlock()
			k.disk.Lock()
			defer k.disk.Unlock()
			_ = k.write() // which tells of an error
		})
	})
}

// Flush keeps now what is not kept yet, on any goroutine, and returns where it is, ""
// where nothing is unsaved.
func (k *Keeper) Flush() (path string, err error) {
	k.disk.Lock()
	defer k.disk.Unlock()
	if err := k.write(); err != nil || !k.kept {
		return "", err
	}
	return k.page.Path(), nil
}

// write brings the disk up to date; it is held.
func (k *Keeper) write() error {
	k.mu.Lock()
	u, at, number := k.latest, k.at, k.number
	k.mu.Unlock()
	if number == k.done || !u.Dirty && !k.kept {
		k.done = number
		return nil
	}
	err := k.put(u, at)
	switch {
	case err == nil:
		k.done, k.kept = number, u.Dirty
		if k.failed {
			k.tell(nil)
		}
	case !k.failed:
		k.tell(err)
	}
	if k.failed = err != nil; k.failed {
		k.mu.Lock()
		k.wake(again)
		k.mu.Unlock()
	}
	return err
}

// put makes the page what u says; the disk is held.
func (k *Keeper) put(u session.Unsaved, at time.Time) error {
	switch {
	case k.page == nil:
		return k.why
	case !u.Dirty:
		return k.page.Clear()
	}
	text, err := u.Text()
	if err != nil {
		return err
	}
	p := journal.Page{At: at, Text: text}
	if f := u.File(); f != nil {
		p.Path, p.Read = f.Path(), f.Hash()
	}
	return k.page.Keep(p)
}

// Settle says that nothing of the work is unsaved any more, or that its maker has let
// it go: the page is cleared at once.
func (k *Keeper) Settle() {
	k.disk.Lock()
	defer k.disk.Unlock()
	k.mu.Lock()
	k.latest.Dirty = false
	k.number++
	k.mu.Unlock()
	_ = k.write() // which tells of an error
}

// Take makes what another window has left the page of this one.
func (k *Keeper) Take(l journal.Left) error {
	k.disk.Lock()
	defer k.disk.Unlock()
	if k.page == nil {
		return k.why
	}
	if err := k.page.Take(l); err != nil {
		return err
	}
	k.kept = true
	return nil
}

// watch tells of changes to the open design's file until the keeper is closed.
func (k *Keeper) watch() {
	tick := time.NewTicker(glance)
	defer tick.Stop()
	for {
		select {
		case <-k.closed:
			return
		case <-tick.C:
			mishap.Do(k.glance)
		}
	}
}

func (k *Keeper) glance() {
	k.lookAround()
	if f := k.file(); f != nil {
		if changed, err := f.ChangedOnDisk(); err == nil && changed {
			k.changed()
		}
	}
}

// lookAround says of the open design's file that it is open here, or tells that it is
// elsewhere, there and here.
func (k *Keeper) lookAround() {
	k.disk.Lock()
	defer k.disk.Unlock()
	path := ""
	if f := k.file(); f != nil && !k.isClosed() {
		path = f.Path()
	}
	if path != k.openOf && k.opened != nil {
		k.opened.Close()
		k.opened = nil
	}
	if k.openOf = path; path == "" {
		k.knocks = ""
		return
	}
	if k.opened != nil {
		if k.opened.Knocked() {
			k.joined()
		}
		return
	}
	var err error
	if k.opened, err = k.folder.Opened(path); errors.Is(err, journal.ErrElsewhere) {
		if k.knocks != path && k.folder.Knock(path) == nil {
			k.knocks = path
		}
		k.shared()
	}
}

func (k *Keeper) isClosed() bool {
	select {
	case <-k.closed:
		return true
	default:
		return false
	}
}

func (k *Keeper) file() *designfile.File {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.latest.File()
}

// Close keeps what is not kept yet and lets go of the page.
func (k *Keeper) Close() error {
	_, err := k.Flush()
	k.once.Do(func() {
		close(k.closed)
		k.disk.Lock()
		defer k.disk.Unlock()
		if k.page != nil {
			k.page.Close()
		}
		if k.opened != nil {
			k.opened.Close()
			k.opened = nil
		}
		k.page, k.why, k.kept = nil, errClosed, false
	})
	return err
}
