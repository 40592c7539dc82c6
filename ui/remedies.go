package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// lockIcon is a padlock: it stands for the menu of a line that must not move.
var lockIcon = theme.NewThemedResource(fyne.NewStaticResource("lock.svg", []byte(
	`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24"><path fill="#000000" fill-rule="evenodd" d="M7 10V7a5 5 0 0 1 10 0v3h2v11H5V10zm2 0h6V7a3 3 0 0 0-6 0z"/></svg>`)))

// remedies shows what mends the design, each with a button that takes it as one
// step of undo.
func (b *bench) remedies() {
	found := b.mender.Found()
	if found == nil {
		return
	}
	list := found.List
	about := ""
	if len(list) == 0 {
		about = say.Advice(page.Reads, b.w.Result().Verdict, found, b.cold.answer)
		if found.Nearest != nil {
			list = []balance.Proposal{*found.Nearest}
		}
	}
	box := container.NewVBox()
	if about != "" {
		box.Add(page.Prose(about))
	}
	var dg *dialog.CustomDialog
	b.remedyTexts = nil
	for i := range list {
		p := &list[i]
		take := kit.NewButton(say.Apply.String(), func() {
			dg.Hide()
			b.w.Commit(p.Design, say.RemedyStep.String())
		})
		take.Importance = widget.HighImportance
		if i > 0 {
			take.Importance = widget.MediumImportance
			box.Add(widget.NewSeparator())
		}
		box.Add(container.NewBorder(nil, nil, nil, container.NewVBox(take), b.remedy(p)))
	}
	dg = kit.Ask(b.w.win, say.RemediesTitle.String(), page.Scrolled(box), kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape})
	size := b.w.win.Canvas().Size()
	dg.Resize(fyne.NewSize(min(size.Width-4*theme.Padding(), max(640, 52*theme.TextSize())), min(size.Height-4*theme.Padding(), 40*theme.TextSize())))
}

// remedy is one remedy in words: what to do, line by line, and what that costs
// elsewhere.
func (b *bench) remedy(p *balance.Proposal) fyne.CanvasObject {
	names, before, after := "", "", ""
	for i := range p.Changes {
		was, is := say.ChangeValues(page.Reads, &p.Changes[i])
		names += say.ChangeName(&p.Changes[i]) + "\n"
		before += was + "\n"
		after += "→ " + is + "\n"
	}
	column := func(text string, align fyne.TextAlign) *widget.Label {
		l := widget.NewLabelWithStyle(strings.TrimSuffix(text, "\n"), align, fyne.TextStyle{})
		l.SizeName = theme.SizeNameCaptionText
		return l
	}
	what := container.NewHBox(column(names, fyne.TextAlignLeading), column(before, fyne.TextAlignTrailing), column(after, fyne.TextAlignLeading))
	text, was := page.Prose(""), *b.w.Result()
	tell := func() {
		said := say.Capital(say.Gives(page.Reads, p)) + "."
		if len(p.Changes) == 1 {
			said = say.Remedy(page.Reads, p, b.cold.answer)
		}
		if elsewhere := say.Elsewhere(page.Reads, &was, p); len(elsewhere) > 0 {
			said += " " + say.Capital(strings.Join(elsewhere, "; ")) + "."
		}
		kit.SetText(text, said)
	}
	tell()
	b.remedyTexts = append(b.remedyTexts, tell)
	return container.NewVBox(text, what)
}

// remediesKnown shows remedies, and in an open dialog what they bring beside.
func (b *bench) remediesKnown() {
	b.showVerdict()
	for _, tell := range b.remedyTexts {
		tell()
	}
}

// showMend lets the button be pressed when there is something to mend with.
func (b *bench) showMend() {
	if found := b.mender.Found(); found != nil && found.First() != nil {
		b.mend.Enable()
	} else {
		b.mend.Disable()
	}
}
