package card

import (
	"image"
	"image/color"
	"math"
)

// A sheet is a page, or a part of one that is still to be placed: a list of
// marks in mm, x to the right and y down from its upper left corner. What is
// drawn once on sheets comes out the same on every device.
type sheet struct {
	w, h  float64
	marks []mark
}

// mark is one of words, shape, stroke and picture.
type mark interface{ moved(dx, dy float64) mark }

// at is a place on a sheet, mm.
type at struct{ x, y float64 }

// words is a line of text whose baseline starts at a place.
type words struct {
	at
	text string
	style
}

// shape is a filled outline of one or more closed rings.
type shape struct {
	rings  [][]at
	colour color.NRGBA
}

// stroke is an open line with round ends.
type stroke struct {
	line   []at
	width  float64 // mm
	dash   []float64
	colour color.NRGBA
}

// picture is an opaque image stretched over a frame.
type picture struct {
	at
	w, h  float64
	image image.Image
}

func (m words) moved(dx, dy float64) mark   { m.x += dx; m.y += dy; return m }
func (m picture) moved(dx, dy float64) mark { m.x += dx; m.y += dy; return m }

func (m shape) moved(dx, dy float64) mark {
	rings := make([][]at, len(m.rings))
	for i, r := range m.rings {
		rings[i] = shifted(r, dx, dy)
	}
	m.rings = rings
	return m
}

func (m stroke) moved(dx, dy float64) mark {
	m.line = shifted(m.line, dx, dy)
	return m
}

func shifted(line []at, dx, dy float64) []at {
	out := make([]at, len(line))
	for i, p := range line {
		out[i] = at{p.x + dx, p.y + dy}
	}
	return out
}

// write sets s with its baseline at y, from x on, and returns where it ends.
func (s *sheet) write(x, y float64, st style, text string) float64 {
	if text == "" {
		return x
	}
	s.marks = append(s.marks, words{at{x, y}, text, st})
	return x + st.width(text)
}

// writeRight sets s so that it ends at x.
func (s *sheet) writeRight(x, y float64, st style, text string) {
	s.write(x-st.width(text), y, st, text)
}

// writeCentre sets s about x.
func (s *sheet) writeCentre(x, y float64, st style, text string) {
	s.write(x-st.width(text)/2, y, st, text)
}

// box fills an upright rectangle.
func (s *sheet) box(x, y, w, h float64, c color.NRGBA) {
	s.fill(c, []at{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}})
}

// frame draws the edge of a rectangle, of the given width, inside it.
func (s *sheet) frame(x, y, w, h, width float64, c color.NRGBA) {
	s.box(x, y, w, width, c)
	s.box(x, y+h-width, w, width, c)
	s.box(x, y, width, h, c)
	s.box(x+w-width, y, width, h, c)
}

// roundBox fills a rectangle with round corners.
func (s *sheet) roundBox(x, y, w, h, r float64, c color.NRGBA) {
	var ring []at
	for corner, mid := range [4]at{{x + w - r, y + r}, {x + w - r, y + h - r}, {x + r, y + h - r}, {x + r, y + r}} {
		for k := 0; k <= 8; k++ {
			a := (float64(corner) - 1 + float64(k)/8) * math.Pi / 2
			ring = append(ring, at{mid.x + r*math.Cos(a), mid.y + r*math.Sin(a)})
		}
	}
	s.fill(c, ring)
}

// disc fills a circle.
func (s *sheet) disc(x, y, r float64, c color.NRGBA) {
	s.roundBox(x-r, y-r, 2*r, 2*r, r, c)
}

func (s *sheet) fill(c color.NRGBA, rings ...[]at) {
	s.marks = append(s.marks, shape{rings, c})
}

func (s *sheet) draw(c color.NRGBA, width float64, line ...at) {
	s.marks = append(s.marks, stroke{line: line, width: width, colour: c})
}

func (s *sheet) show(img image.Image, x, y, w, h float64) {
	s.marks = append(s.marks, picture{at{x, y}, w, h, img})
}

// place puts a part on s with its upper left corner at x, y.
func (s *sheet) place(part *sheet, x, y float64) {
	for _, m := range part.marks {
		s.marks = append(s.marks, m.moved(x, y))
	}
}

// texts returns every text on the sheets.
func texts(sheets []*sheet) []string {
	var out []string
	for _, s := range sheets {
		for _, m := range s.marks {
			if w, ok := m.(words); ok {
				out = append(out, w.text)
			}
		}
	}
	return out
}

// checkGlyphs returns a *GlyphError for the first text that its font cannot
// set.
func checkGlyphs(sheets []*sheet) error {
	for _, s := range sheets {
		for _, m := range s.marks {
			w, ok := m.(words)
			if !ok {
				continue
			}
			var missing []rune
			for _, r := range w.text {
				if !w.face.has(r) {
					missing = append(missing, r)
				}
			}
			if missing != nil {
				return &GlyphError{w.text, missing}
			}
		}
	}
	return nil
}
