package session

import (
	"ripplewright/internal/work/design"
)

// Undo goes back a step, and reports whether there was one. What a hand has
// moved and not let go of is the step it goes back first.
func (s *Session) Undo() bool {
	if s.moved() {
		s.current, s.keys = s.rested, nil
		s.touch()
		return true
	}
	return s.travel(&s.past, &s.future, true)
}

// Redo goes forward again; not while a hand moves something.
func (s *Session) Redo() bool { return !s.moved() && s.travel(&s.future, &s.past, false) }

// moved reports whether a hand has moved something and not let go of it.
func (s *Session) moved() bool { return !s.current.Equal(s.rested) }

func (s *Session) travel(from, to *[]step, back bool) bool {
	n := len(*from)
	if n == 0 {
		return false
	}
	st := (*from)[n-1]
	if a := st.act; a != nil && !(back && a.Back() || !back && a.Again()) {
		return false
	}
	*from = (*from)[:n-1]
	*to = append(*to, step{s.rested, st.name, st.act})
	s.current, s.rested, s.keys = st.before, st.before, nil
	s.touch()
	return true
}

// UndoName returns the name of the step that Undo takes back, "" if none.
func (s *Session) UndoName() string { return last(s.past) }

// RedoName returns the name of the step that Redo brings back, "" if none.
func (s *Session) RedoName() string { return last(s.future) }

func last(steps []step) string {
	if len(steps) == 0 {
		return ""
	}
	return steps[len(steps)-1].name
}

// UndoChange returns the designs before and after the step that Undo takes back.
func (s *Session) UndoChange() (before, after design.Design) {
	if n := len(s.past); n > 0 {
		before = s.past[n-1].before
		return before, s.rested
	}
	return s.rested, s.rested
}

// RedoChange returns the designs before and after the step that Redo brings back.
func (s *Session) RedoChange() (before, after design.Design) {
	if n := len(s.future); n > 0 {
		return s.rested, s.future[n-1].before
	}
	return s.rested, s.rested
}
