package card

import (
	"bytes"
	"context"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ripplewright/internal/check"
	"ripplewright/internal/show/draw/typeset"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/pdf"
	"ripplewright/internal/show/draw/raster"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// TestEveryLineOfALongDesignIsInThePDF reads the file back.
func TestEveryLineOfALongDesignIsInThePDF(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	d := forty(t)
	r := evaluated(t, d)
	path := filepath.Join(t.TempDir(), "card.pdf")
	require.NoError(t, Write(path, d, r, Options{Cold: timed(t, d, r)}))
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	lines := textOf(t, data)
	all := squeezed(strings.Join(lines, ""))
	for _, l := range r.Lines {
		n, unit := say.Usual.MassParts(l.Grams)
		assert.Contains(t, lines, n, "%s, %s", l.Ingredient.Name, unit)
		assert.Contains(t, all, squeezed(l.Ingredient.Kitchen()))
	}
	c := contentOf(d, r, Options{Region: label.US, Cold: timed(t, d, r)})
	for _, list := range [][]say.Titled{c.steps, c.checks, c.cautions} {
		for _, s := range list {
			assert.Contains(t, all, squeezed(s.Title))
			assert.Contains(t, all, squeezed(s.Text))
		}
	}
	for _, list := range [][]string{c.rests, c.warnings, say.SaidAll(c.label.Warnings), {c.label.Contains, c.verdict, c.advice, c.serve}} {
		for _, s := range list {
			assert.Contains(t, all, squeezed(typeset.Plain(s)))
		}
	}
	assert.Equal(t, 40, strings.Count(all, squeezed("bring it to the bench in good time"))+len(d.Foam.Syrup.Lines), "every note")
}

// squeezed takes out the spaces, where lines break.
func squeezed(s string) string {
	return strings.NewReplacer(" ", "", "\u00a0", "").Replace(s)
}

func TestACancelledCardIsNotDrawn(t *testing.T) {
	d := market.Hazelnut()
	r := evaluated(t, d)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Render(ctx, d, r, Options{})
	require.ErrorIs(t, err, context.Canceled)
}

func TestTheSameCardHasTheSameBytes(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	d := market.Hazelnut()
	r := evaluated(t, d)
	o, err := Options{}.filled()
	require.NoError(t, err)
	first, err := pdf.Encode(cardPages(context.Background(), d, r, contentOf(d, r, o), o), d.Name)
	require.NoError(t, err)
	for range 5 {
		again, err := pdf.Encode(cardPages(context.Background(), d, r, contentOf(d, r, o), o), d.Name)
		require.NoError(t, err)
		require.True(t, bytes.Equal(first, again))
	}
}

func TestEveryFormIsWritten(t *testing.T) {
	d := market.Hazelnut()
	r := evaluated(t, d)
	dir := t.TempDir()
	for ext, magic := range map[string]string{".pdf": "%PDF-", ".png": "\x89PNG", ".svg": "<?xml", ".md": "# Hazelnut and burnt honey"} {
		path := filepath.Join(dir, "card"+ext)
		require.NoError(t, Write(path, d, r, Options{DPI: 60}))
		b, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(string(b), magic), ext)
	}
	pages, err := Render(context.Background(), d, r, Options{DPI: 60})
	require.NoError(t, err)
	f, err := os.Open(filepath.Join(dir, "card.png"))
	require.NoError(t, err)
	defer f.Close()
	read, err := png.Decode(f)
	require.NoError(t, err)
	top := 0
	for _, page := range pages {
		for y := range page.Bounds().Dy() {
			for x := range page.Bounds().Dx() {
				require.Equal(t, page.At(x, y), read.At(x, top+y), "the preview is the picture")
			}
		}
		top += page.Bounds().Dy()
	}
	assert.Equal(t, top, read.Bounds().Dy())

	require.ErrorIs(t, Write(filepath.Join(dir, "card.doc"), d, r, Options{}), ErrExtension)
	require.Error(t, Write(filepath.Join(dir, "card.png"), d, r, Options{DPI: 5000}))
	require.Error(t, Write(filepath.Join(dir, "card.pdf"), d, r, Options{Region: "moon"}))
}

func TestAnEmptyDesignStillPrints(t *testing.T) {
	d := design.New()
	r, err := model.New(market.Library(t)).Evaluate(d)
	if err != nil {
		t.Skip("an empty design is not evaluated")
	}
	require.NoError(t, Write(filepath.Join(t.TempDir(), "card.pdf"), d, &r, Options{}))
}

