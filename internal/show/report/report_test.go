package report

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

func evaluated(t *testing.T, d design.Design) model.Result {
	t.Helper()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return r
}

// objectOf returns v as another program reads it.
func objectOf(t *testing.T, v any) map[string]any {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, WriteJSON(&b, v, false))
	assert.Equal(t, 1, strings.Count(b.String(), "\n"), "one line")
	var out map[string]any
	require.NoError(t, json.Unmarshal(b.Bytes(), &out))
	return out
}

// at follows a path of keys such as "foam.syrup.mass_g".
func at(t *testing.T, o map[string]any, path string) any {
	t.Helper()
	var v any = o
	for _, key := range strings.Split(path, ".") {
		inner, ok := v.(map[string]any)
		require.True(t, ok, "%s: nothing holds %s", path, key)
		v, ok = inner[key]
		require.True(t, ok, "%s: there is no key %s", path, key)
	}
	return v
}

const (
	phaseKeys = "mass_g volume_ml density_g_per_ml overrun_percent water_percent total_solids_percent fat_percent " +
		"msnf_percent sugars_percent initial_freezing_point_c water_frozen_percent ice_mass_percent ice_volume_percent " +
		"hardness sweetness_sucrose_percent"
	syrupKeys = "solids_percent mass_g water_boiled_off_g boiling_point_c"
	blendKeys = "foam_volume_percent foam_mass_percent mass_g volume_ml tubs_filled sweetness_sucrose_percent hardness_contrast"
	foodKeys  = "energy_kcal fat_g saturated_fat_g trans_fat_g cholesterol_mg sodium_mg carbohydrate_g fibre_g sugars_g " +
		"added_sugars_g protein_g vitamin_d_ug calcium_mg iron_mg potassium_mg"
)

var wanted = map[string]string{
	"dense": phaseKeys, "foam": phaseKeys, "foam.syrup": syrupKeys, "blend": blendKeys,
	"nutrition.per_100_g": foodKeys, "nutrition.per_serving": foodKeys,
}

func TestEveryFigureOfAnOrdinaryDesignIsANumber(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	o := objectOf(t, Evaluate("quay.yaml", d, &r, nil))
	for where, keys := range wanted {
		for _, key := range strings.Fields(keys) {
			assert.IsType(t, 0.0, at(t, o, where+"."+key), "%s.%s", where, key)
		}
	}
	for _, where := range []string{"dense.texture", "foam.texture", "file", "name", "verdict.sentence"} {
		assert.IsType(t, "", at(t, o, where), where)
	}
	assert.Equal(t, []any{"egg", "milk"}, o["allergens"])
	require.NotEmpty(t, o["warnings"])
	for _, w := range o["warnings"].([]any) {
		for _, key := range []string{"code", "message", "where"} {
			assert.NotEmpty(t, w.(map[string]any)[key], key)
		}
	}
	assert.Len(t, o["lines"], 8)
}

func TestPercentagesAreOfAHundred(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	o := objectOf(t, Evaluate("quay.yaml", d, &r, nil))
	of := func(path string) float64 { t.Helper(); return at(t, o, path).(float64) }
	for _, p := range []string{"dense.", "foam.", "blend."} {
		assert.InDelta(t, 100, of(p+"water_percent")+of(p+"total_solids_percent"), 1e-9)
		var sugars float64
		for _, s := range at(t, o, p+"sugars_by_kind_percent").(map[string]any) {
			sugars += s.(float64)
		}
		assert.InDelta(t, of(p+"mono_disaccharides_percent"), sugars, 1e-9)
		assert.InDelta(t, of(p+"ice_mass_percent"), of(p+"water_frozen_percent")*of(p+"water_percent")/100, 1e-9)
		assert.InDelta(t, of(p+"density_g_per_ml"), of(p+"mass_g")/of(p+"volume_ml"), 1e-9)
		if p == "blend." {
			continue
		}
		for key, band := range at(t, o, p+"bands").(map[string]any) {
			assert.LessOrEqual(t, band.(map[string]any)["low"], of(p+key), p+key)
			assert.GreaterOrEqual(t, band.(map[string]any)["high"], of(p+key), p+key)
		}
	}
	assert.InDelta(t, 40, of("blend.foam_volume_percent"), 1e-9)
	for _, key := range []string{"ice_volume_percent", "fat_percent", "msnf_percent", "sugars_percent"} {
		d, f := of("dense."+key), of("foam."+key)
		assert.InDelta(t, (d+f)/2, of("blend."+key), math.Abs(d-f)/2, "the tub lies between its phases: %s", key)
	}
	assert.InDelta(t, of("dense.mass_g")+of("foam.mass_g"), of("blend.mass_g"), 1e-9)
}

