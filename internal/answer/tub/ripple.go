package tub

import (
	"context"
	"fmt"
	"image/color"

	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

// Ripple returns how the tub of d is filled and stirred, for the side cut.
//
// The foam's share is the ratio that d asks for. With basis as_written the
// grams decide instead: set FoamShare to that of the evaluated blend.
// A tub too small or too flat for a picture is for ripple.Stir to refuse.
//
// The design must have passed design.Validate; a layout or motion that nobody
// knows panics.
func Ripple(d design.Design) ripple.Settings {
	layout, err := ripple.ParseLayout(d.Blend.Layout)
	if err != nil {
		panic(fmt.Sprintf("tub: %v", err))
	}
	size := Size(d.Tubs)
	strokes, err := ripple.Sequence(d.Blend.Motion, d.Blend.Strokes, d.Blend.DepthPercent/100*size.FillMM, d.Blend.HandleMM)
	if err != nil {
		panic(fmt.Sprintf("tub: %v", err))
	}
	return ripple.Settings{
		Tub:          ripple.Tub{LengthMM: size.LengthMM, BreadthMM: size.BreadthMM, CornerMM: size.CornerMM, HeightMM: size.FillMM},
		FoamFraction: d.Blend.FoamVolumePercent / 100,
		Layout:       layout,
		Strokes:      strokes,
		Seed:         uint64(d.Blend.Seed),
	}
}

// RippleOf is Ripple of a tub that came out with that share of foam, cut so.
func RippleOf(d design.Design, foamFraction float64, v ripple.View) ripple.Settings {
	s := Ripple(d)
	s.FoamFraction, s.View = foamFraction, v
	return s
}

// cutPixels are enough for what a measure takes from pixels, the share of foam.
const cutPixels = 300

// Cut returns the figures of the cut of a tub that is filled and stirred as s says, for
// each of leastMM past ribbons thinner than that. It takes some tenths of a second. The
// error is ctx's or that of ripple.Stir.
func Cut(ctx context.Context, s ripple.Settings, leastMM ...float64) ([]ripple.Measure, error) {
	c, err := ripple.Stir(s)
	if err != nil {
		return nil, err
	}
	r, err := c.Raster(ctx, cutPixels, nil)
	if err != nil {
		return nil, err
	}
	all := make([]ripple.Measure, len(leastMM))
	for i, least := range leastMM {
		all[i] = r.MeasureOver(least)
	}
	return all, nil
}

// Style returns how the ripple of d is painted, in the colours it chose.
// The design must have passed design.Validate.
func Style(d design.Design) ripple.Style {
	return ripple.Style{Foam: colour(d.Blend.FoamColour), Dense: colour(d.Blend.DenseColour)}
}

// colour reads "#rrggbb".
func colour(s string) color.NRGBA {
	c := color.NRGBA{A: 255}
	if _, err := fmt.Sscanf(s, "#%02x%02x%02x", &c.R, &c.G, &c.B); err != nil {
		panic(fmt.Sprintf("tub: colour %q: %v", s, err))
	}
	return c
}
