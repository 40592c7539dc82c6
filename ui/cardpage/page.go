// Package cardpage is the page of the printed card.
package cardpage

import (
	"context"
	"image"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Page is the page of the printed card: the very pages that are exported.
type Page struct {
	host     page.Host
	region   *widget.RadioGroup
	paper    *widget.RadioGroup
	pages    *kit.Select
	parts    *widget.CheckGroup
	big      *widget.Check
	fit      *kit.Select
	sheets   *kit.SheetView
	about    *widget.Label
	trouble  *widget.Label
	lacking  *widget.Label // of the letters on the card
	error    *fyne.Container
	drawing  newest.Work
	asked    drawnCard
	shown    card.Options // of the pictures on the page
	kitchens *kitchens.Book
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
}{{"A4", card.A4}, {"Letter", card.Letter}, {"A5", card.A5}}

var fits = [...]kit.SheetFit{kit.FitPage, kit.FitWidth, 75, 100, 150, 200}

func fitName(f kit.SheetFit) string {
	switch f {
	case kit.FitPage:
		return say.WholePages.String()
	case kit.FitWidth:
		return say.PageWidth.String()
	}
	return page.Reads.Percent(float64(f), 0)
}

// New returns the page. kitchens has the one that a design names.
func New(h page.Host, kitchens *kitchens.Book) *Page {
	p := &Page{host: h, kitchens: kitchens, sheets: kit.NewSheetView(), about: page.Prose(""), trouble: page.Bold(""), lacking: page.Prose("")}
	p.lacking.Hide()
	p.region = page.Choice(p.draw, page.RegionNames()...)
	p.paper = page.Choice(p.draw, papers[0].name, papers[1].name, papers[2].name)
	p.paper.Horizontal = true
	p.pages = kit.NewSelect(say.CardLimits()[:], nil)
	p.pages.SetSelectedIndex(0)
	p.pages.OnChanged = mishap.With(func(string) { p.draw() })
	var called []string
	for _, name := range card.SectionNames() {
		called = append(called, say.CardSection(name))
	}
	p.parts = widget.NewCheckGroup(called, nil)
	p.parts.SetSelected(called)
	p.parts.OnChanged = mishap.With(func([]string) { p.draw() })
	p.big = widget.NewCheck(say.BigType.String(), mishap.With(func(bool) { p.draw() }))
	var names []string
	for _, f := range fits {
		names = append(names, fitName(f))
	}
	p.fit = kit.NewSelect(names, func(string) { p.sheets.ShowFit(fits[p.fit.SelectedIndex()]) })
	p.fit.SetSelectedIndex(0)
	p.sheets.OnFit = p.draw
	p.error = container.NewPadded(p.trouble)
	p.error.Hide()
	side := page.Scrolled(
		page.Heading(say.TheCard.String()), p.about, p.lacking,
		page.Bold(say.PanelOf.String()), p.region,
		page.Bold(say.Paper.String()), p.paper,
		page.Bold(say.HowManyPages.String()), p.pages, p.big,
		page.Bold(say.Parts.String()), p.parts,
		page.Bold(say.Show.String()), p.fit,
		widget.NewSeparator(),
		kit.NewButton(say.ExportPDF.String(), p.ExportPDF),
		kit.NewButton(say.ExportPNG.String(), func() { p.export(".png") }),
		kit.NewButton(say.ExportSVG.String(), func() { p.export(".svg") }),
		kit.NewButton(say.ExportText.String(), func() { p.export(".md") }),
		kit.NewButton(say.ExportPhone.String(), func() { p.export(".html") }),
		page.Prose(say.AboutPicture.String()),
	)
	split := container.NewHSplit(side, container.NewStack(p.sheets, p.error))
	split.Offset = 0.23
	p.object = split
	return p
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Show implements page.Page.
func (p *Page) Show() { p.draw() }

// Leave implements page.Page.
func (p *Page) Leave() { p.drawing.Stop() }

// options returns the choices made, without the times.
func (p *Page) options() card.Options {
	o := card.Options{Region: page.RegionOf(p.region), Paper: card.A4, Style: page.Reads}
	for _, x := range papers {
		if x.name == p.paper.Selected {
			o.Paper = x.paper
		}
	}
	o.Pages, o.Big = p.pages.SelectedIndex(), p.big.Checked
	for i, name := range card.SectionNames() {
		if slices.Contains(p.parts.Selected, say.CardSection(name)) {
			o.Parts |= 1 << i
		}
	}
	return o
}

// draw asks for new pictures: coarse ones at once, and once nothing changes,
// those that fit the screen's pixels.
func (p *Page) draw() {
	d, r, o := p.host.Design(), *p.host.Result(), p.options()
	w, h := o.Paper.Size()
	dpi := p.sheets.DPI(w, h)
	if dpi == 0 {
		return // OnFit comes
	}
	dpi = math.Min(math.Max(dpi, page.CoarseDPI), page.FinestDPI)
	known := d.Equal(p.asked.design) && o == p.asked.options
	p.asked = drawnCard{d, o}
	m := p.host.Model()
	times, lacking := p.times(d, &r), page.Lacking(card.Lacking(d, &r))
	p.drawing.Ask(func(ctx context.Context) {
		// The coarse pictures are always finished: a change must show something.
		always := context.WithoutCancel(ctx)
		a, untimed := times(always)
		o.Cold = a
		o.Remedies = remedies(always, m, d, &r)
		post := func(pages []image.Image, err error) { p.host.Post(func() { p.show(pages, o, lacking, untimed, err) }) }
		if !known {
			if o.DPI = page.CoarseDPI; dpi < 1.3*page.CoarseDPI { // then the sharp ones cost no more
				o.DPI = dpi
			}
			pages, err := render(always, d, &r, o)
			post(pages, err)
			if err != nil || o.DPI == dpi {
				return
			}
		}
		if !newest.Rest(ctx) {
			return
		}
		o.DPI = dpi
		if pages, err := render(ctx, d, &r, o); ctx.Err() == nil {
			post(pages, err)
		}
	})
}

// times returns what computes the times in the cold, away from the window's
// thread. Without them the card says what practice says.
func (p *Page) times(d design.Design, r *model.Result) func(context.Context) (*cold.Answer, error) {
	kitchen, err := p.kitchens.Find(d.Kitchen.Profile)
	kitchen = p.kitchens.Taught(d, kitchen)
	return func(ctx context.Context) (*cold.Answer, error) {
		if err != nil {
			return nil, err
		}
		a, err := mishap.Answer(func() (cold.Answer, error) {
			return cold.Plan(ctx, d, r, kitchen, cold.Options{NoPictures: true})
		})
		if err != nil {
			return nil, err
		}
		return &a, nil
	}
}

// remedies finds what the card advises, away from the window's thread; nil where
// that fails.
func remedies(ctx context.Context, m *model.Model, d design.Design, r *model.Result) *balance.Remedies {
	found, err := mishap.Answer(func() (balance.Remedies, error) { return balance.Mend(ctx, m, d, r, balance.Locks{}), nil })
	if err != nil {
		return nil
	}
	return &found
}

// render draws the card; a panic while it does is an error too.
func render(ctx context.Context, d design.Design, r *model.Result, o card.Options) ([]image.Image, error) {
	return mishap.Answer(func() ([]image.Image, error) { return card.Render(ctx, d, r, o) })
}

// show puts pictures, or the reason why there are none, on the page.
func (p *Page) show(pages []image.Image, o card.Options, lacking string, untimed, err error) {
	if err != nil {
		p.about.SetText(say.NoCard.String())
		p.trouble.SetText(say.Sentence(page.PlainError(err)))
		p.lacking.Hide()
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
	about := say.CardPages(page.Reads, len(pages), w, h)
	if untimed != nil {
		about += " " + say.CardUntimed(page.PlainError(untimed))
	}
	p.about.SetText(about)
	p.lacking.SetText(lacking)
	if lacking == "" {
		p.lacking.Hide()
	} else {
		p.lacking.Show()
	}
}

// ExportPDF asks where the card goes and writes it.
func (p *Page) ExportPDF() { p.export(".pdf") }

func (p *Page) export(extension string) {
	d, r, o := p.host.Design(), *p.host.Result(), p.options()
	times, m := p.times(d, &r), p.host.Model()
	p.host.Export(page.FileTitle(d)+extension, func(path string) error {
		o.Cold, _ = times(context.Background()) // the page says why there are none
		o.Remedies = remedies(context.Background(), m, d, &r)
		return card.Write(path, d, &r, o)
	})
}
