package page

import (
	"bytes"
	"context"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/card"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/theme"
)

// pressHost is a program around a page that prints: what is exported goes into
// a folder of the test.
type pressHost struct {
	*fakeHost
	dir   string
	wrote string
	err   error
}

func newPressHost(t *testing.T, d design.Design, look theme.Options) *pressHost {
	test.NewTempApp(t).Settings().SetTheme(theme.New(look))
	return &pressHost{fakeHost: newFakeHost(t, d), dir: t.TempDir()}
}

func (h *pressHost) Export(name string, write func(string) error) {
	h.wrote = filepath.Join(h.dir, name)
	h.err = write(h.wrote)
}

func (h *pressHost) written() []byte {
	h.t.Helper()
	require.NoError(h.t, h.err)
	data, err := os.ReadFile(h.wrote)
	require.NoError(h.t, err)
	return data
}

// open puts a page into the host's window.
func (h *pressHost) open(p Page) {
	h.win.SetContent(p.Object())
	h.win.Resize(fyne.NewSize(1264, 700))
	p.Show()
	h.t.Cleanup(p.Leave)
}

// keepLook leaves a picture of the window in the folder that PRESS_LOOK names,
// for people to look at.
func (h *pressHost) keepLook(name string) {
	dir := os.Getenv("PRESS_LOOK")
	if dir == "" {
		return
	}
	f, err := os.Create(filepath.Join(dir, name+".png"))
	require.NoError(h.t, err)
	defer f.Close()
	require.NoError(h.t, png.Encode(f, h.win.Canvas().Capture()))
}

func samePixels(t *testing.T, want, got image.Image) {
	t.Helper()
	require.Equal(t, want.Bounds().Size(), got.Bounds().Size())
	pixels := func(img image.Image) []byte {
		flat := image.NewRGBA(image.Rectangle{Max: img.Bounds().Size()})
		draw.Draw(flat, flat.Bounds(), img, img.Bounds().Min, draw.Src)
		return flat.Pix
	}
	require.True(t, bytes.Equal(pixels(want), pixels(got)))
}

func openCard(t *testing.T, d design.Design, look theme.Options) (*Card, *pressHost) {
	h := newPressHost(t, d, look)
	p := NewCard(h, NewKitchens(""))
	h.open(p)
	return p, h
}

// rested reports whether the sharp pictures of what is chosen are shown.
func (p *Card) rested() bool {
	return p.shown.DPI > coarseDPI && p.shown.Region == p.options().Region && p.shown.Paper == p.options().Paper
}

func TestTheCardShownIsTheCardThatIsWritten(t *testing.T) {
	p, h := openCard(t, saltmarsh(), theme.Options{Variant: theme.Light})
	h.until(p.rested)
	require.NotNil(t, p.shown.Cold, "it has the times of the kitchen")
	pages, err := card.Render(context.Background(), h.d, &h.r, p.shown)
	require.NoError(t, err)
	sheets := p.sheets.Sheets()
	require.Len(t, sheets, len(pages))
	for i, want := range pages {
		samePixels(t, want, sheets[i].Image)
	}
	assert.Contains(t, p.about.Text, "2 pages")

	// The PNG has the same pages one under the other, at its own fineness.
	p.export(".png")
	got, err := png.Decode(bytes.NewReader(h.written()))
	require.NoError(t, err)
	o := p.shown
	o.DPI = 0
	pages, err = card.Render(context.Background(), h.d, &h.r, o)
	require.NoError(t, err)
	size := pages[0].Bounds().Size()
	samePixels(t, pages[0], got.(interface {
		SubImage(image.Rectangle) image.Image
	}).SubImage(image.Rectangle{Max: size}))
}

func TestTheNewestChoiceIsTheOneShown(t *testing.T) {
	p, h := openCard(t, saltmarsh(), theme.Options{})
	for _, r := range []int{1, 0, 1, 0, 1} {
		p.region.SetSelected(regions[r].name)
		p.paper.SetSelected(papers[r].name)
	}
	h.until(p.rested)
	assert.Equal(t, label.EU, p.shown.Region)
	assert.Equal(t, card.Letter, p.shown.Paper)
	assert.Equal(t, 215.9, p.sheets.Sheets()[0].WidthMM)
}

