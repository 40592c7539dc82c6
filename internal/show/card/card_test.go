package card

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

// cards are designs and options that strain the layout.
func cards(t testing.TB) map[string][]*draw.List {
	if composed != nil {
		return composed
	}
	small := market()
	small.Tubs = design.Tubs{Count: 40, VolumeML: 120, FillPercent: 95, Shape: design.ShapeRound}
	double := market()
	double.Tubs.VolumeML = 400
	freezing := market()
	freezing.Serving.TemperatureC = -24
	custard := market()
	custard.Foam.Lines, custard.Foam.Syrup.Lines = nil, nil
	custard.Blend.FoamVolumePercent = 0
	one := market()
	one.Tubs = design.Tubs{Count: 1, VolumeML: 30, FillPercent: 60, Shape: design.ShapeRound}
	one.Name = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft"
	one.Notes = "Мёд и орех. Μέλι."
	catering := forty(t)
	catering.Tubs = design.Tubs{Count: 500, VolumeML: 20000, FillPercent: 96, Shape: design.ShapeRectangle}
	foam := market()
	foam.Dense.Lines = nil
	foam.Blend.FoamVolumePercent = 100
	out := map[string][]*draw.List{}
	for name, d := range map[string]design.Design{"market": market(), "crowded": crowded(t), "small": small, "double": double, "cold": freezing, "custard": custard, "one": one, "catering": catering, "foam": foam} {
		r := evaluated(t, d)
		times := timed(t, d, r)
		for _, o := range []Options{{Region: label.US, Paper: A4, Cold: times}, {Region: label.EU, Paper: Letter, Cold: times}} {
			out[fmt.Sprintf("%s %s %s", name, o.Region, o.Paper)] = cardPages(context.Background(), d, r, contentOf(d, r, o), o)
		}
	}
	composed = out
	return out
}

var composed map[string][]*draw.List // once, since the pictures take their time

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

func collisions(s *draw.List) []string {
	type box struct {
		x0, y0, x1, y1 float64
		text           string
	}
	var boxes []box
	var out []string
	for _, m := range s.marks {
		if w, ok := m.(words); ok {
			em := w.size * point
			b := box{w.x + 0.05, w.y - face.XHeight*em, w.x + w.width(strings.TrimRight(w.text, " ")) - 0.05, w.y, w.text}
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
					assert.True(t, w.x >= margin-0.1 && w.x+w.width(w.text) <= s.W-margin+0.1 && w.y <= s.H-9, "%s, page %d: %q at %.1f, %.1f", name, i+1, w.text, w.x, w.y)
				}
			}
		}
	}
}

