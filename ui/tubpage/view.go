// Package tubpage is the view of the whole label of a tub: what must stand on it
// where it is sold, and how that lies on its faces.
package tubpage

import (
	"context"
	"image"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/selling"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/desk/notebook"
	"ripplewright/internal/desk/preferences"
	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/raster"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/sticker"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// The maker's own words that are kept between designs, in the preferences.
const (
	prefMaker     = "label.maker"
	prefPlace     = "label.place"
	prefSale      = "label.sale"
	prefLanguages = "label.languages"
)

// Preferences says what kind of value each of its keys has.
func Preferences() map[string]preferences.Kind {
	return map[string]preferences.Kind{prefMaker: preferences.Text, prefPlace: preferences.Count, prefSale: preferences.Count, prefLanguages: preferences.Text}
}

// View is the view of the label of a tub.
type View struct {
	host  page.Host
	words onpack.Words
	book  *notebook.Book // of the open design

	batch            *kit.Select // of the notebook, whose day and lot are printed
	place, sale, tub *kit.Select
	sheet            *kit.Select
	typed            map[string]*kit.TextField // by the field of sticker.Choices
	grams, front     *widget.Check
	lid              *widget.Check
	translated       *fyne.Container // names and lists of the languages chosen
	of               []string        // the languages that translated shows
	list             *fyne.Container
	about            *widget.Label
	sheets           *kit.SheetView
	export           *kit.Button
	drawing          newest.Work
	storing          newest.Work
	stored           design.Design // whose time in store was asked for
	beside           *widget.Label // what stands beside the date
	showing          bool
	pages            []*draw.List // what would be written
	object           fyne.CanvasObject
}

// own stands for the design's own tub among the tubs' names.
const own say.Message = "The design's own"

// noSheet prints each label on a page of its own size.
const noSheet say.Message = "One label a page"

func sheetSizes() []string { return []string{noSheet.String(), "A4", "A5", "Letter"} }

// fields are the texts that a maker types, with what stands before them.
func fields() []struct{ field, name, hint string } {
	return []struct{ field, name, hint string }{
		{"maker", say.T("Your name and address"), "Saltmarsh Quay, 1 Pier Road, Saltmarsh"},
		{"made", say.T("Made on"), "2026-07-14"},
		{"keeps", say.T("Keeps for"), say.KeepsExample.String()},
		{"languages", say.T("Languages"), "de,en"},
		{"net", say.T("Quantity, mL"), say.T("all that the tub holds, frozen")},
		{"lot", say.T("Lot"), say.T("from the day it was made")},
		{"storage", say.T("Storage"), say.T("the language's own words")},
		{"article", say.T("Article number, for its bars"), say.T("13 digits of your own")},
		{"copies", say.T("Copies"), "1"},
	}
}

// New returns the view. words are those of labels, book the notebook of the open
// design.
func New(h page.Host, words onpack.Words, book *notebook.Book) *View {
	v := &View{host: h, words: words, book: book, typed: map[string]*kit.TextField{}, list: container.NewVBox(), about: page.Prose(""), sheets: kit.NewSheetView(), beside: page.Prose(""), translated: container.NewVBox()}
	kept := fyne.CurrentApp().Preferences()
	choose := func(names []string, key string, at int) *kit.Select {
		s := kit.NewSelect(names, nil)
		s.SetSelectedIndex(at)
		s.OnChanged = mishap.With(func(string) {
			if key != "" {
				kept.SetInt(key, s.SelectedIndex())
			}
			v.Show()
		})
		return s
	}
	v.place = choose(named(onpack.Places(), say.PlaceName), prefPlace, within(kept.Int(prefPlace), len(onpack.Places())))
	v.sale = choose(named(onpack.Sales(), say.SaleName), prefSale, within(kept.Int(prefSale), len(onpack.Sales())))
	v.tub = choose(append([]string{own.String()}, named(onpack.TubNames(), say.Of)...), "", 0)
	v.sheet = choose(sheetSizes(), "", 0)
	v.batch = choose([]string{say.LabelNoBatch.String()}, "", 0)
	v.sheets.ShowFit(kit.FitPage)
	v.lid = widget.NewCheck(say.T("A label for the lid too"), mishap.With(func(bool) { v.Show() }))
	v.grams = widget.NewCheck(say.T("Grams beside the volume"), nil)
	v.front = widget.NewCheck(say.T("The UK's front of pack"), nil)
	v.grams.OnChanged, v.front.OnChanged = mishap.With(func(bool) { v.Show() }), mishap.With(func(bool) { v.Show() })

	var side *container.Scroll
	form := container.NewVBox(
		page.Bold(say.T("Where it is sold")), v.place, v.sale,
		page.Bold(say.T("The tub")), v.tub,
		page.Bold(say.LabelBatch.String()), v.batch)
	for _, f := range fields() {
		e := kit.NewTextField()
		e.SetPlaceHolder(f.hint)
		switch f.field {
		case "maker":
			e.SetText(kept.String(prefMaker))
		case "languages":
			e.SetText(kept.String(prefLanguages))
		}
		e.OnChanged = mishap.With(func(s string) {
			switch f.field {
			case "maker":
				kept.SetString(prefMaker, s)
			case "languages":
				kept.SetString(prefLanguages, s)
			}
			v.Show()
		})
		v.typed[f.field] = e
		form.Add(widget.NewLabel(f.name))
		form.Add(e)
	}
	form.Add(v.grams)
	form.Add(v.front)
	form.Add(v.lid)
	// The translated lists below are of many lines and scroll by themselves.
	form = container.NewVBox(kit.Rolled(form, func() *container.Scroll { return side }), v.translated)
	form.Add(page.Bold(say.T("Paper")))
	form.Add(v.sheet)
	v.export = kit.NewButton(say.T("Export PDF, SVG or PNG…"), v.write)
	form.Add(v.export)
	side = container.NewVScroll(container.NewPadded(form))
	right := container.NewVSplit(container.NewBorder(nil, v.about, nil, nil, v.sheets), container.NewVScroll(container.NewPadded(v.list)))
	right.Offset = 0.45
	split := container.NewHSplit(side, right)
	split.Offset = 0.27
	v.object = split
	return v
}

func named[T any](all []T, name func(T) string) []string {
	var out []string
	for _, a := range all {
		out = append(out, say.Capital(name(a)))
	}
	return out
}

func within(i, n int) int { return min(max(i, 0), n-1) }

// Object is the view's content, made once.
func (v *View) Object() fyne.CanvasObject { return v.object }

// Leave stops what runs for the view.
func (v *View) Leave() {
	v.drawing.Stop()
	v.storing.Stop()
	v.stored = design.Design{}
}

// choices are what is chosen and typed.
func (v *View) choices() sticker.Choices {
	c := sticker.Choices{
		Place: string(onpack.Places()[v.place.SelectedIndex()]), Sale: string(onpack.Sales()[v.sale.SelectedIndex()]),
		Maker: v.typed["maker"].Text, Made: v.typed["made"].Text, Keeps: v.typed["keeps"].Text, Languages: v.typed["languages"].Text,
		NetML: v.typed["net"].Text, Lot: v.typed["lot"].Text, Storage: v.typed["storage"].Text, Copies: v.typed["copies"].Text,
		Grams: v.grams.Checked, FrontOfPack: v.front.Checked, Lid: v.lid.Checked, Article: v.typed["article"].Text,
	}
	if i := v.tub.SelectedIndex(); i > 0 { // the name that a command takes, whatever is shown
		c.Tub = onpack.TubNames()[i-1]
	}
	if v.sheet.Selected != noSheet.String() {
		c.Sheet = strings.ToLower(v.sheet.Selected)
	}
	if b, ok := v.book.Notes.Find(v.batch.Selected); ok {
		c = c.OfBatch(b)
	}
	return c
}

// offer lists the batches of the notebook, the latest first, and keeps the one that
// is chosen while it is there.
func (v *View) offer() {
	names := []string{say.LabelNoBatch.String()}
	for i := len(v.book.Notes.Batches) - 1; i >= 0; i-- {
		names = append(names, v.book.Notes.Batches[i].ID)
	}
	if slices.Equal(names, v.batch.Options) {
		return
	}
	chosen := v.batch.Selected
	v.batch.SetOptions(names)
	if !slices.Contains(names, chosen) {
		chosen = say.LabelNoBatch.String()
	}
	v.batch.SetSelected(chosen)
}

// Show brings the view up to date.
func (v *View) Show() {
	if v.showing { // a field that it fills calls it back
		return
	}
	v.showing = true
	defer func() { v.showing = false }()
	v.offer()
	d, r := v.host.Design(), v.host.Result()
	c := v.choices()
	p, err := c.Pack(d, v.words)
	var print sticker.Print
	if err == nil {
		print, err = c.Print()
	}
	var l *label.Label
	if err == nil {
		l, err = label.For(r.Food(d), p.Place.Region(), label.Options{})
	}
	if err != nil {
		v.refuse(say.LabelChoice(err))
		return
	}
	v.translate(p.Languages)
	content, food := c.Of(d, r, l, p, v.words)
	v.list.Objects = nil
	v.list.Add(page.Bold(say.TubLabelHead(p.Place, p.Sale)))
	for _, e := range content.Elements {
		text := page.Prose(say.LabelElement(e))
		text.TextStyle.Bold = e.State == onpack.Add
		v.list.Add(text)
	}
	v.list.Add(page.Prose(say.LabelFill(page.Reads, p.Place, onpack.FillOf(food, p))))
	if i := slices.IndexFunc(content.Elements, func(e onpack.Element) bool { return e.Key == onpack.Date }); content.Elements[i].State != onpack.NotNeeded {
		v.list.Add(v.beside)
		v.store(d, r)
	}
	for _, lang := range p.Languages {
		if lacks := say.LabelLacks(lang, v.words.Lacking(lang, food.Allergens, onpack.AllergensAlone(content.Elements))); lacks != "" && p.Place != onpack.US {
			v.list.Add(page.Prose(lacks))
		}
	}
	v.list.Add(page.Prose(say.LabelAdvice(p.Languages)))
	v.list.Refresh()
	faces, err := sticker.Faces(content)
	if err != nil {
		v.refuse(say.LabelChoice(err))
		return
	}
	v.pages, err = sticker.Draw(sticker.Numbered(content, food, p, v.words, print.Copies), print)
	if err != nil {
		v.refuse(say.LabelChoice(err))
		return
	}
	v.about.SetText(say.LabelState(content.Elements, len(v.pages)))
	if len(onpack.Missing(content.Elements)) > 0 {
		v.export.Disable()
	} else {
		v.export.Enable()
	}
	v.draw(sticker.Piece(content, faces))
}

// store asks what the ice does in the maker's freezer, to stand beside the date.
func (v *View) store(d design.Design, r *model.Result) {
	if v.stored.Equal(d) {
		return
	}
	v.stored = d
	v.beside.SetText("")
	v.storing.Ask(func(ctx context.Context) {
		told, err := mishap.Answer(func() (icy.Answer, error) { return selling.Stored(ctx, d, r) })
		if err != nil || ctx.Err() != nil {
			return
		}
		v.host.Post(func() { v.beside.SetText(say.BesideDate(page.Reads, &told)) })
	})
}

// refuse says why there is no label.
func (v *View) refuse(why string) {
	v.drawing.Stop()
	v.pages = nil
	v.export.Disable()
	v.sheets.ShowSheets(nil)
	v.about.SetText(why)
}

// previewDPI is the fineness of the picture on the page.
const previewDPI = 110

// draw shows a label, drawn off the window's thread.
func (v *View) draw(piece *draw.List) {
	v.drawing.Ask(func(ctx context.Context) {
		img, err := mishap.Answer(func() (image.Image, error) {
			whole, _, err := raster.Pages(ctx, []*draw.List{piece}, previewDPI/25.4)
			return whole, err
		})
		if err != nil || ctx.Err() != nil {
			return
		}
		v.host.Post(func() { v.sheets.ShowSheets([]kit.Sheet{{Image: img, WidthMM: piece.W, HeightMM: piece.H}}) })
	})
}

// translate offers a name and a list for each language but English.
func (v *View) translate(langs []string) {
	langs = slices.DeleteFunc(slices.Clone(langs), func(s string) bool { return s == "en" })
	if slices.Equal(langs, v.of) {
		return
	}
	v.of = langs
	now := v.host.Design().Label
	v.translated.Objects = nil
	for _, lang := range langs {
		for _, what := range []string{"name", "ingredients"} {
			e := kit.NewTextArea(2)
			e.SetText(now.Word(lang, what))
			e.OnChanged = mishap.With(func(s string) {
				d := v.host.Design()
				d.Label.SetWord(lang, what, s)
				v.host.Commit(d, say.LabelWordStep(lang, what))
			})
			v.translated.Add(widget.NewLabel(say.LabelWordField(lang, what)))
			v.translated.Add(e)
		}
	}
	v.translated.Refresh()
}

// write asks for a file and writes the label.
func (v *View) write() {
	pages, title := v.pages, v.host.Design().Name
	if pages == nil {
		return
	}
	v.host.Export(say.TubLabelFile(page.FileTitle(v.host.Design())), func(path string) error { return card.WritePages(path, title, pages) })
}
