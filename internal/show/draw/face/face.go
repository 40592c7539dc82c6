// Package face knows the type that lists are set in on paper and in pictures: the
// Liberation fonts (SIL Open Font License), whose widths are those of Arial and
// Times. There is no kerning, on any device. Lengths are of the em. A sign that a face
// cannot set is Mark, in widths and outlines too.
package face

import (
	"fmt"
	"math"
	"strings"
	"sync"
	"unicode"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansitalic"
	"github.com/go-fonts/liberation/liberationsansregular"
	"github.com/go-fonts/liberation/liberationserifbold"
	"github.com/go-fonts/liberation/liberationserifitalic"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"ripplewright/internal/show/draw"
)

// Heights of Liberation Sans, and nearly of the serif.
const (
	CapHeight = 0.729
	XHeight   = 0.528
)

// Mark stands for a sign that a face cannot set. Every face has it itself.
const Mark = '□'

var files = [draw.NumFaces][]byte{
	draw.Sans: liberationsansregular.TTF, draw.SansBold: liberationsansbold.TTF, draw.SansItalic: liberationsansitalic.TTF,
	draw.SerifBold: liberationserifbold.TTF, draw.SerifItalic: liberationserifitalic.TTF,
}

// File returns the TrueType file of a face. Do not change it.
func File(f draw.Face) []byte { return files[f] }

// outlines is a parsed font with its metrics at hand. It is used under its
// lock, since the font's buffer is shared.
type outlines struct {
	sync.Mutex
	font  *sfnt.Font
	buf   sfnt.Buffer
	upem  fixed.Int26_6
	units float64
	known map[rune]*glyph
}

type glyph struct {
	index   sfnt.GlyphIndex
	advance float64       // of the em
	outline sfnt.Segments // nil until it is drawn
}

var faces = sync.OnceValue(func() *[draw.NumFaces]*outlines {
	var all [draw.NumFaces]*outlines
	for i := range all {
		f, err := sfnt.Parse(files[i])
		if err != nil {
			panic(fmt.Sprintf("face: font %d: %v", i, err)) // the bytes are compiled in
		}
		u := f.UnitsPerEm()
		all[i] = &outlines{font: f, upem: fixed.I(int(u)), units: float64(u), known: map[rune]*glyph{}}
	}
	return &all
})

// mostKnown is how many signs a face keeps at hand, more than ordinary words have.
const mostKnown = 1024

// glyph returns the glyph of r, that of Mark where the face cannot set r.
func (o *outlines) glyph(r rune) *glyph {
	if g, ok := o.known[r]; ok {
		return g
	}
	g := &glyph{index: o.find(r)}
	if g.index == 0 {
		g.index = o.find(Mark)
	}
	if a, err := o.font.GlyphAdvance(&o.buf, g.index, o.upem, font.HintingNone); err == nil {
		g.advance = float64(a) / 64 / o.units
	}
	if len(o.known) < mostKnown {
		o.known[r] = g
	}
	return g
}

// find returns the index of r's glyph, 0 where the font has none, where glyphs set
// one after the other from the left do not spell r, as in scripts written from the
// right or with marks over their letters, and beyond the basic plane, which the
// subset in a PDF cannot hold.
func (o *outlines) find(r rune) sfnt.GlyphIndex {
	if r > 0xffff || unicode.In(r, unicode.Mn, unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana, unicode.Nko) {
		return 0
	}
	i, err := o.font.GlyphIndex(&o.buf, r)
	if err != nil {
		return 0
	}
	return i
}

func has(f draw.Face, r rune) bool {
	o := faces()[f]
	o.Lock()
	defer o.Unlock()
	return o.find(r) != 0
}

// Missing returns the signs of s that some face cannot set, in order, each once.
func Missing(s string) []rune {
	var out []rune
	seen := map[rune]bool{}
	for _, r := range s {
		if r < 0x7f || seen[r] {
			continue
		}
		seen[r] = true
		for f := draw.Face(0); f < draw.NumFaces; f++ {
			if !has(f, r) {
				out = append(out, r)
				break
			}
		}
	}
	return out
}

// Settable returns s as the face sets it: with Mark in place of each sign that it
// cannot set.
func Settable(f draw.Face, s string) string {
	return strings.Map(func(r rune) rune {
		if r < 0x7f || has(f, r) {
			return r
		}
		return Mark
	}, s)
}

// Width returns the length of s.
func Width(f draw.Face, s string) float64 {
	o := faces()[f]
	o.Lock()
	defer o.Unlock()
	w := 0.0
	for _, r := range s {
		w += o.glyph(r).advance
	}
	return w
}

// Start returns where the baseline of a text begins, in units of its list.
func Start(t draw.Text) (x, y float64) {
	x, y = t.At.X, t.At.Y+t.Rise.Drop()*t.Size
	switch t.Align {
	case draw.Centre:
		x -= t.Size * Width(t.Face, t.S) / 2
	case draw.Right:
		x -= t.Size * Width(t.Face, t.S)
	}
	return x, y
}

// Turned returns a point of a text that is set upright as it stands once the text is
// turned about its anchor; both in the units that scale units of the list come to.
func Turned(t draw.Text, x, y, scale float64) (float64, float64) {
	if t.Turn == 0 {
		return x, y
	}
	sin, cos := math.Sincos(t.Turn)
	ax, ay := t.At.X*scale, t.At.Y*scale
	return ax + (x-ax)*cos - (y-ay)*sin, ay + (x-ax)*sin + (y-ay)*cos
}

// A Pen takes outlines, as a vector.Rasterizer does.
type Pen interface {
	MoveTo(ax, ay float32)
	LineTo(bx, by float32)
	QuadTo(bx, by, cx, cy float32)
	CubeTo(bx, by, cx, cy, dx, dy float32)
	ClosePath()
}

// Trace draws the letters of s, unhinted, with the baseline from (x, y), the em of
// the given size. It leaves out letters that lie wholly outside 0 to width.
func Trace(pen Pen, f draw.Face, s string, size, x, y, width float64) {
	o := faces()[f]
	o.Lock()
	defer o.Unlock()
	for _, r := range s {
		g := o.glyph(r)
		if x > -2*size && x < width+size { // no letter reaches farther from its place
			o.trace(pen, g, size, x, y)
		}
		x += g.advance * size
	}
}

func (o *outlines) trace(pen Pen, g *glyph, size, x, y float64) {
	if g.outline == nil {
		segments, err := o.font.LoadGlyph(&o.buf, g.index, o.upem, nil)
		if err != nil {
			return // a sign without an outline, such as a space
		}
		g.outline = append(sfnt.Segments{}, segments...)
	}
	k := size / o.units / 64
	to := func(p fixed.Point26_6) (float32, float32) {
		return float32(x + float64(p.X)*k), float32(y + float64(p.Y)*k)
	}
	for _, s := range g.outline {
		ax, ay := to(s.Args[0])
		bx, by := to(s.Args[1])
		cx, cy := to(s.Args[2])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			pen.ClosePath()
			pen.MoveTo(ax, ay)
		case sfnt.SegmentOpLineTo:
			pen.LineTo(ax, ay)
		case sfnt.SegmentOpQuadTo:
			pen.QuadTo(ax, ay, bx, by)
		case sfnt.SegmentOpCubeTo:
			pen.CubeTo(ax, ay, bx, by, cx, cy)
		}
	}
	pen.ClosePath()
}
