// Package labelpage is the page of what a label must say.
package labelpage

import (
	"context"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

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

// forms words the forms of a panel for the eye.
var forms = map[card.Form]string{card.Vertical: "Vertical", card.Tabular: "Tabular", card.Dual: "Two columns"}

// New returns the page.
func New(h page.Host) *Page {
	p := &Page{host: h, body: container.NewStack(), sheet: kit.NewSheetView(), about: page.Prose("")}
	p.region = page.Choice(p.Show, page.Regions[0].Name, page.Regions[1].Name)
	p.region.Horizontal = true
	p.form = kit.NewSelect(nil, func(string) { p.Show() })
	p.form.PlaceHolder = forms[card.Dual] + "   " // it is as wide as this
	p.export = kit.NewButton("Export PDF, PNG or text…", p.write)
	p.sheet.OnFit = p.draw
	top := container.NewHBox(widget.NewLabel("Rules"), p.region, widget.NewLabel("Form"), p.form, p.export)
	p.object = container.NewBorder(top, nil, nil, nil, p.body)
	return p
}

// ruleOf says when a form may be taken, where that is not seen from the label.
var ruleOf = map[card.Form]string{
	card.Tabular: " This form is for a package less than about three inches high (21 CFR 101.9(d)(11)(iii)).",
}

// chosenForm returns the form that the panel is drawn in.
func (p *Page) chosenForm() card.Form {
	for form, name := range forms {
		if name == p.form.Selected {
			return form
		}
	}
	return ""
}

// Title implements page.Page.
func (p *Page) Title() string { return "Nutrition and label" }

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() { p.drawing.Stop() }

// Show implements page.Page.
func (p *Page) Show() {
	d, r := p.host.Design(), p.host.Result()
	food, region := r.Food(d), page.RegionOf(p.region)
	l, err := label.For(food, region, label.Options{})
	if err == nil {
		p.offer(card.Forms(l))
		if p.chosenForm() == card.Dual && l.Columns != "dual" { // the maker's choice
			l, err = label.For(food, region, label.Options{SecondColumn: true})
		}
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
		p.body.Objects = []fyne.CanvasObject{container.NewPadded(page.Bold(page.Sentence(page.PlainError(err))))}
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

// offer lets the maker choose among the forms, where there is a choice.
func (p *Page) offer(all []card.Form) {
	names := make([]string, len(all))
	for i, f := range all {
		names[i] = forms[f]
	}
	p.form.Options = names
	if !slices.Contains(names, p.form.Selected) {
		p.form.Selected = names[0] // told to nobody: the page is being brought up to date
	}
	if len(all) > 1 {
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
		p.about.SetText(page.Sentence(page.PlainError(err)))
		return
	}
	p.picture = pic
	p.sheet.Show()
	p.sheet.ShowSheets([]kit.Sheet{{Image: pic.Image, WidthMM: pic.WidthMM, HeightMM: pic.HeightMM}})
	lacking := page.Lacking(card.LackingOnLabel(p.host.Design(), p.host.Result(), of.drawnOf))
	if lacking != "" {
		lacking = "\n" + lacking
	}
	p.about.SetText(say.PrintedPanel(page.Reads, [2]float64{pic.PanelWidthMM, pic.PanelHeightMM}, [2]float64{pic.WidthMM, pic.HeightMM}) + ruleOf[of.drawnForm] + lacking)
	if p.fineness() != of.drawnDPI {
		p.draw()
	}
}

// write asks where the label goes; the extension decides what it is.
func (p *Page) write() {
	l, form := p.label, p.chosenForm()
	p.host.Export(fmt.Sprintf("%s, label %s.pdf", page.FileTitle(p.host.Design()), strings.ToUpper(string(l.Region))), func(path string) error {
		return card.WriteLabel(path, l, form)
	})
}

// panel is the declaration as a table to read.
func (p *Page) panel(l *label.Label) fyne.CanvasObject {
	grid := panelTable(l)
	title := "Nutrition Facts"
	per := l.ServingsText + "\nServing size " + l.ServingMeasure
	if l.Region == label.EU {
		title, per = "Nutrition declaration", "per 100 g"
	}
	objects := []fyne.CanvasObject{page.Heading(title), page.Prose(per), widget.NewSeparator(), grid, widget.NewSeparator()}
	if l.Footnote != "" {
		objects = append(objects, page.Prose(l.Footnote))
	}
	for _, w := range brief(l.Warnings) {
		objects = append(objects, page.Bold("* "+w))
	}
	objects = append(objects, page.Prose("Energy: "+l.EnergyMethod+"."))
	if l.ColumnsWhy != "" {
		objects = append(objects, page.Prose(page.Sentence(l.ColumnsWhy)))
	}
	objects = append(objects, page.Heading("Ingredients"), statement(l.Ingredients))
	if utf8.RuneCountInString(l.IngredientsText) > page.MostProse {
		objects = append(objects, page.Prose(say.ListGoesOn))
	}
	if l.Contains != "" {
		objects = append(objects, page.Bold(l.Contains))
	}
	return page.Scrolled(objects...)
}

// panelTable sets the lines of a panel with their shares of the day.
func panelTable(l *label.Label) fyne.CanvasObject {
	first, share := "per serving", "% DV"
	if l.Region == label.EU {
		first, share = "per 100 g", "% RI"
	}
	heads := []string{first, share}
	if l.Region == label.EU {
		heads = heads[:1] // the intake is of a portion
	}
	second := len(l.Second) == len(l.Lines)
	if second {
		heads = append(heads, "per "+l.SecondColumn, share)
	}
	cells := func(line label.Line, share bool) []string {
		text := line.AmountText()
		if line.Incomplete {
			text += " *"
		}
		if !share {
			return []string{text}
		}
		return []string{text, blankIfNone(line.DVText)}
	}
	rows := make([]say.TableRow, len(l.Lines))
	for i, line := range l.Lines {
		rows[i] = say.TableRow{Name: strings.Repeat("    ", line.Indent) + line.Name, Cells: cells(line, l.Region == label.US)}
		if second {
			rows[i].Cells = append(rows[i].Cells, cells(l.Second[i], true)...)
		}
	}
	table := kit.NewFigures(heads...)
	table.ShowFigures(rows)
	return container.New(layout.NewCustomPaddedLayout(0, 0, theme.InnerPadding(), 0), table) // in line with the labels
}

// blankIfNone keeps the table from a dash, its sign for unknown.
func blankIfNone(s string) string {
	if s == "" {
		return " "
	}
	return s
}

// mostRemarks is how many warnings or notes the page has room for.
const mostRemarks = 12

// brief returns texts, or the first of them and how many more there are.
func brief(texts []string) []string {
	if n := len(texts) - mostRemarks; n > 0 {
		return append(slices.Clone(texts[:mostRemarks]), say.MoreWarnings(n))
	}
	return texts
}

// statement is the list of ingredients with its emphasis, cut like page.Prose.
func statement(runs []label.Run) fyne.CanvasObject {
	text := widget.NewRichText()
	left := page.MostProse
	for _, r := range runs {
		if left <= 1 {
			break
		}
		style := widget.RichTextStyleInline
		style.TextStyle.Bold = r.Emphasis
		text.Segments = append(text.Segments, &widget.TextSegment{Style: style, Text: page.Brief(r.Text, left)})
		left -= utf8.RuneCountInString(r.Text)
	}
	text.Wrapping = fyne.TextWrapWord
	return text
}

// rules is what the food may be called and what may be claimed of it.
func (p *Page) rules(l *label.Label) fyne.CanvasObject {
	claims := widget.NewAccordion()
	for _, c := range l.Claims {
		note := c.Disclosure
		claims.Append(widget.NewAccordionItem(verdictOf(c.Met, c.Incomplete)+" — "+c.Claim, limits(c.Conditions, note)))
	}
	objects := []fyne.CanvasObject{
		page.Heading("What it may be called"),
		page.Bold("A truthful name: " + l.ProposedName),
	}
	var names *widget.Accordion
	for i, n := range l.Names {
		if i == 0 || n.Of != l.Names[i-1].Of || n.Region != l.Names[i-1].Region {
			names = widget.NewAccordion()
			objects = append(objects, page.Prose("Of the "+say.LabelledFood(n.Of)+", "+page.RegionName(n.Region)+":"), names)
		}
		names.Append(widget.NewAccordionItem(verdictOf(n.Met, false)+" — "+n.Name, limits(n.Limits, n.Note)))
	}
	objects = append(objects, page.Heading("Claims"), claims)
	for _, n := range brief(l.Notes) {
		objects = append(objects, page.Prose(n))
	}
	objects = append(objects, page.Prose("This is our reading of the sections named. Local code and licensed practice decide."))
	return page.Scrolled(objects...)
}

func verdictOf(met, incomplete bool) string {
	switch {
	case met:
		return "✓ met"
	case incomplete:
		return "? depends on an unknown figure"
	}
	return "✗ not met"
}

func limits(ls []label.Limit, note string) fyne.CanvasObject {
	box := container.NewVBox()
	for _, l := range ls {
		own := "for you to judge"
		if !l.Judge {
			own = "unknown"
			if l.Own != nil {
				own = page.Number(*l.Own, 2) + " " + l.Unit
			}
			switch {
			case l.Met:
				own += ", met"
			case l.Incomplete:
				own += " or more: it depends on an unknown figure"
			case l.Miss > 0:
				own += ", missed by " + page.Number(l.Miss, 2) + " " + l.Unit
			default:
				own += ", not met"
			}
		}
		box.Add(page.Prose(fmt.Sprintf("%s %s: %s (%s)", l.What, l.Bound, own, l.Section)))
	}
	if note != "" {
		box.Add(page.Prose(note))
	}
	return box
}
