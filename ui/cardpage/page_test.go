package cardpage

import (
	"bytes"
	"context"
	"image"
	"image/png"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/card"
	"ripplewright/internal/work/design"
	"ripplewright/ui/page"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

func openCard(t *testing.T, d design.Design, look theme.Options) (*Page, *pagetest.Press) {
	h := pagetest.NewPress(t, d, look)
	p := New(h, kitchens.Open(""))
	h.Open(p)
	return p, h
}

// rested reports whether the sharp pictures of what is chosen are shown.
func (p *Page) rested() bool {
	return p.shown.DPI > page.CoarseDPI && p.shown.Region == p.options().Region && p.shown.Paper == p.options().Paper
}

func TestTheCardShownIsTheCardThatIsWritten(t *testing.T) {
	p, h := openCard(t, market.Honey(), theme.Options{Variant: theme.Light})
	h.Until(p.rested)
	require.NotNil(t, p.shown.Cold, "it has the times of the kitchen")
	pages, err := card.Render(context.Background(), h.Now, &h.Found, p.shown)
	require.NoError(t, err)
	sheets := p.sheets.Sheets()
	require.Len(t, sheets, len(pages))
	for i, want := range pages {
		pagetest.SamePixels(t, want, sheets[i].Image)
	}
	assert.Contains(t, p.about.Text, "2 pages")

	// The PNG has the same pages one under the other, at its own fineness.
	p.export(".png")
	got, err := png.Decode(bytes.NewReader(h.Written()))
	require.NoError(t, err)
	o := p.shown
	o.DPI = 0
	pages, err = card.Render(context.Background(), h.Now, &h.Found, o)
	require.NoError(t, err)
	size := pages[0].Bounds().Size()
	pagetest.SamePixels(t, pages[0], got.(interface {
		SubImage(image.Rectangle) image.Image
	}).SubImage(image.Rectangle{Max: size}))
}

func TestTheNewestChoiceIsTheOneShown(t *testing.T) {
	p, h := openCard(t, market.Honey(), theme.Options{})
	for _, r := range []int{1, 0, 1, 0, 1} {
		p.region.SetSelected(page.RegionNames()[r])
		p.paper.SetSelected(papers[r].name)
	}
	h.Until(p.rested)
	assert.Equal(t, label.EU, p.shown.Region)
	assert.Equal(t, card.Letter, p.shown.Paper)
	assert.Equal(t, 215.9, p.sheets.Sheets()[0].WidthMM)
}

func TestCardsAreExportedAsChosen(t *testing.T) {
	p, h := openCard(t, market.Honey(), theme.Options{})
	p.ExportPDF()
	assert.Equal(t, "Burnt honey.pdf", filepath.Base(h.Wrote))
	assert.Contains(t, string(h.Written()), "/MediaBox [0 0 595.28 841.89]", "A4 in points")
	p.paper.SetSelected("Letter")
	p.ExportPDF()
	assert.Contains(t, string(h.Written()), "/MediaBox [0 0 612.00 792.00]", "Letter in points")

	p.export(".md")
	assert.Contains(t, string(h.Written()), "Nutrition Facts")
	p.region.SetSelected(page.RegionNames()[1])
	p.export(".md")
	assert.Contains(t, string(h.Written()), "Nutrition declaration")
	assert.Contains(t, string(h.Written()), "Leave it out", "the times of the kitchen")
}

func TestLettersThatTheFontsLackAreNamedAndTheCardIsDrawn(t *testing.T) {
	d := market.Honey()
	d.Name = "Honey and 柚子"
	p, h := openCard(t, d, theme.Options{})
	h.Until(p.rested)
	assert.False(t, p.error.Visible())
	assert.True(t, p.sheets.Visible())
	assert.True(t, p.lacking.Visible())
	assert.Contains(t, p.lacking.Text, "Name: ")
	assert.Contains(t, p.lacking.Text, "柚子")
	assert.Contains(t, p.lacking.Text, "□")
	h.KeepLook("card_letters")
	p.ExportPDF()
	require.NoError(t, h.Err)
	assert.FileExists(t, h.Wrote)
	p.export(".md")
	assert.Contains(t, string(h.Written()), "柚子")

	d.Name = "Honey and yuzu"
	h.Set(d)
	p.Show()
	h.Until(func() bool { return !p.lacking.Visible() })
	assert.True(t, p.sheets.Visible())
}

func TestAnUnknownKitchenLeavesTheTimesOutAndSaysSo(t *testing.T) {
	d := market.Honey()
	d.Kitchen.Profile = "Nowhere"
	p, h := openCard(t, d, theme.Options{})
	h.Until(p.rested)
	assert.Nil(t, p.shown.Cold)
	assert.Contains(t, p.about.Text, "Nowhere")
}

func TestEverythingOnTheCardPageIsReachedByKeyboard(t *testing.T) {
	p, h := openCard(t, market.Honey(), theme.Options{})
	h.Until(p.rested)
	names, sheets := h.Reached()
	assert.Subset(t, names, []string{"Export PDF…", "Export PNG…", "Export text (Markdown)…", "Whole pages"})
	assert.True(t, sheets)
}

func TestTheCardKeepsWithinTheWindowInEveryDress(t *testing.T) {
	for dress, look := range pagetest.Dresses {
		p, h := openCard(t, market.Honey(), look)
		h.Until(p.rested)
		h.KeepLook("card_" + dress)
		assert.LessOrEqual(t, p.Object().MinSize().Width, float32(1264), dress)
		assert.LessOrEqual(t, p.Object().MinSize().Height, float32(700), dress)
		p.fit.SetSelected("Page width")
		h.Until(func() bool { return p.rested() && p.shown.DPI > 110 })
		h.KeepLook("card_wide_" + dress)
	}
}

// What is chosen is what is drawn and written: parts, pages, paper and the big type.
func TestTheCardIsOfThePartsChosen(t *testing.T) {
	p, h := openCard(t, market.Honey(), theme.Options{Variant: theme.Light})
	assert.Equal(t, card.Options{Region: label.US, Paper: card.A4, Style: page.Reads, Parts: 1<<len(card.SectionNames()) - 1}, p.options())
	p.parts.SetSelected([]string{"Weights", "Steps"})
	p.paper.SetSelected("A5")
	p.pages.SetSelected("Two pages")
	assert.Equal(t, card.Options{Region: label.US, Paper: card.A5, Style: page.Reads, Parts: card.Weights | card.Steps, Pages: 2}, p.options())
	h.Until(func() bool { return p.shown.Paper == card.A5 && p.shown.Pages == 2 })
	assert.LessOrEqual(t, len(p.sheets.Sheets()), 2)
	p.pages.SetSelectedIndex(0)
	p.big.SetChecked(true)
	h.Until(func() bool { return p.shown.Big })
	assert.Greater(t, len(p.sheets.Sheets()), 2)
	p.export(".html")
	assert.Contains(t, string(h.Written()), "application/ld+json")
	assert.NotContains(t, string(h.Written()), "Cautions")
}
