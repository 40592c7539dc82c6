package tubpage

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/notebook"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/designfile"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

// bench is a page with the view alone.
type bench struct{ *View }

func open(t *testing.T) (*View, *pagetest.Press) {
	h := pagetest.NewPress(t, market.Honey(), theme.Options{Variant: theme.Light})
	v := New(h, market.LabelWords(t), notebook.Open(func() *designfile.File { return nil }))
	h.Open(bench{v})
	return v, h
}

func TestTheViewAsksForWhatIsDueAndPrintsWhatIsWhole(t *testing.T) {
	v, h := open(t)
	v.place.SetSelected("The United Kingdom")
	assert.Contains(t, v.about.Text, "Add: maker and date")
	assert.True(t, v.export.Disabled())
	assert.Contains(t, pagetest.Texts(v.list), "Maker: you must add your name and address")

	v.typed["maker"].SetText("Saltmarsh Quay, 1 Pier Road")
	v.typed["made"].SetText("2026-07-14")
	v.typed["keeps"].SetText("6m")
	assert.Contains(t, v.about.Text, "Ready to print")
	assert.False(t, v.export.Disabled())
	assert.Contains(t, pagetest.Texts(v.list), "Best before 14.01.2027")
	v.write()
	assert.True(t, bytes.HasPrefix(h.Written(), []byte("%PDF")))
	assert.Contains(t, pagetest.Texts(v.list), "Frozen, a tub holds")
	h.Until(func() bool { return strings.Contains(v.beside.Text, "of its ice alone") })
	assert.Contains(t, v.beside.Text, "how long it keeps")

	v.typed["keeps"].SetText("long")
	assert.Contains(t, v.about.Text, "For how long it keeps: a durability is")
	assert.True(t, v.export.Disabled())
}

func TestALanguageAsksForItsWords(t *testing.T) {
	v, h := open(t)
	v.place.SetSelected("Germany")
	assert.Contains(t, v.about.Text, "Add: name of the food, ingredients")
	require.Equal(t, []string{"de"}, v.of)
	assert.Contains(t, pagetest.Texts(v.list), "Have a speaker of each language read the label")
	d := h.Design()
	d.Label.SetWord("de", "name", "Honigeis")
	h.Set(d)
	v.Show()
	assert.NotContains(t, v.about.Text, "name of the food")
	v.typed["languages"].SetText("xx")
	assert.Contains(t, v.about.Text, "The languages: ")
}

// A batch of the notebook gives its day, lot and durability; what is typed stays.
func TestABatchOfTheNotebookIsPrinted(t *testing.T) {
	v, h := open(t)
	v.place.SetSelected("The United Kingdom")
	v.typed["maker"].SetText("Saltmarsh Quay, 1 Pier Road")
	v.book.Notes.Batches = []batch.Batch{{ID: "b6"}, {ID: "b7", Made: "2026-07-14", BestBefore: "2027-01-10", Lot: "quay 7"}}
	h.Set(h.Design())
	v.Show()
	assert.Equal(t, []string{say.LabelNoBatch.String(), "b7", "b6"}, v.batch.Options)
	assert.True(t, v.export.Disabled())
	v.batch.SetSelected("b7")
	assert.False(t, v.export.Disabled())
	assert.Contains(t, pagetest.Texts(v.list), "10.01.2027")
	v.typed["lot"].SetText("pier 1")
	assert.Contains(t, pagetest.Texts(v.list), "pier 1")
	v.book.Notes.Batches = nil
	v.Show()
	assert.Equal(t, say.LabelNoBatch.String(), v.batch.Selected)
	assert.True(t, v.export.Disabled())
}

// What the maker typed of themselves is there again the next time.
func TestTheMakerIsKept(t *testing.T) {
	v, h := open(t)
	v.typed["maker"].SetText("Saltmarsh Quay")
	v.sale.SetSelectedIndex(1)
	again := New(h, market.LabelWords(t), v.book)
	assert.Equal(t, "Saltmarsh Quay", again.typed["maker"].Text)
	assert.Equal(t, 1, again.sale.SelectedIndex())
	for key := range Preferences() {
		assert.True(t, strings.HasPrefix(key, "label."))
	}
}

func TestEveryElementPlaceAndSaleHasAName(t *testing.T) {
	for _, k := range onpack.Keys() {
		assert.NotEmpty(t, say.ElementName(k), k)
	}
	for _, p := range onpack.Places() {
		assert.NotEmpty(t, say.PlaceName(p), p)
	}
	for _, s := range onpack.Sales() {
		assert.NotEmpty(t, say.SaleName(s), s)
	}
}
