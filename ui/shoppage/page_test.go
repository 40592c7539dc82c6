package shoppage

import (
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/price"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/userdata"
	"ripplewright/ui/kit"
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
	h.With = h.With.Priced(prices.Book())
	h.Set(h.Now)
	other := filepath.Join(t.TempDir(), "plain.yaml")
	_, err := designfile.Save(other, nil, market.Plain(), designfile.SaveOptions{})
	require.NoError(t, err)
	p := New(h, Setup{Pick: func(then func(string)) { then(other) }, File: func() string { return "" }})
	h.Open(p)
	return h, p
}

func enter(h *pagetest.Press, n *kit.NumberField, text string) {
	h.Win.Canvas().Focus(n.Focusable())
	n.Focusable().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(n.Focusable(), text)
	n.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func TestTheListIsOfAllDesignsAndGoesIntoAFile(t *testing.T) {
	h, p := bed(t, price.Pack{Ingredient: "sugar", Price: 12, Grams: 1000}, price.Pack{Ingredient: price.Eggs, Price: 30, Pieces: 12})
	enter(h, p.batches, "3")
	test.Tap(pagetest.Button(t, p.object, "Add a design…"))
	test.Tap(pagetest.Button(t, p.object, "Export list…"))
	text := string(h.Written())
	for _, each := range []string{"3 batches of Burnt honey", "1 batch of Quay custard", `| \[ \] | Honey |`, "Eggs, US large", "You pay at least kr"} {
		assert.Contains(t, text, each)
	}
	assert.Contains(t, p.said.Text, "You pay at least kr")
	h.Win.Resize(fyne.NewSize(1265, 700)) // as the loop lays out anew what has grown
	h.KeepLook("shop")
	test.Tap(pagetest.Button(t, p.object, "Export text…"))
	assert.Contains(t, string(h.Written()), "3 batches of Burnt honey")
	assert.Equal(t, ".txt", filepath.Ext(h.Wrote))
	test.Tap(pagetest.Button(t, p.object, "Take out"))
	test.Tap(pagetest.Button(t, p.object, "Export list…"))
	assert.NotContains(t, string(h.Written()), "Quay custard")
}

func TestWithoutPricesNothingIsFree(t *testing.T) {
	_, p := bed(t)
	assert.Contains(t, p.said.Text, "No ingredient has a price yet")
}
