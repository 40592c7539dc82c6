package card

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestBrokenLinesLoseNoWord(t *testing.T) {
	long := "Stir  slowly, " + strings.Repeat("swirl", 30) + ", then stop."
	for _, width := range []float64{5, 20, 60, 200} {
		var got strings.Builder
		for _, line := range wrapped([]run{{plain(long), body}, {" And ", strong}, {"serve.", body}}, width) {
			w := 0.0
			for _, r := range line {
				got.WriteString(r.text)
				w += r.width(r.text)
			}
			assert.LessOrEqual(t, w, width+1e-9)
		}
		want := strings.ReplaceAll(plain(long)+" And serve.", " ", "")
		assert.Equal(t, want, strings.ReplaceAll(strings.ReplaceAll(got.String(), " ", ""), "\u00a0", ""))
	}
}
