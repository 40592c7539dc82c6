package ui

import (
	"math"

	"ripplewright/internal/form/setting"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// A dial is one number of the design, as its table of fields describes it.
type dial struct {
	setting.Field[design.Design]
	what string // the name of a step of undo that changes it
}

// settingAt returns the number at path, which is one of the table's.
func settingAt(path, what string) dial {
	f, ok := design.FieldAt(path)
	if !ok {
		panic("no such setting: " + path)
	}
	return dial{f, what}
}

// of returns the setting's value in d.
func (s dial) of(d design.Design) float64 {
	if n, whole := s.At(&d).(*int); whole {
		return float64(*n)
	}
	return *s.At(&d).(*float64)
}

// in returns d with the setting at v.
func (s dial) in(d design.Design, v float64) design.Design {
	if n, whole := s.At(&d).(*int); whole {
		*n = int(math.Round(v))
	} else {
		*s.At(&d).(*float64) = v
	}
	return d
}

// preview and commit hand v to the session, on the way and at rest.
func (w *Window) preview(s dial, v float64) { w.Preview(s.in(w.Design(), v)) }
func (w *Window) commit(s dial, v float64)  { w.Commit(s.in(w.Design(), v), s.what) }

// A knob is a slider for a setting, over the whole of its range. Only its Slide
// goes into containers: the toolkit finds no focus in what wraps a widget.
type knob struct {
	*kit.Slide
	dial
}

// knob returns a slider for the setting at path: dragging previews, resting
// commits.
func (w *Window) knob(name, path, what string, step float64, decimals int) *knob {
	s := settingAt(path, what)
	k := &knob{page.Slide(name, s.Unit, s.Min, s.Max, step, decimals), s}
	k.OnChanged = func(v float64) { w.preview(s, v) }
	k.OnChangeEnded = func(v float64) { w.commit(s, v) }
	return k
}

func (k *knob) show(d design.Design) { k.ShowValue(k.of(d)) }
