package kit

import (
	"image"
	stddraw "image/draw"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"ripplewright/internal/show/draw"
)

// letters set texts that change from frame to frame of a drag into a sketch's own picture,
// in the window's type and as wide as the toolkit does. The toolkit shapes such a text
// twice, and paints its every pixel through an interface: BenchmarkLine has both.
type letters struct {
	cuts    [2]*cut // of the theme's font, and of the toolkit's, which has what that lacks
	known   map[rune]letter
	nearer  map[[2]rune]float64
	advance float64 // pixels to an em: the toolkit sets letters of 11.5 as far apart as those of 12
}

// A cut is a font in one size.
type cut struct {
	face  font.Face
	file  *sfnt.Font
	buf   sfnt.Buffer
	units float64 // to an em
	casts map[castOf]cast
}

// A cast is the picture of a letter, about its dot. There are four of each, for the quarters of
// a pixel that the dot is at.
type cast struct {
	box  image.Rectangle
	mask image.Image // nil: it has none
}

type castOf struct {
	sign    rune
	quarter int
}

// mostCasts is more than a page has.
const mostCasts = 1024

func (c *cut) cast(k castOf) cast {
	m, ok := c.casts[k]
	if ok {
		return m
	}
	if box, mask, _, _, ok := c.face.Glyph(fixed.Point26_6{X: fixed.Int26_6(16 * k.quarter)}, k.sign); ok && !box.Empty() {
		own := *mask.(*image.Alpha) // the face's is that of its last glyph
		own.Pix = slices.Clone(own.Pix)
		m = cast{box, &own}
	}
	if len(c.casts) >= mostCasts {
		clear(c.casts)
	}
	c.casts[k] = m
	return m
}

// A letter is a sign and how far the next one stands from it, in pixels.
type letter struct {
	of   *cut // nil: neither font has it
	long float64
}

// A typeSize is bold or not, how many units of the window an em takes, and pixels a unit.
type typeSize struct {
	bold        bool
	size, scale float32
}

// cases are the type in the sizes that are in use, of each theme's font. For the window's
// thread.
var cases = map[typeOf]*letters{}

type typeOf struct {
	font string
	typeSize
}

// mostCases is more than one look of the window has; another look begins anew.
const mostCases = 24

func lettersOf(size typeSize) *letters {
	fonts := fontsOf(size.bold)
	k := typeOf{fonts[0].Name(), size}
	l := cases[k]
	if l == nil {
		if len(cases) >= mostCases {
			clear(cases)
		}
		l = &letters{known: map[rune]letter{}, nearer: map[[2]rune]float64{},
			advance: math.Ceil(float64(k.size)) * float64(k.scale)}
		for i, r := range fonts {
			l.cuts[i] = cutOf(r, float64(k.size*k.scale))
		}
		cases[k] = l
	}
	return l
}

// fontsOf are the fonts that the toolkit looks for a sign in, in its order.
func fontsOf(bold bool) [2]fyne.Resource {
	own := fyne.CurrentApp().Settings().Theme().Font(fyne.TextStyle{Bold: bold})
	if bold {
		return [2]fyne.Resource{own, theme.DefaultTextBoldFont()}
	}
	return [2]fyne.Resource{own, theme.DefaultTextFont()}
}

var parsed = map[string]*sfnt.Font{}

// cutOf is a font in a size, nil if it is none.
func cutOf(r fyne.Resource, pixels float64) *cut {
	f, ok := parsed[r.Name()]
	if !ok {
		f, _ = sfnt.Parse(r.Content())
		parsed[r.Name()] = f
	}
	if f == nil {
		return nil
	}
	face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: pixels, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		return nil
	}
	return &cut{face: face, file: f, units: float64(f.UnitsPerEm()), casts: map[castOf]cast{}}
}

func (l *letters) of(r rune) letter {
	k, ok := l.known[r]
	if ok {
		return k
	}
	for _, f := range l.cuts {
		if f == nil {
			continue
		}
		if i, err := f.file.GlyphIndex(&f.buf, r); err == nil && i != 0 {
			a, _ := f.file.GlyphAdvance(&f.buf, i, fixed.I(int(f.units)), font.HintingNone)
			k = letter{f, float64(a) / 64 / f.units * l.advance}
			break
		}
	}
	l.known[r] = k
	return k
}

