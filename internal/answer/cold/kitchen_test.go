package cold

import (
	"testing"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a kitchen may say, and what can only be a slip: things that exist, and
// beside them what none does. Common practice, no source, but where one is
// named; a step further out than the last thing that exists is refused.
func TestAKitchenSaysWhatExistsAndNothingElse(t *testing.T) {
	for path, c := range map[string]struct {
		may, not []float64
		why      string
	}{
		"freezer.air_c":            {[]float64{-40, -18, -2}, []float64{-41, -1.9, 4}, "a blast freezer's air, and an ice compartment that hardly freezes"},
		"freezer.swing_k":          {[]float64{0, 10}, []float64{-0.5, 10.5}, "an old freezer between two turns of its motor"},
		"freezer.openings_per_day": {[]float64{0, 10, 50}, []float64{-1, 51}, "a freezer nobody opens, a stall on a hot day"},
		"counter.air_c":            {[]float64{5, 22, 45}, []float64{4.5, 46}, "a market hall in winter, a stall in a heat wave"},
		"refrigerator.air_c":       {[]float64{0.5, 4, 15}, []float64{0.4, 15.5}, "above freezing, and no warmer than a cellar"},
		"freezer.humidity_percent": {[]float64{0, 100}, []float64{-1, 101}, "a share"},
		"counter.coefficient":      {[]float64{0, 50, 200}, []float64{-1, 210}, "a blast cabinet has 25 to 50 W/(m² K) (from memory); stirred brine more"},
		"freezer.shelf_coefficient": {[]float64{0, 100, 500}, []float64{-1, 520},
			"cold metal shelves have 40 to 100 W/(m² K), plates pressed on 500 (from memory)"},
		"counter.factor":          {[]float64{0.2, 1, 5}, []float64{0.19, 5.2}, "beyond a fifth or five times the formula something else is wrong"},
		"package.wall_resistance": {[]float64{0, 0.3, 1}, []float64{-0.01, 1.05}, "30 mm of foam plastic, thickness over 0.03 W/(m K), is 1"},
		"package.lid_resistance":  {[]float64{0, 0.13, 3}, []float64{-0.1, 3.1}, "a lid with a hand's breadth of still air, 0.08/0.026, is 3"},
		"layer.depth_mm":          {[]float64{0, 5, 25, 200}, []float64{-1, 210}, "a sheet tray, a stock pot; 0 asks for the form's own"},
		"layer.start_c":           {[]float64{0, 4, 40}, []float64{-0.5, 41}, "a custard may go in warm, but not frozen"},
		"layer.stir_every_min":    {[]float64{0, 5, 30, 240}, []float64{-1, 245}, "beating every few minutes, or twice in an evening; 0 asks by the edge"},
		"layer.edge_ice_percent":  {[]float64{5, 40, 80}, []float64{4.5, 81}, "an edge from the first ice to as hard as it gets"},
		"layer.shelf_coefficient": {[]float64{0, 500}, []float64{-1, 520}, "as the freezer's shelf"},
		"layer.dish_cm2":          {[]float64{50, 500, 5000}, []float64{48, 5100}, "a cup's floor, a whole baker's sheet of 60 by 80 cm"},
		"stove.pan_mm":            {[]float64{80, 160, 500}, []float64{78, 510}, "an egg pan, a jam pan"},
		"stove.flame_w":           {[]float64{50, 600, 5000}, []float64{48, 5100}, "a spirit burner, a wok burner"},
		"stove.probe_boils_c":     {[]float64{0, 80, 97, 110}, []float64{-1, 111}, "water boils at 85 °C at 4500 m; a probe may be off by 10 K; 0: never checked"},
		"bowl.grams":              {[]float64{50, 600, 10000}, []float64{48, 10200}, "a plastic beaker, a planetary mixer's bowl of 60 L"},
		"bowl.whites_c":           {[]float64{0, 20, 45}, []float64{-0.5, 46}, "from the refrigerator's coldest shelf to hand-warm"},
		"freezer.litres":          {[]float64{10, 100, 2000}, []float64{9.5, 2050}, "a camping box, a walk-in cell"},
		"freezer.rated_kg":        {[]float64{0, 1, 4.5, 500}, []float64{-1, 510}, "a plate in a bar refrigerator, a blast freezer; 0: not known"},
		"freezer.free_shelf_cm2":  {[]float64{100, 1400, 50000}, []float64{95, 51000}, "one tub's room, a walk-in cell's racks"},
		"churn.bowl_ml":           {[]float64{0, 300, 1000, 20000}, []float64{-1, 20500}, "the smallest household bowl, a gelateria's; 0: no churn"},
		"cook.from_h":             {[]float64{0, 7, 23}, []float64{-1, 23.5}, "an hour of the day"},
		"cook.to_h":               {[]float64{1, 22.5, 30}, []float64{0.9, 30.1}, "over 24 is past midnight, until six in the morning"},
		"cook.wash_up_min":        {[]float64{0, 5, 60}, []float64{-1, 61}, "an hour is a spring clean"},
	} {
		var field *setting.Field[Profile]
		for i := range fields {
			if fields[i].Path == path {
				field = &fields[i]
			}
		}
		require.NotNil(t, field, path)
		check := func(v float64) string {
			p := Default()
			*field.Of(&p).(*float64) = v
			return flaw.Text(field.Check(&p))
		}
		for _, v := range c.may {
			assert.Empty(t, check(v), "%s may be %g: %s", path, v, c.why)
		}
		for _, v := range c.not {
			assert.NotEmpty(t, check(v), "%s cannot be %g: %s", path, v, c.why)
		}
	}
}

// Where 0 stands for something else, a slider begins at the least that exists.
func TestASliderBeginsAtTheLeastThatExists(t *testing.T) {
	for path, least := range map[string]float64{
		"layer.depth_mm":         5,   // a sheet tray
		"layer.stir_every_min":   5,   // beating all the time
		"stove.probe_boils_c":    80,  // at 4500 m, by a probe that reads 5 K low
		"freezer.rated_kg":       1,   // the plate of a bar refrigerator
		"churn.bowl_ml":          300, // a child's ice cream maker
		"package.lid_resistance": 0,
	} {
		for _, f := range fields {
			if f.Path == path {
				assert.InDelta(t, least, f.Least, 0.1*least, path)
			}
		}
	}
}

// A day of work ends after it begins, and within 24 hours.
func TestADayOfWorkIsADay(t *testing.T) {
	for hours, ok := range map[[2]float64]bool{{7, 22.5}: true, {7, 7.25}: true, {6, 30}: true, {5, 29.5}: false, {9, 9}: false, {9, 8}: false} {
		p := Default()
		p.Cook.FromHours, p.Cook.ToHours = hours[0], hours[1]
		assert.Equal(t, ok, p.Validate() == nil, "%v", hours)
	}
}

// The ordinary kitchen: EU and US rules ask −18 °C of a freezer and 4 °C or 40
// °F of a refrigerator; all else is what such things commonly are (common
// practice, no source), to a tenth.
func TestTheOrdinaryKitchenIsOrdinary(t *testing.T) {
	p := Default()
	assert.Equal(t, -18.0, p.Freezer.AirC)
	assert.InDelta(t, 4, p.Refrigerator.AirC, 0.45)
	for name, c := range map[string]struct{ got, usual float64 }{
		"a room, °C":                                      {p.Counter.AirC, 22},
		"its air, % humidity":                             {p.Counter.HumidityPercent, 50},
		"a refrigerator's air":                            {p.Refrigerator.HumidityPercent, 60},
		"half of what a thermostat lets pass, K":          {p.SwingK, 2},
		"a baking dish, filled an inch, mm":               {p.Layer.DepthMM, 25.4},
		"its floor, 20 by 25 cm":                          {p.Layer.DishCM2, 20 * 25},
		"beating each half hour":                          {p.Layer.StirEveryMinutes, 30},
		"its edge stiff, % ice":                           {p.Layer.EdgeIcePercent, 40},
		"from the refrigerator, °C":                       {p.Layer.StartC, 4},
		"a pan of 16 cm":                                  {p.Stove.PanMM, 160},
		"half of a small burner's 1.2 kW":                 {p.Stove.FlameW, 600},
		"a steel bowl of 4 L, g":                          {p.Bowl.Grams, 600},
		"whites warmed in the room, °C":                   {p.Bowl.WhitesC, 20},
		"a freezer under the counter, L":                  {p.FreezerL, 100},
		"a drawer of 35 by 40 cm":                         {p.FreeShelfCM2, 35 * 40},
		"up at seven":                                     {p.Cook.FromHours, 7},
		"its door opened at three meals and once between": {p.Openings, 3 + 1},
		"to bed before eleven":                            {p.Cook.ToHours, 22.5},
		"beaters washed in minutes":                       {p.Cook.WashUpMinutes, 5},
		"0.5 mm of board of 0.1 W/(m K)":                  {p.Package.WallM2KPerW, 0.0005 / 0.1},
		"5 mm of air, 0.023 W/(m K), radiating too":       {p.Package.LidM2KPerW, 0.0005/0.1 + 1/(0.023/0.005+4*0.9*5.67e-8*258*258*258)},
	} {
		assert.InEpsilon(t, c.usual, c.got, 0.1, name)
	}
	for name, factor := range map[string]float64{"freezer": p.Freezer.Factor, "counter": p.Counter.Factor, "refrigerator": p.Refrigerator.Factor} {
		assert.Equal(t, 1.0, factor, "the %s as computed", name)
	}
}

// From memory: a fan 15 to 25, a blast cabinet 25 to 50, a cold metal shelf 40 to
// 100 W/(m² K). Taken are the fan's middle, of the blast cabinet a household
// make's lower third, of the shelf what it has at least.
func TestTheKitchensWithoutAFileAreTheOnesTheyAreCalled(t *testing.T) {
	by := map[string]Profile{}
	for _, p := range BuiltIn() {
		by[p.Name] = p
	}
	home := by["Home freezer"]
	fan, shelf, chest, blast, stall := by["Fan freezer"], by["Metal shelf"], by["Chest on its cold floor"], by["Blast cabinet"], by["Summer stall"]
	assert.InDelta(t, (15+25)/2., fan.Freezer.CoefficientWPerM2K, 1)
	assert.InDelta(t, 40, shelf.Freezer.ShelfWPerM2K, 2)
	assert.InDelta(t, 40, chest.Freezer.ShelfWPerM2K, 2)
	assert.InDelta(t, 25+(50-25)/4., blast.Freezer.CoefficientWPerM2K, 2.5)
	assert.InDelta(t, (15+25)/2., stall.Counter.CoefficientWPerM2K, 1, "a breeze is a fan")
	assert.InDelta(t, -30, blast.Freezer.AirC, 1, "the trade's hardening rooms are at −30 °C (common practice)")
	assert.InDelta(t, -20, chest.Freezer.AirC, 0.5)
	assert.InDelta(t, 28, stall.Counter.AirC, 1, "a summer's day")
	assert.InDelta(t, 60, stall.Counter.HumidityPercent, 5)
	assert.True(t, chest.SwingK < home.SwingK && home.SwingK < fan.SwingK, "a chest keeps the steadiest, defrosting by fan swings")
	for name, k := range map[string]float64{"chest": chest.SwingK - 1, "fan": fan.SwingK - 3, "blast": blast.SwingK - 2} {
		assert.InDelta(t, 0, k, 0.1, name)
	}
}