func TestCardsAreExportedAsChosen(t *testing.T) {
	p, h := openCard(t, saltmarsh(), theme.Options{})
	p.ExportPDF()
	assert.Equal(t, "Hazelnut and burnt honey.pdf", filepath.Base(h.wrote))
	assert.Contains(t, string(h.written()), "/MediaBox [0 0 595.28 841.89]", "A4 in points")
	p.paper.SetSelected("Letter")
	p.ExportPDF()
	assert.Contains(t, string(h.written()), "/MediaBox [0 0 612.00 792.00]", "Letter in points")

	p.export(".md")
	assert.Contains(t, string(h.written()), "Nutrition Facts")
	p.region.SetSelected(regions[1].name)
	p.export(".md")
	assert.Contains(t, string(h.written()), "Nutrition declaration")
	assert.Contains(t, string(h.written()), "Leave a tub out", "the times of the kitchen")
}

func TestWhatCannotBeDrawnIsSaidAndWordsAreStillWritten(t *testing.T) {
	d := saltmarsh()
	d.Name = "Honey and 柚子"
	p, h := openCard(t, d, theme.Options{})
	h.until(func() bool { return p.trouble.Text != "" })
	assert.True(t, p.error.Visible())
	assert.False(t, p.sheets.Visible())
	assert.Contains(t, p.trouble.Text, "柚子")
	assert.Contains(t, p.remedy.Text, "Markdown")
	h.keepLook("card_error")
	p.ExportPDF()
	var missing *card.GlyphError
	require.ErrorAs(t, h.err, &missing)
	assert.NoFileExists(t, h.wrote)
	p.export(".md")
	assert.Contains(t, string(h.written()), "柚子")

	d.Name = "Honey and yuzu"
	h.set(d)
	p.Show()
	h.until(p.rested)
	assert.False(t, p.error.Visible())
	assert.True(t, p.sheets.Visible())
}

func TestAnUnknownKitchenLeavesTheTimesOutAndSaysSo(t *testing.T) {
	d := saltmarsh()
	d.Kitchen.Profile = "Nowhere"
	p, h := openCard(t, d, theme.Options{})
	h.until(p.rested)
	assert.Nil(t, p.shown.Cold)
	assert.Contains(t, p.about.Text, "Nowhere")
}

// reached returns the texts of the buttons, choices and pickers that Tab comes
// to, and whether it comes to a view of sheets.
func (h *pressHost) reached() (names []string, sheets bool) {
	first := true
	var begun fyne.Focusable
	for range 200 {
		h.win.Canvas().FocusNext()
		f := h.win.Canvas().Focused()
		if first {
			begun, first = f, false
		} else if f == begun {
			break
		}
		switch f := f.(type) {
		case *widget.Button:
			names = append(names, f.Text)
		case *widget.Select:
			names = append(names, f.Selected)
		case *kit.SheetView:
			sheets = true
		}
	}
	return names, sheets
}

func TestEverythingOnTheCardPageIsReachedByKeyboard(t *testing.T) {
	p, h := openCard(t, saltmarsh(), theme.Options{})
	h.until(p.rested)
	names, sheets := h.reached()
	assert.Subset(t, names, []string{"Export PDF…", "Export PNG…", "Export text (Markdown)…", "Whole pages"})
	assert.True(t, sheets)
}

var dresses = map[string]theme.Options{
	"light":    {Variant: theme.Light},
	"dark":     {Variant: theme.Dark},
	"light150": {Variant: theme.Light, TextScale: 1.5},
}

