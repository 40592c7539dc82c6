package librarypage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/larder"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// editor shows the form of one own ingredient, with a preview of what becomes
// known, estimated or stays unknown.
type editor struct {
	page *Page
	form *larder.Form

	name, id *kit.TextField
	fields   map[*larder.Entry]*figureField
	ticks    []*kit.Check // as larder.Allergens

	problem *widget.Label
	summary *widget.Label
	table   *kit.Figures
	says    *fyne.Container
	queued  bool
	object  fyne.CanvasObject
}

func newEditor(p *Page, f *larder.Form) *editor {
	e := &editor{page: p, form: f, fields: map[*larder.Entry]*figureField{}, says: container.NewVBox(), summary: page.Prose("")}
	e.problem = page.Bold("")
	e.problem.Importance = widget.DangerImportance
	e.problem.Hide()
	save := kit.NewButton(say.T("Save"), e.save)
	save.Importance = widget.HighImportance
	cancel := kit.NewButton(say.T("Cancel"), func() { p.back("") })
	form := page.Scrolled(e.sections()...)
	var table fyne.CanvasObject
	e.table, table = newFigureTable()
	preview := page.Scrolled(page.Heading(say.T("What it comes to")), e.summary, table, e.says)
	split := container.NewHSplit(form, preview)
	split.Offset = 0.5
	name := page.Heading(f.Title)
	name.Truncation = fyne.TextTruncateEllipsis
	e.object = container.NewBorder(
		container.NewVBox(container.NewBorder(nil, nil, nil, container.NewHBox(cancel, save), name), e.problem),
		nil, nil, nil, split)
	e.preview()
	return e
}

// changed asks for a new preview, once for all that happens at one time.
func (e *editor) changed() {
	if e.queued || e.object == nil {
		return
	}
	e.queued = true
	e.page.host.Post(func() {
		e.queued = false
		if e.form.FollowName(e.page.shelves) {
			e.id.SetText(e.form.ID)
		}
		e.preview()
	})
}

// preview shows what the fields make so far.
func (e *editor) preview() {
	in, err := e.form.Shown()
	e.complain(err)
	if err != nil {
		e.summary.SetText(say.ShownWithout.String())
		return
	}
	showFigures(e.table, in)
	e.summary.SetText(say.FiguresKnown(page.Reads, in))
	e.says.Objects = told(larder.Preview(page.Reads, in))
	e.says.Refresh()
}

// complain shows what is wrong at the top and at its field.
func (e *editor) complain(err error) {
	for _, f := range e.fields {
		f.complain("")
	}
	if err == nil {
		e.problem.Hide()
		return
	}
	text, at := e.form.Fault(err)
	if f := e.fields[at]; f != nil {
		f.complain(text)
	}
	e.problem.SetText(text)
	e.problem.Show()
}

// save keeps what the fields make, or says why not and keeps the fields.
func (e *editor) save() {
	in, err := e.form.Made()
	if err == nil {
		err = e.page.keep(in, e.form.Old)
	}
	e.complain(err)
	if err == nil {
		e.page.back(in.ID)
	}
}
