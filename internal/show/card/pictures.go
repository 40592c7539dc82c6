package card

import (
	"context"
	"image"
	stddraw "image/draw"
	"math"

	"ripplewright/internal/show/draw/typeset"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/work/design"
)

// tubPicture draws the tub cut open, within w by h mm, for a page of dpi dots
// per inch. A cancelled context leaves the cut out.
func tubPicture(ctx context.Context, d design.Design, r *model.Result, w, h, dpi float64) *draw.List {
	const wall = 1.3
	size := tub.Size(d.Tubs)
	k := math.Min((w-2*wall)/size.LengthMM, (h-wall)/size.HeightMM)
	long, brim, high := k*size.LengthMM, k*size.HeightMM, k*size.FillMM
	s := &draw.List{W: long + 2*wall, H: brim + wall}
	top := brim - high
	settings := tub.RippleOf(d, r.Blend.FoamVolumeFraction, ripple.Side)
	style := tub.Style(d)
	if img := cutOf(ctx, settings, style, int(math.Ceil(max(long, high)/25.4*dpi))); img != nil {
		s.Show(img, draw.Rect{X0: wall, Y0: top, X1: wall + long, Y1: brim})
	} else { // too small or too flat for a picture: the shares alone
		foam := high * r.Blend.FoamVolumeFraction
		typeset.Fill(s, wall, top, long, foam, style.Foam)
		typeset.Fill(s, wall, top+foam, long, high-foam, style.Dense)
	}
	in, out := 0.9, 1.6
	for _, p := range [...]draw.Point{
		{}, {X: wall}, {X: wall, Y: brim}, {X: wall + long, Y: brim}, {X: wall + long}, {X: 2*wall + long},
		{X: 2*wall + long, Y: brim + wall - out}, {X: 2*wall + long - in, Y: brim + wall}, {X: in, Y: brim + wall}, {Y: brim + wall - out},
	} {
		s.To(p.X, p.Y)
	}
	s.EndFill(ink)
	return s
}

// cutOf returns the picture of a cut on white, px pixels along its longer side,
// nil where there is none.
func cutOf(ctx context.Context, settings ripple.Settings, style ripple.Style, px int) image.Image {
	cut, err := ripple.Stir(settings)
	if err != nil {
		return nil
	}
	img, err := cut.Render(ctx, max(px, ripple.MinPixels), style, nil)
	if err != nil {
		return nil
	}
	flat := image.NewRGBA(img.Bounds())
	stddraw.Draw(flat, flat.Bounds(), image.White, image.Point{}, stddraw.Src)
	stddraw.Draw(flat, flat.Bounds(), img, img.Bounds().Min, stddraw.Over)
	return flat
}
