package card

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/design"
	"ripplewright/internal/ingredient"
	"ripplewright/internal/label"
	"ripplewright/internal/model"
)

// cards are designs and options that strain the layout.
func cards(t testing.TB) map[string][]*sheet {
	if composed != nil {
		return composed
	}
	small := market()
	small.Tubs = design.Tubs{Count: 40, VolumeML: 120, FillPercent: 95, Shape: design.ShapeRound}
	double := market()
	double.Tubs.VolumeML = 400
	cold := market()
	cold.Serving.TemperatureC = -24
	custard := market()
	custard.Foam.Lines, custard.Foam.Syrup.Lines = nil, nil
	custard.Blend.FoamVolumePercent = 0
	out := map[string][]*sheet{}
	for name, d := range map[string]design.Design{"market": market(), "crowded": crowded(t), "small": small, "double": double, "cold": cold, "custard": custard} {
		r := evaluated(t, d)
		for _, o := range []Options{{Region: label.US, Paper: A4}, {Region: label.EU, Paper: Letter}} {
			out[fmt.Sprintf("%s %s %s", name, o.Region, o.Paper)] = cardPages(context.Background(), d, r, contentOf(d, r, o), o)
		}
	}
	composed = out
	return out
}

var composed map[string][]*sheet // once, since the pictures take their time

// TestNoWordStandsOnAnother compares the boxes of all texts of a page.
func TestNoWordStandsOnAnother(t *testing.T) {
	for name, pages := range cards(t) {
		for i, s := range pages {
			for _, c := range collisions(s) {
				t.Errorf("%s, page %d: %s", name, i+1, c)
			}
		}
	}
}

func collisions(s *sheet) []string {
	type box struct {
		x0, y0, x1, y1 float64
		text           string
	}
	var boxes []box
	var out []string
	for _, m := range s.marks {
		if w, ok := m.(words); ok {
			em := w.size * point
			b := box{w.x + 0.05, w.y - xHeight*em, w.x + w.width(strings.TrimRight(w.text, " ")) - 0.05, w.y, w.text}
			for _, o := range boxes {
				if b.x0 < o.x1 && o.x0 < b.x1 && b.y0 < o.y1 && o.y0 < b.y1 {
					out = append(out, fmt.Sprintf("%q stands on %q", b.text, o.text))
				}
			}
			boxes = append(boxes, b)
		}
	}
	return out
}

func TestWordsKeepTheMargins(t *testing.T) {
	for name, pages := range cards(t) {
		for i, s := range pages {
			for _, m := range s.marks {
				if w, ok := m.(words); ok {
					assert.True(t, w.x >= margin-0.1 && w.x+w.width(w.text) <= s.w-margin+0.1 && w.y <= s.h-9, "%s, page %d: %q at %.1f, %.1f", name, i+1, w.text, w.x, w.y)
				}
			}
		}
	}
}

func TestAnOrdinaryDesignIsOneLeaf(t *testing.T) {
	all := cards(t)
	assert.Len(t, all["market us a4"], 2)
	assert.Len(t, all["market eu letter"], 2)
	assert.Greater(t, len(all["crowded us a4"]), 2)
}

func TestTheSameCardHasTheSameBytes(t *testing.T) {
	d := market()
	r := evaluated(t, d)
	o, err := Options{}.filled()
	require.NoError(t, err)
	first, err := pdfOf(cardPages(context.Background(), d, r, contentOf(d, r, o), o), d.Name)
	require.NoError(t, err)
	for range 5 {
		again, err := pdfOf(cardPages(context.Background(), d, r, contentOf(d, r, o), o), d.Name)
		require.NoError(t, err)
		require.True(t, bytes.Equal(first, again))
	}
}