func TestWhatIsNotThereIsNullAndNeverZero(t *testing.T) {
	for name, change := range map[string]func(*design.Design){
		"no foam":    func(d *design.Design) { d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil },
		"no custard": func(d *design.Design) { d.Dense.Lines = nil },
		"no syrup":   func(d *design.Design) { d.Foam.Syrup.Lines = nil },
		"nothing":    func(d *design.Design) { d.Dense.Lines, d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil, nil },
		"no water":   func(d *design.Design) { d.Dense.Lines = []design.Line{{Ingredient: "sugar", Grams: 9}} },
		"no grams":   func(d *design.Design) { d.Foam.Lines[0].Grams, d.Foam.Syrup.Lines = 0, nil },
		"all foam":   func(d *design.Design) { d.Blend.FoamVolumePercent = 100 },
		"as written": func(d *design.Design) { d.Batch.Basis = design.BasisAsWritten },
	} {
		t.Run(name, func(t *testing.T) {
			d := market.Honey()
			change(&d)
			r := evaluated(t, d)
			e := Evaluate("quay.yaml", d, &r, nil)
			o := objectOf(t, e) // would fail for NaN
			if name == "no foam" {
				assert.Nil(t, at(t, o, "foam.hardness"))
				assert.Nil(t, at(t, o, "foam.texture"))
				assert.Nil(t, at(t, o, "foam.syrup"))
				assert.Nil(t, at(t, o, "blend.hardness_contrast"))
				assert.Zero(t, at(t, o, "foam.mass_g"))
			}
			if name == "nothing" {
				assert.Nil(t, at(t, o, "nutrition.per_100_g.energy_kcal"))
				assert.Nil(t, at(t, o, "blend.foam_volume_percent"))
			}
			if name == "no water" {
				assert.Nil(t, at(t, o, "dense.initial_freezing_point_c"))
			}
			require.NoError(t, e.WriteText(&bytes.Buffer{}))
			ts, err := Temperatures(-30, 0, 0.5)
			require.NoError(t, err)
			objectOf(t, CurveOf("quay.yaml", d.Name, &r, ts))
		})
	}
}

func TestAnUnknownNutrientIsNullAndNamed(t *testing.T) {
	d := market.Honey()
	d.Dense.Lines = []design.Line{{Ingredient: "quay_syrup", Grams: 100}}
	d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil
	in, err := ingredient.FromPack("quay_syrup", "Syrup of the quay", ingredient.Pack{
		PerG: 100, Fat: ingredient.Known(0), Carbohydrate: ingredient.Known(70), Sugars: ingredient.Known(70),
		Protein: ingredient.Known(0), Salt: ingredient.Known(0), Fibre: ingredient.Known(0),
	})
	require.NoError(t, err)
	d.Own = []*ingredient.Ingredient{in}
	r := evaluated(t, d)
	o := objectOf(t, Evaluate("quay.yaml", d, &r, nil))
	assert.Nil(t, at(t, o, "nutrition.per_100_g.vitamin_d_ug"))
	found := false
	for _, g := range at(t, o, "nutrition.incomplete").([]any) {
		if gap := g.(map[string]any); gap["nutrient"] == "vitamin_d_ug" {
			found = true
			assert.Equal(t, []any{"quay_syrup"}, gap["ingredients"])
		}
	}
	assert.True(t, found)
}

