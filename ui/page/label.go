package page

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/label"
)

// Label is the page of what a label must say.
type Label struct {
	host   Host
	region *widget.RadioGroup
	body   *fyne.Container
	shown  string
	object fyne.CanvasObject
}

var regions = [...]struct {
	name   string
	region label.Region
}{{"United States", label.US}, {"European Union and United Kingdom", label.EU}}

// NewLabel returns the page. export, if not nil, is the command that writes the
// label of the region to a file.
func NewLabel(h Host, export func(label.Region)) *Label {
	p := &Label{host: h, body: container.NewStack()}
	p.region = widget.NewRadioGroup([]string{regions[0].name, regions[1].name}, nil)
	p.region.Horizontal, p.region.Required = true, true
	p.region.Selected = regions[0].name
	p.region.OnChanged = func(string) { p.shown = ""; p.Show() }
	top := container.NewHBox(widget.NewLabel("Rules of"), p.region)
	if export != nil {
		top.Add(widget.NewButton("Export label…", func() { export(p.Region()) }))
	}
	p.object = container.NewBorder(top, nil, nil, nil, p.body)
	return p
}

// Region returns the region chosen.
func (p *Label) Region() label.Region {
	for _, r := range regions {
		if r.name == p.region.Selected {
			return r.region
		}
	}
	return label.US
}

// Title implements Page.
func (p *Label) Title() string { return "Nutrition and label" }

// Object implements Page.
func (p *Label) Object() fyne.CanvasObject { return p.object }

// Leave implements Page.
func (p *Label) Leave() {}

// Show implements Page.
func (p *Label) Show() {
	d, r := p.host.Design(), p.host.Result()
	l, err := label.For(r.Food(d), p.Region(), label.Options{})
	if err != nil {
		p.body.Objects = []fyne.CanvasObject{container.NewCenter(prose(sentence(err.Error())))}
		p.body.Refresh()
		return
	}
	key := fmt.Sprint(l.Region, l.ServingMeasure, l.IngredientsText, l.ServingsText, d.Name)
	for _, line := range l.Lines {
		key += line.Text + line.DVText
	}
	for _, n := range l.Names {
		key += fmt.Sprint(n.Met)
	}
	if key == p.shown {
		return
	}
	p.shown = key
	split := container.NewHSplit(p.panel(l), p.rules(l))
	split.Offset = 0.42
	p.body.Objects = []fyne.CanvasObject{split}
	p.body.Refresh()
}

// panel is the declaration in words and aligned figures; the export draws it by
// the rules of type.
func (p *Label) panel(l *label.Label) fyne.CanvasObject {
	grid := container.NewVBox()
	for _, line := range l.Lines {
		name := widget.NewLabel(strings.Repeat("    ", line.Indent) + line.Name)
		name.TextStyle.Bold = line.Bold
		text := line.Text
		if line.Incomplete {
			text += " *"
		}
		right := widget.NewLabelWithStyle(line.DVText, fyne.TextAlignTrailing, fyne.TextStyle{})
		grid.Add(container.NewBorder(nil, nil, name, container.NewGridWrap(fyne.NewSize(64, name.MinSize().Height), right),
			widget.NewLabelWithStyle(text, fyne.TextAlignTrailing, fyne.TextStyle{})))
	}
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
		objects = append(objects, prose(l.ColumnsWhy))
	}
	objects = append(objects, heading("Ingredients"), statement(l.Ingredients))
	if l.Contains != "" {
		objects = append(objects, bold(l.Contains))
	}
	return scrolled(objects...)
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
	names := widget.NewAccordion()
	for _, n := range l.Names {
		names.Append(widget.NewAccordionItem(verdictOf(n.Met, false)+" — "+n.Name+", "+n.Of, limits(n.Limits, n.Note)))
	}
	claims := widget.NewAccordion()
	for _, c := range l.Claims {
		note := c.Disclosure
		claims.Append(widget.NewAccordionItem(verdictOf(c.Met, c.Incomplete)+" — "+c.Claim, limits(c.Conditions, note)))
	}
	objects := []fyne.CanvasObject{
		heading("What it may be called"),
		bold("A truthful name: " + l.ProposedName),
		names,
		heading("Claims"),
		claims,
	}
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
			if l.Met {
				own += ", met"
			} else if l.Miss > 0 {
				own += ", misses by " + number(l.Miss, 2) + " " + l.Unit
			} else {
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
	return strings.ToUpper(s[:1]) + s[1:] + "."
}
