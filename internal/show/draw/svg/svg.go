// Package svg writes lists as one SVG 1.1 picture.
package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"image/png"
	"math"
	"strconv"
	"strings"
	"unicode"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
)

const unit = "mm" // of every list

// Encode returns lists, in mm, as a picture at true size, one under the other on
// white. The same lists give the same bytes. Texts may be searched and copied: each
// keeps its length, whatever font of the reader stands in for ours.
func Encode(pages []*draw.List, title string) ([]byte, error) {
	var wide, high float64
	for _, p := range pages {
		wide, high = max(wide, p.W), high+p.H
	}
	w := writer{}
	w.print(xml.Header+`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" `+
		`width="%[1]s%[3]s" height="%[2]s%[3]s" viewBox="0 0 %[1]s %[2]s" stroke-linecap="round" stroke-linejoin="round">`+"\n",
		number(wide), number(high), unit)
	w.print("<title>%s</title>\n", escaped(title))
	top := 0.0
	for _, p := range pages {
		w.print(`<g transform="translate(0 %s)">`+"\n", number(top))
		w.print(`<rect width="%s" height="%s" fill="#ffffff"/>`+"\n", number(p.W), number(p.H))
		for i := range p.Marks {
			if err := w.mark(&p.Marks[i]); err != nil {
				return nil, fmt.Errorf("SVG: %w", err)
			}
		}
		for _, t := range p.Texts {
			w.text(t)
		}
		w.print("</g>\n")
		top += p.H
	}
	w.print("</svg>\n")
	return w.Bytes(), nil
}

type writer struct {
	bytes.Buffer
	clips int
}

func (w *writer) print(format string, a ...any) { fmt.Fprintf(w, format, a...) }

func (w *writer) mark(m *draw.Mark) error {
	switch {
	case m.Line.Width > 0:
		w.print(`<path d="%s" fill="none" %s stroke-width="%s"`, path(m, ""), paint("stroke", m.Line.Colour), number(m.Line.Width))
		for i, l := range m.Line.Dash.Pattern() {
			w.print(`%s%s`, [...]string{` stroke-dasharray="`, " "}[min(i, 1)], number(l*m.Line.Width))
		}
		if m.Line.Dash.Pattern() != nil {
			w.print(`"`)
		}
		w.print("/>\n")
	case m.Picture != nil:
		return w.picture(m)
	case m.Fill.A > 0:
		w.print(`<path d="%s" %s/>`+"\n", path(m, "Z"), paint("fill", m.Fill))
	}
	return nil
}

func (w *writer) picture(m *draw.Mark) error {
	var b bytes.Buffer
	if err := png.Encode(&b, m.Picture); err != nil {
		return err
	}
	w.clips++
	w.print(`<clipPath id="outline%d"><path d="%s"/></clipPath>`+"\n", w.clips, path(m, "Z"))
	f := m.Frame
	w.print(`<image x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" clip-path="url(#outline%d)" xlink:href="data:image/png;base64,%s"/>`+"\n",
		number(f.X0), number(f.Y0), number(f.Dx()), number(f.Dy()), w.clips, base64.StdEncoding.EncodeToString(b.Bytes()))
	return nil
}

// families are the faces, and what has their widths or their look elsewhere.
var families = [draw.NumFaces]string{
	draw.Sans:        `font-family="Liberation Sans, Arial, Helvetica, sans-serif"`,
	draw.SansBold:    `font-family="Liberation Sans, Arial, Helvetica, sans-serif" font-weight="bold"`,
	draw.SansItalic:  `font-family="Liberation Sans, Arial, Helvetica, sans-serif" font-style="italic"`,
	draw.SerifBold:   `font-family="Liberation Serif, Times New Roman, Times, serif" font-weight="bold"`,
	draw.SerifItalic: `font-family="Liberation Serif, Times New Roman, Times, serif" font-style="italic"`,
}

func (w *writer) text(t draw.Text) {
	x, y := face.Start(t)
	turn := ""
	if t.Turn != 0 {
		turn = fmt.Sprintf(` transform="rotate(%s %s %s)"`, number(t.Turn*180/math.Pi), number(t.At.X), number(t.At.Y))
	}
	w.print(`<text x="%s" y="%s"%s %s font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs" xml:space="preserve" %s>%s</text>`+"\n",
		number(x), number(y), turn, families[t.Face], number(t.Size), number(t.Size*face.Width(t.Face, t.S)), paint("fill", t.Colour), escaped(face.Settable(t.Face, t.S)))
}

// path is m's outline or line as path data; end closes each piece.
func path(m *draw.Mark, end string) string {
	var b []byte
	m.Pieces(func(line []draw.Point) {
		for i, p := range line {
			b = append(b, "ML"[min(i, 1)])
			b = append(b, number(p.X)...)
			b = append(b, ' ')
			b = append(b, number(p.Y)...)
		}
		if len(line) == 1 && end == "" { // a dot
			b = append(b, "h0"...)
		}
		b = append(b, end...)
	})
	return string(b)
}

// paint is a colour as the attribute what, with its opacity.
func paint(what string, c draw.Colour) string {
	s := fmt.Sprintf(`%s="#%02x%02x%02x"`, what, c.R, c.G, c.B)
	if c.A < 255 {
		s += fmt.Sprintf(` %s-opacity="%s"`, what, number(float64(c.A)/255))
	}
	return s
}

// number writes v to a micrometre.
func number(v float64) string {
	s := strconv.AppendFloat(nil, v, 'f', 3, 64)
	return string(bytes.TrimSuffix(bytes.TrimRight(s, "0"), []byte(".")))
}

// escaped is s as XML holds it, with U+FFFD for what XML cannot and without the signs that
// turn a text around.
func escaped(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Cf, r) || r == '\u2028' || r == '\u2029' {
			return -1
		}
		return r
	}, s)
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(s)) // a buffer takes all
	return b.String()
}
