package notebookpage

import (
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// form is where a batch is written down.
type form struct {
	p      *Page
	which  *kit.Select
	fields []*field
	words  *kit.TextField
	write  *kit.Pad
	rest   *fyne.Container // what is beyond the few
	unfold *kit.Button
	quiet  bool          // the program fills the fields in
	photo  *kit.Button   // reads a photograph
	cut    *widget.Label // what one has shown
	object fyne.CanvasObject
}

// field is one setting of a batch.
type field struct {
	batch.Entry
	number *kit.NumberField // nil: it is a word
	choice *kit.Select
	text   *kit.TextField
	hint   *widget.Label
	tick   *kit.Button // says that it was as planned
	word   string      // that is expected of a choice; "" for none
}

// few are the settings that teach most for a minute's work, and more all others that a cook
// meets, both in the order of the making.
var (
	few  = []string{"syrup.weighed_g", "syrup.pan_g", "foam.cup_g", "scooped.after_min", "ate.hardness", "ate.icy"}
	more = []string{
		"made", "lot", "best_before", "weighed", "syrup.water_boils_c", "syrup.reading_c", "custard.weighed_g", "foam.whites_c", "custard.cup_g", "custard.stirs_min",
		"freezer_c", "room_c", "scooped.core_c", "scooped.ring_c", "ate.at_c", "ate.after_days", "ate.sweetness", "ate.sandy", "ate.ripple", "photographs",
	}
)

func newForm(p *Page) *form {
	f := &form{p: p, words: kit.NewTextArea(3)}
	f.which = kit.NewSelect(nil, func(string) { f.noted() })
	rows := func(paths []string) *fyne.Container {
		all := container.New(layout.NewGridLayoutWithColumns(1))
		for _, path := range paths {
			all.Add(f.row(path))
		}
		return all
	}
	first := rows(few)
	f.rest = container.NewVBox(rows(more), container.NewHBox(kit.NewButton(say.NotebookPicture.String(), f.pick)))
	f.rest.Hide()
	f.unfold = kit.NewButton(say.NotebookMore.String(), func() { f.open(!f.rest.Visible()) })
	f.words.OnChanged = mishap.With(func(string) { f.noted() })
	f.write = kit.NewPad(say.NotebookWrite.String(), p.write)
	f.write.Strong = true
	f.photo, f.cut = kit.NewButton(say.PhotoRead.String(), nil), page.Prose("")
	f.photo.Hide()
	f.cut.Hide()
	f.object = container.NewVBox(f.which, first, container.NewHBox(f.unfold, kit.NewButton(say.NotebookClear.String(), f.forget)), f.rest, container.NewHBox(f.photo), f.cut,
		widget.NewLabel(say.BatchField("words")))
	f.choices()
	return f
}

// row is a setting with its name and what is expected of it.
func (f *form) row(path string) fyne.CanvasObject {
	e, ok := batch.EntryAt(path)
	if !ok {
		panic("notebookpage: no setting " + path)
	}
	x := f.fieldOf(e)
	x.tick.OnTapped = func() { x.takePlan() }
	f.fields = append(f.fields, x)
	name := widget.NewLabel(say.BatchField(path))
	name.SizeName = theme.SizeNameSubHeadingText
	x.hint.SizeName = theme.SizeNameCaptionText
	return container.NewBorder(nil, nil, container.New(nameAbove{}, name, x.hint, x.tick), nil, container.New(centred{}, x.object()))
}

// plan shows pale in an empty field what b has there, and offers to take it: nothing counts
// as measured that nobody has said was. A field that is filled has the forecast beside it.
func (x *field) plan(b *batch.Batch) {
	offers := false
	switch {
	case x.number != nil:
		v, known := x.Of(b).(setting.Maybe).Get()
		if !known {
			v = math.NaN()
		}
		x.number.ShowPlan(v)
		offers = x.number.PlanShown()
	case x.choice != nil:
		x.word = x.Text(b)
		offers = x.word != "" && x.choice.SelectedIndex() < 1
		text := say.NotebookSelect.String()
		if x.word != "" {
			text = say.BatchExpects(say.BatchWord(x.word))
		}
		if x.choice.PlaceHolder != text {
			x.choice.PlaceHolder = text
			x.choice.Refresh()
		}
	}
	if x.tick.Visible() != offers {
		x.tick.Hidden, x.hint.Hidden = !offers, offers
		x.tick.Refresh()
		x.hint.Refresh()
	}
}

// takePlan fills in what plan shows.
func (x *field) takePlan() {
	if x.number != nil {
		x.number.TakePlan()
	} else if x.choice != nil {
		x.choice.SetSelected(say.BatchWord(x.word))
	}
}

// open shows or hides what is beyond the few.
func (f *form) open(all bool) {
	text := say.NotebookMore.String()
	if all {
		text = say.NotebookLess.String()
		f.rest.Show()
	} else {
		f.rest.Hide()
	}
	f.unfold.SetText(text)
}

// pick adds a picture that is chosen.
func (f *form) pick() {
	f.p.picture(func(path string) {
		f.take()
		f.p.book.Draft.Photographs = append(f.p.book.Draft.Photographs, path)
		f.put()
		f.p.book.Noted()
	})
}

// noted takes what a hand has changed, which is kept from then on.
func (f *form) noted() {
	if !f.quiet {
		f.take()
		f.p.book.Noted()
		f.plan()
	}
}

// forget empties the form.
func (f *form) forget() {
	f.p.book.Clear()
	f.put()
}

// put shows the draft, whatever the fields held.
func (f *form) put() {
	f.quiet = true
	defer func() { f.quiet = false }()
	b := &f.p.book.Draft
	beyond := false
	for i := range f.fields {
		x := f.fields[i]
		text := x.Text(b)
		beyond = beyond || text != "" && i >= len(few)
		switch {
		case x.number != nil:
			v, known := x.Of(b).(setting.Maybe).Get()
			if !known {
				v = math.NaN()
			}
			x.number.ShowValue(v)
		case x.choice != nil && text == "":
			x.choice.ClearSelected()
		case x.choice != nil:
			x.choice.SetSelected(say.BatchWord(text))
		default:
			x.text.SetText(text)
		}
	}
	f.showCut()
	f.words.SetText(b.Words)
	f.choices()
	name := say.NotebookNew.String()
	if shown := say.HarmlessLine(b.ID); slices.Contains(f.which.Options, shown) {
		name = shown
	}
	page.ShowSelected(f.which, name)
	if beyond {
		f.open(true)
	}
	f.plan()
}

func (f *form) fieldOf(e batch.Entry) *field {
	x := &field{Entry: e, hint: widget.NewLabel("")}
	x.tick = kit.NewButton(say.NotebookPlanned.String(), nil)
	x.tick.Hide()
	x.hint.Importance = widget.LowImportance
	x.hint.Wrapping = fyne.TextWrapWord
	switch {
	case e.Kind() == setting.KindNumber:
		x.number = page.NumberField(e.Unit, e.Min, e.Max, decimalsOf(e.Unit)).Reading(say.BatchGauge(page.Reads, e.Path, e.Unit))
		x.number.Step, x.number.Digits, x.number.Beside, x.number.Empties = 1, 7, say.T("days"), true
		x.number.OnChanged = func(float64) { f.noted() }
	case e.Choices != nil:
		words := []string{say.Unknown}
		for _, w := range e.Choices {
			words = append(words, say.BatchWord(w))
		}
		x.choice = kit.NewSelect(words, func(string) { f.noted() })
	default:
		x.text = kit.NewTextField()
		x.text.PlaceHolder = say.Of(e.Format)
		x.text.OnChanged = mishap.With(func(string) { f.noted() })
	}
	return x
}

func decimalsOf(unit string) int {
	if unit == "°C" {
		return 1
	}
	return 0
}

func (x *field) object() fyne.CanvasObject {
	switch {
	case x.number != nil:
		return x.number
	case x.choice != nil:
		return x.choice
	}
	return x.text
}

// choices offers the batches that can be added to.
func (f *form) choices() {
	options := []string{say.NotebookNew.String()}
	for i := len(f.p.book.Notes.Batches) - 1; i >= 0; i-- {
		options = append(options, say.HarmlessLine(f.p.book.Notes.Batches[i].ID))
	}
	f.which.Options = options
	if f.which.SelectedIndex() < 0 {
		f.which.Selected = options[0]
	}
	f.which.Refresh()
}

// show puts what is noted into the fields, and beside them what is expected.
func (f *form) show() {
	for i := range f.fields {
		x := f.fields[i]
		if x.number != nil {
			if v, known := x.Of(&f.p.book.Draft).(setting.Maybe).Get(); known {
				x.number.ShowValue(v)
			}
		}
		kit.SetText(x.hint, say.BatchHint(page.Reads, x.Path, &f.p.expected))
	}
	f.plan()
	f.showCut()
	f.write.ShowPad(say.NotebookWrite.String(), f.p.book.Path() != "" && f.p.book.Err == nil)
}

// plan shows what the design expects in the fields that are empty.
func (f *form) plan() {
	b := f.p.planned()
	for i := range f.fields {
		f.fields[i].plan(&b)
	}
}

// take makes what stands in the fields the draft.
func (f *form) take() {
	b := &f.p.book.Draft
	for i := range f.fields {
		x := f.fields[i]
		switch {
		case x.number != nil:
			v := x.number.Value()
			x.Of(b).(setting.Maybe).Put(v, !math.IsNaN(v))
		case x.choice != nil && x.choice.SelectedIndex() > 0:
			x.Set(b, x.Choices[x.choice.SelectedIndex()-1]) // the file's word, whatever is shown
		case x.choice != nil:
			x.Set(b, "")
		default:
			x.Set(b, strings.TrimSpace(x.text.Text))
		}
	}
	b.Words = strings.TrimSpace(f.words.Text)
	b.ID = ""
	if i, all := f.which.SelectedIndex(), f.p.book.Notes.Batches; i > 0 && i <= len(all) {
		b.ID = all[len(all)-i].ID // the last first
	}
}

// nameAbove gives the names of the fields one width, and close under each, in one place,
// what is expected or the button that takes it.
type nameAbove struct{}

func (nameAbove) Layout(o []fyne.CanvasObject, size fyne.Size) {
	name := o[0].MinSize().Height
	o[0].Resize(fyne.NewSize(size.Width, name))
	o[0].Move(fyne.NewPos(0, 0))
	for _, under := range o[1:] {
		width := size.Width
		if _, ok := under.(*kit.Button); ok {
			width = under.MinSize().Width
		}
		under.Resize(fyne.NewSize(width, 0)) // which breaks its lines
		under.Resize(fyne.NewSize(width, under.MinSize().Height))
		under.Move(fyne.NewPos(0, name-theme.InnerPadding()))
	}
}

func (nameAbove) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(13*theme.TextSize(), o[0].MinSize().Height+o[2].MinSize().Height-theme.InnerPadding())
}

// centred keeps a field at its own height amid a row.
type centred struct{}

func (centred) Layout(o []fyne.CanvasObject, size fyne.Size) {
	h := o[0].MinSize().Height
	o[0].Resize(fyne.NewSize(size.Width, h))
	o[0].Move(fyne.NewPos(0, (size.Height-h)/2))
}

func (centred) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }
