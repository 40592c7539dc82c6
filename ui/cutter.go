package ui

import (
	"context"
	"image"
	"sync"
	"time"

	"ripplewright/internal/design"
	"ripplewright/internal/model"
	"ripplewright/internal/ripple"
	"ripplewright/internal/tub"
	"ripplewright/ui/kit"
)

// cutter draws the cut face of the tub away from the window's thread: coarse as
// long as requests come, sharp once they rest. It keeps only the newest.
type cutter struct {
	w *Window
	t *tubColumn

	shown  kit.Tub
	wanted ripple.Settings
	style  ripple.Style
	asked  bool

	mu     sync.Mutex
	next   *cutRequest
	awake  chan struct{}
	cancel context.CancelFunc // of the picture being drawn
}

type cutRequest struct {
	settings ripple.Settings
	style    ripple.Style
}

// Sizes of the pictures along their longer side, and how long requests must
// rest before the sharp one.
const (
	coarsePX = 130
	sharpPX  = 420
	restTime = 180 * time.Millisecond
)

func newCutter(w *Window, t *tubColumn) *cutter {
	c := &cutter{w: w, t: t, awake: make(chan struct{}, 1)}
	go c.work()
	return c
}

// show brings tub and cut up to date.
func (c *cutter) show(d design.Design, r *model.Result) {
	size := tub.Size(d.Tubs)
	v := c.shown
	v.TopMM, v.BaseMM, v.HeightMM = size.LengthMM, size.LengthMM, size.HeightMM
	v.Fill = d.Tubs.FillPercent / 100
	v.Foam = r.Blend.FoamVolume
	v.DenseName, v.FoamName = "custard", "foam"
	style := tub.Style(d)
	v.DenseColour, v.FoamColour = style.Dense, style.Foam
	settings := tub.Ripple(d)
	settings.FoamShare = r.Blend.FoamVolume
	if !c.asked || !same(settings, c.wanted) || style != c.style {
		c.wanted, c.style, c.asked = settings, style, true
		c.request(&cutRequest{settings, style})
	}
	if v != c.shown {
		c.shown = v
		c.t.view.ShowTub(v)
	}
}

func same(a, b ripple.Settings) bool {
	if len(a.Strokes) != len(b.Strokes) {
		return false
	}
	for i := range a.Strokes {
		if a.Strokes[i] != b.Strokes[i] {
			return false
		}
	}
	return a.Tub == b.Tub && a.View == b.View && a.FoamShare == b.FoamShare && a.Layout == b.Layout && a.Seed == b.Seed
}

func (c *cutter) request(q *cutRequest) {
	c.mu.Lock()
	c.next = q
	if c.cancel != nil {
		c.cancel()
	}
	c.mu.Unlock()
	select {
	case c.awake <- struct{}{}:
	default:
	}
}

// take returns the newest request and a context that a newer one cancels.
func (c *cutter) take() (*cutRequest, context.Context) {
	c.mu.Lock()
	defer c.mu.Unlock()
	q := c.next
	c.next = nil
	ctx, cancel := context.WithCancel(context.Background())
	c.cancel = cancel
	return q, ctx
}

func (c *cutter) work() {
	for range c.awake {
		q, ctx := c.take()
		if q == nil {
			continue
		}
		cut, err := ripple.Stir(q.settings)
		if err != nil {
			c.post(nil)
			continue
		}
		plain := q.style
		plain.Plain = true
		// The coarse picture is always finished: a drag must show something.
		if im, err := cut.Render(context.Background(), coarsePX, plain, nil); err == nil {
			c.post(im)
		}
		select {
		case <-ctx.Done():
			continue
		case <-time.After(restTime):
		}
		if im, err := cut.Render(ctx, sharpPX, q.style, nil); err == nil {
			c.post(im)
		}
	}
}

func (c *cutter) post(im *image.RGBA) {
	c.w.Post(func() {
		c.shown.Cut = nil
		if im != nil {
			c.shown.Cut = im
		}
		c.t.view.ShowTub(c.shown)
		c.w.event("cut drawn")
	})
}
