package ripple

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check"
)

func TestTablesFollowTheirStrokes(t *testing.T) {
	check.Long(t)
	for _, tub := range []Tub{saltmarsh, BoxTub(120, 80, 12, 60), BoxTub(90, 60, 0, 30), RoundTub(160, 40), RoundTub(40, 40)} {
		for _, view := range []View{Side, Top} {
			for _, motion := range everyMotion {
				s := settings(t, view, Dollops, motion, 8, 1)
				s.Tub = tub
				c := stir(t, s)
				worst, rough, all := 0.0, 0, 0
				for i, m := range c.maps {
					quick := c.forPictures()[i]
					if tb, ok := quick.(*table); ok {
						for _, p := range tb.patch {
							all++
							if p.rough {
								rough++
							}
						}
					}
					r := rng(7)
					for range 1500 {
						x, y := r.unit()*c.out.w, r.unit()*c.out.h
						if c.out.depth(x, y) < 0 {
							continue
						}
						ax, ay := []float64{x}, []float64{y}
						bx, by := []float64{x}, []float64{y}
						m.pull(ax, ay)
						quick.pull(bx, by)
						worst = math.Max(worst, math.Hypot(ax[0]-bx[0], ay[0]-by[0]))
					}
				}
				t.Logf("%v %v %s: off by at most %.4f mm, %d of %d nodes rough", tub, view, motion, worst, rough, all)
				assert.Less(t, worst, 0.05, "mm, a fifth of a pixel of a pint's cut at 300 px")
			}
		}
	}
}
