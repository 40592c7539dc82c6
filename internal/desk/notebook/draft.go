package notebook

import (
	"sync"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/work/batch"
)

// drafts keeps what is noted, away from the window's thread: the latest of each moment.
type drafts struct {
	folder  *batch.Drafts
	writing sync.Mutex             // held while the folder is written to
	mu      sync.Mutex             // held for a moment
	next    map[string]batch.Batch // by design, that is still to be kept
}

// KeepDrafts has what is noted of a batch kept in folder until it is written down, and
// takes up what an earlier window has left there of the open design.
func (b *Book) KeepDrafts(folder *batch.Drafts) {
	b.drafts = &drafts{folder: folder, next: map[string]batch.Batch{}}
	if b.of != "" {
		b.Draft = folder.Of(b.of)
	}
}

// Noted keeps the draft as it is now. One that cannot be kept is in the window still.
func (b *Book) Noted() {
	if d := b.drafts; d != nil && b.of != "" {
		d.mu.Lock()
		d.next[b.of] = b.Draft
		d.mu.Unlock()
		mishap.Go(func() { d.keep() })
	}
}

func (d *drafts) keep() {
	d.writing.Lock()
	defer d.writing.Unlock()
	d.mu.Lock()
	next := d.next
	d.next = map[string]batch.Batch{}
	d.mu.Unlock()
	for of, draft := range next {
		_ = d.folder.Keep(of, draft)
	}
}

// Clear forgets what was noted.
func (b *Book) Clear() {
	b.Draft, b.From = batch.Batch{}, nil
	b.Noted()
}
