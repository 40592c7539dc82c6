// Package start gives designs to begin with: a bare base with a foam, or any other
// design, scaled to the tubs at hand.
package start

import (
	"io/fs"
	"math"
	"path"
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

// A Choice is a base or a foam.
type Choice struct {
	Key    string // the name of its file, "milk-and-yolk"
	Name   string
	Design design.Design
}

// Shelf holds the bases and foams.
type Shelf struct{ Bases, Foams []Choice }

// Open reads bases/*.yaml and foams/*.yaml.
func Open(files fs.FS) (*Shelf, error) {
	s := &Shelf{}
	for _, x := range []struct {
		folder string
		into   *[]Choice
	}{{"bases", &s.Bases}, {"foams", &s.Foams}} {
		names, err := fs.Glob(files, x.folder+"/*.yaml")
		if err != nil {
			return nil, err
		}
		for _, name := range names {
			text, err := fs.ReadFile(files, name)
			if err != nil {
				return nil, err
			}
			f, err := designfile.Decode(name, text)
			if err != nil {
				return nil, err
			}
			*x.into = append(*x.into, Choice{strings.TrimSuffix(path.Base(name), ".yaml"), f.Design.Name, f.Design})
		}
	}
	return s, nil
}

// Keys are those of choices, in their order.
func Keys(all []Choice) []string {
	var keys []string
	for _, c := range all {
		keys = append(keys, c.Key)
	}
	return keys
}

// Design returns a base with a foam, by their keys; "" keeps the base's own foam.
func (s *Shelf) Design(base, foam string) (design.Design, error) {
	b, err := find(s.Bases, "base", base)
	if err != nil || foam == "" {
		return b.Design, err
	}
	f, err := find(s.Foams, "foam", foam)
	if err != nil {
		return design.Design{}, err
	}
	d := b.Design
	d.Foam = f.Design.Foam
	return d, nil
}

func find(all []Choice, what, key string) (Choice, error) {
	for _, c := range all {
		if c.Key == key {
			return c, nil
		}
	}
	return Choice{}, flaw.New("there is no %s %s: there are %s", what, echo.Quoted(key), strings.Join(Keys(all), ", "))
}

// Scaled returns d for so many tubs of so many mL, each line as it is weighed for
// them: whole grams from 10 g on, tenths from 1 g on, hundredths below. Eggs that are
// counted become grams where their count would not be whole.
func Scaled(m *model.Model, d design.Design, tubs int, volumeML float64) (design.Design, error) {
	d.Tubs.Count, d.Tubs.VolumeML = tubs, volumeML
	d.Batch.Basis = design.BasisTubs
	r, err := m.Evaluate(d)
	if err != nil {
		return d, err
	}
	for _, l := range r.Lines {
		x := d.Lines(l.Part)[l.Index]
		if n := x.Count * l.Grams / l.WrittenG; x.Count > 0 && math.Abs(n-math.Round(n)) < 1e-6 {
			x.Count = math.Round(n)
			d = d.WithLine(l.Part, l.Index, x)
			continue
		}
		x.Count, x.CountOf, x.Grams = 0, "", weighed(l.Grams)
		d = d.WithLine(l.Part, l.Index, x)
	}
	return d, nil
}

// weighed is g as a kitchen scale shows it.
func weighed(g float64) float64 {
	switch {
	case g >= 10:
		return math.Round(g)
	case g >= 1:
		return math.Round(10*g) / 10
	}
	return math.Round(100*g) / 100
}
