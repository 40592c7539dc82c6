package raster

import (
	"context"
	"image"
	"image/color"
	stddraw "image/draw"
	"math"

	"ripplewright/internal/show/draw"
)

// pageEdge is the line where one page ends and the next begins.
var pageEdge = image.NewUniform(color.Gray{0xd0})

// Size returns how many pixels lists take, one under the other, at scale pixels per
// unit.
func Size(lists []*draw.List, scale float64) (w, h int) {
	for _, l := range lists {
		w = max(w, int(math.Round(l.W*scale)))
		h += int(math.Round(l.H * scale))
	}
	return w, h
}

// Pages paints lists with their texts on white, one under the other, at scale pixels
// per unit. each are the same pixels list by list. The error is ctx's.
func Pages(ctx context.Context, lists []*draw.List, scale float64) (whole *image.RGBA, each []image.Image, err error) {
	w, h := Size(lists, scale)
	whole = image.NewRGBA(image.Rect(0, 0, w, h))
	stddraw.Draw(whole, whole.Bounds(), image.White, image.Point{}, stddraw.Src)
	var p Painter
	top := 0
	for i, l := range lists {
		if err := ctx.Err(); err != nil {
			return nil, nil, err
		}
		high := int(math.Round(l.H * scale))
		page := &image.RGBA{Pix: whole.Pix[top*whole.Stride : (top+high)*whole.Stride], Stride: whole.Stride, Rect: image.Rect(0, 0, w, high)}
		if i > 0 {
			stddraw.Draw(page, image.Rect(0, 0, w, 1), pageEdge, image.Point{}, stddraw.Src)
		}
		p.On(page)
		p.Paint(l, scale)
		p.Write(l, scale)
		each = append(each, page)
		top += high
	}
	return whole, each, nil
}
