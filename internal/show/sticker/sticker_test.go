package sticker_test

import (
	"context"
	"math"
	"math/rand"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/selling"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/sticker"
	"ripplewright/internal/work/design"
)

// kitchens evaluates designs.
type kitchens struct {
	t     testing.TB
	m     *model.Model
	words onpack.Words
}

func (k kitchens) content(d design.Design, p onpack.Pack) sticker.Content {
	r, err := k.m.Evaluate(d)
	require.NoError(k.t, err)
	l, err := label.For(r.Food(d), p.Place.Region(), label.Options{})
	require.NoError(k.t, err)
	food := selling.Food(d, &r, l, p.Place)
	food.Unstated = nil
	if len(p.Languages) == 0 {
		p.Languages = []string{p.Place.Language()}
	}
	for _, lang := range p.Languages { // a maker's words that name every allergen
		if lang != "en" {
			p.Names[lang] = "Eisdessert mit Schaum"
			var all []string
			for _, e := range onpack.Elements(food, onpack.Pack{Place: p.Place, Sale: onpack.Shop, Languages: []string{lang}, Tub: p.Tub}, k.words) {
				if e.Key == onpack.Allergens {
					all = append(all, e.Text)
				}
			}
			p.Lists[lang] = "Zucker, Wasser, " + strings.Join(all, ", ")
		}
	}
	return sticker.Content{Place: p.Place, Tub: p.Tub, Languages: p.Languages, Elements: onpack.Elements(food, p, k.words), Panel: l, Words: k.words,
		Brand: d.Name, NominalML: food.HoldsML}
}

// random is a design whose lines are drawn from the whole library.
func random(r *rand.Rand, ids []string) design.Design {
	d := market.Honey()
	d.Tubs.VolumeML = 60 + r.Float64()*2000
	for range r.Intn(12) {
		d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: ids[r.Intn(len(ids))], Grams: 1 + 60*r.Float64()})
	}
	return d
}

func tubs() []onpack.Tub {
	var all []onpack.Tub
	for _, name := range onpack.TubNames() {
		t, _ := onpack.TubNamed(name)
		all = append(all, t)
	}
	return append(all, onpack.Tub{LengthMM: 150, BreadthMM: 100, HeightMM: 70}, onpack.Tub{LengthMM: 90, BreadthMM: 60, HeightMM: 45})
}

