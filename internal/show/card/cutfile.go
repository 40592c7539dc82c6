package card

import (
	"bytes"
	"context"
	"image"
	stddraw "image/draw"
	"image/png"
	"math"
	"path/filepath"
	"strings"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/svg"
	"ripplewright/internal/work/atomicfile"
)

// CutPicture is a painted cut and its true size.
type CutPicture struct {
	image.Image
	WidthMM, HeightMM float64
}

// RenderCuts paints cuts of one tub at one scale, the longest side of all px pixels.
// Errors are those of ripple.
func RenderCuts(cuts []ripple.Settings, style ripple.Style, px int) ([]CutPicture, error) {
	stirred := make([]*ripple.Cut, len(cuts))
	longest := 0.0
	for i, s := range cuts {
		c, err := ripple.Stir(s)
		if err != nil {
			return nil, err
		}
		w, h := c.SizeMM()
		stirred[i], longest = c, max(longest, w, h)
	}
	out := make([]CutPicture, len(cuts))
	for i, c := range stirred {
		w, h := c.SizeMM()
		img, err := c.Render(context.Background(), int(math.Round(float64(px)*max(w, h)/longest)), style, nil)
		if err != nil {
			return nil, err
		}
		out[i] = CutPicture{img, w, h}
	}
	return out, nil
}

// WriteCuts puts cuts of one tub, side by side, into the file at path: a PNG in their
// own pixels, transparent outside the tub, or an SVG at true size, by the extension
// .png or .svg. The file is replaced as a whole or not at all. Errors: ErrExtension
// and those of writing.
func WriteCuts(path string, cuts []CutPicture) error {
	var data []byte
	var err error
	switch strings.ToLower(filepath.Ext(path)) {
	case ".png":
		var b bytes.Buffer
		err = png.Encode(&b, sideBySide(cuts))
		data = b.Bytes()
	case ".svg":
		data, err = svg.Encode([]*draw.List{cutSheet(cuts)}, "")
	default:
		err = flaw.New("write cut %s: %v: .png and .svg do", path, ErrExtension)
	}
	if err != nil {
		return err
	}
	return atomicfile.Write(path, data)
}

// cutGap is between two cuts, of the longest side of all.
const cutGap = 1. / 24

func sideBySide(cuts []CutPicture) image.Image {
	longest, size := 0, image.Point{}
	for _, c := range cuts {
		longest = max(longest, c.Bounds().Dx(), c.Bounds().Dy())
	}
	gap := int(float64(longest) * cutGap)
	for i, c := range cuts {
		size.X += c.Bounds().Dx() + gap*min(i, 1)
		size.Y = max(size.Y, c.Bounds().Dy())
	}
	sheet := image.NewRGBA(image.Rectangle{Max: size})
	x := 0
	for _, c := range cuts {
		b := c.Bounds()
		at := image.Rect(x, (size.Y-b.Dy())/2, x+b.Dx(), (size.Y+b.Dy())/2+1)
		stddraw.Draw(sheet, at, c, b.Min, stddraw.Src)
		x += b.Dx() + gap
	}
	return sheet
}

func cutSheet(cuts []CutPicture) *draw.List {
	d, longest := &draw.List{}, 0.0
	for _, c := range cuts {
		longest = max(longest, c.WidthMM, c.HeightMM)
		d.H = max(d.H, c.HeightMM)
	}
	for i, c := range cuts {
		d.W += longest * cutGap * float64(min(i, 1))
		top := (d.H - c.HeightMM) / 2
		d.Show(c.Image, draw.Rect{X0: d.W, Y0: top, X1: d.W + c.WidthMM, Y1: top + c.HeightMM})
		d.W += c.WidthMM
	}
	return d
}
