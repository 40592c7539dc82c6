package coldview_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

var (
	metric     = say.Style{}
	fahrenheit = say.Style{Scale: say.Fahrenheit}
)

func evaluated(t *testing.T, d design.Design) *model.Result {
	t.Helper()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return &r
}

// planned is the answer for d in the kitchen k, with its pictures.
func planned(t *testing.T, d design.Design, k cold.Profile) (*cold.Answer, *model.Result) {
	t.Helper()
	r := evaluated(t, d)
	a, err := cold.Plan(context.Background(), d, r, k, cold.Options{})
	require.NoError(t, err)
	return &a, r
}

// tables are all rows that the questions have of a.
func tables(s say.Style, a *cold.Answer) []say.TableRow {
	return slices.Concat(
		coldview.FreezingRows(s, &a.StillFreeze.Dense), coldview.FreezingRows(s, &a.StillFreeze.Foam), coldview.StirRows(s, &a.StillFreeze.Dense),
		coldview.HardenRows(s, &a.Harden), coldview.SofteningRows(s, &a.Counter, -13), coldview.SofteningRows(s, &a.Fridge, -20),
		coldview.BandRows(s, &a.Counter), coldview.InsideRows(s, &a.Fridge), coldview.StoredRows(s, &a.Storage), coldview.AgeingRows(s, &a.Storage),
		coldview.ChangeRows(s, cold.ScoopedWell, a, a), coldview.ChangeRows(s, cold.CoreAt, a, a))
}

// Odd kitchens and tubs, in which much is never reached, have words for it.
func TestNoQuestionIsAnsweredWithANumberThatIsNone(t *testing.T) {
	for name, change := range map[string]func(d *design.Design, k *cold.Profile){
		"as it is":        func(*design.Design, *cold.Profile) {},
		"custard only":    func(d *design.Design, _ *cold.Profile) { d.Blend.FoamVolumePercent = 0 },
		"foam only":       func(d *design.Design, _ *cold.Profile) { d.Blend.FoamVolumePercent = 100 },
		"warm freezer":    func(_ *design.Design, k *cold.Profile) { k.Freezer.AirC = -4 },
		"steady":          func(_ *design.Design, k *cold.Profile) { k.SwingK = 0 },
		"nothing freezes": func(d *design.Design, _ *cold.Profile) { d.Dense.Lines[3].Grams = 900 },
		"butter": func(d *design.Design, _ *cold.Profile) {
			d.Dense.Lines[1] = design.Line{Ingredient: "butter_unsalted", Grams: 700}
		},
	} {
		d, k := market.Honey(), cold.Default()
		change(&d, &k)
		a, r := planned(t, d, k)
		for _, s := range []say.Style{metric, fahrenheit} {
			for _, q := range coldview.Questions() {
				b := q.Brief(s, a)
				assert.NotEmpty(t, b.Answer, "%s: %s", name, q.Title())
				for _, text := range append(q.LawEnds(s, a), b.Answer, b.More) {
					assert.NotRegexp(t, `NaN|Inf|°C`, strings.ReplaceAll(text, metric.Degree(), map[bool]string{true: "°C", false: ""}[s == fahrenheit]), "%s: %s", name, q.Title())
				}
				if scene := q.Scene(a, r); scene.Plot != nil {
					for _, b := range scene.Plot(coldview.Inks{Reads: s}).Bands {
						assert.LessOrEqual(t, b.Y0, b.Y1, "%s: %s, %s", name, q.Title(), b.Label)
					}
				}
			}
			for _, row := range tables(s, a) {
				assert.NotEmpty(t, row.Name)
				assert.NotRegexp(t, `NaN|Inf`, row.Name+strings.Join(row.Cells, " "), "%s: %s", name, row.Name)
				if s == fahrenheit {
					assert.NotContains(t, row.Name+row.Unit+strings.Join(row.Cells, " "), "°C", name)
				}
			}
		}
	}
}

func TestARowOfTimesHasOneUnit(t *testing.T) {
	cells := func(minutes cold.Range) []string {
		h := cold.Harden{MoveHours: cold.Range{Value: minutes.Value / 60, Low: minutes.Low / 60, High: minutes.High / 60}}
		return coldview.HardenRows(metric, &h)[0].Cells
	}
	assert.Equal(t, []string{"96 min", "76 min", "99 min"}, cells(cold.Range{Value: 96, Low: 76, High: 99}))
	assert.Equal(t, []string{"1.6 h", "1.3 h", "2.2 h"}, cells(cold.Range{Value: 96, Low: 76, High: 132}))
	assert.Equal(t, []string{"3.0 h", "2.5 h", "not reached"}, cells(cold.Range{Value: 180, Low: 150, High: math.NaN()}))
	assert.Equal(t, []string{"at once", "at once", "at once"}, cells(cold.Range{}))
}