// On the faces of any tub no element is lost, no letter is under its least height,
// every box is inside its face and none covers another; or the label is refused.
func TestALabelIsWholeLegibleAndInItsPlaceOrRefused(t *testing.T) {
	lib := market.Library(t)
	k := kitchens{t, model.New(lib), market.LabelWords(t)}
	var ids []string
	for _, in := range lib.All() {
		ids = append(ids, in.ID)
	}
	r := rand.New(rand.NewSource(17))
	all := tubs()
	fits, refused := 0, 0
	count := 500
	if testing.Short() {
		count = 60
	}
	for range count {
		d := random(r, ids)
		place := onpack.Places()[r.Intn(len(onpack.Places()))]
		p := selling.Pack(d, place, onpack.Sales()[r.Intn(2)])
		p.Tub = all[r.Intn(len(all))]
		p.Made, p.Durability, p.Maker = time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC), onpack.Durability{Months: 6}, "Saltmarsh Quay, 1 Pier Road, Saltmarsh"
		if place != onpack.US {
			langs := [][]string{{"en"}, {"de"}, {"fr", "en"}, {"de", "it", "en"}}
			p.Languages = langs[r.Intn(len(langs))]
		}
		c := k.content(d, p)
		c.Lid = r.Intn(3) == 0
		if r.Intn(4) == 0 {
			c.Article = "2000000000015"
		}
		faces, err := sticker.Faces(c)
		if err != nil {
			require.ErrorIs(t, err, sticker.ErrRoom)
			assert.True(t, slices.ContainsFunc(faces, func(f sticker.Face) bool { return !f.Fits() }))
			refused++
			continue
		}
		fits++
		have := map[onpack.Key]bool{}
		for _, f := range faces {
			for i, b := range f.Boxes {
				have[b.Key] = true
				assert.GreaterOrEqual(t, b.LetterMM, b.LeastMM-1e-9, "%s %s", place, b.Key)
				if f.Round { // in the circle, not only in its square
					for _, x := range []float64{b.At.X0, b.At.X1} {
						for _, y := range []float64{b.At.Y0, b.At.Y1} {
							assert.LessOrEqual(t, math.Hypot(x-f.WidthMM/2, y-f.HeightMM/2), f.WidthMM/2+1e-9)
						}
					}
				}
				assert.Positive(t, b.LeastMM)
				assert.NotEmpty(t, b.Rule)
				assert.GreaterOrEqual(t, b.At.X0, -1e-9, "%s %s", f.Name, b.Key)
				assert.GreaterOrEqual(t, b.At.Y0, -1e-9, "%s %s", f.Name, b.Key)
				assert.LessOrEqual(t, b.At.X1, f.WidthMM+1e-9, "%s %s", f.Name, b.Key)
				assert.LessOrEqual(t, b.At.Y1, f.HeightMM+1e-9, "%s %s", f.Name, b.Key)
				for _, o := range f.Boxes[:i] {
					apart := b.At.X0 >= o.At.X1-1e-9 || o.At.X0 >= b.At.X1-1e-9 || b.At.Y0 >= o.At.Y1-1e-9 || o.At.Y0 >= b.At.Y1-1e-9
					assert.True(t, apart, "%s: %s over %s", f.Name, b.Key, o.Key)
				}
			}
		}
		for _, e := range c.Elements {
			inList := e.Key == onpack.Allergens && place != onpack.US && have[onpack.Ingredients]
			if e.State == onpack.Filled && !inList {
				assert.True(t, have[e.Key], "%s: %s is lost", place, e.Key)
			}
		}
		within(t, sticker.Piece(c, faces))
	}
	t.Logf("%d fit, %d refused", fits, refused)
	assert.Greater(t, fits, count/4)
	assert.Positive(t, refused)
}

// within fails for a text that ends outside its list.
func within(t *testing.T, p *draw.List) {
	t.Helper()
	for _, s := range p.Texts {
		assert.LessOrEqual(t, s.At.X, p.W+1e-9, s.S)
		assert.LessOrEqual(t, s.At.Y, p.H+1e-9, s.S)
		assert.GreaterOrEqual(t, s.At.Y, 0.0, s.S)
	}
}

// The figures of a net quantity are as high as its rule asks, measured on the
// drawn type: digits of Liberation Sans are as high as its capitals.
func TestTheNetQuantityIsAsHighAsItsRule(t *testing.T) {
	k := kitchens{t, model.New(market.Library(t)), market.LabelWords(t)}
	for _, place := range onpack.Places() {
		for _, tub := range tubs() {
			d := market.Honey()
			p := selling.Pack(d, place, onpack.Shop)
			p.Tub, p.Languages = tub, []string{"en"}
			p.Made, p.Durability, p.Maker = time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC), onpack.Durability{Days: 90}, "Saltmarsh Quay"
			faces, _ := sticker.Faces(k.content(d, p))
			for _, b := range faces[0].Boxes {
				if b.Key != onpack.Quantity {
					continue
				}
				want := onpack.FigureMM(selling.FrozenML(d, evaluated(t, k.m, d)))
				if place == onpack.US {
					want = onpack.USFigureMM(tub.PanelIn2())
				}
				if place == onpack.US && tub.PanelIn2() > 5 {
					assert.GreaterOrEqual(t, b.At.Y0, 0.7*faces[0].HeightMM-1e-9, "in the bottom 30 %%, 21 CFR 101.7(f)")
				}
				assert.GreaterOrEqual(t, b.LetterMM, want-1e-9, "%s", place)
			}
		}
	}
}

