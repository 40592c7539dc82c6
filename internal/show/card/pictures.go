package card

import (
	"context"
	"image"
	"math"

	"golang.org/x/image/draw"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

// tubPicture draws the tub cut open, within w by h mm, for a page of dpi dots
// per inch. A cancelled context leaves the cut out.
func tubPicture(ctx context.Context, d design.Design, r *model.Result, w, h, dpi float64) *sheet {
	const wall = 1.3
	size := tub.Size(d.Tubs)
	k := math.Min((w-2*wall)/size.LengthMM, (h-wall)/size.HeightMM)
	long, brim, fill := k*size.LengthMM, k*size.HeightMM, k*size.FillMM
	s := &sheet{w: long + 2*wall, h: brim + wall}
	top := brim - fill
	settings := tub.Ripple(d)
	settings.FoamShare = r.Blend.FoamVolume
	style := tub.Style(d)
	if img := cutOf(ctx, settings, style, int(math.Ceil(max(long, fill)/25.4*dpi))); img != nil {
		s.show(img, wall, top, long, fill)
	} else { // too small or too flat for a picture: the shares alone
		foam := fill * r.Blend.FoamVolume
		s.box(wall, top, long, foam, style.Foam)
		s.box(wall, top+foam, long, fill-foam, style.Dense)
	}
	in, out := 0.9, 1.6
	for _, ring := range [][]at{{
		{0, 0}, {wall, 0}, {wall, brim}, {wall + long, brim}, {wall + long, 0}, {2*wall + long, 0},
		{2*wall + long, brim + wall - out}, {2*wall + long - in, brim + wall}, {in, brim + wall}, {0, brim + wall - out},
	}} {
		s.fill(ink, ring)
	}
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
	draw.Draw(flat, flat.Bounds(), image.White, image.Point{}, draw.Src)
	draw.Draw(flat, flat.Bounds(), img, img.Bounds().Min, draw.Over)
	return flat
}
