package librarypage

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/larder"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// sections makes the fields of a form, the usual ones first.
func (e *editor) sections() []fyne.CanvasObject {
	f := e.form
	e.name, e.id = e.text(&f.Name), e.text(&f.ID)
	e.name.PlaceHolder = say.T("as you call it")
	objects := []fyne.CanvasObject{widget.NewForm(widget.NewFormItem(say.T("Name"), e.name), widget.NewFormItem(say.T("Id¦of an ingredient"), e.id),
		widget.NewFormItem(say.T("Group"), e.choice(larder.GroupChoices(), f.Group, func(v string) { f.Group = v })))}
	more := widget.NewAccordion()
	more.MultiOpen = true
	fold := func(title string, o fyne.CanvasObject) {
		more.Append(widget.NewAccordionItem(title, container.NewVBox(o)))
	}
	columns := e.columnForm()
	if f.Per != nil {
		usual, rest := f.PackEntries()
		objects = append(objects, page.Heading(say.T("What the pack says")), page.Prose(say.LeaveEmptyOnPack.String()), e.fibre(), e.rows(usual))
		fold(say.MoreOnPack.String(), e.rows(rest))
		fold(say.MoreFigures.String(), columns)
	} else {
		objects = append(objects, page.Heading(say.T("Figures per 100 g")), page.Prose(say.LeaveEmpty.String()), columns)
	}
	fold(say.T("Allergens"), e.allergenForm())
	fold(say.T("On a label"), e.labelForm())
	fold(say.T("Density and measures"), e.rows(f.Spoons))
	return append(objects, more)
}

// text is an entry for s that tells of its change.
func (e *editor) text(s *string) *kit.TextField {
	w := kit.NewTextField()
	w.Text = *s
	w.OnChanged = mishap.With(func(text string) { *s = text; e.changed() })
	return w
}

// choice is a select that begins with value.
func (e *editor) choice(choices []larder.Choice, value string, chosen func(value string)) *kit.Select {
	names := make([]string, len(choices))
	for i, c := range choices {
		names[i] = c.Name
	}
	s, show := page.SelectOf(names, func(i int) { chosen(choices[i].Value); e.changed() })
	show(slices.IndexFunc(choices, func(c larder.Choice) bool { return c.Value == value }))
	if s.Selected == "" {
		s.PlaceHolder = value // a value of a file that no choice stands for
	}
	return s
}

// check is a tick that begins as *on.
func (e *editor) check(name string, on *bool) *kit.Check {
	c := kit.NewCheck(name, nil)
	c.Checked = *on
	c.OnChanged = mishap.With(func(now bool) { *on = now; e.changed() })
	return c
}

// figureField is an entry for a figure, with what is wrong with it below.
type figureField struct {
	entry *kit.TextField
	note  *widget.Label
}

// complain says what is wrong with the field, "" for nothing.
func (f *figureField) complain(text string) {
	if text == "" {
		f.note.Hide()
		return
	}
	f.note.SetText(text)
	f.note.Show()
}

// rows puts fields for figures into a form.
func (e *editor) rows(entries []*larder.Entry) *widget.Form {
	form := widget.NewForm()
	for _, x := range entries {
		f := &figureField{entry: e.text(&x.Text), note: widget.NewLabel("")}
		f.entry.PlaceHolder = say.T("unknown")
		f.note.Importance, f.note.Wrapping = widget.DangerImportance, fyne.TextWrapWord
		f.note.Hide()
		e.fields[x] = f
		unit := container.New(&atLeast{em: 3.5}, widget.NewLabel(x.Unit))
		form.Append(x.Name, container.NewVBox(container.New(&capped{em: 14}, container.NewBorder(nil, nil, nil, unit, f.entry)), f.note))
	}
	return form
}

const (
	withoutFibre say.Message = "Carbohydrate without fibre (EU, UK)"
	withFibre    say.Message = "Carbohydrate with fibre (US)"
)

func (e *editor) fibre() fyne.CanvasObject {
	g := widget.NewRadioGroup([]string{withoutFibre.String(), withFibre.String()}, nil)
	g.Required, g.Selected = true, withoutFibre.String()
	if e.form.WithFibre {
		g.Selected = withFibre.String()
	}
	g.OnChanged = mishap.With(func(s string) { e.form.WithFibre = s == withFibre.String(); e.changed() })
	return g
}

func (e *editor) columnForm() fyne.CanvasObject {
	form := e.rows(e.form.Columns)
	form.Append(say.T("The sugar alcohol is"), e.choice(larder.PolyolChoices(), e.form.PolyolName(), func(v string) { e.form.Polyol = larder.PolyolNamed(v) }))
	return form
}

func (e *editor) allergenForm() fyne.CanvasObject {
	grid := container.NewGridWithColumns(3)
	for i, a := range larder.Allergens {
		tick := e.check(a.Name.String(), &e.form.Ticks[i])
		e.ticks = append(e.ticks, tick)
		grid.Add(tick)
	}
	return container.NewVBox(page.Prose(say.TickAllergens.String()), grid)
}

func (e *editor) labelForm() fyne.CanvasObject {
	f := e.form
	parts := e.text(&f.Parts)
	parts.MultiLine, parts.Wrapping = true, fyne.TextWrapWord
	standing := e.choice(larder.StandingChoices(), string(f.Standing), func(v string) { f.Standing = ingredient.Standing(v) })
	return widget.NewForm(widget.NewFormItem(say.T("Name, US"), e.text(&f.NameUS)), widget.NewFormItem(say.T("Name, EU and UK"), e.text(&f.NameEU)),
		widget.NewFormItem("", e.check(say.T("It has ingredients of its own"), &f.Compound)), widget.NewFormItem(say.T("They are"), parts), widget.NewFormItem(say.T("US rules see"), standing))
}