func BenchmarkPDF(b *testing.B) {
	d := market.Hazelnut()
	r := evaluated(b, d)
	o, _ := Options{}.filled()
	for i := 0; i < b.N; i++ {
		if _, err := pdf.Encode(cardPages(context.Background(), d, r, contentOf(d, r, o), o), d.Name); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRender(b *testing.B) {
	d := market.Hazelnut()
	r := evaluated(b, d)
	for _, dpi := range []float64{50, 57, 110, 220} { // coarse, whole pages and page width in a window, twice that
		b.Run(fmt.Sprintf("dpi=%g", dpi), func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				if _, err := Render(context.Background(), d, r, Options{DPI: dpi}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkRenderLabel(b *testing.B) {
	d := market.Hazelnut()
	l, err := label.For(evaluated(b, d).Food(d), label.US, label.Options{})
	require.NoError(b, err)
	for i := 0; i < b.N; i++ {
		if _, err := RenderLabel(l, "", 110); err != nil {
			b.Fatal(err)
		}
	}
}

func TestAPictureTooLargeIsRefusedWithTheFinenessThatFits(t *testing.T) {
	page := &draw.List{W: 210, H: 297}
	_, err := encoded(".png", []*draw.List{page, page}, "", 600)
	require.ErrorContains(t, err, "ask for 227 dots per inch")
	assert.Equal(t, 227.0, finest([]*draw.List{page, page}))
	w, h := raster.Size([]*draw.List{page, page}, 227/inch)
	assert.InEpsilon(t, mostPixels, w*h, 0.01)
}

// longest are designs as large as a design file may be.
func longest(t testing.TB) map[string]design.Design {
	const most = 390_000 // bytes, with the file's own words below yamltext.MaxSize
	all := map[string]design.Design{}
	for name, unit := range map[string]string{"words": "stir and wait ", "one word": "x", "paragraphs": "x\n\n", "foreign letters": "柚子蜜"} {
		d := market.Hazelnut()
		d.Notes = strings.Repeat(unit, most/len(unit))
		all[name] = d
	}
	d := market.Hazelnut()
	d.Dense.Lines[0].Note = strings.Repeat("x", most)
	all["one line"] = d
	d = market.Hazelnut()
	for len(d.Dense.Lines) < design.MaxLines {
		d.Dense.Lines = append(d.Dense.Lines, design.Line{Ingredient: "hazelnut", Grams: 10, Note: strings.Repeat("stir and wait ", 50)})
	}
	all["lines"] = d
	d = market.Hazelnut()
	d.Name = strings.Repeat("x", design.MaxName)
	for i := range design.MaxOwn {
		in := *in(t, "hazelnut")
		in.ID, in.Own = fmt.Sprint("own", i), true
		in.Name = fmt.Sprint(i) + strings.Repeat("x", ingredient.MaxName-4)
		in.KitchenName, in.CommonName, in.CommonNameEU = in.Name, "", ""
		d.Own = append(d.Own, &in)
		list := &d.Dense.Lines
		if i%2 > 0 {
			list = &d.Foam.Lines
		}
		*list = append(*list, design.Line{Ingredient: in.ID, Grams: 5})
	}
	all["own ingredients"] = d
	d = market.Hazelnut()
	parts := *in(t, "hazelnut")
	parts.ID, parts.Own, parts.Parts = "own", true, strings.Repeat("sugar, ", most/7)
	d.Own = []*ingredient.Ingredient{&parts}
	d.Dense.Lines[5].Ingredient = "own"
	all["parts"] = d
	return all
}

func in(t testing.TB, id string) *ingredient.Ingredient {
	found, ok := market.Library(t).Find(id)
	require.True(t, ok)
	return found
}

func BenchmarkLongest(b *testing.B) {
	for name, d := range longest(b) {
		r := evaluated(b, d)
		o, _ := Options{DPI: 300}.filled()
		b.Run("layout "+name, func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				pages := cardPages(context.Background(), d, r, contentOf(d, r, o), o)
				b.ReportMetric(float64(len(pages)), "pages")
			}
		})
		b.Run("pdf "+name, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				if _, err := pdf.Encode(cardPages(context.Background(), d, r, contentOf(d, r, o), o), d.Name); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run("png "+name, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				pages := cardPages(context.Background(), d, r, contentOf(d, r, o), o)
				if _, err := encoded(".png", pages, d.Name, min(o.DPI, finest(pages))); err != nil {
					b.Fatal(err)
				}
			}
		})
		l, err := label.For(r.Food(d), label.US, label.Options{})
		require.NoError(b, err)
		b.Run("label "+name, func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				if _, err := RenderLabel(l, "", 300); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func TestALongCardIsShownAndWrittenCoarser(t *testing.T) {
	check.Long(t)
	d := longest(t)["lines"]
	r := evaluated(t, d)
	pages, err := Render(context.Background(), d, r, Options{DPI: 220})
	require.NoError(t, err)
	require.Greater(t, len(pages), 50)
	pixels := 0
	for _, p := range pages {
		pixels += p.Bounds().Dx() * p.Bounds().Dy()
	}
	assert.InEpsilon(t, mostPixels, pixels, 0.1)
	path := filepath.Join(t.TempDir(), "card.png")
	require.ErrorContains(t, Write(path, d, r, Options{DPI: 150}), "dots per inch or fewer")
	require.NoError(t, Write(path, d, r, Options{}), "nobody asked for a fineness")
}
