package ripple

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
)

// thinning returns the foam's mean ribbon averaged over tubs of many seeds, and the
// scatter of one tub about it, as a share of it.
func thinning(t *testing.T, v View, motion string, n, px int) (mean, scatter float64) {
	const seeds = 8
	var sum, squares float64
	for seed := uint64(1); seed <= seeds; seed++ {
		mm := sample(t, stir(t, settings(t, v, Dollops, motion, n, seed)), px).Measure().Foam.MeanMM
		sum, squares = sum+mm, squares+mm*mm
	}
	mean = sum / seeds
	return mean, math.Sqrt(squares/seeds-mean*mean) / mean
}

// testdata/tables/ripple_side_thickness.csv is one tub whose dollops and strokes
// cannot be placed again: its comment gives their number, length and order alone.
// Strokes of that length in that order are held against it in the mean of eight of
// our tubs, which scatter among themselves by some 15 % at six strokes. At eight the
// table's tub is thinner than most.
func TestSideRibbonsThinAsTabulated(t *testing.T) {
	check.Long(t)
	for _, r := range check.Table(t, "ripple_side_thickness") {
		n, tolerance, want := int(r.Num("strokes")), 0.10, r.Num("mean_thickness_mm")
		if n > 8 {
			continue // thinner than these pixels can hold
		}
		switch n {
		case 0:
			tolerance = 0.05
		case 8:
			tolerance = 0.35
		}
		mean, scatter := thinning(t, Side, Mixed, n, 300)
		t.Logf("%d strokes: %.2f mm (one tub ± %.0f %%), table %.2f (%+.1f %%)", n, mean, 100*scatter, want, 100*(mean/want-1))
		assert.InEpsilon(t, want, mean, tolerance, "%d strokes", n)
	}
}

// testdata/tables/ripple_top_thickness.csv, whose swirls are those of our plunges
// but for a little shaking; its dollops cannot be placed again, so eight tubs again.
func TestTopRibbonsThinAsTabulated(t *testing.T) {
	check.Long(t)
	for _, r := range check.Table(t, "ripple_top_thickness") {
		n, want := int(r.Num("swirls")), r.Num("mean_thickness_mm")
		if n > 11 {
			continue
		}
		mean, scatter := thinning(t, Top, "plunge", n, 300)
		t.Logf("%d swirls: %.2f mm (one tub ± %.0f %%), table %.2f (%+.1f %%)", n, mean, 100*scatter, want, 100*(mean/want-1))
		assert.InEpsilon(t, want, mean, 0.08, "%d swirls", n)
	}
}

// The interface carried forward through the strokes, point by point, is another way
// than lines to its length; the lines' own scatter is what is left between them.
func TestLinesMeetTheInterfaceCarriedForward(t *testing.T) {
	check.Long(t)
	for _, v := range []View{Side, Top} {
		for _, n := range []int{0, 2, 6, 12, 18} {
			if v == Top && n > 12 {
				continue // it takes seconds
			}
			c := stir(t, settings(t, v, Dollops, Mixed, n, 3))
			want := c.InterfaceByAdvectionMM(0.3)
			m := sample(t, c, 100).Measure()
			t.Logf("%s, %d strokes: %.0f mm by %d lines, %.0f carried forward (%+.1f %%)", v, n, m.InterfaceMM, m.Lines, want, 100*(m.InterfaceMM/want-1))
			assert.InEpsilon(t, want, m.InterfaceMM, 0.03, "%s, %d strokes", v, n)
		}
	}
}

func TestThicknessDoesNotHangOnThePixels(t *testing.T) {
	check.Long(t)
	for _, n := range []int{0, 6, 24} {
		c := stir(t, settings(t, Side, Dollops, Mixed, n, uint64(n)))
		coarse, fine := sample(t, c, 200).Measure(), sample(t, c, 600).Measure()
		assert.InEpsilon(t, fine.Foam.MeanMM, coarse.Foam.MeanMM, 0.01, "%d strokes", n)
	}
}

// A band of two straight edges has known figures.
func TestAStraightBandMeasuresItself(t *testing.T) {
	o := outline{80, 60, 0}
	c := &Cut{set: Settings{Tub: BoxTub(80, 80, 0, 60)}, stirred: &stirred{out: o, start: newRelief(o, func(_, y float64) float64 { return 9 - math.Abs(y-31.3) })}}
	c.level = c.start.level(0.3)
	m := sample(t, c, 400).Measure()
	assert.InDelta(t, 0.3, m.FoamFraction, 1e-4)
	assert.InEpsilon(t, 160, m.InterfaceMM, 0.01)
	assert.InEpsilon(t, 18, m.Foam.MeanMM, 0.01)
	assert.InDelta(t, 18, m.Foam.P10MM, 0.02)
	assert.InDelta(t, 80, m.Foam.ThickestTenthMM, 0.01)
	sum := 0.0
	for _, share := range m.Foam.Counts {
		sum += share
	}
	assert.InDelta(t, 1, sum, 1e-9)
}

// The mean chord of a set of area A and edge P under lines in all directions is
// πA/P (Crofton; from memory). Walls count as edge for chords.
func TestMeanChordMeetsCrofton(t *testing.T) {
	m := sample(t, stir(t, settings(t, Top, Dollops, Mixed, 5, 3)), 600).Measure()
	assert.InEpsilon(t, math.Pi/2, m.Foam.MeanChordMM/m.Foam.MeanMM, 0.12)
}