func TestCardAndLabelKeepWithinTheWindowInEveryDress(t *testing.T) {
	for dress, look := range dresses {
		p, h := openCard(t, saltmarsh(), look)
		h.until(p.rested)
		h.keepLook("card_" + dress)
		assert.LessOrEqual(t, p.Object().MinSize().Width, float32(1264), dress)
		assert.LessOrEqual(t, p.Object().MinSize().Height, float32(700), dress)
		p.fit.SetSelected("Page width")
		h.until(func() bool { return p.rested() && p.shown.DPI > 110 })
		h.keepLook("card_wide_" + dress)

		l, lh := openLabel(t, saltmarsh(), look)
		for _, r := range regions {
			l.region.SetSelected(r.name)
			lh.until(func() bool { return l.drawnOf == l.label })
			lh.keepLook("label_" + string(r.region) + "_" + dress)
			assert.LessOrEqual(t, l.Object().MinSize().Width, float32(1264), "%s %s", dress, r.name)
			assert.LessOrEqual(t, l.Object().MinSize().Height, float32(700), "%s %s", dress, r.name)
		}
	}
}

func openLabel(t *testing.T, d design.Design, look theme.Options) (*Label, *pressHost) {
	h := newPressHost(t, d, look)
	p := NewLabel(h)
	h.open(p)
	return p, h
}

func TestTheLabelShownIsTheLabelThatIsWritten(t *testing.T) {
	p, h := openLabel(t, saltmarsh(), theme.Options{})
	h.until(func() bool { return p.drawnOf == p.label && p.drawnDPI == p.fineness() })
	want, err := card.RenderLabel(p.label, p.chosenForm(), p.drawnDPI)
	require.NoError(t, err)
	samePixels(t, want, p.sheet.Sheets()[0].Image)

	p.write()
	assert.Equal(t, ".pdf", filepath.Ext(h.wrote))
	assert.True(t, strings.HasPrefix(string(h.written()), "%PDF-"))
	for _, r := range regions {
		p.region.SetSelected(r.name)
		name := "label.txt"
		p.host = exportTo{h, name}
		p.write()
		assert.Contains(t, string(h.written()), map[label.Region]string{label.US: "Nutrition Facts", label.EU: "Nutrition declaration"}[r.region])
		p.host = h
	}
}

// exportTo is a maker who types another name than the one offered.
type exportTo struct {
	*pressHost
	name string
}

func (e exportTo) Export(_ string, write func(string) error) { e.pressHost.Export(e.name, write) }

// 21 CFR 101.9(b)(6) and (b)(12)(i): the container decides which forms there are.
func TestTheContainerDecidesTheForms(t *testing.T) {
	for _, c := range []struct {
		ml    float64 // of the tub, filled to 100 %
		forms []string
	}{
		{160, []string{"Vertical", "Tabular"}},
		{300, []string{"Vertical", "Tabular", "Two columns"}},
		{400, []string{"Two columns"}},
		{1000, []string{"Vertical", "Tabular"}},
	} {
		d := saltmarsh()
		d.Tubs = design.Tubs{Count: 2, VolumeML: c.ml, FillPercent: 100, Shape: design.ShapeRound}
		p, h := openLabel(t, d, theme.Options{})
		assert.Equal(t, c.forms, p.form.Options, "%v mL", c.ml)
		var sizes []float64
		for _, f := range c.forms {
			p.form.SetSelected(f)
			h.until(func() bool { return p.drawnOf == p.label && p.drawnForm == p.chosenForm() })
			sizes = append(sizes, p.picture.PanelWidthMM)
			assert.Equal(t, f == "Two columns", p.label.Columns == "dual", "%v mL %s", c.ml, f)
		}
		for i, w := range sizes[1:] {
			assert.NotEqual(t, sizes[i], w, "%v mL: another form is another drawing", c.ml)
		}
	}
}

func TestALabelOfNothingSaysWhy(t *testing.T) {
	p, h := openLabel(t, design.New(), theme.Options{})
	assert.True(t, p.export.Disabled())
	h.keepLook("label_empty")
	h.set(saltmarsh())
	p.Show()
	assert.False(t, p.export.Disabled())
}

func TestEverythingOnTheLabelPageIsReachedByKeyboard(t *testing.T) {
	d := saltmarsh()
	d.Tubs.VolumeML = 1000
	_, h := openLabel(t, d, theme.Options{})
	names, sheets := h.reached()
	assert.Subset(t, names, []string{"Export PDF, PNG or text…", "Vertical"})
	assert.True(t, sheets)
}
