// Package notebook is the notebook of the open design: its batches, what they teach, and
// what of the next one is noted and not yet written down.
package notebook

import (
	"bytes"
	"context"
	"errors"
	"slices"
	"time"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/versions"
)

// A Book lives on the window's thread.
type Book struct {
	file    func() *designfile.File // the open design's, nil where it has none
	kitchen func(name string) cold.Profile
	of      string // the path of the design whose batches are held
	told    []func()

	drafts  *drafts // nil: none are kept
	schemas schemaline.Schemas

	taught *learn.Posterior // of Notes for settings, as it was asked for last; nil: not yet
	by     learn.Settings

	Notes batch.Notebook
	Err   error // of the file; nothing is written while there is one

	// Draft is what was noted of the batch that is being made, and From the design that
	// it is made from, where readings have changed the open one since; nil: they have
	// not.
	Draft batch.Batch
	From  *design.Design
}

// Open returns the notebook beside the open design's file, whichever that is now; nil
// where it has none.
func Open(file func() *designfile.File) *Book {
	b := &Book{file: file, kitchen: func(string) cold.Profile { return cold.Default() }, of: "?"}
	b.Follow()
	return b
}

// In has designs made in the kitchens that f finds by the names they give, with nothing
// learnt.
func (b *Book) In(f func(name string) cold.Profile) { b.kitchen, b.taught = f, nil }

// NameSchemas has new files name their JSON Schema for editors of text.
func (b *Book) NameSchemas(schemas schemaline.Schemas) { b.schemas = schemas }

// Tell has f called when batches have changed.
func (b *Book) Tell(f func()) { b.told = append(b.told, f) }

// Forget drops all who were to be told.
func (b *Book) Forget() { b.told = nil }

// Path is the file of the batches, "" where the design has none.
func (b *Book) Path() string {
	if b.of == "" {
		return ""
	}
	return batch.PathOf(b.of)
}

// Follow reads the notebook of the design that is open now, if that is another, and
// forgets what was noted of the one before.
func (b *Book) Follow() {
	now := ""
	if f := b.file(); f != nil {
		now = f.Path()
	}
	if now == b.of {
		return
	}
	if b.of != "" { // a design that was saved for the first time is the same one
		b.Draft, b.From = batch.Batch{}, nil
	}
	b.of = now
	switch {
	case b.Draft.Blank() && b.drafts != nil:
		b.Draft = b.drafts.folder.Of(now)
	case b.From != nil || !b.Draft.Blank():
		b.Noted()
	}
	b.Read()
}

// Read reads the file again: another program may have written to it.
func (b *Book) Read() {
	b.Notes, b.Err, b.taught = batch.Notebook{}, nil, nil
	if b.of != "" {
		b.Notes, b.Err = batch.Load(b.Path())
	}
	for _, f := range b.told {
		f()
	}
}

// Taught returns what the batches teach of d. The bench and every page ask it once a
// frame, so it is worked out when batches or the settings that they are about change.
func (b *Book) Taught(d *design.Design) learn.Posterior {
	return b.taughtIn(d, b.kitchen(d.Kitchen.Profile))
}

func (b *Book) taughtIn(d *design.Design, k cold.Profile) learn.Posterior {
	if s := learn.SettingsOf(d, k); b.taught == nil || b.by != s {
		p := s.From(&b.Notes)
		b.taught, b.by = &p, s
	}
	return *b.taught
}

// Kitchen returns k as the batches have shown it.
func (b *Book) Kitchen(d *design.Design, k cold.Profile) cold.Profile {
	b.Follow()
	p := b.taughtIn(d, k)
	return p.Kitchen(d, k)
}

// Kitchens returns what the batches teach of kitchens that are sampled for d.
func (b *Book) Kitchens(d design.Design) *sure.Learnt {
	b.Follow()
	p := b.Taught(&d)
	return p.Kitchens()
}

