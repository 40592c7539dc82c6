package page

import (
	"context"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/card"
	"ripplewright/ui/kit"
)

// Label is the page of what a label must say: the panel as it is drawn, the
// same in a table to read, and the names and claims.
type Label struct {
	host    Host
	region  *widget.RadioGroup
	form    *widget.Select
	export  *widget.Button
	body    *fyne.Container
	sheet   *kit.SheetView
	about   *widget.Label
	picture card.LabelPicture // the latest
	drawnLabel
	drawing newest
	label   *label.Label // nil where there is none
	object  fyne.CanvasObject
}

var regions = [...]struct {
	name   string
	region label.Region
}{{"United States", label.US}, {"EU and United Kingdom", label.EU}}

// drawnLabel is what a picture was made of.
type drawnLabel struct {
	drawnOf   *label.Label
	drawnForm card.Form
	drawnDPI  float64
}

// forms words the forms of a panel for the eye.
var forms = map[card.Form]string{card.Vertical: "Vertical", card.Tabular: "Tabular", card.Dual: "Two columns"}

// NewLabel returns the page.
func NewLabel(h Host) *Label {
	p := &Label{host: h, body: container.NewStack(), sheet: kit.NewSheetView(), about: prose("")}
	p.region = choice(p.Show, regions[0].name, regions[1].name)
	p.region.Horizontal = true
	p.form = widget.NewSelect(nil, func(string) { p.Show() })
	p.form.PlaceHolder = forms[card.Dual] + "   " // it is as wide as this
	p.export = widget.NewButton("Export PDF, PNG or text…", p.write)
	p.sheet.OnFit = p.draw
	top := container.NewHBox(widget.NewLabel("Rules of"), p.region, widget.NewLabel("Form"), p.form, p.export)
	p.object = container.NewBorder(top, nil, nil, nil, p.body)
	return p
}

// ruleOf says when a form may be taken, where that is not seen from the label.
var ruleOf = map[card.Form]string{
	card.Tabular: " This form is for a package without some three inches of height (21 CFR 101.9(d)(11)(iii)).",
}

// regionOf returns the region that a group chooses.
func regionOf(g *widget.RadioGroup) label.Region {
	for _, r := range regions {
		if r.name == g.Selected {
			return r.region
		}
	}
	return label.US
}

func regionName(region label.Region) string {
	for _, r := range regions {
		if r.region == region {
			return r.name
		}
	}
	return string(region)
}

// chosenForm returns the form that the panel is drawn in.
func (p *Label) chosenForm() card.Form {
	for form, name := range forms {
		if name == p.form.Selected {
			return form
		}
	}
	return ""
}

// Title implements Page.
func (p *Label) Title() string { return "Nutrition and label" }

// Object implements Page.
func (p *Label) Object() fyne.CanvasObject { return p.object }

// Leave implements Page.
func (p *Label) Leave() { p.drawing.stop() }

// Show implements Page.
func (p *Label) Show() {
	d, r := p.host.Design(), p.host.Result()
	food, region := r.Food(d), regionOf(p.region)
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
		p.drawing.stop()
		p.form.Disable()
		p.export.Disable()
		p.body.Objects = []fyne.CanvasObject{container.NewPadded(bold(sentence(plainError(err))))}
		p.body.Refresh()
		return
	}
	p.export.Enable()
	drawn := container.NewBorder(nil, container.NewVBox(p.about), nil, nil, p.sheet)
	text := container.New(folding{}, p.panel(l), p.rules(l))
	split := container.NewHSplit(drawn, text)
	split.Offset = 0.27
	p.body.Objects = []fyne.CanvasObject{split}
	p.body.Refresh()
	p.draw()
}