func TestEveryFormIsWritten(t *testing.T) {
	d := market()
	r := evaluated(t, d)
	dir := t.TempDir()
	for ext, magic := range map[string]string{".pdf": "%PDF-", ".png": "\x89PNG", ".md": "# Hazelnut and burnt honey"} {
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

func TestSignsWithoutAGlyphAreNamed(t *testing.T) {
	d := market()
	d.Name = "Honey and 柚子"
	r := evaluated(t, d)
	path := filepath.Join(t.TempDir(), "card.pdf")
	err := Write(path, d, r, Options{})
	var missing *GlyphError
	require.True(t, errors.As(err, &missing))
	assert.Equal(t, []rune("柚子"), missing.Missing)
	assert.NoFileExists(t, path)
	require.NoError(t, Write(filepath.Join(t.TempDir(), "card.md"), d, r, Options{}), "Markdown needs no font")
}

// TestTheLibraryCanBePrinted sets every name and every sign the card uses.
func TestTheLibraryCanBePrinted(t *testing.T) {
	s := &sheet{}
	for _, in := range library(t).All() {
		for _, words := range []string{in.Name, in.CommonName, in.CommonNameEU, in.Parts} {
			s.write(0, 0, body, plain(words))
			s.write(0, 0, strong, plain(words))
		}
	}
	for f := face(0); f < numFaces; f++ {
		s.write(0, 0, style{f, 9, ink}, "−–°·×•…≤≥½⅓⅔¼¾⅛‡\u2009\u00a0äéßøčžα")
	}
	require.NoError(t, checkGlyphs([]*sheet{s}))
}

func TestBrokenLinesLoseNoWord(t *testing.T) {
	long := "Stir  slowly, " + strings.Repeat("swirl", 30) + ", then stop."
	for _, width := range []float64{5, 20, 60, 200} {
		var got strings.Builder
		for _, line := range wrapped([]run{{plain(long), body}, {" And ", strong}, {"serve.", body}}, width) {
			w := 0.0
			for _, r := range line {
				got.WriteString(r.text)
				w += r.width(r.text)
			}
			assert.LessOrEqual(t, w, width+1e-9)
		}
		want := strings.ReplaceAll(plain(long)+" And serve.", " ", "")
		assert.Equal(t, want, strings.ReplaceAll(strings.ReplaceAll(got.String(), " ", ""), "\u00a0", ""))
	}
}

// TestMeasuresKeepTheWeight reads the measures back.
func TestMeasuresKeepTheWeight(t *testing.T) {
	for cups := 0.006; cups < mostCups; cups *= 1.013 {
		tsp := 0.0
		for _, m := range regexp.MustCompile(`(\d*)([⅛¼⅓½⅔¾]?) (cup|tbsp|tsp)`).FindAllStringSubmatch(usMeasure(cups), -1) {
			n := 0.0
			fmt.Sscan(m[1], &n)
			n += map[string]float64{"⅛": 1. / 8, "¼": 1. / 4, "⅓": 1. / 3, "½": 1. / 2, "⅔": 2. / 3, "¾": 3. / 4}[m[2]]
			tsp += n * map[string]float64{"cup": 48, "tbsp": 3, "tsp": 1}[m[3]]
		}
		bar := 0.06
		if cups*tspPerCup < 1 {
			bar = 0.35 // eighths and quarters of a teaspoon
		} else if cups*tspPerCup < 4 {
			bar = 0.13
		}
		assert.InEpsilon(t, cups*tspPerCup, tsp, bar, usMeasure(cups))
	}
	assert.Equal(t, "a pinch", spoons(0.05, 3))
}

// TestMeasuresAgreeWithTheRecords: USDA SR28, NDB 01077, 1 cup = 244 g; NDB
// 19335, 1 cup = 200 g, 1 tsp = 4.2 g; NDB 19296, 1 tbsp = 21 g.
func TestMeasuresAgreeWithTheRecords(t *testing.T) {
	lib := library(t)
	for _, c := range []struct {
		id   string
		g    float64
		want string
	}{
		{"milk_whole", 244, "1 cup"}, {"milk_whole", 488, "2 cups"}, {"sugar", 150, "¾ cup"}, {"sugar", 4.2, "1 tsp"}, {"honey", 21, "1 tbsp"},
	} {
		in, ok := lib.Find(c.id)
		require.True(t, ok)
		assert.Equal(t, c.want, household(in, c.g, label.US), "%s %g g", c.id, c.g)
	}
	assert.Empty(t, household(&ingredient.Ingredient{}, 100, label.US), "unknown is not zero")
}

// TestThePanelKeepsTheLeastSizes: 21 CFR 101.9(d)(1)–(9), pt.
func TestThePanelKeepsTheLeastSizes(t *testing.T) {
	d := market()
	d.Tubs.VolumeML = 1000
	r := evaluated(t, d)
	l, err := label.For(r.Food(d), label.US, label.Options{})
	require.NoError(t, err)
	require.Equal(t, "single", l.Columns)
	least := map[string]float64{"Nutrition Facts": 22, "Calories": 16, l.Lines[0].Text: 22, "Serving size": 10, l.ServingsText: 10,
		"Total Fat": 8, "Protein": 8, "Amount per serving": 6, "% Daily Value*": 6}
	bold := map[string]bool{"Nutrition Facts": true, "Serving size": true, "Amount per serving": true, "% Daily Value*": true, "Calories": true,
		"Total Fat": true, "Cholesterol": true, "Sodium": true, "Total Carbohydrate": true, "Protein": true}
	for _, n := range l.Lines {
		bold[n.DVText] = bold[n.DVText] || !n.Vitamin && n.DVText != ""
	}
	bold[l.ServingMeasure], bold[l.Lines[0].Text] = true, true
	seen := map[string]bool{}
	for _, m := range usPanel(l, usWidth).marks {
		w, ok := m.(words)
		if !ok {
			continue
		}
		seen[w.text] = true
		assert.GreaterOrEqual(t, w.size, max(6, least[w.text]), w.text)
		if w.face == sansBold {
			assert.True(t, bold[w.text], "%q is bold", w.text)
		}
		assert.Equal(t, black, w.colour)
	}
	for s := range least {
		assert.True(t, seen[s], "%q is on the panel", s)
	}
}

// TestTheLetterXIsTallEnough: Regulation (EU) No 1169/2011, Article 13(2),
// 1.2 mm.
func TestTheLetterXIsTallEnough(t *testing.T) {
	d := market()
	r := evaluated(t, d)
	l, err := label.For(r.Food(d), label.EU, label.Options{})
	require.NoError(t, err)
	for _, s := range []*sheet{panelOf(l, 80), statementOf(l, 80, style{sans, 8, black})} {
		for _, m := range s.marks {
			if w, ok := m.(words); ok {
				assert.GreaterOrEqual(t, w.size*point*xHeight, 1.2, w.text)
			}
		}
	}
}

func TestAllergensAreEmphasisedInTheList(t *testing.T) {
	d := market()
	r := evaluated(t, d)
	l, err := label.For(r.Food(d), label.EU, label.Options{})
	require.NoError(t, err)
	strongWords := ""
	for _, m := range statementOf(l, 1000, style{sans, 8, black}).marks {
		if w, ok := m.(words); ok && w.face == sansBold {
			strongWords += w.text + " "
		}
	}
	for _, a := range []string{"milk", "egg", "hazelnuts"} {
		assert.Contains(t, strongWords, a)
	}
}

func TestEveryPanelIsClearOfItself(t *testing.T) {
	for _, ml := range []float64{100, 280, 400, 500, 1000} {
		d := crowded(t)
		d.Tubs = design.Tubs{Count: 6, VolumeML: ml, FillPercent: 96, Shape: design.ShapeRound}
		r := evaluated(t, d)
		for _, region := range []label.Region{label.US, label.EU} {
			l, err := label.For(r.Food(d), region, label.Options{})
			require.NoError(t, err)
			assert.Empty(t, collisions(labelSheet(l, withNotes(panelOf(l, labelWidth(l)), l))), "%v mL, %s", ml, region)
			if l.Columns == "single" {
				assert.Empty(t, collisions(labelSheet(l, usTabularPanel(l))), "%v mL, tabular", ml)
			}
		}
	}
}

func TestLabelsAreWritten(t *testing.T) {
	d := market()
	r := evaluated(t, d)
	dir := t.TempDir()
	l, err := label.For(r.Food(d), label.US, label.Options{})
	require.NoError(t, err)
	for _, ext := range []string{".pdf", ".png", ".txt"} {
		require.NoError(t, WriteLabel(filepath.Join(dir, "label"+ext), l, ""))
	}
	require.ErrorIs(t, WriteLabel(filepath.Join(dir, "label.md"), l, ""), ErrExtension)
	b, err := os.ReadFile(filepath.Join(dir, "label.txt"))
	require.NoError(t, err)
	for _, n := range l.Lines {
		assert.Contains(t, string(b), n.Name)
	}
	assert.Contains(t, string(b), l.Contains)
}

// TestTheCardNeverPromises looks for a word that no computed figure supports.
func TestTheCardNeverPromises(t *testing.T) {
	for name, pages := range cards(t) {
		for _, s := range texts(pages) {
			assert.NotRegexp(t, `(?i)\bsafe(ly|ty)?\b`, s, name)
		}
	}
}

func TestStepsFollowTheDesign(t *testing.T) {
	has := func(steps []titled, title string) bool {
		for _, s := range steps {
			if s.title == title {
				return true
			}
		}
		return false
	}
	d := market()
	r := evaluated(t, d)
	assert.True(t, has(stepsOf(d, r, nil), "Temper"))
	assert.True(t, has(cautionsOf(d, r, "milk"), "Honey"))
	assert.True(t, has(cautionsOf(d, r, "milk"), "Nuts"))
	assert.False(t, has(cautionsOf(d, r, "milk"), "Alcohol"))
	d.Dense.Lines = []design.Line{{Ingredient: "oat_drink", Grams: 500}, {Ingredient: "sugar", Grams: 90}, {Ingredient: "rum_40", Grams: 40}}
	r = evaluated(t, d)
	assert.False(t, has(stepsOf(d, r, nil), "Temper"), "no yolk to temper")
	assert.True(t, has(cautionsOf(d, r, "egg"), "Alcohol"))
	assert.False(t, has(cautionsOf(d, r, "egg"), "Honey"))
}

func TestAnEmptyDesignStillPrints(t *testing.T) {
	d := design.New()
	r, err := model.New(library(t)).Evaluate(d)
	if err != nil {
		t.Skip("an empty design is not evaluated")
	}
	require.NoError(t, Write(filepath.Join(t.TempDir(), "card.pdf"), d, &r, Options{}))
}

func TestUnknownFiguresAreDashes(t *testing.T) {
	assert.Equal(t, "–", number(math.NaN(), 1))
	assert.Equal(t, "not at all", celsius1(math.NaN()))
	assert.Equal(t, "−13 °C", celsius(-13))
	assert.Equal(t, "12\u2009340", grouped(12340))
}

func BenchmarkPDF(b *testing.B) {
	d := market()
	r := evaluated(b, d)
	o, _ := Options{}.filled()
	for i := 0; i < b.N; i++ {
		if _, err := pdfOf(cardPages(context.Background(), d, r, contentOf(d, r, o), o), d.Name); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRender(b *testing.B) {
	d := market()
	r := evaluated(b, d)
	for i := 0; i < b.N; i++ {
		if _, err := Render(context.Background(), d, r, Options{DPI: 100}); err != nil {
			b.Fatal(err)
		}
	}
}