func evaluated(t *testing.T, m *model.Model, d design.Design) *model.Result {
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	return &r
}

// The text of the PDF, extracted by another program, holds every element.
func TestThePDFHoldsEveryElement(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("no pdftotext on this machine")
	}
	k := kitchens{t, model.New(market.Library(t)), market.LabelWords(t)}
	d := market.Honey()
	for _, place := range []onpack.Place{onpack.US, onpack.UK} {
		p := selling.Pack(d, place, onpack.Shop)
		p.Made, p.Durability, p.Maker = time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC), onpack.Durability{Months: 6}, "Saltmarsh Quay, 1 Pier Road, Saltmarsh"
		c := k.content(d, p)
		pages, err := sticker.Draw([]sticker.Content{c}, sticker.Print{Copies: 1})
		require.NoError(t, err)
		path := filepath.Join(t.TempDir(), "label.pdf")
		require.NoError(t, card.WritePages(path, "label", pages))
		out, err := exec.CommandContext(context.Background(), tool, "-raw", path, "-").Output()
		require.NoError(t, err)
		text := strings.Join(strings.Fields(string(out)), " ")
		for _, e := range c.Elements {
			if e.State != onpack.Filled || e.Key == onpack.Nutrition || e.Key == onpack.Allergens && place != onpack.US {
				continue
			}
			for _, part := range e.Parts {
				var b strings.Builder
				for _, r := range part.Runs {
					b.WriteString(r.Text)
				}
				assert.Contains(t, text, strings.Join(strings.Fields(b.String()), " "), "%s %s", place, e.Key)
			}
		}
		at := -1
		for _, key := range []onpack.Key{onpack.Name, onpack.Quantity, onpack.Ingredients, onpack.Date, onpack.Storage, onpack.Maker} {
			for _, e := range c.Elements {
				if e.Key == key {
					next := strings.Index(text, strings.Join(strings.Fields(strings.ReplaceAll(e.Parts[0].Runs[0].Text, "\u00a0", " ")), " "))
					assert.Greater(t, next, at, "%s %s comes in its order", place, key)
					at = next
				}
			}
		}
		assert.Contains(t, text, map[onpack.Place]string{onpack.US: "Total Carbohydrate", onpack.UK: "of which sugars"}[place])
	}
}

func TestSheetsAndCopies(t *testing.T) {
	k := kitchens{t, model.New(market.Library(t)), market.LabelWords(t)}
	d := market.Honey()
	p := selling.Pack(d, onpack.UK, onpack.Stall)
	p.Tub, _ = onpack.TubNamed("cup 120 mL")
	c := k.content(d, p)
	a4 := onpack.Sheet{WidthMM: 210, HeightMM: 297, MarginMM: 8, GapMM: 2}
	pages, err := sticker.Draw([]sticker.Content{c, c, c}, sticker.Print{Sheet: a4, Copies: 3})
	require.NoError(t, err)
	require.Len(t, pages, 1)
	title := 0
	for _, s := range pages[0].Texts {
		if strings.HasPrefix(s.S, "Ingredients") {
			title++
		}
	}
	assert.Equal(t, 3, title, "three labels")
	_, err = sticker.Draw([]sticker.Content{c}, sticker.Print{Sheet: onpack.Sheet{WidthMM: 60, HeightMM: 60}, Copies: 1})
	assert.ErrorIs(t, err, sticker.ErrSheet)
	_, err = sticker.Draw([]sticker.Content{c}, sticker.Print{Sheet: a4, FirstFree: 99, Copies: 1})
	assert.ErrorIs(t, err, sticker.ErrSheet)
}