func TestTheTablesAreTheAnswers(t *testing.T) {
	a, _ := planned(t, market.Honey(), cold.Default())
	c := &a.StillFreeze.Dense
	rows := coldview.StirRows(metric, c)
	require.Len(t, rows, len(c.Stirs))
	for i, s := range c.Stirs {
		assert.Equal(t, say.TableRow{Name: metric.Duration(s.AtMinutes), Cells: []string{metric.Number(s.MeanC, 1), metric.Number(s.EdgeC, 1), metric.Number(s.WaterFrozenPercent, 0)}}, rows[i])
	}
	in := coldview.InsideRows(fahrenheit, &a.Counter)[0].Cells
	m := a.Counter.Run.At(a.Counter.FromMinutes.Value)
	assert.Equal(t, []string{metric.Number(1.8*m.RingC+32, 1), metric.Number(1.8*m.CoreC+32, 1)}, in)
	colder := coldview.SofteningRows(metric, &a.Counter, a.Counter.StartC-1)
	assert.Contains(t, colder[len(colder)-1].Name, "the freezer is warmer")

	many := cold.Cooling{Stirs: make([]cold.Stir, 40)}
	assert.Len(t, coldview.StirRows(metric, &many), 12, "a custard that never gets stiff is stirred for days")
	assert.Empty(t, coldview.FreezingRows(metric, &cold.Cooling{}), "what the tub lacks takes no time")
}

func TestEachNoteIsToldOnceAtMostAndWhereItBelongs(t *testing.T) {
	a := &cold.Answer{Notes: []model.Warning{{Where: "tubs"}, {Where: "storage", Code: "water_drawn_in_storage"}, {Where: "storage", Code: "swing_thaws_phase"}, {Where: "still_freeze"}}}
	count := func(q coldview.Question) int { return len(q.Notes(a)) }
	assert.Equal(t, []int{1, 0, 1, 1, 1, 1}, []int{count(coldview.Custard), count(coldview.Foam), count(coldview.Harden), count(coldview.Counter), count(coldview.Fridge), count(coldview.Storage)})
}

func TestAPictureNeverMixesBeforeAndAfterAStir(t *testing.T) {
	r := &cold.Run{Outward: 2, Upward: 2, Frames: []cold.Frame{
		{AtMinutes: 0, C: []float64{0, 0, 0, 0}}, {AtMinutes: 10, C: []float64{-2, -8, -2, -8}}, {AtMinutes: 20, C: []float64{-6, -6, -6, -6}}}}
	stirs := []cold.Stir{{AtMinutes: 10}}
	at := func(minute float64) float64 { return coldview.Section(r, stirs, minute, nil)[1][1] }
	assert.InDelta(t, -2.5, at(5), 1e-9)
	assert.InDelta(t, -5, at(10), 1e-9, "the picture at the stir is the one before it")
	assert.Equal(t, -6.0, at(10.5))
	assert.Equal(t, -6.0, at(25), "after the last picture")
	// The axis is level, the wall goes on by line.
	rows := coldview.Section(r, nil, 10, nil)
	assert.Equal(t, -2.0, rows[1][0])
	assert.Equal(t, -11.0, rows[1][2])
	again := coldview.Section(r, nil, 0, rows)
	assert.Same(t, &rows[0][0], &again[0][0], "no new rows for each frame")
}

func TestIsothermsAreFewRoundAndNoneInAnEvenTub(t *testing.T) {
	levels := coldview.Isotherms(metric, [][]float64{{-18, -12}, {-9, -4}})
	assert.NotEmpty(t, levels)
	assert.LessOrEqual(t, len(levels), 10)
	for _, l := range levels {
		assert.True(t, l >= -18 && l <= -4)
		assert.InDelta(t, math.Round(l*2), l*2, 1e-9)
	}
	for _, l := range coldview.Isotherms(say.Customary, [][]float64{{-18, -12}, {-9, -4}}) {
		assert.InDelta(t, math.Round((1.8*l+32)/5)*5, 1.8*l+32, 1e-9, "as a maker reads it who has °F")
	}
	even := coldview.Isotherms(metric, [][]float64{{-18, -17.9}})
	assert.Empty(t, even)
	assert.NotNil(t, even, "nil would draw those of the colours")
}

func TestASceneBeginsWhereItMattersAndPlaysToItsEnd(t *testing.T) {
	r := &cold.Run{Outward: 1, Upward: 1, Track: []cold.Moment{{}, {AtMinutes: 240}}, Frames: []cold.Frame{{C: []float64{-18.4}}, {AtMinutes: 240, C: []float64{2.3}}}}
	assert.Equal(t, 36., coldview.Scene{Run: r, Start: 36.3}.First())
	assert.Equal(t, 120., coldview.Scene{Run: r, Start: math.NaN()}.First(), "the middle where it is not known")
	assert.Equal(t, 240., coldview.Scene{Run: r, Start: 999}.First())
	lo, hi := coldview.Colours(r, 0)
	assert.Equal(t, []float64{-19, 0}, []float64{lo, hi}, "what is warmer than 0 runs")
	minute, steps, ends := 0.0, 0, false
	for ; !ends; steps++ {
		minute, ends = coldview.Scene{Run: r}.Next(minute)
	}
	assert.Equal(t, 240., minute)
	assert.Equal(t, 160, steps, "8 s of 50 ms")
	unit, title := coldview.TimeAxis(r)
	assert.Equal(t, 60., unit)
	assert.Equal(t, "hours", title)
	plot := coldview.Scene{Run: r}.At(chart.Plot{}, 90)
	assert.Equal(t, 1.5, plot.Rules[0].At)
	assert.False(t, coldview.Pictured(&cold.Run{}))
	assert.False(t, coldview.Pictured(nil))
}

