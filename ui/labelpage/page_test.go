package labelpage

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/page"
	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
)

func openLabel(t *testing.T, d design.Design, look theme.Options) (*Page, *pagetest.Press) {
	h := pagetest.NewPress(t, d, look)
	p := New(h)
	h.Open(p)
	return p, h
}

func TestTheLabelShownIsTheLabelThatIsWritten(t *testing.T) {
	p, h := openLabel(t, market.Honey(), theme.Options{})
	h.Until(func() bool { return p.drawnOf == p.label && p.drawnDPI == p.fineness() })
	want, err := card.RenderLabel(p.label, p.chosenForm(), p.drawnDPI)
	require.NoError(t, err)
	pagetest.SamePixels(t, want, p.sheet.Sheets()[0].Image)

	p.write()
	assert.Equal(t, ".pdf", filepath.Ext(h.Wrote))
	assert.True(t, strings.HasPrefix(string(h.Written()), "%PDF-"))
	for _, r := range page.Regions {
		p.region.SetSelected(say.RegionName(r))
		name := "label.txt"
		p.host = exportTo{h, name}
		p.write()
		assert.Contains(t, string(h.Written()), map[label.Region]string{label.US: "Nutrition Facts", label.EU: "Nutrition declaration"}[r])
		p.host = h
	}
}

// exportTo is a maker who types another name than the one offered.
type exportTo struct {
	*pagetest.Press
	name string
}

func (e exportTo) Export(_ string, write func(string) error) { e.Press.Export(e.name, write) }

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
		d := market.Honey()
		d.Tubs = design.Tubs{Count: 2, VolumeML: c.ml, FillPercent: 100, Shape: design.ShapeRound}
		p, h := openLabel(t, d, theme.Options{})
		assert.Equal(t, c.forms, p.form.Options, "%v mL", c.ml)
		var sizes []float64
		for _, f := range c.forms {
			p.form.SetSelected(f)
			h.Until(func() bool { return p.drawnOf == p.label && p.drawnForm == p.chosenForm() })
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
	h.KeepLook("label_empty")
	h.Set(market.Honey())
	p.Show()
	assert.False(t, p.export.Disabled())
}

func TestEverythingOnTheLabelPageIsReachedByKeyboard(t *testing.T) {
	d := market.Honey()
	d.Tubs.VolumeML = 1000
	_, h := openLabel(t, d, theme.Options{})
	names, sheets := h.Reached()
	assert.Subset(t, names, []string{say.ExportLabel.String(), "Vertical"})
	assert.True(t, sheets)
}

func TestTheLabelKeepsWithinTheWindowInEveryDress(t *testing.T) {
	for dress, look := range pagetest.Dresses {
		l, lh := openLabel(t, market.Honey(), look)
		for _, r := range page.Regions {
			l.region.SetSelected(say.RegionName(r))
			lh.Until(func() bool { return l.drawnOf == l.label })
			lh.KeepLook("label_" + string(r) + "_" + dress)
			assert.LessOrEqual(t, l.Object().MinSize().Width, float32(1264), "%s %s", dress, say.RegionName(r))
			assert.LessOrEqual(t, l.Object().MinSize().Height, float32(700), "%s %s", dress, say.RegionName(r))
		}
	}
}

// A page as long as what a design may hold kept the toolkit breaking lines for
// minutes; the drawn label and the text have it all.
func TestThePageShowsTheBeginningOfWhatIsLong(t *testing.T) {
	d := market.Honey()
	foreign := &ingredient.Ingredient{ID: "quay_mix", Name: "Quay mix 柚", Parts: strings.Repeat("sugar, ", 20000), Own: true}
	d.Own = append(d.Own, foreign)
	d.Dense.Lines = append(d.Dense.Lines, design.Line{Ingredient: foreign.ID, Grams: 50})
	for i := range 60 {
		in := &ingredient.Ingredient{ID: fmt.Sprint("unknown_", i), Name: fmt.Sprint("Unknown ", i), Own: true}
		d.Own = append(d.Own, in)
		d.Dense.Lines = append(d.Dense.Lines, design.Line{Ingredient: in.ID, Grams: 1})
	}
	p, h := openLabel(t, d, theme.Options{})
	h.Until(func() bool { return p.picture.Image != nil })
	for _, l := range pagetest.All[*widget.Label](p.Object()) {
		assert.LessOrEqual(t, len([]rune(l.Text)), page.MostProse)
	}
	for _, rich := range pagetest.All[*widget.RichText](p.Object()) {
		assert.LessOrEqual(t, len([]rune(rich.String())), page.MostProse)
	}
	assert.Contains(t, p.about.Text, "柚", "letters that the drawn label lacks are named")
	assert.Contains(t, p.about.Text, "□")
}