// Keep notes a reading that a cook has kept at the stove, and the design that it is of.
func (b *Book) Keep(of process.Reading, v float64, d design.Design) {
	if b.From == nil {
		b.From = &d
	}
	switch n := batch.Of(v); of {
	case process.SyrupC:
		b.Draft.Syrup.ReadingC = n
	case process.SyrupG:
		b.Draft.Syrup.WeighedG, b.Draft.Syrup.PanG = n, batch.Of(0)
	case process.FoamC:
		b.Draft.Foam.WhitesC = n
	case process.FoamCupG:
		b.Draft.Foam.CupG = n
	case process.CustardG:
		b.Draft.Custard.WeighedG = n
	case process.CustardCupG:
		b.Draft.Custard.CupG = n
	}
	b.Noted()
}

// Job is a batch that is to be written down.
type Job struct {
	Model   *model.Model
	Design  design.Design
	Kitchen cold.Profile // as published
	Notes   batch.Notebook
	Batch   batch.Batch
	File    *designfile.File // the design's, nil where it has none
	At      time.Time
	Schemas schemaline.Schemas
}

// Job returns what writing the draft down asks for. d is the open design and k its
// kitchen, with nothing learnt.
func (b *Book) Job(m *model.Model, d design.Design, k cold.Profile, at time.Time) Job {
	if b.From != nil {
		d = *b.From
	}
	notes := b.Notes
	notes.Batches = slices.Clone(notes.Batches)
	return Job{Model: m, Design: d, Kitchen: k, Notes: notes, Batch: b.Draft, File: b.file(), At: at, Schemas: b.schemas}
}

// errNoFile says that a notebook has no place yet.
func errNoFile() error { return errors.New(say.NotebookNoFile.String()) }

// Write completes the batch, appends it to its file and keeps the design as the version
// that it was made by. It may run on any goroutine.
func Write(ctx context.Context, j Job) (Written, error) {
	if j.File == nil {
		return Written{}, errNoFile()
	}
	l, err := learn.Log(ctx, j.Model, j.Design, j.Kitchen, &j.Notes, j.Batch, j.At)
	if err == nil {
		err = batch.Append(batch.PathOf(j.File.Path()), l.Entry, j.Schemas)
	}
	if err != nil || l.OtherDesign {
		return Written{Logged: l}, err
	}
	text, err := j.File.Encode(j.Design.WithOwn(j.Model.Library(), j.Design))
	if err == nil {
		err = versions.ForBatch(j.File.Path(), j.Schemas.Head(text, schemaline.Design), l.Entry.ID, j.At)
	}
	return Written{l, err}, nil
}

// Written is what came of writing a batch down.
type Written struct {
	learn.Logged
	NoVersion error // why no version is kept of its design; nil: one is, or need not be
}

// Done ends the draft and reads the file again.
func (b *Book) Done() {
	b.Clear()
	b.Read()
}

// Switch turns the learning of a factor off or on, from now on.
func (b *Book) Switch(f learn.Factor, on bool, at time.Time) error {
	if b.of == "" {
		return errNoFile()
	}
	if b.Err != nil {
		return b.Err
	}
	off := slices.DeleteFunc(slices.Clone(b.Notes.Off), func(code string) bool { return code == f.String() })
	if !on {
		off = append(off, f.String())
	}
	if len(off) == 0 {
		off = []string{batch.Nothing}
	}
	if err := batch.Append(b.Path(), learn.Switch(off, at), b.schemas); err != nil {
		return err
	}
	b.Read()
	return nil
}

// Expected returns what is forecast of the open design's next batch with nothing learnt,
// which takes some tenths of a second.
func Expected(ctx context.Context, j Job) (batch.Forecast, error) {
	return learn.Expect(ctx, j.Model, j.Design, j.Kitchen, &j.Batch)
}

// Table returns all batches as a table for a spreadsheet.
func Table(n *batch.Notebook) ([]byte, error) {
	var text bytes.Buffer
	err := batch.WriteCSV(&text, n)
	return text.Bytes(), err
}
