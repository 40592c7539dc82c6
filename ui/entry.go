package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/benchview"
	"ripplewright/internal/desk/entering"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// lineEntry is where a line is typed as one writes it: "250 g whole milk". Return
// adds what it says and is ready for the next; what it may mean stands under it,
// Up and Down choose. Return on an empty one goes to the next list.
type lineEntry struct {
	widget.Entry
	list    *lineList
	now     entering.Entry
	chosen  int // of now.Choices; −1: none
	doubt   *widget.Label
	rows    []*choiceRow
	choices *fyne.Container
}

// TappedSecondary implements fyne.SecondaryTappable.
func (e *lineEntry) TappedSecondary(p *fyne.PointEvent) {
	kit.OnScreen(e, func() { e.Entry.TappedSecondary(p) })
}

func newLineEntry(l *lineList) *lineEntry {
	e := &lineEntry{list: l, chosen: -1, doubt: page.Prose("")}
	e.PlaceHolder = say.EntryExample(l.part)
	e.ExtendBaseWidget(e)
	e.OnChanged = mishap.With(func(string) { e.read() })
	e.OnSubmitted = mishap.With(func(string) { e.enter() })
	e.doubt.Importance = widget.WarningImportance
	e.choices = container.New(layout.NewCustomPaddedVBoxLayout(0), e.doubt)
	for i := range entering.MostChoices {
		r := newChoiceRow(func() { e.take(i) })
		e.rows = append(e.rows, r)
		e.choices.Add(r)
	}
	e.choices.Hide()
	return e
}

// read shows what the text may mean.
func (e *lineEntry) read() {
	e.now, e.chosen = entering.Entry{}, -1
	if text := strings.TrimSpace(e.Text); text != "" {
		e.now, _ = e.list.w.reads().Line(text)
	}
	e.show()
}

// show puts the choices on screen.
func (e *lineEntry) show() {
	if strings.TrimSpace(e.Text) == "" {
		e.choices.Hide()
		return
	}
	w := e.list.w
	doubt := ""
	if !e.now.Taken() {
		doubt = say.Sentence(say.WrittenDoubt(&e.now.Said, w.kitchenName))
	}
	kit.SetText(e.doubt, doubt)
	e.doubt.Hidden = doubt == "" || e.now.Said.Text == ""
	for i, r := range e.rows {
		r.Hidden = i >= len(e.now.Choices)
		if !r.Hidden {
			c := e.now.Choices[i]
			r.show(say.EntryChoice(page.Reads, c.Line, c.Of), i == e.chosen || e.chosen < 0 && i == 0 && e.now.Taken())
		}
	}
	e.choices.Show()
	e.choices.Refresh()
}

// enter adds what the text says, or what was chosen of what it may mean. Where
// nothing is said nor chosen, the first choice is offered: the next Return takes
// it.
func (e *lineEntry) enter() {
	switch {
	case strings.TrimSpace(e.Text) == "":
		e.list.w.nextEntry(e)
	case e.chosen >= 0:
		e.take(e.chosen)
	case e.now.Taken(), e.now.Unweighed() && len(e.now.Choices) == 1:
		e.take(0)
	case len(e.now.Choices) > 0:
		e.chosen = 0
		e.show()
	default:
		e.list.w.Say(say.Sentence(say.WrittenDoubt(&e.now.Said, e.list.w.kitchenName)))
	}
}

// take adds a choice. A line without an amount wants one: its grams get the
// keyboard.
func (e *lineEntry) take(i int) {
	if i >= len(e.now.Choices) {
		return
	}
	c := e.now.Choices[i]
	l, w := e.list, e.list.w
	e.SetText("")
	d := w.Design()
	if c.Line.Grams == 0 && c.Line.Count == 0 {
		l.focus, l.onAmount = len(d.Lines(l.part)), true
	}
	w.Commit(d.WithLineAdded(l.part, c.Line), say.T(say.Addition, benchview.Brief(say.Kitchen(c.Of))))
	w.Say(say.EntryAdded(page.Reads, c.Line, c.Of))
}

// Typing reports whether there is a text, which undoing then is about.
func (e *lineEntry) Typing() bool { return e.Text != "" }

// TypedKey implements fyne.Focusable.
func (e *lineEntry) TypedKey(key *fyne.KeyEvent) {
	n := len(e.now.Choices)
	switch {
	case key.Name == fyne.KeyDown && n > 0:
		e.chosen = min(e.chosen+1, n-1)
		e.show()
	case key.Name == fyne.KeyUp && n > 0:
		e.chosen = max(e.chosen-1, 0)
		e.show()
	case key.Name == fyne.KeyEscape && e.Text != "":
		e.SetText("")
	default:
		e.Entry.TypedKey(key)
	}
}

// TypedShortcut implements fyne.Shortcutable: several lines at once are shown
// before they are taken.
func (e *lineEntry) TypedShortcut(s fyne.Shortcut) {
	if paste, ok := s.(*fyne.ShortcutPaste); ok && strings.ContainsAny(strings.TrimSpace(paste.Clipboard.Content()), "\n\r") {
		text := paste.Clipboard.Content()
		mishap.Do(func() { e.list.w.askRecipe(e.list.part, text) })
		return
	}
	e.Entry.TypedShortcut(s)
}

// choiceRow is one thing that a text may mean.
type choiceRow struct {
	widget.BaseWidget
	label *widget.Label
	back  *themed
	take  func()
}

func newChoiceRow(take func()) *choiceRow {
	r := &choiceRow{label: widget.NewLabel(""), take: take, back: &themed{rect: canvas.NewRectangle(theme.Color(theme.ColorNameSelection)), name: theme.ColorNameSelection}}
	r.label.Truncation = fyne.TextTruncateEllipsis
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer implements fyne.Widget.
func (r *choiceRow) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewStack(r.back, tightly(r.label)))
}

// Tapped implements fyne.Tappable.
func (r *choiceRow) Tapped(*fyne.PointEvent) { mishap.Do(r.take) }

func (r *choiceRow) show(text string, chosen bool) {
	kit.SetText(r.label, text)
	r.label.TextStyle.Bold = chosen
	r.back.Hidden = !chosen
	r.label.Refresh()
	r.Refresh()
}

// reads is the reader of lines for the design's library and eggs.
func (w *Window) reads() *entering.Reader {
	lib, eggs := w.library(), w.Design().Eggs
	if language := tongue.Language(); !w.reader.For(lib, eggs, language) {
		w.reader = entering.New(lib, eggs, language, say.Kitchen)
	}
	return w.reader
}

// entries are where lines are typed, in the order of the bench.
func (w *Window) entries() []*lineEntry {
	var all []*lineEntry
	for _, l := range w.lists() {
		all = append(all, l.entry)
	}
	return all
}

// nextEntry goes on to the list after that of e, and from the last to the first.
func (w *Window) nextEntry(e *lineEntry) {
	all := w.entries()
	for i := range all {
		if all[i] == e {
			w.win.Canvas().Focus(all[(i+1)%len(all)])
		}
	}
}

// startNew begins an empty design, ready for its first line.
func (w *Window) startNew() {
	d := design.New()
	d.Name = say.T("Untitled")
	w.Session.Start(d)
	w.turnTo(places.Bench)
	w.refresh()
	w.win.Canvas().Focus(w.entries()[0])
	w.event("new")
}

// kitchenName is what a kitchen calls the ingredient of an id.
func (w *Window) kitchenName(id string) string {
	if in, ok := w.library().Find(id); ok {
		return say.Kitchen(in)
	}
	return id
}