// closer is by how much b moves towards a.
func (l *letters) closer(f *cut, a, b rune) float64 {
	k, ok := l.nearer[[2]rune{a, b}]
	if !ok {
		i, _ := f.file.GlyphIndex(&f.buf, a)
		j, _ := f.file.GlyphIndex(&f.buf, b)
		by, _ := f.file.Kern(&f.buf, i, j, fixed.I(int(f.units)), font.HintingNone) // 0 where there is none
		k = float64(by) / 64 / f.units * l.advance
		l.nearer[[2]rune{a, b}] = k
	}
	return k
}

// have reports whether s can be set: of signs that both fonts lack, and of scripts that are
// more than letters in a row, the toolkit knows more.
func (l *letters) have(s string) bool {
	for _, r := range s {
		if r >= 0x300 && r < 0x2000 || l.of(r).of == nil {
			return false
		}
	}
	return true
}

// each goes along s, which begins at x, and returns where it ends.
func (l *letters) each(s string, x float64, do func(r rune, of *cut, x float64)) float64 {
	var last rune
	var before *cut
	for _, r := range s {
		k := l.of(r)
		if k.of == nil {
			continue
		}
		if before == k.of {
			x += l.closer(k.of, last, r)
		}
		if do != nil {
			do(r, k.of, x)
		}
		x += k.long
		last, before = r, k.of
	}
	return x
}

// widthOf is the length of s in units of the window. The toolkit's own answer to a text that it
// has not met takes some 0.1 ms.
func widthOf(s string, size float32, style fyne.TextStyle) float32 {
	if plain := style == (fyne.TextStyle{Bold: style.Bold}); plain {
		if l := lettersOf(typeSize{style.Bold, size, 1}); l.have(s) {
			return float32(l.each(s, 0, nil))
		}
	}
	return fyne.MeasureText(s, size, style).Width
}

// A lettering is a text that is set in a sketch's picture, in units of the window.
type lettering struct {
	text draw.Text
	at   fyne.Position // the corner of its line
	size fyne.Size
	base float32 // of the line, from its top
}

// letteringOf is t as letters set it; ok is false where the toolkit must.
func letteringOf(t draw.Text) (set lettering, ok bool) {
	style := fyne.TextStyle{Bold: t.Face == draw.SansBold}
	l := lettersOf(typeSize{style.Bold, float32(t.Size), 1})
	if !l.have(t.S) {
		return set, false
	}
	line, base := fyne.CurrentApp().Driver().RenderedTextSize("M", float32(t.Size), style, nil)
	set = lettering{text: t, base: base, size: fyne.NewSize(float32(l.each(t.S, 0, nil)), line.Height)}
	set.at = corner(t, set.size)
	return set, true
}

// box is where it stands, in pixels of a screen of a scale. No letter of the window's type
// leaves its line by more than a pixel.
func (l *lettering) box(scale float32) image.Rectangle {
	x0, y0 := math.Floor(float64(l.at.X*scale))-1, math.Floor(float64(l.at.Y*scale))-1
	x1, y1 := math.Ceil(float64((l.at.X+l.size.Width)*scale))+2, math.Ceil(float64((l.at.Y+l.size.Height)*scale))+1
	return image.Rect(int(x0), int(y0), int(x1), int(y1))
}

// on sets it on a picture of a scale, its letters where the toolkit has them.
func (l *lettering) on(img *image.RGBA, scale float32) {
	t := &l.text
	x := math.Round(float64(l.at.X * scale))
	y := math.Round(float64(l.at.Y*scale)) + math.Ceil(float64(l.base*scale))
	ink := image.NewUniform(t.Colour)
	lettersOf(typeSize{t.Face == draw.SansBold, float32(t.Size), scale}).each(t.S, x, func(r rune, of *cut, x float64) {
		quarters := int(math.Round(4 * x))
		if m := of.cast(castOf{r, quarters & 3}); m.mask != nil {
			stddraw.DrawMask(img, m.box.Add(image.Pt(quarters>>2, int(y))), ink, image.Point{}, m.mask, image.Point{}, stddraw.Over)
		}
	})
}
