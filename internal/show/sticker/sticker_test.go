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
	"ripplewright/internal/work/batch"
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
		p := selling.Pack(d, place, onpack.Sales()[r.Intn(len(onpack.Sales()))])
		p.Tub = all[r.Intn(len(all))]
		p.Made, p.Durability, p.Maker = time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC), onpack.Durability{Months: 6}, "Saltmarsh Quay, 1 Pier Road, Saltmarsh"
		if place != onpack.US {
			langs := [][]string{{"en"}, {"de"}, {"fr", "en"}, {"de", "it", "en"}, {"es", "pt"}, {"nl", "sv"}, {"pl", "cs"}}
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

// The text of the PDF, extracted by another program, holds every element in the
// order in which the label is read: the front from above, then the information.
func TestThePDFHoldsEveryElementInOrder(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("no pdftotext on this machine")
	}
	k := kitchens{t, model.New(market.Library(t)), market.LabelWords(t)}
	d := market.Honey()
	order := []onpack.Key{onpack.Name, onpack.Quantity, onpack.Ingredients, onpack.Allergens, onpack.Date, onpack.Lot, onpack.Storage, onpack.Warnings, onpack.Maker}
	for _, of := range []struct {
		place onpack.Place
		langs []string
		tub   string
	}{{onpack.US, nil, "pint"}, {onpack.US, nil, "tub 500 mL"}, {onpack.UK, nil, "tub 500 mL"}, {onpack.IE, nil, "tub 1 L"}, {onpack.DE, []string{"de", "fr", "it"}, "tub 1 L"},
		{onpack.IT, []string{"it", "es"}, "pint"}, {onpack.EU, []string{"nl", "pt"}, "tub 500 mL"}, {onpack.EU, []string{"pl", "cs", "sv"}, "tub 2 L"}} {
		p := selling.Pack(d, of.place, onpack.Shop)
		p.Tub, err = onpack.TubNamed(of.tub)
		require.NoError(t, err)
		p.Languages, p.Form = of.langs, onpack.ByMonth
		p.Made, p.Durability, p.Maker = time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC), onpack.Durability{Months: 6}, "Saltmarsh Quay, 1 Pier Road, Saltmarsh"
		c := k.content(d, p)
		pages, err := sticker.Draw([]sticker.Content{c}, sticker.Print{Copies: 1})
		require.NoError(t, err, "%v", of)
		path := filepath.Join(t.TempDir(), "label.pdf")
		require.NoError(t, card.WritePages(path, "label", pages))
		out, err := exec.CommandContext(context.Background(), tool, "-raw", path, "-").Output()
		require.NoError(t, err)
		text, at := spaced(string(out)), 0
		for _, key := range order {
			i := slices.IndexFunc(c.Elements, func(e onpack.Element) bool { return e.Key == key })
			e := c.Elements[i]
			if e.State != onpack.Filled || key == onpack.Allergens && of.place != onpack.US { // there they stand in the list
				continue
			}
			for _, part := range e.Parts {
				want := ""
				for _, r := range part.Runs {
					want += r.Text
				}
				next := strings.Index(text[at:], spaced(want))
				require.GreaterOrEqual(t, next, 0, "%v: %s comes in its order: %q", of, key, want)
				at += next + len(spaced(want))
			}
		}
		require.Contains(t, text, map[bool]string{true: "Vitamin D", false: "kJ"}[of.place == onpack.US])
	}
}

// spaced is a text with one space between its words.
func spaced(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(s, "\u00a0", " ")), " ")
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

// 21 CFR 101.9(j)(13)(ii)(A)(2): the line only where the package cannot take the
// tabular form. A patch of this cone is too narrow for that, its wrap is not. Article
// 34(2) of Regulation (EU) No 1169/2011 has a line only where a table has no room.
func TestALineOnlyWhereATableHasNoRoom(t *testing.T) {
	k := kitchens{t, model.New(market.Library(t)), market.LabelWords(t)}
	d := market.Honey()
	d.Tubs.VolumeML = 350
	p := selling.Pack(d, onpack.US, onpack.Shop)
	p.Tub, _ = onpack.TubNamed("tub 350 mL")
	p.Maker = "Saltmarsh Quay, 1 Pier Road, Saltmarsh"
	c := k.content(d, p)
	faces, err := sticker.Faces(c)
	require.NoError(t, err)
	assert.Equal(t, []sticker.Form{sticker.Form(card.SmallTabular)}, formsOf(faces))
	assert.True(t, faces[0].Wrap)

	p = selling.Pack(d, onpack.UK, onpack.Shop)
	p.Maker, p.Made, p.Durability = "Saltmarsh Quay", time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC), onpack.Durability{Days: 80}
	for tub, want := range map[onpack.Tub]sticker.Form{
		{TopMM: 64, BottomMM: 60, HeightMM: 40}:       sticker.Table,
		{TopMM: 64, BottomMM: 60, HeightMM: 27}:       sticker.InALine, // lower than a table of eight lines beside its list
		{LengthMM: 150, BreadthMM: 100, HeightMM: 70}: sticker.Table,
	} {
		p.Tub = tub
		faces, err := sticker.Faces(k.content(d, p))
		require.NoError(t, err)
		assert.Equal(t, []sticker.Form{want}, formsOf(faces), "%v", tub)
	}
}

// Each copy of a label that bears a lot has its own number; one without has none.
func TestCopiesHaveNumberedLots(t *testing.T) {
	k := kitchens{t, model.New(market.Library(t)), market.LabelWords(t)}
	d := market.Honey()
	r := evaluated(t, k.m, d)
	l, err := label.For(r.Food(d), label.EU, label.Options{})
	require.NoError(t, err)
	for form, want := range map[onpack.DateForm][]string{onpack.ByMonth: {"L26195-1", "L26195-2", "L26195-3"}, onpack.ByDay: {"", "", ""}} {
		choices := sticker.Choices{Place: "uk", Made: "2026-07-14", Keeps: "6m", Date: string(form), Maker: "Saltmarsh Quay"}
		p, err := choices.Pack(d, k.words)
		require.NoError(t, err)
		content, food := choices.Of(d, r, l, p, k.words)
		for i, c := range sticker.Numbered(content, food, p, k.words, 3) {
			for _, e := range c.Elements {
				if e.Key != onpack.Lot {
					continue
				}
				if want[i] == "" {
					assert.Equal(t, onpack.NotNeeded, e.State)
				} else {
					assert.Equal(t, want[i], e.Text)
				}
			}
		}
	}
}

// What a batch of the notebook says fills what is not typed, and nothing else.
func TestABatchFillsInWhatIsNotTyped(t *testing.T) {
	b := batch.Batch{ID: "b7", Made: "2026-07-14", BestBefore: "2026-10-12"}
	assert.Equal(t, sticker.Choices{Made: "2026-07-14", Lot: "b7", Keeps: "90d"}, sticker.Choices{}.OfBatch(b))
	b.Lot = "quay 4"
	assert.Equal(t, sticker.Choices{Made: "2026-07-14", Lot: "quay 4", Keeps: "6m"}, sticker.Choices{Keeps: "6m"}.OfBatch(b))
	typed := sticker.Choices{Made: "2026-08-01", Lot: "x", Keeps: "1m"}
	assert.Equal(t, typed, typed.OfBatch(b))
	assert.Equal(t, sticker.Choices{Lot: "b8"}, sticker.Choices{}.OfBatch(batch.Batch{ID: "b8"}), "a day that nobody wrote down is asked for")
}
