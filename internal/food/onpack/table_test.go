package onpack_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/check"
	"ripplewright/internal/food/onpack"
)

// number is a number that the program wrote.
func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

func words(t *testing.T) onpack.Words {
	t.Helper()
	w, err := onpack.OpenWords(assets.LabelWords)
	require.NoError(t, err)
	return w
}

// Ten languages have every word of a label, and every allergen of Annex II, with
// its source; a word from memory says so and is ranked below those that were read.
func TestTenLanguagesAreComplete(t *testing.T) {
	w := words(t)
	annexII := []string{"gluten_cereals", "gluten_cereals:wheat", "gluten_cereals:rye", "gluten_cereals:barley", "gluten_cereals:oats", "crustaceans", "crustaceans:crab",
		"eggs", "fish", "fish:cod", "peanuts", "soybeans", "milk", "nuts:almond", "nuts:hazelnut", "nuts:walnut", "nuts:cashew", "nuts:pecan",
		"nuts:brazil_nut", "nuts:pistachio", "nuts:macadamia", "nuts:pine", "celery", "mustard", "sesame", "sulphites", "lupin", "molluscs"}
	for _, lang := range []string{"en", "de", "fr", "it", "es", "nl", "pl", "pt", "sv", "cs"} {
		assert.Contains(t, w.Languages(), lang)
		assert.Empty(t, w.Lacking(lang, annexII, true), lang)
		for _, term := range []string{"polyols", "starch", "fibre"} {
			_, ok := w.In(lang, term)
			assert.True(t, ok, "%s %s", lang, term)
		}
		for _, a := range annexII {
			food := onpack.Food{Name: "Honey ripple", Allergens: []string{a}, HoldsML: 100}
			for _, e := range onpack.Elements(food, onpack.Pack{Place: onpack.EU, Sale: onpack.Stall, Languages: []string{lang}, Tub: pint}, w) {
				if e.Key == onpack.Allergens {
					assert.NotContains(t, e.Text, ":", "%s: the word, not the code", lang)
					assert.NotContains(t, e.Text, "_", lang)
				}
			}
		}
	}
	assert.Equal(t, onpack.FromMemory, w["de"]["contains"].Class())
	assert.Equal(t, onpack.LawRead, w["de"]["ingredients"].Class())
	assert.Contains(t, w.Lacking("sl", nil, true), "best before end", "what a language lacks is named")
}

func TestEveryNetQuantity(t *testing.T) {
	for _, r := range check.Table(t, "net_quantity") {
		ml := r.Num("volume_ml")
		place := onpack.Place(r.Text("region"))
		if r.Text("lang") == "de" {
			place = onpack.DE
		}
		sign, _ := words(t).In(r.Text("lang"), "decimal_sign")
		got := onpack.NetQuantity(place, ml, sign.Text)
		assert.Contains(t, append(strings.Split(r.Text("alt"), "|"), r.Text("text")), got, r.Text("id"))
		if r.Text("number_mm") != "" {
			assert.Equal(t, r.Num("number_mm"), onpack.FigureMM(ml), r.Text("id"))
		}
	}
}

// No declared quantity is more than the tub holds, in either unit.
func TestNoQuantityOverstates(t *testing.T) {
	for ml := 30.0; ml < 6000; ml += 0.7 {
		text := onpack.NetQuantity(onpack.US, ml, ".")
		customary, metric, ok := strings.Cut(strings.TrimSuffix(text, ")"), " (")
		require.True(t, ok, text)
		told := 0.0
		parts := strings.Fields(customary)
		for i := 0; i < len(parts); {
			n := number(t, parts[i])
			switch parts[i+1] {
			case "GALLON", "GALLONS":
				told, i = told+n*4*onpack.QuartML, i+2
			case "QUART", "QUARTS":
				told, i = told+n*onpack.QuartML, i+2
			case "PINT", "PINTS":
				told, i = told+n*onpack.PintML, i+2
			case "FL":
				told, i = told+n*onpack.FluidOunceML, i+3
			default:
				t.Fatal(text)
			}
		}
		m := strings.Fields(metric)
		v := number(t, m[0])
		if m[1] == "L" {
			v *= 1000
		}
		// Half a millilitre is what a customary size is told by.
		assert.LessOrEqual(t, told, ml+0.502, "%g: %s", ml, text)
		assert.Greater(t, told, ml-0.1*onpack.FluidOunceML-0.502, "%g: %s", ml, text)
		assert.LessOrEqual(t, v, ml+0.502, "%g: %s", ml, text)
	}
}

