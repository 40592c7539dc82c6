// Package past lists what the open design once said: its earlier saves and the versions
// that were kept of it.
package past

import (
	"time"

	"ripplewright/internal/desk/session"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/versions"
)

// A Moment is what the design said once.
type Moment struct {
	Title  string // no two of a list have the same
	Design design.Design
}

// Saves returns the last saves of the design's file, the latest first. One that cannot
// be read is left out.
func Saves(s *session.Session) []Moment {
	var list []Moment
	for _, save := range s.EarlierSaves() {
		text, err := save.Text()
		if err != nil {
			continue
		}
		f, err := designfile.DecodeWith(save.Path, text, s.Model().Library())
		if err != nil {
			continue
		}
		list = append(list, Moment{say.SavedAt(len(list)+1, save.At.Local()), f.Design})
	}
	return list
}

// Versions returns the versions of the design, the latest first. The error names what
// cannot be read.
func Versions(s *session.Session) ([]Moment, error) {
	if s.Path() == "" {
		return nil, nil
	}
	all, err := versions.List(s.Path())
	if err != nil {
		return nil, err
	}
	var list []Moment
	for i := len(all) - 1; i >= 0; i-- {
		v := all[i]
		f, err := v.Design(s.Model().Library())
		if err != nil {
			return nil, err
		}
		list = append(list, Moment{say.VersionTitle(v.Number, v.At.Local(), v.Note, v.Batch), f.Design})
	}
	return list, nil
}

// Keep keeps the design as it is now as a version, with a note.
func Keep(s *session.Session, note string, at time.Time) error {
	text, err := s.Unsaved().Text()
	if err != nil {
		return err
	}
	return versions.Keep(s.Path(), s.Schemas().Head(text, schemaline.Design), note, "", at)
}