func TestAbsentPhasesHaveNoFigures(t *testing.T) {
	s := settings(t, Side, Dollops, Mixed, 3, 1)
	s.FoamFraction = 0
	r := sample(t, stir(t, s), 100)
	m := r.Measure()
	assert.Zero(t, m.InterfaceMM)
	assert.True(t, math.IsNaN(m.Foam.MeanMM) && math.IsNaN(m.Foam.P90MM) && math.IsNaN(m.Dense.MeanMM))
	assert.Empty(t, m.Advise(Hardness{FoamKPa: 1, DenseKPa: 9, FirmKPa: 2, HardKPa: 3}), "one phase has no ribbons")
}

// A spoonful of 15 mL from a dish filled 9 mm high takes √(15000/9) mm either way.
func TestAShallowSpoonfulTakesTheWholeHeight(t *testing.T) {
	s := settings(t, Side, Dollops, Mixed, 2, 1)
	s.Tub = RoundTub(150, 9)
	side := sample(t, stir(t, s), 300).Spoon(SpoonML, FoamShare)
	s.View = Top
	top := sample(t, stir(t, s), 300).Spoon(SpoonML, FoamShare)
	for _, got := range []Spoonful{side, top} {
		assert.InDelta(t, 40.82, got.SideMM, 0.01)
		assert.Positive(t, got.Samples)
		assert.InDelta(t, 0.35, got.Mean, 0.15)
	}
}

func TestSpoonfulsGrowAlikeAsRibbonsThin(t *testing.T) {
	was := math.Inf(1)
	for _, n := range []int{0, 4, 12} {
		s := sample(t, stir(t, settings(t, Side, Dollops, Mixed, n, 1)), 300).Spoon(SpoonML, FoamShare)
		assert.InDelta(t, 24.66, s.SideMM, 0.01) // the cube root of 15 cm³
		assert.Positive(t, s.Samples)
		assert.InDelta(t, 0.35, s.Mean, 0.12)
		assert.True(t, s.P10 <= s.P50 && s.P50 <= s.P90)
		assert.Less(t, s.SD, was, fmt.Sprint(n))
		was = s.SD
	}
}

func TestAPairMixesByMass(t *testing.T) {
	p := Pair{Foam: 40, Dense: 20, FoamGPerML: 0.3, DenseGPerML: 0.9}
	assert.InDelta(t, (0.15*40+0.45*20)/0.6, p.At(0.5), 1e-12)
	assert.Equal(t, 40.0, p.At(1))
	assert.Equal(t, 20.0, p.At(0))
	p.Foam = math.NaN()
	assert.True(t, math.IsNaN(p.At(0.5)))
	r := sample(t, stir(t, settings(t, Side, Dollops, Mixed, 2, 1)), 100)
	assert.Zero(t, r.Spoon(SpoonML, p).Samples)
	assert.Zero(t, r.Spoon(1e6, FoamShare).Samples)
	assert.Zero(t, r.Spoon(math.NaN(), FoamShare).Samples)
}

func TestWordsCoverAllThicknessesInOrder(t *testing.T) {
	w := Words()
	require.Equal(t, 0.0, w[0].FromMM)
	for i := 1; i < len(w); i++ {
		assert.Equal(t, w[i-1].ToMM, w[i].FromMM)
	}
	assert.Equal(t, Blended, WordFor(0.5))
	assert.Equal(t, Blush, WordFor(2))
	assert.Equal(t, Ribbon, WordFor(5))
	assert.Equal(t, Lump, WordFor(25))
	assert.Equal(t, NoWord, WordFor(math.NaN()))
}

func TestAdviceFollowsHardness(t *testing.T) {
	m := sample(t, stir(t, settings(t, Side, Dollops, Mixed, 2, 1)), 200).Measure()
	a := m.Advise(Hardness{FoamKPa: 5, DenseKPa: 120, FirmKPa: 80, HardKPa: 200})
	require.Len(t, a, 2)
	assert.Equal(t, Firm, a[0].Firmness)
	assert.True(t, a[0].Exceeded)
	assert.Equal(t, firmLimitMM, a[0].LimitMM)
	assert.Equal(t, Soft, a[1].Firmness)
	a = m.Advise(Hardness{FoamKPa: math.NaN(), DenseKPa: 500, FirmKPa: 80, HardKPa: 200})
	assert.Equal(t, Hard, a[0].Firmness)
	assert.Equal(t, FirmnessUnknown, a[1].Firmness)
}

// As many spoons take each part of the tub, so the mean over one tub's spoonfuls is
// its share of foam, on any seed; by squares that fit alone it was 43.9 % here.
func TestTheMeanSpoonfulIsTheTub(t *testing.T) {
	check.Long(t)
	for _, v := range []View{Side, Top} {
		mean := 0.0
		for seed := uint64(1); seed <= 10; seed++ {
			s := settings(t, v, Dollops, Mixed, 8, seed)
			s.FoamFraction = 0.40
			r := sample(t, stir(t, s), 300)
			got := r.Spoon(SpoonML, FoamShare)
			assert.InDelta(t, r.FoamFraction(), got.Mean, 1e-6, "%s, seed %d", v, seed)
			sum := 0.0
			for _, c := range got.Counts {
				sum += c
			}
			assert.InDelta(t, 1, sum, 1e-9)
			mean += got.Mean / 10
		}
		assert.InDelta(t, 0.40, mean, 0.002, v)
	}
}
