package card

import (
	"fmt"
	"image/color"
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
)

// point is a typographic point, in mm.
const point = 25.4 / 72

// face is a cut of type. All are Liberation fonts (SIL Open Font License).
type face uint8

const (
	sans face = iota
	sansBold
	sansItalic
	serifBold
	serifItalic
	numFaces
)

var faceBytes = [numFaces][]byte{
	sans: liberationsansregular.TTF, sansBold: liberationsansbold.TTF, sansItalic: liberationsansitalic.TTF,
	serifBold: liberationserifbold.TTF, serifItalic: liberationserifitalic.TTF,
}

// outlines is a parsed font with its metrics at hand. It is used under its
// lock, since the font's buffer is shared.
type outlines struct {
	sync.Mutex
	font  *sfnt.Font
	buf   sfnt.Buffer
	upem  fixed.Int26_6
	units float64
	known map[rune]glyph
}

type glyph struct {
	index   sfnt.GlyphIndex
	advance float64 // of the em
}

var faces = sync.OnceValue(func() *[numFaces]*outlines {
	var all [numFaces]*outlines
	for i := range all {
		f, err := sfnt.Parse(faceBytes[i])
		if err != nil {
			panic(fmt.Sprintf("card: font %d: %v", i, err)) // the bytes are compiled in
		}
		u := f.UnitsPerEm()
		all[i] = &outlines{font: f, upem: fixed.I(int(u)), units: float64(u), known: map[rune]glyph{}}
	}
	return &all
})

// glyph returns the glyph of r, index 0 where the font has none. Signs beyond
// the basic plane count as missing, because a PDF's subset cannot hold them.
func (o *outlines) glyph(r rune) glyph {
	if g, ok := o.known[r]; ok {
		return g
	}
	var g glyph
	if r <= 0xffff {
		if i, err := o.font.GlyphIndex(&o.buf, r); err == nil {
			g.index = i
		}
	}
	if a, err := o.font.GlyphAdvance(&o.buf, g.index, o.upem, font.HintingNone); err == nil {
		g.advance = float64(a) / 64 / o.units
	}
	o.known[r] = g
	return g
}

// has reports whether the face can set r: that it has a glyph for it, and that
// glyphs set one after the other from the left spell it, which they do not
// for scripts written from the right or with marks over their letters.
func (f face) has(r rune) bool {
	if unicode.In(r, unicode.Mn, unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana, unicode.Nko) {
		return false
	}
	o := faces()[f]
	o.Lock()
	defer o.Unlock()
	return o.glyph(r).index != 0
}

// style is how text is set.
type style struct {
	face   face
	size   float64 // pt
	colour color.NRGBA
}

func (s style) in(c color.NRGBA) style { s.colour = c; return s }
func (s style) bold() style            { s.face = sansBold; return s }

// width returns the length of s set in this style, in mm. There is no kerning,
// on any device.
func (st style) width(s string) float64 {
	o := faces()[st.face]
	o.Lock()
	defer o.Unlock()
	w := 0.0
	for _, r := range s {
		w += o.glyph(r).advance
	}
	return w * st.size * point
}

// Heights of Liberation Sans, of the em: its letters are as high as those of
// Arial, whose widths it shares.
const (
	capHeight = 0.729 // also of the serif, nearly
	xHeight   = 0.528
)

// GlyphError says that the card's fonts lack signs that a text needs.
type GlyphError struct {
	Text    string // the text, as given
	Missing []rune
}

func (e *GlyphError) Error() string {
	var codes []string // the sign itself may not be readable on this screen either
	for _, r := range e.Missing {
		codes = append(codes, fmt.Sprintf("U+%04X", r))
	}
	return fmt.Sprintf("card: the fonts cannot set “%s” (%s) of the text “%s”", string(e.Missing), strings.Join(codes, ", "), e.Text)
}