// TestEveryLineOfALongDesignIsInThePDF reads the file back.
func TestEveryLineOfALongDesignIsInThePDF(t *testing.T) {
	d := forty(t)
	r := evaluated(t, d)
	path := filepath.Join(t.TempDir(), "card.pdf")
	require.NoError(t, Write(path, d, r, Options{Cold: timed(t, d, r)}))
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	lines := textOf(t, data)
	all := squeezed(strings.Join(lines, ""))
	for _, l := range r.Lines {
		n, unit := printed.MassParts(l.Grams)
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
	for _, list := range [][]string{c.rests, c.warnings, c.label.Warnings, {c.label.Contains, c.verdict, c.advice, c.serve}} {
		for _, s := range list {
			assert.Contains(t, all, squeezed(plain(s)))
		}
	}
	assert.Equal(t, 40, strings.Count(all, squeezed("bring it to the bench in good time"))+len(d.Foam.Syrup.Lines), "every note")
}

// squeezed takes out the spaces, where lines break.
func squeezed(s string) string {
	return strings.NewReplacer(" ", "", "\u00a0", "").Replace(s)
}

func TestNotesKeepTheirParagraphsAndStandOnce(t *testing.T) {
	for _, times := range []int{1, 20, 900} { // in the head, in a gap or on a page, over pages
		d := market()
		d.Notes = strings.Repeat("Quaystone ", times) + "\n\nA second paragraph."
		r := evaluated(t, d)
		pages := cardPages(context.Background(), d, r, contentOf(d, r, Options{Region: label.US}), Options{Region: label.US, Paper: A4})
		all := strings.Join(texts(pages), "\n")
		assert.Equal(t, times, strings.Count(all, "Quaystone"))
		assert.Contains(t, texts(pages), "A second paragraph.", "it begins a line")
		assert.Equal(t, times < 900, len(pages) <= 3, "%d words", times)
	}
}

func TestTheDemosAreTwoSidesOfRecipeAndOneOfFigures(t *testing.T) {
	entries, err := assets.Demos.ReadDir("demos")
	require.NoError(t, err)
	for _, e := range entries {
		data, err := assets.Demos.ReadFile("demos/" + e.Name())
		require.NoError(t, err)
		f, err := designfile.Decode(e.Name(), data)
		require.NoError(t, err)
		r := evaluated(t, f.Design)
		for _, o := range []Options{{Region: label.US, Paper: A4}, {Region: label.EU, Paper: Letter}} {
			o.Cold = timed(t, f.Design, r)
			pages := cardPages(context.Background(), f.Design, r, contentOf(f.Design, r, o), o)
			assert.LessOrEqual(t, len(pages), 3, "%s %s", e.Name(), o.Paper)
			for i, s := range pages {
				assert.Empty(t, collisions(s), "%s, page %d", e.Name(), i+1)
			}
		}
	}
}

func TestTimesInTheColdArePrinted(t *testing.T) {
	d := market()
	r := evaluated(t, d)
	a := timed(t, d, r)
	require.True(t, a.Counter.OK)
	step := func(c content, title string) string {
		for _, s := range c.steps {
			if s.Title == title {
				return s.Text
			}
		}
		t.Fatalf("no step %s", title)
		return ""
	}
	c := contentOf(d, r, Options{Region: label.US, Cold: a})
	assert.Contains(t, step(c, "Serve"), say.LeaveOut(printed, &a.Counter))
	assert.Contains(t, step(c, "Freeze soft"), "25 mm")
	assert.Contains(t, step(c, "Harden"), printed.Duration(60*a.Harden.Hours.Value))
}

// TestScriptsThatCannotBeSpelledAreRefused: set from the left, sign by sign,
// they would be wrong without a word.
func TestScriptsThatCannotBeSpelledAreRefused(t *testing.T) {
	for name, fine := range map[string]bool{"Мёд и орех": true, "Μέλι": true, "Cre\u0300me": true, "דבש": false, "عسل": false, "蜂蜜": false, "x\u0302\u0323y": false} {
		d := market()
		d.Name = name
		r := evaluated(t, d)
		_, err := Render(context.Background(), d, r, Options{DPI: 30})
		var missing *GlyphError
		assert.Equal(t, !fine, errors.As(err, &missing), "%s: %v", name, err)
	}
}

func TestACancelledCardIsNotDrawn(t *testing.T) {
	d := market()
	r := evaluated(t, d)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Render(ctx, d, r, Options{})
	require.ErrorIs(t, err, context.Canceled)
}

func TestAnOrdinaryDesignTakesThreeSides(t *testing.T) {
	all := cards(t)
	assert.LessOrEqual(t, len(all["market us a4"]), 3)
	assert.LessOrEqual(t, len(all["market eu letter"]), 3)
	assert.Greater(t, len(all["crowded us a4"]), 3)
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
	s := &draw.List{}
	for _, in := range library(t).All() {
		for _, words := range []string{in.Name, in.CommonName, in.CommonNameEU, in.Parts} {
			write(s, 0, 0, body, plain(words))
			write(s, 0, 0, strong, plain(words))
		}
	}
	for f := face(0); f < numFaces; f++ {
		write(s, 0, 0, style{f, 9, ink}, "−–°·×•…≤≥½⅓⅔¼¾⅛‡\u2009\u00a0äéßøčžα")
	}
	require.NoError(t, checkGlyphs([]*draw.List{s}))
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
		if w.face == draw.SansBold {
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
	for _, s := range []*draw.List{panelOf(l, 80), statementOf(l, 80, style{draw.Sans, 8, black})} {
		for _, m := range s.marks {
			if w, ok := m.(words); ok {
				assert.GreaterOrEqual(t, w.size*point*face.XHeight, 1.2, w.text)
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
	for _, m := range statementOf(l, 1000, style{draw.Sans, 8, black}).marks {
		if w, ok := m.(words); ok && w.face == draw.SansBold {
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
	has := func(steps []say.Titled, title string) bool {
		for _, s := range steps {
			if s.Title == title {
				return true
			}
		}
		return false
	}
	d := market()
	r := evaluated(t, d)
	assert.True(t, has(stepsOf(d, r), "Yolks"))
	assert.True(t, has(say.Cautions(printed, d, r, "milk"), "Honey"))
	assert.True(t, has(say.Cautions(printed, d, r, "milk"), "Nuts"))
	assert.False(t, has(say.Cautions(printed, d, r, "milk"), "Alcohol"))
	d.Dense.Lines = []design.Line{{Ingredient: "oat_drink", Grams: 500}, {Ingredient: "sugar", Grams: 90}, {Ingredient: "rum_40", Grams: 40}}
	r = evaluated(t, d)
	assert.False(t, has(stepsOf(d, r), "Yolks"), "no yolk to whisk")
	assert.True(t, has(say.Cautions(printed, d, r, "egg"), "Alcohol"))
	assert.False(t, has(say.Cautions(printed, d, r, "egg"), "Honey"))
}

// The ingredients are invented: what the stall Saltmarsh Quay buys in.
func TestCautionsReadAMakersOwnIngredients(t *testing.T) {
	d := market()
	d.Dense.Lines = []design.Line{{Ingredient: "heather", Grams: 90}, {Ingredient: "crunch", Grams: 40}, {Ingredient: "melon", Grams: 300}}
	d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil
	d.Own = []*ingredient.Ingredient{
		{ID: "heather", Name: "Heather honey, raw", Own: true, AllergensUS: []string{"none"}},
		{ID: "crunch", Name: "Quay crunch", Own: true, AllergensEU: []string{"nuts:hazelnut"}},
		{ID: "melon", Name: "Honeydew melon", Own: true},
	}
	cautions := map[string]string{}
	for _, c := range say.Cautions(printed, d, evaluated(t, d), "hazelnut") {
		cautions[c.Title] = c.Text
	}
	assert.Contains(t, cautions, "Honey")
	assert.Contains(t, cautions, "Nuts")
	assert.Contains(t, cautions["Allergens"], "those of Honeydew melon. Look on the pack.")

	d.Dense.Lines = d.Dense.Lines[2:]
	for _, c := range say.Cautions(printed, d, evaluated(t, d), "") {
		assert.NotContains(t, []string{"Honey", "Nuts"}, c.Title)
	}
}

func TestAnEmptyDesignStillPrints(t *testing.T) {
	d := design.New()
	r, err := model.New(library(t)).Evaluate(d)
	if err != nil {
		t.Skip("an empty design is not evaluated")
	}
	require.NoError(t, Write(filepath.Join(t.TempDir(), "card.pdf"), d, &r, Options{}))
}

// labelOf is the US label of the market's food in a container of ml mL.
func labelOf(t *testing.T, ml float64, o label.Options) *label.Label {
	d := market()
	d.Tubs = design.Tubs{Count: 6, VolumeML: ml, FillPercent: 100, Shape: design.ShapeRound}
	r := evaluated(t, d)
	l, err := label.For(r.Food(d), label.US, o)
	require.NoError(t, err)
	return l
}

// TestFormsAreThoseOfTheContainer: 21 CFR 101.9(b)(6), (b)(12)(i) and
// (d)(11)(iii); reference amount 2/3 cup, 160 mL.
func TestFormsAreThoseOfTheContainer(t *testing.T) {
	for _, c := range []struct {
		ml    float64
		forms []Form
	}{
		{160, []Form{Vertical, Tabular}},       // 100 %
		{240, []Form{Vertical, Tabular}},       // 150 %
		{300, []Form{Vertical, Tabular, Dual}}, // over 150 and under 200 %: voluntary
		{320, []Form{Dual}},                    // 200 %
		{480, []Form{Dual}},                    // 300 %
		{481, []Form{Vertical, Tabular}},
	} {
		l := labelOf(t, c.ml, label.Options{})
		assert.Equal(t, c.forms, Forms(l), "%v mL", c.ml)
		for _, f := range []Form{Vertical, Tabular, Dual} {
			_, err := RenderLabel(l, f, 72)
			switch {
			case !slices.Contains(c.forms, f):
				assert.ErrorIs(t, err, ErrForm, "%v mL %s", c.ml, f)
			case f == Dual && l.Columns != "dual":
				assert.ErrorIs(t, err, ErrForm, "a second column must have been computed")
			default:
				assert.NoError(t, err, "%v mL %s", c.ml, f)
			}
		}
	}
	eu, err := label.For(evaluated(t, market()).Food(market()), label.EU, label.Options{})
	require.NoError(t, err)
	assert.Equal(t, []Form{Vertical}, Forms(eu))
}

// TestTwoColumnsAreDrawnAsTheRuleHasThem: 21 CFR 101.9(e)(6): amounts and
// percentages per serving and per container, parted by upright rules, and the
// vitamins one under the other.
func TestTwoColumnsAreDrawnAsTheRuleHasThem(t *testing.T) {
	for _, c := range []struct {
		ml          float64
		left, right string
	}{{400, "Per serving", "Per container"}, {300, "Per 2/3 cup", "Per container"}} {
		l := labelOf(t, c.ml, label.Options{SecondColumn: true})
		p := usDualPanel(l, usDualWidth)
		where := map[string]words{}
		for _, m := range p.marks {
			if w, ok := m.(words); ok {
				where[w.text] = w
			}
		}
		require.Contains(t, where, c.left)
		require.Contains(t, where, c.right)
		assert.Less(t, where[c.left].x, where[c.right].x)
		assert.Equal(t, where[c.left].y, where[c.right].y)
		_, columns := columnsOf(l)
		assert.Less(t, columns[0][0].Amount, columns[1][0].Amount, "the container holds more")
		for _, lines := range columns {
			for _, n := range lines {
				text := strings.Replace(n.AmountText(), "less than ", "<", 1)
				if n.Incomplete {
					text += incompleteMark
				}
				assert.Contains(t, where, text, n.Name)
				if n.DVText != "" {
					assert.Contains(t, where, n.DVText, n.Name)
				}
			}
		}
		var vitamins []float64
		for _, name := range []string{"Vitamin D", "Calcium", "Iron", "Potassium"} {
			vitamins = append(vitamins, where[name].y)
		}
		assert.True(t, slices.IsSorted(vitamins) && vitamins[0] < vitamins[3], "one under the other")
		upright := 0
		for _, m := range p.marks {
			if s, ok := m.(shape); ok && len(s.rings[0]) == 4 {
				w, h := s.rings[0][1].x-s.rings[0][0].x, s.rings[0][2].y-s.rings[0][1].y
				if w < 0.2 && h > 10 && s.rings[0][0].x > 10 && s.rings[0][0].x < usDualWidth-10 {
					upright++
				}
			}
		}
		assert.Equal(t, 4, upright, "two rules, above the vitamins' bar and below")
		assert.Empty(t, collisions(p))
	}
}

func TestThePictureOfALabelIsTheFile(t *testing.T) {
	l := labelOf(t, 1000, label.Options{})
	path := filepath.Join(t.TempDir(), "label.png")
	for _, f := range Forms(l) {
		require.NoError(t, WriteLabel(path, l, f))
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		img, err := png.Decode(bytes.NewReader(data))
		require.NoError(t, err)
		pic, err := RenderLabel(l, f, labelDPI)
		require.NoError(t, err)
		assert.Equal(t, pic.Bounds(), img.Bounds())
		assert.InDelta(t, pic.WidthMM, float64(img.Bounds().Dx())/labelDPI*25.4, 0.1, "at true size")
		assert.InDelta(t, pic.HeightMM, float64(img.Bounds().Dy())/labelDPI*25.4, 0.1)
		assert.Less(t, pic.PanelWidthMM, pic.WidthMM)
	}
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
	d := market()
	l, err := label.For(evaluated(b, d).Food(d), label.US, label.Options{})
	require.NoError(b, err)
	for i := 0; i < b.N; i++ {
		if _, err := RenderLabel(l, "", 110); err != nil {
			b.Fatal(err)
		}
	}
}

func TestAPictureTooLargeIsRefusedWithTheFinenessThatFits(t *testing.T) {
	page := &draw.List{w: 210, h: 297}
	require.NoError(t, checkPixels([]*draw.List{page, page}, 300))
	require.ErrorContains(t, checkPixels([]*draw.List{page, page}, 600), "ask for 321 dots per inch")
	require.NoError(t, checkPixels([]*draw.List{page, page}, 321))
	require.Error(t, checkPixels([]*draw.List{page, page}, 322))
}

func stepsOf(d design.Design, r *model.Result) []say.Titled {
	p := process.Of(d, r, process.Default(), -18, nil)
	return say.Steps(printed, say.Making{Design: d, Result: r, Process: &p})
}
