// Package kitchens keeps the kitchens of a maker.
package kitchens

import (
	"slices"
	"strings"
	"time"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/userdata"
)

// A Book is the kitchen profiles: the built-in ones, and the maker's own,
// which a file keeps for all designs. It lives on the window's thread.
type Book struct {
	path    string
	own     []cold.Profile
	problem error // of the file; nothing is kept while there is one
	told    []func()
	teach   func(d *design.Design, k cold.Profile) cold.Profile
	watch   []func(Change)
	schemas schemaline.Schemas
}

// NameSchemas has the file name its JSON Schema for editors of text when it is next written.
func (k *Book) NameSchemas(schemas schemaline.Schemas) { k.schemas = schemas }

// Open reads the own kitchens at path; "" stands for a machine without
// a configuration folder, where none can be kept.
func Open(path string) *Book {
	k := &Book{path: path}
	if path != "" {
		k.own, k.problem = cold.LoadProfiles(path)
	}
	return k
}

// PutAside puts the file of the kitchens aside if it is broken; there are none of the
// maker's own then, and new ones can be kept. It returns nil if there was no need.
func (k *Book) PutAside(now time.Time) (*userdata.PutAside, error) {
	kept, err := userdata.Aside(k.path, func(data []byte) error { _, err := cold.DecodeProfiles(data); return err }, now)
	if kept != nil {
		k.own, k.problem = nil, nil
	}
	return kept, err
}

// Tell has f called after every change.
func (k *Book) Tell(f func()) { k.told = append(k.told, f) }

// Forget drops all who were to be told.
func (k *Book) Forget() { k.told = nil }

// Problem is what is wrong with the file, or nil.
func (k *Book) Problem() error { return k.problem }

// All returns every kitchen, the built-in ones first.
func (k *Book) All() []cold.Profile { return cold.With(k.own) }

// Find returns the kitchen of that name, the ordinary one for "". The error is
// a *cold.UnknownProfileError.
func (k *Book) Find(name string) (cold.Profile, error) { return cold.Find(k.All(), name) }

// For returns the kitchen to compute a design in that names it, and what is to
// be said of the choice: the ordinary one stands in for one that is not kept
// here.
func (k *Book) For(name string) (p cold.Profile, said string) {
	p, err := k.Find(name)
	if err != nil {
		p = cold.Default()
		said = say.KitchenAway(name, p.Name)
	}
	if k.problem != nil {
		said = strings.TrimSpace(said + " " + say.KitchensLeftOut(k.problem))
	}
	return p, said
}

// Teach has every kitchen in which a design is computed pass f, which knows what its
// batches have taught of it.
func (k *Book) Teach(f func(d *design.Design, k cold.Profile) cold.Profile) { k.teach = f }

// Taught returns kitchen p as the batches of d have shown it. It is for computing, not
// for keeping.
func (k *Book) Taught(d design.Design, p cold.Profile) cold.Profile {
	if k.teach == nil {
		return p
	}
	return k.teach(&d, p)
}

// Made returns the kitchen to compute d in: its own, or the ordinary one for one that is
// not kept here, as the batches of d have shown it.
func (k *Book) Made(d design.Design) cold.Profile {
	p, _ := k.For(d.Kitchen.Profile)
	return k.Taught(d, p)
}

// Own reports whether the maker keeps a kitchen of that name, and BuiltIn
// whether there is one without.
func (k *Book) Own(name string) bool     { return at(k.own, name) >= 0 }
func (k *Book) BuiltIn(name string) bool { return at(cold.BuiltIn(), name) >= 0 }

func at(list []cold.Profile, name string) int {
	return slices.IndexFunc(list, func(p cold.Profile) bool { return strings.EqualFold(p.Name, name) })
}

// A Change is a kitchen before and after; nil where the maker had, or has, none.
type Change struct{ Before, After *cold.Profile }

// Reversed is the change that takes c back.
func (c Change) Reversed() Change { return Change{c.After, c.Before} }

// Watch has f told of every change by Keep and Remove, after it was made.
func (k *Book) Watch(f func(Change)) { k.watch = append(k.watch, f) }

// Keep writes p in place of the own kitchen called was, or as a new one.
func (k *Book) Keep(p cold.Profile, was string) error { return k.watched(was, &p) }

// Remove forgets the own kitchen of that name; a built-in one of that name is
// then as it was.
func (k *Book) Remove(name string) error { return k.watched(name, nil) }

func (k *Book) watched(was string, p *cold.Profile) error {
	c := Change{nil, p}
	if i := at(k.own, was); i >= 0 {
		before := k.own[i]
		c.Before = &before
	}
	if err := k.Make(c); err != nil {
		return err
	}
	if c.Before != nil || c.After != nil {
		for _, f := range k.watch {
			f(c)
		}
	}
	return nil
}

// Make makes a change, as to take another back, and tells nobody who watches.
func (k *Book) Make(c Change) error {
	return k.change(func(own []cold.Profile) []cold.Profile {
		i := -1
		if c.Before != nil {
			i = at(own, c.Before.Name)
		}
		switch {
		case i >= 0 && c.After != nil:
			own[i] = *c.After
		case i >= 0:
			own = slices.Delete(own, i, i+1)
		case c.After != nil:
			own = append(own, *c.After)
		}
		return own
	})
}

// change works on the file as it is now: another window may have kept a
// kitchen meanwhile.
func (k *Book) change(f func([]cold.Profile) []cold.Profile) error {
	if k.path == "" {
		return flaw.New("kitchen profiles: this computer names no configuration folder to keep them in")
	}
	own, err := cold.LoadProfiles(k.path)
	if err != nil {
		return err
	}
	own = f(own)
	if err := cold.SaveProfiles(k.path, own, k.schemas); err != nil {
		return err
	}
	k.own, k.problem = own, nil
	for _, f := range k.told {
		f()
	}
	return nil
}

// Path is the file that keeps the own kitchens, "" where none can be kept.
func (k *Book) Path() string { return k.path }
