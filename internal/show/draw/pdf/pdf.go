// Package pdf writes lists as the pages of a PDF.
package pdf

import (
	"bytes"
	"fmt"
	"image/png"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
)

// writtenOn is the date of every file, so that the same lists have the same bytes.
var writtenOn = time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)

const point = 25.4 / 72 // mm

// Encode returns lists, in mm, as pages of their sizes. The same lists give the same
// bytes. Texts may be searched and copied, face.Mark among them for what their face
// cannot set. A picture is laid over its whole frame, whatever its outline.
func Encode(pages []*draw.List, title string) ([]byte, error) {
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
	w := writer{Fpdf: d, alpha: 255}
	for _, p := range pages {
		d.AddPageFormat("P", fpdf.SizeType{Wd: p.W, Ht: p.H})
		for i := range p.Marks {
			w.mark(&p.Marks[i])
		}
		for _, t := range p.Texts {
			w.text(t)
		}
	}
	var b bytes.Buffer
	if err := d.Output(&b); err != nil {
		return nil, fmt.Errorf("PDF: %w", err)
	}
	return b.Bytes(), nil
}

type writer struct {
	*fpdf.Fpdf
	added  [draw.NumFaces]bool
	images int
	alpha  uint8
}

func (w *writer) mark(m *draw.Mark) {
	switch {
	case m.Line.Width > 0:
		c := m.Line.Colour
		w.opacity(c.A)
		w.SetDrawColor(int(c.R), int(c.G), int(c.B))
		w.SetLineWidth(m.Line.Width)
		var dashes []float64
		for _, l := range m.Line.Dash.Pattern() {
			dashes = append(dashes, l*m.Line.Width)
		}
		w.SetDashPattern(dashes, 0)
		m.Pieces(func(line []draw.Point) {
			w.trace(line)
			w.DrawPath("D")
		})
	case m.Picture != nil:
		w.picture(m)
	case m.Fill.A > 0:
		w.opacity(m.Fill.A)
		w.SetFillColor(int(m.Fill.R), int(m.Fill.G), int(m.Fill.B))
		m.Pieces(func(ring []draw.Point) {
			w.trace(ring)
			w.ClosePath()
		})
		w.DrawPath("f")
	}
}

func (w *writer) picture(m *draw.Mark) {
	w.opacity(255)
	var b bytes.Buffer
	if err := png.Encode(&b, m.Picture); err != nil {
		w.SetError(err)
		return
	}
	w.images++
	name := fmt.Sprintf("picture%d", w.images)
	w.RegisterImageOptionsReader(name, fpdf.ImageOptions{ImageType: "png"}, &b)
	w.ImageOptions(name, m.Frame.X0, m.Frame.Y0, m.Frame.Dx(), m.Frame.Dy(), false, fpdf.ImageOptions{ImageType: "png"}, 0, "")
}

func (w *writer) text(t draw.Text) {
	w.opacity(t.Colour.A)
	name := fmt.Sprintf("face%d", t.Face)
	if !w.added[t.Face] {
		w.AddUTF8FontFromBytes(name, "", face.File(t.Face))
		w.added[t.Face] = true
	}
	w.SetFont(name, "", t.Size/point)
	w.SetTextColor(int(t.Colour.R), int(t.Colour.G), int(t.Colour.B))
	x, y := face.Start(t)
	if t.Turn != 0 { // whose angles go the other way
		w.TransformBegin()
		w.TransformRotate(-t.Turn*180/math.Pi, t.At.X, t.At.Y)
		defer w.TransformEnd()
	}
	w.Text(x, y, face.Settable(t.Face, t.S))
}

func (w *writer) trace(line []draw.Point) {
	for i, q := range line {
		if i == 0 {
			w.MoveTo(q.X, q.Y)
		} else {
			w.LineTo(q.X, q.Y)
		}
	}
}

func (w *writer) opacity(a uint8) {
	if a != w.alpha {
		w.SetAlpha(float64(a)/255, "Normal")
		w.alpha = a
	}
}
