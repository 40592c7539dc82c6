package page

import (
	"context"
	"errors"
	"fmt"
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/card"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
)

// Card is the page of the printed card: the very pages that are exported.
type Card struct {
	host   Host
	region *widget.RadioGroup
	paper  *widget.RadioGroup
	fit    *widget.Select
	sheets *kit.SheetView
	about  *widget.Label
	trouble,
	remedy *widget.Label
	error    *fyne.Container
	drawing  newest
	asked    drawnCard
	shown    card.Options // of the pictures on the page
	kitchens *Kitchens
	object   fyne.CanvasObject
}

// drawnCard is what a picture was made of.
type drawnCard struct {
	design  design.Design
	options card.Options
}

var papers = [...]struct {
	name  string
	paper card.Paper
}{{"A4", card.A4}, {"Letter", card.Letter}}

var fits = [...]struct {
	name string
	fit  kit.Fit
}{{"Whole pages", kit.FitPage}, {"Page width", kit.FitWidth}, {"75 %", 75}, {"100 %", 100}, {"150 %", 150}, {"200 %", 200}}

// NewCard returns the page. kitchens has the one that a design names.
func NewCard(h Host, kitchens *Kitchens) *Card {
	p := &Card{host: h, kitchens: kitchens, sheets: kit.NewSheetView(), about: prose(""), trouble: bold(""), remedy: prose("")}
	p.region = choice(p.draw, regions[0].name, regions[1].name)
	p.paper = choice(p.draw, papers[0].name, papers[1].name)
	var names []string
	for _, f := range fits {
		names = append(names, f.name)
	}
	p.fit = widget.NewSelect(names, func(string) { p.sheets.ShowFit(fits[p.fit.SelectedIndex()].fit) })
	p.fit.SetSelectedIndex(0)
	p.sheets.OnFit = p.draw
	p.error = container.NewPadded(container.NewVBox(p.trouble, p.remedy))
	p.error.Hide()
	side := scrolled(
		heading("The card"), p.about,
		bold("Nutrition panel of"), p.region,
		bold("Paper"), p.paper,
		bold("Show"), p.fit,
		widget.NewSeparator(),
		widget.NewButton("Export PDF…", p.ExportPDF),
		widget.NewButton("Export PNG…", func() { p.export(".png") }),
		widget.NewButton("Export text (Markdown)…", func() { p.export(".md") }),
		prose("The picture has 150 dots to the inch, its pages one under the other."),
	)
	split := container.NewHSplit(side, container.NewStack(p.sheets, p.error))
	split.Offset = 0.23
	p.object = split
	return p
}

// choice is a group of which one is always chosen, the first to begin with.
func choice(changed func(), names ...string) *widget.RadioGroup {
	g := widget.NewRadioGroup(names, nil)
	g.Required, g.Selected = true, names[0]
	g.OnChanged = func(string) { changed() }
	return g
}

// Title implements Page.
func (p *Card) Title() string { return "Card" }

// Object implements Page.
func (p *Card) Object() fyne.CanvasObject { return p.object }

// Show implements Page.
func (p *Card) Show() { p.draw() }

// Leave implements Page.
func (p *Card) Leave() { p.drawing.stop() }

// options returns the choices made, without the times.
func (p *Card) options() card.Options {
	o := card.Options{Region: regionOf(p.region), Paper: card.A4}
	for _, x := range papers {
		if x.name == p.paper.Selected {
			o.Paper = x.paper
		}
	}
	return o
}

// Dots per inch of the first, coarse picture, and of the finest.
const (
	coarseDPI = 50
	finestDPI = 220
)

// draw asks for new pictures: coarse ones at once, and once nothing changes,
// those that fit the screen's pixels.
func (p *Card) draw() {
	d, r, o := p.host.Design(), *p.host.Result(), p.options()
	w, h := o.Paper.Size()
	dpi := p.sheets.DPI(w, h)
	if dpi == 0 {
		return // OnFit comes
	}
	dpi = math.Min(math.Max(dpi, coarseDPI), finestDPI)
	known := d.Equal(p.asked.design) && o == p.asked.options
	p.asked = drawnCard{d, o}
	times := p.times(d, &r)
	p.drawing.ask(func(ctx context.Context) {
		// The coarse pictures are always finished: a change must show something.
		always := context.WithoutCancel(ctx)
		a, untimed := times(always)
		o.Cold = a
		post := func(pages []image.Image, err error) { p.host.Post(func() { p.show(pages, o, untimed, err) }) }
		if !known {
			if o.DPI = coarseDPI; dpi < 1.3*coarseDPI { // then the sharp ones cost no more
				o.DPI = dpi
			}
			pages, err := card.Render(always, d, &r, o)
			post(pages, err)
			if err != nil || o.DPI == dpi {
				return
			}
		}
		if !rest(ctx) {
			return
		}
		o.DPI = dpi
		if pages, err := card.Render(ctx, d, &r, o); ctx.Err() == nil {
			post(pages, err)
		}
	})
}

// times returns what computes the times in the cold, away from the window's
// thread. Without them the card says what practice says.
func (p *Card) times(d design.Design, r *model.Result) func(context.Context) (*cold.Answer, error) {
	kitchen, err := p.kitchens.Find(d.Kitchen.Profile)
	return func(ctx context.Context) (*cold.Answer, error) {
		if err != nil {
			return nil, err
		}
		a, err := cold.Plan(ctx, d, r, kitchen, cold.Options{NoPictures: true})
		if err != nil {
			return nil, err
		}
		return &a, nil
	}
}

// show puts pictures, or the reason why there are none, on the page.
func (p *Card) show(pages []image.Image, o card.Options, untimed, err error) {
	if err != nil {
		p.about.SetText("No card can be drawn.")
		p.trouble.SetText(sentence(plainError(err)))
		p.remedy.SetText(remedyFor(err))
		p.sheets.Hide()
		p.error.Show()
		return
	}
	w, h := o.Paper.Size()
	sheets := make([]kit.Sheet, len(pages))
	for i, img := range pages {
		sheets[i] = kit.Sheet{Image: img, WidthMM: w, HeightMM: h}
	}
	p.error.Hide()
	p.sheets.Show()
	p.sheets.ShowSheets(sheets)
	p.shown = o
	about := fmt.Sprintf("%s, %g × %g mm. What you see is what is written.", pageCount(len(pages)), w, h)
	if untimed != nil {
		about += " It has no times in the cold: " + plainError(untimed) + "."
	}
	p.about.SetText(about)
}

func pageCount(n int) string {
	if n == 1 {
		return "1 page"
	}
	return fmt.Sprintf("%d pages", n)
}

// remedyFor says what to do about an error of drawing.
func remedyFor(err error) string {
	var glyph *card.GlyphError
	if errors.As(err, &glyph) {
		return "The card's fonts hold Latin, Greek and Cyrillic letters. Change the text, or export the card as text: Markdown needs no font."
	}
	return ""
}

// fileTitle is the design's name as files of it begin.
func fileTitle(d design.Design) string {
	if d.Name == "" {
		return "Untitled"
	}
	return d.Name
}

// ExportPDF asks where the card goes and writes it.
func (p *Card) ExportPDF() { p.export(".pdf") }

func (p *Card) export(extension string) {
	d, r, o := p.host.Design(), *p.host.Result(), p.options()
	times := p.times(d, &r)
	p.host.Export(fileTitle(d)+extension, func(path string) error {
		o.Cold, _ = times(context.Background()) // the page says why there are none
		return card.Write(path, d, &r, o)
	})
}
