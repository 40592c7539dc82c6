package balance

import (
	"context"
	"math"
	"slices"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// followed is how often the warming of what is found is followed anew: the tub that
// is looked for warms much like the last that was found, not quite.
const followed = 3

// minutesOut is how long the tub of s is out of the freezer until both phases are
// soft enough, by the warming of w's tub; before its first moment and after its last
// by the slope there, so that a search knows the way.
func minutesOut(s *model.Sketch, w *Wish) float64 {
	if w.out == nil || len(w.out.Run.Track) < 2 {
		return math.NaN()
	}
	c := math.Inf(-1)
	for _, role := range roles {
		if p := s.Phase(role); p.InTub() {
			from, _ := p.Body.YieldAtC(role.Band().FirmKPa, model.ColdestC, model.WarmestC)
			c = math.Max(c, from)
		}
	}
	t := w.out.Run.Track
	c = math.Max(c, w.out.StartC-5)
	if v := w.out.Run.RingMinutes(c); v > 0 {
		return v
	}
	a, b := t[0], t[1]
	if c > a.RingC {
		a, b = t[len(t)-2], t[len(t)-1]
	}
	if b.RingC <= a.RingC {
		return math.NaN()
	}
	return a.AtMinutes + (b.AtMinutes-a.AtMinutes)*(c-a.RingC)/(b.RingC-a.RingC)
}

// timed reports whether minutes are wished for.
func timed(wishes []Wish) bool {
	for i := range wishes {
		if wishes[i].Of == TubMinutes {
			return true
		}
	}
	return false
}

// follow follows the tub of d, which comes to r, on the counter, and times wishes by it from then on;
// it does nothing where no minutes are wished for.
func (b *balancer) follow(ctx context.Context, d design.Design, r *model.Result) error {
	if !timed(b.wishes) {
		return nil
	}
	out, err := cold.Thaw(ctx, d, r, b.kitchen)
	if err != nil {
		return err
	}
	wishes := slices.Clone(b.wishes)
	for i := range wishes {
		wishes[i].out = &out
	}
	b.problem = b.with(wishes)
	return nil
}
