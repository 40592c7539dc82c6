package card

import (
	"bytes"
	"context"
	"image/png"
	"math"
	"path/filepath"
	"strings"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/pdf"
	"ripplewright/internal/show/draw/raster"
	"ripplewright/internal/show/draw/svg"
	"ripplewright/internal/work/atomicfile"
)

const inch = 25.4 // mm

// mostPixels of a picture keep its making under a second and 0.2 GB.
const mostPixels = 10e6

// finest is how many dots per inch, in whole ones, a picture of pages may have.
func finest(pages []*draw.List) float64 {
	inches := 0.0 // square
	for _, p := range pages {
		inches += p.W * p.H / (inch * inch)
	}
	return math.Floor(math.Sqrt(mostPixels / inches))
}

// encoded returns pages as a .pdf, .svg or .png.
func encoded(ext string, pages []*draw.List, title string, dpi float64) ([]byte, error) {
	switch ext {
	case ".pdf":
		return pdf.Encode(pages, title)
	case ".svg":
		return svg.Encode(pages, title)
	}
	if most := finest(pages); dpi > most {
		return nil, flaw.New("card: %d pages at %g dots per inch are more than %.0f million pixels: ask for %.0f dots per inch or fewer, or for a PDF",
			len(pages), dpi, mostPixels/1e6, most)
	}
	whole, _, err := raster.Pages(context.Background(), pages, dpi/inch)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	quick := png.Encoder{CompressionLevel: png.BestSpeed} // a card takes a twenty-fifth more bytes and half the time
	if err := quick.Encode(&b, whole); err != nil {
		return nil, flaw.New("card: PNG: %v", err)
	}
	return b.Bytes(), nil
}

// WritePages writes lists in mm as the pages of a .pdf or .svg, or as one .png, at
// true size. The file is replaced as a whole or not at all. Errors: ErrExtension,
// and what the disk says.
func WritePages(path, title string, pages []*draw.List) error {
	ext := strings.ToLower(filepath.Ext(path))
	if ext != ".pdf" && ext != ".svg" && ext != ".png" {
		return flaw.New("write label %s: %v: .pdf, .svg and .png do", path, ErrExtension)
	}
	data, err := encoded(ext, pages, title, min(labelDPI, finest(pages)))
	if err != nil {
		return flaw.New("write label %s: %v", path, err)
	}
	return atomicfile.Write(path, data)
}
