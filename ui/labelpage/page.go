// Package labelpage is the page of what a label must say.
package labelpage

import (
	"context"
	"math"
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/labelview"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page is the page of what a label must say: the panel as it is drawn, the
// same in a table to read, and the names and claims.
type Page struct {
	host    page.Host
	region  *widget.RadioGroup
	form    *kit.Select
	export  *kit.Button
	body    *fyne.Container
	sheet   *kit.SheetView
	about   *widget.Label
	picture card.LabelPicture // the latest
	drawnLabel
	drawing newest.Work
	label   *label.Label // nil where there is none
	object  fyne.CanvasObject
}

// drawnLabel is what a picture was made of.
type drawnLabel struct {
	drawnOf   *label.Label
	drawnForm card.Form
	drawnDPI  float64
}

// New returns the page.
func New(h page.Host) *Page {
	p := &Page{host: h, body: container.NewStack(), sheet: kit.NewSheetView(), about: page.Prose("")}
	p.region = page.Choice(p.Show, page.RegionNames()...)
	p.region.Horizontal = true
	p.form = kit.NewSelect(nil, func(string) { p.Show() })
	p.form.PlaceHolder = labelview.FormNames([]card.Form{card.Dual})[0] + "   " // it is as wide as this
	p.export = kit.NewButton(say.ExportLabel.String(), p.write)
	p.sheet.OnFit = p.draw
	top := container.NewHBox(widget.NewLabel(say.Rules.String()), p.region, widget.NewLabel(say.PanelForm.String()), p.form, p.export)
	p.object = container.NewBorder(top, nil, nil, nil, p.body)
	return p
}

// chosenForm returns the form that the panel is drawn in.
func (p *Page) chosenForm() card.Form { return labelview.FormNamed(p.form.Selected) }

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() { p.drawing.Stop() }

// Show implements page.Page.
func (p *Page) Show() {
	d, r := p.host.Design(), p.host.Result()
	l, forms, form, err := labelview.Label(r.Food(d), page.RegionOf(p.region), p.form.Selected)
	if err == nil {
		p.offer(forms, form)
	}
	if err == nil && reflect.DeepEqual(l, p.label) {
		p.draw()
		return
	}
	p.label = l
	if err != nil {
		p.drawing.Stop()
		p.form.Disable()
		p.export.Disable()
		p.body.Objects = []fyne.CanvasObject{container.NewPadded(page.Bold(say.Sentence(page.PlainError(err))))}
		p.body.Refresh()
		return
	}
	p.export.Enable()
	drawn := container.NewBorder(nil, container.NewVBox(p.about), nil, nil, p.sheet)
	text := container.New(page.Folding{}, p.panel(l), p.rules(l))
	split := container.NewHSplit(drawn, text)
	split.Offset = 0.27
	p.body.Objects = []fyne.CanvasObject{split}
	p.body.Refresh()
	p.draw()
}

// offer lets the maker choose among the forms, where there is a choice. It tells
// nobody: the page is being brought up to date.
func (p *Page) offer(names []string, chosen string) {
	p.form.Options, p.form.Selected = names, chosen
	if len(names) > 1 {
		p.form.Enable()
	} else {
		p.form.Disable()
	}
	p.form.Refresh()
}

// fineness is the dots per inch that the picture needs on the screen.
func (p *Page) fineness() float64 {
	if p.picture.Image == nil {
		return page.CoarseDPI
	}
	return math.Min(math.Max(p.sheet.DPI(p.picture.WidthMM, p.picture.HeightMM), page.CoarseDPI), page.FinestDPI)
}

// draw asks for the picture of the label.
func (p *Page) draw() {
	if p.label == nil {
		return
	}
	l, form, dpi := p.label, p.chosenForm(), p.fineness()
	p.drawing.Ask(func(ctx context.Context) {
		pic, err := mishap.Answer(func() (card.LabelPicture, error) { return card.RenderLabel(l, form, dpi) })
		if ctx.Err() == nil {
			p.host.Post(func() { p.drawn(pic, err, drawnLabel{l, form, dpi}) })
		}
	})
}

// drawn puts the picture on the page, with its true size.
func (p *Page) drawn(pic card.LabelPicture, err error, of drawnLabel) {
	p.drawnLabel = of
	if err != nil {
		p.sheet.Hide()
		p.about.SetText(say.Sentence(page.PlainError(err)))
		return
	}
	p.picture = pic
	p.sheet.Show()
	p.sheet.ShowSheets([]kit.Sheet{{Image: pic.Image, WidthMM: pic.WidthMM, HeightMM: pic.HeightMM}})
	about := say.PrintedPanel(page.Reads, [2]float64{pic.PanelWidthMM, pic.PanelHeightMM}, [2]float64{pic.WidthMM, pic.HeightMM})
	if of.drawnForm == card.Tabular {
		about += " " + say.TabularRule.String()
	}
	if lacking := page.Lacking(card.LackingOnLabel(p.host.Design(), p.host.Result(), of.drawnOf)); lacking != "" {
		about += "\n" + lacking
	}
	p.about.SetText(about)
	if p.fineness() != of.drawnDPI {
		p.draw()
	}
}

// write asks where the label goes; the extension decides what it is.
func (p *Page) write() {
	l, form := p.label, p.chosenForm()
	p.host.Export(say.LabelFile(page.FileTitle(p.host.Design()), l.Region), func(path string) error {
		return card.WriteLabel(path, l, form)
	})
}

// panel is the declaration as a table to read.
func (p *Page) panel(l *label.Label) fyne.CanvasObject {
	heads, rows := labelview.Panel(l)
	table := kit.NewFigures()
	table.ShowTable(heads, rows)
	inLine := container.New(layout.NewCustomPaddedLayout(0, 0, theme.InnerPadding(), 0), table) // with the labels
	objects := []fyne.CanvasObject{page.Heading(say.PanelTitle(l.Region)), page.Prose(labelview.Per(l)), widget.NewSeparator(), inLine, widget.NewSeparator()}
	put := func(text string, as func(string) *widget.Label) {
		if text != "" {
			objects = append(objects, as(text))
		}
	}
	put(l.Footnote, page.Prose)
	for _, w := range labelview.Warnings(l) {
		put(w, page.Bold)
	}
	put(say.EnergyBy(l.EnergyMethod), page.Prose)
	put(say.Sentence(say.Said(l.ColumnsWhy)), page.Prose)
	runs, all := labelview.Statement(l, page.MostProse)
	objects = append(objects, page.Heading(say.Ingredients.String()), statement(runs))
	if !all {
		put(say.ListGoesOn.String(), page.Prose)
	}
	put(say.Said(l.Carries), page.Bold)
	return page.Scrolled(objects...)
}

// statement is the list of ingredients with its emphasis.
func statement(runs []label.Run) fyne.CanvasObject {
	text := widget.NewRichText()
	for _, r := range runs {
		style := widget.RichTextStyleInline
		style.TextStyle.Bold = r.Emphasis
		text.Segments = append(text.Segments, &widget.TextSegment{Style: style, Text: r.Text})
	}
	text.Wrapping = fyne.TextWrapWord
	return text
}

// rules is what the food may be called and what may be claimed of it.
func (p *Page) rules(l *label.Label) fyne.CanvasObject {
	objects := []fyne.CanvasObject{page.Heading(say.MayBeCalled.String()), page.Bold(say.TruthfulName(l.ProposedName))}
	heads, names := labelview.Names(page.Reads, l)
	for i, head := range heads {
		objects = append(objects, page.Prose(head), folded(names[i]))
	}
	objects = append(objects, page.Heading(say.Claims.String()), folded(labelview.Claims(page.Reads, l)))
	for _, n := range labelview.Remarks(say.SaidAll(l.Notes)) {
		objects = append(objects, page.Prose(n))
	}
	return page.Scrolled(append(objects, page.Prose(say.OurReading.String()))...)
}

// folded shows rules by their titles, each of which opens on its conditions.
func folded(rules []labelview.Reading) fyne.CanvasObject {
	all := widget.NewAccordion()
	for _, r := range rules {
		box := container.NewVBox()
		for _, c := range r.Conditions {
			box.Add(page.Prose(c))
		}
		all.Append(widget.NewAccordionItem(r.Title, box))
	}
	return all
}
