package notebookpage

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

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
	fields []field
	words  *kit.TextField
	write  *kit.Pad
	object fyne.CanvasObject
}

// field is one setting of a batch.
type field struct {
	batch.Entry
	number *kit.NumberField // nil: it is a word
	choice *kit.Select
	text   *kit.TextField
	hint   *widget.Label
}

// shown are the settings in the order of the making: the few that a cook meets.
var shown = []string{
	"syrup.water_boils_c", "syrup.reading_c", "syrup.weighed_g", "syrup.pan_g", "custard.weighed_g", "foam.whites_c", "foam.cup_g", "custard.cup_g",
	"freezer_c", "room_c", "scooped.after_min", "scooped.ring_c", "ate.after_days", "ate.hardness", "ate.icy", "ate.sweetness", "ate.sandy", "ate.ripple",
	"weighed", "photographs",
}

func newForm(p *Page) *form {
	f := &form{p: p, words: kit.NewTextArea(3)}
	f.which = kit.NewSelect(nil, nil)
	rows := container.New(layout.NewGridLayoutWithColumns(1))
	for _, path := range shown {
		e, ok := batch.EntryAt(path)
		if !ok {
			panic("notebookpage: no setting " + path)
		}
		x := f.fieldOf(e)
		f.fields = append(f.fields, x)
		name := widget.NewLabel(say.BatchField(path))
		name.SizeName = theme.SizeNameSubHeadingText
		rows.Add(container.NewBorder(nil, nil, container.New(columnWide{}, name), container.New(columnWide{}, x.hint), x.object()))
	}
	f.words.OnChanged = nil
	f.write = kit.NewPad(say.NotebookWrite, p.write)
	f.write.Strong = true
	f.object = container.NewVBox(f.which, rows, widget.NewLabel(say.BatchField("words")), f.words, f.write)
	f.choices()
	return f
}

func (f *form) fieldOf(e batch.Entry) field {
	x := field{Entry: e, hint: widget.NewLabel("")}
	x.hint.Importance = widget.LowImportance
	x.hint.Truncation = fyne.TextTruncateEllipsis
	switch {
	case e.Kind() == setting.KindNumber:
		x.number = page.NumberField(e.Unit, e.Min, e.Max, decimalsOf(e.Unit))
		x.number.Step, x.number.Digits, x.number.Beside = 1, 7, "days"
	case e.Choices != nil:
		x.choice = kit.NewSelect(append([]string{say.Unknown}, e.Choices...), nil)
	default:
		x.text = kit.NewTextField()
		x.text.PlaceHolder = e.Format
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
	options := []string{say.NotebookNew}
	for i := len(f.p.book.Notes.Batches) - 1; i >= 0; i-- {
		options = append(options, f.p.book.Notes.Batches[i].ID)
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
		x := &f.fields[i]
		if x.number != nil {
			if v, known := x.Of(&f.p.book.Draft).(setting.Maybe).Get(); known {
				x.number.ShowValue(v)
			}
		}
		kit.SetText(x.hint, say.BatchHint(page.Reads, x.Path, &f.p.expected))
	}
	f.write.ShowPad(say.NotebookWrite, f.p.book.Path() != "" && f.p.book.Err == nil)
}

// take makes what stands in the fields the draft.
func (f *form) take() {
	b := &f.p.book.Draft
	for i := range f.fields {
		x := &f.fields[i]
		switch {
		case x.number != nil:
			v := x.number.Value()
			x.Of(b).(setting.Maybe).Put(v, !math.IsNaN(v))
		case x.choice != nil && x.choice.SelectedIndex() > 0:
			x.Set(b, x.choice.Selected)
		case x.choice != nil:
			x.Set(b, "")
		default:
			x.Set(b, strings.TrimSpace(x.text.Text))
		}
	}
	b.Words = strings.TrimSpace(f.words.Text)
	b.ID = ""
	if f.which.SelectedIndex() > 0 {
		b.ID = f.which.Selected
	}
}

// clear empties the fields for the next batch.
func (f *form) clear() {
	for i := range f.fields {
		x := &f.fields[i]
		switch {
		case x.number != nil:
			x.number.ShowValue(math.NaN())
		case x.choice != nil:
			x.choice.ClearSelected()
		default:
			x.text.SetText("")
		}
	}
	f.words.SetText("")
	page.ShowSelected(f.which, say.NotebookNew)
	f.choices()
}

// columnWide gives the names of the fields one width.
type columnWide struct{}

func (columnWide) Layout(o []fyne.CanvasObject, size fyne.Size) { o[0].Resize(size) }

func (columnWide) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(13*theme.TextSize(), o[0].MinSize().Height)
}
