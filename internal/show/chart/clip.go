package chart

import (
	"math"

	"ripplewright/internal/show/draw"
)

// A clipper draws a curve of which only what lies in box is added to the list.
type clipper struct {
	*draw.List
	box  draw.Rect
	x, y float64 // the last point, drawn or not
}

// start begins the curve at (x, y).
func (c *clipper) start(x, y float64) {
	c.x, c.y = x, y
	if holds(c.box, x, y) {
		c.To(x, y)
	}
}

// to continues the curve to (x, y).
func (c *clipper) to(x, y float64) {
	box, ax, ay := c.box, c.x, c.y
	c.x, c.y = x, y
	if holds(box, ax, ay) && holds(box, x, y) {
		c.To(x, y)
		return
	}
	t0, t1 := 0.0, 1.0
	for _, side := range [...]struct{ toward, room float64 }{
		{ax - x, ax - box.X0}, {x - ax, box.X1 - ax},
		{ay - y, ay - box.Y0}, {y - ay, box.Y1 - ay},
	} {
		switch {
		case side.toward == 0:
			if side.room < 0 {
				return
			}
		case side.toward < 0:
			t0 = math.Max(t0, side.room/side.toward)
		default:
			t1 = math.Min(t1, side.room/side.toward)
		}
	}
	if t0 > t1 {
		return
	}
	if t0 > 0 {
		c.Lift()
		c.To(ax+(x-ax)*t0, ay+(y-ay)*t0)
	}
	c.To(ax+(x-ax)*t1, ay+(y-ay)*t1)
	if t1 < 1 {
		c.Lift()
	}
}

func holds(r draw.Rect, x, y float64) bool { return x >= r.X0 && x <= r.X1 && y >= r.Y0 && y <= r.Y1 }
