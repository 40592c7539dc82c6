package costpage

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/price"
	"ripplewright/internal/work/userdata"
	"ripplewright/ui/kit"
	"ripplewright/ui/packprice"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

// bed is the page in a program with invented prices.
func bed(t *testing.T, packs ...price.Pack) (*pagetest.Press, *Page) {
	h := pagetest.NewPress(t, market.Honey(), theme.Options{})
	prices := userdata.NewPrices(filepath.Join(t.TempDir(), "prices.yaml"))
	for _, p := range packs {
		require.NoError(t, prices.Put(p))
	}
	require.NoError(t, prices.SetCurrency("kr"))
	use := func() {
		h.With = h.With.Priced(prices.Book())
		h.Set(h.Now)
	}
	use()
	p := New(h, packprice.Setup{Prices: prices, Use: use})
	h.Open(p)
	return h, p
}

func enter(h *pagetest.Press, n *kit.NumberField, text string) {
	h.Win.Canvas().Focus(n.Focusable())
	n.Focusable().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(n.Focusable(), text)
	n.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func TestPriceAndMarginFollowEachOther(t *testing.T) {
	h, p := bed(t, price.Pack{Ingredient: "sugar", Price: 12, Grams: 1000})
	tub := h.Found.Cost.PerTub
	enter(h, p.sale.price, "10")
	assert.InDelta(t, 100*(10-tub)/10, p.sale.margin.Value(), 1e-9)
	assert.Contains(t, p.sale.said.Text, "at most", "some prices are missing")
	enter(h, p.sale.margin, "50")
	assert.InDelta(t, 2*tub, p.sale.price.Value(), 1e-9)
	require.NoError(t, p.setup.Prices.Put(price.Pack{Ingredient: "sugar", Price: 24, Grams: 1000}))
	p.setup.Use()
	p.Show()
	assert.InDelta(t, 4*tub, p.sale.price.Value(), 1e-9, "the margin that was asked for stays")
	assert.InDelta(t, 50, p.sale.margin.Value(), 1e-9)
	assert.Contains(t, p.sale.offers.Text, "kr")
}

// The price of a tub is the design's, so it is there at the next start and undo
// takes it back.
func TestTheSellingPriceStaysWithTheDesign(t *testing.T) {
	h, p := bed(t, price.Pack{Ingredient: "sugar", Price: 12, Grams: 1000})
	enter(h, p.sale.price, "8.5")
	assert.InDelta(t, 8.5, h.Now.Tubs.SellsFor, 1e-12)
	next := New(h, p.setup)
	h.Open(next)
	assert.InDelta(t, 8.5, next.sale.price.Value(), 1e-12)
	assert.InDelta(t, 100*(8.5-h.Found.Cost.PerTub)/8.5, next.sale.margin.Value(), 1e-9)
	enter(h, next.sale.margin, "40")
	assert.InDelta(t, h.Found.Cost.PerTub/0.6, h.Now.Tubs.SellsFor, 0.0051, "to the hundredth")
	d := h.Now
	d.Tubs.SellsFor = 0
	h.Set(d)
	next.Show()
	assert.True(t, math.IsNaN(next.sale.price.Value()))
}

func TestPricesBrokenByHandAreToldOfAndReadAgain(t *testing.T) {
	h, p := bed(t, price.Pack{Ingredient: "sugar", Price: 12, Grams: 1000})
	assert.NotContains(t, pagetest.Texts(p.object), "could not be read")
	path := p.setup.Prices.Path()
	was, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, []byte("prices: [{}]\n"), 0o644))
	p.setup.Prices.Read()
	p.setup.Use()
	p.Show()
	assert.Contains(t, strings.ReplaceAll(p.wrong.Text, "\n", " "), path+": line 1: ")
	assert.True(t, p.fault.Visible())
	require.NoError(t, os.WriteFile(path, was, 0o644))
	test.Tap(pagetest.Button(t, p.object, "Read it again"))
	assert.False(t, p.fault.Visible())
	assert.True(t, h.Found.Cost.Priced)
}

func TestWithoutPricesNothingIsFree(t *testing.T) {
	h, p := bed(t)
	assert.Contains(t, p.cost.Text, "No ingredient has a price yet")
	enter(h, p.sale.price, "10")
	assert.Contains(t, p.sale.said.Text, "needs a selling price and what a tub costs")
	assert.Empty(t, p.sale.offers.Text)
	test.Tap(p.ask)
	assert.Contains(t, h.Said, "Choose an ingredient")
}
