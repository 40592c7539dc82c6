package kit

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
)

// AnswerKey is the key that gives an answer.
type AnswerKey int

// The roles.
const (
	ByHand   AnswerKey = iota // none
	ByReturn                  // Return, also while no button has the keyboard
	ByEscape                  // Escape
)

// An Answer is one of a question's buttons.
type Answer struct {
	Name string
	Role AnswerKey
	Do   func() // must hide the question when it is done with; nil only hides it
}

// Ask shows a question. Return and Escape give the answers that have those
// roles, which stand last and first in every question; the keyboard is on the former.
func Ask(w fyne.Window, title string, content fyne.CanvasObject, answers ...Answer) *dialog.CustomDialog {
	dg := dialog.NewCustomWithoutButtons(title, content, w)
	place := [...]int{ByEscape: 0, ByHand: 1, ByReturn: 2}
	answers = slices.Clone(answers)
	slices.SortStableFunc(answers, func(a, b Answer) int { return place[a.Role] - place[b.Role] })
	var row []fyne.CanvasObject
	var first fyne.Focusable
	for _, a := range answers {
		do := a.Do
		if do == nil {
			do = dg.Hide
		}
		b := NewButton(a.Name, do)
		b.escapes = a.Role == ByEscape
		if a.Role == ByReturn {
			b.Importance = widget.HighImportance
			first = b
		}
		row = append(row, b)
	}
	dg.SetButtons(row)
	dg.Show()
	if first != nil {
		w.Canvas().Focus(first)
	}
	return dg
}

// Confirm asks whether to do something, which verb names.
func Confirm(w fyne.Window, title, text, verb string, do func()) {
	var dg *dialog.CustomDialog
	dg = Ask(w, title, widget.NewLabel(text), Answer{say.T("Cancel"), ByEscape, nil},
		Answer{verb, ByReturn, func() { dg.Hide(); do() }})
}

// Tell says something that needs no answer, in a dialog as wide as its lines
// read well. It goes at Return and at Escape.
func Tell(w fyne.Window, title, text string) {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	var dg *dialog.CustomDialog
	dg = Ask(w, title, container.NewVBox(l), Answer{say.T("Close"), ByReturn, func() { dg.Hide() }})
	dg.Resize(fyne.NewSize(min(38*theme.TextSize(), w.Canvas().Size().Width-4*theme.Padding()), 0))
}

// Dismiss closes the dialog on top of c as Escape does, and reports whether
// there was one.
func Dismiss(c fyne.Canvas) bool {
	top := c.Overlays().Top()
	if top == nil {
		return false
	}
	var out, only fyne.Tappable
	buttons := 0
	within(top, func(o fyne.CanvasObject) {
		switch b := o.(type) {
		case *Button:
			buttons++
			if only = b; b.escapes {
				out = b
			}
		case *widget.Button:
			// The toolkit's own dialogs close with a button of such a name.
			buttons++
			if only = b; slices.Contains([]string{lang.L("Cancel"), lang.L("Close"), lang.L("No"), lang.L("OK")}, b.Text) {
				out = b
			}
		}
	})
	if out == nil && buttons == 1 {
		out = only
	}
	if p, ok := top.(*widget.PopUp); ok && buttons == 0 {
		p.Hide() // a box of ticks, as a click beside it does
		return true
	}
	if out == nil {
		return false
	}
	out.Tapped(nil)
	return true
}

// Accept gives the answer of the question on top of c that Return gives, and
// reports whether there is one.
func Accept(c fyne.Canvas) bool {
	top := c.Overlays().Top()
	if top == nil {
		return false
	}
	var main *Button
	within(top, func(o fyne.CanvasObject) {
		if b, ok := o.(*Button); ok && b.Importance == widget.HighImportance && !b.Disabled() {
			main = b
		}
	})
	if main == nil {
		return false
	}
	main.Tapped(nil)
	return true
}

// within shows see each object that a dialog is made of and that can be seen.
func within(o fyne.CanvasObject, see func(fyne.CanvasObject)) {
	if o == nil || !o.Visible() {
		return
	}
	see(o)
	switch x := o.(type) {
	case *fyne.Container:
		for _, i := range x.Objects {
			within(i, see)
		}
	case *widget.PopUp:
		within(x.Content, see)
	case *container.Scroll:
		within(x.Content, see)
	}
}

// A TextField is the toolkit's field for text; Escape closes the dialog it is in,
// and Return in a single line that has no use for it gives the dialog's answer.
type TextField struct{ widget.Entry }

// TappedSecondary implements fyne.SecondaryTappable.
func (e *TextField) TappedSecondary(p *fyne.PointEvent) {
	OnScreen(e, func() { e.Entry.TappedSecondary(p) })
}

// NewTextField returns an empty field of one line.
func NewTextField() *TextField {
	l := &TextField{}
	l.ExtendBaseWidget(l)
	return l
}

// NewText returns an empty field of so many lines, that wraps.
func NewTextArea(rows int) *TextField {
	l := &TextField{}
	l.MultiLine, l.Wrapping = true, fyne.TextWrapWord
	l.ExtendBaseWidget(l)
	l.SetMinRowsVisible(rows)
	return l
}

// AcceptsTab implements fyne.Tabbable: Tab leads on from a field of many lines too, where
// the toolkit would write it.
func (l *TextField) AcceptsTab() bool { return false }

// TypedKey implements fyne.Focusable.
func (l *TextField) TypedKey(e *fyne.KeyEvent) {
	switch {
	case e.Name == fyne.KeyEscape:
		escape(l)
	case (e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter) && !l.MultiLine && l.OnSubmitted == nil:
		mishap.Do(func() { submit(l) })
	default:
		l.Entry.TypedKey(e)
	}
}

// NameByEscape puts a TextField in the place of the field for a name in the toolkit's
// dialog on top of c, whose own field keeps Escape to itself. The two have the
// same text.
func NameByEscape(c fyne.Canvas) {
	within(c.Overlays().Top(), func(o fyne.CanvasObject) {
		s, ok := o.(*container.Scroll)
		if !ok {
			return
		}
		field, ok := s.Content.(*widget.Entry)
		if !ok {
			return
		}
		l := NewTextField()
		l.PlaceHolder, l.OnSubmitted = field.PlaceHolder, field.OnSubmitted
		l.SetText(field.Text)
		l.OnChanged = mishap.With(field.SetText)
		changed := field.OnChanged
		field.OnChanged = func(text string) {
			if changed != nil {
				changed(text)
			}
			if l.Text != text {
				l.SetText(text)
			}
		}
		s.Content = l
		s.Refresh()
		c.Focus(l)
	})
}

// OnFolderNew has ask called where the toolkit's file dialog on top of c would ask for
// the name of a new folder, in a dialog that keeps Escape to itself.
func OnFolderNew(c fyne.Canvas, ask func()) {
	within(c.Overlays().Top(), func(o fyne.CanvasObject) {
		if b, ok := o.(*widget.Button); ok && b.Icon != nil && b.Icon.Name() == theme.FolderNewIcon().Name() {
			b.OnTapped = mishap.Func(ask)
		}
	})
}

// submit gives the answer that Return gives in the dialog that o is in.
func submit(o fyne.CanvasObject) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(o); c != nil {
		Accept(c)
	}
}

// escape closes the dialog that o is in.
func escape(o fyne.CanvasObject) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(o); c != nil {
		Dismiss(c)
	}
}
