package tub

import (
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

var shapes = []design.Shape{design.ShapeRound, design.ShapeShallow, design.ShapeRectangle}

func TestTubsHoldTheirVolume(t *testing.T) {
	for _, shape := range shapes {
		for _, ml := range []float64{30, 120, 500, 2400, 20000} {
			d := Size(design.Tubs{Count: 1, VolumeML: ml, FillPercent: 100, Shape: shape})
			assert.InEpsilon(t, ml, d.BaseMM2()*d.FillMM/1000, 1e-12, "%s %g mL", shape, ml)
			assert.InEpsilon(t, d.HeightMM, d.FillMM, 1e-12)
			d = Size(design.Tubs{Count: 1, VolumeML: ml, FillPercent: 80, Shape: shape})
			assert.InEpsilon(t, 0.8*ml, d.BaseMM2()*d.FillMM/1000, 1e-12, "%s %g mL", shape, ml)
		}
	}
}

func TestShapesHaveTheirProportions(t *testing.T) {
	size := func(s design.Shape) Dimensions {
		return Size(design.Tubs{VolumeML: 500, FillPercent: 96, Shape: s})
	}
	round, shallow, box := size(design.ShapeRound), size(design.ShapeShallow), size(design.ShapeRectangle)
	assert.InEpsilon(t, round.LengthMM, round.HeightMM, 1e-12)
	assert.InEpsilon(t, 3*shallow.HeightMM, shallow.LengthMM, 1e-12)
	assert.InEpsilon(t, 1.5*box.BreadthMM, box.LengthMM, 1e-12)
	assert.True(t, round.Round && shallow.Round && !box.Round)
}

func TestEveryOrdinaryTubCanBeDrawn(t *testing.T) {
	motion, _ := design.FieldAt("blend.motion")
	layout, _ := design.FieldAt("blend.layout")
	for _, shape := range shapes {
		for _, m := range motion.Choices {
			for _, l := range layout.Choices {
				d := design.New()
				d.Tubs.Shape, d.Blend.Motion, d.Blend.Layout, d.Blend.Strokes = shape, m, l, 24
				d.Blend.Seed = -7 // every seed draws a tub
				assert.NoError(t, Ripple(d).Validate(), "%s %s %s", shape, m, l)
			}
		}
	}
}

func TestATubTooFlatForAPictureIsRefusedWithItsMeasure(t *testing.T) {
	d := design.New()
	d.Tubs.VolumeML, d.Tubs.FillPercent = 50, 10
	_, err := ripple.Stir(Ripple(d))
	var field *ripple.FieldError
	require.ErrorAs(t, err, &field)
	assert.Equal(t, "Tub.HeightMM", field.Field)
}

func TestStrokesGoAsDeepAndAsWideAsAsked(t *testing.T) {
	d := design.New()
	d.Blend.DepthPercent, d.Blend.HandleMM = 40, 15
	for _, s := range Ripple(d).Strokes {
		assert.InDelta(t, 0.4*Size(d.Tubs).FillMM, s.DepthMM, 1e-12)
		assert.Equal(t, 15.0, s.WidthMM)
	}
}

func TestARippleKeepsTheRatioAsked(t *testing.T) {
	d := design.New()
	d.Blend.FoamVolumePercent = 35
	assert.InDelta(t, 0.35, Ripple(d).FoamFraction, 1e-15)
}

func TestColoursAreThoseOfTheDesign(t *testing.T) {
	d := design.New()
	d.Blend.DenseColour, d.Blend.FoamColour = "#d9A441", "#000102"
	s := Style(d)
	assert.Equal(t, color.NRGBA{R: 0xd9, G: 0xa4, B: 0x41, A: 255}, s.Dense)
	assert.Equal(t, color.NRGBA{G: 1, B: 2, A: 255}, s.Foam)
}
