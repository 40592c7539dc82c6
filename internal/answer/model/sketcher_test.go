package model_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// What a sketcher remembers of the design before never shows in the next: each
// of many neighbours, in turn and back, sketches as on its own.
func TestASketcherForgetsWhatHasChanged(t *testing.T) {
	m := model.New(market.Library(t))
	k := m.Sketcher()
	moved := func(move func(d *design.Design)) design.Design {
		d := stall()
		for _, p := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
			d = d.WithLines(p, append([]design.Line(nil), d.Lines(p)...))
		}
		move(&d)
		return d
	}
	own := market.Honey()
	var all []design.Design
	for _, move := range []func(d *design.Design){
		func(*design.Design) {},
		func(d *design.Design) { d.Dense.Lines[0].Grams += 30 },
		func(d *design.Design) { d.Foam.Lines[0].Grams += 30 },
		func(d *design.Design) { d.Foam.Syrup.Lines[0].Grams += 30 },
		func(d *design.Design) { d.Foam.Syrup.CookTemperatureC -= 3 },
		func(d *design.Design) { d.Foam.Syrup.InvertedPercent += 5 },
		func(d *design.Design) { d.Foam.Syrup.WeighedG = 205 },
		func(d *design.Design) { d.Foam.Syrup.Lines = nil },
		func(d *design.Design) { d.Kitchen.AltitudeM = 900 },
		func(d *design.Design) { d.Serving.TemperatureC -= 3 },
		func(d *design.Design) { d.Dense.OverrunPercent += 5 },
		func(d *design.Design) { d.Dense.StoveLossPercent += 5 },
		func(d *design.Design) { d.Model.ProteinGPerG += 0.1 },
		func(d *design.Design) {
			d.Foam.Lines[0] = design.Line{Ingredient: "egg_white", Count: 5, CountOf: design.Whites}
		},
		func(d *design.Design) {
			d.Foam.Lines[0] = design.Line{Ingredient: "egg_white", Count: 5, CountOf: design.Whites}
			d.Eggs.Size = "jumbo"
		},
		func(d *design.Design) { *d = own },
	} {
		d := moved(move)
		all = append(all, d, stall(), d)
	}
	for i, d := range all {
		want, err := m.Sketch(d)
		require.NoError(t, err)
		got, err := k.Sketch(d)
		require.NoError(t, err)
		for _, r := range [...]phase.Role{phase.Dense, phase.Foam} {
			assert.Equal(t, want.Phase(r).State, got.Phase(r).State, i)
			assert.Equal(t, want.Phase(r).SweetnessPercent, got.Phase(r).SweetnessPercent, i)
			assert.Equal(t, want.Phase(r).Portion, got.Phase(r).Portion, i)
		}
		assert.Equal(t, want.Strains(), got.Strains(), i)
		assert.Equal(t, want.Warnings(), got.Warnings(), i)
		assert.Equal(t, want.Lines(), got.Lines(), i)
		assert.Equal(t, *want.Eggs(), *got.Eggs(), i)
		assert.Equal(t, want.Verdict(), got.Verdict(), i)
	}
	bad := stall().WithLineAdded(design.DensePart, design.Line{Ingredient: "moonrock", Grams: 3})
	for range 2 {
		_, err := k.Sketch(bad)
		assert.Error(t, err)
	}
	_, err := k.Sketch(stall())
	assert.NoError(t, err)
}

func BenchmarkSketcher(b *testing.B) {
	m := model.New(market.Library(b))
	k, d := m.Sketcher(), market.Demo(b)
	lines := append([]design.Line(nil), d.Dense.Lines...)
	d.Dense.Lines = lines
	b.ReportAllocs()
	for i := range b.N {
		lines[0].Grams = 400 + float64(i%7)
		if _, err := k.Sketch(d); err != nil {
			b.Fatal(err)
		}
	}
}
