package onpack_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/onpack"
)

// rows are those of a table as maps by the names of its columns.
func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../../testdata/tables/" + name + ".csv")
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(all), 1)
	var out []map[string]string
	for _, row := range all[1:] {
		m := map[string]string{}
		for i, h := range all[0] {
			m[h] = row[i]
		}
		out = append(out, m)
	}
	return out
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// half is half a unit of the last digit that a table prints.
func half(s string) float64 {
	_, decimals, _ := strings.Cut(s, ".")
	return 0.5*math.Pow(10, -float64(len(decimals))) + 1e-9
}

func words(t *testing.T) onpack.Words {
	t.Helper()
	f, err := os.Open("../../../assets/label/words.csv")
	require.NoError(t, err)
	defer f.Close()
	w, err := onpack.ReadWords(f)
	require.NoError(t, err)
	return w
}

func TestEveryNetQuantity(t *testing.T) {
	for _, r := range rows(t, "net_quantity") {
		ml := number(t, r["volume_ml"])
		place := onpack.Place(r["region"])
		if r["lang"] == "de" {
			place = onpack.DE
		}
		sign, _ := words(t).In(r["lang"], "decimal_sign")
		got := onpack.NetQuantity(place, ml, sign.Text)
		assert.Contains(t, append(strings.Split(r["alt"], "|"), r["text"]), got, r["id"])
		if r["number_mm"] != "" {
			assert.Equal(t, number(t, r["number_mm"]), onpack.FigureMM(ml), r["id"])
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
	for _, r := range rows(t, "nominal_quantity") {
		ml := number(t, r["nominal"])
		tolerable, never := onpack.TolerableErrorML(ml)
		assert.InDelta(t, number(t, r["tne"]), tolerable, 1e-9, "%g", ml)
		assert.InDelta(t, number(t, r["tne2"]), never, 1e-9, "%g", ml)
		assert.Equal(t, number(t, r["number_mm"]), onpack.FigureMM(ml), "%g", ml)
	}
}

func TestEverySurfaceOfATub(t *testing.T) {
	for _, r := range rows(t, "tub_panels") {
		tub := onpack.Tub{TopMM: number(t, r["top_mm"]), BottomMM: number(t, r["bottom_mm"]), HeightMM: number(t, r["height_mm"])}
		printed := func(column string, got float64) {
			assert.InDelta(t, number(t, r[column]), got, half(r[column]), "%s: %s", r["tub"], column)
		}
		printed("slant_mm", tub.SlantMM())
		printed("wall_mm2", tub.WallMM2())
		printed("lid_mm2", tub.LidMM2())
		printed("pdp_in2", tub.PanelIn2())
		printed("lid_in2", tub.LidIn2())
		printed("number_mm", onpack.USFigureMM(tub.PanelIn2()))
		printed("lid_number_mm", onpack.USFigureMM(tub.LidIn2()))
		printed("eu_x_mm", tub.XHeightMM())
		assert.Equal(t, r["eu_small"] == "under25", tub.NoPanel() && !tub.FewWords(), r["tub"])
		assert.Equal(t, r["eu_small"] == "under10", tub.FewWords(), r["tub"])
		inner, outer, degrees := tub.Sector()
		if r["sector_deg"] == "" {
			assert.True(t, math.IsNaN(degrees), r["tub"])
			continue
		}
		printed("sector_inner_mm", inner)
		printed("sector_outer_mm", outer)
		printed("sector_deg", degrees)
		area := math.Pi * (outer*outer - inner*inner) * degrees / 360
		assert.InEpsilon(t, tub.WallMM2(), area, 1e-9, "%s: the sector rolled out is the wall", r["tub"])
	}
}

func TestEveryHeightOfAUSQuantity(t *testing.T) {
	for _, r := range rows(t, "us_net_type") {
		assert.InDelta(t, number(t, r["number_mm"]), onpack.USFigureMM(number(t, r["pdp_in2"])), half(r["number_mm"]), r["pdp_in2"])
	}
}

func TestEveryBestBefore(t *testing.T) {
	w := words(t)
	for _, r := range rows(t, "best_before") {
		made, err := time.Parse(time.DateOnly, r["made_on"])
		require.NoError(t, err)
		d, err := onpack.ParseDurability(r["durability"])
		require.NoError(t, err)
		b := onpack.BestBeforeOf(made, d)
		name := r["made_on"] + " " + r["durability"]
		assert.Equal(t, r["date"], b.Last.Format(time.DateOnly), name)
		assert.Equal(t, r["short"], b.Least, name)
		for _, lang := range []string{"en", "de"} {
			day, _ := w.In(lang, "best_before_day")
			end, _ := w.In(lang, "best_before_end")
			assert.Equal(t, r["day_text_"+lang], b.Text(onpack.ByDay, day.Text, end.Text), name)
			assert.Equal(t, r["month_text_"+lang], b.Text(onpack.ByMonth, day.Text, end.Text), name)
		}
		assert.Equal(t, r["year_text_en"], b.Text(onpack.ByYear, "Best before", "Best before end"), name)
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
	for _, r := range rows(t, "front_of_pack_uk") {
		f, ok := onpack.Front(r["nutrient"], number(t, r["per_100g"]), number(t, r["portion_g"]))
		require.True(t, ok)
		name := r["nutrient"] + " " + r["per_100g"] + " of " + r["portion_g"]
		assert.Equal(t, r["colour"], string(f.Colour), name)
		assert.InDelta(t, number(t, r["portion_amount"]), f.PortionG, half(r["portion_amount"]), name)
		assert.Equal(t, r["ri_percent"], strconv.Itoa(f.RIPercent), name)
	}
	_, ok := onpack.Front("fibre", 1, 100)
	assert.False(t, ok)
}

func TestEveryCheckDigit(t *testing.T) {
	for _, r := range rows(t, "ean13") {
		got, err := onpack.CheckDigit(r["twelve"])
		require.NoError(t, err)
		assert.Equal(t, r["check"], strconv.Itoa(got))
		require.NoError(t, onpack.CheckArticle(r["ean13"]))
		for i := range r["ean13"] { // one wrong digit never passes
			wrong := []byte(r["ean13"])
			wrong[i] = '0' + (wrong[i]-'0'+1)%10
			assert.Error(t, onpack.CheckArticle(string(wrong)), string(wrong))
		}
	}
	for _, s := range []string{"", "20000000000", "20000000000x", "12345678901234"} {
		assert.Error(t, onpack.CheckArticle(s), s)
	}
}

func TestEverySheet(t *testing.T) {
	for _, r := range rows(t, "label_sheets") {
		s := onpack.Sheet{WidthMM: number(t, r["sheet_w"]), HeightMM: number(t, r["sheet_h"]), MarginMM: number(t, r["margin"]),
			GapMM: number(t, r["gap"]), LabelWidthMM: number(t, r["label_w"]), LabelHeightMM: number(t, r["label_h"])}
		columns, rows, x0, y0 := s.Grid()
		name := r["sheet"] + " " + r["label_w"] + " × " + r["label_h"]
		assert.Equal(t, r["cols"], strconv.Itoa(columns), name)
		assert.Equal(t, r["rows"], strconv.Itoa(rows), name)
		if r["x0"] == "" {
			assert.Zero(t, columns*rows, name)
			continue
		}
		assert.InDelta(t, number(t, r["x0"]), x0, half(r["x0"]), name)
		assert.InDelta(t, number(t, r["y0"]), y0, half(r["y0"]), name)
		assert.Equal(t, onpack.PaperMM[strings.ToLower(r["sheet"])], [2]float64{s.WidthMM, s.HeightMM}, name)
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
