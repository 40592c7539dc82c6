package typeset

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/draw"
)

var ink = draw.RGB(0x1c2f42)

func TestBrokenLinesLoseNoWord(t *testing.T) {
	long := "Stir  slowly, " + strings.Repeat("swirl", 30) + ", then stop."
	for _, width := range []float64{5, 20, 60, 200} {
		var got strings.Builder
		for _, line := range Wrapped([]Run{{Plain(long), Style{draw.Sans, 9, ink}}, {" And ", Style{draw.SansBold, 9, ink}}, {"serve.", Style{draw.Sans, 9, ink}}}, width) {
			w := 0.0
			for _, r := range line {
				got.WriteString(r.Text)
				w += r.Width(r.Text)
			}
			assert.LessOrEqual(t, w, width+1e-9)
		}
		want := strings.ReplaceAll(Plain(long)+" And serve.", " ", "")
		assert.Equal(t, want, strings.ReplaceAll(strings.ReplaceAll(got.String(), " ", ""), "\u00a0", ""))
	}
}
