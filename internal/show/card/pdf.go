package card

import (
	"bytes"
	"fmt"
	"image/color"
	"image/png"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// writtenOn is every card's date, so that the same card has the same bytes.
var writtenOn = time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)

// pdfOf returns the sheets as the pages of a PDF. The same sheets give the
// same bytes.
func pdfOf(sheets []*sheet, title string) ([]byte, error) {
	d := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm"})
	d.SetCatalogSort(true)
	d.SetCreationDate(writtenOn)
	d.SetModificationDate(writtenOn)
	d.SetTitle(title, true)
	d.SetCreator("Ripplewright", true)
	d.SetAutoPageBreak(false, 0)
	d.SetMargins(0, 0, 0)
	d.SetLineCapStyle("round")
	d.SetLineJoinStyle("round")
	p := pdfPage{Fpdf: d, alpha: 255}
	for _, s := range sheets {
		d.AddPageFormat("P", fpdf.SizeType{Wd: s.w, Ht: s.h})
		for _, m := range s.marks {
			p.put(m)
		}
	}
	var b bytes.Buffer
	if err := d.Output(&b); err != nil {
		return nil, fmt.Errorf("card: PDF: %w", err)
	}
	return b.Bytes(), nil
}

type pdfPage struct {
	*fpdf.Fpdf
	added  [numFaces]bool
	images int
	alpha  uint8
}

func (p *pdfPage) put(m mark) {
	switch m := m.(type) {
	case words:
		p.opacity(m.colour)
		name := fmt.Sprintf("face%d", m.face)
		if !p.added[m.face] {
			p.AddUTF8FontFromBytes(name, "", faceBytes[m.face])
			p.added[m.face] = true
		}
		p.SetFont(name, "", m.size)
		p.SetTextColor(int(m.colour.R), int(m.colour.G), int(m.colour.B))
		p.Text(m.x, m.y, m.text)
	case shape:
		p.opacity(m.colour)
		p.SetFillColor(int(m.colour.R), int(m.colour.G), int(m.colour.B))
		for _, ring := range m.rings {
			p.trace(ring)
			p.ClosePath()
		}
		p.DrawPath("f")
	case stroke:
		p.opacity(m.colour)
		p.SetDrawColor(int(m.colour.R), int(m.colour.G), int(m.colour.B))
		p.SetLineWidth(m.width)
		p.SetDashPattern(m.dash, 0)
		p.trace(m.line)
		p.DrawPath("D")
	case picture:
		p.opacity(color.NRGBA{A: 255})
		var b bytes.Buffer
		if err := png.Encode(&b, m.image); err != nil {
			p.SetError(err)
			return
		}
		p.images++
		name := fmt.Sprintf("picture%d", p.images)
		p.RegisterImageOptionsReader(name, fpdf.ImageOptions{ImageType: "png"}, &b)
		p.ImageOptions(name, m.x, m.y, m.w, m.h, false, fpdf.ImageOptions{ImageType: "png"}, 0, "")
	}
}

func (p *pdfPage) trace(line []at) {
	for i, q := range line {
		if i == 0 {
			p.MoveTo(q.x, q.y)
		} else {
			p.LineTo(q.x, q.y)
		}
	}
}

func (p *pdfPage) opacity(c color.NRGBA) {
	if c.A != p.alpha {
		p.SetAlpha(float64(c.A)/255, "Normal")
		p.alpha = c.A
	}
}