// What nobody knows is not drawn, and said: a band ends where the hardness law
// does, and butter has none.
func TestNoBandGoesBeyondTheHardnessLaw(t *testing.T) {
	a, r := planned(t, market.Honey(), cold.Default())
	cut := *a
	cut.Counter.Dense.LawFromC = cut.Counter.Dense.FromC + 2
	band := func(a *cold.Answer, label string) (chart.Patch, bool) {
		bands := coldview.Counter.Scene(a, r).Plot(coldview.Inks{}).Bands
		i := slices.IndexFunc(bands, func(b chart.Patch) bool { return b.Label == label })
		if i < 0 {
			return chart.Patch{}, false
		}
		return bands[i], true
	}
	whole, ok := band(a, "custard scoops")
	require.True(t, ok)
	assert.Equal(t, a.Counter.Dense.FromC, whole.Y0)
	assert.Empty(t, coldview.Counter.LawEnds(metric, a))
	short, ok := band(&cut, "custard scoops")
	require.True(t, ok)
	assert.Equal(t, a.Counter.Dense.FromC+2, short.Y0)
	require.Len(t, coldview.Counter.LawEnds(metric, &cut), 1)
	assert.Contains(t, coldview.Counter.LawEnds(metric, &cut)[0], "nobody knows how hard the custard is")

	assert.Empty(t, coldview.BandRows(metric, &cut.Counter)[0].Cells[0], "where it begins to scoop is not known then")
	assert.NotEmpty(t, coldview.BandRows(metric, &a.Counter)[2].Cells[0])

	d := market.Honey()
	d.Dense.Lines = []design.Line{{Ingredient: "butter_unsalted", Grams: 500}}
	butter, r2 := planned(t, d, cold.Default())
	r = r2
	_, ok = band(butter, "custard scoops")
	assert.False(t, ok)
	assert.Empty(t, coldview.Counter.Scene(butter, r).Plot(coldview.Inks{}).Rules, "nor where it melts")
	assert.Equal(t, []string{"Nobody knows how hard the custard is, so it has no band."}, coldview.Counter.LawEnds(metric, butter))
	assert.Equal(t, "not known", coldview.Counter.Brief(metric, butter).Answer)
}

func TestEveryPlotIsInTheMakersScale(t *testing.T) {
	a, r := planned(t, market.Honey(), cold.Default())
	for _, q := range coldview.Questions() {
		if q == coldview.Ice { // see TestTheIceIsShownOverItsWeeks
			continue
		}
		c, f := q.Scene(a, r).Plot(coldview.Inks{}), q.Scene(a, r).Plot(coldview.Inks{Reads: fahrenheit})
		require.Len(t, f.Bands, len(c.Bands), q.Title())
		for i := range c.Bands {
			if q == coldview.Storage {
				assert.InDelta(t, 1.8*c.Bands[i].X0+32, f.Bands[i].X0, 1e-9)
			} else if !math.IsInf(c.Bands[i].Y0, 0) {
				assert.InDelta(t, 1.8*c.Bands[i].Y0+32, f.Bands[i].Y0, 1e-9, q.Title())
			}
		}
		for i := range c.Series {
			from, to := c.Series[i].Y, f.Series[i].Y
			if q == coldview.Storage {
				from, to = c.Series[i].X, f.Series[i].X
			}
			assert.InDelta(t, 1.8*from[0]+32, to[0], 1e-9, q.Title())
		}
	}
}

func TestThePictureAndItsCurvesFillTheStage(t *testing.T) {
	for _, shape := range []float32{0.1, 0.3, 0.5, 1, 3} {
		a, b := coldview.Rooms(800, 400, shape, 4, true)
		assert.InDelta(t, 800*400, a.W*a.H+b.W*b.H, 1, shape)
		assert.True(t, a.W > 0 && b.H > 0)
		assert.True(t, b.X >= a.W || b.Y >= a.H, "they do not overlap")
	}
	a, b := coldview.Rooms(800, 400, 1, 4, false)
	assert.Equal(t, coldview.Room{}, a)
	assert.Equal(t, coldview.Room{W: 800, H: 400}, b)
	w, h := coldview.LeastRoom(coldview.Room{W: 200, H: 90}, coldview.Room{W: 300, H: 120})
	a, b = coldview.Rooms(w, h, 1, 4, true)
	assert.True(t, a.W >= 200 && b.W >= 300 && a.H >= 120)
}
