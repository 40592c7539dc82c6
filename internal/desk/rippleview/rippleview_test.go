package rippleview

import (
	"context"
	"image"
	"image/color"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

func demo(t *testing.T, name string) (design.Design, *model.Result) {
	t.Helper()
	d := market.Demos(t)[name]
	return d, evaluated(t, d)
}

func evaluated(t *testing.T, d design.Design) *model.Result {
	t.Helper()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return &r
}

func TestFacesHaveTheTubsMeasures(t *testing.T) {
	d, r := demo(t, "hazelnut.yaml")
	size := tub.Size(d.Tubs)
	faces, err := Faces(say.Style{}, d, r, ViewsNamed(say.BothCuts.String()))
	require.NoError(t, err)
	require.Len(t, faces, 2)
	side, above := faces[0], faces[1]
	assert.Equal(t, []float64{size.LengthMM, size.FillMM, size.HeightMM - size.FillMM}, []float64{side.WidthMM, side.HeightMM, side.HeadMM})
	assert.True(t, side.Open && !above.Open)
	assert.Equal(t, []float64{size.LengthMM, size.BreadthMM, size.CornerMM}, []float64{above.WidthMM, above.HeightMM, above.CornerMM})
	assert.Contains(t, side.Title, say.Style{}.Size(side.WidthMM, side.HeightMM))

	empty := d
	empty.Dense.Lines, empty.Foam.Lines, empty.Foam.Syrup.Lines = nil, nil, nil
	_, err = Faces(say.Style{}, empty, evaluated(t, empty), ViewsNamed(""))
	assert.EqualError(t, err, say.EmptyTub.String())
}

func TestWhyThereIsNoPictureIsInTheMakersUnits(t *testing.T) {
	d, _ := demo(t, "hazelnut.yaml")
	d.Tubs = design.Tubs{Count: 1, VolumeML: 30, FillPercent: 10, Shape: design.ShapeShallow}
	_, err := Faces(say.Style{}, d, evaluated(t, d), ViewsNamed(say.SideCut.String()))
	require.Error(t, err)
	assert.Contains(t, Reason(say.Style{}, err), " mm")
	assert.Contains(t, Reason(say.Customary, err), " in")
}

func TestAnotherSettingIsAnotherRequest(t *testing.T) {
	d, r := demo(t, "hazelnut.yaml")
	ask := func(d design.Design) Request {
		q, ok := Ask(d, r, ViewsNamed(say.BothCuts.String()), []image.Point{{X: 300, Y: 200}, {X: 1000, Y: 900}}, 600)
		require.True(t, ok)
		return q
	}
	q := ask(d)
	assert.Equal(t, 1000, q.Job.Sharp, "as fine as the screen")
	assert.Equal(t, coarsePixels/2, q.Job.Coarse)
	assert.True(t, q.Same(ask(d)))
	for name, change := range map[string]func(*design.Design){
		"colour": func(d *design.Design) { d.Blend.FoamColour = "#102030" }, "strokes": func(d *design.Design) { d.Blend.Strokes++ },
		"serving": func(d *design.Design) { d.Serving.TemperatureC-- }, "seed": func(d *design.Design) { d.Blend.Seed++ },
	} {
		other := d
		change(&other)
		assert.False(t, q.Same(ask(other)), name)
	}
	d.Blend.Layout = "heaps"
	_, ok := Ask(d, r, ViewsNamed(say.SideCut.String()), nil, 600)
	assert.False(t, ok)
}

func TestGramsThatStayAreToldOf(t *testing.T) {
	d, r := demo(t, "buckthorn.yaml")
	d.Batch.Basis = design.BasisAsWritten
	assert.Empty(t, GramsKept(say.Style{}, d, r), "as the maker asked")
	d.Blend.FoamVolumePercent = 90
	assert.Contains(t, GramsKept(say.Style{}, d, r), "% foam")
	d.Batch.Basis = design.BasisTubs
	assert.Empty(t, GramsKept(say.Style{}, d, r))
}

func TestWhatIsTypedIsAColourOrNot(t *testing.T) {
	for typed, want := range map[string]string{
		"#7A1F42": "#7a1f42", " 00ff7f ": "#00ff7f", "#000000": "#000000",
		"reddish": "", "#12345": "", "#12345g": "", "": "", "#1234567": "",
	} {
		hex, ok := TypedHex(typed)
		assert.Equal(t, want != "", ok, typed)
		if ok {
			assert.Equal(t, want, hex)
			assert.Equal(t, hex, Hex(Colour(hex)))
		}
	}
	assert.Equal(t, color.NRGBA{A: 255}, Colour("whitish"))
}

func TestColoursHaveTheNamesOfTheirFoods(t *testing.T) {
	for _, foam := range []bool{false, true} {
		for _, name := range FoodNames() {
			hex := FoodColour(name, foam)
			named := FoodOf(strings.ToUpper(hex), foam)
			assert.Equal(t, hex, FoodColour(named, foam), "two foods may share a colour")
		}
		assert.Equal(t, say.OwnColour.String(), FoodOf("#010203", foam))
	}
	assert.Empty(t, FoodColour("soap", false))
}

func TestColoursOfOneLightnessAreToldOf(t *testing.T) {
	d, _ := demo(t, "hazelnut.yaml")
	d.Blend.DenseColour, d.Blend.FoamColour = "#808080", "#868686"
	assert.Contains(t, TooAlike(say.Style{}, d), "almost equally light")
	d.Blend.FoamColour = "#f0f0f0"
	assert.Empty(t, TooAlike(say.Style{}, d))
	d.Blend.FoamColour = "whitish"
	assert.Empty(t, TooAlike(say.Style{}, d), "an error says more")
}

func found(t *testing.T, d design.Design, r *model.Result) Findings {
	t.Helper()
	q, ok := Ask(d, r, ViewsNamed(say.SideCut.String()), nil, 300)
	require.True(t, ok)
	cut, err := ripple.Stir(q.Job.Cuts[0])
	require.NoError(t, err)
	raster, err := cut.Raster(context.Background(), 300, nil)
	require.NoError(t, err)
	return q.Study(raster)
}

func TestTablesAndPlotsHoldTheSameRibbons(t *testing.T) {
	d, r := demo(t, "hazelnut.yaml")
	f := found(t, d, r)
	rows := f.Ribbons(say.Style{})
	assert.Equal(t, []string{say.Style{}.Number(100-100*r.Blend.FoamVolumeFraction, 1), say.Style{}.Number(100*r.Blend.FoamVolumeFraction, 1)}, rows[0].Cells)
	plot := f.Thickness(say.Style{})
	require.Len(t, plot.Series, 2)
	for i, counts := range [][ripple.ChordBins]float64{f.measure.Dense.Counts, f.measure.Foam.Counts} {
		sum := 0.0
		for k := 0; k < len(plot.Series[i].Y); k += 2 {
			sum += plot.Series[i].Y[k]
		}
		beyond := 0.0
		for _, share := range counts[len(plot.Series[i].Y)/2:] {
			beyond += 100 * share
		}
		assert.InDelta(t, 100, sum+beyond, 1e-6, "every chord is in a bin")
	}
	spoons, differ := f.FoamOfSpoons(say.Style{})
	assert.True(t, differ)
	assert.InDelta(t, 100*f.foam.Lowest, spoons.X.Min, 1e-9)
	assert.Len(t, f.Counsels(say.Style{}), 3)
}

func TestATubOfOnePhaseHasNoRibbons(t *testing.T) {
	d, _ := demo(t, "hazelnut.yaml")
	d.Blend.FoamVolumePercent = 0
	f := found(t, d, evaluated(t, d))
	for _, row := range f.Ribbons(say.Style{})[1:] {
		assert.Empty(t, row.Cells[1], "%s of no foam", row.Name)
	}
	assert.Contains(t, f.Spoonfuls(say.Style{}), "is alike")
	assert.Empty(t, f.Thickness(say.Style{}).Series[1].Name, "not in the legend")
}