// What is printed on a cone stays within its wall rolled out.
func TestASectorHoldsItsFaces(t *testing.T) {
	k := kitchens{t, model.New(market.Library(t)), market.LabelWords(t)}
	d := market.Honey()
	p := selling.Pack(d, onpack.US, onpack.Shop)
	p.Maker = "Saltmarsh Quay, 1 Pier Road, Saltmarsh"
	p.Tub, _ = onpack.TubNamed("tub 1 L")
	c := k.content(d, p)
	faces, err := sticker.Faces(c)
	require.NoError(t, err)
	require.True(t, faces[0].Wrap, "the panel in two columns is too broad for a patch")
	inner, outer, degrees := p.Tub.Sector()
	list := sticker.Piece(c, faces)
	half := degrees / 2 * math.Pi / 180
	for _, s := range list.Texts {
		x, y := s.At.X-list.W/2, outer-s.At.Y
		assert.Greater(t, math.Hypot(x, y), inner, s.S)
		assert.Less(t, math.Hypot(x, y), outer, s.S)
		assert.Less(t, math.Abs(math.Atan2(x, y)), half, s.S)
		assert.InDelta(t, 0, math.Abs(s.Turn), half, s.S)
	}
}

// A package under 12 square inches on which no panel has room bears words on where to
// ask, 21 CFR 101.9(j)(13)(i); without anybody to ask it is refused.
func TestTooSmallForAPanel(t *testing.T) {
	k := kitchens{t, model.New(market.Library(t)), market.LabelWords(t)}
	d := market.Honey()
	p := selling.Pack(d, onpack.US, onpack.Shop)
	p.Tub, _ = onpack.TubNamed("tiny 40 mL")
	p.Maker, p.Names = "Saltmarsh Quay, 1 Pier Road", map[string]string{"en": "Frozen custard dessert"}
	c := k.content(d, p)
	c.Elements = slices.DeleteFunc(c.Elements, func(e onpack.Element) bool { return e.Key == onpack.Ingredients || e.Key == onpack.Allergens })
	_, err := sticker.Faces(c)
	require.ErrorIs(t, err, sticker.ErrRoom)
	c.Inquiries = "1-800-555-0123"
	faces, err := sticker.Faces(c)
	require.NoError(t, err)
	forms := formsOf(faces)
	assert.Equal(t, []sticker.Form{sticker.TooSmall}, forms)
	assert.Contains(t, textOf(sticker.Piece(c, faces)), "nutrition information, call or write: 1-800-555-0123")
	c.Tub, _ = onpack.TubNamed("cup 120 mL") // 17 square inches
	faces, err = sticker.Faces(c)
	require.NoError(t, err)
	assert.NotContains(t, formsOf(faces), sticker.TooSmall)
}

func formsOf(faces []sticker.Face) (out []sticker.Form) {
	for _, f := range faces {
		for _, b := range f.Boxes {
			if b.Form != "" {
				out = append(out, b.Form)
			}
		}
	}
	return out
}

func textOf(p *draw.List) string {
	var all []string
	for _, s := range p.Texts {
		all = append(all, s.S)
	}
	return strings.Join(strings.Fields(strings.Join(all, " ")), " ")
}

// A tapered tub of half a litre, whose panel has two columns, has room for it where
// the front is a third of the wall.
func TestATaperedHalfLitreTakesTheBroadPanelInTwoColumns(t *testing.T) {
	k := kitchens{t, model.New(market.Library(t)), market.LabelWords(t)}
	d := market.Honey()
	p := selling.Pack(d, onpack.US, onpack.Shop)
	p.Made, p.Durability, p.Maker = time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC), onpack.Durability{Months: 6}, "Saltmarsh Quay, 1 Pier Road, Saltmarsh"
	p.Tub, _ = onpack.TubNamed("tub 500 mL")
	c := k.content(d, p)
	require.Equal(t, "dual", c.Panel.Columns)
	faces, err := sticker.Faces(c)
	require.NoError(t, err)
	assert.Equal(t, []sticker.Form{sticker.Form(card.TabularDual)}, formsOf(faces))
}
