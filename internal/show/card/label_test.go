package card

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ripplewright/internal/show/draw/typeset"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
	"ripplewright/internal/work/design"
)

// TestThePanelKeepsTheLeastSizes: 21 CFR 101.9(d)(1)–(9), pt.
func TestThePanelKeepsTheLeastSizes(t *testing.T) {
	d := market.Hazelnut()
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
	for _, w := range usPanel(l, usWidth).Texts {
		seen[w.S] = true
		assert.GreaterOrEqual(t, w.Size/typeset.Point, max(6, least[w.S])-1e-9, w.S)
		if w.Face == draw.SansBold {
			assert.True(t, bold[w.S], "%q is bold", w.S)
		}
		assert.Equal(t, black, w.Colour)
	}
	for s := range least {
		assert.True(t, seen[s], "%q is on the panel", s)
	}
}

// TestTheLetterXIsTallEnough: Regulation (EU) No 1169/2011, Article 13(2),
// 1.2 mm.
func TestTheLetterXIsTallEnough(t *testing.T) {
	d := market.Hazelnut()
	r := evaluated(t, d)
	l, err := label.For(r.Food(d), label.EU, label.Options{})
	require.NoError(t, err)
	for _, s := range []*draw.List{panelOf(l, 80), statementOf(l, 80, typeset.Type(draw.Sans, 8, black))} {
		for _, w := range s.Texts {
			assert.GreaterOrEqual(t, w.Size*face.XHeight, 1.2, w.S)
		}
	}
}

func TestAllergensAreEmphasisedInTheList(t *testing.T) {
	d := market.Hazelnut()
	r := evaluated(t, d)
	l, err := label.For(r.Food(d), label.EU, label.Options{})
	require.NoError(t, err)
	strongWords := ""
	for _, w := range statementOf(l, 1000, typeset.Type(draw.Sans, 8, black)).Texts {
		if w.Face == draw.SansBold {
			strongWords += w.S + " "
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
	d := market.Hazelnut()
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

// labelOf is the US label of the market's food in a container of ml mL.
func labelOf(t *testing.T, ml float64, o label.Options) *label.Label {
	d := market.Hazelnut()
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
	eu, err := label.For(evaluated(t, market.Hazelnut()).Food(market.Hazelnut()), label.EU, label.Options{})
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
		where := map[string]draw.Point{}
		for _, w := range p.Texts {
			where[w.S] = w.At
		}
		require.Contains(t, where, c.left)
		require.Contains(t, where, c.right)
		assert.Less(t, where[c.left].X, where[c.right].X)
		assert.Equal(t, where[c.left].Y, where[c.right].Y)
		columns := l.PanelColumns()
		assert.Less(t, columns[0].Lines[0].Amount, columns[1].Lines[0].Amount, "the container holds more")
		for _, column := range columns {
			for _, n := range column.Lines {
				text := strings.Replace(n.AmountText(), "less than ", "<", 1)
				if n.Incomplete {
					text += label.IncompleteMark
				}
				assert.Contains(t, where, text, n.Name)
				if n.DVText != "" {
					assert.Contains(t, where, n.DVText, n.Name)
				}
			}
		}
		var vitamins []float64
		for _, name := range []string{"Vitamin D", "Calcium", "Iron", "Potassium"} {
			vitamins = append(vitamins, where[name].Y)
		}
		assert.True(t, slices.IsSorted(vitamins) && vitamins[0] < vitamins[3], "one under the other")
		upright := 0
		for _, m := range p.Marks {
			if ring := m.Points; m.Line.Width == 0 && len(ring) == 4 {
				w, h := ring[1].X-ring[0].X, ring[2].Y-ring[1].Y
				if w < 0.2 && h > 10 && ring[0].X > 10 && ring[0].X < usDualWidth-10 {
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
