// Package card prints a design: a card of two pages or more to make the
// dessert from, as PDF, picture or Markdown, and the label's panels at the
// size the rules ask for.
//
// A page is composed once, as a list of marks in mm, and handed to a PDF or to
// pixels; so the picture is the page. Text is set in the Liberation fonts. The
// same design gives the same bytes.
//
// Nothing is computed here: every figure is that of packages model and label,
// and every word that of package say.
package card

import (
	"context"
	"image"
	"path/filepath"
	"strings"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/label"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/raster"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/design"
)

// Paper is a size of paper.
type Paper string

// The papers.
const (
	A4     Paper = "a4"     // 210 mm × 297 mm, ISO 216
	Letter Paper = "letter" // 8½ in × 11 in
	A5     Paper = "a5"     // 148 mm × 210 mm, ISO 216
)

// Size returns the width and height, in mm.
func (p Paper) Size() (w, h float64) {
	switch p {
	case Letter:
		return 215.9, 279.4
	case A5:
		return 148, 210
	}
	return 210, 297
}

// Options adjusts a card. The zero Options is a US panel on A4 at 150 dots per
// inch.
type Options struct {
	Region label.Region // whose label and measures; "": US
	Paper  Paper        // "": A4
	DPI    float64      // of a picture, 30 to 600; 0: 150, or fewer for a long card
	Style  say.Style    // how quantities read
	Cold   *cold.Answer // of the same design, for the times in freezer and kitchen; nil: none are printed

	Parts Sections // what stands on it; 0: all
	Pages int      // as many at most, 1 or 2; what has no room is left out and named; 0: as many as it takes
	Big   bool     // weights and steps in big type, for the kitchen

	// Remedies are those of the same design; nil: the card advises nothing.
	Remedies *balance.Remedies

	usual bool // nobody asked for this DPI
}

// mostPages is the largest limit of pages that may be asked for.
const mostPages = 2

// pdfDPI is the fineness of the pictures in a PDF, whose text has none.
const pdfDPI = 300

func (o Options) filled() (Options, error) {
	if o.Region == "" {
		o.Region = label.US
	}
	if o.Paper == "" {
		o.Paper = A4
	}
	switch {
	case o.Region != label.US && o.Region != label.EU:
		return o, flaw.New("card: no rules are known for region %q", o.Region)
	case o.Paper != A4 && o.Paper != Letter && o.Paper != A5:
		return o, flaw.New("card: paper %q is not one of %q, %q, %q", o.Paper, A4, Letter, A5)
	case o.Pages < 0 || o.Pages > mostPages:
		return o, flaw.New("card: at most %d pages is not a choice: 1, 2, or 0 for as many as it takes", o.Pages)
	}
	if o.Parts &= allSections; o.Parts == 0 {
		o.Parts = allSections
	}
	if o.DPI == 0 {
		o.DPI, o.usual = 150, true
	}
	return o, checkDPI(o.DPI)
}

func checkDPI(dpi float64) error {
	if !(dpi >= 30 && dpi <= 600) {
		return flaw.New("card: %g dots per inch is outside 30 to 600", dpi)
	}
	return nil
}

// ErrExtension says that a path ends in none of the extensions that name a
// form.
var ErrExtension = flaw.New("the extension names no form of card")

// Write puts the card of an evaluated design into the file at path: a PDF, a
// PNG or SVG of the same pages one under the other, or Markdown with the same words,
// by the extension .pdf, .png, .svg or .md, or one page of HTML for a phone, .html. The file is replaced as a whole or not at
// all.
//
// Letters that the fonts lack are marked: Lacking names them. Errors:
// ErrExtension; ErrPages; those of Options and of writing.
func Write(path string, d design.Design, r *model.Result, o Options) error {
	o, err := o.filled()
	if err != nil {
		return err
	}
	var data []byte
	switch ext := strings.ToLower(filepath.Ext(path)); ext {
	case ".md":
		data = markdown(contentOf(d, r, o).only(o.Parts))
	case ".html":
		data, err = phonePage(contentOf(d, r, o), o.Parts)
	case ".pdf", ".png", ".svg":
		if ext != ".png" {
			o.DPI = pdfDPI
		}
		c := contentOf(d, r, o)
		var pages []*draw.List
		if pages, err = compose(context.Background(), d, r, c, o); err != nil {
			return err
		}
		if o.usual {
			o.DPI = min(o.DPI, finest(pages))
		}
		data, err = encoded(ext, pages, c.name, o.DPI)
	default:
		err = flaw.New("write card %s: %v: .pdf, .png, .svg, .md and .html do", path, ErrExtension)
	}
	if err != nil {
		return err
	}
	return atomicfile.Write(path, data)
}

// Render returns pictures of the card's pages, those that Write puts into a PNG,
// but at fewer dots per inch where there are so many pages that they would take
// more than mostPixels. A cancelled context ends it early with ctx.Err(); the
// other errors are ErrPages and those of Options.
func Render(ctx context.Context, d design.Design, r *model.Result, o Options) ([]image.Image, error) {
	o, err := o.filled()
	if err != nil {
		return nil, err
	}
	pages, err := compose(ctx, d, r, contentOf(d, r, o), o)
	if err != nil {
		return nil, err
	}
	_, images, err := raster.Pages(ctx, pages, min(o.DPI, finest(pages))/inch)
	return images, err
}
