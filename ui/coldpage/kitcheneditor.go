package coldpage

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// kitchenEditor is the dialog of all settings of a kitchen.
type kitchenEditor struct {
	p       *Page
	form    coldview.KitchenForm
	numbers map[string]*kit.NumberField // by the setting's path
	problem *widget.Label
	dialog  *dialog.CustomDialog
}

// editKitchen opens the editor on k, kept so far under the name was, "" for a new
// one.
func (p *Page) editKitchen(k cold.Profile, was string) *kitchenEditor {
	e := &kitchenEditor{p: p, form: coldview.KitchenForm{Kitchen: k, Was: was}, problem: page.Bold(""), numbers: map[string]*kit.NumberField{}}
	e.problem.Importance = widget.DangerImportance
	e.problem.Hide()
	rows := container.New(layout.NewFormLayout())
	for _, g := range coldview.KitchenGroups() {
		if g.Name != "" {
			rows.Add(page.Small(g.Name))
			rows.Add(widget.NewLabel(""))
		}
		for _, f := range g.Fields {
			rows.Add(widget.NewLabel(say.Capital(say.Of(f.About))))
			rows.Add(e.input(f))
		}
	}
	var numbers []*kit.NumberField
	for _, n := range e.numbers {
		numbers = append(numbers, n)
	}
	kit.LineUp(numbers...)
	save := kit.NewButton(say.T("Save"), e.save)
	save.Importance = widget.HighImportance
	title := say.T("Edit the kitchen")
	if was == "" {
		title = say.T("A new kitchen")
	}
	foot := container.NewVBox(e.problem, container.NewHBox(layout.NewSpacer(), kit.NewCancel(say.T("Cancel"), func() { e.dialog.Hide() }), save))
	list := kit.NewRoll(container.New(layout.NewCustomPaddedLayout(0, 0, 0, scrollBar), rows))
	e.dialog = dialog.NewCustomWithoutButtons(title, container.NewBorder(nil, foot, nil, nil, list), p.host.Window())
	e.dialog.Resize(page.Room(p.host.Window().Canvas(), 56, 43))
	e.dialog.Show()
	return e
}

// input is the widget of one setting.
func (e *kitchenEditor) input(f setting.Field[cold.Profile]) fyne.CanvasObject {
	switch v := f.At(&e.form.Kitchen).(type) {
	case *float64:
		n := page.NumberField(f.Unit, f.Min, f.Max, coldview.TypedDecimals(f))
		n.Submits = true
		n.ShowValue(*v)
		e.numbers[f.Path] = n
		return n
	case *string:
		if f.Choices == nil {
			return e.line(v)
		}
		var options []coldview.Option
		for _, c := range f.Choices {
			options = append(options, coldview.Option{Name: say.KitchenChoice(c), Value: c})
		}
		s, show := selectOf(options, func(value string) { *v = value })
		show(*v)
		return s
	}
	return widget.NewLabel("")
}

// line is a field for words.
func (e *kitchenEditor) line(v *string) *kit.TextField {
	t := kit.NewTextField()
	t.SetText(*v)
	t.OnChanged = mishap.With(func(text string) { *v = strings.TrimSpace(text) })
	return t
}

// save keeps the kitchen, unless something is wrong with it, which it says.
func (e *kitchenEditor) save() {
	if err := e.keep(); err != nil {
		e.problem.SetText(say.Sentence(say.Flaw(err)))
		e.problem.Show()
		return
	}
	e.dialog.Hide()
	if d := e.p.host.Design(); d.Kitchen.Profile != e.form.Kitchen.Name {
		d.Kitchen.Profile = e.form.Kitchen.Name
		e.p.host.Commit(d, say.T("kitchen"))
	}
}

func (e *kitchenEditor) keep() error {
	for _, f := range cold.Fields() {
		if n := e.numbers[f.Path]; n != nil {
			if err := e.form.SetNumber(f, n.Value(), n.Problem()); err != nil {
				return err
			}
		}
	}
	return e.form.Keep(e.p.kitchens)
}