func TestCurvesHoldBothEnds(t *testing.T) {
	for _, c := range []struct {
		from, to, step float64
		points         int
	}{{-30, 0, 0.5, 61}, {-20, -5, 0.1, 151}, {-13, -13, 1, 1}, {-24, -4, 0.01, 2001}} {
		ts, err := Temperatures(c.from, c.to, c.step)
		require.NoError(t, err)
		require.Len(t, ts, c.points)
		assert.Equal(t, c.from, ts[0])
		assert.Equal(t, c.to, ts[len(ts)-1])
	}
	ts, err := Temperatures(-10, -5, 2)
	require.NoError(t, err)
	assert.Equal(t, []float64{-10, -8, -6}, ts)
	nan := math.NaN()
	for _, c := range [][3]float64{{0, -30, 1}, {-30, 0, 0}, {-30, 0, -1}, {-99, 0, 1}, {-30, 99, 1}, {nan, 0, 1}, {-30, 0, nan}, {-30, 0, 1e-9}} {
		_, err := Temperatures(c[0], c[1], c[2])
		assert.Error(t, err, "%v", c)
	}
}

func TestCurvesMeetTheEvaluation(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	o := objectOf(t, Evaluate("quay.yaml", d, &r, nil))
	p := CurveOf("quay.yaml", d.Name, &r, []float64{d.Serving.TemperatureC}).Points[0]
	assert.InDelta(t, at(t, o, "dense.water_frozen_percent"), float64(p.Dense.WaterFrozenPercent), 1e-12)
	assert.InDelta(t, at(t, o, "foam.hardness"), float64(p.Foam.Hardness), 1e-12)
	assert.InDelta(t, at(t, o, "foam.ice_volume_percent"), float64(p.Foam.IceVolumePercent), 1e-12)
}

func TestRipplesReportTheirFigures(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	cut, err := ripple.Stir(tub.Ripple(d))
	require.NoError(t, err)
	raster, err := cut.Raster(context.Background(), 300, nil)
	require.NoError(t, err)
	answer := RippleOf("quay.yaml", d.Name, &r, cut, raster)
	o := objectOf(t, answer)
	assert.InDelta(t, 40, at(t, o, "foam_area_percent"), 0.1)
	for _, key := range []string{"mean_ribbon_mm", "p90_ribbon_mm", "interface_mm"} {
		assert.Positive(t, at(t, o, key), key)
	}
	assert.Contains(t, []any{"blended", "blush", "ribbon", "lump"}, at(t, o, "spoon"))
	require.NoError(t, answer.WriteText(&bytes.Buffer{}))
}

func TestLabelsReadAsText(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	for _, region := range []label.Region{label.US, label.EU} {
		l, err := label.For(r.Food(d), region, label.Options{})
		require.NoError(t, err)
		var b bytes.Buffer
		require.NoError(t, Label{Label: l, Every: true}.WriteText(&b))
		var short bytes.Buffer
		require.NoError(t, Label{Label: l}.WriteText(&short))
		for _, c := range l.Claims {
			assert.Contains(t, b.String(), "\n"+c.Claim+": ")
			if c.Met {
				assert.Contains(t, short.String(), "\n"+c.Claim+": met")
			}
		}
		assert.Less(t, short.Len(), b.Len())
		assert.Contains(t, short.String(), "--all lists them")
		for _, want := range []string{l.Lines[0].Text, l.IngredientsText, l.ProposedName, "local code and licensed practice decide"} {
			assert.Contains(t, b.String(), want)
		}
		assert.NotContains(t, b.String(), "<nil>")
		objectOf(t, l)
	}
}

func TestNumbersOfTextKeepTheirSign(t *testing.T) {
	for _, c := range []struct {
		n    Number
		want string
	}{{-13.04, "−13.0"}, {-0.04, "0.0"}, {0.06, "0.1"}, {unknown, "–"}, {Number(math.Inf(1)), "–"}} {
		assert.Equal(t, c.want, c.n.text(1))
	}
}
