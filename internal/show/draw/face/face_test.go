package face

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/draw"
)

// Liberation Sans and Serif have the widths of Arial and Times: the advances of
// their standard PostScript faces, thousandths of the em, from Adobe's Core 14 AFM
// files (Helvetica, Helvetica-Bold, Helvetica-Oblique, Times-Bold, Times-Italic;
// from memory).
func TestWidthsAreThoseOfTheStandardFaces(t *testing.T) {
	for f, want := range map[draw.Face]map[string]float64{
		draw.Sans: {"A": .667, "i": .222, "m": .833, "0": .556}, draw.SansBold: {"A": .722, "i": .278, "m": .889},
		draw.SansItalic: {"A": .667, "m": .833}, draw.SerifBold: {"A": .722, "i": .278, "0": .5}, draw.SerifItalic: {"A": .611, "m": .722},
	} {
		for s, w := range want {
			assert.InDelta(t, w, Width(f, s), 0.0006, "face %d, %s", f, s)
			assert.InDelta(t, 3*w, Width(f, s+s+s), 0.002)
		}
	}
}

func TestWhatNoFaceHasIsTheMark(t *testing.T) {
	for f := draw.Face(0); f < draw.NumFaces; f++ {
		assert.Empty(t, Missing(string(Mark)))
		assert.Equal(t, "a□b□ □", Settable(f, "a柚b子 🍯"))
		assert.Equal(t, Width(f, "a□"), Width(f, "a柚"))
	}
	assert.Equal(t, []rune("柚子"), Missing("柚 honey 子柚"))
	assert.Empty(t, Missing("Мёд, μέλι, crème −½ °C"))
	assert.Equal(t, []rune("ד"), Missing("ד"), "the font has it, but it is written from the right")
}

func TestATextStartsWhereItsAnchorSays(t *testing.T) {
	w := 10 * Width(draw.Sans, "tub")
	for align, x := range map[draw.Align]float64{draw.Left: 50, draw.Centre: 50 - w/2, draw.Right: 50 - w} {
		gx, gy := Start(draw.Text{At: draw.Point{X: 50, Y: 20}, S: "tub", Size: 10, Align: align, Rise: draw.Baseline})
		assert.InDelta(t, x, gx, 1e-9)
		assert.Equal(t, 20.0, gy)
	}
}
