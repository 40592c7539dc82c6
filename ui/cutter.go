package ui

import (
	"reflect"
	"time"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/desk/cutting"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// cutter keeps the bench's tub and its cut face up to date.
type cutter struct {
	w *Window
	t *tubColumn

	shown kit.Tub
	asked cutting.Job
	due   bool      // asked has not been handed on
	drew  time.Time // when it last was
	draws *cutting.Cutter
}

// breath is the least time between two cuts that must be stirred anew: drawing takes
// every processor, and the frames of a drag need one now and then.
const breath = 80 * time.Millisecond

// Sizes of the pictures along their longer side.
const (
	coarsePX = 130
	sharpPX  = 420
)

func newCutter(w *Window, t *tubColumn) *cutter {
	c := &cutter{w: w, t: t}
	c.draws = cutting.NewCutter(w.Post, c.drawn, nil)
	return c
}

// show brings tub and cut up to date, if anyone can see them.
func (c *cutter) show(d design.Design, r *model.Result) {
	if c.w.shown() != nil {
		return
	}
	size := tub.Size(d.Tubs)
	v := c.shown
	v.TopMM, v.BaseMM, v.HeightMM = size.LengthMM, size.LengthMM, size.HeightMM
	v.Fill = d.Tubs.FillPercent / 100
	v.Foam = r.Blend.FoamVolumeFraction
	v.DenseName, v.FoamName, v.Reads = say.T("custard"), say.T("foam"), page.Reads
	if r.Blend.MassG == 0 { // an empty tub
		v.Fill, v.DenseName, v.FoamName = 0, "", ""
	}
	if settings, err := cutting.Of(d, r, ripple.Side); err == nil {
		q := cutting.Job{Cuts: []ripple.Settings{settings}, Style: tub.Style(d), Coarse: coarsePX, Sharp: sharpPX}
		v.DenseColour, v.FoamColour = q.Style.Dense, q.Style.Foam
		if !reflect.DeepEqual(q, c.asked) {
			c.asked = q
			c.due = true
			c.breathe()
		}
	} else {
		c.asked = cutting.Job{}
		c.due = false
		c.draws.Stop()
		v.Cut = nil
	}
	if v != c.shown {
		c.shown = v
		c.t.view.ShowTub(v)
	}
}

// breathe hands on the cut asked for, once the last is old enough. The latch
// calls it every frame.
func (c *cutter) breathe() {
	if now := time.Now(); c.due && (now.Sub(c.drew) >= breath || c.draws.Follows(c.asked)) {
		c.due, c.drew = false, now
		c.draws.Draw(c.asked)
	}
}

func (c *cutter) drawn(d cutting.Drawn) {
	if c.asked.Cuts == nil {
		return // a late one, of a design that could be drawn
	}
	c.shown.Cut = nil
	if d.Err == nil {
		c.shown.Cut = d.Pictures[0]
	}
	c.t.view.ShowTub(c.shown)
	c.w.event("cut drawn")
}