func TestEveryTolerableError(t *testing.T) {
	for _, r := range check.Table(t, "nominal_quantity") {
		ml := r.Num("nominal")
		tolerable, never := onpack.TolerableErrorML(ml)
		assert.InDelta(t, r.Num("tne"), tolerable, 1e-9, "%g", ml)
		assert.InDelta(t, r.Num("tne2"), never, 1e-9, "%g", ml)
		assert.Equal(t, r.Num("number_mm"), onpack.FigureMM(ml), "%g", ml)
	}
}

func TestEverySurfaceOfATub(t *testing.T) {
	for _, r := range check.Table(t, "tub_panels") {
		tub := onpack.Tub{TopMM: r.Num("top_mm"), BottomMM: r.Num("bottom_mm"), HeightMM: r.Num("height_mm")}
		r.Printed(tub.SlantMM(), "slant_mm")
		r.Printed(tub.WallMM2(), "wall_mm2")
		r.Printed(tub.LidMM2(), "lid_mm2")
		r.Printed(tub.PanelIn2(), "pdp_in2")
		r.Printed(tub.LidIn2(), "lid_in2")
		r.Printed(onpack.USFigureMM(tub.PanelIn2()), "number_mm")
		r.Printed(onpack.USFigureMM(tub.LidIn2()), "lid_number_mm")
		r.Printed(tub.XHeightMM(), "eu_x_mm")
		assert.Equal(t, r.Text("eu_small") == "under25", tub.NoPanel() && !tub.FewWords(), r.Text("tub"))
		assert.Equal(t, r.Text("eu_small") == "under10", tub.FewWords(), r.Text("tub"))
		inner, outer, degrees := tub.Sector()
		if r.Text("sector_deg") == "" {
			assert.True(t, math.IsNaN(degrees), r.Text("tub"))
			continue
		}
		r.Printed(inner, "sector_inner_mm")
		r.Printed(outer, "sector_outer_mm")
		r.Printed(degrees, "sector_deg")
		area := math.Pi * (outer*outer - inner*inner) * degrees / 360
		assert.InEpsilon(t, tub.WallMM2(), area, 1e-9, "%s: the sector rolled out is the wall", r.Text("tub"))
	}
}

func TestEveryHeightOfAUSQuantity(t *testing.T) {
	for _, r := range check.Table(t, "us_net_type") {
		r.Printed(onpack.USFigureMM(r.Num("pdp_in2")), "number_mm")
	}
}

func TestEveryBestBefore(t *testing.T) {
	w := words(t)
	for _, r := range check.Table(t, "best_before") {
		made, err := time.Parse(time.DateOnly, r.Text("made_on"))
		require.NoError(t, err)
		d, err := onpack.ParseDurability(r.Text("durability"))
		require.NoError(t, err)
		b := onpack.BestBeforeOf(made, d)
		name := r.Text("made_on") + " " + r.Text("durability")
		assert.Equal(t, r.Text("date"), b.Last.Format(time.DateOnly), name)
		assert.Equal(t, r.Text("short"), b.Least, name)
		for _, lang := range []string{"en", "de"} {
			day, _ := w.In(lang, "best_before_day")
			end, _ := w.In(lang, "best_before_end")
			assert.Equal(t, r.Text("day_text_"+lang), b.Text(onpack.ByDay, day.Text, end.Text), name)
			assert.Equal(t, r.Text("month_text_"+lang), b.Text(onpack.ByMonth, day.Text, end.Text), name)
		}
		assert.Equal(t, r.Text("year_text_en"), b.Text(onpack.ByYear, "Best before", "Best before end"), name)
	}
}

// Made 14 July 2026 is the 195th day of its year: the calendar.
func TestALotIsTheDayOfItsYear(t *testing.T) {
	assert.Equal(t, "L26195", onpack.LotOf(time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC)))
	assert.Equal(t, "L28366", onpack.LotOf(time.Date(2028, 12, 31, 0, 0, 0, 0, time.UTC)))
}

func TestADurabilityIsDaysOrMonths(t *testing.T) {
	for _, s := range []string{"90d", "6m", "1d", "36m", "1100d"} {
		d, err := onpack.ParseDurability(s)
		require.NoError(t, err, s)
		assert.Equal(t, s, d.String())
	}
	for _, s := range []string{"", "d", "0d", "-3m", "6", "6 months", "37m", "1101d", "6mm", "6dm", "1e2d", "6.5m"} {
		_, err := onpack.ParseDurability(s)
		assert.Error(t, err, s)
	}
}

func TestEveryColourOfTheFrontOfPack(t *testing.T) {
	for _, r := range check.Table(t, "front_of_pack_uk") {
		f, ok := onpack.Front(r.Text("nutrient"), r.Num("per_100g"), r.Num("portion_g"))
		require.True(t, ok)
		name := r.Text("nutrient") + " " + r.Text("per_100g") + " of " + r.Text("portion_g")
		assert.Equal(t, r.Text("colour"), string(f.Colour), name)
		r.Printed(f.PortionG, "portion_amount")
		assert.Equal(t, r.Text("ri_percent"), strconv.Itoa(f.RIPercent), name)
	}
	_, ok := onpack.Front("fibre", 1, 100)
	assert.False(t, ok)
}

