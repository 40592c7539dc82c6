package userdata

import (
	"errors"
	"time"

	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/atomicfile"
)

// PutAside is a file that was put aside, for nothing could be read of it.
type PutAside struct {
	Path string // where it is now
	Why  error
}

// Aside puts the file at path aside if read refuses its content, so that a new one can
// be begun. It returns nil if there was no need. A file that cannot be looked at stays
// where it is, as does one of a newer program, which is not broken.
func Aside(path string, read func(data []byte) error, now time.Time) (*PutAside, error) {
	if path == "" {
		return nil, nil
	}
	data, err := Read(path, "")
	if err != nil {
		return nil, nil
	}
	why := read(data)
	var fault *yamltext.Fault
	if why == nil || errors.As(why, &fault) && fault.Newer {
		return nil, nil
	}
	kept, err := atomicfile.Aside(path, now)
	if err != nil {
		return nil, err
	}
	return &PutAside{kept, why}, nil
}

// PutAside puts the file of the own ingredients aside if it is broken, as Aside does;
// the shelf then has none, and new ones can be kept.
func (s *Shelf) PutAside(now time.Time) (*PutAside, error) {
	kept, err := Aside(s.path, func(data []byte) error { _, err := Decode(data); return err }, now)
	if kept != nil {
		s.Read()
	}
	return kept, err
}

// PutAside puts the file of the prices aside if it is broken, as Aside does; there are
// none then, and new ones can be kept.
func (p *Prices) PutAside(now time.Time) (*PutAside, error) {
	kept, err := Aside(p.path, func(data []byte) error { _, err := DecodePrices(data); return err }, now)
	if kept != nil {
		p.Read()
	}
	return kept, err
}
