package ripple

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTableFollowsTheStroke(t *testing.T) {
	for _, view := range []View{Side} { // from above no stroke has a table
		c := stir(t, settings(t, view, Dollops, Mixed, 8, 1))
		worst := 0.0
		for _, m := range c.maps {
			s, ok := m.(stroked)
			if !ok || !smooth(s.flow) {
				continue
			}
			tab := newTable(c.out, s)
			r := rng(7)
			for range 4000 {
				x, y := r.unit()*c.out.w, r.unit()*c.out.h
				if c.out.depth(x, y) < 0 {
					continue
				}
				ax, ay := []float64{x}, []float64{y}
				bx, by := []float64{x}, []float64{y}
				s.pull(ax, ay)
				tab.pull(bx, by)
				worst = math.Max(worst, math.Hypot(ax[0]-bx[0], ay[0]-by[0]))
			}
		}
		t.Logf("view %v: off by at most %.4f mm", view, worst)
		require.Less(t, worst, 0.05, "mm, a fifth of a pixel of a pint's cut at 300 px")
	}
}
