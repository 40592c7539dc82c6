package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/entering"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// recipe is the question which lines of a pasted text to add: each with what was
// understood, what is doubtful and what was not understood. What is doubtful is
// left out until a hand chooses.
type recipe struct {
	w       *Window
	part    design.Part
	text    *kit.TextField
	found   *fyne.Container
	count   *widget.Label
	entries []entering.Entry
	takes   []int // of each entry's choices; −1: left out
	add     *kit.Button
	dg      *dialog.CustomDialog
}

// askRecipe shows what a text says before it is added to a list.
func (w *Window) askRecipe(part design.Part, text string) {
	r := &recipe{w: w, part: part, text: kit.NewTextArea(12), found: container.NewVBox(), count: page.Bold("")}
	names := make([]string, len(design.Parts))
	at := 0
	for i, p := range design.Parts {
		names[i] = say.Capital(say.Part(p))
		if p == part {
			at = i
		}
	}
	into, show := page.SelectOf(names, func(i int) { r.part = design.Parts[i] })
	show(at)
	r.text.SetText(text)
	r.text.OnChanged = mishap.With(func(string) { r.read() })
	head := container.NewBorder(nil, nil, widget.NewLabel(say.RecipeInto.String()), nil, into)
	split := container.NewHSplit(container.NewBorder(page.Small(say.RecipeText.String()), nil, nil, nil, r.text),
		container.NewBorder(page.Small(say.RecipeUnderstood.String()), nil, nil, nil, container.NewVScroll(r.found)))
	split.Offset = 0.4
	r.dg = kit.Ask(w.win, say.RecipeTitle.String(), container.NewBorder(head, r.count, nil, nil, split),
		kit.Answer{Name: say.RecipeAdd.String(), Role: kit.ByReturn, Do: r.take}, kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape})
	r.dg.Resize(page.Room(w.win.Canvas(), 70, 44))
	if text == "" {
		w.win.Canvas().Focus(r.text)
	}
	r.read()
}

// read reads the text anew.
func (r *recipe) read() {
	r.entries = r.w.reads().Text(r.text.Text)
	r.takes = make([]int, len(r.entries))
	r.found.Objects = nil
	for i := range r.entries {
		r.takes[i] = -1
		if r.entries[i].Taken() {
			r.takes[i] = 0
		}
		r.found.Add(r.row(i))
	}
	r.found.Refresh()
	r.tell()
}

// row is what was made of one line.
func (r *recipe) row(i int) fyne.CanvasObject {
	e := &r.entries[i]
	said := widget.NewLabel(page.Brief(e.Said.Text, 60))
	said.Truncation = fyne.TextTruncateEllipsis
	said.Importance = widget.LowImportance
	box := container.New(layout.NewCustomPaddedVBoxLayout(0), tightly(said))
	if !e.Taken() {
		doubt := page.Prose(say.Sentence(say.WrittenDoubt(&e.Said, r.w.kitchenName)))
		doubt.Importance = widget.WarningImportance
		box.Add(tightly(doubt))
	}
	if len(e.Choices) > 0 {
		var names []string
		for _, c := range e.Choices {
			names = append(names, say.EntryChoice(page.Reads, c.Line, c.Of))
		}
		pick, show := page.SelectOf(append(names, say.RecipeLeftOut.String()), func(k int) {
			if r.takes[i] = k; k == len(e.Choices) {
				r.takes[i] = -1
			}
			r.tell()
		})
		if show(len(e.Choices)); r.takes[i] >= 0 {
			show(0)
		}
		box.Add(pick)
	}
	return box
}

// lines are those to be added.
func (r *recipe) lines() []design.Line {
	var all []design.Line
	for i, k := range r.takes {
		if k >= 0 {
			all = append(all, r.entries[i].Choices[k].Line)
		}
	}
	return all
}

func (r *recipe) tell() { r.count.SetText(say.RecipeCount(page.Reads, len(r.lines()), len(r.entries))) }

// take adds the lines, as one step of undo.
func (r *recipe) take() {
	lines := r.lines()
	if len(lines) == 0 {
		return
	}
	r.dg.Hide()
	d := r.w.Design()
	for _, l := range lines {
		d = d.WithLineAdded(r.part, l)
	}
	r.w.Commit(d, say.RecipeStep.String())
	r.w.event("pasted lines=%d of=%d", len(lines), len(r.entries))
}