// offer lets the maker choose among the forms, where there is a choice.
func (p *Label) offer(all []card.Form) {
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
func (p *Label) fineness() float64 {
	if p.picture.Image == nil {
		return coarseDPI
	}
	return math.Min(math.Max(p.sheet.DPI(p.picture.WidthMM, p.picture.HeightMM), coarseDPI), finestDPI)
}

// draw asks for the picture of the label.
func (p *Label) draw() {
	if p.label == nil {
		return
	}
	l, form, dpi := p.label, p.chosenForm(), p.fineness()
	p.drawing.ask(func(ctx context.Context) {
		pic, err := card.RenderLabel(l, form, dpi)
		if ctx.Err() == nil {
			p.host.Post(func() { p.drawn(pic, err, drawnLabel{l, form, dpi}) })
		}
	})
}

// drawn puts the picture on the page, with its true size.
func (p *Label) drawn(pic card.LabelPicture, err error, of drawnLabel) {
	p.drawnLabel = of
	if err != nil {
		p.sheet.Hide()
		p.about.SetText(sentence(plainError(err)) + " " + remedyFor(err))
		return
	}
	p.picture = pic
	p.sheet.Show()
	p.sheet.ShowSheets([]kit.Sheet{{Image: pic.Image, WidthMM: pic.WidthMM, HeightMM: pic.HeightMM}})
	p.about.SetText(fmt.Sprintf("The panel is %.0f × %.0f mm at true size, the file %.0f × %.0f mm: print it at 100 %%, not to fit the page.",
		pic.PanelWidthMM, pic.PanelHeightMM, pic.WidthMM, pic.HeightMM) + ruleOf[of.drawnForm])
	if p.fineness() != of.drawnDPI {
		p.draw()
	}
}

// write asks where the label goes; the extension decides what it is.
func (p *Label) write() {
	l, form := p.label, p.chosenForm()
	p.host.Export(fmt.Sprintf("%s, label %s.pdf", fileTitle(p.host.Design()), strings.ToUpper(string(l.Region))), func(path string) error {
		return card.WriteLabel(path, l, form)
	})
}

// panel is the declaration as a table to read.
func (p *Label) panel(l *label.Label) fyne.CanvasObject {
	grid := panelTable(l)
	title := "Nutrition Facts"
	per := l.ServingsText + "\nServing size " + l.ServingMeasure
	if l.Region == label.EU {
		title, per = "Nutrition declaration", "per 100 g"
	}
	objects := []fyne.CanvasObject{heading(title), prose(per), widget.NewSeparator(), grid, widget.NewSeparator()}
	if l.Footnote != "" {
		objects = append(objects, prose(l.Footnote))
	}
	for _, w := range l.Warnings {
		objects = append(objects, bold("* "+w))
	}
	objects = append(objects, prose("Energy: "+l.EnergyMethod+"."))
	if l.ColumnsWhy != "" {
		objects = append(objects, prose(sentence(l.ColumnsWhy)))
	}
	objects = append(objects, heading("Ingredients"), statement(l.Ingredients))
	if l.Contains != "" {
		objects = append(objects, bold(l.Contains))
	}
	return scrolled(objects...)
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
	rows := make([]kit.Figure, len(l.Lines))
	for i, line := range l.Lines {
		rows[i] = kit.Figure{Name: strings.Repeat("    ", line.Indent) + line.Name, Cells: cells(line, l.Region == label.US)}
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
func (p *Label) rules(l *label.Label) fyne.CanvasObject {
	claims := widget.NewAccordion()
	for _, c := range l.Claims {
		note := c.Disclosure
		claims.Append(widget.NewAccordionItem(verdictOf(c.Met, c.Incomplete)+" — "+c.Claim, limits(c.Conditions, note)))
	}
	objects := []fyne.CanvasObject{
		heading("What it may be called"),
		bold("A truthful name: " + l.ProposedName),
	}
	var names *widget.Accordion
	for i, n := range l.Names {
		if i == 0 || n.Of != l.Names[i-1].Of || n.Region != l.Names[i-1].Region {
			names = widget.NewAccordion()
			objects = append(objects, prose("Of the "+n.Of+", "+regionName(n.Region)+":"), names)
		}
		names.Append(widget.NewAccordionItem(verdictOf(n.Met, false)+" — "+n.Name, limits(n.Limits, n.Note)))
	}
	objects = append(objects, heading("Claims"), claims)
	for _, n := range l.Notes {
		objects = append(objects, prose(n))
	}
	objects = append(objects, prose("All by our reading of the sections named. Local code and licensed practice decide."))
	return scrolled(objects...)
}

func verdictOf(met, incomplete bool) string {
	switch {
	case met:
		return "✓ met"
	case incomplete:
		return "? not known"
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
				own = number(*l.Own, 2) + " " + l.Unit
			}
			switch {
			case l.Met:
				own += ", met"
			case l.Incomplete:
				own += " at least, an unknown figure decides"
			case l.Miss > 0:
				own += ", misses by " + number(l.Miss, 2) + " " + l.Unit
			default:
				own += ", not met"
			}
		}
		box.Add(prose(fmt.Sprintf("%s %s: %s (%s)", l.What, l.Bound, own, l.Section)))
	}
	if note != "" {
		box.Add(prose(note))
	}
	return box
}

// sentence makes an error text read as one.
func sentence(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + strings.TrimSuffix(s[1:], ".") + "."
}

// plainError is the text of an error without the package it comes from.
func plainError(err error) string {
	s := err.Error()
	for _, of := range [...]string{"card: ", "label: "} {
		s = strings.TrimPrefix(s, of)
	}
	return s
}