func TestEveryCheckDigit(t *testing.T) {
	for _, r := range check.Table(t, "ean13") {
		got, err := onpack.CheckDigit(r.Text("twelve"))
		require.NoError(t, err)
		assert.Equal(t, r.Text("check"), strconv.Itoa(got))
		require.NoError(t, onpack.CheckArticle(r.Text("ean13")))
		for i := range r.Text("ean13") { // one wrong digit never passes
			wrong := []byte(r.Text("ean13"))
			wrong[i] = '0' + (wrong[i]-'0'+1)%10
			assert.Error(t, onpack.CheckArticle(string(wrong)), string(wrong))
		}
	}
	for _, s := range []string{"", "20000000000", "20000000000x", "12345678901234"} {
		assert.Error(t, onpack.CheckArticle(s), s)
	}
}

func TestEverySheet(t *testing.T) {
	for _, r := range check.Table(t, "label_sheets") {
		s := onpack.Sheet{WidthMM: r.Num("sheet_w"), HeightMM: r.Num("sheet_h"), MarginMM: r.Num("margin"),
			GapMM: r.Num("gap"), LabelWidthMM: r.Num("label_w"), LabelHeightMM: r.Num("label_h")}
		columns, rows, x0, y0 := s.Grid()
		name := r.Text("sheet") + " " + r.Text("label_w") + " × " + r.Text("label_h")
		assert.Equal(t, r.Text("cols"), strconv.Itoa(columns), name)
		assert.Equal(t, r.Text("rows"), strconv.Itoa(rows), name)
		if r.Text("x0") == "" {
			assert.Zero(t, columns*rows, name)
			continue
		}
		r.Printed(x0, "x0")
		r.Printed(y0, "y0")
		assert.Equal(t, onpack.PaperMM[strings.ToLower(r.Text("sheet"))], [2]float64{s.WidthMM, s.HeightMM}, name)
		each := columns * rows
		for i := range 3 * each { // every label is on its paper and covers no other
			page, x, y := s.Place(i, 1)
			assert.Equal(t, (i+1)/each, page, name)
			assert.GreaterOrEqual(t, x, s.MarginMM-1e-9)
			assert.LessOrEqual(t, x+s.LabelWidthMM, s.WidthMM-s.MarginMM+1e-9, name)
			assert.LessOrEqual(t, y+s.LabelHeightMM, s.HeightMM-s.MarginMM+1e-9, name)
		}
	}
}

// Read back by the widths of its bars, as a till would, a number is itself: the
// digits of each half by the sets of seven modules of ISO/IEC 15420 (from memory).
func TestTheBarsReadBackAsTheirNumber(t *testing.T) {
	left := map[string]string{}
	for i, s := range []string{"3211", "2221", "2122", "1411", "1132", "1231", "1114", "1312", "1213", "3112"} { // widths, from memory
		left[s] = strconv.Itoa(i)
		b := []byte(s)
		slices.Reverse(b)
		left[string(b)+"G"] = strconv.Itoa(i)
	}
	first := map[string]string{"LLLLLL": "0", "LLGLGG": "1", "LLGGLG": "2", "LLGGGL": "3", "LGLLGG": "4", "LGGLLG": "5", "LGGGLL": "6", "LGLGLG": "7", "LGLGGL": "8", "LGGLGL": "9"}
	for _, r := range check.Table(t, "ean13") {
		number := r.Text("ean13")
		bars, err := onpack.Bars(number)
		require.NoError(t, err)
		require.Len(t, bars, 95)
		assert.Equal(t, "101", bars[:3])
		assert.Equal(t, "01010", bars[45:50])
		assert.Equal(t, "101", bars[92:])
		widths := func(s string) string {
			out, run := "", 1
			for i := 1; i <= len(s); i++ {
				if i < len(s) && s[i] == s[i-1] {
					run++
					continue
				}
				out, run = out+strconv.Itoa(run), 1
			}
			return out
		}
		got, sides := "", ""
		for i := range 6 {
			seven := bars[3+7*i : 10+7*i]
			w := widths(seven)
			if strings.Count(seven, "1")%2 == 0 { // the even set
				got, sides = got+left[w+"G"], sides+"G"
			} else {
				got, sides = got+left[w], sides+"L"
			}
		}
		for i := range 6 {
			got += left[widths(bars[50+7*i:57+7*i])]
		}
		assert.Equal(t, number, first[sides]+got)
	}
}
