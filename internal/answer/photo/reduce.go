package photo

import (
	"image"
	"image/draw"

	"ripplewright/internal/matter/num"
)

// reduced returns box of im with each n by n pixels as one, their mean; what is over at the
// right and below is left out. It needs a strip of im at a time: a scaler of the libraries
// would ask for hundreds of megabytes for the picture of a good camera.
func reduced(im image.Image, box image.Rectangle, n int) *image.RGBA {
	out := image.NewRGBA(image.Rect(0, 0, box.Dx()/n, box.Dy()/n))
	num.Parallel(out.Rect.Dy(), func(j int) {
		strip := image.NewRGBA(image.Rect(0, 0, out.Rect.Dx()*n, n))
		draw.Draw(strip, strip.Rect, im, box.Min.Add(image.Pt(0, j*n)), draw.Src)
		for i := range out.Rect.Dx() {
			var sum [4]int
			for y := range n {
				for at := y*strip.Stride + 4*i*n; at < y*strip.Stride+4*(i+1)*n; at += 4 {
					for c := range sum {
						sum[c] += int(strip.Pix[at+c])
					}
				}
			}
			for c, v := range sum {
				out.Pix[j*out.Stride+4*i+c] = uint8((v + n*n/2) / (n * n))
			}
		}
	})
	return out
}

// few returns box of im, made smaller by whole pixels where its target has at most half as
// many, and by how much.
func few(im image.Image, box image.Rectangle, by float64) (image.Image, image.Rectangle, int) {
	n := int(1 / by)
	if n < 2 || box.Dx() < n || box.Dy() < n {
		return im, box, 1
	}
	small := reduced(im, box, n)
	return small, small.Rect, n
}
